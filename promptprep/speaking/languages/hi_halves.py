"""Hindi halves: "ढाई लाख", "साढ़े तीन किलोमीटर" where a decimal of five tenths counts something."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.speaking.languages.hi_numbers import HindiNumbers
from promptprep.speaking.numbers import ascii_digits

_QUARTERS = {"25": 1, "5": 2, "50": 2, "75": 3}
_HALF = 2
MOST = 99  # "साढ़े तीन सौ" is 350, so the half of one that is above a hundred is said as a decimal
_NEXT = re.compile("[ \u00a0\u202f]([\u0900-\u0963]+)")


class HindiHalves:
    """What a decimal is called as a whole number and quarters, and before which words it is said so."""

    def __init__(self, data: LanguageData, numbers: HindiNumbers) -> None:
        self._numbers = numbers
        units: Mapping[str, str] = data.get("spoken", "units")
        names = {name for entry in units.values() for name in entry.split("|")}
        self._counted = frozenset(names | set(data.get("spoken", "halves.before"))) - {units["%"]}

    def said(self, written: str) -> str:
        """ "2.5" -> "ढाई", "3.25" -> "सवा तीन"; "" where nobody says it so."""
        whole, _, part = ascii_digits(written).partition(".")
        quarters = _QUARTERS.get(part, 0)
        if not quarters or not whole.isdecimal() or not 1 <= int(whole[-3:]) <= MOST or len(whole) > len(str(MOST)):
            return ""
        if int(whole) == 1 and quarters == 1:
            return self._numbers.quarter_more()
        return self._numbers.quarters(int(whole), quarters)

    def is_half(self, written: str) -> bool:
        return _QUARTERS.get(ascii_digits(written).partition(".")[2]) == _HALF

    def before_counted(self, text: str, end: int) -> bool:
        """Whether the next word is a unit's full name or another word that halves are counted in."""
        found = _NEXT.match(text, end)
        return bool(found and found[1] in self._counted)
