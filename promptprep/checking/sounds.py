"""Neighbouring words whose sounds get in each other's way, from their phonemes."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
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
_DENSE = 0.3  # share of hisses among the sounds


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


Look = Callable[[Sequence[Shape], Sequence[Token], int], Tangle | None]


def _looks(base: str) -> tuple[Look, ...]:
    """Clusters only where words end on several consonants; hisses not where every other syllable has one."""
    hiss: tuple[Look, ...] = () if base in ("zh", "ja", "ko") else (_hiss,)
    cluster: tuple[Look, ...] = (_cluster,) if base in ("de", "en", "fr", "ru") else ()
    return (_onsets, *hiss, *cluster, _near_repeat)


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
    looks = _looks(context.base)
    at = 0
    while at < len(shapes):
        found = _tangle(looks, shapes, words, at)
        if found is None:
            at += 1
        else:
            yield found
            at = found.last + 1


def _tangle(looks: Sequence[Look], shapes: Sequence[Shape], words: Sequence[Token], at: int) -> Tangle | None:
    for look in looks:
        found = look(shapes, words, at)
        if found is not None:
            return found
    return None


def _strong(shapes: Sequence[Shape], at: int) -> list[int]:
    """The next words with an onset of their own, weak ones passed over."""
    near = range(at, min(at + WINDOW, len(shapes)))
    return [i for i in near if len(shapes[i].phones) > _WEAK and shapes[i].onset]


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
    """Five words in a row with many hisses of two kinds."""
    window = shapes[at : at + 5]
    if len(window) < 4:
        return None
    hissed = [[p for p in s.phones if p in _HISS] for s in window]
    kinds = {p for row in hissed for p in row}
    hisses, sounds = sum(map(len, hissed)), sum(len(s.phones) for s in window)
    if len(kinds) >= 2 and hisses >= 6 and hisses >= _DENSE * sounds and hissed[0] and hissed[-1]:
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
