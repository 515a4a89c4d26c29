"""Sounds of words against recorded words: 46 numerals, days and months in four languages, four speakers.

Durations and their source: `prompts.toml`. Each speaker gets one factor, as a reader whose pace is known.
"""

from __future__ import annotations

import statistics
import tomllib
from collections.abc import Sequence
from pathlib import Path

import pytest

from promptprep.engines.load import engines
from promptprep.spans import Span
from promptprep.store.languages import language_data
from promptprep.timing.pieces import Piece
from promptprep.timing.sounds import weighed

RECORDED = tomllib.loads(Path(__file__).with_name("prompts.toml").read_text("utf-8"))


def predicted(tag: str, words: Sequence[str]) -> list[float]:
    """Seconds of each word without pauses, by the default pace."""
    data = language_data(tag)
    phone_s, word_s = data.get("pace", "coefficients.phone_s"), data.get("pace", "coefficients.word_s")
    loads = weighed([Piece(Span(0, len(w)), w, "word") for w in words], "", data, engines())
    return [load[0] * phone_s + load[2] * word_s for _, load in loads]


def error(guesses: Sequence[float], real: Sequence[float]) -> float:
    """Mean error as a fraction, after the one factor that fits the speaker best on the whole."""
    factor = sum(real) / sum(guesses)
    return statistics.fmean(abs(factor * g / r - 1) for g, r in zip(guesses, real, strict=True))


@pytest.mark.parametrize("tag", RECORDED)
def test_recorded_words(tag: str) -> None:
    words, real = list(RECORDED[tag]), list(RECORDED[tag].values())
    ours = predicted(tag, words)
    assert len(words) >= 45
    assert statistics.correlation(ours, real) > 0.78
    assert error(ours, real) < 0.88 * error([float(len(w)) for w in words], real)
