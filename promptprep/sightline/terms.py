"""The terms that type size and column width are weighed by, each as a ratio that is 1 at its bound and less inside."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from promptprep.errors import BadGeometry
from promptprep.model.lines import Column
from promptprep.model.rig import Reader, Rig
from promptprep.model.sightline import Limit, TypeFigures
from promptprep.sightline.angles import offset_deg, size_mm
from promptprep.sightline.layout import Layout, across, layout, room_px
from promptprep.sightline.verdicts import limits_for

SLACK = 1 + 1e-9
LEGIBLE, LINE = 100.0, 30.0  # how much more these bounds count than the others where not all can be kept


@dataclass(frozen=True, slots=True)
class Bounds:
    """What the advice keeps to, from the limits (`cap_*` in arcminutes at the eye)."""

    cap_least: float
    cap_wanted: float
    travel_deg: float
    characters: float
    lines_least: float
    lines: float
    seconds: float
    reading_below_deg: float
    reading_above_deg: float


def bounds_for(limits: Sequence[Limit], reader: Reader | None, advance_em: float) -> Bounds:
    """The advice's bounds among the limits, for this reader and kind of script."""
    own: Mapping[str, Limit] = {limit.id: limit for limit in limits_for(limits, reader, advance_em)}
    characters = own.get("characters_wanted") or own["characters_wide_wanted"]
    least = own["cap_least"].bound
    return Bounds(
        least,
        max(least, own["cap_wanted"].bound),
        own["travel_cone"].bound,
        characters.bound,
        own["lines_least"].bound,
        max(own["lines_least"].bound, own["lines_wanted"].bound),
        own["seconds_wanted"].bound,
        own["reading_below_far"].bound,
        own["reading_above_far"].bound,
    )


def bound_of(name: str, limits: Sequence[Limit]) -> float:
    """The bound of one limit by its name."""
    return next(limit.bound for limit in limits if limit.id == name)


def checked(figures: TypeFigures) -> TypeFigures:
    """The figures, if type can have them. Raises `BadGeometry` for heights and advances that are not positive."""
    for name in ("cap_em", "x_em", "advance_em"):
        value = getattr(figures, name)
        if not (math.isfinite(value) and value > 0):
            hint = "give a font with capitals and copy with letters in it"
            raise BadGeometry("bad-geometry", f"type cannot have {name.replace('_em', '')} of {value:g} em", hint)
    return figures


def column_of(rig: Rig, font_px: float, column_px: float) -> Column:
    """A column in whole pixels of line height, as the screen copy draws it."""
    return Column(column_px, font_px, float(math.ceil(font_px * rig.leading - 1e-9)))


