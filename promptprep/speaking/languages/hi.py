"""Hindi: figures, signs and abbreviations in words."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.hi_clock import HindiClock
from promptprep.speaking.languages.hi_fractions import HindiFractions
from promptprep.speaking.languages.hi_halves import HindiHalves
from promptprep.speaking.languages.hi_letters import HindiLetters
from promptprep.speaking.languages.hi_numbers import HindiNumbers
from promptprep.speaking.languages.hi_pairs import HindiPairs
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.plain import HYPHENED, PlainRules, Powers
from promptprep.speaking.ruled import (
    Abbreviations,
    Handler,
    Rules,
    as_written,
    one_of,
    reading,
    word_before,
)

GAP = "[ \u00a0\u202f]"
SHORT_SIGN = "॰"
NUMBER = r"(?:\d{1,3}(?:\.\d{3}){2,}(?![.\d])|\d{1,3}(?:,\d{2,3})*,\d{3}(?![\d])|\d+)(?:\.\d+)?"
_PHONE = (
    r"(?:\+\d{1,3}[ -]?|[0०]\d{2,4}[ -]?)\d{2,10}(?:[ -]?\d{2,8}){0,3}(?!\d)"
    r"|[6-9६-९]\d{4}[ -]\d{5}(?!\d)|[6-9६-९]\d{9}(?![\d,])"
)
_YEAR = re.compile(r"1[1-9]\d\d|20\d\d")
_INITIAL = re.compile(r"(?:\A|\s)[\u0904-\u0939][\u093e-\u094c]?\. ?\Z")  # a name's letter before: "अ. कु. सिंह"
_AFTER_FIGURE = re.compile(r"[\d°][ \u00a0]?\Z")
_END = r"(?![\w\u0900-\u0963])"


class Hindi:
    """The verbaliser of Hindi."""

    starts = re.compile(
        r"[\d$€£¥₹₨₩₺₽₦৳&=±×÷→≈≤≥<>%№§^⁻⁰¹²³⁴-⁹₀-₉½⅓⅔¼¾⅕⅛⅜⅝⅞+−.॰-]|[A-Z](?![a-z])|(?:Rs|रु|रू)(?=[.॰ ]?[\d ])"
        r"|[कम]ि(?=मी|ग्रा)"
    )
    spaced = True

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        self.numbers = HindiNumbers(data, speller)
        self.halves = HindiHalves(data, self.numbers)
        self.clock = HindiClock(data, self.numbers)
        self.fractions = HindiFractions(data, self.numbers)
        self.letters = HindiLetters(data, self.numbers)
        self.pairs = HindiPairs(data, self.numbers)
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._units: Mapping[str, str] = data.get("spoken", "units")
        self._money = {sign: tuple(names.split("|")) for sign, names in data.get("spoken", "money").items()}
        self._scales: Mapping[str, str] = data.get("spoken", "scales")
        self._per: Mapping[str, str] = data.get("spoken", "per")
        self._symbols: Mapping[str, str] = data.get("spoken", "symbols")
        self._serial_words = frozenset(data.get("spoken", "before_digits.words"))
        self._abbreviations = Abbreviations(data.get("spoken", "abbreviations"))
        self._behind = Abbreviations(data.get("spoken", "after_a_figure"))
        self._endings: list[str] = data.get("spoken", "ordinal_endings.words")
        several = {unit: names.split("|")[-1] for unit, names in self._units.items()}
        self._powers = Powers(data.get("spoken", "powers"), self.numbers.cardinal, self.numbers.cardinal, several)
        self._shared = PlainRules(self.numbers.digits, self._word["plus"], data.get("spoken", "symbols"))
        self._seen = self._stopped = ""
        self._rules = Rules(self._figures(), self._letters(), self._signs())

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        """See `verbaliser.py` for the contract."""
        text = self._with_stops(text)
        if text[at] == "." and (short := self._abbreviations.reading(text, at, floor)):
            return None if _INITIAL.search(text, max(0, short.span.start - 5), short.span.start) else short
        if text[at] == "." and (short := self._behind.reading(text, at, floor)):
            return short if _AFTER_FIGURE.search(text, max(0, short.span.start - 2), short.span.start) else None
        return self._rules.at(text, at)

    def _with_stops(self, text: str) -> str:
        """The text with "॰", which Hindi too writes after what is short, as a full stop."""
        if text is not self._seen:
            self._seen, self._stopped = text, text.replace(SHORT_SIGN, ".")
        return self._stopped

    def _tail(self) -> str:
        return (
            rf"(?:{GAP}?(?P<scale>{one_of([s for s in self._scales if len(s) > 1])}){_END})?"
            rf"(?:{GAP}?(?P<unit>{one_of({**self._units, **self._money})})(?:/{GAP}?(?P<per>{one_of(self._per)}))?"
            rf"(?![\w²³\u0900-\u0963/]))?"
        )

    @property
    def _rupee_names(self) -> str:
        return one_of([name for name in self._units if name.startswith("र")])

    def _figures(self) -> list[tuple[str, Handler]]:
        return [
            (r"\d{16,}", self._shared.serial),
            (_PHONE, self._phone),
            self.clock.short_date_rule(),
            (r"(?<=\()[0०]\d{2,4}\)[ \u00a0]?\d{3,8}[ \u00a0-]?\d{0,4}(?!\d)", self._shared.bracketed),
            (r"\d{4}(?:[ \u00a0]\d{4}){2,4}(?![\d,.])", self._shared.serial),
            (HYPHENED, self._shared.hyphened),
            (r"(?!\d{1,3}(?:\.\d{3})+(?![.\d]))\d+(?:\.\d+){3,}", self._dotted),
            *self.pairs.rules(),
            *self.clock.rules(),
            (rf"(\d{{1,15}})[-‑]?({one_of(self._endings)}){_END}", self._ordinal),
            (rf"(\d{{1,15}}){GAP}({one_of(self._word['spaced_endings'].split())}){_END}", self._ordinal),
            (rf"(?P<b>{NUMBER})/[-–—](?!\w)(?:{GAP}(?:{self._rupee_names})(?![\w\u0900-\u0963]))?", self._rupees),
            *self.fractions.rules(),
            (r"\d{1,4}[A-Z]{1,3}(?!\w)", self.letters.mixed_serial),
            *self.pairs.late_rules(),
            (rf"(?P<a>{NUMBER}){GAP}?[-–—]{GAP}?(?P<b>{NUMBER})(?![-\d]){self._tail()}", self._range),
            (r"0\d+(?![.,]?\d)|०\d+(?![.,]?\d)", self._shared.serial),
            (rf"(?P<b>{NUMBER}){self._tail()}", self._quantity),
            (r"\d+(?:[.,]\d+)*", self._shared.serial),
        ]

    def _priced(self) -> str:
        """A number after a sign of money, or two, with their scale and what the price is for."""
        return (
            rf"(?P<b>{NUMBER})(?:{GAP}?[-–]{GAP}?(?P<c>{NUMBER}))?"
            rf"(?:{GAP}?(?P<scale>{one_of(self._scales)}){_END})?"
            rf"(?:{GAP}(?P<rest>\d{{1,2}}){GAP}(?P<small>{one_of(self._scales)}){_END})?"
            rf"(?:/{GAP}?(?P<per>{one_of(self._per)}){_END})?(?:/[-–—](?!\w))?"
        )

    def _letters(self) -> list[tuple[str, Handler]]:
        codes = [m for m in self._money if m[0].isalpha()]
        return [
            (
                rf"(?P<unit>{one_of(codes)}){GAP}?{self._priced()}",
                self._money_first,
            ),
            *self.letters.rules(),
        ]

    def _signs(self) -> list[tuple[str, Handler]]:
        signs = [m for m in self._money if not m[0].isalnum()]
        return [
            (_PHONE, self._phone),
            (
                rf"(?P<unit>{one_of(signs)}){GAP}?{self._priced()}",
                self._money_first,
            ),
            (rf"(?<![\w)\u0900-\u0963])(?P<sign>[-−+±]){GAP}?(?P<b>{NUMBER}){self._tail()}", self._quantity),
            self.fractions.sign_rule(),
            *self._powers.rules(),
            (one_of(signs), self._money_alone),
            (rf"(?P<than>[<>]){GAP}?(?P<b>{NUMBER}){self._tail()}", self._compared),
            (r"(?<![\w.])\.(\d+)", self._point_first),
            (r"[№§&=±×÷→≈≤≥%]|(?<=\s)\+(?=\s)|(?<=[\d%٪])\+(?!\w*[^\W\d])", self._shared.symbol),
        ]

    def _number(self, written: str) -> str:
        plain = re.sub(r"[,\s]", "", ascii_digits(written))
        if plain.count(".") > 1:
            plain = plain.replace(".", "")
        whole, _, part = plain.partition(".")
        return self.numbers.decimal(whole, part) if part else self.numbers.cardinal(whole)

    def _dotted(self, found: re.Match[str]) -> Reading:
        parts = (self.numbers.digits(ascii_digits(p)) for p in found[0].split("."))
        return reading(found, f" {self._word['dot']} ".join(parts), "serial")

    def _phone(self, found: re.Match[str]) -> Reading | None:
        return self._shared.phone(found) if sum(c.isdecimal() for c in found[0]) >= 7 else None

    def _ordinal(self, found: re.Match[str]) -> Reading:
        return reading(found, self.numbers.ordinal(ascii_digits(found[1]), found[2]), "ordinal")

    def _noun(self, unit: str, one: bool) -> str:
        if unit in self._money:
            return str(self._money[unit][0 if one else 1])
        return self._units[unit].split("|")[0 if one else -1]

    def _quantity(self, found: re.Match[str]) -> Reading | None:
        sign = found.groupdict().get("sign")
        scale, unit, number = found["scale"], found["unit"], found["b"]
        known = as_written(unit, {**self._units, **self._money}) if unit else ""
        if not unit and not scale and not sign:
            return self._plain(found)
        head = f"{self._word[{'+': 'plus', '±': 'plus_minus'}.get(sign, 'minus')]} " if sign else ""
        per = [f"{self._word['per']} {self._per[found['per']]}"] if found["per"] else []
        if known in self._money and not scale:
            return reading(found, " ".join([head + self._amount(number, known), *per]), "money")
        kind = (
            "cardinal" if not unit else "money" if known in self._money else "percent" if known in "%٪" else "measure"
        )
        tail = [self._scales[as_written(scale, self._scales)]] if scale else []
        tail += [self._noun(known, ascii_digits(number) == "1" and not scale), *per] if unit else []
        said, *other = self._ways(number, plainly=bool(sign) or kind in ("money", "percent"))
        return reading(found, " ".join([head + said, *tail]), kind, *(" ".join([head + o, *tail]) for o in other))

    def _compared(self, found: re.Match[str]) -> Reading | None:
        """ ">10" -> "दस से अधिक"."""
        counted = self._quantity(found)
        return reading(found, f"{counted.said} {self._symbols[found['than']]}", "symbol") if counted else None

    def _money_alone(self, found: re.Match[str]) -> Reading | None:
        if found.string[found.start() - 1 : found.start()].isalnum():
            return None
        return reading(found, self._money[found[0]][1], "symbol")

    def _point_first(self, found: re.Match[str]) -> Reading:
        return reading(found, self.numbers.decimal("0", ascii_digits(found[1])), "decimal")

    def _ways(self, number: str, *, plainly: bool) -> list[str]:
        """How a counted number is said, the likeliest first: a half by its own word ("ढाई"), unless `plainly`."""
        decimal, halves = self._number(number), self.halves.said(number)
        if not halves:
            return [decimal]
        return [halves, decimal] if self.halves.is_half(number) and not plainly else [decimal, halves]

    def _plain(self, found: re.Match[str]) -> Reading:
        number = found["b"]
        digits = ascii_digits(number)
        if word_before(found.string, found.start()) in self._serial_words and digits.isdecimal() and len(digits) > 3:
            return reading(found, self.numbers.digits(digits), "serial", end=found.end("b"))
        if re.fullmatch(r"\d{4}", digits) and self._is_year(found, int(digits)):
            return reading(found, self.numbers.year(digits), "year", self.numbers.cardinal(digits), end=found.end("b"))
        if "." not in number:
            return reading(found, self._number(number), "cardinal", end=found.end("b"))
        counted = self.halves.before_counted(found.string, found.end("b"))
        ways = self._ways(number, plainly=False) if counted else [self._number(number)]
        return reading(found, ways[0], "decimal", *ways[1:], end=found.end("b"))

    def _is_year(self, found: re.Match[str], n: int) -> bool:
        return self.clock.is_year(found.string, found.start(), found.end("b"), n)

    def _range(self, found: re.Match[str]) -> Reading:
        """ "10–15 किमी" -> "दस से पंद्रह किलोमीटर"."""
        scale, unit = found["scale"], found["unit"]
        first, last = (ascii_digits(found[g]) for g in "ab")
        short = len(last) == 2 and last > first[-2:]
        if not unit and not scale and _YEAR.fullmatch(first) and (_YEAR.fullmatch(last) or short):
            said = f"{self.numbers.year(first)} {self._word['range']} {self.numbers.year(last)}"
            return reading(found, said, "range", end=found.end("b"))
        tail = [self._scales[as_written(scale, self._scales)]] if scale else []
        tail += [self._noun(as_written(unit, {**self._units, **self._money}), False)] if unit else []
        tail += [f"{self._word['per']} {self._per[found['per']]}"] if found["per"] else []
        plainly = not tail or unit in self._money or unit in ("%", "٪")
        ends = [self._ways(n, plainly=plainly)[0] for n in (first, last)]
        said = " ".join([ends[0], self._word["range"], ends[1], *tail])
        alone = not tail and len(first + last) <= 4 and not re.match(rf"{GAP}?\w", found.string[found.end("b") :][:2])
        if alone and not word_before(found.string, found.start()):
            return reading(found, said, "range", "-".join(ends))
        return reading(found, said, "range")

    def _amount(self, written: str, money: str) -> str:
        one, many, part = self._money[money]
        plain = re.sub(r"[,\s]", "", ascii_digits(written))
        whole, _, cents = plain.partition(".")
        if len(cents) != 2:
            return f"{self._number(plain)} {one if plain == '1' else many}"
        noun = one if whole == "1" else many
        if not cents.strip("0"):
            return f"{self.numbers.cardinal(whole)} {noun}"
        small = f"{self.numbers.cardinal(cents)} {part}"
        return f"{self.numbers.cardinal(whole)} {noun} {small}" if whole.strip("0") else small

    def _money_first(self, found: re.Match[str]) -> Reading:
        money = as_written(found["unit"], self._money)
        per = f" {self._word['per']} {self._per[found['per']]}" if found["per"] else ""
        scale = f"{self._scales[as_written(found['scale'], self._scales)]} " if found["scale"] else ""
        if found["c"]:
            ends = f"{self._number(found['b'])} {self._word['range']} {self._number(found['c'])}"
            return reading(found, f"{ends} {scale}{self._money[money][1]}{per}", "range")
        if found["rest"]:
            scale += f"{self._number(found['rest'])} {self._scales[as_written(found['small'], self._scales)]} "
        if not scale:
            return reading(found, self._amount(found["b"], money) + per, "money")
        tail = f"{scale}{self._money[money][1]}{per}"
        said, *other = (f"{way} {tail}" for way in self._ways(found["b"], plainly=True))
        return reading(found, said, "money", *other)

    def _rupees(self, found: re.Match[str]) -> Reading:
        """ "500/-" -> "पाँच सौ रुपये"."""
        return reading(found, self._amount(found["b"], "₹"), "money")


def verbaliser(data: LanguageData, speller: Speller) -> Hindi:
    return Hindi(data, speller)
