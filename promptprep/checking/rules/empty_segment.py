"""A heading with nothing under it."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule
from promptprep.model.script import Note, Remark


def find(context: Context) -> Iterator[Hit]:
    segments = context.script.segments
    for number, segment in enumerate(segments):
        deeper = number + 1 < len(segments) and segments[number + 1].level > segment.level
        empty = all(isinstance(block, Note | Remark) for block in segment.blocks)
        if empty and segment.heading_span is not None and not deeper:
            message = f"nothing is said or cued under {segment.title!r}"
            yield Hit(segment.heading_span, message, "write its copy, or take the heading out")


RULE = Rule(
    name="empty-segment",
    level="look",
    find=find,
    languages=EVERY,
    sees="A segment with neither copy nor a cue.",
    trips="It takes a line in the running order and on the crew sheet, and everybody waits for it.",
    sources=("promptprep's script format",),
    fires="# Opening\n\nGood evening.\n\n# The probe\n\n# Close\n\nGood night.",
    silent="# Opening\n\nGood evening.\n\n# Close\n\nGood night.",
)
