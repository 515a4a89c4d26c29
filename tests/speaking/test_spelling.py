"""The engine behind the number words: what it refuses, and what it cleans."""

from __future__ import annotations

import pytest

from promptprep.engines.spelling import IcuSpeller
from promptprep.errors import UnknownLanguage

SPELL = IcuSpeller().spell


def test_no_soft_hyphen_is_left() -> None:
    assert SPELL(21, "de") == "einundzwanzig"


def test_decimals_are_exact() -> None:
    assert SPELL("0.1", "en") == "zero point one"


def test_an_unknown_ordinal_rule_set_is_an_error_and_no_cardinal() -> None:
    with pytest.raises(UnknownLanguage, match="ordinal-feminine"):
        SPELL(3, "en", "%spellout-ordinal-feminine")


@pytest.mark.parametrize("language", ["zz", "tlh"])
def test_a_language_without_number_words(language: str) -> None:
    with pytest.raises(UnknownLanguage):
        SPELL(3, language)


@pytest.mark.parametrize("number", ["", "three", "1e400", "NaN", "1" * 19])
def test_what_is_no_number_that_can_be_spelled(number: str) -> None:
    with pytest.raises(ValueError, match=r"number|range"):
        SPELL(number, "en")
