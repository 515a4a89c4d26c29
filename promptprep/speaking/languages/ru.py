"""Russian: figures, signs and abbreviations in words that agree with their sentence.

Letters said by name stay capitals apart from each other ("С Ш А"), Latin ones as well.
"""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.ru_context import RussianContext
from promptprep.speaking.languages.ru_letters import RussianLetters
from promptprep.speaking.languages.ru_numbers import RussianNumbers
from promptprep.speaking.languages.ru_ordinals import RussianOrdinals
from promptprep.speaking.languages.ru_quantities import Figure, RussianQuantities, figure
from promptprep.speaking.languages.ru_times import GAP, RussianTimes
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import Handler, Rules, one_of, reading

WHOLE = rf"(?:\d{{1,3}}(?:{GAP}\d{{3}})+(?!\d)|\d+)"
NUMBER = rf"{WHOLE}(?:[.,]\d+)?"
SIGN = "[-−+±–]"
_VULGAR = {
    "½": (1, 2),
    "⅓": (1, 3),
    "⅔": (2, 3),
    "¼": (1, 4),
    "¾": (3, 4),
    "⅕": (1, 5),
    "⅛": (1, 8),
    "⅜": (3, 8),
    "⅝": (5, 8),
    "⅞": (7, 8),
}
# Units that are also everyday words are units only where no word follows.
_ALSO_WORDS = ("с", "В", "К", "А", "Н", "т", "ч.")
_PHONE = (
    r"(?:\+\d{1,3}[ \u00a0-]?\(?\d{2,5}\)?|8[ \u00a0-]?\(\d{3,5}\)|\(\d{3,5}\)|8[ \u00a0-]\d{3}(?=[ -]\d{3}-\d\d-))"
    r"(?:[ \u00a0-]?\d{2,4}){2,4}(?!\d)|\d{2,3}-\d{2}-\d{2}(?![\d-])"
)


