"""A negation on top of another."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import Hit, Rule
from promptprep.checking.rules.patterned import compiled, matches


def find(context: Context) -> Iterator[Hit]:
    for passage, span, _ in matches(context, compiled(context.listed("double_negation"))):
        yield Hit(
            passage.source(span), "one negation on top of another", "say what is so, instead of what is not not so"
        )


RULE = Rule(
    name="doubled-negation",
    level="look",
    find=find,
    sees="Two negations in one clause that cancel each other, by the patterns of each language.",
    trips="A listener has to work out the sense and misses what comes next; a reader stresses the wrong half.",
    sources=("patterns of each language: from memory, in its faults table",),
    fires="It is not impossible that we see the comet tonight.",
    silent="We may see the comet tonight.",
)
