"""Russian: figures, signs and abbreviations in words that agree with their sentence.

Letters said by name stay capitals apart from each other ("С Ш А"), Latin ones as well.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import partial

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.ru_clock import GAP
from promptprep.speaking.languages.ru_context import RussianContext
from promptprep.speaking.languages.ru_fractions import RussianFractions
from promptprep.speaking.languages.ru_letters import RussianLetters
from promptprep.speaking.languages.ru_nouns import RussianNouns
from promptprep.speaking.languages.ru_numbers import RussianNumbers
from promptprep.speaking.languages.ru_ordinals import RussianOrdinals
from promptprep.speaking.languages.ru_prepositions import with_preposition
from promptprep.speaking.languages.ru_quantities import Figure, RussianQuantities, figure
from promptprep.speaking.languages.ru_sums import RussianSums
from promptprep.speaking.languages.ru_times import RussianTimes
from promptprep.speaking.languages.ru_weekdays import RussianWeekdays
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.plain import HYPHENED, PlainRules, Powers
from promptprep.speaking.ruled import (
    DECIMAL_COMMA,
    Handler,
    Rules,
    as_written,
    joined,
    one_of,
    reading,
)

WHOLE = rf"(?:\d{{1,3}}(?:{GAP}\d{{3}})+(?!\d)|\d+)"
NUMBER = rf"{WHOLE}(?:\.\d+|{DECIMAL_COMMA}\d+)?"
SIGN = "[-−+±–]"
ON = rf"(?:{GAP}?[-–—−…]{GAP}?(?=[-−+])|…|\.\.\.)"
TO = r"(?:[-–—−]|…|\.\.\.)"
# Units that are also everyday words are units only where no word follows.
_ALSO_WORDS = ("с", "В", "К", "А", "Н", "ч.")
_GOES_ON = re.compile(
    r"[ \u00a0](?!(?:утра|вечера|ночи|дня|до|после|\d\d?[ \u00a0]?мин)\b)[а-яёА-ЯЁ\d]|\.(?!\s*\Z|\s+[А-ЯЁ«])"
)
_ANGLE = r"(\d{1,3})°[ \u00a0]?(\d{1,2})[′'’](?:[ \u00a0]?(\d{1,2})[″\"”])?"
_NAMED = re.compile(r"([А-Яа-яЁё-]+)[.:]?[ \u00a0]\Z")
_RAISED_UNIT = re.compile(r"(?<![\w/])[а-яa-z]{1,3}[²³]\Z")
_PHONE = (
    r"(?:\+\d{1,3}[ \u00a0-]?\(?\d{2,5}\)?|8[ \u00a0-]?\(\d{3,5}\)|\(\d{3,5}\)|8[ \u00a0-]\d{3}(?=[ -]\d{3}-\d\d-))"
    r"(?:[ \u00a0-]?\d{2,4}){2,4}(?!\d)|\d{2,3}-\d{2}-\d{2}(?![\d-])"
)


@dataclass(frozen=True)
class _Counts:
    """What a number counts: the nouns of scale and unit, the unit as written, whether it is money, and the end."""

    scale: str
    noun: str
    unit: str
    money: bool
    end: int
    per: str = ""


class Russian:
    """The verbaliser of Russian."""

    starts = re.compile(
        r"[\d%$€£¥₽₴₸₹₺₩₪№§&=±×÷→≈≤≥≠^⁻⁰¹²³⁴-⁹₀-₉½⅓⅔¼¾⅕⅛⅜⅝⅞+−.~(<>-]"
        r"|(?<![А-Яа-яЁё])(?:[Пп][нт]|[Вв][тс]|[Сс][рб]|[Чч]т)(?![А-Яа-яЁё])|(?<=[А-Яа-яЁё])/(?=[а-яё])|[А-ЯЁA-Z](?![а-яёa-z])"
    )
    spaced = True

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        self.numbers = RussianNumbers(data, speller)
        self.context = RussianContext(data)
        self.quantities = RussianQuantities(data, self.numbers, self.context)
        self.times = RussianTimes(data, self.numbers, self.context)
        self.ordinals = RussianOrdinals(data, self.numbers, self.context)
        self.weekdays = RussianWeekdays(data, self.numbers, self.context)
        self.nouns = RussianNouns(data, self.numbers, self.context)
        self.fractions = RussianFractions(data, self.quantities, self.nouns)
        self._dotted = tuple(data.get("spoken", "said_with_points.before"))
        self._number_cases = data.get("spoken", "number_sign")
        self.sums = RussianSums(data, self.quantities)
        self._point: str = data.get("spoken", "electronic")["."]
        self.letters = RussianLetters(data, self.numbers, self.context)
        self._shared = PlainRules(self.numbers.digits, data.get("spoken", "plus"), data.get("spoken", "symbols"))
        units = self.quantities.units.items()
        several = {u: self.quantities.unit(figure("5"), noun) for u, noun in units if u not in _ALSO_WORDS}
        by_ordinal = partial(self.numbers.ordinal, gender="feminine", case="prepositional")
        self._powers = Powers(data.get("spoken", "powers"), by_ordinal, self.numbers.cardinal, several)
        self._codes = frozenset(data.get("spoken", "before_digits.words"))
        q = self.quantities
        short = [s for s in q.scales if len(s) > 1 and (not s.isalpha() or len(s) < 5)]
        priced = [u for u in q.units if u not in _ALSO_WORDS]
        self._counted = (
            rf"(?:{GAP}?(?P<scale>{one_of(short)})(?!\w))?"
            rf"(?:{GAP}?(?P<unit>{one_of({**q.units, **q.money})})(?![\w²³])"
            rf"(?:{GAP}?/{GAP}?(?P<per>{one_of(q.per_units)})(?![\w²³])|{GAP}за{GAP}(?P<each>{one_of(priced)})(?![\w²³/]))?)?"
        )
        capitals = self.ordinals.letter_rules() + self._money_rules() + self.letters.letter_rules()
        self._rules = Rules(self._figure_rules(), self.weekdays.letter_rules() + capitals, self._sign_rules())

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        """See `verbaliser.py` for the contract."""
        character = text[at]
        if character in "²³" and (found := self._unit_alone(text, at, floor)):
            return found
        if character in ".-/":
            found = self.letters.abbreviation(text, at, floor)
            if found:
                return found
        found = self._rules.at(text, at)
        return with_preposition(found, text, floor) if found else None

    def _figure_rules(self) -> list[tuple[str, Handler]]:
        fractions = self.fractions.rules(_ALSO_WORDS)
        return [
            self.fractions.idiom_rule(),
            (r"\d{5,}(?![.,]?\d)", self._said_one_by_one),
            (r"\d{19,}(?<!000000)", self._shared.serial),
            (_PHONE, self._shared.phone),
            (HYPHENED, self._shared.hyphened),
            (_ANGLE, self._angle),
            *self.times.rules(),
            self.fractions.ratio_rule(),
            *self.ordinals.figure_rules(),
            (r"(\d{1,4})((?:\.\d{1,4})+)(?![.,]?\d)", self._with_points),
            *self.sums.figure_rules(NUMBER),
            *fractions,
            (rf"(?P<a>{NUMBER}){GAP}?(?:…|\.\.\.){GAP}?(?P<b>[-−+]{NUMBER})(?![-\d]){self._counted}", self._range),
            (rf"(?P<a>{NUMBER}){GAP}?{TO}{GAP}?(?P<b>{NUMBER})(?![-\d]){self._counted}", self._range),
            (rf"0\d+(?![.,]?\d|{GAP}(?:коп|мин|сек|цент))", self._shared.serial),
            (rf"(?P<b>{NUMBER}){self._counted}", self._quantity),
            (r"\d+(?:[.,]\d+)*", self._shared.serial),
        ]

    def _money_rules(self) -> list[tuple[str, Handler]]:
        codes = [m for m in self.quantities.money if m[0].isascii() and m[0].isalpha()]
        return [(rf"(?P<unit>{one_of(codes)}){GAP}?(?P<b>{NUMBER}){self._scale()}", self._money_first)]

    def _scale(self) -> str:
        return rf"(?:{GAP}?(?P<scale>{one_of(self.quantities.scales)})(?!\w))?"

    def _sign_rules(self) -> list[tuple[str, Handler]]:
        signs = [m for m in self.quantities.money if not m[0].isalnum()]
        return [
            (_PHONE, self._shared.phone),
            (rf"(?P<unit>{one_of(signs)}){GAP}?(?P<b>{SIGN}?{NUMBER}){self._scale()}", self._money_first),
            (rf"(?<![\w]){SIGN}(?P<unit>{one_of(signs)}){GAP}?(?P<b>{NUMBER}){self._scale()}", self._money_first),
            (
                rf"(?<![\w)])(?P<a>[-−+]{NUMBER}){ON}(?P<b>[-−+]?{NUMBER})(?![.,-]?\d){self._counted}",
                self._range,
            ),
            (rf"(?<![\w)])([-−+])(?={_ANGLE})", self._shared.symbol),
            (rf"(?<![\w)])(?P<b>[-−+±]{GAP}?{NUMBER})(?![.,-]?\d){self._counted}", self._quantity),
            self.fractions.rules(_ALSO_WORDS)[1],
            (one_of(signs), self._money_alone),
            (r"№(?!№)", self._number_sign),
            (rf"(§§?)(?={GAP}?\d)", self.letters.section),
            *self._powers.rules(),
            self.sums.times_rule(),
            (r"(?<!\S)[+%](?!\S)", self._shared.symbol),
            (
                r"(?:№№|§§|[§&=±×÷→≈≤≥≠]|[~<>](?=[ \u00a0]?\d)|(?<=\s)\+(?=\s)|(?<=[\d%٪])\+(?!\w*[^\W\d]))",
                self._shared.symbol,
            ),
        ]

    def _said_one_by_one(self, found: re.Match[str]) -> Reading | None:
        """ "код 482193": figures that nobody counts."""
        text, start = found.string, found.start()
        word = _NAMED.search(text, max(0, start - 24), start)
        return self._shared.serial(found) if word and word[1].lower() in self._codes else None

    def _angle(self, found: re.Match[str]) -> Reading:
        """ "55°45′" -> "пятьдесят пять градусов сорок пять минут"."""
        names = zip(found.groups(), ("градус", "минута", "секунда"), strict=True)
        said = (self.quantities.measure(figure(ascii_digits(n)), unit) for n, unit in names if n)
        return reading(found, " ".join(said), "measure")

    def _unit_alone(self, text: str, at: int, floor: int) -> Reading | None:
        """ "за м²" -> "за квадратный метр": a unit of area or volume without a number."""
        found = _RAISED_UNIT.search(text, max(floor, at - 4), at + 1)
        unit = self.quantities.units.get(found[0]) if found else None
        if not found or not unit:
            return None
        case = self.context.governed_case(text, found.start(), found.end())
        return Reading(Span(*found.span()), self.quantities.unit(figure("1"), unit, case), "measure")

    def _money_alone(self, found: re.Match[str]) -> Reading | None:
        """ "курс $" -> "курс доллара"."""
        if found.string[found.start() - 1 : found.start()].isalnum():
            return None
        noun = self.quantities.money[found[0]]
        said = self.quantities.unit(figure("1"), noun, self._case(found))
        return reading(found, said, "symbol")

    def _number_sign(self, found: re.Match[str]) -> Reading:
        """ "под № 10" -> "под номером"."""
        case = self._number_cases.get(self.context.word_before(found.string, found.start())) or self._case(found)
        return reading(found, self.numbers.noun("номер").one(case), "symbol")

    def _with_points(self, found: re.Match[str]) -> Reading | None:
        """ "версия 2.1" -> "два точка один"."""
        if not self.context.word_before(found.string, found.start()).startswith(self._dotted):
            return None
        parts = (self.numbers.cardinal(p) for p in found[0].split("."))
        return reading(found, f" {self._point} ".join(parts), "serial")

    def _case(self, found: re.Match[str]) -> str:
        return self.context.governed_case(found.string, found.start(), found.end())

    def _money_first(self, found: re.Match[str]) -> Reading:
        """ "$3,5 млн", "−$5", "USD 100": the sign or code stands before its number."""
        q = self.quantities
        money = q.money[as_written(found["unit"], q.money)]
        number = figure(ascii_digits(found["b"]))
        if found[0][0] in "-−+±–":
            number = replace(number, sign=found[0][0])
        case = self._case(found)
        if found["scale"]:
            return reading(found, q.scaled(number, q.scales[found["scale"]], money, case), "money")
        return reading(found, q.amount(number, money, case), "money")

    def _counts(self, found: re.Match[str]) -> _Counts:
        """The unit, money and scale that follow a number, as the data writes them; "" where there is none.

        A unit that is also an everyday word ("5 с мамой") is none where a word follows.
        """
        q, unit, scale = self.quantities, found["unit"] or "", found["scale"] or ""
        end = found.end("scale") if scale else found.end("b")
        if unit in _ALSO_WORDS and _GOES_ON.match(found.string, found.end()):
            unit = ""
        if unit:
            unit, end = as_written(unit, {**q.money, **q.units}), found.end()
        scale = q.scales[as_written(scale, q.scales)] if scale else ""
        is_money = unit in q.money and unit not in q.units
        per = q.per_units[as_written(found["per"], q.per_units)] if unit and found["per"] else ""
        said_per = q.per(per, money=is_money) if per else ""
        if unit and found["each"]:
            said_per = q.each(q.units[as_written(found["each"], q.units)])
        return _Counts(scale, q.units.get(unit) or q.money.get(unit, ""), unit, is_money, end, said_per)

    def _quantity(self, found: re.Match[str]) -> Reading:
        """A number with what it counts, else a plain number that agrees with its sentence."""
        number, counts, q, case = (
            figure(ascii_digits(found["b"])),
            self._counts(found),
            self.quantities,
            self._case(found),
        )
        if (
            case == "nominative"
            and counts.noun
            and counts.unit != "%"
            and self.context.acts(found.string, found.start())
        ):
            case = "accusative"
        if counts.scale:
            kind = "money" if counts.money else "measure" if counts.noun else "cardinal"
            return reading(found, q.scaled(number, counts.scale, counts.noun, case) + counts.per, kind, end=counts.end)
        if counts.money:
            return reading(found, q.amount(number, counts.noun, case) + counts.per, "money", end=counts.end)
        if counts.noun:
            if counts.unit == "%" and self.context.is_share_of_cases(found.string, found.start(), counts.end):
                case = "prepositional"
            kind = "percent" if counts.unit == "%" else "measure"
            return reading(found, q.measure(number, counts.noun, case) + counts.per, kind, end=counts.end)
        return self._plain(found, number)

    def _plain(self, found: re.Match[str], number: Figure) -> Reading:
        end, start = found.end("b"), found.start()
        if found["b"] == "1,5" and not number.sign and (half := self.nouns.half_before(found.string, start, end)):
            return reading(found, half, "decimal", end=end)
        if number.part:
            case = self.context.governed_case(found.string, start, end)
            return reading(found, self.quantities.number(number, case=case), "decimal", end=end)
        agreed = self.context.agreement(found.string, start, end, number.count)
        if not number.sign and len(number.whole) <= 4:
            ranked = self.nouns.rank(found.string, start, end, number.count)
            if ranked:
                return reading(found, self.numbers.ordinal(number.whole, *ranked), "ordinal", end=end)
            several = self.nouns.several(found.string, end, number.count, self._case(found))
            if several:
                return reading(found, several, "cardinal", end=end)
        return reading(found, self.quantities.number(number, agreed.gender, agreed.case), "cardinal", end=end)

    def _range(self, found: re.Match[str]) -> Reading:
        """ "10–15 км" -> "десять-пятнадцать километров": the first number agrees with what the second counts."""
        first, last = figure(ascii_digits(found["a"])), figure(ascii_digits(found["b"]))
        counts, q, case = self._counts(found), self.quantities, self._case(found)
        noun = counts.scale or counts.noun
        if noun:
            gender = self.numbers.noun(q.noun_of(noun)).gender
            half = found["a"] == "1,5" and noun in q.halved
            head = self.nouns.one_and_a_half(gender, case) if half else q.number(first, gender, case)
            tail = q.scaled(last, noun, counts.noun, case) if counts.scale else q.measure(last, noun, case)
            return reading(found, joined(head, tail) + counts.per, "range", end=counts.end)
        ranked = self.nouns.rank_of_range(found.string, found.end("b"))
        if ranked and not first.part and not last.part:
            ends = (self.numbers.ordinal(n.whole, *ranked) for n in (first, last))
            return reading(found, joined(*ends), "range", end=found.end("b"))
        agreed = self.context.agreement(found.string, found.start(), found.end("b"), last.count)
        head = q.number(first, agreed.gender, agreed.case)
        if found["a"] == "1,5" and self.context.words_after(found.string, found.end("b")):
            head = self.nouns.one_and_a_half(agreed.gender, agreed.case)
        said = joined(head, q.number(last, agreed.gender, agreed.case))
        return reading(found, said, "range", end=found.end("b"))


def verbaliser(data: LanguageData, speller: Speller) -> Russian:
    return Russian(data, speller)
