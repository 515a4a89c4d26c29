"""What a line end costs at each place: by punctuation, by word lists and by the sentence's structure."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from promptprep.breaking.lists import Chunk, Lists, chunk_of, dates, held_fast, list_cost, opens
from promptprep.breaking.optimum import HARD
from promptprep.breaking.pieces import Piece
from promptprep.breaking.tree import tree_costs
from promptprep.model.ports import Breaks, Word
from promptprep.spans import Span

# Cost of a line end by what stands before it. Common practice, no source: after punctuation first.
_STOP, _PAUSE, _COMMA, _OPENER, _PLAIN = 0.0, 0.05, 0.1, 0.3, 0.6
_STOPS = frozenset(".!?…。！？؟।")
_PAUSES = frozenset(";:—–；：؛")
_COMMAS = frozenset(",、，،")
_TRAILING = "\"'”’»›)]}」』）》〉】"
# In scripts without spaces: at the end of a phrase, of a word, and inside a word.
_PHRASE, _WORD, _INSIDE = 0.5, 9.0, 12.0
_LIST_SHARE = 0.5  # of the lists' cost beside a parsed structure, which may be wrong
_SLIVER = 7.0  # a sentence's last short word on a new line
_HEAD = 1.5  # its first short word at a line's end
_SHORT_PART = 0.2  # of the column


@dataclass(frozen=True, slots=True)
class Sense:
    """What is known about one text: its sentences' ends, phrases in scripts without spaces, and structure if any."""

    text: str
    language: str
    lists: Lists
    breaks: Breaks
    sentence_ends: Sequence[int]
    words: Sequence[Word] | None = None


def costs(sense: Sense, pieces: Sequence[Piece], width_em: float) -> list[float]:
    """Cost of a line end after each piece but the last."""
    if len(pieces) < 2:
        return []
    chunks = [_chunk(sense.text, piece) for piece in pieces]
    gaps = [piece.span.start for piece in pieces[1:]]
    known = tree_costs(sense.words, gaps, sense.lists.negations, sense.text) if sense.words else None
    unspaced = _unspaced_costs(sense, pieces)
    slivers = _slivers(sense, pieces, width_em)
    in_date = dates(chunks, sense.lists)
    result = []
    for k in range(len(pieces) - 1):
        if pieces[k].cut or k in in_date or _held(chunks, k, sense.lists):
            result.append(HARD)
            continue
        bond = _bond(chunks, k, sense, pieces) if k not in unspaced else unspaced[k]
        if known is not None:
            bond = max(known[k], bond * _LIST_SHARE)
        result.append(_mark(chunks[k], chunks[k + 1], sense.lists) + bond + slivers[k])
    return result


def _chunk(text: str, piece: Piece) -> Chunk:
    return chunk_of(piece.span.of(text))


def _held(chunks: Sequence[Chunk], k: int, lists: Lists) -> bool:
    return held_fast(chunks[k], chunks[k + 1], chunks[k - 1] if k else None, lists)


def _bond(chunks: Sequence[Chunk], k: int, sense: Sense, pieces: Sequence[Piece]) -> float:
    starts_sentence = k == 0 or _starts_sentence(sense, pieces, k)
    return list_cost(chunks[k], chunks[k + 1], sense.lists, starts_sentence)


def _starts_sentence(sense: Sense, pieces: Sequence[Piece], k: int) -> bool:
    i = bisect_left(sense.sentence_ends, pieces[k - 1].span.end)
    return i < len(sense.sentence_ends) and sense.sentence_ends[i] <= pieces[k].span.start


def _mark(left: Chunk, right: Chunk, lists: Lists) -> float:
    """The cost by punctuation before the place and by what opens behind it."""
    last = left.written.rstrip(_TRAILING)[-1:]
    if last in _STOPS:
        return _STOP
    if last in _PAUSES:
        return _PAUSE
    if last in _COMMAS:
        return _COMMA
    return _OPENER if opens(right, lists) else _PLAIN


def _unspaced_costs(sense: Sense, pieces: Sequence[Piece]) -> dict[int, float]:
    """Costs of places without a blank: phrase, word or inside of a word."""
    tight = [k for k in range(len(pieces) - 1) if not pieces[k].blank_em]
    if not tight:
        return {}
    phrases = set(sense.breaks.phrases(sense.text, sense.language))
    words = set(sense.breaks.words(sense.text, sense.language))
    result = {}
    for k in tight:
        end = pieces[k].span.end
        result[k] = _PHRASE if end in phrases else _WORD if end in words else _INSIDE
    return result


def _slivers(sense: Sense, pieces: Sequence[Piece], width_em: float) -> list[float]:
    """Costs of leaving a sliver: the last short word of a sentence on a new line, or its first at a line's end."""
    short = _SHORT_PART * width_em
    starts = [piece.span.start for piece in pieces]
    result = [0.0] * len(pieces)
    first = 0
    for end in sense.sentence_ends:
        last = bisect_right(starts, end - 1) - 1
        if last < first:
            continue
        if last < len(pieces) - 1 and last > first and pieces[last].width_em < short:
            result[last - 1] += _SLIVER
        if first and last > first and pieces[first].width_em < short:
            result[first] += _HEAD
        first = last + 1
    return result


def sentence_spans(ends: Sequence[int]) -> list[Span]:
    """The spans between 0 and each of the ends."""
    return [Span(start, end) for start, end in pairwise([0, *ends])]
