"""The sheet of one rig: distances to set with a tape, drawings, verdicts, cautions, and a chart for the screen."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from promptprep.model.rig import Rig, Studio
from promptprep.model.sightline import Sightline, Verdict
from promptprep.rendering.drawings import rig_drawings
from promptprep.rendering.first import quantity_name
from promptprep.rendering.printing import PaperTools, pdf_from_html, rendered
from promptprep.rendering.sheets import CAP_EM, sheet_for
from promptprep.sightline.cautions import cautions
from promptprep.units import MM_PER_PT

CHART_ARCMIN = (31.0, 24.0, 22.0, 20.0, 16.0)  # the limits of data/limits.toml for capitals, large to small
CHART_WORDS = ("RING 274", "DUST 5839", "NORTH 6042", "COMET 7135", "HORIZON 8296")  # no word reads as another
BAR_MM = 100.0
FOOT_MM, INCH_MM = 304.8, 25.4


@dataclass(frozen=True, slots=True)
class TapeRow:
    """A length to set: `mm`, and the same in feet and inches."""

    name: str
    mm: float

    @property
    def metric(self) -> str:
        return (
            f"{self.mm / 1000:.2f} m"
            if self.mm >= 1000
            else f"{self.mm:.0f} mm"
            if self.mm >= 100
            else f"{self.mm:.1f} mm"
        )

    @property
    def imperial(self) -> str:
        """Feet and inches to the nearest quarter of an inch; short lengths in inches to a hundredth."""
        if self.mm < FOOT_MM:
            return f"{self.mm / INCH_MM:.2f} in"
        feet, inches = divmod(round(self.mm / INCH_MM * 4) / 4, 12)
        return f"{feet:.0f} ft {inches:g} in"


@dataclass(frozen=True, slots=True)
class ChartLine:
    """A line of the chart at its real size."""

    arcmin: float
    cap_mm: float
    font_pt: float
    text: str


def tape_rows(sight: Sightline) -> list[TapeRow]:
    """What to set and what to check, in the order in which a rig is built."""
    rig, column = sight.rig, sight.column
    glass = rig.has_glass
    lengths: list[tuple[str, float | None]] = [
        ("Picture, from left to right", rig.picture_width_mm),
        ("Picture, from top to bottom", rig.picture_height_mm),
        ("Lens axis, from the picture's left edge", rig.lens_x * rig.picture_width_mm),
        ("Lens axis, from the picture's top edge", rig.lens_y * rig.picture_height_mm),
        ("Glass to the picture", rig.glass_to_screen_mm if glass else None),
        ("Eye to the glass" if glass else "Eye to the picture", rig.eye_to_glass_mm),
        ("Eye to text, by the glass", rig.optical_path_mm if glass else None),
        ("Eye to the lens", rig.eye_to_lens_mm),
        ("Column of text on the screen", column.width_px * rig.px_mm),
        ("Capital H on the screen", sight.cap_height_mm),
        ("From line to line on the screen", sight.line_height_mm),
    ]
    return [TapeRow(name, length) for name, length in lengths if length is not None]


def chart_lines(sight: Sightline, room_mm: float, width: Callable[[str, float], float]) -> list[ChartLine]:
    """Capitals that subtend the limits' angles at this rig's distance; those too wide for the sheet are left out.

    Heights are 2 * d * tan(angle / 2), as ISO 9241-3 measures characters. `width(text, font_pt)` is in points.
    """
    lines = []
    for arcmin, text in zip(CHART_ARCMIN, CHART_WORDS, strict=True):
        cap = 2 * sight.optical_path_mm * math.tan(math.radians(arcmin / 60) / 2)
        font = cap / CAP_EM / MM_PER_PT
        word, figure = text.split()
        shown = next((t for t in (text, word, figure, figure[:2]) if width(t, font) * MM_PER_PT <= room_mm), None)
        if shown:
            lines.append(ChartLine(arcmin, cap, font, shown))
    return lines


def rig_sheet_pdf(sight: Sightline, studio: Studio, tools: PaperTools) -> bytes:
    """A tagged PDF in English; the same sightline gives the same bytes."""
    sheet = sheet_for(studio.paper)
    short, long = sorted((sheet.paper_width_mm, sheet.paper_height_mm))
    margin = 15.0
    html = rendered(
        tools,
        "rig/sheet.html",
        studio=studio,
        rig=sight.rig,
        width_mm=short,
        height_mm=long,
        margin_mm=margin,
        tape=tape_rows(sight),
        settings=_settings(sight.rig),
        drawings=[Markup(svg) for svg in rig_drawings(sight, tools.env)],
        verdicts=[(quantity_name(v.quantity), f"{v.value:.4g} {v.unit}", _bounds(v), v.level) for v in sight.verdicts],
        sources=sorted({v.source for v in sight.verdicts if v.source}),
        cautions=cautions(sight.rig),
        chart=chart_lines(sight, short - 2 * margin, tools.measure.width_pt),
        bar_mm=BAR_MM,
        path=TapeRow("", sight.optical_path_mm),
    )
    return pdf_from_html(html, f"rig.{sight.rig.id}")


def _settings(rig: Rig) -> Sequence[tuple[str, str]]:
    where = {
        "below": "flat below the glass, its face up",
        "above": "flat above the glass, its face down",
        "side": "upright at the side of the glass",
        "direct": "in the reader's view, without a glass",
    }
    rows = [("Screen lies", where.get(rig.lies, rig.lies)), ("Top of its picture", f"towards the {rig.top}")]
    if rig.has_glass:
        rows.append(("Glass", "45° to the lens axis"))
    return [*rows, ("Flip of the picture", rig.flip)]


def _bounds(verdict: Verdict) -> str:
    if verdict.low is not None and verdict.high is not None:
        return f"{verdict.low:.4g} to {verdict.high:.4g}"
    if verdict.low is not None:
        return f"at least {verdict.low:.4g}"
    return "" if verdict.high is None else f"at most {verdict.high:.4g}"
