"""One short word alone on the last line of a paragraph."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Parameter, Rule

_SHARE = Parameter(0.15, "of the column's width", "common practice, no source")


def find(context: Context) -> Iterator[Hit]:
    if context.broken is None:
        return
    short = context.limit("stranded-word.width", _SHARE.value) * context.broken.column.width_em
    for before, line in pairwise(context.broken.lines):
        same = (before.segment, before.block) == (line.segment, line.block)
        passage = context.passage_of(line)
        if same and line.ends_paragraph and line.width_em < short and passage is not None:
            message = f"{line.text.strip()!r} stands alone on the last line"
            yield Hit(passage.source(line.span), message, "a word more or less before it closes the paragraph")


RULE = Rule(
    name="stranded-word",
    level="note",
    find=find,
    languages=EVERY,
    sees="A paragraph whose last line holds one short word.",
    trips="The reader sees the paragraph end one line too early, and drops the voice before the last word.",
    sources=("common practice, no source",),
    parameters={"width": _SHARE},
    fires="",
    silent="Good evening.",
)
