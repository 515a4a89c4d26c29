"""How Japanese, Chinese and Korean put times, dates, fractions and serial numbers into words.

Templates stand in `spoken.toml`, table `forms`: "{n}" is the number. A language's module overrides the methods whose
wording its grammar decides.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.speaking.languages.cjk_numbers import Numerals
from promptprep.speaking.languages.cjk_quantities import Quantities, Said
from promptprep.speaking.languages.cjk_text import Amount


class Wording:
    """What is said for parts already recognised."""

    def __init__(self, data: LanguageData, numerals: Numerals) -> None:
        self.forms: Mapping[str, str] = data.get("spoken", "forms")
        self.numerals = numerals
        self.symbols: Mapping[str, str] = data.get("spoken", "symbols")
        self.quantities = Quantities(data, numerals, self)

    def placed(self, text: str, at: int, said: str) -> str:
        """`said` as it stands after what precedes it."""
        return said

    def counted(self, text: str, at: int, amount: Amount) -> Said | None:
        """A number with the counter behind it, where the counter changes how it is said."""
        return None

    def special(self, text: str, at: int) -> Said | None:
        """What only this language writes."""
        return None

    def figure(self, amount: Amount, following: str, before: str) -> str:
        """A number in words, before `following` (a written counter, or the unit that is said)."""
        return self.numerals.number(amount.whole, amount.fraction) + amount.power

    def year(self, digits: str) -> str:
        return self.numerals.whole(digits)

    def month(self, digits: str) -> str:
        return self.forms["month"].replace("{n}", self.numerals.whole(digits))

    def hour(self, digits: str) -> str:
        return self.forms["hour"].replace("{n}", self.numerals.whole(digits))

    def minute(self, digits: str) -> str:
        return self.forms["minute"].replace("{n}", self.numerals.whole(digits))

    def second(self, digits: str) -> str:
        return self.forms["second"].replace("{n}", self.numerals.whole(digits))

    def serial_digits(self, digits: str) -> str:
        """Digits of a telephone or serial number."""
        return self.numerals.one_by_one(digits)

    def telephone_digits(self, digits: str) -> str:
        return self.serial_digits(digits)

    def telephone_otherwise(self, said: str) -> tuple[str, ...]:
        return ()

    def day_said(self, year: str, month: str, day: str) -> str:
        parts = [self.forms["year"].replace("{n}", self.year(year))] if year else []
        parts += [self.month(month), self.forms["day"].replace("{n}", self.numerals.whole(day))]
        return self.forms["blank"].join(parts)

    def day_figures(self, month: str, day: str) -> str:
        """A day that names an event: the month as a number, the day figure by figure ("10·26", but "12·12")."""
        together = day == month or day.endswith("0")
        last = self.numerals.whole(day) if together else self.numerals.one_by_one(day)
        return self.numerals.whole(month) + self.forms["between_day_figures"] + last

    def _time_said(self, found: re.Match[str]) -> str:
        parts = [self.hour(found[1])]
        seconds = int(found[3] or 0)
        if int(found[2]) or seconds:
            parts.append(self.minute(found[2]))
        if seconds:
            parts.append(self.second(found[3]))
        return self.forms["blank"].join(parts)

    def _half_day(self, letter: str) -> str:
        return self.forms["morning" if letter in "aA" else "afternoon"] + self.forms["blank"]

    def _telephone(self, groups: list[str], end: int) -> Said:
        said = self.forms["between_groups"].join(self.telephone_digits(g) for g in groups)
        return Said(said, "telephone", end, self.telephone_otherwise(said))

    def _serial_number(self, groups: list[str], end: int) -> Said:
        return Said(self.forms["between_groups"].join(self.serial_digits(g) for g in groups), "serial", end)

    def with_sign(self, name: str, found: Said) -> Said:
        """`found` after "plus", "minus" or "plus_minus"; temperatures have their own word below zero."""
        scale = self.forms["celsius"].partition("{n}")[0] if found.below and name == "plus_minus" else ""
        plain = self.forms[name] + found.said.removeprefix(scale)
        said = found.below if name == "minus" and found.below else plain
        return Said(said, found.kind, found.end, (), found.unit, found.prefix)

    def raised(self, base: str, exponent: str) -> str:
        """`base` to the power of a plain or negative number."""
        name = {"2": "square", "3": "cube"}.get(exponent, "power")
        sign = self.forms["minus"] if exponent.startswith("-") else ""
        return self.forms[name].replace("{n}", base).replace("{m}", sign + self.numerals.whole(exponent.lstrip("-")))

    def fraction(self, whole: str, over: str, under: str) -> str:
        number = self.numerals.whole
        said = self.forms["fraction"].replace("{over}", number(over)).replace("{under}", number(under))
        return self.forms["mixed"].replace("{n}", number(whole)).replace("{fraction}", said) if whole else said

    def bare_sign(self, text: str, at: int) -> Said | None:
        said = self.symbols.get(text[at])
        return None if said is None else Said(said, "symbol", at + 1)
