"""Difficulty on graded pairs: the OneStopEnglish corpus (Vajjala and Lucic 2018, BEA; CC BY-SA 4.0), a sample.

Each pair is a sentence of the advanced version of a news story and its counterpart in the elementary version. The
Flesch-Kincaid grade puts three quarters of such pairs in the right order; difficulty has to be six points better.
"""

from __future__ import annotations

from promptprep import faces
from tests.bench.difficulty import PAIRS, grade, in_order, pairs


def test_more_pairs_in_the_right_order_than_flesch_kincaid() -> None:
    rows = pairs(PAIRS)
    assert len(rows) > 100
    assert in_order(rows, lambda text: faces.difficulty(text, "en")) >= in_order(rows, grade) + 0.06
