"""Changed words of a sentence: what went, what came, and where."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from promptprep.versions.words import shown, word_changes

MOON = "The Moon sets at 21:40, so the rest of the night is yours."


@pytest.mark.parametrize(
    ("before", "after", "expected"),
    [
        (MOON, MOON, []),
        (MOON, MOON.replace("21:40", "22:10"), ["“The Moon sets at [21:40 → 22:10], so the rest of…”"]),
        (MOON, MOON.replace("the rest", "most"), ["“…sets at 21:40, so [the rest → most] of the night is…”"]),
        (MOON, MOON.replace("The Moon", "Moon"), ["“[−The] Moon sets at 21:40…”"]),
        (MOON, MOON.replace("the night", "the long night"), ["“…the rest of the [+long] night is yours.”"]),
        (MOON, "Nothing of it has stayed.", [f"“{MOON}” → “Nothing of it has stayed.”"]),
        ("月亮在21:40落下，之后都是你的。", "月亮在22:10落下，之后都是你的。", ["“月亮在[21:40 → 22:10]落下，之后…”"]),
        ("القمر يغيب في 9:40 مساءً.", "القمر يغيب في 9:50 مساءً.", ["“القمر يغيب في [9:40 → 9:50] مساءً.”"]),
    ],
)  # fmt: skip
def test_the_changed_words_are_shown(before: str, after: str, expected: list[str]) -> None:
    assert [shown(change) for change in word_changes(before, after)] == expected


@given(st.text(max_size=60), st.text(max_size=60))
def test_any_two_texts_give_changes(before: str, after: str) -> None:
    changes = word_changes(before, after)
    assert bool(changes) == (before != after)
    for change in changes:
        assert change.new in after
        assert change.gone in before


def test_a_sentence_without_end_is_shown_whole() -> None:
    (change,) = word_changes("so " * 3000, "so " * 3000 + "on")
    assert change.new.endswith("on")
