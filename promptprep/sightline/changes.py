"""The nearest change that makes a rig keep its bounds: a step towards it or back, a larger screen, the lens moved."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from promptprep.model.lines import Column
from promptprep.model.rig import Rig
from promptprep.sightline.contrast import contrast_ratio
from promptprep.sightline.optimum import best_column
from promptprep.sightline.terms import Weighing
from promptprep.units import MM_PER_UNIT

NEAREST_MM, FARTHEST_MM = 500.0, 12_000.0  # a reader's mark lies between these; common practice, no source
LARGEST_SCALE = 4.0
STEP_MM = 50.0
INKS = {"black": "#000000", "white": "#ffffff"}
LENS_TEXT = "move screen or camera so that the lens axis meets the middle of the picture"


@dataclass(frozen=True, slots=True)
class Change:
    """A change of one thing, or of two where one does not help. `then` is the best column after it, None if unknown.

    `amount` is the natural logarithm of new over old, for the choice of the nearest.
    """

    kind: str
    text: str
    before: float
    after: float
    unit: str
    then: Column | None = None

    @property
    def amount(self) -> float:
        return abs(math.log(self.after / self.before)) if self.before > 0 and self.after > 0 else 1.0


def rig_changes(weighing: Weighing) -> tuple[Change, ...]:
    """Single changes of the room that make an impossible rig possible, nearest first; else two changes together."""
    found = list(_room_changes(weighing)) or list(_lens_and_more(weighing))
    return tuple(sorted(found, key=lambda change: change.amount))


def _room_changes(weighing: Weighing) -> Iterator[Change]:
    yield from _distances(weighing, lambda w: w.possible())
    yield from _screens(weighing)
    yield from _lenses(weighing)


def _lens_and_more(weighing: Weighing) -> Iterator[Change]:
    """The lens brought to the middle, and what is still needed then."""
    centred = _centred(weighing)
    for change in _room_changes(centred) if centred else ():
        yield replace(change, text=f"{LENS_TEXT}, and {change.text}")


def set_type_changes(weighing: Weighing, column: Column, best: Column) -> tuple[Change, ...]:
    """Changes for type that the studio has set and that passes a bound: other type here, or another distance."""

    def keeps(other: Weighing) -> bool:
        return keeps_bounds(other, column)

    found = list(_distances(weighing, keeps))
    if weighing.possible():
        text = f"use {best.font_px:.0f} px type in a column of {best.width_px:.0f} px"
        found.append(Change("type", text, column.font_px, best.font_px, "px", best))
    return tuple(sorted(found, key=lambda change: (change.kind != "type", change.amount)))


def keeps_bounds(weighing: Weighing, column: Column) -> bool:
    """Whether a column keeps to every bound (the least height, not the wanted one)."""
    rig = replace(weighing.rig, leading=column.line_px / column.font_px)
    own = replace(weighing, rig=rig)
    legible = own.least_px <= column.font_px * (1 + 1e-9)
    low, high = own.column_range_px(column.font_px)
    return legible and low <= column.width_px * (1 + 1e-9) and column.width_px <= high * (1 + 1e-9)


def _distances(weighing: Weighing, good: Callable[[Weighing], bool]) -> Iterator[Change]:
    """The smallest step nearer and the smallest step back that help, in steps of 5 cm."""
    rig = weighing.rig
    for sign, word in ((-1, "nearer"), (1, "further back")):
        room_mm = (rig.eye_to_glass_mm - NEAREST_MM) if sign < 0 else (FARTHEST_MM - rig.eye_to_glass_mm)
        for count in range(1, max(0, math.floor(room_mm / STEP_MM)) + 1):
            eye = rig.eye_to_glass_mm + sign * count * STEP_MM
            moved = replace(weighing, rig=replace(rig, eye_to_glass_mm=eye))
            if good(moved):
                text = f"stand {distance_text(count * STEP_MM)} {word}"
                yield Change("eye_to_glass", text, rig.eye_to_glass_mm, eye, "mm", best_column(moved))
                break


def _screens(weighing: Weighing) -> Iterator[Change]:
    """The smallest larger picture of the same pixels that helps, in whole inches."""
    inches = math.hypot(weighing.rig.picture_width_mm, weighing.rig.picture_height_mm) / MM_PER_UNIT["in"]
    sizes = range(math.floor(inches) + 1, math.ceil(inches * LARGEST_SCALE) + 1)
    for size in sizes:
        larger = replace(weighing, rig=scaled(weighing.rig, size / inches))
        if larger.possible():
            yield Change(
                "diagonal", f"use {_article(size)} {size}-inch screen", inches, float(size), "in", best_column(larger)
            )
            return


def scaled(rig: Rig, scale: float) -> Rig:
    """The rig with a picture of another size and the same pixels."""
    return replace(rig, picture_width_mm=rig.picture_width_mm * scale, picture_height_mm=rig.picture_height_mm * scale)


def _lenses(weighing: Weighing) -> Iterator[Change]:
    """The lens in the middle of the picture, where it is not and that helps."""
    centred = _centred(weighing)
    if centred and centred.possible():
        yield Change("lens", LENS_TEXT, 0.0, 0.5, "of the picture")


def _centred(weighing: Weighing) -> Weighing | None:
    """The rig with its lens in the middle of the picture; None where it is there already."""
    rig = weighing.rig
    if (rig.lens_x, rig.lens_y) == (0.5, 0.5):
        return None
    return replace(weighing, rig=replace(rig, lens_x=0.5, lens_y=0.5))


def colour_change(rig: Rig, least: float) -> Change | None:
    """White or black type on the same ground, where the two colours differ by less than `least`; else None."""
    ratio = contrast_ratio(rig.ink, rig.ground)
    if ratio >= least:
        return None
    after, ink = max((contrast_ratio(colour, rig.ground), name) for name, colour in INKS.items())
    return Change("ink", f"use {ink} type on this ground, {after:.1f} : 1", ratio, after, "ratio")


def _article(number: int) -> str:
    return "an" if number in (8, 11, 18) or 80 <= number < 90 else "a"


def distance_text(mm: float) -> str:
    return f"{mm / 10:.0f} cm" if mm < 1000 else f"{mm / 1000:.2f}".rstrip("0").rstrip(".") + " m"
