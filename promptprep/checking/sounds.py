"""Neighbouring words whose sounds get in each other's way, from their phonemes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from promptprep.checking.context import Context
from promptprep.checking.words import Token

Kind = Literal["onsets", "hiss", "cluster", "near-repeat"]

_VOWELS = frozenset("aeiouyæøœɐɑɒɔəɘɚɛɜɝɞɤɨɪɯɵɶʉʊʌʏᵻᵊᵿ")
_HISS = frozenset(
    ("s", "z", "ʃ", "ʒ", "tʃ", "dʒ", "ts", "ɕ", "ʑ", "ʂ", "tɕ", "ʈʂ", "sʲ", "zʲ", "ɕː", "s.", "ts.h", "ts.")
)
_WEAK = 2  # phonemes: a word this short carries no onset worth counting
WINDOW = 6


@dataclass(frozen=True, slots=True)
class Tangle:
    """Words `first` to `last` of the sequence that was looked at, and what tangles in them."""

    first: int
    last: int
    kind: Kind


@dataclass(frozen=True, slots=True)
class Shape:
    """A word's consonants at its start and end, and its phonemes."""

    onset: tuple[str, ...]
    coda: tuple[str, ...]
    phones: tuple[str, ...]


@lru_cache(maxsize=65536)
def shape(phones: tuple[str, ...]) -> Shape:
    """The shape of a word; a word without a vowel is all onset."""
    vowels = [i for i, p in enumerate(phones) if any(c in _VOWELS for c in p) or "\u0329" in p]
    if not vowels:
        return Shape(phones, (), phones)
    return Shape(phones[: vowels[0]], phones[vowels[-1] + 1 :], phones)


def tangles(context: Context, words: Sequence[Token]) -> Iterator[Tangle]:
    """The tangles of a row of words, in order, no two of which overlap."""
    shapes = [shape(context.phones.get(word.key, ())) for word in words]
    at = 0
    while at < len(shapes):
        found = _tangle(shapes, words, at)
        if found is None:
            at += 1
        else:
            yield found
            at = found.last + 1


def _tangle(shapes: Sequence[Shape], words: Sequence[Token], at: int) -> Tangle | None:
    for look in (_onsets, _hiss, _cluster, _near_repeat):
        found = look(shapes, words, at)
        if found is not None:
            return found
    return None


def _strong(shapes: Sequence[Shape], at: int) -> list[int]:
    """The next words with an onset of their own, weak ones passed over."""
    found = []
    for i in range(at, min(at + WINDOW, len(shapes))):
        if len(shapes[i].phones) > _WEAK and shapes[i].onset:
            found.append(i)
    return found


def _onsets(shapes: Sequence[Shape], words: Sequence[Token], at: int) -> Tangle | None:
    """Onsets that alternate, one inside the other ("she sells sea shells", "red lorry, yellow lorry")."""
    strong = _strong(shapes, at)
    if len(strong) < 4 or strong[0] != at:
        return None
    a, b, c, d = (shapes[i].onset for i in strong[:4])
    near = a != b and _close(a, b)
    if near and len({a, b, c, d}) == 2 and len({words[i].key for i in strong[:4]}) > 2:
        return Tangle(at, strong[3], "onsets")
    return None


def _close(one: tuple[str, ...], two: tuple[str, ...]) -> bool:
    """Onsets that are easily swapped: both hiss, or one is the other with a sound more, or two liquids."""
    if one[0] in _HISS and two[0] in _HISS:
        return True
    if {one[0], two[0]} <= {"r", "ɹ", "l", "w", "j"}:
        return True
    return one[0] == two[0] and len(one) != len(two)


def _hiss(shapes: Sequence[Shape], words: Sequence[Token], at: int) -> Tangle | None:
    """Five words in a row, most of them with two kinds of hiss."""
    window = shapes[at : at + 5]
    if len(window) < 4:
        return None
    hissed = [[p for p in s.phones if p in _HISS] for s in window]
    kinds = {p for row in hissed for p in row}
    if len(kinds) >= 2 and sum(map(len, hissed)) >= 7 and sum(map(bool, hissed)) >= len(window) - 1 and hissed[0]:
        return Tangle(at, at + len(window) - 1, "hiss")
    return None


def _cluster(shapes: Sequence[Shape], words: Sequence[Token], at: int) -> Tangle | None:
    """Six consonants or more in a row across a word border ("texts strengthen")."""
    if at + 1 >= len(shapes):
        return None
    coda, onset = shapes[at].coda, shapes[at + 1].onset
    if coda and onset and len(coda) + len(onset) >= 6:
        return Tangle(at, at + 1, "cluster")
    return None


def _near_repeat(shapes: Sequence[Shape], words: Sequence[Token], at: int) -> Tangle | None:
    """Two long words side by side that are the same but for one sound ("statistics' statics")."""
    if at + 1 >= len(shapes) or words[at].key == words[at + 1].key:
        return None
    one, two = shapes[at].phones, shapes[at + 1].phones
    if min(len(one), len(two)) < 5 or abs(len(one) - len(two)) > 1:
        return None
    return Tangle(at, at + 1, "near-repeat") if _one_apart(one, two) else None


def _one_apart(one: Sequence[str], two: Sequence[str]) -> bool:
    if one == two:
        return True
    i = 0
    while i < min(len(one), len(two)) and one[i] == two[i]:
        i += 1
    rest = min(len(one), len(two)) - i - (len(one) == len(two))
    return rest <= 0 or one[len(one) - rest :] == two[len(two) - rest :]
