"""What a line end costs at each place: by punctuation, by word lists and by the sentence's structure."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from promptprep.breaking.lists import (
    AFTER,
    YEAR,
    Chunk,
    Lists,
    before_year,
    chunk_of,
    dates,
    held_fast,
    joints,
    leans,
    list_cost,
    measures,
    opens,
)
from promptprep.breaking.optimum import HARD
from promptprep.breaking.pieces import Cut, Piece
from promptprep.breaking.tree import tree_costs
from promptprep.model.ports import Breaks, Word
from promptprep.spans import Span

# Cost of a line end by what stands before it. Common practice, no source: after punctuation first.
_STOP, _PAUSE, _COMMA, _OPENER, _PLAIN = 0.0, 0.05, 0.1, 0.2, 0.8
_STOPS = frozenset(".!?…。！？؟।")
_PAUSES = frozenset(";:—–；：؛")
_COMMAS = frozenset(",、，،")
_ENDS_PHRASE = re.compile("[,;:.!?、，；：。！？…—⸺]")
_HIRAGANA = re.compile("[\u3041-\u309f]")
_TRAILING = "\"'”’»›)]}」』）》〉】"
# In scripts without spaces: at the end of a phrase; and in a phrase that no line holds, at the end of a word, before
# kana that lean on the word, and inside a word.
_PHRASE, _WORD, _LEANING, _INSIDE = 0.5, 9.0, 30.0, 60.0
_CUT = {Cut.PLACE: HARD, Cut.SYLLABLE: 2 * HARD, Cut.GRAPHEME: 4 * HARD}
_SLIVER = 7.0  # a sentence's last short word on a new line
_HEAD = 1.5  # its first short word at a line's end
_TORN, _CLOSE = 2.0, 5.0  # more for that word where it is bound as closely as a subject to its verb
_SHORT_PART = 0.2  # of the column
_SHORT_EM = 2.2  # about four letters: short for a sentence's first word in any column
_ALONE = 8.5  # least cost after a clause's first short word that is bound so closely by structure: ", you | may see"


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
    unspaced = _unspaced_costs(sense, pieces, width_em)
    measured = _inside(pieces, measures(sense.text, sense.lists))
    slivers = _slivers(sense, pieces, width_em)
    in_date = dates(chunks, sense.lists)
    joined = joints(chunks, sense.lists)
    result = []
    for k in range(len(pieces) - 1):
        if pieces[k].cut in _CUT:
            result.append(_CUT[pieces[k].cut])
            continue
        if k in in_date or k in measured or _held(chunks, k, sense.lists):
            result.append(YEAR if _year_may_go(chunks, pieces, k, sense.lists, width_em) else HARD)
            continue
        bond = _bond(chunks, k, sense, pieces) if k not in unspaced else unspaced[k]
        if known is not None:
            bond = max(known[k], bond * sense.lists.share)
        sure = known is not None or chunks[k + 1].word in sense.lists.auxiliaries
        if bond >= _CLOSE and sure and k and chunks[k - 1].ends_clause and _is_short(pieces[k], width_em):
            bond = max(bond, _ALONE)
        if k in joined:
            bond = max(bond, AFTER["prepositions"])
        torn = _TORN if slivers[k] == _HEAD and bond >= _CLOSE else 0.0
        result.append(_mark(chunks[k], chunks[k + 1], sense.lists) + bond + slivers[k] + torn)
    return result


def _chunk(text: str, piece: Piece) -> Chunk:
    return chunk_of(piece.span.of(text))


def _held(chunks: Sequence[Chunk], k: int, lists: Lists) -> bool:
    return held_fast(chunks[k], chunks[k + 1], chunks[k - 1] if k else None, lists)


def _year_may_go(chunks: Sequence[Chunk], pieces: Sequence[Piece], k: int, lists: Lists, width_em: float) -> bool:
    """Whether the year may go to another line: no line holds the date, or it is so wide that the word before it,
    which leans on it and finds no room on the line before, would stand alone."""
    if not before_year(chunks[k], chunks[k + 1], chunks[k - 1] if k else None, lists):
        return False
    if _width(pieces[k - 1 : k + 2]) > width_em:
        return True
    if k < 2 or not leans(chunks[k - 2], lists):
        return False
    if _width(pieces[k - 2 : k + 2]) <= width_em or _width(pieces[k - 2 : k + 1]) > width_em:
        return False
    return k == 2 or chunks[k - 3].ends_clause or _width(pieces[k - 3 : k - 1]) > width_em


def _width(pieces: Sequence[Piece]) -> float:
    return sum(piece.width_em + piece.blank_em for piece in pieces) - pieces[-1].blank_em


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


def _inside(pieces: Sequence[Piece], spans: Sequence[Span]) -> set[int]:
    """The pieces that end inside one of the spans, which are in order."""
    ends = [piece.span.end for piece in pieces]
    return {k for span in spans for k in range(bisect_right(ends, span.start), bisect_left(ends, span.end))}


def _unspaced_costs(sense: Sense, pieces: Sequence[Piece], width_em: float) -> dict[int, float]:
    """Costs of places without a blank: at a phrase's end, or inside one, which is cut only where no line holds it."""
    tight = [k for k in range(len(pieces) - 1) if not (pieces[k].blank_em or pieces[k].cut in _CUT)]
    if not tight:
        return {}
    phrases = set(sense.breaks.phrases(sense.text, sense.language))
    words = sense.breaks.words(sense.text, sense.language)
    ends = set(words)
    result: dict[int, float] = {}
    first = 0
    for k, piece in enumerate(pieces):
        at_end = piece.span.end in phrases or _ENDS_PHRASE.match(sense.text, piece.span.end - 1) is not None
        if not (at_end or piece.blank_em or k == len(pieces) - 1):
            continue
        fits = _width(pieces[first : k + 1]) <= width_em
        for i in range(first, k):
            inner = _inside_phrase(sense.text, pieces[i].span.end, ends)
            result[i] = max(inner, sense.lists.inside_phrase) if fits else inner
        result[k] = max(_PHRASE, _between_words(sense, words, piece.span.end))
        first = k + 1
    return {k: result[k] for k in tight}


def _between_words(sense: Sense, words: Sequence[int], end: int) -> float:
    """The cost by the word lists of a place without a blank, between the words that meet there."""
    at = bisect_left(words, end)
    if at + 1 >= len(words) or words[at] != end:
        return 0.0
    left, right = Span(words[at - 1] if at else 0, end), Span(end, words[at + 1])
    return list_cost(chunk_of(left.of(sense.text)), chunk_of(right.of(sense.text)), sense.lists, starts_sentence=True)


def _inside_phrase(text: str, end: int, words: set[int]) -> float:
    if end not in words:
        return _INSIDE
    return _LEANING if _HIRAGANA.match(text, end) else _WORD


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
        if first and last > first and _is_short(pieces[first], width_em):
            result[first] += _HEAD
        first = last + 1
    return result


def _is_short(first: Piece, width_em: float) -> bool:
    return first.width_em < max(_SHORT_PART * width_em, _SHORT_EM)


def sentence_spans(ends: Sequence[int]) -> list[Span]:
    """The spans between 0 and each of the ends."""
    return [Span(start, end) for start, end in pairwise([0, *ends])]
