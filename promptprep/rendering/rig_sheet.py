"""The sheet of one rig: distances to set with a tape, drawings, verdicts, cautions, and a chart for the screen."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from promptprep.model.rig import Rig, Studio
from promptprep.model.sightline import Sightline, Verdict, quantity_name
from promptprep.rendering.direction import direction_of
from promptprep.rendering.drawings import rig_drawings
from promptprep.rendering.drawn_page import on_page
from promptprep.rendering.drawn_side import flip_text
from promptprep.rendering.printing import PaperTools, pdf_from_html, rendered
from promptprep.rendering.sheets import CAP_EM, sheet_for
from promptprep.rendering.studied import CAPS_ARCMIN
from promptprep.rendering.wording import ENGLISH, Wording
from promptprep.sightline.angles import size_mm
from promptprep.sightline.cautions import cautions
from promptprep.units import MM_PER_PT

CHART_WORDS = ("RING 274", "DUST 5839", "NORTH 6042", "COMET 7135", "HORIZON 8296")  # no word reads as another
BAR_MM = 100.0
MOST_DRAWING_MM = (90.0, 102.0, 82.0)  # heights of side, reader, region: four pages of A4 in any language


@dataclass(frozen=True, slots=True)
class TapeRow:
    """A length to set, as a tape shows it in both systems."""

    name: str
    metric: str
    imperial: str


@dataclass(frozen=True, slots=True)
class LimitRow:
    """A figure beside one limit; `source` is the number of its source in the list below the table."""

    name: str
    value: str
    bounds: str
    level: str
    verdict: str
    source: int


@dataclass(frozen=True, slots=True)
class ChartLine:
    """A line of the chart at its real size."""

    arcmin: float
    cap_mm: float
    font_pt: float
    text: str


def tape_rows(sight: Sightline, say: Wording = ENGLISH) -> list[TapeRow]:
    """What to set and what to check, in the order in which a rig is built."""
    rig, column = sight.rig, sight.column
    glass = rig.has_glass
    lengths: list[tuple[str, float | None]] = [
        (say("Picture, from left to right"), rig.picture_width_mm),
        (say("Picture, from top to bottom"), rig.picture_height_mm),
        (say("Lens axis, from the picture's left edge"), rig.lens_x * rig.picture_width_mm),
        (say("Lens axis, from the picture's top edge"), rig.lens_y * rig.picture_height_mm),
        (say("Glass to the picture"), rig.glass_to_screen_mm if glass else None),
        (say("Eye to the glass") if glass else say("Eye to the picture"), rig.eye_to_glass_mm),
        (say("Eye to text, by the glass"), rig.optical_path_mm if glass else None),
        (say("Eye to the lens"), rig.eye_to_lens_mm),
        (say("Column of text on the screen"), column.width_px * rig.px_mm),
        (say("Capital H on the screen"), sight.cap_height_mm),
        (say("From line to line on the screen"), sight.line_height_mm),
    ]
    return [TapeRow(name, say.metric(mm), say.imperial(mm)) for name, mm in lengths if mm is not None]


def chart_lines(sight: Sightline, room_mm: float, width: Callable[[str, float], float]) -> list[ChartLine]:
    """Capitals that subtend the limits' angles at this rig's distance; those too wide for the sheet are left out.

    Heights are 2 * d * tan(angle / 2), as ISO 9241-3 measures characters. `width(text, font_pt)` is in points.
    """
    lines = []
    for arcmin, text in zip(reversed(CAPS_ARCMIN), CHART_WORDS, strict=True):
        cap = size_mm(arcmin, sight.optical_path_mm)
        font = cap / CAP_EM / MM_PER_PT
        word, figure = text.split()
        shown = next((t for t in (text, word, figure, figure[:2]) if width(t, font) * MM_PER_PT <= room_mm), None)
        if shown:
            lines.append(ChartLine(arcmin, cap, font, shown))
    return lines


def rig_sheet_pdf(sight: Sightline, studio: Studio, tools: PaperTools) -> bytes:
    """A tagged PDF in the studio's language, whose `tools` are given; the same sightline gives the same bytes."""
    return pdf_from_html(rig_sheet_html(sight, studio, tools), f"rig.{sight.rig.id}.{studio.language}")


def rig_sheet_html(sight: Sightline, studio: Studio, tools: PaperTools) -> str:
    """The sheet as one HTML text for the page renderer."""
    say, sheet = Wording(tools.words), sheet_for(studio.paper)
    short, long = sorted((sheet.paper_width_mm, sheet.paper_height_mm))
    margin = 15.0
    sources = sorted({v.source for v in sight.verdicts if v.source})
    return rendered(
        tools,
        "rig/sheet.html",
        studio=studio,
        rig=sight.rig,
        direction=direction_of(say("sightline sheet")) or "ltr",
        width_mm=short,
        height_mm=long,
        margin_mm=margin,
        say=say,
        tape=tape_rows(sight, say),
        settings=_settings(sight.rig, say),
        drawings=[
            on_page(svg, short - 2 * margin, most)
            for svg, most in zip(rig_drawings(sight, tools.env, say), MOST_DRAWING_MM, strict=True)
        ],
        verdicts=[_limit_row(verdict, sources, say) for verdict in sight.verdicts],
        sources=sources,
        cautions=cautions(sight.rig, words=tools.words),
        chart=chart_lines(sight, short - 2 * margin, tools.measure.width_pt),
        bar_mm=BAR_MM,
        path=f"{say.metric(sight.optical_path_mm)} ({say.imperial(sight.optical_path_mm)})",
    )


def _settings(rig: Rig, say: Wording) -> Sequence[tuple[str, str]]:
    where = {
        "below": say("flat below the glass, its face up"),
        "above": say("flat above the glass, its face down"),
        "side": say("upright at the side of the glass"),
        "direct": say("in the reader's view, without a glass"),
    }
    tops = {
        "camera": say("towards the camera"),
        "reader": say("towards the reader"),
        "up": say("upwards"),
        "down": say("downwards"),
    }
    rows = [(say("Screen lies"), where[rig.lies]), (say("Top of its picture"), tops[rig.top])]
    if rig.has_glass:
        rows.append((say("Glass"), say("45° to the lens axis")))
    return [*rows, (say("Picture"), flip_text(rig, say))]


def _limit_row(verdict: Verdict, sources: Sequence[str], say: Wording) -> LimitRow:
    levels = {"good": say("good"), "note": say("note"), "look": say("look"), "fix": say("fix")}
    return LimitRow(
        say(quantity_name(verdict.quantity)),
        _with_unit(say.decimal(f"{verdict.value:.4g}"), verdict, say),
        _bounds(verdict, say),
        verdict.level,
        levels[verdict.level],
        sources.index(verdict.source) + 1 if verdict.source else 0,
    )


def _with_unit(number: str, verdict: Verdict, say: Wording) -> str:
    signs = {"arcmin": "′", "deg": "°", "em": " em"}
    if verdict.quantity.startswith("contrast"):
        return say.whole(f"{number} : 1")
    if verdict.unit == "s":
        return say("{n} s", n=number)
    if verdict.unit == "half heights":
        return say("{n} half heights", n=number)
    return number + signs.get(verdict.unit, "")


def _bounds(verdict: Verdict, say: Wording) -> str:
    low, high = (None if x is None else say.decimal(f"{x:.4g}") for x in (verdict.low, verdict.high))
    if low is not None and high is not None:
        return say("{low} to {high}", low=low, high=high)
    if low is not None:
        return say("at least {n}", n=low)
    return "" if high is None else say("at most {n}", n=high)
