"""A mark that the writer meant to come back to."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import Hit, Rule
from promptprep.checking.rules.patterned import compiled, matches


def find(context: Context) -> Iterator[Hit]:
    for passage, span, mark in matches(context, compiled(context.listed("unmarked"))):
        yield Hit(passage.source(span), f"{mark!r} was left by the writer", "finish the copy, or take the mark out")


RULE = Rule(
    name="unfinished-copy",
    level="fix",
    find=find,
    sees="A writer's mark for something to be filled in or checked: TODO, three question marks.",
    trips="The reader finds it at the lens, and reads it out.",
    sources=("common practice, no source",),
    fires="The moon rises at TODO this evening.",
    silent="The moon rises at eight this evening.",
)
