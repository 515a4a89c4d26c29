"""Emoji are silent."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span

# The blocks that hold the characters with the property Emoji_Presentation or that are shown as pictures with U+FE0F
# (Unicode, emoji-data.txt), with joiners, variation selectors, keycap mark, skin tones and tags. Musical flat,
# natural and sharp are letters' signs and stay out, and so does the Sun's sign (M☉).
_PICTURE = (
    "\u231a\u231b\u23e9-\u23fa\u24c2\u2600-\u2608\u260a-\u266c\u2670-\u27bf\u2934\u2935\u2b05-\u2b07\u2b1b\u2b1c\u2b50\u2b55"
    "\u3030\u303d\u3297\u3299\U0001f000-\U0001faff"
)
_RUN = re.compile(f"[{_PICTURE}\ufe0f\u20e3\U000e0020-\U000e007f][{_PICTURE}\ufe0f\u20e3\u200d\U000e0020-\U000e007f]*")

_RATING = re.compile(r"[★⭐☆]{2,10}(?![★⭐☆])|(?<=\d)[★⭐](?![★⭐☆])")


def emoji(text: str, *, but_stars: bool = False) -> list[Reading]:
    """Each run of emoji as a silent reading, with the blank before it where another or the end follows.

    `but_stars` leaves out the stars of a rating ("★★★☆☆", "5★") for a language that says them.
    """
    if text.isascii():
        return []
    runs = _RUN.finditer(text)
    return [
        Reading(_with_blank(text, m), "", "emoji") for m in runs if not (but_stars and _RATING.match(text, m.start()))
    ]


def _with_blank(text: str, found: re.Match[str]) -> Span:
    start, end = found.span()
    if start and text[start - 1] == " " and (end == len(text) or not text[end].isalnum()):
        start -= 1
    return Span(start, end)
