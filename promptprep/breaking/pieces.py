"""Cuts a text at every place where a line may end into pieces that a line holds whole."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import Enum
from itertools import pairwise

from promptprep.model.ports import Breaks, Shaper
from promptprep.spans import Span

BLANK = " \t\n\r\f\v\x1c\x1d\x1e\x1f\x85\u1680\u2000-\u2006\u2008-\u200a\u2028\u2029\u205f\u3000"
BLANKS = re.compile(f"[{BLANK}]+")
_NO_BLANK = re.compile(f"[^{BLANK}]")
_HELD_SPACES = re.compile("[\u00a0\u2007\u202f\u2060]+")
_BRACKETS = re.compile(r"[^(<\[{](?=[(<\[{])|[)>\]}](?=[^)>\]}.,;:!?])")
_MANY = 8  # columns
_DASHES = "—⸺"
# Scripts written without spaces between words: Han, kana, bopomofo, Thai, Lao, Myanmar, Khmer.
_UNSPACED = re.compile(
    "[\u0e00-\u0eff\u1000-\u109f\u1780-\u17ff\u2e80-\u2fdf\u3005-\u3007\u3021-\u30ff\u3100-\u312f\u31a0-\u31ff"
    "\u3400-\u4dbf\u4e00-\u9fff\uf900-\ufaff\uff00-\uffef\u3001-\u3003\u3008-\u3020\U00020000-\U0003ffff]"
)


class Cut(Enum):
    """What is cut at a piece's end."""

    NONE = 0
    PLACE = 1
    SYLLABLE = 2
    GRAPHEME = 3


@dataclass(frozen=True, slots=True)
class Piece:
    """What stands between two places where a line may end.

    `span` leaves out the blanks after it, whose width is `blank_em`. `cut` says that the piece ends inside what is
    too wide for the column: at a place that offers itself, between two syllables, or between any two graphemes.
    """

    span: Span
    width_em: float
    blank_em: float = 0.0
    cut: Cut = Cut.NONE


@dataclass(frozen=True, slots=True)
class Measure:
    """Widths of stretches of one text in one language; stretches of stress are bold."""

    shaper: Shaper
    language: str
    bold: bool

    def widths_em(self, text: str, spans: Sequence[Span], stress: Sequence[Span]) -> list[float]:
        """Width of each span; blanks inside it count as one space."""
        if not stress or not self.bold:
            return self.shaper.widths_em([squeezed(span.of(text)) for span in spans], self.language)
        return [sum(self._parts(text, span, stress)) for span in spans]

    def _parts(self, text: str, span: Span, stress: Sequence[Span]) -> list[float]:
        return [
            self.shaper.widths_em([squeezed(part.of(text))], self.language, bold=bold)[0]
            for part, bold in split_by_stress(span, stress)
        ]


def squeezed(text: str) -> str:
    """Blanks as one space each; no-break spaces stay."""
    return BLANKS.sub(" ", text)


def split_by_stress(span: Span, stress: Sequence[Span]) -> list[tuple[Span, bool]]:
    """A span cut where stress begins and ends, with whether each part is stressed. `stress` is in order."""
    parts = []
    at = span.start
    for i in range(bisect_right(stress, span.start, key=lambda stressed: stressed.end), len(stress)):
        start, end = max(at, stress[i].start), min(span.end, stress[i].end)
        if start >= end:
            break
        if at < start:
            parts.append((Span(at, start), False))
        parts.append((Span(start, end), True))
        at = end
    if at < span.end or not parts:
        parts.append((Span(at, span.end), False))
    return parts


def line_ends(text: str, language: str, breaks: Breaks) -> list[int]:
    """Offsets at which a line may end: after blanks, after a long dash, and in scripts without spaces where UAX 14
    allows it. Never at a hyphen, a solidus or inside an address."""
    return [end for end in breaks.lines(text, language) if end < len(text) and _is_open(text, end)]


def _is_open(text: str, end: int) -> bool:
    before, after = text[end - 1], text[end]
    if BLANKS.match(before) or before == "\u200b":
        return True
    if before in _DASHES:
        return True
    return before != "\u00ad" and bool(_UNSPACED.match(before) or _UNSPACED.match(after)) and after not in _DASHES


