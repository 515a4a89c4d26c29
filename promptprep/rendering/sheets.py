"""Sizes of sheets and the type on them, for everything that is printed."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil

from promptprep.errors import BadCall
from promptprep.model.rig import Paper
from promptprep.sightline.angles import size_mm
from promptprep.sightline.verdicts import acuity_factor
from promptprep.units import MM_PER_PT

# ISO 216 for A4 and A5; US letter is 8.5 by 11 inches (ANSI/ASME Y14.1 size A; from memory).
SHEETS_MM = {"A4": (210.0, 297.0), "A5": (148.0, 210.0), "letter": (215.9, 279.4)}
CARDS = (1, 2, 4)  # cards a sheet

MIDDLE_EM = 0.388  # from the middle of a line down to its base line: half of ascent less descent, 1.069 and 0.293 em
CAP_EM = 0.714  # capital height of the bundled Noto Sans, in em (its OS/2 table: 714 of 1000 units)
CLEAR_PRINT_PT = 14.0  # UKAAF G003 (2019): clear print is at least 12 points, ideally 14
SMALL_PT, CARD_SMALL_PT = 12.0, 10.5  # what stands beside and above the copy; a card is held nearer
SMALL_SHARE, SMALL_LEADING = 0.6, 1.24
NARROW_MM, HEAD_LINE_MM = 120.0, 4.8
LEADING = 1.5  # RNIB clear print: 1.5 to 2; UKAAF asks for single spacing, so the smaller of RNIB's
WIDEST_EM = 26.0  # near 52 characters at an advance of 0.5 em: inside Bringhurst's 45 to 75
FEWEST_LINES, NARROWEST_EM = 7, 7.0  # a page that holds less is no page to read from

NUMBERED_END_MM, NUMBER_EDGE_MM = 14.0, 6.0  # line numbers end this far from the edge of a small page
PUNCH_MM = 10.0  # holes centre 12 mm from the edge and are 6 mm wide (ISO 838; from memory)


@dataclass(frozen=True, slots=True)
class Sheet:
    """One printed page: sizes in millimetres, type in points, all measured from the page's edges.

    `width_mm` by `height_mm` is the page as it is read: a whole sheet, or one of `cards` cards on a sheet of
    `paper_width_mm` by `paper_height_mm`. The lane of `lane_mm` begins at `margin_mm` from the start edge and holds
    times and cues; the copy follows; `end_mm` is left free at the end edge for pencil.
    """

    width_mm: float
    height_mm: float
    font_pt: float
    line_pt: float
    margin_mm: float
    end_mm: float
    lane_mm: float
    head_mm: float
    foot_mm: float
    paper_width_mm: float
    paper_height_mm: float
    cards: int = 1

    @property
    def copy_mm(self) -> float:
        return self.width_mm - self.margin_mm - self.end_mm - self.lane_mm

    @property
    def copy_em(self) -> float:
        return self.copy_mm / MM_PER_PT / self.font_pt

    @property
    def number_mm(self) -> float:
        """How far beyond the copy line numbers end."""
        return min(self.end_mm - NUMBER_EDGE_MM, 10.0)

    @property
    def body_pt(self) -> float:
        """Height for copy. A hair less than the page has, so that rounding never makes another page."""
        return (self.height_mm - self.head_mm - self.foot_mm) / MM_PER_PT - 0.5

    @property
    def small_pt(self) -> float:
        """Type of times, cues and pronunciations; it grows with very large copy."""
        return max(CARD_SMALL_PT if self.small else SMALL_PT, round(SMALL_SHARE * self.font_pt * 2) / 2)

    @property
    def small_line_pt(self) -> float:
        return round(self.small_pt * SMALL_LEADING)

    @property
    def margins_pt(self) -> float:
        """Type of heads, by which a dropped sheet is put back into its place."""
        return 10.0 if self.small else SMALL_PT

    @property
    def narrow(self) -> bool:
        """Whether heads have a third line, for what does not stand beside the page's number."""
        return self.width_mm < NARROW_MM

    @property
    def small(self) -> bool:
        return self.width_mm < 160 or self.height_mm < 160


def font_pt_at(distance_mm: float, arcmin: float = 20.0) -> float:
    """Type size in points whose capitals subtend `arcmin` at `distance_mm`, by the same rule as on the screen.

    20 arcminutes is the preferred height of ISO 9241-3 (see data/limits.toml).
    """
    return size_mm(arcmin, distance_mm) / CAP_EM / MM_PER_PT


def font_pt_of(paper: Paper, acuity: float | None = None) -> float:
    """The studio's type size, else what its reading distance asks for, at least clear print, in half points.

    A reader whose decimal acuity is under 0.7 gets type larger by 0.7 / acuity (DIN 1450).
    """
    if paper.font_pt is not None:
        return paper.font_pt
    return max(CLEAR_PRINT_PT, ceil(2 * font_pt_at(paper.reading_distance_mm) * acuity_factor(acuity)) / 2)


def sheet_for(paper: Paper, *, acuity: float | None = None, cards: int = 1, numbered: bool = False) -> Sheet:
    """The page that a studio's `paper` asks for. Raises `BadCall` for a size or a number of cards that does not exist.

    Copy runs 45 to 65 characters a line where the sheet is wide enough; a card has fewer. `numbered` leaves room for
    line numbers at the end edge.
    """
    if paper.size not in SHEETS_MM:
        raise BadCall("unknown-paper-size", f"there is no paper size {paper.size!r} here", _one_of(SHEETS_MM))
    if cards not in CARDS:
        raise BadCall("unknown-cards", f"a sheet cannot hold {cards!r} cards", _one_of(CARDS))
    paper_width, paper_height = SHEETS_MM[paper.size]
    if paper.orientation == "landscape":
        paper_width, paper_height = paper_height, paper_width
    card = _card(paper_width, paper_height, cards)
    sheet = _laid_out(paper, font_pt_of(paper, acuity), card, (paper_width, paper_height), cards, numbered)
    if sheet.body_pt < FEWEST_LINES * sheet.line_pt or sheet.copy_em < NARROWEST_EM:
        message = f"type of {sheet.font_pt:g} points is too large for {cards} on a sheet of {paper.size}"
        raise BadCall("type-too-large", message, "take smaller type, a larger sheet or fewer cards")
    return sheet


def _one_of(known: Iterable[object]) -> str:
    return "use one of: " + ", ".join(map(str, known))


def _card(width: float, height: float, cards: int) -> tuple[float, float]:
    """The longer side is cut first."""
    for _ in range({1: 0, 2: 1, 4: 2}[cards]):
        width, height = (width, height / 2) if height >= width else (width / 2, height)
    return width, height


def _laid_out(
    paper: Paper,
    font_pt: float,
    page: tuple[float, float],
    whole: tuple[float, float],
    cards: int,
    numbered: bool,
) -> Sheet:
    width, height = page
    small = width < 160 or height < 160
    margin = (10.0 if small else 15.0) + (PUNCH_MM if paper.punched else 0.0)
    end = (NUMBERED_END_MM if numbered else 8.0) if small else 20.0
    lane = 26.0 if width < 160 else 36.0 if small else 40.0
    head, foot = (18.5, 14.0) if small else (26.0, 20.0)
    head += HEAD_LINE_MM if width < NARROW_MM else 0.0
    spare = max(0.0, width - margin - end - lane - WIDEST_EM * font_pt * MM_PER_PT)
    return Sheet(
        width, height, font_pt, font_pt * LEADING, margin, end + spare, lane, head, foot, whole[0], whole[1], cards
    )
