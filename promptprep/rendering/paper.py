"""The paper copy: the script in the hand when the glass goes dark."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import Studio
from promptprep.rendering.guest_cards import GuestCard, guest_cards
from promptprep.rendering.page_items import Entry, Item, Row
from promptprep.rendering.pages import Filler, Page, Piece, Placed
from promptprep.rendering.paper_copy import Mark, RunView
from promptprep.rendering.paper_items import LANE_LINE_PT, LANE_PT, Items, Variant, lane_drop_pt
from promptprep.rendering.printing import PaperTools, pdf_from_html, rendered
from promptprep.rendering.sheets import Sheet, sheet_for
from promptprep.units import clock_text

__all__ = ["PaperTools", "Variant", "paper_html", "paper_pdf", "pdf_from_html", "rendered"]

HEAD_PT = 10.0
FOOT_PT = 12.0
NEXT_WORDS = 8  # of the next page, at the foot of this one


@dataclass(frozen=True, slots=True)
class EntryView:
    kind: str
    number: str
    lines: tuple[str, ...]
    top_pt: float


@dataclass(frozen=True, slots=True)
class LineView:
    """One printed line and all that stands with it; `top_pt` from the top of the page's body."""

    top_pt: float
    height_pt: float
    lead_pt: float
    runs: tuple[RunView, ...] = ()
    marks: tuple[Mark, ...] = ()
    entries: tuple[EntryView, ...] = ()
    number: int = 0


@dataclass(frozen=True, slots=True)
class PieceView:
    kind: str
    text: str
    lines: tuple[LineView, ...]
    texts: tuple[str, ...] = ()


@dataclass(slots=True)
class PageView:
    """One page (or one card): its pieces, or a guest's card; what stands in its head and foot."""

    number: int
    pieces: list[PieceView] = field(default_factory=list)
    card: GuestCard | None = None
    segment: str = ""
    following: str = ""
    goes_on: bool = False


def paper_html(
    one: PreparedScript,
    studio: Studio,
    tools: PaperTools,
    variant: Variant = "paper",
    beside: PreparedScript | None = None,
) -> str:
    """The printed script as one HTML text for the page renderer."""
    acuity = one.reader.acuity if one.reader else None
    cards = studio.paper.cards if variant == "cards" else 1
    sheet = sheet_for(studio.paper, acuity=acuity, cards=cards)
    pages = _Maker(one, sheet, tools, variant, beside).pages()
    return rendered(
        tools,
        "paper/script.html",
        one=one,
        script=one.script,
        studio=studio,
        sheet=sheet,
        variant=variant,
        sheets=[pages[at : at + cards] for at in range(0, len(pages), cards)],
        count=len(pages),
        head=_head(one, sheet, tools),
        summary=_summary(one, studio, sheet, tools),
        low_ink=studio.paper.low_ink or variant == "low-ink",
        lane_pt=LANE_PT,
        lane_line_pt=LANE_LINE_PT,
        crops=_crops(sheet),
        beside=beside.script.language if beside else "",
        beside_direction=beside.direction if beside else "",
    )


def paper_pdf(
    one: PreparedScript,
    studio: Studio,
    tools: PaperTools,
    variant: Variant = "paper",
    beside: PreparedScript | None = None,
) -> bytes:
    """A tagged PDF. The same script and studio give the same bytes."""
    html = paper_html(one, studio, tools, variant, beside)
    return pdf_from_html(html, f"{one.script.name}.{one.script.language}.{one.digest}.{variant}")


def _summary(one: PreparedScript, studio: Studio, sheet: Sheet, tools: PaperTools) -> str:
    """Slot, running time with its range, and the studio, below the title."""
    timing, words = one.timing.timing, tools.words
    slot = "" if one.timing.slot_s is None else words("slot") + " " + clock_text(one.timing.slot_s)
    about = words("about {time}").replace("{time}", clock_text(timing.mean_s))
    time = f"{about} ({clock_text(timing.low_s)}–{clock_text(timing.high_s)})"
    text = " · ".join(part for part in (slot, time, studio.title) if part)
    return tools.measure.shortened(text, sheet.copy_mm, FOOT_PT)


def _head(one: PreparedScript, sheet: Sheet, tools: PaperTools) -> str:
    """Script, language, reader and date, in one line."""
    script = one.script
    reader = one.reader.name if one.reader else ""
    parts = (script.title or script.name, script.language, reader, str(script.front.get("date", "")))
    text = " · ".join(part for part in parts if part)
    return tools.measure.shortened(text, head_mm(sheet), HEAD_PT, bold=tools.bold)


