"""What words weigh. Counts by hand."""

from __future__ import annotations

from itertools import pairwise

import pytest

from promptprep.timing.tally import seconds, tally
from tests.timing.stand import measured

UNITS = [
    ("en", "cats", 4),  # k æ t s
    ("es", "luna", 4),  # l u n a
    ("fr", "lune", 3),  # l y n
    ("sw", "jua", 3),  # ɟ u a
    ("ko", "안녕하세요", 5),
    ("zh", "晚上好", 3),
    ("ja", "こんばんは", 5),
    ("ja", "東京", 4),  # to o kyo o
    ("ar", "القمر", 5),
    ("zh", "9点40分", 5),  # 九点四十分
]


@pytest.mark.parametrize(("tag", "text", "units"), UNITS)
def test_units_of_sound(tag: str, text: str, units: float) -> None:
    assert sum(load.units for load in measured(text, tag).loads) == units


@pytest.mark.parametrize("tag", ["en", "es", "fr", "de", "pt", "ru", "ar", "hi", "sw", "zh", "ja", "ko"])
def test_words_of_other_scripts_take_time(tag: str) -> None:
    for text in ("Hello there", "Привет", "今夜", "שלום"):
        assert sum(load.units for load in measured(text, tag).loads) > 1, text


def test_words_joined_by_marks_are_cut() -> None:
    words = [w.said for w in measured("through the world--oh, woe is me!--and witness").words]
    assert words == ["through", "the", "world", "oh", "woe", "is", "me", "and", "witness"]


def test_spans_are_places_in_the_text() -> None:
    for tag, text in {
        "en": '"Well," said Ines -- at 9:40 p.m. -- "look!"',
        "zh": "晚上好。今晚9点，月亮升起，NASA说。",
        "ja": "今夜、月は9時40分に昇ります。",
        "hi": "आज चाँद 9:40 पर निकलेगा।",
    }.items():
        words = measured(text, tag).words
        assert all(w.span.of(text) == w.said for w in words if w.kind == "word"), tag
        assert all(a.span.end <= b.span.start for a, b in pairwise(words)), tag


def test_what_makes_no_sound_weighs_nothing() -> None:
    assert not measured(" \t—…?! \u200f\u200b\n\n").words


def test_rare_words_weigh_more() -> None:
    common, rare = measured("the").loads[0], measured("heliacal").loads[0]
    assert common[3] == 0
    assert rare[3] > 3


def test_a_long_stretch_without_a_mark_gets_breaths_inside() -> None:
    text = "we watched the bright old moon climb over the dark ridge behind the dome and sink again before dawn came"
    found = measured(text)
    excess = (found.syllables - 16) / 16
    assert sum(found.breaths.values()) == pytest.approx(excess)
    assert set(found.breaths) <= set(range(1, len(found.words) - 1))
    assert not measured("we watched the bright moon, and it sank.").breaths
    assert {found.words[at + 1].said for at in found.breaths} <= {"over", "behind", "and", "before"}


def test_the_tally_of_a_text() -> None:
    amounts = tally(measured("One, two, three. Then: four (five)\n\nsix"), "phone_s")
    wanted = {"list_s": 2, "sentence_s": 2, "colon_s": 1, "bracket_s": 1, "paragraph_s": 1, "end_s": 1, "word_s": 7}
    assert {name: amounts[name] for name in wanted} == wanted
    assert seconds(amounts, {"sentence_s": 0.5, "word_s": 0.1}) == pytest.approx(1.7)


@pytest.mark.parametrize(
    ("text", "end"),
    [
        ("We go.", 1),
        ("We go", 1),
        ("We go,", 0.4),
        ("We go:", 0.6),
        ("We go --", 0.6),
        ('"We go."', 1.6),
        ("We saw Mr.", 0),
    ],
)
def test_how_much_breath_an_end_asks_for(text: str, end: float) -> None:
    assert measured(text).end == end
