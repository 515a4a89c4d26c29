"""The pairing by length, against what its authors published.

W. A. Gale and K. W. Church, "A Program for Aligning Sentences in Bilingual Corpora", Computational Linguistics 19(1),
1993: one character of one language gives c = 1 characters of the other with a variance of s2 = 6.8 a character
(section 3.2), and the shares of kinds of match of its table 5: 1-1 0.89, 1-0 or 0-1 0.0099, 2-1 or 1-2 0.089,
2-2 0.011. (Values from memory of the paper; they sum to one within rounding, which is checked.)
"""

from __future__ import annotations

import math
from statistics import NormalDist

import pytest

from promptprep.versions.lengths import PRIORS, RATIO, VARIANCE, length_delta, match_cost, paired


def test_the_published_parameters() -> None:
    assert (RATIO, VARIANCE) == (1.0, 6.8)
    assert PRIORS[1, 1] == 0.89
    assert PRIORS[1, 0] + PRIORS[0, 1] == pytest.approx(0.0099)
    assert PRIORS[2, 1] + PRIORS[1, 2] == pytest.approx(0.089)
    assert PRIORS[2, 2] == 0.011
    assert sum(PRIORS.values()) == pytest.approx(1.0, abs=0.001)


@pytest.mark.parametrize(("source", "target"), [(100, 110), (40, 71), (157, 157), (20, 12)])
def test_the_cost_is_prior_times_two_tailed_chance(source: int, target: int) -> None:
    """-log(prior * 2 * (1 - Phi(|delta|))), Phi by the standard library's normal law."""
    delta = (target - source) / math.sqrt(6.8 * (source + target) / 2)
    assert abs(length_delta(source, target)) == pytest.approx(abs(delta))
    expected = -math.log(0.89) - math.log(2 * (1 - NormalDist().cdf(abs(delta))))
    assert match_cost(source, target, (1, 1)) == pytest.approx(expected, rel=1e-6)


def test_a_worked_example() -> None:
    """Lengths in the manner of the paper's example: the second sentence of the source became two, the fourth and fifth
    one. Worked by hand: any other pairing leaves a match more than two standard deviations apart."""
    beads = paired([70, 160, 90, 40, 60, 120], [75, 85, 80, 88, 104, 118])
    assert [(b.source, b.target) for b in beads] == [
        ((0,), (0,)), ((1,), (1, 2)), ((2,), (3,)), ((3, 4), (4,)), ((5,), (5,)),
    ]  # fmt: skip


def test_a_dropped_sentence_is_left_alone() -> None:
    """By lengths alone a dropped sentence is rather taken for half of its neighbour: the paper says as much of its
    1-0 matches. What else is known of the sentences decides."""
    beads = paired([80, 100, 90, 120], [82, 88, 123], extra=lambda i, j: 30.0 if 1 in i and j else 0.0)
    assert [(b.source, b.target) for b in beads] == [((0,), (0,)), ((1,), ()), ((2,), (1,)), ((3,), (2,))]


def test_long_texts_are_paired_in_a_straight_line() -> None:
    lengths = [40 + 7 * (n % 19) for n in range(800)]
    assert all(b.source == b.target for b in paired(lengths, lengths))
