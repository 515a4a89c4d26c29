"""Phonemes by the engine: counts by hand, other scripts, odd input, threads."""

from __future__ import annotations

import sys
from concurrent.futures import ThreadPoolExecutor

import pytest

from promptprep.engines.phonemes import EspeakPhonemes, syllables_of
from promptprep.errors import UnknownLanguage

ENGINE = EspeakPhonemes()

COUNTS = [
    ("en", "cat", (3, 1)),
    ("en", "idea", (3, 3)),  # aɪ d iə
    ("es", "ciudad", (6, 2)),  # θ j u ð a d
    ("fr", "bonjour", (5, 2)),  # b ɔ̃ ʒ u ʁ
    ("de", "Straße", (6, 2)),  # ʃ t ɾ ɑː s ə
    ("ru", "луна", (4, 2)),
    ("sw", "mwezi", (5, 2)),
    ("sw", "ng’ombe", (6, 2)),  # ŋ g o m b e
    ("hi", "चाँद", (4, 1)),  # c ã n d
]


@pytest.mark.parametrize(("language", "word", "counts"), COUNTS)
def test_counts(language: str, word: str, counts: tuple[int, int]) -> None:
    assert ENGINE.counts([word], language) == [counts]


def test_phones_are_ipa_without_marks_of_stress() -> None:
    assert ENGINE.phones(["bonjour"], "fr") == [("b", "ɔ̃", "ʒ", "u", "ʁ")]


@pytest.mark.parametrize(
    ("phone", "syllables"), [("t", 0), ("aɪ", 1), ("iː", 1), ("aɪə", 2), ("iə", 2), ("n̩", 1), ("tʃ", 0)]
)
def test_syllables_of_a_phoneme(phone: str, syllables: int) -> None:
    assert syllables_of(phone) == syllables


def test_a_word_in_another_script_is_read_by_its_own_voice() -> None:
    assert ENGINE.counts(["Привет"], "en") == ENGINE.counts(["Привет"], "ru")
    assert ENGINE.counts(["hello"], "ru") == ENGINE.counts(["hello"], "ko")


@pytest.mark.parametrize("word", ["", " ", "—", "?!", "\0", "\ud800", "\u200f", "🌙"])
def test_what_is_no_word_has_no_sound(word: str) -> None:
    assert ENGINE.counts([word], "en") == [(0, 0)]


def test_a_very_long_word_comes_back() -> None:
    (phones, syllables) = ENGINE.counts(["la" * 20_000], "en")[0]
    assert syllables == pytest.approx(20_000, rel=0.05)
    assert phones >= syllables


@pytest.mark.parametrize("language", ["en", "en-GB", "pt-BR", "zh", "no", "eu", "sr", "th", "it"])
def test_languages_and_regions_find_a_voice(language: str) -> None:
    assert ENGINE.counts(["la"], language)[0][0] >= 2


def test_a_language_without_a_voice_is_an_error() -> None:
    with pytest.raises(UnknownLanguage, match="xx"):
        ENGINE.counts(["la"], "xx")


def test_threads_share_one_engine() -> None:
    """Voices change under the callers; each still gets its own language's answer."""
    words = [f"la{c}o" for c in "bcdfglmnprst"]
    alone = {tag: EspeakPhonemes().phones(words, tag) for tag in ("en", "fr", "de")}
    shared = EspeakPhonemes()
    interval = sys.getswitchinterval()
    sys.setswitchinterval(1e-5)
    try:
        with ThreadPoolExecutor(6) as pool:
            jobs = [(tag, pool.submit(shared.phones, words, tag)) for tag in ("en", "fr", "de") * 20]
            assert all(job.result() == alone[tag] for tag, job in jobs)
    finally:
        sys.setswitchinterval(interval)


def test_a_second_engine_changes_nothing_for_the_first() -> None:
    """The library keeps one voice a process: another instance in between must not be heard in this one's answers."""
    words = ["jour", "nation", "chaise", "observatoire"]
    alone = EspeakPhonemes().phones(words, "fr")
    first, second = EspeakPhonemes(), EspeakPhonemes()
    first.phones(["un"], "fr")
    second.phones(["noc", "gwiazda"], "pl")
    assert first.phones(words, "fr") == alone
