"""Word frequencies: the package's own figures, without its tokenisers."""

from __future__ import annotations

import sys

import pytest

from promptprep.engines.frequency import WordFrequency

FREQUENCY = WordFrequency()


@pytest.mark.parametrize(
    ("word", "zipf"),
    # from the documentation of wordfreq 3 (Speer 2022), zipf_frequency(word, "en"): from memory
    [("the", 7.73), ("word", 5.26), ("frequency", 4.36), ("zipf", 1.49)],
)
def test_published_values(word: str, zipf: float) -> None:
    assert FREQUENCY.zipf(word, "en") == pytest.approx(zipf, abs=0.005)


@pytest.mark.parametrize(
    ("language", "word"),
    [
        ("de", "straße"),
        ("de", "Fernrohr"),
        ("es", "cúpula"),
        ("fr", "étoile"),
        ("pt", "coração"),
        ("ru", "звезда"),
        ("hi", "तारा"),
    ],
)
def test_the_package_says_the_same(language: str, word: str) -> None:
    import wordfreq

    assert FREQUENCY.zipf(word, language) == pytest.approx(wordfreq.zipf_frequency(word, language), abs=0.011)


def test_forms_of_one_word_are_one() -> None:
    assert FREQUENCY.zipf("DON’T", "en") == FREQUENCY.zipf("don't", "en")
    assert FREQUENCY.zipf("كِتَاب", "ar") == FREQUENCY.zipf("كتاب", "ar")


def test_what_is_not_there() -> None:
    assert FREQUENCY.zipf("quillhorn", "en") == 0.0
    assert FREQUENCY.zipf("nyota", "sw") is None
    assert FREQUENCY.zipf("x", "../en") is None
    assert FREQUENCY.zipf("", "en") == 0.0


def test_no_segmenter_is_loaded() -> None:
    assert FREQUENCY.zipf("望远镜", "zh")
    assert not {"jieba", "MeCab"} & set(sys.modules)
