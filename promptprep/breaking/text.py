"""Breaks plain text into lines."""

from __future__ import annotations

import re

from promptprep.breaking.paragraph import break_paragraphs
from promptprep.breaking.pieces import squeezed
from promptprep.model.language import LanguageData
from promptprep.model.ports import Engines

_PARAGRAPHS = re.compile(r"(?:\r\n|[\n\r])[^\S\n\r]*(?:\r\n|[\n\r])\s*|\u2029\s*")
_SINGLE_FEEDS = re.compile(r"\r\n|[\n\r]")


def break_plain_text(text: str, width_em: float, data: LanguageData, engines: Engines) -> list[str]:
    """The lines of a text whose paragraphs are parted by empty lines; a single line feed is a blank.

    Every character but blanks is kept, in order. Raises `BadGeometry` unless the width is positive and finite.
    """
    paragraphs = [_SINGLE_FEEDS.sub(" ", part) for part in _PARAGRAPHS.split(text)]
    broken = break_paragraphs(paragraphs, width_em, data, engines)
    return [
        squeezed(line.of(paragraph)) for paragraph, own in zip(paragraphs, broken, strict=True) for line in own.lines
    ]
