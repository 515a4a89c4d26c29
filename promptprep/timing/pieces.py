"""The single words that are timed: a spoken form's words, cut at the marks inside them."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from typing import NamedTuple

from promptprep.model.spoken import Spoken, SpokenWord
from promptprep.spans import Span

# "silence--in", "wait,what", "once.Then": what no blank parts, but a pause does. Hyphens, apostrophes and the
# dots of "e.g" stay inside a word.
_CUT = re.compile(
    r"[-‐]{2,}|[,;:!?،؛؟۔।॥。，、．！？；：…—–―·()\[\]{}（）【】〈〉《》「」『』\"“”„«»|]+|\.{2,}|(?<=[^\W\d_]{2})\.(?=[^\W\d_]{2})"
)
_HAN = re.compile(r"[㐀-䶿一-鿿豈-﫿𠀀-𯿿々〇]|[^㐀-䶿一-鿿豈-﫿𠀀-𯿿々〇\s]+")


class Piece(NamedTuple):
    """One timed word: its place in the written text, what is said, whether it is a reading and of which kind."""

    span: Span
    said: str
    kind: str


def pieces_of(spoken: Spoken, *, single_characters: bool = False) -> list[Piece]:
    """The words of a spoken form, cut at inner marks; with `single_characters` each Han character by itself."""
    found: list[Piece] = []
    for word in spoken.words:
        said = word.said
        if word.kind != "word" or (said.isalnum() and not single_characters):
            if said:
                found.append(Piece(word.span, said, word.kind))
        else:
            found.extend(_cut(word, spoken.written, single_characters))
    return found


def _cut(word: SpokenWord, written: str, single_characters: bool) -> Iterator[Piece]:
    start, end = word.span
    for a, b in _between_marks(written, start, end):
        if single_characters:
            for match in _HAN.finditer(written, a, b):
                if any(map(str.isalnum, match[0])):
                    yield Piece(Span(match.start(), match.end()), match[0], "word")
        else:
            first, last = _trimmed(written, a, b)
            if first < last:
                yield Piece(Span(first, last), written[first:last], "word")


def _between_marks(written: str, start: int, end: int) -> Iterator[tuple[int, int]]:
    at = start
    for mark in _CUT.finditer(written, start, end):
        yield at, mark.start()
        at = mark.end()
    yield at, end


def _trimmed(written: str, start: int, end: int) -> tuple[int, int]:
    """Without what is neither letter, digit nor a sign on a letter at both ends."""
    while start < end and not written[start].isalnum():
        start += 1
    while end > start and not is_of_word(written[end - 1]):
        end -= 1
    return start, end


def is_of_word(character: str) -> bool:
    """Whether a character is a letter, a digit or a sign that belongs to one (vowel signs, accents)."""
    return character.isalnum() or unicodedata.category(character)[0] == "M"
