"""A character that no font here can show."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import EVERY, Hit, Rule
from promptprep.spans import Span


def find(context: Context) -> Iterator[Hit]:
    missing = set(context.broken.missing) if context.broken else set()
    if not missing:
        return
    for passage in context.passages:
        for at, char in enumerate(passage.text):
            if char in missing and not _emoji(passage, at):
                message = f"no font here can show {char!r} (U+{ord(char):04X})"
                yield Hit(passage.source(Span(at, at + 1)), message, "write it another way")


def _emoji(passage: Passage, at: int) -> bool:
    """Whether the character belongs to an emoji: bare-symbol says that it is neither shown nor said."""
    reading = passage.reading_at(at)
    return reading is not None and reading.kind == "emoji"


RULE = Rule(
    name="unshown-character",
    level="fix",
    find=find,
    languages=EVERY,
    sees="A character for which none of the fonts on screen and paper has a shape.",
    trips="An empty box stands on the prompter where a word should be.",
    sources=("the fonts that are embedded, by HarfBuzz",),
    fires="",
    silent="Good evening.",
)
