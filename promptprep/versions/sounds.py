"""How names sound, in a few signs that all scripts share, and how far two of them lie apart: "Osei", "Осеи", オセイ,
오세이 and 奥塞 are one name.

A sound is one sign: a small letter, or S (sh), C (ch), J (j), T (th), x (kh). Letters of Cyrillic, Arabic and
Devanagari and the characters that Chinese writes foreign names with stand in the language's data; kana and Hangul carry
their sound in their Unicode names; Chinese characters are read by the phoneme engine.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from promptprep.model.language import LanguageData
from promptprep.model.ports import PhonemeEngine

VOWELS = frozenset("aeiou")
WEAK = frozenset("hwy")
_LATIN = (
    ("ß", "ss"), ("tch", "C"), ("sch", "S"), ("ch", "C"), ("sh", "S"), ("zh", "J"), ("ph", "f"), ("th", "T"),
    ("ck", "k"), ("ng", "n"), ("gh", "g"), ("kh", "x"), ("qu", "kw"), ("q", "k"), ("x", "ks"), ("j", "J"),
)  # fmt: skip
_KANA = {"TI": "Ci", "TU": "tsu", "SI": "Si", "HU": "fu", "ZI": "Ji", "DI": "Ji", "DU": "zu", "SMALL TU": ""}
_NAMED = re.compile(r"(?:KATAKANA|HIRAGANA) LETTER (?:SMALL )?(\w+)|HANGUL SYLLABLE (\w+)")
_PHONES = (("tɕh", "C"), ("ts.h", "C"), ("tsh", "C"), ("tɕ", "J"), ("ts.", "J"), ("s.", "S"), ("ts", "z"), ("kh", "k"),
           ("ph", "p"), ("th", "t"), ("ɕ", "S"), ("χ", "h"), ("ŋ", "n"), ("ɹ", "r"), ("ɻ", "r"), ("ʐ", "r"), ("j", "y"),
           ("ɑu", "o"), ("ɑ", "a"), ("ə", "e"), ("ɛ", "e"), ("ɔ", "o"))  # fmt: skip
_TWICE = re.compile(r"([a-zA-Z])\1+")
# Sounds that languages put for each other; the first lie closer than the second. From the CLDR's names of cities.
_CLOSE = ("pb", "td", "kg", "sz", "fv", "lr", "xh", "kx", "SJ", "CJ", "vw", "Tt")
_NEAR = (
    "bv", "fp", "fh", "fb", "wb", "Ts", "Td", "Tz", "gh", "gx", "gJ", "gy", "sS", "zS", "sC", "SC", "zJ", "zC", "tC",
    "dJ", "dz", "Jy", "Jh", "Jx", "mn", "wg", "wk", "kh", "kC", "ks", "kS", "hx", "Sh", "st",
)  # fmt: skip


def plain_latin(text: str) -> str:
    """Small Latin letters without their marks."""
    apart = unicodedata.normalize("NFKD", text.replace("ø", "o").replace("ł", "l").replace("ß", "ss"))
    return "".join(c for c in apart if not unicodedata.combining(c)).casefold()


@lru_cache(maxsize=20000)
def latin_sounds(word: str) -> str:
    """The sounds of a name in Latin letters, whatever its language."""
    text = plain_latin(word)
    for letters, sound in _LATIN:
        text = text.replace(letters, sound)
    text = re.sub(r"c(?=[eiy])", "s", text).replace("c", "k")
    return _TWICE.sub(r"\1", re.sub(r"[^a-zA-Z]", "", text))


@dataclass(frozen=True, eq=False)
class Sounds:
    """The sounds of words in one language's script. Words that were read are kept."""

    base: str
    letters: Mapping[str, str]
    characters: frozenset[str]
    phonemes: PhonemeEngine
    _known: dict[str, str] = field(default_factory=dict)

    def of(self, word: str) -> str:
        """ "" where nothing is known of the script."""
        if word not in self._known:
            if len(self._known) > 50000:
                self._known.clear()
            text = unicodedata.normalize("NFC", word.casefold())
            self._known[word] = _TWICE.sub(r"\1", "".join(self._parts(text)))
        return self._known[word]

    def _parts(self, text: str) -> Iterator[str]:
        at = 0
        while at < len(text):
            two = self.letters.get(text[at : at + 2])
            if two is not None and at + 1 < len(text):
                yield two
                at += 2
                continue
            char = text[at]
            yield self.letters[char] if char in self.letters else self._unlisted(char)
            at += 1

    def _unlisted(self, char: str) -> str:
        if char.isascii() or "LATIN" in unicodedata.name(char, ""):
            return latin_sounds(char)
        if self.base == "zh":
            return "".join(map(_from_phone, self.phonemes.phones([char], "zh")[0])) if "㐀" <= char <= "鿿" else ""
        return _from_name(unicodedata.name(char, ""))


