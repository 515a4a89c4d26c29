"""A note that reads like copy."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Parameter, Rule
from promptprep.model.language import UNSPACED
from promptprep.model.script import Note

_STOP = re.compile(r"[.!。！।؟?？](?:\s|$|[」”\"])|[。！？]")
_SENTENCES = Parameter(3, "full sentences", "common practice, no source")
_WORDS = Parameter(30, "words, or 60 characters without spaces", "common practice, no source")


def find(context: Context) -> Iterator[Hit]:
    most = int(context.limit("copy-like-note.sentences", _SENTENCES.value))
    words = int(context.limit("copy-like-note.words", _WORDS.value))
    for segment in context.script.segments:
        for block in segment.blocks:
            if isinstance(block, Note) and _like_copy(context, block.text, most, words):
                message = "this note reads like copy, and notes are not spoken"
                yield Hit(block.span, message, "take the > away if it is to be said; shorten it if it is a note")


def _like_copy(context: Context, text: str, most: int, words: int) -> bool:
    long = len(text) >= 2 * words if context.base in UNSPACED else len(text.split()) >= words
    return long and len(_STOP.findall(text)) >= most


RULE = Rule(
    name="copy-like-note",
    level="look",
    find=find,
    languages=EVERY,
    sees="A note of three full sentences and thirty words or more.",
    trips="If it was meant to be said it will be missing from the screen and from the time.",
    sources=("promptprep's script format",),
    parameters={"sentences": _SENTENCES, "words": _WORDS},
    fires="Good evening.\n\n> Tonight the dome is open to all of you who have come up the hill. The air is dry and"
    " the sky is clear. We will look at three things, and the first of them is the Moon.",
    silent="Good evening.\n\n> Ask about the dust.",
)
