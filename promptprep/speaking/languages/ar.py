"""Arabic: figures, signs and abbreviations in words, with polarity, dual and the counted noun's form.

Latin letters said by name are written as Arabic calls them ("ESA" -> "إي إس إيه").
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.ar_context import GAP, ArabicContext, Setting, attach
from promptprep.speaking.languages.ar_fractions import ArabicFractions
from promptprep.speaking.languages.ar_letters import ArabicLetters
from promptprep.speaking.languages.ar_numbers import AND, ArabicNumbers, Counted, counted
from promptprep.speaking.languages.ar_quantities import ArabicQuantities
from promptprep.speaking.languages.ar_ranks import ArabicRanks
from promptprep.speaking.languages.ar_serials import PHONE, ArabicSerials
from promptprep.speaking.languages.ar_signs import ArabicSigns
from promptprep.speaking.languages.ar_times import ArabicTimes
from promptprep.speaking.plain import PlainRules, Powers
from promptprep.speaking.ruled import DECIMAL_COMMA, Handler, Rules, one_of, reading

WHOLE = r"(?:\d{1,3}(?:\.\d{3}){2,}(?![.\d])|\d{1,3}(?:[,٬،]\d{3})+(?!\d)|\d{1,3}(?:[\u00a0\u202f]\d{3})+(?!\d)|\d+)"
NUMBER = rf"{WHOLE}(?:[.٫]\d+|{DECIMAL_COMMA}\d{{1,2}}(?!\d))?"


FEMININE = Counted(True, "", "", "", "")

_DUALS = ("ألفان", "ألفين", "مليونان", "مليونين", "ملياران", "مليارين")  # they lose their "ن" before what they count
_LAST_FIGURES = re.compile(r"\d{1,2}\Z")
LOAN_ENDING = "و"  # "كيلوين تفاح": loans stay whole before what they measure
LOOK_BACK = 60  # characters before a number that may decide how it is said


class Arabic:
    """The verbaliser of Arabic."""

    starts = re.compile(r"[\d$€£¥₹₺₽√&=/±×÷ﷺﷻ→≈≤≥<>%٪№§^⁻⁰¹²³⁴-⁹₀-₉½⅓⅔¼¾⅕⅛⅜⅝⅞+−.-]|[A-Z](?![a-z])|إلخ")
    spaced = True

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        self.numbers = ArabicNumbers(data)
        self.context = ArabicContext(data)
        self.times = ArabicTimes(data, self.numbers, self.context)
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self.quantities = ArabicQuantities(data, self.numbers)
        self.fractions = ArabicFractions(data, self.quantities, self.times, self.context)
        self.signs = ArabicSigns(data, self.quantities, self.context)
        self.letters = ArabicLetters(data, self.numbers, self.context)
        self.ranks = ArabicRanks(data, self.numbers, self.context)
        named = {unit: self.numbers.named(noun) for unit, noun in self.quantities.units.items()}
        self._powers = Powers(data.get("spoken", "powers"), self.numbers.cardinal, self.numbers.cardinal, named)
        self._shared = PlainRules(self.numbers.digits, self._word["plus"], data.get("spoken", "symbols"))
        self._unit = re.compile(self._tail())
        self._unit_at_end = re.compile(rf"\d{GAP}?[\u0621-\u064a]+(?: [\u0621-\u064a]+)?\Z")
        self.serials = ArabicSerials(data, self._shared, self.context, self._unit)
        self._rules = Rules(self._figures(), self._letters(), self._signs())

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        """See `verbaliser.py` for the contract."""
        if text[at] == ".":
            found = self.letters.at_stop(text, at, floor)
            if found:
                return found
        found_reading = self._rules.at(text, at)
        if found_reading and found_reading.span.start < floor:
            return Reading(Span(at, found_reading.span.end), found_reading.said, found_reading.kind)
        return found_reading

    def _tail(self) -> str:
        units = one_of({**self.quantities.units, **self.quantities.money})
        per = rf"(?:/{GAP}?(?P<per>{one_of(self.quantities.per)}))?"
        return rf"(?:{GAP}{{0,2}}(?P<unit>{units}){per}(?![\w²³\u064b-\u0652]|/(?!\d)))?"

    def _figures(self) -> list[tuple[str, Handler]]:
        words = [s for s in self.quantities.scales if not s.isascii()]
        short = [unit for unit in self.quantities.units if unit.startswith("كم")]
        scaled = rf"{NUMBER}{GAP}(?P<scale>{one_of(words)}){GAP}(?P<unit>{one_of(short)})(?![\w²³/.])"
        signs = [m for m in self.quantities.money if not m[0].isalnum()]
        coins = rf"{one_of(signs)}|(?:{one_of(self._codes())})(?!\w)"
        counting = rf"(?={GAP}?[\u0621-\u064a]|(?<=\D))"
        latin = one_of([s for s in self.quantities.scales if s.isascii() and len(s) > 1])
        return [
            *self.serials.rules(),
            (r"(\d{1,3})°[ \u00a0]?(\d{1,2})[′'’](?:[ \u00a0]?(\d{1,2})[″\"”])?", self.signs.angle),
            *self.times.rules(),
            self.serials.long_rule(),
            (rf"(?P<b>{NUMBER}){GAP}(?P<scale>{one_of(words)}){GAP}?(?P<unit>{coins})", self._money_first),
            (scaled, self._scaled_unit),
            *self.fractions.early_rules(),
            (r"(?!\d{1,3}(?:\.\d{3})+(?![.\d]))\d{1,3}(?:\.\d{1,3}){2,}(?![\d.]*\d)", self.fractions.dotted),
            (rf"(?P<b>\d{{1,3}}(?: \d{{3}})+)(?! ?\d)(?P<scale>(?!))?{self._tail()}{counting}", self._spaced),
            (r"\d{1,4}[A-Z]{1,3}(?!\w)", self.letters.mixed_serial),
            (rf"({NUMBER}){GAP}(?:[-–](?={GAP}{NUMBER}{GAP}?=)|−(?={GAP}\d))", self.signs.minus),
            *self.fractions.rules(),
            (rf"(?P<b>{NUMBER})\+(?={GAP}?[\u0621-\u064a])", self.signs.more),
            (rf"(?P<a>{NUMBER}){GAP}?[-–—]{GAP}?(?P<b>{NUMBER})(?![-\d]){self._tail()}", self._range),
            (r"[0٠]\d+(?![.,٫]?\d)", self._shared.serial),
            (rf"(?P<b>{NUMBER}){GAP}?[%٪]", self._percent),
            (
                rf"(?P<b>{NUMBER})(?:{GAP}?(?P<scale>{latin})(?!\w))?{self._tail()}",
                self._quantity,
            ),
            (r"\d+(?:[.,٫٬]\d+)*", self._shared.serial),
        ]

    def _letters(self) -> list[tuple[str, Handler]]:
        money = rf"(?P<unit>{one_of(self._codes())}){GAP}?(?P<b>{NUMBER}){self._upper()}{self._scale()}"
        return [(money, self._money_first), (r"[ﷺﷻ]", self._shared.symbol), *self.letters.rules()]

    def _codes(self) -> list[str]:
        return [m for m in self.quantities.money if m[0].isascii() and m[0].isalpha()]

    @staticmethod
    def _upper() -> str:
        return rf"(?:{GAP}?[-–]{GAP}?(?P<c>{NUMBER}))?"

    def _scale(self) -> str:
        return rf"(?:{GAP}?(?P<scale>{one_of(self.quantities.scales)})(?!\w))?"

    def _signs(self) -> list[tuple[str, Handler]]:
        signs = [m for m in self.quantities.money if not m[0].isalnum()]
        percent = rf"(?P<percent>{GAP}?[%٪])?"
        return [
            (PHONE, self._shared.phone),
            (rf"(?P<unit>{one_of(signs)}){GAP}?(?P<b>{NUMBER}){self._upper()}{self._scale()}", self._money_first),
            (rf"[%٪]{GAP}?(?P<b>{NUMBER})", self._percent),
            *self.times.dash_rules(),
            self.times.other_name_rule(),
            *self.letters.stroke_rules(),
            (rf"/(?P<per>{one_of(self.quantities.per)})(?![\w²³])", self._per_one),
            (rf"/(?=\d+{GAP}?(?:{one_of(self.quantities.units)})(?!\w))", self._per_many),
            (rf"(?<![\w)])(?P<sign>[-−+±]){GAP}?(?P<b>{NUMBER}){percent}{self._tail()}", self.signs.signed),
            self.fractions.sign_rule(),
            *self._powers.rules(),
            (one_of(signs), self.signs.money_alone),
            (r"(?<=[A-Za-z])\++(?!\w)", self.signs.beside_letter),
            (r"[<>](?=[ \u00a0]?\d)", self._shared.symbol),
            (r"√(?=[ \u00a0]?\d)", self._shared.symbol),
            (r"[№§&=±×÷→≈≤≥%٪]|(?<=\s)\+(?=\s)|(?<=[\d%٪])\+(?!\w*[^\W\d])", self._shared.symbol),
        ]

    def _setting(self, found: re.Match[str], group: str | int = 0) -> Setting:
        return self.context.setting(found.string, found.start(), found.end(group), 0)

    def _placed(self, found: re.Match[str], setting: Setting, said: str, kind: str, end: int = -1) -> Reading:
        """The reading with the letters that are written onto the figure."""
        return Reading(Span(setting.start, found.end() if end < 0 else end), attach(setting.lead, said), kind)

    def _scaled_unit(self, found: re.Match[str]) -> Reading | None:
        """ "300 ألف كم" -> "ثلاثمائة ألف كيلومتر": the number as it is read without the unit, then its singular."""
        left, end = max(0, found.start() - LOOK_BACK), found.end("scale")
        number = self._rules.at(found.string[left:end], found.start() - left)
        noun = self.quantities.noun(found["unit"])
        if number is None or noun is None:
            return None
        said = number.said + found.string[left + number.span.end : end]
        bound = said[:-1] if said.endswith(_DUALS) else said
        return Reading(Span(left + number.span.start, found.end()), f"{bound} {self.numbers.named(noun)}", "measure")

    def _spaced(self, found: re.Match[str]) -> Reading | None:
        """ "10 000 متر": groups parted by plain blanks count something, and nobody is called or named near."""
        if self.serials.is_called(found.string, found.start()):
            return reading(found, self._shared.phone(found).said, "telephone", end=found.end("b"))
        return self._quantity(found)

    def _percent(self, found: re.Match[str]) -> Reading:
        setting = self._setting(found)
        words = self.quantities.number(found["b"], case=setting.case)
        return self._placed(found, setting, f"{words} {self._word['percent']}", "percent")

    def _quantity(self, found: re.Match[str]) -> Reading:
        unit, scale = found["unit"], found["scale"]
        setting = self._setting(found, "b")
        if not unit and not scale:
            return self._plain(found, setting)
        noun = self.quantities.noun(unit)
        if scale:
            return self._placed(
                found,
                setting,
                self.quantities.scaled(found["b"], scale, noun, setting.case),
                "money" if unit else "cardinal",
            )
        per = f" {self.quantities.per[found['per']]}" if found["per"] else ""
        if setting.definite and noun and found["b"].isdecimal():
            return self._placed(found, setting, self.ranks.definite_quantity(found["b"], noun) + per, "measure")
        if unit in self.quantities.money:
            said, kind = self.quantities.amount(found["b"], unit, setting.case), "money"
        else:
            said, kind = self.quantities.counted(found["b"], noun, setting.case), "measure"
        return self._placed(found, setting, said + per, kind)

    def _per_many(self, found: re.Match[str]) -> Reading | None:
        """ "7 لتر/100 كم": a unit, and how many of another it is for."""
        if not self._unit_at_end.search(found.string, max(0, found.start() - LOOK_BACK), found.start()):
            return None
        return reading(found, f" {self._word['for_every']} ", "measure")

    def _per_one(self, found: re.Match[str]) -> Reading | None:
        """ "120 نسمة/كم²": what is counted, and the unit that it is for."""
        if not self._unit_at_end.search(found.string, max(0, found.start() - LOOK_BACK), found.start()):
            return None
        return reading(found, f" {self.quantities.per[found['per']]}", "measure")

    def _money_first(self, found: re.Match[str]) -> Reading:
        setting = self._setting(found)
        if found.groupdict().get("c"):
            return self._price_range(found, setting)
        if found["scale"]:
            return self._placed(
                found,
                setting,
                self.quantities.scaled(found["b"], found["scale"], self.quantities.noun(found["unit"]), setting.case),
                "money",
            )
        return self._placed(found, setting, self.quantities.amount(found["b"], found["unit"], setting.case), "money")

    def _price_range(self, found: re.Match[str], setting: Setting) -> Reading:
        """ "$200-300" -> "من مائتين إلى ثلاثمائة دولار"."""
        q, noun = self.quantities, self.quantities.noun(found["unit"])
        lead = "" if setting.before == "من" else f"{self._word['from']} "
        first = q.number(found["b"], noun, "oblique")
        scaled = found["scale"] and q.scaled(found["c"], found["scale"], noun, "oblique")
        tail = scaled or q.counted(found["c"], noun, "oblique")
        return self._placed(found, setting, f"{lead}{first} {self._word['to']} {tail}", "range")

    def _plain(self, found: re.Match[str], setting: Setting) -> Reading:
        whole, part = self.quantities.parsed(found["b"])
        end = found.end("b")
        if part:
            return self._placed(found, setting, self.numbers.decimal(whole, part, setting.case), "decimal", end)
        n = int(whole[-18:])
        if page := self.letters.page(found.string, found.start(), whole):
            return page
        if setting.definite:
            return self._placed(found, setting, self.ranks.definite(found.string, n, whole, setting), "ordinal", end)
        if ranked := self.ranks.ranked(found.string, end, n, setting):
            return self._placed(found, setting, ranked, "ordinal", end)
        if n in (1, 2) and self.context.can_be_dual(setting):
            return self._one_or_two(found, setting, n)
        feminine = self._is_feminine(found, setting, n)
        said = self.numbers.cardinal(whole, feminine=feminine, case=setting.case, bound=bool(setting.noun))
        return self._placed(found, setting, said, "cardinal", end)

    def _is_feminine(self, found: re.Match[str], setting: Setting, n: int) -> bool:
        """Gender by the noun that follows, or by what a second number counts: "بين 3 و5 سنوات"."""
        if setting.noun:
            return self.context.is_feminine(setting.noun, n)
        if self.times.years.is_feminine_year(setting.before):
            return True
        pair = self.context.noun_of_pair(found.string, found.end("b"))
        if not pair:
            return False
        unit = self._unit.match(found.string, pair[1])
        noun = self.quantities.noun(unit["unit"]) if unit else None
        last = _LAST_FIGURES.search(found.string, found.end("b"), pair[1])
        return (
            noun.feminine if noun else bool(pair[0]) and self.context.is_feminine(pair[0], int(last[0]) if last else 5)
        )

    def _one_or_two(self, found: re.Match[str], setting: Setting, n: int) -> Reading:
        """ "1 طالب" -> "طالب واحد", "2 مليون دولار" -> "مليونا دولار": the noun is said first, or in the dual."""
        noun = counted({"one": setting.noun, "feminine": self.context.is_feminine(setting.noun, 11)})
        end = found.end("b") + 1 + len(setting.written)
        if n == 1:
            said = f"{noun.one} {self.numbers.cardinal(1, feminine=noun.feminine)}"
        else:
            bound = self.context.counts_on(found.string, end) and not noun.one.endswith(LOAN_ENDING)
            said = self.numbers.dual(noun, setting.case, bound=bound)
        return self._placed(found, setting, said, "cardinal", end)

    def _range(self, found: re.Match[str]) -> Reading:
        """ "10–15 دقيقة" -> "من عشر إلى خمس عشرة دقيقة"; a written "من" or "بين" is not said twice."""
        page = self.letters.page_mark(found.string, found.start())
        if page:
            first, tail = (self.quantities.number(found[g], FEMININE, "oblique") for g in "ab")
            said = f"{self._word['pages']} {self._word['from']} {first} {self._word['to']} {tail}"
            return Reading(Span(page.start(1), found.end("b")), said, "range")
        setting = self._setting(found, "b")
        noun = self.quantities.noun(found["unit"])
        last = int(self.quantities.parsed(found["b"])[0][-18:])
        feminine = noun.feminine if noun else self.context.is_feminine(setting.noun, last)
        gendered = Counted(feminine, "", "", "", "")
        first = self.quantities.number(found["a"], gendered, "oblique")
        if noun and (n := {"1": 1, "١": 1, "2": 2, "٢": 2}.get(found["a"])):
            first = noun.one if n == 1 else self.numbers.dual(noun, "oblique")
        tail = (
            self.quantities.counted(found["b"], noun, "oblique")
            if noun
            else self.quantities.number(found["b"], gendered, "oblique", bool(setting.noun))
        )
        lead = "" if self.context.governs(setting.before) else f"{self._word['from']} "
        link = f" {AND}" if setting.before == "بين" else f" {self._word['to']} "
        placed = self._placed(
            found, setting, f"{lead}{first}{link}{tail}", "range", found.end() if noun else found.end("b")
        )
        if noun or setting.noun or setting.before or len(found["a"] + found["b"]) > 4:
            return placed
        score = f"{self.quantities.number(found['a'])} {self._word['score']} {tail}"
        return replace(placed, otherwise=(score,))


def verbaliser(data: LanguageData, speller: Speller) -> Arabic:
    return Arabic(data, speller)
