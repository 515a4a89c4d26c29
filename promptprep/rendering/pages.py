"""Fills printed pages: a page ends where a sentence ends, better where a paragraph or a segment does.

Beside the copy runs a lane with times and cues. An entry stands at the row that it belongs to; where entries need
more room than the rows, they run on down the lane, and the copy waits only when they would fall more than a line
behind.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from itertools import accumulate, takewhile
from typing import NamedTuple

from promptprep.rendering.page_items import Group, Item, Row, groups_of

ENDS_EARLY = 0.15  # a page may end this part of its height early to end with a paragraph
TAIL = 0.4  # of a page's height, at most, that is kept with the last sentence before it
FEWEST = 2  # lines of a sentence that is cut that must fit
NARROW_EM = 0.2  # no text is narrower a character, so that a page's worth of it can be bounded


@dataclass(frozen=True, slots=True)
class Placed:
    """A row with its top and the tops of its entries, in points from the top of the page's body."""

    row: Row
    top_pt: float
    entry_tops_pt: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Piece:
    """An item, or the part of a copy item from `start` to `end`, on one page."""

    item: Item
    start: int
    end: int
    rows: tuple[Placed, ...]


class Cursor(NamedTuple):
    """How far down a page copy and lane have come."""

    copy_pt: float = 0.0
    lane_pt: float = 0.0


@dataclass(slots=True)
class Page:
    pieces: list[Piece] = field(default_factory=list)
    at: Cursor = field(default_factory=Cursor)


