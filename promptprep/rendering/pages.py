"""Fills printed pages with copy: a page ends where a sentence ends, better where a paragraph or a segment does."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

from promptprep.spans import Span

Breaker = Callable[[str, float], Sequence[Span]]


@dataclass(frozen=True, slots=True)
class Item:
    """Something that stands on a page in one piece or, for copy, sentence by sentence.

    `kind` is "heading", "cue", "note" or "copy". For copy `text` is the paragraph and `sentences` the ends of its
    sentences; `height_pt` of other kinds is known beforehand. `key` says what the item came from.
    """

    kind: str
    text: str
    key: tuple[int, int]
    height_pt: float = 0.0
    sentences: tuple[int, ...] = ()
    gap_pt: float = 0.0


@dataclass(slots=True)
class Piece:
    """An item, or the part of a copy item from `start` to `end`, with its lines as spans of the item's text."""

    item: Item
    start: int
    end: int
    lines: tuple[Span, ...] = ()
    goes_on: bool = False


@dataclass(slots=True)
class Page:
    pieces: list[Piece] = field(default_factory=list)
    used_pt: float = 0.0

    @property
    def goes_on(self) -> bool:
        """Whether the last paragraph goes on over the page's end."""
        return bool(self.pieces) and self.pieces[-1].goes_on


class Filler:
    """Puts items on pages of `body_pt`. `extra_pt` is the height that a line of copy needs above its leading
    (pronunciations stand above their words)."""

    def __init__(
        self,
        body_pt: float,
        line_pt: float,
        width_em: float,
        breaker: Breaker,
        extra_pt: Callable[[Item, Span], float],
    ) -> None:
        self.body_pt = body_pt
        self.line_pt = line_pt
        self.width_em = width_em
        self.breaker = breaker
        self.extra_pt = extra_pt
        self.pages: list[Page] = [Page()]

    def fill(self, items: Sequence[Item]) -> list[Page]:
        """Pages for all items in order. No heading, cue or note stays behind as the last thing on a page."""
        for group in _groups(items):
            self._put(group)
        return [page for page in self.pages if page.pieces]

    # -- one group: headings, cues and notes with the copy that they lead to ----------------------------------

    def _put(self, group: Sequence[Item]) -> None:
        lead = [item for item in group if item.kind != "copy"]
        copy = [item for item in group if item.kind == "copy"]
        lead_pt = sum(item.height_pt + item.gap_pt for item in lead)
        first = self._head_height(copy[0]) if copy else 0.0
        whole = self._height(copy[0]) if copy else 0.0
        free = self._free()
        if self.pages[-1].pieces and lead_pt + first > free:
            self._turn()
        elif (
            self.pages[-1].pieces
            and lead_pt + whole > free
            and lead_pt + whole <= self.body_pt
            and free < 0.25 * self.body_pt
        ):
            self._turn()  # a little space left: the whole paragraph reads better over the page
        for item in lead:
            self._place(Piece(item, 0, len(item.text)), item.height_pt + item.gap_pt)
        for item in copy:
            self._copy(item)

    def _copy(self, item: Item) -> None:
        start = 0
        while start < len(item.text):
            piece, height = self._fitting(item, start)
            if piece is None:
                self._turn()
                continue
            self._place(piece, height)
            start = piece.end
            if piece.goes_on:
                self._turn()

    def _fitting(self, item: Item, start: int) -> tuple[Piece | None, float]:
        """The longest part from `start` that ends a sentence and fits; only a sentence over a page is cut by lines."""
        free = self._free()
        gap = item.gap_pt if self.pages[-1].pieces else 0.0
        for end in reversed([e for e in item.sentences if e > start]):
            lines = self._lines(item, start, end)
            height = gap + self._lines_height(item, lines)
            if height <= free:
                return Piece(item, start, end, lines, end < len(item.text)), height
        if self.pages[-1].pieces:
            return None, 0.0
        return self._cut_sentence(item, start)

    def _cut_sentence(self, item: Item, start: int) -> tuple[Piece, float]:
        end = next(e for e in item.sentences if e > start)
        kept: list[Span] = []
        height = 0.0
        for line in self._lines(item, start, end):
            needed = self.line_pt + self.extra_pt(item, line)
            if kept and height + needed > self.body_pt:
                break
            kept.append(line)
            height += needed
        stop = kept[-1].end
        while stop < len(item.text) and item.text[stop].isspace():
            stop += 1
        return Piece(item, start, stop, tuple(kept), stop < len(item.text)), height

    # -- heights ----------------------------------------------------------------------------------------------

    def _lines(self, item: Item, start: int, end: int) -> tuple[Span, ...]:
        text = item.text[start:end]
        lead = len(text) - len(text.lstrip())
        return tuple(span.shifted(start + lead) for span in self.breaker(text.strip(), self.width_em))

    def _lines_height(self, item: Item, lines: Sequence[Span]) -> float:
        return sum(self.line_pt + self.extra_pt(item, line) for line in lines)

    def _height(self, item: Item) -> float:
        return item.gap_pt + self._lines_height(item, self._lines(item, 0, len(item.text)))

    def _head_height(self, item: Item) -> float:
        """What must fit at least: the first sentence, or one page's worth of it."""
        lines = self._lines(item, 0, item.sentences[0])
        return min(item.gap_pt + self._lines_height(item, lines), self.body_pt)

    # -- pages ------------------------------------------------------------------------------------------------

    def _free(self) -> float:
        return self.body_pt - self.pages[-1].used_pt

    def _turn(self) -> None:
        if self.pages[-1].pieces:
            self.pages.append(Page())

    def _place(self, piece: Piece, height: float) -> None:
        page = self.pages[-1]
        if piece.item.kind != "copy" and page.pieces and height > self._free():
            self._turn()
            page = self.pages[-1]
        if not page.pieces and piece.item.gap_pt:
            piece.item = replace(piece.item, gap_pt=0.0)
        page.pieces.append(piece)
        page.used_pt += height


def _groups(items: Sequence[Item]) -> list[list[Item]]:
    """Each paragraph with what leads to it; what is left at the end is a group of its own."""
    groups: list[list[Item]] = [[]]
    for item in items:
        groups[-1].append(item)
        if item.kind == "copy":
            groups.append([])
    return [group for group in groups if group]
