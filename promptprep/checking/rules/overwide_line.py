"""A line that is wider than its column."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule

_SLACK_EM = 0.01


def find(context: Context) -> Iterator[Hit]:
    if context.broken is None:
        return
    width = context.broken.column.width_em
    for line in context.broken.lines:
        passage = context.passage_of(line)
        if passage is not None and line.width_em > width + _SLACK_EM:
            message = f"this line is {line.width_em:.1f} em wide, the column {width:.1f} em"
            yield Hit(passage.source(line.span), message, "use smaller type, a wider column, or a shorter word")


RULE = Rule(
    name="overwide-line",
    level="fix",
    find=find,
    languages=EVERY,
    sees="A line that cannot be broken and does not fit the rig's column.",
    trips="Its end is cut off on the screen.",
    sources=("widths measured with the embedded fonts",),
    fires="",
    silent="Good evening.",
)