def sounds_of(data: LanguageData, phonemes: PhonemeEngine) -> Sounds:
    table = data.tables.get("versions", {})
    return Sounds(data.base, dict(table.get("sounds", {})), frozenset(table.get("name_characters", ())), phonemes)


def _from_name(name: str) -> str:
    """The sound of a kana or a Hangul syllable, from its name in Unicode."""
    found = _NAMED.fullmatch(name)
    if not found:
        return ""
    if found[1]:
        small = "SMALL TU" if "SMALL TU" in name else found[1]
        return _KANA.get(small, found[1].lower())
    low = found[2].lower().replace("eu", "u").replace("eo", "o").replace("ae", "e").replace("oe", "e")
    return ("C" if low[0] == "c" else "J" if low[0] == "j" else low[0]) + low[1:] if low else ""


def _from_phone(phone: str) -> str:
    text = re.sub(r"[0-9ɜː\-\u0300-\u036f]", "", phone)
    for phones, sound in _PHONES:
        text = text.replace(phones, sound)
    return re.sub(r"[^a-zA-Z]", "", text)


# -- how far apart ------------------------------------------------------------------------------------------


def _distances() -> dict[tuple[str, str], float]:
    found = {(pair[0], pair[1]): 0.4 for pair in _NEAR} | {(pair[0], pair[1]): 0.2 for pair in _CLOSE}
    return found | {(b, a): cost for (a, b), cost in found.items()}


_APART = _distances()


def _swap(a: str, b: str) -> float:
    if a == b:
        return 0.0
    if a in VOWELS and b in VOWELS:
        return 0.065
    if (a in VOWELS) != (b in VOWELS):
        return 0.05 if {a, b} in ({"w", "u"}, {"y", "i"}, {"w", "o"}, {"y", "e"}) else 1.2
    return _APART.get((a, b), 1.0)


def _skip(sound: str) -> float:
    """What it costs that a sound stands on one side only: vowels come and go between scripts, r and h are mute."""
    if sound in VOWELS:
        return 0.08
    return {"h": 0.15, "w": 0.15, "y": 0.15, "r": 0.3, "n": 0.6, "s": 0.8, "t": 0.8, "d": 0.8, "l": 0.8}.get(sound, 1.0)


def _weight(sounds: str) -> float:
    return 0.3 + sum(0.3 if s in VOWELS or s in WEAK else 1.0 for s in sounds)


@lru_cache(maxsize=200000)
def apart(one: str, other: str, inside: bool = False) -> float:
    """How far two sounds lie apart, as a share of the longer one; with `inside`, `one` from any stretch of `other`."""
    if not one or not other:
        return 1.0
    row = [0.0]
    for b in other:
        row.append(0.0 if inside else row[-1] + _skip(b))
    for a in one:
        now = [row[0] + _skip(a)]
        for j, b in enumerate(other):
            now.append(min(row[j] + _swap(a, b), row[j + 1] + _skip(a), now[j] + _skip(b)))
        row = now
    if inside:
        return min(row) / _weight(one)
    return row[-1] / max(_weight(one), _weight(other))
