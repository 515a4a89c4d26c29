"""Pairs passages of two languages by their lengths: the method of Gale and Church (1993).

W. A. Gale and K. W. Church, "A Program for Aligning Sentences in Bilingual Corpora", Computational Linguistics 19(1),
75-102. Lengths are characters: a character of one language gives `RATIO` characters of the other on average, with a
variance of `VARIANCE` a character. `PRIORS` are that paper's shares of the kinds of match (table 5).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from promptprep.model.versions import Bead

RATIO = 1.0
VARIANCE = 6.8
PRIORS = {
    (1, 1): 0.89,
    (1, 0): 0.0099 / 2,
    (0, 1): 0.0099 / 2,
    (2, 1): 0.089 / 2,
    (1, 2): 0.089 / 2,
    (2, 2): 0.011,
}
LONGER = {(3, 1): 0.004, (1, 3): 0.004}  # ours, not the paper's: what translators of speech do now and then
_KINDS = PRIORS | LONGER
_LEAST = 1e-300
_BAND = 60  # passages that the pairing may run off the diagonal; keeps long texts in a straight line

Extra = Callable[[Sequence[int], Sequence[int]], float]


def length_delta(source: float, target: float, ratio: float = RATIO, variance: float = VARIANCE) -> float:
    """How far two lengths lie from each other, in standard deviations.

    The target's length is put in characters of the source's language first, so that a language of few characters is
    told apart as well; the square root takes the mean of both, so that a passage without partner has a finite distance.
    """
    same = target / ratio
    mean = (source + same) / 2
    return 0.0 if mean <= 0 else (source - same) / math.sqrt(mean * variance)


def match_cost(source: float, target: float, kind: tuple[int, int], ratio: float = RATIO) -> float:
    """-log of the probability that passages of these lengths match in this way: prior times two-tailed chance."""
    chance = math.erfc(abs(length_delta(source, target, ratio)) / math.sqrt(2))
    return -math.log(max(chance, _LEAST)) - math.log(_KINDS[kind])


def paired(
    source: Sequence[float], target: Sequence[float], ratio: float = RATIO, extra: Extra | None = None
) -> list[Bead]:
    """The cheapest way to match passages in order. `extra(i's, j's)` adds what else speaks against a match."""
    table: dict[tuple[int, int], tuple[float, tuple[int, int]]] = {(0, 0): (0.0, (0, 0))}
    n, m = len(source), len(target)
    band = _BAND + abs(n - m)
    for i in range(n + 1):
        middle = round(i * m / n) if n else 0
        low, high = (0, m) if n == 0 else (max(0, middle - band), min(m, middle + band))
        for j in range(low, high + 1):
            if i or j:
                best = _best(table, source, target, (i, j), ratio, extra)
                if best is not None:
                    table[i, j] = best
    return _walked(table, n, m)


def _best(
    table: dict[tuple[int, int], tuple[float, tuple[int, int]]],
    source: Sequence[float],
    target: Sequence[float],
    at: tuple[int, int],
    ratio: float,
    extra: Extra | None,
) -> tuple[float, tuple[int, int]] | None:
    i, j = at
    found: tuple[float, tuple[int, int]] | None = None
    for a, b in _KINDS:
        before = table.get((i - a, j - b))
        if before is None:
            continue
        cost = before[0] + match_cost(sum(source[i - a : i]), sum(target[j - b : j]), (a, b), ratio)
        if extra is not None:
            cost += extra(range(i - a, i), range(j - b, j))
        if found is None or cost < found[0]:
            found = (cost, (a, b))
    return found


def _walked(table: dict[tuple[int, int], tuple[float, tuple[int, int]]], n: int, m: int) -> list[Bead]:
    beads: list[Bead] = []
    while n or m:
        a, b = table[n, m][1]
        beads.append(Bead(tuple(range(n - a, n)), tuple(range(m - b, m))))
        n, m = n - a, m - b
    return beads[::-1]
