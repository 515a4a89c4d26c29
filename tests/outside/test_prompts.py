"""Predicted times against recorded telephone prompts of Debian: words and sentences in four languages, four speakers.

Durations, texts and their source: `prompts.toml`. Words: each speaker gets one factor, as a reader whose pace is
known. Sentences: the pace is learned from every other one and judged on the rest, beside the words-a-minute rule.
"""

from __future__ import annotations

import math
import statistics
import tomllib
from collections.abc import Sequence
from pathlib import Path

import pytest

from promptprep.engines.load import engines
from promptprep.model.spoken import Spoken
from promptprep.spans import Span
from promptprep.speaking.speak import speak
from promptprep.store.languages import language_data
from promptprep.timing.pace import learn
from promptprep.timing.pieces import Piece
from promptprep.timing.sounds import weighed
from promptprep.timing.time import time_text

RECORDED = tomllib.loads(Path(__file__).with_name("prompts.toml").read_text("utf-8"))
# Share of the rule's error that is left. The Spanish texts are written without accents, as typed on old machines.
LEFT = {"en": 0.72, "es": 0.85, "fr": 0.65, "ru": 0.5}


def predicted(tag: str, words: Sequence[str]) -> list[float]:
    """Seconds of each word without pauses, by the default pace."""
    data = language_data(tag)
    phone_s, word_s = data.get("pace", "coefficients.phone_s"), data.get("pace", "coefficients.word_s")
    loads = weighed([Piece(Span(0, len(w)), w, "word") for w in words], "", data, engines())
    return [load.units * phone_s + load.words * word_s for _, load in loads]


def error(guesses: Sequence[float], real: Sequence[float]) -> float:
    """Mean error as a fraction, after the one factor that fits the speaker best on the whole."""
    factor = sum(real) / sum(guesses)
    return statistics.fmean(abs(factor * g / r - 1) for g, r in zip(guesses, real, strict=True))


@pytest.mark.parametrize("tag", RECORDED["words"])
def test_recorded_words(tag: str) -> None:
    words, real = list(RECORDED["words"][tag]), list(RECORDED["words"][tag].values())
    ours = predicted(tag, words)
    assert len(words) >= 45
    assert statistics.correlation(ours, real) > 0.78
    assert error(ours, real) < 0.88 * error([float(len(w)) for w in words], real)


@pytest.mark.parametrize("tag", RECORDED["sentences"])
def test_recorded_sentences(tag: str) -> None:
    data = language_data(tag)
    known = list(RECORDED["sentences"][tag].items())
    heard, judged = known[::2], known[1::2]

    def spoken(text: str, said: Sequence[tuple[Span, str]] = ()) -> Spoken:
        return speak(text, data, engines().speller, said)

    pace = learn(heard, data, engines(), spoken)
    word_s = math.fsum(s for _, s in heard) / sum(len(text.split()) for text, _ in heard)
    ours, rule = [], []
    for text, seconds in judged:
        ours.append(abs(time_text(text, data, pace, engines(), spoken).mean_s / seconds - 1))
        rule.append(abs(len(text.split()) * word_s / seconds - 1))
    assert statistics.fmean(ours) < LEFT[tag] * statistics.fmean(rule)
