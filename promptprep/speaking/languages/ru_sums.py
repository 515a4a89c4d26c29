"""Russian sums: the signs that take away, divide and multiply; and numbers in groups as other countries write them."""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.ru_clock import GAP
from promptprep.speaking.languages.ru_quantities import RussianQuantities, figure
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import Handler, reading

_GROUPED = (
    r"(?=(?:\d{1,3}(?:\.\d{3}){2}|\d{1,3}(?:,\d{3}){2}|\d{1,3}['’]\d{3}))"
    r"(\d{1,3}(?:(?:\.\d{3}){2,5}|(?:,\d{3}){2,5}|(?:['’]\d{3}){1,5}))(?:[.,](\d{1,9}))?(?![.,'’]?\d)"
)


class RussianSums:
    """Handlers of a number with the sign behind it, and of "×"."""

    def __init__(self, data: LanguageData, quantities: RussianQuantities) -> None:
        self._quantities = quantities
        self._product: str = data.get("spoken", "times")
        self._by: str = data.get("spoken", "symbols")["×"]
        self._over: str = data.get("spoken", "symbols")["÷"]

    def figure_rules(self, number: str) -> list[tuple[str, Handler]]:
        return [
            (rf"({number}){GAP}(?:[−–-](?={GAP}{number}{GAP}?=)|−(?={GAP}\d))", self._minus),
            (rf"({number}){GAP}:(?={GAP}{number}{GAP}?=)", self._divided),
            (_GROUPED, self._grouped),
            (rf"(\d{{1,5}}(?:,\d{{1,3}})?){GAP}?[xхXХ]{GAP}?(?=\d)", self._by_next),
        ]

    def times_rule(self) -> tuple[str, Handler]:
        return r"×(?=[ \u00a0]?(?:10[\^⁻⁰¹²³⁴-⁹]|[\d.,]+[ \u00a0]?=))", self._times

    def _minus(self, found: re.Match[str]) -> Reading:
        """ "10 − 4": a minus with blanks on both sides takes away."""
        return self._with_sign(found, self._quantities.minus)

    def _divided(self, found: re.Match[str]) -> Reading:
        """ "10 : 2 = 5": a colon of a sum."""
        return self._with_sign(found, self._over)

    def _by_next(self, found: re.Match[str]) -> Reading:
        """ "10х15 см", "4 x 100 м": the letter between sides is said as the sign is."""
        number = self._quantities.number(figure(ascii_digits(found[1])))
        return reading(found, f"{number} {self._by} ", "measure")

    def _with_sign(self, found: re.Match[str], sign: str) -> Reading:
        return reading(found, f"{self._quantities.number(figure(ascii_digits(found[1])))} {sign}", "symbol")

    def _times(self, found: re.Match[str]) -> Reading:
        """ "7 × 8 = 56" multiplies; sides of a picture are said "на"."""
        return reading(found, self._product, "symbol")

    def _grouped(self, found: re.Match[str]) -> Reading:
        """ "1.000.000", "12'500"."""
        whole, part = re.sub(r"[.,'’]", "", ascii_digits(found[1])), ascii_digits(found[2] or "")
        numbers = self._quantities.numbers
        said = numbers.decimal(whole, part) if part else numbers.cardinal(whole)
        return reading(found, said, "decimal" if part else "cardinal")
