"""Hindi fractions: "आधा", "दो तिहाई", "पाँच बटा आठ", and whole numbers with quarters."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.hi_numbers import HindiNumbers
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import VULGAR, Handler, as_written, is_year_pair, one_of, reading

GAP = "[ \u00a0\u202f]"
_QUARTERS = {(1, 4): 1, (1, 2): 2, (3, 4): 3}


class HindiFractions:
    """Handlers for fractions with a stroke and those of one character, with the unit behind them."""

    def __init__(self, data: LanguageData, numbers: HindiNumbers) -> None:
        self._numbers = numbers
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._and: str = data.get("spoken", "symbols")["&"]
        self._units: Mapping[str, str] = data.get("spoken", "units")
        self._fractions: Mapping[str, str] = data.get("spoken", "fractions")
        self._unit_after = rf"(?:{GAP}?(?P<unit>{one_of(self._units)})(?![\w²³/\u0900-\u0963]))?"

    def rules(self) -> list[tuple[str, Handler]]:
        return [
            (rf"(?:(\d{{1,9}}){GAP})?(\d{{1,9}})/(\d{{1,9}})(?![\d/]){self._unit_after}", self._fraction),
            (rf"(?:(\d{{1,9}}){GAP}?)?([{''.join(VULGAR)}]){self._unit_after}", self._vulgar),
        ]

    def sign_rule(self) -> tuple[str, Handler]:
        """For a fraction of one character without a whole number."""
        return rf"()([{''.join(VULGAR)}]){self._unit_after}", self._vulgar

    def _fraction(self, found: re.Match[str]) -> Reading:
        if not found[1] and is_year_pair(found[2], found[3]):
            years = (self._numbers.year(ascii_digits(y)) for y in found.group(2, 3))
            return reading(found, f" {self._word['range']} ".join(years), "range")
        return self._said(found, int(found[2]), int(found[3]))

    def _vulgar(self, found: re.Match[str]) -> Reading:
        return self._said(found, *VULGAR[found[2]])

    def _said(self, found: re.Match[str], over: int, under: int) -> Reading:
        said = self._mixed(found, over, under) if found[1] else self._share(over, under)
        if found["unit"]:
            said += f" {self._units[as_written(found['unit'], self._units)].split('|')[-1]}"
        return reading(found, said, "fraction")

    def _share(self, over: int, under: int) -> str:
        own = self._fractions.get(f"{over}/{under}")
        return own or f"{self._numbers.cardinal(over)} {self._word['over']} {self._numbers.cardinal(under)}"

    def _mixed(self, found: re.Match[str], over: int, under: int) -> str:
        """ "2½" -> "ढाई", "3½" -> "साढ़े तीन", "2¼" -> "सवा दो", "2¾" -> "पौने तीन"; else "दो और दो बटा सात"."""
        whole = int(found[1])
        quarters = _QUARTERS.get((over, under))
        if not quarters or not whole:
            return f"{self._numbers.cardinal(whole)} {self._and} {self._share(over, under)}"
        counts = found["unit"] or re.match(rf"{GAP}[\u0900-\u0963]", found.string[found.end() : found.end() + 2])
        if counts and whole == 1 and quarters == 1:
            return self._numbers.quarter_more()
        return self._numbers.quarters(whole, quarters)
