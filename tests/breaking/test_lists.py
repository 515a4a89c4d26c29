"""What the word lists say of one place between two words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from promptprep.breaking.lists import AFTER, chunk_of, held_fast, list_cost, lists_of
from promptprep.breaking.text import break_plain_text
from promptprep.breaking.tree import tree_costs
from promptprep.engines.load import engines
from promptprep.model.ports import Word
from promptprep.store.languages import language_data
from tests.bench.breaks import NoStructure


def cost(language: str, left: str, right: str, starts_sentence: bool = False) -> float:
    return list_cost(chunk_of(left), chunk_of(right), lists_of(language_data(language)), starts_sentence)


@pytest.mark.parametrize(
    ("language", "left", "right"),
    [
        ("fr", "d'une", "lumière"),  # what stands behind the apostrophe leans on the next word
        ("fr", "qu’un", "soir"),
        ("fr", "se", "lève"),
        ("es", "se", "levanta"),
        ("pt", "se", "levanta"),
        ("hi", "इस", "रात"),
        ("ko", "할", "수"),
    ],
)
def test_a_word_that_leans_on_the_next_one_is_kept_with_it(language: str, left: str, right: str) -> None:
    assert cost(language, left, right) >= AFTER["adjectives"]


@pytest.mark.parametrize(
    ("language", "left", "right"),
    [("hi", "ने", "रात"), ("hi", "को", "रात")],
)
def test_a_phrase_that_its_last_word_closes_may_part_from_the_next_one(language: str, left: str, right: str) -> None:
    assert cost(language, left, right) == 0


@pytest.mark.parametrize(
    ("language", "left", "right"),
    [("ru", "н.", "э."), ("ru", "т.", "е."), ("de", "z.", "B."), ("en", "J.", "R.")],
)
def test_two_letters_of_an_abbreviation_are_held(language: str, left: str, right: str) -> None:
    assert held_fast(chunk_of(left), chunk_of(right), None, lists_of(language_data(language)))


def test_a_name_at_the_start_of_a_sentence_is_held_but_not_a_word_of_a_list() -> None:
    """German writes every noun with a capital: there the first word says nothing."""
    assert cost("en", "Galileo", "Galilei", starts_sentence=True) >= AFTER["prepositions"]
    assert cost("en", "Galileo", "1610", starts_sentence=True) < AFTER["prepositions"]
    assert cost("en", "Because", "Galileo", starts_sentence=True) < AFTER["prepositions"]
    assert cost("de", "Heute", "Abend", starts_sentence=True) < AFTER["prepositions"]
    assert cost("en", "Galileo", "Galilei") >= AFTER["prepositions"]


@pytest.mark.parametrize("width", [14.5, 21.5, 22.0])
def test_a_short_word_that_starts_a_clause_is_not_left_at_the_end_of_a_line(width: float) -> None:
    text = "On the night of 14 December, from a dark place, you may see 100 meteors an hour. They hit the air."
    own = replace(engines(), structure=NoStructure())
    assert not [line for line in break_plain_text(text, width, language_data("en"), own) if line.endswith(" you")]


def test_a_conjunction_says_less_on_to_the_next_word_than_a_preposition() -> None:
    """Measured on gold trees: a line that ends in "and" is better than one that parts a noun from its adjective."""
    text = "Mars and Venus"
    words = [Word(0, 4, "PROPN", 0, "ROOT", 0), Word(5, 8, "CCONJ", 0, "cc", 0), Word(9, 14, "PROPN", 0, "conj", 0)]
    before, after = tree_costs(words, [5, 9], frozenset(), text)
    assert max(before, after) < AFTER["adjectives"]
    assert 0 < cost("en", "and", "dark") < cost("en", "under", "skies")
