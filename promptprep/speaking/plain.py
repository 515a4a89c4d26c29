"""Rules that languages share: strings of digits, telephone numbers and signs."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from promptprep.model.spoken import Reading
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import reading

HYPHENED = r"\d+(?:[-‑]\d+){2,}(?![.,]?\d)"
_DATE = re.compile(r"\d{4}-\d\d?-\d\d?|\d{1,2}-\d{1,2}-\d{4}")


class PlainRules:
    """Handlers. `digits` says figures one by one, `plus` the sign before a country's code, `symbols` single signs."""

    def __init__(self, digits: Callable[[str], str], plus: str, symbols: Mapping[str, str]) -> None:
        self._digits = digits
        self._plus = plus
        self._symbols = symbols

    def _one_by_one(self, written: str) -> str:
        return self._digits("".join(c for c in ascii_digits(written) if c.isdecimal()))

    def serial(self, found: re.Match[str]) -> Reading:
        return reading(found, self._one_by_one(found[0]), "serial")

    def hyphened(self, found: re.Match[str]) -> Reading | None:
        """Figures with several hyphens ("978-5-17-118366-6") that are no date."""
        return None if _DATE.fullmatch(found[0]) else self.serial(found)

    def phone(self, found: re.Match[str]) -> Reading:
        plus = f"{self._plus} " if found[0].startswith("+") else ""
        return reading(found, plus + self._one_by_one(found[0]), "telephone")

    def symbol(self, found: re.Match[str]) -> Reading:
        return reading(found, self._symbols[found[0]], "symbol")