class Filler:
    """Puts items on pages of `body_pt`.

    `rows(item, start, end)` breaks a part of a copy item into its lines. `drop_pt` is how far an entry's first line
    lies below the top of its row's line, so that both stand on one base line.
    """

    def __init__(
        self,
        body_pt: float,
        line_pt: float,
        width_em: float,
        rows: Callable[[Item, int, int], Sequence[Row]],
        drop_pt: float = 0.0,
    ) -> None:
        self.body_pt = body_pt
        self.line_pt = line_pt
        self.most = int((body_pt / line_pt + 2) * max(width_em, 1) / NARROW_EM)
        self.rows = rows
        self.drop_pt = drop_pt
        self.pages: list[Page] = [Page()]
        self.tail: Sequence[Item] = ()

    def fill(self, items: Sequence[Item]) -> list[Page]:
        """Pages for all items in order. No heading, cue or note stays behind as the last thing before its copy, and
        what belongs to a paragraph's end has its last sentence with it."""
        for group in groups_of(items):
            self._put(group)
        return [page for page in self.pages if page.pieces]

    # -- one group: what leads to a paragraph, the paragraph, what belongs to its end -----------------------------

    def _put(self, group: Group) -> None:
        lead, copy = group.lead, group.copy
        self.tail = self._kept(group.tail)
        if self.pages[-1].pieces and self._better_over(lead, copy):
            self._turn()
        for n, item in enumerate(lead):
            with_it = lead[n : n + 2] if item.kind == "heading" else [item]
            self._lead(item, with_it)
        if copy is not None:
            self._copy(copy)
        for item in group.tail:
            self._lead(item, [item])

    def _kept(self, tail: Sequence[Item]) -> Sequence[Item]:
        """As much of a paragraph's end matter as is kept with its last sentence: the first of it, and what is small."""
        heights = accumulate(max(item.row.height_pt, sum(e.height_pt for e in item.row.entries)) for item in tail)
        return tail[: max(1, sum(height <= TAIL * self.body_pt for height in heights))]

    def _better_over(self, lead: Sequence[Item], copy: Item | None) -> bool:
        """Whether a group reads better from the top of the next page."""
        here = self._after_lead(lead, self.pages[-1].at)
        if here is None:
            return self._after_lead(lead, Cursor()) is not None
        if copy is None:
            return False
        end = self._sentence_end(copy, 0)
        first = self.rows(copy, 0, end)
        if self._after_part(copy, end, first, here, copy.gap_pt) is None:
            return self._fits_over(lead, copy, end) or self._how_many(first, here, copy.gap_pt) < FEWEST
        free = self.body_pt - max(self.pages[-1].at.copy_pt, self.pages[-1].at.lane_pt)
        if free > ENDS_EARLY * self.body_pt or len(copy.text) > self.most:
            return False
        end = len(copy.text)
        whole = self.rows(copy, 0, end)
        return self._after_part(copy, end, whole, here, copy.gap_pt) is None and self._fits_over(lead, copy, end)

    def _fits_over(self, lead: Sequence[Item], copy: Item, end: int) -> bool:
        top = self._after_lead(lead, Cursor())
        rows = self.rows(copy, 0, end)
        return top is None or not lead or self._after_part(copy, end, rows, top, copy.gap_pt) is not None

    def _after_part(self, copy: Item, end: int, rows: Sequence[Row], at: Cursor, gap: float) -> Cursor | None:
        """Where the page stands after a part of a paragraph, and after what belongs to its end if that is reached."""
        after = self._after(rows, at, gap)
        return after if after is None or end < len(copy.text) else self._after_lead(self.tail, after)

    def _after_lead(self, lead: Sequence[Item], at: Cursor) -> Cursor | None:
        here: Cursor | None = at
        for item in lead:
            here = None if here is None else self._after([item.row], here, item.gap_pt if here != Cursor() else 0.0)
        return here

    def _lead(self, item: Item, with_it: Sequence[Item]) -> None:
        """Places an item, over the page if it and what must stand with it don't fit here."""
        if self.pages[-1].pieces and self._after_lead(with_it, self.pages[-1].at) is None:
            self._turn()
        gap = item.gap_pt if self.pages[-1].pieces else 0.0
        self._place(item, 0, len(item.text), [item.row], gap)

    # -- copy -------------------------------------------------------------------------------------------------

    def _copy(self, item: Item) -> None:
        start = 0
        while start < len(item.text):
            gap = item.gap_pt if self.pages[-1].pieces else 0.0
            end, rows = self._fitting(item, start, gap)
            if not rows and self._waits(item, start, gap):
                self._turn()
                continue
            if not rows:
                end, rows = self._cut_sentence(item, start, gap)
            self._place(item, start, end, rows, gap)
            start = end
            if start < len(item.text):
                self._turn()

    def _fitting(self, item: Item, start: int, gap: float) -> tuple[int, Sequence[Row]]:
        """The longest part from `start` that ends a sentence and fits, with its rows; no rows where none does."""
        first = bisect_right(item.sentences, start)
        last = bisect_right(item.sentences, start + self.most)
        ends = list(item.sentences[first:last])
        while ends:
            rows = self.rows(item, start, ends[-1])
            page = self.pages[-1]
            fit = self._how_many(rows, page.at, gap)
            if fit == len(rows):
                alone = len(ends) == 1 and not page.pieces
                if alone or self._after_part(item, ends[-1], rows, page.at, gap) is not None:
                    return ends[-1], rows
                ends.pop()  # the last sentence goes over with what belongs to it
                continue
            limit = rows[fit - 1].span.end if fit else start
            said = [len(item.text[start:end].rstrip()) + start for end in ends]
            del ends[min(max(bisect_right(said, limit), 1), len(ends) - 1) :]
        return start, ()

    def _waits(self, item: Item, start: int, gap: float) -> bool:
        """Whether the next sentence goes over the page: it fits there whole, or next to nothing of it fits here."""
        page = self.pages[-1]
        if not page.pieces:
            return False
        rows = self.rows(item, start, self._sentence_end(item, start))
        above = takewhile(lambda piece: piece.item.kind != "copy", reversed(page.pieces))
        titled = any(piece.item.kind == "heading" for piece in above)
        if not titled and self._after(rows, Cursor(), 0.0) is not None:
            return True
        return self._how_many(rows, page.at, gap) < (1 if titled else FEWEST)

    def _sentence_end(self, item: Item, start: int) -> int:
        return min(item.sentences[bisect_right(item.sentences, start)], start + self.most)

    def _cut_sentence(self, item: Item, start: int, gap: float) -> tuple[int, Sequence[Row]]:
        """As many lines of a sentence as fit: only a sentence that fits on no page is cut."""
        end = self._sentence_end(item, start)
        rows = self.rows(item, start, end)
        fit = max(1, self._how_many(rows, self.pages[-1].at, gap))
        stop = rows[fit - 1].span.end if fit < len(rows) else end
        while stop < len(item.text) and item.text[stop].isspace():
            stop += 1
        return stop, rows[:fit]

    # -- places -----------------------------------------------------------------------------------------------

    def _placed(self, row: Row, at: Cursor, gap: float) -> tuple[Placed, Cursor]:
        top = at.copy_pt + gap
        if row.clear:
            top = max(top, at.lane_pt)
        elif row.entries:
            top = max(top, at.lane_pt - self.line_pt)
        lane = max(top + row.lead_pt + (0.0 if row.height_pt == 0 else self.drop_pt), at.lane_pt)
        tops = []
        for entry in row.entries:
            tops.append(lane)
            lane += entry.height_pt
        return Placed(row, top, tuple(tops)), Cursor(top + row.height_pt, lane if row.entries else at.lane_pt)

    def _after(self, rows: Sequence[Row], at: Cursor, gap: float) -> Cursor | None:
        """Where the page stands after these rows; None if they do not fit."""
        for row in rows:
            _, at = self._placed(row, at, gap)
            gap = 0.0
            if max(at) > self.body_pt:
                return None
        return at

    def _how_many(self, rows: Sequence[Row], at: Cursor, gap: float) -> int:
        for n, row in enumerate(rows):
            _, at = self._placed(row, at, gap)
            gap = 0.0
            if max(at) > self.body_pt:
                return n
        return len(rows)

    def _turn(self) -> None:
        if self.pages[-1].pieces:
            self.pages.append(Page())

    def _place(self, item: Item, start: int, end: int, rows: Sequence[Row], gap: float) -> None:
        page = self.pages[-1]
        placed = []
        for row in rows:
            done, page.at = self._placed(row, page.at, gap)
            placed.append(done)
            gap = 0.0
        page.pieces.append(Piece(item, start, end, tuple(placed)))
