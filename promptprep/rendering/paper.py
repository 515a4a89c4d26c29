"""The paper copy: the script in the hand when the glass goes dark."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import Studio
from promptprep.rendering.direction import in_order, isolated
from promptprep.rendering.guest_cards import GuestCard, guest_cards
from promptprep.rendering.page_items import Entry, Item, Row
from promptprep.rendering.pages import Filler, Page, Piece, Placed
from promptprep.rendering.paper_copy import Mark, RunView
from promptprep.rendering.paper_items import Items, Variant, lane_drop_pt
from promptprep.rendering.printing import PaperTools, pdf_from_html, rendered
from promptprep.rendering.sheets import Sheet, sheet_for
from promptprep.units import MM_PER_PT, clock_text

__all__ = ["PaperTools", "Variant", "paper_html", "paper_pdf", "pdf_from_html", "rendered"]

LEAST_TITLE_MM = 15.0
LEAST_HEAD = 0.45  # of its width, for what stands at the start
HEAD_GAP_MM, LOGO_GAP_MM = 4.0, 3.0
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
    box: tuple[str, ...] = ()


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
    sheet = sheet_for(studio.paper, acuity=acuity, cards=cards, numbered=variant == "rehearsal")
    pages = _Maker(Items(one, sheet, tools, variant, beside, studio.title)).pages()
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
        head=_head(one, sheet, tools, len(pages)),
        third=_third(one, sheet, tools),
        low_ink=studio.paper.low_ink or variant == "low-ink",
        head_mm=head_mm(one, sheet, tools, len(pages)),
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


def _head(one: PreparedScript, sheet: Sheet, tools: PaperTools, count: int) -> str:
    """Script, language and reader, in one line; on a narrow page the reader stands below."""
    title = isolated(one.script.title or one.script.name, one.direction)
    reader = isolated(one.reader.name, one.direction) if one.reader and not sheet.narrow else ""
    room_mm = head_mm(one, sheet, tools, count) - (tools.logo_mm[0] + LOGO_GAP_MM if tools.logo else 0.0)
    return _with_rest(title, (in_order(one.script.language, one.direction), reader), sheet, tools, room_mm)


def _third(one: PreparedScript, sheet: Sheet, tools: PaperTools) -> str:
    """The third line of a narrow page's head: reader and date."""
    if not sheet.narrow:
        return ""
    reader = isolated(one.reader.name, one.direction) if one.reader else ""
    text = " · ".join(part for part in (reader, _date(one)) if part)
    return tools.measure.shortened(text, sheet.width_mm - 2 * sheet.margin_mm, sheet.margins_pt)


def _date(one: PreparedScript) -> str:
    date = str(one.script.front.get("date", ""))
    return in_order(date, one.direction) if date else ""


def _with_rest(text: str, rest: Sequence[str], sheet: Sheet, tools: PaperTools, room_mm: float) -> str:
    """A line of the head: its first part is shortened so that the rest is whole."""
    after = "".join(f" · {part}" for part in rest if part)
    left = room_mm - tools.measure.width_pt(after, sheet.margins_pt) * MM_PER_PT
    if left < LEAST_TITLE_MM:
        return tools.measure.shortened(text + after, room_mm, sheet.margins_pt)
    return tools.measure.shortened(text, left, sheet.margins_pt) + after


def head_mm(one: PreparedScript, sheet: Sheet, tools: PaperTools, count: int) -> float:
    """Width of the head's text at its start: what the page's number and the digest leave."""
    page = tools.words("page {n} of {total}").replace("{n}", str(count)).replace("{total}", str(count))
    texts = (page, f"{tools.words('wording')} {one.digest}")
    taken = max(tools.measure.width_pt(text, sheet.margins_pt) for text in texts) * MM_PER_PT + HEAD_GAP_MM
    whole = sheet.width_mm - sheet.margin_mm - min(sheet.end_mm, sheet.margin_mm)
    return max(whole - taken, LEAST_HEAD * whole)


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

    def __init__(self, items: Items) -> None:
        self.items = items
        self.one, self.sheet, self.tools, self.variant = items.one, items.sheet, items.tools, items.variant
        self.line_number, self.head_mm = 0, 0.0

    def pages(self) -> list[PageView]:
        filled, cards = fill_pages(self.items), guest_cards(self.one, self.sheet, self.tools)
        self.head_mm = head_mm(self.one, self.sheet, self.tools, len(filled) + len(cards))
        views = [self._page(n, page, filled[n] if n < len(filled) else None) for n, page in enumerate(filled, 1)]
        for card in cards:
            views.append(PageView(len(views) + 1, card=card, segment=self._segment(card.title, "")))
        return views

    def _page(self, number: int, page: Page, following: Page | None) -> PageView:
        inside = next((p.item.key[0] for p in page.pieces if p.item.kind not in ("title", "sum", "box")), 0)
        segment = self.one.timing.segments[inside] if self.one.timing.segments else None
        title, time = (segment.title, clock_text(segment.timing.mean_s)) if segment else ("", "")
        return PageView(
            number,
            pieces=[self._piece(piece) for piece in page.pieces],
            segment=self._segment(title, time),
            following=self._first_words(following) if following else "",
            goes_on=following is not None,
        )

    def _segment(self, title: str, time: str) -> str:
        """A segment with its running time, and the script's date."""
        date = "" if self.sheet.narrow else _date(self.one)
        first, *rest = [part for part in (isolated(title, self.one.direction), time, date) if part] or [""]
        return _with_rest(first, rest, self.sheet, self.tools, self.head_mm)

    def _first_words(self, page: Page) -> str:
        """The words that the next page begins with, title or copy; where it has none, its first cue."""
        said = (p.item.text[p.start : p.end] for p in page.pieces if p.item.kind in ("heading", "copy"))
        cues = (entry for piece in page.pieces for row in piece.rows for entry in row.row.entries)
        cue = next((" ".join((entry.number, *entry.lines)) for entry in cues if entry.kind == "cue"), "")
        text = next((words for text in said if (words := text.split())), cue.split())
        room = (self.sheet.width_mm - 2 * self.sheet.margin_mm) * 0.5
        return self.tools.measure.shortened(" ".join(text[:NEXT_WORDS]), room, FOOT_PT).removesuffix(" …")

    # -- pieces -----------------------------------------------------------------------------------------------

    def _piece(self, piece: Piece) -> PieceView:
        item = piece.item
        lines = tuple(self._copy_lines(piece)) if item.kind == "copy" else tuple(_plain(p) for p in piece.rows)
        return PieceView(item.kind, item.text, lines, item.lines, item.box)

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
