"""Places in a text: half-open spans of character offsets, and their line and column."""

from __future__ import annotations

from bisect import bisect_right
from typing import NamedTuple


class Span(NamedTuple):
    """Characters `start` up to but not including `end` of one text."""

    start: int
    end: int

    def __len__(self) -> int:
        return self.end - self.start

    def shifted(self, by: int) -> Span:
        return Span(self.start + by, self.end + by)

    def of(self, text: str) -> str:
        return text[self.start : self.end]

    def overlaps(self, other: Span) -> bool:
        return self.start < other.end and other.start < self.end


class LineIndex:
    """Turns character offsets of one text into (line, column), both from 1.

    Lines end at LF, CRLF or CR. Built once in linear time, asked in logarithmic time.
    """

    def __init__(self, text: str) -> None:
        starts = [0]
        i = 0
        while (i := _next_line(text, i)) >= 0:
            starts.append(i)
        self._starts = starts

    def place(self, offset: int) -> tuple[int, int]:
        row = bisect_right(self._starts, offset) - 1
        return row + 1, offset - self._starts[row] + 1


def _next_line(text: str, start: int) -> int:
    """Offset just after the next line end at or after `start`, or -1."""
    lf, cr = text.find("\n", start), text.find("\r", start)
    if cr >= 0 and (lf < 0 or cr < lf):
        return cr + (2 if text.startswith("\r\n", cr) else 1)
    return lf + 1 if lf >= 0 else -1
