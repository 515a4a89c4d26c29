"""Two numbers near each other that sound alike."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.errors import UnknownLanguage
from promptprep.model.language import UNSPACED
from promptprep.spans import Span

_NEAR = Parameter(40, "words", "within one or two sentences of each other; common practice, no source")
_NUMBER = re.compile(r"(?<![\d.,])(\d{1,3})(?:[.,'\u00a0\u202f]000)*(?![\d])")


def find(context: Context) -> Iterator[Hit]:
    pairs = _pairs(context)
    if not pairs:
        return
    near = int(context.limit("confusable-figures.words", _NEAR.value)) * (3 if context.base in UNSPACED else 6)
    spelled = _spelled(context, {n for pair in pairs for n in pair})
    for passage in context.passages:
        said = sorted(_numbers(passage, spelled))
        for (one, first), (two, second) in pairwise(said):
            if (first, second) in pairs and two.start - one.end <= near:
                whole = Span(one.start, two.end)
                message = f"{one.of(passage.text)} and {two.of(passage.text)} sound alike"
                hint = "say one of them another way, keep them apart, or show them in a graphic"
                yield Hit(passage.source(whole), message, hint)


def _pairs(context: Context) -> set[tuple[int, int]]:
    written = (tuple(int(n) for n in pair.split()) for pair in context.listed("confusable"))
    return {pair for low, high in written for pair in ((low, high), (high, low))}


def _spelled(context: Context, wanted: set[int]) -> dict[str, int]:
    """The numbers' words, where a number is one word; for digits no list is needed."""
    words = {}
    for number in wanted:
        try:
            word = context.engines.speller.spell(number, context.language.tag)
        except UnknownLanguage:
            continue
        if number > 9 and " " not in word and context.base not in UNSPACED:
            words[word.lower()] = number
    return words


def _numbers(passage: Passage, spelled: dict[str, int]) -> Iterator[tuple[Span, int]]:
    for word in passage.words:
        if word.key in spelled:
            yield word.span, spelled[word.key]
    for found in _NUMBER.finditer(passage.text):
        reading = passage.reading_at(found.start())
        if reading is None or reading.kind not in ("date", "clock", "telephone", "serial", "url", "score"):
            yield Span(*found.span()), int(found[1])


RULE = Rule(
    name="confusable-figures",
    level="look",
    find=find,
    sees="Two numbers close together whose words sound nearly the same, such as fifteen and fifty.",
    trips="The reader slips from one to the other, and a listener cannot tell which was said.",
    sources=("pairs of each language: from memory, in its faults table",),
    parameters={"words": _NEAR},
    fires="The price went from 15 to 50 euros.",
    silent="The price went from 20 to 50 euros.",
)
