"""Which pause stands between two words. Expected kinds by hand, from how the marks are read aloud."""

from __future__ import annotations

import pytest

from promptprep.timing.marks import pause_kind, with_lists
from tests.timing.stand import measured

KINDS = [
    (" ", False, None),
    (", ", True, "comma"),
    ('," ', True, "comma"),
    ("; ", True, "colon"),
    (": ", True, "colon"),
    (":", True, None),
    ("--", True, "dash"),
    (" -- ", True, "dash"),
    (" – ", True, "dash"),
    ("—", True, "dash"),
    ("-", True, None),
    ("... ", True, "dash"),
    ("… ", False, "sentence"),
    (" (", True, "bracket"),
    (") ", True, "bracket"),
    (". ", False, "sentence"),
    (". ", True, None),
    ('." "', False, "sentence"),
    ('?" ', True, "comma"),
    ("! ", True, "dash"),
    (".", False, "sentence"),
    (".\n\n", False, "paragraph"),
    ("\r\n \r\n", False, "paragraph"),
    ("\n", False, None),
    ("。", False, "sentence"),
    ("、", False, "comma"),
    ("，", False, "comma"),
    ("। ", False, "sentence"),
    ("؟ ", False, "sentence"),
    ("، ", False, "comma"),
    (" ¿", False, None),
]


@pytest.mark.parametrize(("gap", "lower", "kind"), KINDS)
def test_the_pause_in_a_gap(gap: str, lower: bool, kind: str | None) -> None:
    assert pause_kind(gap, lower_next=lower) == kind


def test_commas_of_short_items_are_a_list() -> None:
    assert with_lists(["comma", None, "comma", None, None, None, "comma", "sentence"])[::2] == [
        "list", "list", None, "comma",
    ]  # fmt: skip


SENTENCES = {
    "en": ('"Are there none?" asked Ines. "Plenty--of them," he said.', ["comma", "sentence", "dash", "comma"]),
    "es": ("¿Lo ven? Sí: allí, al sur.", ["sentence", "colon", "comma"]),
    "de": ("Ja – er kommt; bald. Gut.", ["dash", "colon", "sentence"]),
    "fr": ("« Oui ! » dit la femme du fond, « bientôt. » Bien.", ["comma", "comma", "sentence"]),
    "zh": ("晚上好。月亮，升起了。看！", ["sentence", "comma", "sentence"]),
    "ja": ("こんばんは。月は、昇ります。", ["sentence", "comma"]),
    "hi": ("नमस्कार। आज, चाँद।", ["sentence", "comma"]),
    "ar": ("مساء الخير. أين القمر؟ هنا، فوق.", ["sentence", "sentence", "comma"]),
}


@pytest.mark.parametrize("tag", SENTENCES)
def test_pauses_of_a_sentence(tag: str) -> None:
    text, kinds = SENTENCES[tag]
    assert [k for k in measured(text, tag).pauses if k] == kinds


def test_initials_and_titles_end_no_sentence() -> None:
    assert "sentence" not in measured("We met J. Osei and Dr. Amina there.").pauses


def test_a_stop_inside_a_clock_time_ends_its_sentence() -> None:
    assert list(measured("We meet at 9 p.m. Bring a coat.").pauses).count("sentence") == 1
