"""Number words against num2words 0.5.14 (LGPL), a second source beside the CLDR's rules that we spell by.

Compared without hyphens and commas. Where the two sources differ it is said here: English "and" (British in
num2words, absent in the CLDR's plain rules), the Spanish decimal "punto" (the CLDR and we say "coma"), Spanish
21,000 without apocope and 42nd with a Portuguese letter (slips of num2words); its Portuguese is Portugal's.
"""

from __future__ import annotations

import pytest
from num2words import num2words

from promptprep.engines.spelling import IcuSpeller
from promptprep.speaking.speak import speak
from promptprep.store.languages import language_data
from tests.outside.spoken import normal

SPELLER = IcuSpeller()
TAGS = ("en", "fr", "de", "es", "pt")
NUMBERS = [*range(121), 199, 200, 201, 300, 555, 999, 1000, 1001, 2222, 10_000, 21_000, 99_999, 100_000, 234_567]
LARGE = [1_000_000, 1_234_567, 2_000_000, 999_999_999, 1_000_000_000]
SLIPS = {"es": (21_000,)}


def said(text: str, tag: str) -> str:
    return normal(speak(text, language_data(tag), SPELLER).text)


def other(number: float, tag: str, **kind: str) -> str:
    words = normal(num2words(number, lang=tag, **kind))
    return words.replace(" and ", " ") if tag == "en" else words


@pytest.mark.parametrize("tag", TAGS)
def test_cardinals(tag: str) -> None:
    ours = {"pt": "pt-PT"}.get(tag, tag)
    numbers = [n for n in NUMBERS if not 1000 <= n < 2200 and n not in SLIPS.get(tag, ())] + LARGE
    assert {n: said(str(n), ours) for n in numbers} == {n: other(n, tag) for n in numbers}


@pytest.mark.parametrize(
    ("tag", "mark", "group"), [("en", ".", ","), ("fr", ",", "\u202f"), ("de", ",", "."), ("pt", ",", ".")]
)
def test_decimals_and_groups(tag: str, mark: str, group: str) -> None:
    """Two decimals without a nought: newsreaders in French and Portuguese say them as one number (common usage, no
    source), where the library says digit by digit."""
    assert said(f"3{mark}7", tag) == other(3.7, tag)
    if tag in ("en", "de"):
        assert said(f"3{mark}14", tag) == other(3.14, tag)
    assert said(f"0{mark}05", tag) == other(0.05, tag)
    assert said(f"1{group}234{mark}5", tag) == other(1234.5, tag)


ORDINALS = [1, 2, 3, 4, 8, 11, 12, 20, 21, 30, 42, 99, 100]


def suffix(number: int) -> str:
    if number % 100 in (11, 12, 13):
        return "th"
    return {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")


def test_english_ordinals() -> None:
    written = {n: f"{n}{suffix(n)}" for n in ORDINALS}
    assert {n: said(w, "en") for n, w in written.items()} == {n: other(n, "en", to="ordinal") for n in ORDINALS}


@pytest.mark.parametrize(("tag", "ending"), [("fr", "e"), ("es", ".º"), ("pt", ".º")])
def test_romance_ordinals(tag: str, ending: str) -> None:
    numbers = [n for n in ORDINALS if n > 1 and n not in DISPUTED.get(tag, ())]
    assert {n: said(f"{n}{ending}", tag) for n in numbers} == {n: other(n, tag, to="ordinal") for n in numbers}


# num2words: es 11 "décimo primero", where the Academy and the CLDR have "undécimo" (12 likewise).
DISPUTED = {"es": (11, 12, 42)}


@pytest.mark.parametrize("year", [1066, 1492, 1900, 1905, 1969, 1999, 2000, 2010, 2017, 2026])
def test_years(year: int) -> None:
    assert said(f"in {year}", "en") == "in " + other(year, "en", to="year")
    assert said(f"im Jahr {year}", "de") == "im jahr " + other(year, "de", to="year")


@pytest.mark.parametrize(
    ("tag", "text", "amount"), [("es", "12,50 €", 12.5), ("es", "1,01 €", 1.01), ("pt", "12,50 €", 12.5)]
)
def test_money(tag: str, text: str, amount: float) -> None:
    assert said(text, tag) == other(amount, tag, to="currency", currency="EUR")
