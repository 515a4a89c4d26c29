"""Difficulty: in range, in order, and of the copy, not of its length."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from promptprep.checking.difficulty import difficulties, passage_difficulty
from promptprep.engines.load import engines
from promptprep.model.language import FIRST_CLASS
from promptprep.speaking.speak import speak
from promptprep.store.languages import language_data
from tests.checking.build import context_for

OVERLONG = tomllib.loads((Path(__file__).parent / "cases" / "overlong-sentence.toml").read_text("utf-8"))


def difficulty(text: str, language: str) -> float:
    data, tools = language_data(language), engines()
    return passage_difficulty(text, speak(text, data, tools.speller), data, tools)


@pytest.mark.parametrize("language", FIRST_CLASS)
def test_long_and_tangled_copy_is_harder_than_short_and_plain(language: str) -> None:
    (hard,), (easy,) = OVERLONG[language]["fires"], OVERLONG[language]["silent"]
    assert difficulty(hard, language) > difficulty(easy, language) + 10


@pytest.mark.parametrize(
    ("hard", "easy"),
    [
        ("The observatory commenced operations.", "The observatory began its work."),
        ("The comet was found by a girl.", "A girl found the comet."),
        ("It costs 184,463 dollars.", "It costs two dollars."),
        ("The man who built the dome, which leaks, left.", "The man left. He built the dome. It leaks."),
    ],
)
def test_one_thing_harder(hard: str, easy: str) -> None:
    assert difficulty(hard, "en") > difficulty(easy, "en")


def test_more_of_the_same_is_not_harder() -> None:
    one = "The moon rises in the east this evening."
    assert difficulty(" ".join([one] * 20), "en") == pytest.approx(difficulty(one, "en"))


@pytest.mark.parametrize("text", ["", "   ", "...", "\u200b", "!!! ???"])
def test_nothing_to_say_is_not_hard(text: str) -> None:
    assert difficulty(text, "en") == 0.0


def test_one_figure_a_paragraph() -> None:
    context = context_for("# A\n\nThe moon is up.\n\n[clip 0:10 moon]\n\n# B\n\nThe sun is down.", "en")
    assert sorted(difficulties(context)) == [(0, 0), (1, 0)]


@settings(max_examples=60, deadline=None)
@given(text=st.text(max_size=80), language=st.sampled_from((*FIRST_CLASS, "is")))
def test_any_text_is_between_0_and_100(text: str, language: str) -> None:
    assert 0.0 <= difficulty(text, language) <= 100.0
