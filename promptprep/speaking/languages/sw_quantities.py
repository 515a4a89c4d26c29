"""Swahili quantities: numbers as written with their units and money, before and after the figure."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.sw_numbers import SwahiliNumbers
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import as_written, one_of, reading

GAP = "[ \u00a0\u202f]"
_GROUPED = r"\d{1,3}(?:\.\d{3}){2,}(?![.\d])|\d{1,3}(?:,\d{3})+(?![\d])|\d{1,3}(?:[\u00a0\u202f]\d{3})+(?!\d)"
NUMBER = rf"(?:{_GROUPED}|\d+)(?:\.\d+)?"
LONGEST_NAME = 24  # characters before a figure that may name what it counts
_METRE = "(?:(?<= [wlyz]a )|(?<= cha )|(?<= ni ))m"  # after a link, not in "saa 3 m"
_RAISED_UNIT = re.compile(r"(?<![\w/])[a-z]{1,3}[²³]\Z")
_ALSO_WORDS = ("in", "mi")


class SwahiliQuantities:
    """Puts written numbers and what they count in words. Tables are those of `spoken.toml`."""

    def __init__(self, data: LanguageData, numbers: SwahiliNumbers) -> None:
        self.numbers = numbers
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._units: Mapping[str, str] = data.get("spoken", "units")
        self._around: Mapping[str, list[str]] = data.get("spoken", "units_around")
        self.all_units: Mapping[str, object] = {**self._units, **self._around}
        self.money: Mapping[str, list[str]] = data.get("spoken", "money")
        self.scales: Mapping[str, str] = data.get("spoken", "scales")
        self._fractions: Mapping[str, str] = data.get("spoken", "fractions")
        named = [u for u in self.all_units if len(u) > 1 and u not in _ALSO_WORDS and u[0].isalpha()]
        small = [u for u in (*named, *self.money) if u[0].islower()]
        scale = rf"(?:(?P<scale>{one_of([s for s in self.scales if len(s) > 2])}){GAP})?"
        self._before_figure = re.compile(
            rf"(?:(?<![\w./]){one_of(small)}|{_METRE}){GAP}?(?:(?:{one_of(self.scales)}){GAP})?\Z"
        )
        first = one_of([*named, "m", *(m for m in self.money if m[0].isalpha())])
        self.unit_first_pattern = (
            rf"(?P<unit>{first}){GAP}?{scale}(?P<b>{NUMBER})"
            rf"(?:{GAP}?(?P<to>[-–—x×]){GAP}?(?P<c>{NUMBER}))?(?:/[=-]|/(?P<per>h|s|saa)(?!\w))?(?!\w|/\d)"
        )
        self._first = re.compile(self.unit_first_pattern)

    def number(self, written: str, prefix: str = "") -> str:
        plain = re.sub(r"[,\s]", "", ascii_digits(written))
        if plain.count(".") > 1:
            plain = plain.replace(".", "")
        whole, _, part = plain.partition(".")
        return self.numbers.decimal(whole, part) if part else self.numbers.cardinal(whole, prefix)

    def share(self, over: int, under: int) -> str:
        """ "3/4" -> "robo tatu", "2/7" -> "mbili ya saba" ("two of seven")."""
        own = self._fractions.get(f"{over}/{under}")
        return own or f"{self.numbers.cardinal(over)} {self._word['of']} {self.numbers.cardinal(under)}"

    def with_unit(self, words: str, unit: str) -> str:
        """Swahili names the unit first: "kilomita tano kwa saa"."""
        if unit in self._around:
            before, after = self._around[unit]
            if words == self.numbers.cardinal(1) and after.startswith("za "):
                after = f"ya {after[3:]}"
            return f"{before} {words} {after}".rstrip()
        return f"{self._units[unit]} {words}"

    def each(self, written: str) -> str:
        """What stands behind a stroke: "kwa lita", "kwa kilomita ya mraba"."""
        unit = as_written(written, self.all_units)
        return f" {self._word['over']} {self.of_one(unit)}"

    def amount(self, written: str, money: str) -> str:
        noun, part = self.money[money]
        plain = re.sub(r"[,\s]", "", ascii_digits(written))
        whole, _, cents = plain.partition(".")
        if len(cents) != 2:
            return f"{noun} {self.number(plain)}"
        if not cents.strip("0"):
            return f"{noun} {self.numbers.cardinal(whole)}"
        small = f"{part} {self.numbers.cardinal(cents)}"
        return f"{noun} {self.numbers.cardinal(whole)} {self._word['and']} {small}" if whole.strip("0") else small

    def between(self, sign: str) -> str:
        return self._word["over" if sign in "x×" else "range"]

    def named_first(self, text: str, at: int, floor: int) -> Reading | None:
        """ "km 5", "kg 83.6", "sh. 500": small letters before a figure that name what it counts."""
        before = self._before_figure.search(text, max(floor, at - LONGEST_NAME), at)
        found = before and self._first.match(text, before.start())
        return self.unit_first(found) if found else None

    def unit_alone(self, text: str, at: int, floor: int) -> Reading | None:
        """ "kwa m²" -> "kwa mita ya mraba", and "km² 945", from the raised figure at `at`."""
        found = _RAISED_UNIT.search(text, max(floor, at - 4), at + 1)
        if not found or found[0] not in self._around:
            return None
        if named := self._first.match(text, found.start()):
            return self.unit_first(named)
        return Reading(Span(*found.span()), self.of_one(found[0]), "measure")

    def of_one(self, unit: str) -> str:
        before, after = self._around.get(unit, (self._units.get(unit, ""), ""))
        return f"{before} {after.replace('za ', 'ya ', 1)}".rstrip()

    def unit_first(self, found: re.Match[str]) -> Reading:
        words = self.number(found["b"])
        if found["c"]:
            words = f"{words} {self.between(found['to'])} {self.number(found['c'])}"
        unit = as_written(found["unit"], {**self.money, **self.all_units})
        if unit in self.money:
            scale = f"{self.scales[found['scale']]} " if found["scale"] else ""
            plain = scale or found["c"]
            said = f"{self.money[unit][0]} {scale}{words}" if plain else self.amount(found["b"], unit)
            return reading(found, said, "money")
        if found["scale"]:
            words = f"{self.scales[found['scale']]} {words}"
        before, after = self._around.get(unit, (self._units.get(unit, ""), ""))
        per = self._around["m/s" if found["per"] == "s" else "km/h"][1] if found["per"] else ""
        kind = "range" if found["c"] else "measure"
        return reading(found, " ".join(filter(None, (before, after, words, per))), kind)

    def scale(self) -> str:
        return rf"(?:{GAP}?(?P<scale>{one_of(self.scales)})(?!\w))?"
