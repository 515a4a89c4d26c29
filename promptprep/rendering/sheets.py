"""Sizes of sheets and the type on them, for everything that is printed."""

from __future__ import annotations

from dataclasses import dataclass

from promptprep.errors import BadCall
from promptprep.model.rig import Paper
from promptprep.units import MM_PER_PT

# ISO 216 for A4 and A5; US letter is 8.5 by 11 inches (ANSI/ASME Y14.1 size A; from memory).
SHEETS_MM = {"A4": (210.0, 297.0), "A5": (148.0, 210.0), "letter": (215.9, 279.4)}

CAP_EM = 0.714  # capital height of the bundled Noto Sans, in em (its OS/2 table: 714 of 1000 units)
CLEAR_PRINT_PT = 14.0  # UKAAF G003 (2019): clear print is at least 12 points, ideally 14


@dataclass(frozen=True, slots=True)
class Sheet:
    """One printed page: sizes in millimetres, type in points, all measured from the page's edges.

    The copy stands `margin_mm + lane_mm` from the start edge: the lane holds times and cues.
    """

    width_mm: float
    height_mm: float
    font_pt: float
    line_pt: float
    margin_mm: float
    lane_mm: float
    head_mm: float
    foot_mm: float

    @property
    def copy_mm(self) -> float:
        return self.width_mm - 2 * self.margin_mm - self.lane_mm

    @property
    def copy_em(self) -> float:
        return self.copy_mm / MM_PER_PT / self.font_pt

    @property
    def body_pt(self) -> float:
        return (self.height_mm - self.head_mm - self.foot_mm) / MM_PER_PT


def font_pt_at(distance_mm: float, arcmin: float = 20.0) -> float:
    """Type size in points whose capitals subtend `arcmin` at `distance_mm`, by the same rule as on the screen.

    20 arcminutes is the preferred height of ISO 9241-3 (see data/limits.toml).
    """
    from math import radians, tan

    return 2 * distance_mm * tan(radians(arcmin / 60) / 2) / CAP_EM / MM_PER_PT


def sheet_for(paper: Paper) -> Sheet:
    """The page that a studio's `paper` asks for. Raises `BadCall` for a size that does not exist.

    Copy runs 45 to 65 characters a line: at an advance near 0.5 em that is 22 to 33 em.
    """
    if paper.size not in SHEETS_MM:
        known = ", ".join(SHEETS_MM)
        raise BadCall("unknown-paper-size", f"there is no paper size {paper.size!r} here", f"use one of: {known}")
    width, height = SHEETS_MM[paper.size]
    if paper.orientation == "landscape":
        width, height = height, width
    margin = 20.0 if paper.punched else 15.0
    small = width < 180
    lane = 24.0 if small else 34.0
    widest = 31.0 * paper.font_pt * MM_PER_PT
    spare = max(0.0, width - 2 * margin - lane - widest)
    return Sheet(width, height, paper.font_pt, paper.font_pt * 1.5, margin, lane + spare, 24.0, 22.0)