def head_mm(sheet: Sheet) -> float:
    """Width of the head's text; the rest is the page's number and the digest."""
    return (sheet.width_mm - sheet.margin_mm - min(sheet.end_mm, sheet.margin_mm)) * 0.72


def _crops(sheet: Sheet) -> list[tuple[float, float, float, float]]:
    """Crop marks at the ends of each cut, as (left, top, width, height) in mm; one of the last two is 0."""
    length, marks = 6.0, []
    across, down = sheet.paper_width_mm, sheet.paper_height_mm
    if sheet.height_mm < down - 1:
        marks += [(x, down / 2, length, 0.0) for x in (0.0, across / 2 - length / 2, across - length)]
    if sheet.width_mm < across - 1:
        marks += [(across / 2, y, 0.0, length) for y in (0.0, down / 2 - length / 2, down - length)]
    return marks


def fill_pages(items: Items) -> list[Page]:
    """A script's items on pages, before they are drawn."""
    sheet = items.sheet

    def rows(item: Item, start: int, end: int) -> Sequence[Row]:
        return items.copies[item.key].rows(start, end)

    filler = Filler(sheet.body_pt, sheet.line_pt, sheet.copy_em, rows, lane_drop_pt(sheet))
    return filler.fill(list(items.all()))


class _Maker:
    """Turns one prepared script into pages of views."""

    def __init__(
        self, one: PreparedScript, sheet: Sheet, tools: PaperTools, variant: Variant, beside: PreparedScript | None
    ) -> None:
        self.one, self.sheet, self.tools, self.variant = one, sheet, tools, variant
        self.items = Items(one, sheet, tools, variant, beside)
        self.line_number = 0

    def pages(self) -> list[PageView]:
        filled = fill_pages(self.items)
        views = [self._page(n, page, filled[n] if n < len(filled) else None) for n, page in enumerate(filled, 1)]
        for card in guest_cards(self.one, self.sheet, self.tools):
            views.append(PageView(len(views) + 1, card=card, segment=card.title))
        return views

    def _page(self, number: int, page: Page, following: Page | None) -> PageView:
        inside = next((p.item.key[0] for p in page.pieces if p.item.kind != "title"), 0)
        segment = self.one.timing.segments[inside] if self.one.timing.segments else None
        text = f"{segment.title} {clock_text(segment.timing.mean_s)}" if segment else ""
        return PageView(
            number,
            pieces=[self._piece(piece) for piece in page.pieces],
            segment=self.tools.measure.shortened(text, head_mm(self.sheet), HEAD_PT),
            following=self._first_words(following) if following else "",
            goes_on=following is not None,
        )

    def _first_words(self, page: Page) -> str:
        """The words that the next page begins with, title or copy."""
        for piece in page.pieces:
            text = piece.item.text[piece.start : piece.end].split()
            if piece.item.kind in ("heading", "copy") and text:
                room = (self.sheet.width_mm - 2 * self.sheet.margin_mm) * 0.5
                return self.tools.measure.shortened(" ".join(text[:NEXT_WORDS]), room, FOOT_PT).removesuffix(" …")
        return ""

    # -- pieces -----------------------------------------------------------------------------------------------

    def _piece(self, piece: Piece) -> PieceView:
        item = piece.item
        lines = tuple(self._copy_lines(piece)) if item.kind == "copy" else tuple(_plain(p) for p in piece.rows)
        return PieceView(item.kind, item.text, lines, item.lines)

    def _copy_lines(self, piece: Piece) -> Iterator[LineView]:
        copy = self.items.copies[piece.item.key]
        for placed in piece.rows:
            span = placed.row.span
            self.line_number += 1
            yield LineView(
                placed.top_pt,
                placed.row.height_pt,
                placed.row.lead_pt,
                tuple(copy.views(span)),
                (*copy.says(span), *copy.points(span, breaths=self.variant == "rehearsal")),
                _entries(placed),
                self.line_number if self.variant == "rehearsal" else 0,
            )


def _plain(placed: Placed) -> LineView:
    return LineView(placed.top_pt, placed.row.height_pt, 0.0, entries=_entries(placed))


def _entries(placed: Placed) -> tuple[EntryView, ...]:
    pairs: Iterator[tuple[Entry, float]] = zip(placed.row.entries, placed.entry_tops_pt, strict=True)
    return tuple(EntryView(entry.kind, entry.number, entry.lines, top) for entry, top in pairs)
