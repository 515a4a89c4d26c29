"""Boundaries by Unicode's rules (ICU), phrases of Japanese and Chinese (BudouX), syllables (hyphenation patterns)."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterable
from functools import lru_cache
from itertools import accumulate
from typing import Any

from promptprep.engines.wellformed import whole
from promptprep.model.language import base_of
from promptprep.store.languages import language_data

_SPACED_HANGUL = "ko"  # KLREQ: Korean breaks by word or by character; a line to be read aloud breaks by word
_WORD_BEFORE = re.compile(r"(\S+)\s*$")
_DAY_BEFORE = re.compile(r"(?<!\S)\d{1,2}\.\s+$")
_LETTERS = re.compile(r"[^\W\d_]{6,100}")
_LOOKED_AT = 2_000  # characters by which a text is taken for simplified or traditional
_NEXT_WORD = re.compile(r"\w+\.?")


class IcuBreaks:
    """Answers `Breaks`. Offsets count code points, the end of the text included, 0 excluded."""

    def words(self, text: str, language: str) -> list[int]:
        """Ends of words, of punctuation and of the spaces between them (UAX 29)."""
        return _ends("WordBreaker", text, language)

    def sentences(self, text: str, language: str) -> list[int]:
        """Ends of sentences (UAX 29), trailing spaces included; none after a title or inside a date ("1. Mai")."""
        ends = _ends("SentenceBreaker", text, language)
        titles, months = _words(language, "titles"), _words(language, "months")
        return [
            end
            for end in ends
            if end == len(text) or not (_ends_in_title(text, end, titles) or _inside_date(text, end, months))
        ]

    def lines(self, text: str, language: str) -> list[int]:
        """Where a line may end (UAX 14): strict for Japanese and Chinese, at spaces for Korean."""
        ends = _ends("LineBreaker", text, f"{language}@lb=strict")
        if base_of(language) == _SPACED_HANGUL:
            return [end for end in ends if end == len(text) or not _inside_hangul(text, end)]
        return ends

    def graphemes(self, text: str) -> list[int]:
        return _ends("CharacterBreaker", text, "en")

    def syllables(self, text: str, language: str) -> list[int]:
        """Places between the syllables of its words, none within three letters of a word's start or end."""
        patterns = _patterns(language)
        if patterns is None:
            return []
        return [
            found.start() + int(place) for found in _LETTERS.finditer(text) for place in patterns.positions(found[0])
        ]

    def phrases(self, text: str, language: str) -> list[int]:
        """Ends of phrases in Japanese and Chinese, none inside a word; ends of words elsewhere."""
        if not text:
            return []
        name = _phrase_parser(language, text)
        if name is None:
            return self.words(text, language)
        ends = accumulate(len(phrase) for phrase in _budoux(name).parse(whole(text)))
        words = self.words(text, language)
        if name == "japanese":
            return sorted({words[bisect_left(words, end)] for end in ends})
        known = set(words)
        return [end for end in ends if end in known]


def _ends(breaker: str, text: str, locale: str) -> list[int]:
    if not text:
        return []
    from icu4py import breakers

    ends = [end for _, end in getattr(breakers, breaker)(whole(text), locale).segments()]
    return ends if text.isascii() or max(text) <= "\uffff" else _code_points(text, ends)


def _code_points(text: str, ends: Iterable[int]) -> list[int]:
    """ICU counts UTF-16 units: two for each character beyond the basic plane."""
    units = accumulate(2 if char > "\uffff" else 1 for char in text)
    place = {unit: i + 1 for i, unit in enumerate(units)}
    return [place[end] for end in ends if end in place]


@lru_cache(maxsize=128)
def _words(language: str, key: str) -> frozenset[str]:
    return frozenset(language_data(language).maybe("phrases", key, ()))


def _ends_in_title(text: str, end: int, titles: frozenset[str]) -> bool:
    if not titles or (word := _WORD_BEFORE.search(text, max(0, end - 24), end)) is None:
        return False
    return word[1].lstrip("(\"'“‘«„[").casefold() in titles


def _inside_date(text: str, end: int, months: frozenset[str]) -> bool:
    """A day with a full stop before its month."""
    if not months or _DAY_BEFORE.search(text, max(0, end - 8), end) is None:
        return False
    following = _NEXT_WORD.match(text, end)
    if following is None:
        return False
    word = following[0].casefold()
    return word in months or word.rstrip(".") in months


def _inside_hangul(text: str, end: int) -> bool:
    return _is_letter(text[end - 1]) and _is_letter(text[end])


def _is_letter(char: str) -> bool:
    return char.isalnum() or char in "”’\"')」』》〉"


def _phrase_parser(language: str, text: str) -> str | None:
    base, *subtags = language.split("-")
    if base == "ja":
        return "japanese"
    if base != "zh":
        return None
    traditional = bool({"TW", "HK", "MO", "Hant"} & set(subtags)) or (not subtags and _is_traditional(text))
    return "traditional_chinese" if traditional else "simplified_chinese"


def _is_traditional(text: str) -> bool:
    """Whether more characters stand in the traditional standard alone (Big5) than in the simplified alone (GB 2312)."""
    han = [char for char in text[:_LOOKED_AT] if char >= "\u3400"]
    return sum(_stands_in("big5", char) - _stands_in("gb2312", char) for char in han) > 0


@lru_cache(maxsize=20_000)
def _stands_in(charset: str, char: str) -> bool:
    try:
        char.encode(charset)
    except UnicodeEncodeError:
        return False
    return True


@lru_cache(maxsize=4)
def _budoux(name: str) -> Any:
    import budoux

    return getattr(budoux, f"load_default_{name}_parser")()


@lru_cache(maxsize=16)
def _patterns(language: str) -> Any:
    import pyphen  # type: ignore[import-untyped]  # it has no stubs

    name = pyphen.language_fallback(language.replace("-", "_"))
    return pyphen.Pyphen(lang=name, left=3, right=3) if name else None
