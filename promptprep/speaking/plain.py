"""Rules that languages share: strings of digits, telephone numbers and signs."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import as_written, one_of, reading

HYPHENED = r"\d+(?:[-‑]\d+){2,}(?![.,]?\d)"
_DATE = re.compile(r"\d{4}-\d\d?-\d\d?|\d{1,2}-\d{1,2}-\d{4}")


RAISED = "⁻⁰¹²³⁴⁵⁶⁷⁸⁹"  # what a verbaliser's `starts` needs for `Powers`
LOWERED = "₀₁₂₃₄₅₆₇₈₉"
_PLAIN = str.maketrans(RAISED + LOWERED, "-" + "0123456789" * 2)


class Powers:
    """Raised and lowered figures: "10²³", "mc²", "2^10", "H₂O".

    `words` has `square`, `cube`, `other` (with {n}), and `minus`; `say` puts an exponent into words, `count` a number;
    `units` are what may follow ("10²⁴ kg"), each with how it is said there.
    """

    def __init__(
        self,
        words: Mapping[str, str],
        say: Callable[[str], str],
        count: Callable[[str], str],
        units: Mapping[str, str] | None = None,
    ) -> None:
        self._words = words
        self._units = units or {}
        self._say = say
        self._count = count

    def rules(self) -> list[tuple[str, Callable[[re.Match[str]], Reading]]]:
        unit = rf"(?:[ \u00a0](?P<unit>{one_of(self._units) if self._units else '(?!)'})(?![\w²³/]))?"
        return [
            (rf"(?<=[\w)])(⁻?[{RAISED[1:]}]{{1,6}}){unit}", self._power),
            (rf"(?<=[\w)])\^([-−]?\d{{1,6}})(?![\d.,]){unit}", self._power),
            (rf"[{LOWERED}]{{1,6}}", self._below),
        ]

    def _power(self, found: re.Match[str]) -> Reading:
        digits = ascii_digits(found[1].translate(_PLAIN)).replace("−", "-")
        form = {"2": "square", "3": "cube"}.get(digits)
        n = f"{self._words['minus']} {self._say(digits[1:])}" if digits[0] == "-" else self._say(digits)
        said = self._words[form] if form else self._words["other"].format(n=n)
        if found["unit"]:
            said += f" {self._units[as_written(found['unit'], self._units)]}"
        return reading(found, said, "symbol")

    def _below(self, found: re.Match[str]) -> Reading:
        return reading(found, self._count(found[0].translate(_PLAIN)), "symbol")


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

    def bracketed(self, found: re.Match[str]) -> Reading:
        """ "(02) 2345 6789", matched from behind its first bracket."""
        return Reading(Span(found.start() - 1, found.end()), self._one_by_one(found[0]), "telephone")

    def sign(self, sign: str) -> str:
        """The name of a single sign."""
        return self._symbols[sign]

    def symbol(self, found: re.Match[str]) -> Reading:
        return reading(found, self._symbols[found[0]], "symbol")
