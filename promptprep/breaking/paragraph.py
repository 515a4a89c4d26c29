"""Breaks paragraphs into lines at groups of sense."""

from __future__ import annotations

import math
import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from promptprep.breaking.lists import lists_of
from promptprep.breaking.optimum import Part, Weights, best_ends, weights_for
from promptprep.breaking.pieces import Cutter, Measure, is_blank, line_ends
from promptprep.breaking.sense import Sense, costs, sentence_spans
from promptprep.errors import BadGeometry
from promptprep.model.language import LanguageData
from promptprep.model.ports import Engines, Word
from promptprep.spans import Span

_FEEDS = re.compile("\r\n|[\n\r\v\f\x85\u2028\u2029]")
_TRIES = 4
_NO_WORD = re.compile(r"\S{200,}")
_MARK = re.compile(r"[\W_]")
_TOLERANCE_EM = 1e-6


@dataclass(frozen=True, slots=True)
class BrokenParagraph:
    """Lines of one text as spans without the blanks around them; `widths_em` as they are shown.

    `cut` holds the words that are wider than the column, with the width that each needs.
    """

    lines: tuple[Span, ...]
    widths_em: tuple[float, ...]
    ends_sentence: tuple[bool, ...]
    cut: tuple[tuple[Span, float], ...] = ()


def break_paragraph(
    text: str, width_em: float, data: LanguageData, engines: Engines, *, stress: Sequence[Span] = ()
) -> list[Span]:
    """Lines of `text` in a column of `width_em`, as spans without the blanks around them.

    A line feed ends a line. Blanks inside a line count as one space. `stress` (in order) is measured in bold.
    Raises `BadGeometry` unless the width is positive and finite.
    """
    return list(break_paragraphs([text], width_em, data, engines, stress=[stress])[0].lines)


def break_paragraphs(
    texts: Sequence[str],
    width_em: float,
    data: LanguageData,
    engines: Engines,
    *,
    stress: Sequence[Sequence[Span]] = (),
    sentence_per_line: bool = False,
) -> list[BrokenParagraph]:
    """Like `break_paragraph` for many texts, whose structure is asked for at once."""
    check_width(width_em)
    lists = lists_of(data)
    ends = [engines.breaks.sentences(text, data.tag) for text in texts]
    words = _parsed(texts, ends, data, engines)
    bold = bool(data.maybe("fonts", "bold", True))
    drafts = []
    for i, text in enumerate(texts):
        sense = Sense(text, data.tag, lists, engines.breaks, ends[i], words[i] if words else None)
        measure = Measure(engines.shaper, data.tag, bold)
        cutter = Cutter(text, width_em, measure, engines.breaks, tuple(stress[i]) if stress else ())
        drafts.append(_draft(sense, cutter, sentence_per_line))
    parts = [part for draft in drafts for part in draft.parts]
    weights = iter(weights_for(parts, width_em, lists.line_price, lists.line_growth))
    return [_finished(draft, [next(weights) for _ in draft.parts]) for draft in drafts]


def check_width(width_em: float) -> None:
    if not (isinstance(width_em, int | float) and math.isfinite(width_em) and width_em > 0):
        raise BadGeometry("bad-column", f"a column cannot be {width_em!r} em wide", "give a positive width, such as 18")


def _parsed(
    texts: Sequence[str], ends: Sequence[Sequence[int]], data: LanguageData, engines: Engines
) -> list[list[Word]] | None:
    """The structure of each text, parsed sentence by sentence so that a sentence met again costs nothing."""
    spans = [sentence_spans(own) for own in ends]
    sentences = [_plain(span.of(text)) for text, own in zip(texts, spans, strict=True) for span in own]
    parsed = engines.structure.parse(sentences, data.tag)
    if parsed is None:
        return None
    left = iter(parsed)
    return [_joined(own, left) for own in spans]


def _plain(sentence: str) -> str:
    """The sentence, as long as it was, without marks in words that are none for their length.

    A tokenizer takes marks off a word one by one and looks at all that is left each time.
    """
    return _NO_WORD.sub(lambda found: _MARK.sub("x", found[0]), sentence)


def _joined(spans: Sequence[Span], parsed: Iterator[tuple[Word, ...]]) -> list[Word]:
    """The words of a text's sentences with places and heads in the whole text."""
    words: list[Word] = []
    for n, span in enumerate(spans):
        base = len(words)
        words += [
            Word(w.start + span.start, w.end + span.start, w.pos, w.head + base, w.relation, n) for w in next(parsed)
        ]
    return words


@dataclass(frozen=True, slots=True)
class _Draft:
    """A text cut into pieces, before its lines are chosen."""

    sense: Sense
    cutter: Cutter
    parts: tuple[Part, ...]
    cut: tuple[tuple[Span, float], ...]


def _draft(sense: Sense, cutter: Cutter, sentence_per_line: bool) -> _Draft:
    ends = line_ends(sense.text, sense.language, sense.breaks)
    parts: list[Part] = []
    cut: list[tuple[Span, float]] = []
    for part in _parts(sense, sentence_per_line):
        own = ends[bisect_right(ends, part.start) : bisect_left(ends, part.end)]
        pieces, wide = cutter.pieces(part, own)
        parts.append(Part(pieces, costs(sense, pieces, cutter.width_em)))
        cut += wide
    return _Draft(sense, cutter, tuple(parts), tuple(cut))


def _finished(draft: _Draft, weights: Sequence[Weights]) -> BrokenParagraph:
    parts = zip(draft.parts, weights, strict=True)
    lines = [line for part, own in parts for line in _lines(part, own, draft.cutter)]
    widths = draft.cutter.measure.widths_em(draft.sense.text, lines, draft.cutter.stress)
    return BrokenParagraph(tuple(lines), tuple(widths), tuple(_ends_sentence(draft.sense, lines)), draft.cut)


def _parts(sense: Sense, sentence_per_line: bool) -> list[Span]:
    """What is broken for itself: between line feeds, or sentence by sentence."""
    ends = {found.end() for found in _FEEDS.finditer(sense.text)} | {len(sense.text)}
    if sentence_per_line:
        ends |= set(sense.sentence_ends)
    return sentence_spans(sorted(ends))


def _lines(part: Part, weights: Weights, cutter: Cutter) -> list[Span]:
    """The best lines; broken anew in a narrower column should a line, shaped whole, come out wider than its pieces."""
    pieces, column = part.pieces, cutter.width_em
    lines: list[Span] = []
    for _ in range(_TRIES if pieces else 0):
        ends = best_ends(pieces, part.costs, column, weights)
        starts = [0, *(end + 1 for end in ends[:-1])]
        lines = [Span(pieces[a].span.start, pieces[b].span.end) for a, b in zip(starts, ends, strict=True)]
        widest = max(cutter.measure.widths_em(cutter.text, lines, cutter.stress))
        if widest <= cutter.width_em + _TOLERANCE_EM:
            break
        column -= widest - cutter.width_em
    return lines


def _ends_sentence(sense: Sense, lines: Sequence[Span]) -> list[bool]:
    ends = sense.sentence_ends
    found = []
    for line in lines:
        i = bisect_left(ends, line.end)
        found.append(i < len(ends) and is_blank(sense.text, line.end, ends[i]))
    return found
