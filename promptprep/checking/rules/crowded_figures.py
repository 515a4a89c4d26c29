"""Numbers packed too close together."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.figures import Figure, figures
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.words import Sentence
from promptprep.spans import Span

_MOST = Parameter(4, "figures a sentence", "about four chunks are held at once: Cowan 2001 (from memory)")

_PARTS = frozenset("年月日号號时時分点點년월일시분")  # between the figures of one date or time


def find(context: Context) -> Iterator[Hit]:
    most = int(context.limit("crowded-figures.figures", _MOST.value))
    for passage in context.passages:
        found = figures(passage)
        if len(found) < most:
            continue
        for sentence in passage.sentences:
            inside = _separate(passage, sentence, found)
            if len(inside) >= most:
                span = Span(inside[0].span.start, inside[-1].span.end)
                message = f"{len(inside)} figures in one sentence"
                yield Hit(passage.source(span), message, "keep the one that matters; give the others to a graphic")


def _separate(passage: Passage, sentence: Sentence, found: list[Figure]) -> list[Figure]:
    """The sentence's figures; those of one date or time count once."""
    kept: list[Figure] = []
    last_end = 0
    first = bisect_left(found, sentence.span.start, key=lambda f: f.span.start)
    last = bisect_left(found, sentence.span.end, key=lambda f: f.span.start)
    for figure in found[first:last]:
        if not (kept and _goes_on(passage, kept[-1].span, last_end, figure.span)):
            kept.append(figure)
        last_end = figure.span.end
    return kept


def _goes_on(passage: Passage, one: Span, one_end: int, two: Span) -> bool:
    """Whether two figures are parts of one date, time or reading."""
    reading = passage.reading_at(two.start)
    if reading is not None and reading.span.start <= one.start:
        return True
    between = passage.text[one_end : two.start]
    return 0 < len(between) <= 3 and between.strip() in _PARTS


RULE = Rule(
    name="crowded-figures",
    level="look",
    find=find,
    sees="Four or more figures in one sentence.",
    trips="Figures are slow to say and easy to slip on, and a listener has forgotten the first when the last comes.",
    sources=("Cowan 2001, Behavioral and Brain Sciences 24:87 (from memory)",),
    parameters={"figures": _MOST},
    fires="Of 36 moons, 14 are icy, 9 are rock and 13 are dust.",
    silent="Of 36 moons, 14 are icy.",
)
