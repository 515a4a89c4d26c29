"""Any language with number words in ICU but no data of its own: plain numbers, and nothing that could be false."""

from __future__ import annotations

import re

from promptprep.errors import UnknownLanguage
from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.numbers import Words, ascii_digits

_NUMBER = re.compile(r"\d+(?:[.,]\d+)*")
_DECIMAL = re.compile(r"\d{1,15}[.,]\d{1,2}")
_GROUPED = re.compile(r"\d{1,3}(?:([.,])\d{3})(?:\1\d{3})*")


class Generic:
    """Cardinals and decimals by ICU. Numbers with several kinds of separators are read digit by digit."""

    starts = re.compile(r"\d")
    spaced = True

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        self.words = Words(data, speller)
        self.speller = speller
        self.tag = data.tag

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        """A number; None in a language for which ICU has no words."""
        found = _NUMBER.match(text, at)
        if found is None:
            return None
        figure = ascii_digits(found[0])
        try:
            said, kind = self._said(figure)
        except UnknownLanguage:
            return None
        return Reading(Span(at, found.end()), said, kind)

    def _said(self, figure: str) -> tuple[str, str]:
        if figure.isdecimal():
            return self.words.cardinal(figure), "cardinal"
        if _GROUPED.fullmatch(figure):
            return self.words.cardinal(re.sub(r"\D", "", figure)), "cardinal"
        if _DECIMAL.fullmatch(figure):
            return self.speller.spell(figure.replace(",", "."), self.tag), "decimal"
        return self.words.one_by_one(figure), "serial"


def verbaliser(data: LanguageData, speller: Speller) -> Generic:
    return Generic(data, speller)
