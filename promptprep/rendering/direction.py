"""Keeps texts of one direction whole inside pages of the other, by Unicode's isolates (UAX 9)."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence

LRI, RLI, PDI = "\u2066", "\u2067", "\u2069"
_OPENING = (LRI, RLI, "\u2068")
_STRONG = {"L": "ltr", "R": "rtl", "AL": "rtl"}


def direction_of(text: str) -> str | None:
    """By the first strong character (UAX 9, rules P2 and P3); None where there is none."""
    return next((_STRONG[kind] for char in text if (kind := unicodedata.bidirectional(char)) in _STRONG), None)


def isolated(text: str, page_direction: str) -> str:
    """The text, inside an isolate where its direction is not the page's."""
    own = direction_of(text)
    if own is None or own == page_direction:
        return text
    return f"{LRI if own == 'ltr' else RLI}{text}{PDI}"


def in_order(text: str, page_direction: str) -> str:
    """A date, ratio or signed figure, whose parts would change places in a text that runs from right to left."""
    return f"{LRI}{text}{PDI}" if page_direction == "rtl" else text


def each_whole(lines: Sequence[str]) -> list[str]:
    """Lines of one text: an isolate that is open at a line's end is closed there and opened again in the next."""
    found, open_now = [], ""
    for line in lines:
        begins = open_now
        for char in line:
            if char in _OPENING:
                open_now += char
            elif char == PDI:
                open_now = open_now[:-1]
        found.append(begins + line + PDI * len(open_now))
    return found
