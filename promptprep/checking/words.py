"""Words and sentences of a passage, each at its place in the text."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass

from promptprep.model.language import UNSPACED, base_of
from promptprep.model.ports import Breaks
from promptprep.spans import Span

_MARKS = "\u0300-\u036f\u0610-\u061a\u064b-\u065f\u0670\u0900-\u0903\u093a-\u094f\u0951-\u0957\u0962\u0963\u200c\u200d"
_LETTERS = rf"[^\W_][\w{_MARKS}]*"
_NUMBER = r"\d+(?:[.,:/]\d+)*"
_ELISION = re.compile(r"(?:[cdjlmnst]|qu|jusqu|lorsqu|puisqu|quoiqu)['’](?=\w)", re.IGNORECASE)
_WORD = re.compile(rf"{_NUMBER}(?![^\W\d_])|{_LETTERS}(?:['’]{_LETTERS})*")
_SMALL_AFTER = re.compile(r"\s*[\"'“”‘’«»(\[]?([^\W\d_])")
_INITIAL = re.compile(r"(?:^|[\s.(])([^\W\d_])\.\s*$")


@dataclass(frozen=True, slots=True)
class Token:
    """A word of a passage. `key` is its folded form, for word lists; `place` its index in the passage."""

    span: Span
    text: str
    key: str
    place: int


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence of a passage: its place in the text, trailing space left out, and its words."""

    span: Span
    text: str
    words: tuple[Token, ...]


def tokens(text: str, language: str, breaks: Breaks) -> tuple[Token, ...]:
    """The words of a text. Hyphens part words; a French elision ("l'") is a word of its own."""
    base = base_of(language)
    if base in UNSPACED:
        spans = _segmented(text, language, breaks)
    else:
        spans = [piece for m in _WORD.finditer(text) for piece in _elided(m, base)]
    return tuple(Token(s, s.of(text), folded(s.of(text)), place) for place, s in enumerate(spans))


def folded(word: str) -> str:
    """The form that word lists hold: composed, small letters, a plain apostrophe."""
    return unicodedata.normalize("NFC", word).lower().replace("’", "'")


def _segmented(text: str, language: str, breaks: Breaks) -> list[Span]:
    spans, start = [], 0
    for end in breaks.words(text, language):
        if any(c.isalnum() for c in text[start:end]):
            spans.append(Span(start, end))
        start = end
    return spans


def _elided(found: re.Match[str], base: str) -> list[Span]:
    start, end = found.span()
    head = _ELISION.match(found[0]) if base == "fr" else None
    if head is None or found[0].lower() == "aujourd'hui":
        return [Span(start, end)]
    return [Span(start, start + head.end()), Span(start + head.end(), end)]


def sentences(text: str, language: str, breaks: Breaks, words: Sequence[Token]) -> tuple[Sentence, ...]:
    """The sentences of a text with their words. No sentence ends after an initial or before a small letter."""
    found: list[Sentence] = []
    start = at = 0
    for end in breaks.sentences(text, language):
        if end < len(text) and _goes_on(text, end):
            continue
        first = at
        while at < len(words) and words[at].span.start < end:
            at += 1
        low, high = _trimmed(text, start, end)
        if high > low:
            found.append(Sentence(Span(low, high), text[low:high], tuple(words[first:at])))
        start = end
    return tuple(found)


def _goes_on(text: str, end: int) -> bool:
    after = _SMALL_AFTER.match(text, end)
    if after and after[1].islower():
        return True
    initial = _INITIAL.search(text, max(0, end - 6), end)
    return initial is not None and initial[1].isupper()


def _trimmed(text: str, start: int, end: int) -> tuple[int, int]:
    piece = text[start:end]
    return start + len(piece) - len(piece.lstrip()), start + len(piece.rstrip())
