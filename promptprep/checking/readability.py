"""Readability formulas, each for the one language that it was made for, by its published constants.

Flesch's scale runs from 100 (very easy) down; Flesch-Kincaid gives an American school grade. They count words,
sentences and syllables of running text. No language borrows a formula: one without any has none.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Formula:
    """`constant + per_sentence * words/sentence + per_word * syllables/word`.

    `hard` is where copy for the ear becomes hard: below it on a scale of ease, above it for a grade.
    """

    name: str
    constant: float
    per_sentence: float
    per_word: float
    hard: float
    rises: bool
    source: str

    def value(self, words: int, sentences: int, syllables: int) -> float:
        """The figure for a text of so many words, sentences and syllables, each at least 1."""
        return self.constant + self.per_sentence * words / sentences + self.per_word * syllables / words

    def is_hard(self, value: float) -> bool:
        return value > self.hard if self.rises else value < self.hard


FORMULAS: Mapping[str, Formula] = {
    "de": Formula(
        "Amstad's Flesch", 180.0, -1.0, -58.5, 40.0, False,
        "Amstad 1978; constants: leichtlesbar.ch/html/faq+78.html",
    ),
    "en": Formula(
        "Flesch-Kincaid grade", -15.59, 0.39, 11.8, 12.0, True,
        "Kincaid et al. 1975; constants: animalaesthetics.com/tyrantula/readability.html",
    ),
    "es": Formula(
        "Szigriszt-Pazos (Inflesz)", 206.835, -1.0, -62.3, 50.0, False,
        "Szigriszt Pazos 1993; constants and bands: legible.es/blog/perspicuidad-szigriszt-pazos",
    ),
    "fr": Formula(
        "Kandel-Moles", 207.0, -1.015, -73.6, 45.0, False,
        "Kandel and Moles 1958; constants: textstat 0.7.11",
    ),
    "pt": Formula(
        "Martins' Flesch", 248.835, -1.015, -84.6, 35.0, False,
        "Martins et al. 1996, ICMSC-USP (from memory)",
    ),
    "ru": Formula(
        "Flesch for Russian", 206.835, -1.3, -60.1, 35.0, False,
        "constants: textstat 0.7.11",
    ),
}  # fmt: skip
