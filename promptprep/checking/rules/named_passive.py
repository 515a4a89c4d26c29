"""The passive, where the sentence names who does it."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import Hit, Rule
from promptprep.checking.rules.patterned import compiled, matches


def find(context: Context) -> Iterator[Hit]:
    for passage, span, _ in matches(context, compiled(context.listed("passive"))):
        message = "the doer comes last, after a passive"
        yield Hit(passage.source(span), message, "turn it round: who did it, then what")


RULE = Rule(
    name="named-passive",
    level="note",
    find=find,
    sees="A passive that names the doer, by the patterns of each language.",
    trips="The sentence is longer than its active twin and tells who acts only at the end.",
    sources=("patterns of each language: from memory, in its faults table",),
    fires="The comet was discovered by a schoolgirl.",
    silent="A schoolgirl discovered the comet.",
)
