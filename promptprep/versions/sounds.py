"""Rough Latin letters for names in other scripts, so that a name can be found again: "Осеи", オセイ, 오세이 -> "osei".

Kana, Hangul and Devanagari letters carry their sound in their Unicode names; Cyrillic and Arabic letters have short
tables (ISO 9 and ISO 233 in everyday letters, from memory). Other scripts give nothing: their names are not compared.
"""

from __future__ import annotations

import re
import unicodedata
from difflib import SequenceMatcher
from functools import lru_cache

_CYRILLIC = dict(zip("абвгдежзийклмнопрстуфхцчшщъыьэюяё", (
    "a", "b", "v", "g", "d", "e", "zh", "z", "i", "i", "k", "l", "m", "n", "o", "p", "r", "s", "t", "u", "f", "h", "ts",
    "ch", "sh", "sh", "", "i", "", "e", "yu", "ya", "o"), strict=True))  # fmt: skip
_ARABIC = dict(zip("ابتثجحخدذرزسشصضطظعغفقكلمنهويةىءأإآؤئ", (
    "a", "b", "t", "th", "j", "h", "h", "d", "d", "r", "z", "s", "sh", "s", "d", "t", "z", "a", "g", "f", "k", "k", "l",
    "m", "n", "h", "u", "i", "a", "a", "", "a", "i", "a", "u", "i"), strict=True))  # fmt: skip
_NAMED = re.compile(r"(?:KATAKANA|HIRAGANA|DEVANAGARI) (?:LETTER|VOWEL SIGN) (?:SMALL )?(\w+)|HANGUL SYLLABLE (\w+)")
_CLASSES = {
    "b": "p",
    "d": "t",
    "g": "k",
    "q": "k",
    "c": "k",
    "v": "f",
    "z": "s",
    "j": "s",
    "l": "r",
    "w": "u",
    "x": "ks",
}
_SIBILANTS = re.compile(r"sh|ch|zh|ts|dz|th")
_VOWELS = re.compile(r"[aeiouy]+")


def plain_latin(text: str) -> str:
    """Small Latin letters without their marks."""
    apart = unicodedata.normalize("NFKD", text.replace("ø", "o").replace("ł", "l").replace("ß", "ss"))
    return "".join(c for c in apart if not unicodedata.combining(c)).casefold()


@lru_cache(maxsize=20000)
def romanised(word: str) -> str:
    """Rough Latin letters, "" where the script is not known here."""
    return "".join(_letter(c) for c in unicodedata.normalize("NFC", word.casefold()))


def _letter(char: str) -> str:
    if char.isascii():
        return char if char.isalpha() else ""
    if char in _CYRILLIC:
        return _CYRILLIC[char]
    if char in _ARABIC:
        return _ARABIC[char]
    named = _NAMED.fullmatch(unicodedata.name(char, ""))
    if named:
        return str(named[1] or named[2]).lower()
    return plain_latin(char) if "LATIN" in unicodedata.name(char, "") else ""


@lru_cache(maxsize=20000)
def skeleton(word: str) -> str:
    """A word's consonants in coarse classes, with "a" for a vowel at its start."""
    rough = _SIBILANTS.sub("s", romanised(word))
    opens = "a" if rough[:1] in tuple("aeiouy") else ""
    body = _VOWELS.sub("", rough)
    coarse = "".join(_CLASSES.get(c, c) for c in body).replace("h", "")
    return opens + re.sub(r"(.)\1+", r"\1", coarse)


def sounds_alike(one: str, other: str) -> float:
    """0 to 1: how alike two words of any known scripts sound, by their skeletons."""
    a, b = skeleton(one), skeleton(other)
    return SequenceMatcher(None, a, b, autojunk=False).ratio() if a and b else 0.0
