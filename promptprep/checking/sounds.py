"""Neighbouring words whose sounds get in each other's way, from their phonemes."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Literal

from promptprep.checking.context import Context
from promptprep.checking.words import Token

Kind = Literal["onsets", "hiss", "cluster", "near-repeat", "alike"]

_VOWELS = frozenset("aeiouyæøœɐɑɒɔəɘɚɛɜɝɞɤɨɪɯɵɶʉʊʌʏᵻᵊᵿ")
_HISS = frozenset(
    ("s", "z", "ʃ", "ʒ", "tʃ", "dʒ", "ts", "ɕ", "ʑ", "ʂ", "tɕ", "ʈʂ", "sʲ", "zʲ", "ɕː", "s.", "ts.h", "ts.")
)
_WEAK = 2  # phonemes: a word this short carries no onset worth counting (but a Chinese syllable does)
WINDOW = 6
_ROW, _ALIKE, _ALIKE_ALL = 4, 0.4, 1.5  # words; least share of sounds between neighbours; least sum of shares
_CLUSTERED = ("de", "en", "es", "fr", "pt", "ru")  # words begin on several consonants
_REACH = 7  # words among which a row is looked for
_LONGEST = 24  # phonemes of a word that are compared
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
    """What to look for: clusters only where words end on several consonants, hisses not where half of all hiss."""
    if base == "zh":
        return (_syllables, _near_repeat, _in_turn)
    hiss: tuple[Look, ...] = () if base in ("ja", "ko") else (_hiss,)
    if base in _CLUSTERED:
        return (_clustered, _alike, *hiss, _cluster, _near_repeat, _in_turn)
    return (_onsets, _alike, *hiss, _near_repeat, _in_turn)


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


def _strong(shapes: Sequence[Shape], at: int, weak: int) -> list[int]:
    """The next words with an onset of their own, weak ones passed over."""
    near = range(at, min(at + WINDOW, len(shapes)))
    return [i for i in near if len(shapes[i].phones) > weak and shapes[i].onset]


def _syllables(shapes: Sequence[Shape], words: Sequence[Token], at: int) -> Tangle | None:
    """Alternating onsets in Chinese, where a syllable of two sounds is a word."""
    return _onsets(shapes, words, at, weak=1)


def _clustered(shapes: Sequence[Shape], words: Sequence[Token], at: int) -> Tangle | None:
    """Alternating onsets where one may be the other with a sound more ("play, pay")."""
    return _onsets(shapes, words, at, longer=True)


def _onsets(
    shapes: Sequence[Shape], words: Sequence[Token], at: int, weak: int = _WEAK, longer: bool = False
) -> Tangle | None:
    """Onsets that alternate and are easily swapped ("she sells sea shells", "red lorry, yellow lorry")."""
    strong = _strong(shapes, at, weak)
    if len(strong) < 4 or strong[0] != at:
        return None
    onsets = [shapes[i].onset for i in strong[:4]]
    a, b = onsets[:2]
    if a != b and _close(a, b, longer) and set(onsets) == {a, b} and len({words[i].key for i in strong[:4]}) > 2:
        return Tangle(at, strong[3], "onsets")
    return None


def _close(one: tuple[str, ...], two: tuple[str, ...], longer: bool) -> bool:
    """Both hiss, or both are liquids, or (where asked) one is the other with a sound more."""
    if one[0] in _HISS and two[0] in _HISS:
        return True
    if {one[0], two[0]} <= {"r", "ɹ", "l", "w", "j"}:
        return True
    return longer and one[0] == two[0] and len(one) != len(two)


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


def _alike(shapes: Sequence[Shape], words: Sequence[Token], at: int) -> Tangle | None:
    """Four words in a row, weak ones passed over, each built of much the same sounds as the one before it."""
    row = [i for i in range(at, min(at + _REACH, len(shapes))) if len(shapes[i].phones) > _WEAK][:_ROW]
    if len(row) < _ROW or row[0] != at or len({words[i].key for i in row}) < _ROW - 1:
        return None
    shares = [shared(shapes[i].phones, shapes[j].phones) for i, j in pairwise(row)]
    return Tangle(at, row[-1], "alike") if min(shares) >= _ALIKE and sum(shares) >= _ALIKE_ALL else None


def _in_turn(shapes: Sequence[Shape], words: Sequence[Token], at: int) -> Tangle | None:
    """Two words that come again in turn, one of them changed ("raw papad, ripe papad")."""
    row = [i for i in range(at, min(at + _REACH, len(shapes))) if len(shapes[i].phones) > _WEAK][:_ROW]
    if len(row) < _ROW or row[0] != at or len({words[i].key for i in row}) != _ROW - 1:
        return None
    one, two = (shared(shapes[row[i]].phones, shapes[row[i + 2]].phones) for i in (0, 1))
    return Tangle(at, row[-1], "near-repeat") if {one, two} != {1.0} and min(one, two) >= 0.5 else None


@lru_cache(maxsize=65536)
def shared(one: tuple[str, ...], two: tuple[str, ...]) -> float:
    """The longest row of sounds that both hold in that order, as a share of the longer word; 0 to 1."""
    one, two = one[:_LONGEST], two[:_LONGEST]
    before = [0] * (len(two) + 1)
    for a in one:
        now = [0]
        for j, b in enumerate(two):
            now.append(before[j] + 1 if a == b else max(before[j + 1], now[j]))
        before = now
    return before[-1] / max(len(one), len(two), 1)
