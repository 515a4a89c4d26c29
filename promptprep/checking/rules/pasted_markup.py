"""Code, tags or a table in the copy."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule

_SAID = {
    "code": ("this looks like code", "take it out; what is to be said goes in words"),
    "markup": ("this looks like code: tags from a page", "take the tags out and keep the words"),
    "table": ("this looks like a table", "say what it shows in a sentence or two, and give the table to a graphic"),
}


def find(context: Context) -> Iterator[Hit]:
    for one in context.pasted:
        message, hint = _SAID[one.kind]
        yield Hit(one.span, f"{message}, and would be read out", hint)


RULE = Rule(
    name="pasted-markup",
    level="look",
    find=find,
    languages=EVERY,
    sees="Program code, tags of a page, or rows of a table that were pasted into the copy.",
    trips="None of its signs has words, and a reader who meets it at the lens can only stop.",
    sources=("promptprep's script format",),
    fires="| Planet | Rises |\n|---|---|\n| Mars | 8:10 |",
    silent="Mars rises at ten past eight.",
)
