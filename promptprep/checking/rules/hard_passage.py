"""A passage that its language's readability formula calls hard."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from promptprep.checking.context import Context, Passage
from promptprep.checking.readability import FORMULAS
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.spans import Span

_ENOUGH = Parameter(100, "words", "Flesch 1948, J Appl Psychol 32:221: samples of 100 words (from memory)")


def find(context: Context) -> Iterator[Hit]:
    enough = int(context.limit("hard-passage.words", _ENOUGH.value))
    formula = FORMULAS.get(context.base)
    if formula is None:
        return
    for number, group in groupby(context.passages, key=lambda p: p.segment):
        passages = list(group)
        words = sum(len(p.words) for p in passages)
        if words < enough:
            continue
        value = formula.value(words, _sentences(passages), max(_syllables(context, passages), 1))
        if formula.is_hard(value):
            place = context.script.segments[number].heading_span or passages[0].source(Span(0, 1))
            message = f"hard by {formula.name}: {value:.0f} (hard from {formula.hard:.0f}), over {words} words"
            yield Hit(place, message, "shorter sentences and shorter words; the other findings show where")


def _sentences(passages: Sequence[Passage]) -> int:
    return max(sum(bool(s.words) for p in passages for s in p.sentences), 1)


def _syllables(context: Context, passages: Sequence[Passage]) -> int:
    keys = [word.key for passage in passages for word in passage.words]
    return sum(max(count, 1) for _, count in context.engines.phonemes.counts(keys, context.language.tag))


RULE = Rule(
    name="hard-passage",
    level="look",
    find=find,
    languages=tuple(FORMULAS),
    sees="A segment of 100 words or more that is hard by the readability formula made for its language.",
    trips="Long sentences of long words: a formula cannot say where, but a listener will be lost somewhere.",
    sources=tuple(f"{tag}: {f.name}. {f.source}" for tag, f in FORMULAS.items()),
    parameters={"words": _ENOUGH},
    fires="",
    silent="Good evening.",
)
