"""Texts for XML, which cannot hold every character."""

from __future__ import annotations

import re

_NO_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")  # XML 1.0, production 2 (Char)


def xml_text(text: str) -> str:
    """The text with U+FFFD for each character that XML 1.0 cannot hold. Markup is not escaped."""
    return _NO_XML.sub("\ufffd", text)