class Russian:
    """The verbaliser of Russian."""

    starts = re.compile(r"[0-9$€£¥₽₴₸₹₺₩₪№§&=±×÷→≈≤≥½⅓⅔¼¾⅕⅛⅜⅝⅞+−.-]|[٠-٩۰-۹०-९]|[А-ЯЁA-Z](?![а-яёa-z])")
    spaced = True

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        self.numbers = RussianNumbers(data, speller)
        self.context = RussianContext(data)
        self.quantities = RussianQuantities(data, self.numbers, self.context)
        self.times = RussianTimes(data, self.numbers, self.context)
        self.ordinals = RussianOrdinals(data, self.numbers, self.context)
        self.letters = RussianLetters(data, self.numbers, self.context)
        q = self.quantities
        self._counted = (
            rf"(?:{GAP}?(?P<scale>{one_of([s for s in q.scales if not s.isalpha() or len(s) < 5])})(?!\w))?"
            rf"(?:{GAP}?(?P<unit>{one_of({**q.units, **q.money})})(?![\w²³]))?"
        )
        self._rules = Rules(
            self._figure_rules(), self.ordinals.letter_rules() + self._money_rules() + self.letters.letter_rules(),
            self._sign_rules(),
        )  # fmt: skip

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        """See `verbaliser.py` for the contract."""
        character = text[at]
        if character in ".-":
            found = self.letters.abbreviation(text, at, floor)
            if found:
                return found
        return self._rules.at(text, at)

    def _figure_rules(self) -> list[tuple[str, Handler]]:
        return [
            (r"\d{19,}", self._long),
            (_PHONE, self._phone),
            (r"\d+(?:[-‑]\d+){2,}(?![.,]?\d)", self._serial_or_date),
            *self.times.rules(),
            (r"(\d{1,3}):(\d{1,4})(?![\d:])", self._ratio),
            *self.ordinals.figure_rules(),
            (rf"(?:(\d{{1,9}}){GAP})?(\d{{1,9}})/(\d{{1,9}})(?![\d/])", self._fraction),
            (r"(\d{1,9})?([½⅓⅔¼¾⅕⅛⅜⅝⅞])", self._vulgar),
            (rf"(?P<a>{NUMBER}){GAP}?[-–—−]{GAP}?(?P<b>{NUMBER})(?![-\d]){self._counted}", self._range),
            (r"0\d+(?![.,]?\d)", self._serial),
            (rf"(?P<b>{NUMBER}){self._counted}", self._quantity),
            (r"\d+(?:[.,]\d+)*", self._serial),
        ]

    def _money_rules(self) -> list[tuple[str, Handler]]:
        codes = [m for m in self.quantities.money if m[0].isascii() and m[0].isalpha()]
        return [(rf"(?P<unit>{one_of(codes)}){GAP}?(?P<b>{NUMBER}){self._scale()}", self._money_first)]

    def _scale(self) -> str:
        return rf"(?:{GAP}?(?P<scale>{one_of(self.quantities.scales)})(?!\w))?"

    def _sign_rules(self) -> list[tuple[str, Handler]]:
        signs = [m for m in self.quantities.money if not m[0].isalnum()]
        return [
            (_PHONE, self._phone),
            (rf"(?P<unit>{one_of(signs)}){GAP}?(?P<b>{SIGN}?{NUMBER}){self._scale()}", self._money_first),
            (rf"(?<![\w]){SIGN}(?P<unit>{one_of(signs)}){GAP}?(?P<b>{NUMBER}){self._scale()}", self._money_first),
            (rf"(?<![\w)])(?P<b>[-−+±]{GAP}?{NUMBER})(?![\d.,-]*\d){self._counted}", self._quantity),
            (r"([½⅓⅔¼¾⅕⅛⅜⅝⅞])", self._vulgar_alone),
            *self.letters.sign_rules(),
        ]

    def _long(self, found: re.Match[str]) -> Reading:
        return reading(found, self.numbers.digits(ascii_digits(found[0])), "serial")

    def _serial(self, found: re.Match[str]) -> Reading:
        return reading(found, self.numbers.digits(re.sub(r"\D", "", ascii_digits(found[0]))), "serial")

    def _serial_or_date(self, found: re.Match[str]) -> Reading | None:
        return None if re.fullmatch(r"\d{4}-\d\d-\d\d|\d{1,2}-\d{1,2}-\d{4}", found[0]) else self._serial(found)

    def _phone(self, found: re.Match[str]) -> Reading:
        plus = f"{self.quantities.sign('+')}" if found[0].startswith("+") else ""
        return reading(found, plus + self.numbers.digits(re.sub(r"\D", "", ascii_digits(found[0]))), "telephone")

    def _ratio(self, found: re.Match[str]) -> Reading:
        """A score ("со счётом 3:1" -> "три один"); scales and shares are said "один к тысяче"."""
        before = self.context.word_before(found.string, found.start())
        if before.startswith(("масштаб", "соотношени", "пропорци", "отношени")):
            second = self.numbers.cardinal(found[2], "masculine", "dative")
            return reading(found, f"{self.numbers.cardinal(found[1])} к {second}", "score")
        return reading(found, joined(self.numbers.cardinal(found[1]), self.numbers.cardinal(found[2])), "score")

    def _fraction(self, found: re.Match[str]) -> Reading | None:
        whole, over, under = found[1], int(found[2]), int(found[3])
        if under == 0:
            return None
        case = self._case(found)
        said = self.numbers.fraction(over, under, case)
        if whole:
            said = f"{self.numbers.whole_part(whole, case)} {said}"
        return reading(found, said, "fraction")

    def _vulgar(self, found: re.Match[str]) -> Reading:
        over, under = _VULGAR[found[2]]
        case = self._case(found)
        if not found[1]:
            return reading(found, self.numbers.fraction(over, under, case), "fraction")
        if (over, under) == (1, 2):
            return reading(found, f"{self.numbers.cardinal(found[1], 'masculine', case)} с половиной", "fraction")
        return reading(
            found, f"{self.numbers.whole_part(found[1], case)} {self.numbers.fraction(over, under, case)}", "fraction"
        )

    def _vulgar_alone(self, found: re.Match[str]) -> Reading:
        return reading(found, self.numbers.fraction(*_VULGAR[found[1]], self._case(found)), "fraction")

    def _case(self, found: re.Match[str]) -> str:
        return self.context.governed_case(found.string, found.start(), found.end())

    def _money_first(self, found: re.Match[str]) -> Reading:
        number, money = (
            figure(ascii_digits(found["b"])),
            self.quantities.money[_known(found["unit"], self.quantities.money)],
        )
        sign = found[0][0] if found[0][0] in "-−+±" else number.sign
        number = Figure(sign, number.whole, number.part)
        scale = found["scale"]
        said = (
            self.quantities.scaled(number, scale, money, self._case(found))
            if scale
            else self.quantities.amount(number, money, self._case(found))
        )
        return reading(found, said, "money")

    def _unit_of(self, found: re.Match[str]) -> str:
        """The unit as the data writes it; "" where it may be an everyday word."""
        written = found["unit"]
        if not written:
            return ""
        rest = found.string[found.end() : found.end() + 2]
        if written in _ALSO_WORDS and re.match(r"[ \u00a0][а-яёА-ЯЁ\d]|\.", rest):
            return ""
        return _known(
            written,
            self.quantities.units
            if written in self.quantities.units
            else {**self.quantities.money, **self.quantities.units},
        )

    def _quantity(self, found: re.Match[str]) -> Reading:
        number, unit, scale = figure(ascii_digits(found["b"])), self._unit_of(found), found["scale"]
        q = self.quantities
        end = found.end() if unit or not found["unit"] else found.end("scale") if scale else found.end("b")
        case = self._case(found)
        counted = q.units.get(unit) or q.money.get(unit, "")
        kind = self._kind(unit, number, scale)
        if scale:
            return reading(found, q.scaled(number, _known(scale, q.scales), counted, case), kind, end=end)
        if unit in q.money:
            return reading(found, q.amount(number, counted, case), kind, end=end)
        if unit:
            return reading(found, q.measure(number, counted, case), kind, end=end)
        return self._plain(found, number)

    def _plain(self, found: re.Match[str], number: Figure) -> Reading:
        end = found.end("b")
        if number.part:
            case = self.context.governed_case(found.string, found.start(), end)
            return reading(found, self.quantities.number(number, case=case), "decimal", end=end)
        agreed = self.context.agreement(found.string, found.start(), end, number.count)
        return reading(found, self.quantities.number(number, agreed.gender, agreed.case), "cardinal", end=end)

    def _kind(self, unit: str, number: Figure, scale: str | None) -> str:
        if unit in self.quantities.money:
            return "money"
        if unit == "%":
            return "percent"
        return "measure" if unit else "decimal" if number.part else "cardinal"

    def _range(self, found: re.Match[str]) -> Reading | None:
        """ "10–15 км" -> "десять — пятнадцать километров"; the first number agrees with what the second counts."""
        first, last = figure(ascii_digits(found["a"])), figure(ascii_digits(found["b"]))
        unit = self._unit_of(found)
        counted = self.quantities.units.get(unit) or self.quantities.money.get(unit, "")
        scale = found["scale"]
        noun = self.quantities.scales[_known(scale, self.quantities.scales)] if scale else counted
        case = self._case(found)
        end = found.end() if unit or not found["unit"] else found.end("scale") if scale else found.end("b")
        if noun:
            gender = self.numbers.noun(self.quantities.noun_of(noun)).gender
            tail = (
                self.quantities.scaled(last, _known(scale, self.quantities.scales), counted, case)
                if scale
                else self.quantities.measure(last, noun, case)
            )
            return reading(found, joined(self.quantities.number(first, gender, case), tail), "range", end=end)
        agreed = self.context.agreement(found.string, found.start(), found.end("b"), last.count)
        said = joined(*(self.quantities.number(n, agreed.gender, agreed.case) for n in (first, last)))
        return reading(found, said, "range", end=found.end("b"))


def joined(first: str, last: str) -> str:
    """Two numbers said as a range: a hyphen between single words ("десять-пятнадцать"), else a dash for the breath."""
    return f"{first}{'-' if ' ' not in first else ' — '}{last}"


def _known(written: str, table: object) -> str:
    """The data's spelling of what was written with other blanks, or with none."""
    keys = list(table)  # type: ignore[call-overload]
    if written in keys:
        return written
    plain = re.sub(r"\s", "", written)
    return next(k for k in keys if k.replace(" ", "") == plain)


def verbaliser(data: LanguageData, speller: Speller) -> Russian:
    return Russian(data, speller)
