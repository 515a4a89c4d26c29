"""Russian quantities: whole and decimal numbers with their units, money, scales ("млн") and nouns."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from promptprep.model.language import LanguageData
from promptprep.speaking.languages.ru_context import RussianContext
from promptprep.speaking.languages.ru_numbers import RussianNumbers, governed, plural_class

_DIRECT = ("nominative", "accusative")
_GAPS = re.compile(r"[ \u00a0\u202f\u2009]")


@dataclass(frozen=True)
class Figure:
    """A written number: its sign as written, whole digits and digits after the comma ("" where none)."""

    sign: str
    whole: str
    part: str = ""

    @property
    def count(self) -> int:
        return int(self.whole[-6:] or "0")


def figure(text: str) -> Figure:
    """Reads "−1 234,5": gaps are dropped, the first comma or point parts the decimals."""
    sign = text[0] if text[:1] in "+-−±–" and text[:1] else ""
    whole, part = re.fullmatch(r"([^.,]*)(?:[.,](.*))?", _GAPS.sub("", text[len(sign) :])).groups()  # type: ignore[union-attr]
    return Figure(sign, whole, part or "")


class RussianQuantities:
    """Puts a `Figure` and what it counts in words. Units are written as `spoken.toml` explains."""

    def __init__(self, data: LanguageData, numbers: RussianNumbers, context: RussianContext) -> None:
        self._data = data
        self.numbers = numbers
        self.context = context
        self.units: Mapping[str, str] = data.get("spoken", "units")
        self.money: Mapping[str, str] = data.get("spoken", "money")
        self.scales: Mapping[str, str] = data.get("spoken", "scales")
        self._parts: Mapping[str, str] = data.get("spoken", "money_parts")
        self.per_units: Mapping[str, str] = {**self.units, **data.get("spoken", "per")}
        self._times = frozenset(data.get("spoken", "per_time.nouns"))
        self.halved = frozenset(self.scales.values()) | {
            u for w, u in self.units.items() if not w.startswith(("%", "‰", "°", "℃", "℉"))
        }
        self._half: Mapping[str, str] = data.get("spoken", "one_and_a_half")
        self._signs: dict[str, str] = {
            "-": data.get("spoken", "minus"),
            "−": data.get("spoken", "minus"),
            "–": data.get("spoken", "minus"),
            "+": data.get("spoken", "plus"),
            "±": data.get("spoken", "plus_minus"),
        }

    @property
    def minus(self) -> str:
        return self._signs["-"]

    def sign(self, sign: str) -> str:
        return f"{self._signs[sign]} " if sign else ""

    def number(self, number: Figure, gender: str = "masculine", case: str = "nominative") -> str:
        words = (
            self.numbers.decimal(number.whole, number.part, case)
            if number.part
            else self.numbers.cardinal(number.whole, gender, case)
        )
        return self.sign(number.sign) + words

    def measure(self, number: Figure, unit: str, case: str = "nominative") -> str:
        """The number with its unit: "пять километров в час", "две целых пять десятых процента"."""
        gender = self.numbers.noun(self.noun_of(unit)).gender
        gender = gender if gender != "plural" else "masculine"
        if number.whole + "," + number.part == "1,5" and not number.sign and unit in self.halved:
            return self._one_and_a_half(unit, gender, case)
        return f"{self.number(number, gender, case)} {self.unit(number, unit, case)}"

    def _one_and_a_half(self, unit: str, gender: str, case: str) -> str:
        """ "полтора километра", "полторы тысячи", "около полутора миллионов"."""
        if case in _DIRECT:
            half = self._half["feminine" if gender == "feminine" else "masculine"]
            return f"{half} {self.unit(Figure('', '1', '5'), unit)}"
        return f"{self._half['oblique']} {self.unit(Figure('', '5'), unit, case)}"

    @staticmethod
    def noun_of(unit: str) -> str:
        return unit.split(" | ")[0].split(" ")[-1]

    def per(self, unit: str, *, money: bool) -> str:
        """What stands behind a stroke: "в месяц", "за килограмм" of money, "на литр" of the rest."""
        noun = self.noun_of(unit)
        word = "за" if money and noun != "человек" else "на"
        return f" {'в' if noun in self._times else word} {self.unit(Figure('', '1'), unit, 'accusative')}"

    def each(self, unit: str) -> str:
        """ "55 руб. за кг" -> "за килограмм"."""
        return f" за {self.unit(Figure('', '1'), unit, 'accusative')}"

    def unit(self, number: Figure, unit: str, case: str = "nominative") -> str:
        """The unit's words alone, in the form that the number asks for."""
        head, _, tail = unit.partition(" | ")
        adjective, _, word = head.rpartition(" ")
        noun = self.numbers.noun(word)
        form = noun.one("genitive") if number.part else governed(noun, number.count, case)
        parts = [self._adjective(adjective, number, noun.gender, case)] if adjective else []
        return " ".join([*parts, form, *([tail] if tail else [])])

    def _adjective(self, stem: str, number: Figure, gender: str, case: str) -> str:
        pattern = "velar" if stem[-1] in "кгх" else "hard"
        if number.part:
            return self.numbers.adjective(f"{stem}|{pattern}", gender, "genitive")
        kind = plural_class(number.count)
        if kind == "one":
            return self.numbers.adjective(f"{stem}|{pattern}", gender, case)
        if case not in _DIRECT:
            return self.numbers.adjective(f"{stem}|{pattern}", "plural", case)
        several = "nominative" if kind == "few" and gender == "feminine" else "genitive"
        return self.numbers.adjective(f"{stem}|{pattern}", "plural", several)

    def scaled(self, number: Figure, scale: str, counted: str, case: str = "nominative") -> str:
        """ "3,5 млн долларов": the noun `scale` is counted, and what it counts stands in the genitive plural."""
        words = self.measure(number, scale, case)
        return f"{words} {self.unit(Figure('', '5'), counted)}" if counted else words

    def amount(self, number: Figure, money: str, case: str = "nominative") -> str:
        """ "4,50 €" -> "четыре евро пятьдесят центов"; other than two decimals are said as a decimal number."""
        part = self._parts.get(money)
        if len(number.part) != 2 or not part:
            return self.measure(number, money, case)
        cents = Figure("", number.part.lstrip("0") or "0")
        if cents.whole == "0":
            return self.measure(Figure(number.sign, number.whole), money, case)
        if not number.whole.strip("0"):
            return self.sign(number.sign) + self.measure(cents, part, case)
        return f"{self.measure(Figure(number.sign, number.whole), money, case)} {self.measure(cents, part, case)}"
