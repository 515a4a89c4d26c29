"""A direction to the crew or the reader that stands in the copy."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import Hit, Rule
from promptprep.checking.rules.patterned import phrases
from promptprep.spans import Span

_BRACKET = re.compile(r"[(（]([^()（）]{1,60})[)）]")


def find(context: Context) -> Iterator[Hit]:
    pattern = phrases(context.listed("directions"), context.base not in ("ja", "zh", "ko"))
    if pattern is None:
        return
    for passage in context.passages:
        for found in _BRACKET.finditer(passage.text):
            if pattern.match(found[1].strip()):
                span = Span(*found.span())
                message = f"{found[0]!r} looks like a direction, and would be read out"
                hint = "make it a cue in square brackets, such as [note: smile], or a note with >"
                yield Hit(passage.source(span), message, hint)


RULE = Rule(
    name="spoken-note",
    level="look",
    find=find,
    sees="A round bracket in the copy that begins with a direction: pause, smile, look, turn, cut.",
    trips="Round brackets are copy: the direction stands on the screen and is read out.",
    sources=("promptprep's script format", "directions of each language: from memory, in its faults table"),
    fires="Good evening (smile to camera) and welcome.",
    silent="Good evening (at last) and welcome.",
)
