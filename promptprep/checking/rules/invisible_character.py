"""A character that nobody can see."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule
from promptprep.spans import Span

_HIDDEN = re.compile(
    r"[\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180e\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\u3164\ufeff\ufff9-\ufffb\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ufffd]"
)
_JOINERS = re.compile(
    r"(?<![\u0600-\u06ff\u0750-\u077f\u0900-\u0dff\U0001f000-\U0001faff\u2600-\u27bf\ufe0f])[\u200c\u200d]"
)
_DIRECTION = "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"


def find(context: Context) -> Iterator[Hit]:
    """Marks of direction are at home in Arabic copy, joiners in Arabic and Indic words and in emoji."""
    for passage in context.passages:
        if passage.text.isascii() and passage.text.isprintable():
            continue
        for pattern in (_HIDDEN, _JOINERS):
            for found in pattern.finditer(passage.text):
                if context.base == "ar" and found[0] in _DIRECTION:
                    continue
                span = Span(*found.span())
                name = unicodedata.name(found[0], "a control character")
                message = f"an invisible character stands here: U+{ord(found[0]):04X} {name}"
                yield Hit(passage.source(span), message, "take it out", "" if passage.plain(span) else None)


RULE = Rule(
    name="invisible-character",
    level="fix",
    find=find,
    languages=EVERY,
    sees="A character without a shape: a hidden break, a mark of direction, a control, a sign of broken bytes.",
    trips="It breaks lines and searches in unseen places and can show as an empty box on the prompter.",
    sources=("The Unicode Standard, general category Cf; UAX 14 on U+200B and U+00AD",),
    fires="The tele\u200bscope is open.",
    silent="The telescope is open.",
)