@dataclass(frozen=True, slots=True)
class Cutter:
    """Cuts one text into pieces for a column of `width_em`."""

    text: str
    width_em: float
    measure: Measure
    breaks: Breaks
    stress: Sequence[Span] = ()

    def pieces(self, span: Span, ends: Sequence[int]) -> tuple[list[Piece], list[tuple[Span, float]]]:
        """The pieces of `span`, none wider than the column unless it is a single grapheme.

        Then what had to be cut for that, with the width that it needs.
        """
        spans, blanks = self._spans(span, ends)
        space_em = self.measure.shaper.widths_em([" "], self.measure.language)[0]
        pieces: list[Piece] = []
        cut: list[tuple[Span, float]] = []
        widths = self.measure.widths_em(self.text, spans, self.stress)
        for own, blank, width in zip(spans, blanks, widths, strict=True):
            parts = [Piece(own, width)]
            if width > self.width_em:
                parts = self._cut(own, width)
                cut.append((own, width))
            parts[-1] = replace(parts[-1], blank_em=space_em if blank else 0.0, cut=Cut.NONE)
            pieces += parts
        return pieces, cut

    def _spans(self, span: Span, ends: Sequence[int]) -> tuple[list[Span], list[bool]]:
        """What is not blank between the ends, each with whether a blank follows."""
        spans: list[Span] = []
        blanks: list[bool] = []
        start = span.start
        for end in [*ends, span.end]:
            bounds = stripped(self.text, Span(start, end))
            if bounds:
                spans.append(bounds)
                blanks.append(bounds.end < end)
            start = end
        return spans, blanks

    def _cut(self, span: Span, width: float) -> list[Piece]:
        """Cuts what no line can hold: at held spaces first, then around brackets, then where UAX 14 allows it, then
        between syllables, at last between graphemes."""
        inner, kind = self._places(span.of(self.text))
        if not inner:
            return [Piece(span, width)]
        bounds = [span.start, *(span.start + end for end in inner), span.end]
        spans = [Span(a, b) for a, b in pairwise(bounds)]
        widths = self.measure.widths_em(self.text, spans, self.stress)
        if width > _MANY * self.width_em:
            spans, widths = self._filled(spans, widths)
        pieces: list[Piece] = []
        for own, own_width in zip(spans, widths, strict=True):
            pieces += [Piece(own, own_width)] if own_width <= self.width_em else self._cut(own, own_width)
            pieces[-1] = replace(pieces[-1], cut=kind)
        return pieces

    def _places(self, part: str) -> tuple[list[int], Cut]:
        """Where a part can be cut, by the first manner that finds a place."""
        for finder, kind in (
            (_after_held_spaces, Cut.PLACE),
            (_around_brackets, Cut.PLACE),
            (self._by_rule, Cut.PLACE),
            (self._by_syllable, Cut.SYLLABLE),
            (self.breaks.graphemes, Cut.GRAPHEME),
        ):
            if inner := [end for end in finder(part) if 0 < end < len(part)]:
                return inner, kind
        return [], Cut.NONE

    def _filled(self, spans: Sequence[Span], widths: Sequence[float]) -> tuple[list[Span], list[float]]:
        """Neighbours joined as far as the column goes: what fills many lines is not weighed place by place."""
        joined: list[Span] = []
        room = 0.0
        for span, width in zip(spans, widths, strict=True):
            if joined and width <= room:
                joined[-1] = Span(joined[-1].start, span.end)
                room -= width
            else:
                joined.append(span)
                room = self.width_em - width
        return joined, self.measure.widths_em(self.text, joined, self.stress)

    def _by_rule(self, part: str) -> list[int]:
        return self.breaks.lines(part, self.measure.language)

    def _by_syllable(self, part: str) -> list[int]:
        return self.breaks.syllables(part, self.measure.language)


def stripped(text: str, span: Span) -> Span | None:
    """A span without blanks around it; None where there is nothing else."""
    found = _NO_BLANK.search(text, span.start, span.end)
    if found is None:
        return None
    stop = span.end
    while BLANKS.match(text[stop - 1]):
        stop -= 1
    return Span(found.start(), stop)


def is_blank(text: str, start: int, end: int) -> bool:
    return _NO_BLANK.search(text, start, end) is None


def _around_brackets(text: str) -> list[int]:
    """Before an opening bracket and after a closing one, as in code."""
    return [found.end() for found in _BRACKETS.finditer(text)]


def _after_held_spaces(text: str) -> list[int]:
    return [found.end() for found in _HELD_SPACES.finditer(text)]
