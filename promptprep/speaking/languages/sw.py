"""Swahili: figures, signs and abbreviations in words.

The clock is read as it is written beside "saa" up to twelve: copy in Swahili counts the hours from sunrise.
Times that can only be international (13:00 to 0:59, "a.m.", "p.m.") are said in Swahili hours, six apart.
Letters said by name stay capitals apart from each other.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.sw_clock import SwahiliClock
from promptprep.speaking.languages.sw_numbers import SwahiliNumbers
from promptprep.speaking.languages.sw_quantities import GAP, NUMBER, SwahiliQuantities
from promptprep.speaking.languages.sw_scores import SwahiliScores
from promptprep.speaking.plain import HYPHENED, PlainRules, Powers
from promptprep.speaking.roman import roman
from promptprep.speaking.ruled import (
    VULGAR,
    Abbreviations,
    Handler,
    Rules,
    as_written,
    in_row_of_pairs,
    is_season,
    is_year_pair,
    one_of,
    reading,
    word_before,
)

SHORTEST_CALLED = 3  # figures that are called in need: "piga 112"
SHORTEST_NUMBERED = 7  # figures after a word for the number of something
SHORTEST_UNGROUPED = 9  # figures without separators that count nothing are said one by one from here
_NAME_BEFORE = re.compile(r"(?<=[a-z,;] )[A-Z][a-z'’]+ \Z")  # inside a sentence
_PHONE = r"(?:\+\d{1,3}|0\d{2,3})(?:[ \u00a0-]?\d{2,4}){2,4}(?!\d)"


class Swahili:
    """The verbaliser of Swahili."""

    starts = re.compile(
        r"[\d$€£¥₹₦&=±×÷→%№§≈<>^⁻⁰¹²³⁴-⁹₀-₉½⅓⅔¼¾⅕⅛⅜⅝⅞+−–.\-A-Z](?<!(?=[A-Z][a-z'’])(?!Dk?[rt]|Prof|[TKU]?[Ss]h).)"
    )
    spaced = True

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        self.numbers = SwahiliNumbers(data, speller)
        self.clock = SwahiliClock(data, self.numbers)
        self.quantities = SwahiliQuantities(data, self.numbers)
        self.scores = SwahiliScores(data, self.numbers)
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._codes = frozenset(data.get("spoken", "before_digits.words"))
        self._compared = frozenset(data.get("spoken", "compared.words"))
        self._acronyms = frozenset(data.get("spoken", "acronyms.words"))
        self._abbreviations = Abbreviations(data.get("spoken", "abbreviations"))
        self._bare: Mapping[str, str] = {k: v for k, v in data.get("spoken", "abbreviations").items() if "." not in k}
        self._powers = Powers(data.get("spoken", "powers"), self.numbers.cardinal, self.numbers.cardinal)
        self._shared = PlainRules(self.numbers.digits, self._word["plus"], data.get("spoken", "symbols"))
        self._before_number = Abbreviations(data.get("spoken", "before_a_number"))
        self._rules = Rules(self._figures(), self._letters(), self._signs())

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        """See `verbaliser.py` for the contract."""
        character = text[at]
        if character == ".":
            short = self._before_number.reading(text, at, floor)
            if short and text[short.span.end :].lstrip(" \u00a0")[:1].isdecimal():
                return short
            if short := self._abbreviations.reading(text, at, floor):
                return short
        elif character.isdecimal() and (named := self.quantities.named_first(text, at, floor)):
            return named
        elif character in "²³" and (unit := self.quantities.unit_alone(text, at, floor)):
            return unit
        return self._rules.at(text, at)

    def _figures(self) -> list[tuple[str, Handler]]:
        units, money = one_of(self.quantities.all_units), one_of(self.quantities.money)
        counted = rf"(?:{GAP}?(?P<unit>{units})(?![\w²³]|\.[A-Z])|{GAP}?(?P<money>{money})(?!\w))?"
        return [
            (r"\d{19,}", self._shared.serial),
            (_PHONE, self._shared.phone),
            (HYPHENED, self._shared.hyphened),
            (r"\d{3}(?![\d.,/:%-])|\d{5,}(?![.,]?\d)", self._said_one_by_one),
            *self.scores.rules(NUMBER),
            *self.clock.rules(),
            self.scores.ratio(),
            (rf"(?P<b>{NUMBER})/[=-](?!\w)", self._shillings),
            (rf"(?P<b>{NUMBER})/(?P<per>{units})(?![\w²³])", self._rate),
            (
                rf"(?:(\d{{1,9}}){GAP})?(\d{{1,9}})/(\d{{1,9}})(?![\d/])(?:{GAP}?(?P<unit>{units})(?![\w²³/]))?",
                self._fraction,
            ),
            (rf"(\d{{1,9}})?([{''.join(VULGAR)}])(?:{GAP}?(?P<unit>{units})(?![\w²³/]))?", self._vulgar),
            (
                rf"(?P<a>{NUMBER})(?:%(?={GAP}?[-–—]{GAP}?{NUMBER}%))?{GAP}?(?P<to>[-–—x×]){GAP}?(?P<b>{NUMBER})(?![-\d]){counted}",
                self._range,
            ),
            self.scores.times(NUMBER),
            (r"0\d+(?![.,]?\d)", self._shared.serial),
            (
                rf"(?P<b>{NUMBER})(?:{GAP}?(?P<unit>{units})(?:/(?P<per>{units}))?(?![\w²³/]|\.[A-Z])|{GAP}?(?P<money>{one_of(self.quantities.money)})(?!\w))",
                self._measure,
            ),
            (rf"(?P<b>{NUMBER}){GAP}?(?P<scale>{one_of(self.quantities.scales)})(?!\w|\.[A-Z])", self._scaled),
            (rf"(?P<b>{NUMBER})", self._plain),
            (r"\d+(?:[.,]\d+)*", self._shared.serial),
        ]

    def _letters(self) -> list[tuple[str, Handler]]:
        codes = [m for m in self.quantities.money if m[0].isalpha()]
        return [
            (
                rf"(?P<money>{one_of(codes)}){GAP}?(?P<b>{NUMBER}){self.quantities.scale()}(?!\w|[.,]\d)(?!{GAP}?[-–/])",
                self._money_first,
            ),
            (self.quantities.unit_first_pattern, self.quantities.unit_first),
            (rf"{one_of(self._bare)}(?![\w.])", self._bare_abbreviation),
            (r"[IVXLC]+(?!\w)", self._roman),
            (r"[A-Z]{2,}(?![a-z])", self._initialism),
        ]

    def _signs(self) -> list[tuple[str, Handler]]:
        signs = [m for m in self.quantities.money if not m[0].isalnum()]
        units = one_of(self.quantities.all_units)
        return [
            (_PHONE, self._shared.phone),
            (rf"(?P<money>{one_of(signs)}){GAP}?(?P<b>{NUMBER}){self.quantities.scale()}", self._money_first),
            (
                rf"(?<![\w)])(?P<sign>[-−+±]){GAP}?(?P<b>{NUMBER})(?:{GAP}?(?P<unit>{units})(?![\w²³]))?",
                self._signed,
            ),
            (rf"()([{''.join(VULGAR)}])(?:{GAP}?(?P<unit>{units})(?![\w²³/]))?", self._vulgar),
            *self._powers.rules(),
            (one_of(signs), self._money_alone),
            self.clock.dash_rule(),
            (r"[<>](?=[ \u00a0]?\d)", self._shared.symbol),
            (r"[№§&=±×÷→≈%]|(?<=\s)\+(?=\s)|(?<=[\d%٪])\+(?!\w*[^\W\d])", self._shared.symbol),
        ]

    def _shillings(self, found: re.Match[str]) -> Reading:
        """ "500/=" -> "shilingi mia tano"; the noun is said once."""
        noun = self.quantities.money["Sh"][0]
        said = self.quantities.number(found["b"])
        return reading(found, said if word_before(found.string, found.start()) == noun else f"{noun} {said}", "money")

    def _fraction(self, found: re.Match[str]) -> Reading | None:
        if int(found[3]) == 0:
            return None
        if not found[1] and (is_year_pair(found[2], found[3]) or is_season(found[2], found[3])):
            return reading(
                found,
                f"{self.quantities.number(found[2])} {self._word['range']} {self.quantities.number(found[3])}",
                "range",
            )
        return self._shared_out(found, int(found[2]), int(found[3]))

    def _vulgar(self, found: re.Match[str]) -> Reading:
        return self._shared_out(found, *VULGAR[found[2]])

    def _shared_out(self, found: re.Match[str], over: int, under: int) -> Reading:
        """ "1/2 km" -> "nusu kilomita", "2½ km" -> "kilomita mbili na nusu"."""
        unit = as_written(found["unit"], self.quantities.all_units) if found["unit"] else ""
        share = self.quantities.share(over, under)
        if found[1]:
            prefix = "" if unit else self.numbers.class_of(self.numbers.counted(found.string, found.start()))
            said = f"{self.quantities.number(found[1], prefix)} {self._word['and']} {share}"
            return reading(found, self.quantities.with_unit(said, unit) if unit else said, "fraction")
        return reading(found, f"{share} {self.quantities.of_one(unit)}" if unit else share, "fraction")

    def _range(self, found: re.Match[str]) -> Reading | None:
        unit, money = found["unit"], found["money"]
        if found["to"] in "x×" and not unit:
            return None
        if money:
            noun = self.quantities.money[as_written(money, self.quantities.money)][0]
            ends = [self.quantities.number(found[g]) for g in "ab"]
            return reading(found, f"{noun} {ends[0]} {self._word['range']} {ends[1]}", "range")
        end = found.end() if unit else found.end("b")
        row = in_row_of_pairs(found.string, found.start(), end)
        if not unit and (score := self.scores.falling(found["a"], found["b"], row=row)):
            return reading(found, score, "score", end=end)
        before = word_before(found.string, found.start())
        prefix = "" if unit else self.numbers.class_of(self.numbers.counted(found.string, found.start()))
        ends = [self.quantities.number(found[g], prefix) for g in "ab"]
        words = f" {self.quantities.between(found['to'])} ".join(ends)
        if unit:
            said = self.quantities.with_unit(words, as_written(unit, self.quantities.all_units))
            return reading(found, said, "range", end=end)
        alone = not before and len(found["a"] + found["b"]) <= 4
        other = [f" {self._word['score']} ".join(ends)] if alone else []
        return reading(found, words, "range", *other, end=end)

    def _measure(self, found: re.Match[str]) -> Reading:
        if found["money"] and word_before(found.string, found.start()) in self.quantities.scales:
            noun = self.quantities.money[as_written(found["money"], self.quantities.money)][0]
            return reading(found, f"{self.quantities.number(found['b'])} {noun}", "money")
        if found["money"]:
            return reading(
                found, self.quantities.amount(found["b"], as_written(found["money"], self.quantities.money)), "money"
            )
        unit = as_written(found["unit"], self.quantities.all_units)
        said = self.quantities.with_unit(self.quantities.number(found["b"]), unit) + (
            self.quantities.each(found["per"]) if found["per"] else ""
        )
        return reading(found, said, "percent" if unit == "%" else "measure")

    def _money_alone(self, found: re.Match[str]) -> Reading | None:
        if found.string[found.start() - 1 : found.start()].isalnum():
            return None
        return reading(found, self.quantities.money[found[0]][0], "symbol")

    def _said_one_by_one(self, found: re.Match[str]) -> Reading | None:
        """ "simu 4567890", "piga 112", and nine figures or more that count nothing: figures that nobody counts."""
        before = word_before(found.string, found.start())
        if len(found[0]) == SHORTEST_CALLED:
            return self._shared.serial(found) if before in self._word["calling"].split() else None
        noun = self.numbers.counted(found.string, found.start())
        lone = len(found[0]) >= SHORTEST_UNGROUPED and not found[0].endswith("000") and not noun
        around = found.string[max(0, found.start() - 2) : found.start()] + found.string[found.end() : found.end() + 2]
        lone = lone and bool(around.strip())
        lone = lone or (len(found[0]) >= SHORTEST_NUMBERED and before in self._word["numbers"].split())
        return self._shared.serial(found) if before in self._codes or lone else None

    def _rate(self, found: re.Match[str]) -> Reading:
        return reading(found, self.quantities.number(found["b"]) + self.quantities.each(found["per"]), "measure")

    def _signed(self, found: re.Match[str]) -> Reading:
        signs = {"+": "plus", "±": "plus_minus"}
        words = f"{self._word[signs.get(found['sign'], 'minus')]} {self.quantities.number(found['b'])}"
        unit = found["unit"]
        if not unit:
            return reading(found, words, "cardinal", end=found.end("b"))
        return reading(found, self.quantities.with_unit(words, as_written(unit, self.quantities.all_units)), "measure")

    def _money_first(self, found: re.Match[str]) -> Reading:
        money = as_written(found["money"], self.quantities.money)
        if not found["scale"]:
            return reading(found, self.quantities.amount(found["b"], money), "money")
        scale, number = self.quantities.scales[found["scale"]], self.quantities.number(found["b"])
        return reading(found, f"{self.quantities.money[money][0]} {scale} {number}", "money")

    def _scaled(self, found: re.Match[str]) -> Reading:
        return reading(
            found, f"{self.quantities.scales[found['scale']]} {self.quantities.number(found['b'])}", "cardinal"
        )

    def _plain(self, found: re.Match[str]) -> Reading:
        before = word_before(found.string, found.start())
        decimal = "." in found[0]
        if not decimal and found[0] in ("1", "2") and self._is_rank(found.string, found.start(), before):
            return reading(found, self.numbers.ordinal(int(found[0])).removeprefix("wa "), "ordinal")
        named = _NAME_BEFORE.search(found.string, max(0, found.start() - 24), found.start())
        noun = self.numbers.counted(found.string, found.start())
        prefix = "" if decimal or named else self.numbers.class_of(noun, found[0])
        kind = "decimal" if decimal else "year" if before in self._word["years"].split() else "cardinal"
        return reading(found, self.quantities.number(found[0], prefix), kind)

    def _is_rank(self, text: str, start: int, before: str) -> bool:
        """ "nafasi ya 2" is "ya pili"; "zaidi ya 2" is a count."""
        if before not in self._word["links"].split():
            return False
        if before != "ya":
            return True
        noun = word_before(text, text.rindex(before[-1], 0, start) - len(before) + 1)
        return bool(noun) and noun not in self._compared

    def _bare_abbreviation(self, found: re.Match[str]) -> Reading:
        return reading(found, self._bare[found[0]], "abbreviation")

    def _roman(self, found: re.Match[str]) -> Reading | None:
        """ "karne ya XX", "Papa Yohane Paulo II": after a name "wa pili", else as a number; a lone letter passes."""
        n = roman(found[0])
        before = word_before(found.string, found.start())
        if not n or found.string[found.start() - 1 : found.start()].isalnum():
            return None
        name = re.search(r"[A-Z][a-z]+ $", found.string[max(0, found.start() - 24) : found.start()])
        if before in self._word["links"].split():
            return reading(found, self.numbers.ordinal(n).removeprefix("wa "), "roman")
        if name and n <= 30 and before not in self._word["numbered"].split():
            return reading(found, self.numbers.ordinal(n), "roman")
        if before in self._word["numbered"].split() or len(found[0]) > 1:
            return reading(found, self.numbers.cardinal(n), "roman")
        return None

    def _initialism(self, found: re.Match[str]) -> Reading | None:
        text, letters = found.string, found[0]
        if text[found.start() - 1 : found.start()].isalnum() or letters in self._acronyms or len(letters) > 6:
            return None
        if len(letters) > 3 and re.fullmatch(r"(?:[^AEIOU]{0,2}[AEIOU]+)+[^AEIOU]{0,2}", letters):
            return None
        return reading(found, " ".join(letters), "initialism")


def verbaliser(data: LanguageData, speller: Speller) -> Swahili:
    return Swahili(data, speller)
