"""Swahili: noun classes, hours and ranks that the vectors' sources do not cover. Worked by hand."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from promptprep.speaking.languages.sw_numbers import SwahiliNumbers
from promptprep.store.languages import language_data
from tests.speaking.support import SPELLER, assert_holds, found, kinds, said, texts

NUMBERS = SwahiliNumbers(language_data("sw"), SPELLER)
WORDS = [
    "saa",
    "watu",
    "vitabu",
    "miaka",
    "tarehe",
    "Mei",
    "mwaka",
    "km",
    "km/h",
    "°C",
    "TSh",
    "Dkt.",
    "n.k.",
    "asilimia",
    "ya",
    "wa",
    "milioni",
    "p.m.",
    "usiku",
    "ESA",
    "II",
]


@pytest.mark.parametrize(
    ("n", "prefix", "expected"),
    [
        (1, "wa", "mmoja"),
        (2, "vi", "viwili"),
        (5, "mi", "mitano"),
        (6, "vi", "sita"),
        (8, "ma", "manane"),
        (10, "wa", "kumi"),
        (12, "mi", "kumi na miwili"),
        (200, "wa", "mia mbili"),
        (2000, "vi", "elfu mbili"),
        (2003, "vi", "elfu mbili na vitatu"),
    ],
)
def test_only_units_agree_with_the_class(n: int, prefix: str, expected: str) -> None:
    assert NUMBERS.cardinal(n, prefix) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("milioni 2", "milioni mbili"),
        ("mita 5", "mita tano"),
        ("wiki 2", "wiki mbili"),
        ("mwaka 1", "mwaka mmoja"),
        ("mwaka 2001", "mwaka elfu mbili na moja"),
        ("vitabu vizuri 3", "vitabu vizuri vitatu"),
        ("kidato cha 4", "kidato cha nne"),
        ("Rais wa 2", "Rais wa pili"),
        ("zaidi ya 2", "zaidi ya mbili"),
        ("Vita ya II ya Dunia", "Vita ya pili ya Dunia"),
    ],
)
def test_counts_and_ranks(text: str, expected: str) -> None:
    assert said(text, "sw") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("saa 3:40", "saa tatu na dakika arobaini"),
        ("3:40", "saa tatu na dakika arobaini"),
        ("13:00", "saa saba mchana"),
        ("saa 13:00", "saa saba mchana"),
        ("saa 0:30", "saa sita na nusu usiku"),
        ("21:40 usiku", "saa tatu na dakika arobaini usiku"),
        ("6:00 a.m.", "saa kumi na mbili asubuhi"),
        ("12 p.m.", "saa sita mchana"),
        ("saa 12:45", "saa moja kasorobo"),
    ],
)
def test_hours_are_swahili_hours(text: str, expected: str) -> None:
    assert said(text, "sw") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Tsh 3.5 milioni", "shilingi milioni tatu nukta tano"),
        ("-2°C", "nyuzi hasi mbili za Selsiasi"),
        ("12,345.5", "elfu kumi na mbili mia tatu na arobaini na tano nukta tano"),
        ("2020/2021", "elfu mbili na ishirini hadi elfu mbili ishirini na moja"),
    ],
)
def test_units_stand_before_their_number(text: str, expected: str) -> None:
    assert said(text, "sw") == expected


@pytest.mark.parametrize("text", ["Habari za jioni.", "I am", "", "Mei", "saa ngapi?"])
def test_plain_words_pass_through(text: str) -> None:
    assert said(text, "sw") == text
    assert kinds(text, "sw") == []


def test_what_cannot_be_decided_has_another_saying() -> None:
    assert found("05/06/2026", "sw")[0].otherwise == ("tarehe sita Mei elfu mbili ishirini na sita",)


@settings(max_examples=150, deadline=None)
@given(texts(WORDS))
def test_any_text_has_a_spoken_form(text: str) -> None:
    assert_holds(text, "sw")


def test_ten_thousand_digits_are_said_one_by_one() -> None:
    assert said("7" * 10_000, "sw").split() == ["saba"] * 10_000


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("300 K.K.", "mia tatu Kabla ya Kristo"),
        ("mwaka 500 B.K.", "mwaka mia tano Baada ya Kristo"),
        ("Sh 1,000/=", "shilingi elfu moja"),
        ("Shs 2,500/= tu", "shilingi elfu mbili mia tano tu"),
        ("100 km/saa", "kilomita mia moja kwa saa"),
        ("50%-60%", "asilimia hamsini hadi sitini"),
    ],
)
def test_eras_shillings_and_rates_behind_figures(text: str, expected: str) -> None:
    assert said(text, "sw") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Ng'ombe 12", "Ng'ombe kumi na wawili"),
        ("watu hao 5", "watu hao watano"),
        ("watu zaidi ya 25", "watu zaidi ya ishirini na watano"),
        ("wanafunzi wa kike 25", "wanafunzi wa kike ishirini na watano"),
        ("ndege za kivita 3", "ndege za kivita tatu"),
        ("watoto wa miaka 5", "watoto wa miaka mitano"),
        ("meza 3", "meza tatu"),
        ("wimbo 1", "wimbo mmoja"),
        ("Machi–Mei", "Machi hadi Mei"),
        ("Jumatatu-Ijumaa", "Jumatatu hadi Ijumaa"),
        ("tarehe 5/6", "tarehe tano Juni"),
        ("30/6/26", "tarehe thelathini Juni elfu mbili ishirini na sita"),
        ("piga 112", "piga moja moja mbili"),
        ("akaunti 4567891", "akaunti nne tano sita saba nane tisa moja"),
        ("kamba ya sm 30", "kamba ya sentimita thelathini"),
    ],
)
def test_what_stands_between_a_noun_and_its_number(text: str, expected: str) -> None:
    assert said(text, "sw") == expected
