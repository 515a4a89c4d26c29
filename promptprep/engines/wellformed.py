"""Text that native libraries take: no half of a surrogate pair."""

from __future__ import annotations

import re

_HALVES = re.compile("[\ud800-\udfff]")


def whole(text: str) -> str:
    """The text with U+FFFD for each lone surrogate; its length stays."""
    return text if text.isascii() else _HALVES.sub("\ufffd", text)