@dataclass(frozen=True)
class Weighing:
    """A rig, a font and the bounds: everything that the terms depend on besides the two sizes sought."""

    rig: Rig
    type_figures: TypeFigures
    bounds: Bounds

    def font_px_for(self, cap_arcmin: float) -> float:
        """Type size whose capitals subtend an angle on this rig."""
        return size_mm(cap_arcmin, self.rig.optical_path_mm) / (self.type_figures.cap_em * self.rig.py_mm)

    def placed(self, font_px: float, column_px: float) -> Layout:
        return layout(self.rig, column_of(self.rig, font_px, column_px))

    def lines(self, font_px: float) -> int:
        """Whole lines between the margins; 0 where not even one fits."""
        column = column_of(self.rig, font_px, 1.0)
        return layout(self.rig, column).lines if column.line_px <= room_px(self.rig)[1] * SLACK else 0

    @cached_property
    def least_px(self) -> float:
        """The smallest legible type size."""
        return self.font_px_for(self.bounds.cap_least)

    @cached_property
    def wanted_px(self) -> float:
        """The type size from which capitals have the wanted height."""
        return self.font_px_for(self.bounds.cap_wanted)

    @cached_property
    def least_em(self) -> float:
        """The least column in em: the wanted characters, and the longest word unless no legible type could hold it."""
        longest, wanted = self.type_figures.longest_word_em, self.bounds.characters * self.type_figures.advance_em
        return max(wanted, longest) if longest * self.least_px <= self.widest_px else wanted

    @cached_property
    def reach_mm(self) -> float:
        """How far from the lens axis the gaze cone reaches at the picture."""
        return self.rig.optical_path_mm * math.tan(math.radians(self.bounds.travel_deg))

    def travel_mm(self, column_px: float) -> float:
        """The column's farther edge from the lens axis, at the picture."""
        left, right = across(self.rig, column_px)
        lens = self.rig.lens_x * self.rig.width_px
        return max(lens - left, right - lens) * self.rig.px_mm

    def reading_deg(self, font_px: float) -> float:
        """How far above the lens (below it: negative) the line stands that is read."""
        off_px = self.rig.lens_y * self.rig.height_px - self.placed(font_px, 1.0).reading_px
        return offset_deg(off_px * self.rig.py_mm, self.rig.optical_path_mm)

    def reading_ratio(self, font_px: float) -> float:
        """That angle over its bound, which is wider below the lens."""
        angle = self.reading_deg(font_px)
        return angle / self.bounds.reading_above_deg if angle > 0 else -angle / self.bounds.reading_below_deg

    def terms(self, font_px: float, column_px: float, lines: int) -> dict[str, float]:
        """Ratios to the bounds: type (wanted over the capitals' height), travel (the farther edge over the gaze cone,
        as tangents), line (least column over the column), view (wanted over the seconds in view), lines.
        """
        figures, bounds = self.type_figures, self.bounds
        characters = column_px / (figures.advance_em * font_px)
        seconds = lines * characters * figures.seconds_per_character
        return {
            "type": self.wanted_px / font_px,
            "travel": max(self.travel_mm(column_px), 0.0) / self.reach_mm,
            "line": self.least_em * font_px / column_px,
            "view": bounds.seconds / seconds if seconds > 0 else 0.0,
            "lines": bounds.lines / lines if lines > 0 else math.inf,
        }

    def cost(self, font_px: float, column_px: float, lines: int) -> float:
        """Sum of the squared terms; a bound that is passed outweighs every gain, the wanted height less than the rest.

        Where nothing keeps every bound, legible type goes before characters a line, and both before the rest.
        Convex in the logarithms of both sizes for a given number of lines: one optimum.
        """
        terms = self.terms(font_px, column_px, lines)
        over = LEGIBLE * _over(self.least_px / font_px) + LINE * _over(terms["line"])
        over += _over(terms["travel"]) + _over(terms["view"]) + 10.0 * max(0.0, self.bounds.lines - lines)
        plain = sum(min(ratio, 1e3) ** 2 for name, ratio in terms.items() if name != "lines")
        return plain + 1e3 * _over(terms["type"]) + 1e6 * over + 1e12 * max(0.0, self.bounds.lines_least - lines)

    def column_range_px(self, font_px: float) -> tuple[float, float]:
        """(least, most) column width inside the bounds at a type size; empty where the first is the greater."""
        figures, bounds, lines = self.type_figures, self.bounds, self.lines(font_px)
        most = self.widest_px
        if lines < bounds.lines or self.reading_ratio(font_px) > SLACK:
            return math.inf, most
        said_s = lines * figures.seconds_per_character
        seconds_em = bounds.seconds / said_s * figures.advance_em if said_s > 0 else 0.0
        return max(self.least_em, seconds_em) * font_px, most

    @cached_property
    def widest_px(self) -> float:
        """The widest column that keeps to the gaze cone and to the picture; 0 where none does."""
        reach = self.reach_mm
        low, high = 0.0, room_px(self.rig)[0]
        if self.travel_mm(high) <= reach:
            return high
        if self.travel_mm(low) > reach:
            return 0.0
        for _ in range(50):
            middle = (low + high) / 2
            low, high = (middle, high) if self.travel_mm(middle) <= reach else (low, middle)
        return low

    def edges(self) -> dict[str, float]:
        """The bounds as type sizes and column widths in pixels on this rig."""
        bounds, leading = self.bounds, self.rig.leading
        return {
            "font_least_px": self.least_px,
            "font_wanted_px": self.wanted_px,
            "font_most_px": room_px(self.rig)[1] / bounds.lines / leading,
            "column_most_px": self.widest_px,
            "column_least_em": self.least_em,
        }

    def possible(self) -> bool:
        """Whether any type and column keep to every bound: the smallest legible type decides."""
        low, high = self.column_range_px(self.least_px)
        return low <= high * SLACK


def _over(ratio: float) -> float:
    return max(0.0, min(ratio, 1e6) / SLACK - 1) ** 2
