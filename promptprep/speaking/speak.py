"""A written text's spoken form: its readings put in their places, everything else passed through."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Sequence

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading, Spoken, SpokenWord
from promptprep.spans import Span
from promptprep.speaking.electronic import electronic
from promptprep.speaking.emoji import emoji
from promptprep.speaking.verbaliser import Verbaliser, load

MASK = "\ufffc"
_CHUNK = re.compile(r"[^\s—–…―|]+")
_PICTURE_MARKS = "\ufe0e\ufe0f\u20e3"
_AROUND = (
    "\"'“”„«»‹›‘’()[]{}.,;:!?¡¿*_/\\~^`<>-‐‑、。，．！？；：（）「」『』【】〈〉《》・·।॥،؛؟٪ـ\ufffc\u200b\u200e\u200f"
)


def speak(text: str, data: LanguageData, speller: Speller, said: Sequence[tuple[Span, str]] = ()) -> Spoken:
    """The spoken form of `text` in the language of `data`.

    `said` holds the author's own pronunciations with their places; they win over everything. `words` of the result
    are the runs between blanks and dashes, without the marks around them, and one word for each reading that is
    not silent. Work grows in a straight line with the text's length.
    """
    language = load(data, speller)
    found = _all_readings(text, data, language, said)
    return Spoken(text, _joined(text, found, language.spaced), data.tag, tuple(_words(text, found)), tuple(found))


def readings(text: str, data: LanguageData, speller: Speller) -> list[Reading]:
    """What in `text` is said otherwise than spelled: disjoint, in the order of the text."""
    return _all_readings(text, data, load(data, speller), ())


def _all_readings(
    text: str, data: LanguageData, language: Verbaliser, said: Sequence[tuple[Span, str]]
) -> list[Reading]:
    own = _disjoint([Reading(span, words, "say") for span, words in said if len(span)])
    masked = _masked(text, own)
    shared = electronic(masked, data, language.read) + emoji(
        masked, but_stars=bool(data.maybe("spoken", "forms.stars", ""))
    )
    if shared:
        shared.sort(key=lambda r: r.span)
        shared = _disjoint(shared)
        masked = _masked(masked, shared)
    claimed = sorted(own + shared, key=lambda r: r.span)
    return _merged(claimed, list(_scanned(masked, language)))


def _scanned(text: str, language: Verbaliser) -> Iterator[Reading]:
    floor = 0
    read = language.read
    for place in language.starts.finditer(text):
        at = place.start()
        if at >= floor:
            found = read(text, at, floor)
            if found is not None:
                yield found
                floor = found.span.end


def _merged(claimed: list[Reading], scanned: list[Reading]) -> list[Reading]:
    if not claimed:
        return scanned
    return sorted(claimed + scanned, key=lambda r: r.span)


def _disjoint(found: list[Reading]) -> list[Reading]:
    """In order, each beginning where the one before has ended or later; the earlier and longer wins."""
    kept: list[Reading] = []
    for reading in sorted(found, key=lambda r: (r.span.start, -r.span.end)):
        if not kept or reading.span.start >= kept[-1].span.end:
            kept.append(reading)
    return kept


def _masked(text: str, taken: list[Reading]) -> str:
    if not taken:
        return text
    parts, last = [], 0
    for reading in taken:
        parts += [text[last : reading.span.start], MASK * len(reading.span)]
        last = reading.span.end
    return "".join([*parts, text[last:]])


def _joined(text: str, found: list[Reading], spaced: bool) -> str:
    if not found:
        return text
    parts: list[str] = []
    last, after = 0, ""
    for reading in found:
        start, end = reading.span
        before = text[start - 1 : start] if start > last else after
        said = reading.said
        between = text[last:start]
        if spaced and between and after and _glued(after, between[0]):
            parts.append(" ")
        parts.append(between)
        listed = between == "," and after.isalnum() and said[:1].isalnum()
        if spaced and said and before and (listed or _glued(before, said[0])):
            parts.append(" ")
        parts.append(said)
        last, after = end, said[-1:]
    rest = text[last:]
    if spaced and rest and after and _glued(after, rest[0]):
        parts.append(" ")
    parts.append(rest)
    return "".join(parts)


def _glued(left: str, right: str) -> bool:
    """Whether `left` and `right` would run into one word; a vowel sign ends a word as a letter does."""
    return right.isalnum() and (left.isalnum() or _is_vowel_sign(left))


def _is_vowel_sign(character: str) -> bool:
    return unicodedata.category(character).startswith("M") and character not in _PICTURE_MARKS


def _words(text: str, found: list[Reading]) -> list[SpokenWord]:
    words: list[SpokenWord] = []
    last = 0
    for reading in found:
        start, end = reading.span
        if start > last:
            _add_plain_words(words, text, last, start)
        if reading.said:
            words.append(SpokenWord(reading.span, reading.said, reading.kind))
        last = end
    _add_plain_words(words, text, last, len(text))
    return words


def _add_plain_words(words: list[SpokenWord], text: str, start: int, end: int) -> None:
    for chunk in _CHUNK.finditer(text, start, end):
        word = chunk[0]
        at = chunk.start()
        if not (word[-1].isalnum() and word[0].isalnum()):
            inner = word.lstrip(_AROUND)
            at += len(word) - len(inner)
            word = inner.rstrip(_AROUND)
            if not word:
                continue
        words.append(SpokenWord(Span(at, at + len(word)), word))
