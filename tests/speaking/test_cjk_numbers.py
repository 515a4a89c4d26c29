"""Number words of the three languages against ICU and num2words, and what happens beyond the powers they name."""

from __future__ import annotations

import random

import pytest
from num2words import num2words

from promptprep.speaking.languages.cjk_numbers import Numerals, chinese, japanese, korean, numerals_of
from promptprep.store.languages import language_data
from tests.speaking.cjk import SPELLER

FORMS = {"ja": japanese, "zh": chinese, "ko": korean}
RANDOM = random.Random(7)
SAMPLE = [
    *range(1, 1200),
    *(10**n for n in range(12)),
    *(RANDOM.randrange(10 ** RANDOM.randrange(1, 12)) for _ in range(1500)),
]


def numerals(tag: str) -> Numerals:
    return numerals_of(language_data(tag).get("spoken", "number"), FORMS[tag])


def plain(words: str) -> str:
    """What two spellings of one number have in common: 〇 or 零, 两 or 二, 一千 or 千."""
    return words.replace("〇", "零").replace("两", "二").replace("一千", "千")


@pytest.mark.parametrize("tag", ["ja", "ko"])
def test_whole_numbers_are_those_of_icu(tag: str) -> None:
    own = numerals(tag)
    assert {
        n: own.whole(str(n)) for n in SAMPLE if n and plain(own.whole(str(n))) != plain(SPELLER.spell(n, tag))
    } == {}


def test_chinese_numbers_are_those_of_icu_but_for_the_zero_after_yi() -> None:
    """ICU leaves out the 零 that the school rule puts where the ten-millions are missing: 五亿零一百万."""
    own = numerals("zh")
    differ = [n for n in SAMPLE if plain(own.whole(str(n))) != plain(SPELLER.spell(n, "zh"))]
    assert all(n > 10**8 and (n // 10**7) % 10 == 0 for n in differ)


@pytest.mark.parametrize("tag", ["ja", "ko"])
def test_whole_numbers_are_those_of_num2words(tag: str) -> None:
    own = numerals(tag)
    for n in SAMPLE:
        if n:
            assert plain(own.whole(str(n))) == plain(num2words(n, lang=tag)), n


@pytest.mark.parametrize(
    ("tag", "digits", "words"),
    [
        ("ja", "1" + "0" * 16, "一京"),
        ("zh", "1" + "0" * 12, "一万亿"),
        ("zh", "2" + "0" * 16, "两亿亿"),
        ("ko", "1" + "0" * 20, "일해"),
        ("ko", "10001", "만 일"),
    ],
)
def test_large_powers(tag: str, digits: str, words: str) -> None:
    assert numerals(tag).whole(digits) == words


@pytest.mark.parametrize("tag", ["ja", "zh", "ko"])
def test_a_number_without_a_name_is_read_digit_by_digit(tag: str) -> None:
    own = numerals(tag)
    assert own.whole("7" * 200) == own.digits[7] * 200
