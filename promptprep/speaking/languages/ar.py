"""Arabic: figures, signs and abbreviations in words, with polarity, dual and the counted noun's form.

Latin letters said by name are written as Arabic calls them ("ESA" -> "إي إس إيه").
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.ar_context import ArabicContext, Setting, attach
from promptprep.speaking.languages.ar_numbers import AND, ArabicNumbers, Counted, counted
from promptprep.speaking.languages.ar_times import GAP, ArabicTimes
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.plain import HYPHENED, PlainRules
from promptprep.speaking.roman import roman
from promptprep.speaking.ruled import VULGAR, Abbreviations, Handler, Rules, as_written, is_year_pair, one_of, reading

WHOLE = r"(?:\d{1,3}(?:[,٬]\d{3})+(?!\d)|\d{1,3}(?:[\u00a0\u202f]\d{3})+(?!\d)|\d+)"
NUMBER = rf"{WHOLE}(?:[.٫]\d+|,\d{{1,2}}(?!\d))?"
_PHONE = (
    r"(?:\+|٠٠|00)\d{1,3}(?:[ \u00a0-]?\d{1,4}){2,5}(?!\d)|[0٠]\d{1,3}(?:[ \u00a0-]\d{3,4}){2}(?!\d)|[0٠]\d{8,10}(?!\d)"
)


class Arabic:
    """The verbaliser of Arabic."""

    starts = re.compile(r"[\d$€£¥₹₺₽&=±×÷→≈≤≥%٪№§½⅓⅔¼¾⅕⅛⅜⅝⅞+−.-]|[A-Z](?![a-z])|إلخ")
    spaced = True

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        self.numbers = ArabicNumbers(data)
        self.context = ArabicContext(data)
        self.times = ArabicTimes(data, self.numbers, self.context)
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._units = {unit: counted(entry) for unit, entry in data.get("spoken", "units").items()}
        self._money = {sign: counted(entry) for sign, entry in data.get("spoken", "money").items()}
        entries: Mapping[str, Mapping[str, Any]] = data.get("spoken", "money")
        self._parts = {
            sign: counted(data.get("spoken", f"money_parts.{e['part']}")) for sign, e in entries.items() if "part" in e
        }
        self._scales: Mapping[str, int] = data.get("spoken", "scales")
        self._acronyms: Mapping[str, str] = data.get("spoken", "acronyms")
        self._letter: Mapping[str, str] = data.get("spoken", "letters")
        self._ranked: Mapping[str, bool] = data.get("spoken", "ranked")
        self._titles = {written: said.split("|") for written, said in data.get("spoken", "titles").items()}
        self._numbered = Abbreviations(data.get("spoken", "before_a_number"))
        titles = {written: forms[0] for written, forms in self._titles.items()}
        self._abbreviations = Abbreviations({**data.get("spoken", "abbreviations"), **titles})
        self._shared = PlainRules(self.numbers.digits, self._word["plus"], data.get("spoken", "symbols"))
        self._rules = Rules(self._figures(), self._letters(), self._signs())

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        """See `verbaliser.py` for the contract."""
        if text[at] == ".":
            numbered = self._numbered.around(text, at, floor)
            if numbered and re.match(rf"{GAP}?\d", text[numbered[1] : numbered[1] + 2]):
                return Reading(Span(numbered[0], numbered[1]), numbered[3], "abbreviation")
            found = self._abbreviations.around(text, at, floor)
            if found:
                return self._abbreviation(text, *found)
        found_reading = self._rules.at(text, at)
        if found_reading and found_reading.span.start < floor:
            return Reading(Span(at, found_reading.span.end), found_reading.said, found_reading.kind)
        return found_reading

    def _tail(self) -> str:
        units = one_of({**self._units, **self._money})
        return rf"(?:{GAP}{{0,2}}(?P<unit>{units})(?![\w²³/\u064b-\u0652]))?"

    def _figures(self) -> list[tuple[str, Handler]]:
        latin = one_of([s for s in self._scales if s.isascii()])
        return [
            (r"\d{19,}", self._shared.serial),
            (_PHONE, self._shared.phone),
            (HYPHENED, self._shared.hyphened),
            *self.times.rules(),
            (r"(\d{1,2})[-–:](\d{1,2})(?![\d:])", self._pair),
            (rf"(?:(\d{{1,9}}){GAP})?(\d{{1,9}})/(\d{{1,9}})(?![\d/])", self._fraction),
            (rf"(\d{{1,9}})?([{''.join(VULGAR)}])", self._vulgar),
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
        codes = [m for m in self._money if m[0].isascii() and m[0].isalpha()]
        return [
            (r"إلخ\.?(?!\w)", self._and_so_on),
            (rf"(?P<unit>{one_of(codes)}){GAP}?(?P<b>{NUMBER}){self._scale()}", self._money_first),
            (r"[IVXLC]{2,}(?!\w)", self._roman),
            (r"[A-Z]{1,6}\d[A-Z\d]{0,12}(?!\w)", self._mixed_serial),
            (r"[A-Z]+(?![a-z])", self._initialism),
        ]

    def _scale(self) -> str:
        return rf"(?:{GAP}?(?P<scale>{one_of(self._scales)})(?!\w))?"

    def _signs(self) -> list[tuple[str, Handler]]:
        signs = [m for m in self._money if not m[0].isalnum()]
        return [
            (_PHONE, self._shared.phone),
            (rf"(?P<unit>{one_of(signs)}){GAP}?(?P<b>{NUMBER}){self._scale()}", self._money_first),
            (rf"[%٪]{GAP}?(?P<b>{NUMBER})", self._percent),
            (rf"(?<![\w)])(?P<sign>[-−+±]){GAP}?(?P<b>{NUMBER})(?P<percent>{GAP}?[%٪])?{self._tail()}", self._signed),
            (rf"([{''.join(VULGAR)}])", self._vulgar_alone),
            (r"[№§&=±×÷→≈≤≥%٪]|(?<=\s)\+(?=\s)", self._shared.symbol),
        ]

    def _setting(self, found: re.Match[str], group: str | int = 0) -> Setting:
        return self.context.setting(found.string, found.start(), found.end(group), 0)

    def _placed(self, found: re.Match[str], setting: Setting, said: str, kind: str, end: int = -1) -> Reading:
        """The reading with the letters that are written onto the figure."""
        return Reading(Span(setting.start, found.end() if end < 0 else end), attach(setting.lead, said), kind)

    @staticmethod
    def _parsed(written: str) -> tuple[str, str]:
        plain = re.sub(r"[٬\s]", "", ascii_digits(written))
        if re.fullmatch(r"\d{1,3}(?:,\d{3})+(?:[.٫]\d+)?", plain):
            plain = plain.replace(",", "")
        whole, _, part = plain.replace("٫", ".").replace(",", ".").partition(".")
        return whole, part

    def _number(self, written: str, noun: Counted | None = None, case: str = "nominative", bound: bool = False) -> str:
        whole, part = self._parsed(written)
        if part:
            return self.numbers.decimal(whole, part, case)
        return self.numbers.cardinal(whole, feminine=bool(noun and noun.feminine), case=case, bound=bound)

    def _pair(self, found: re.Match[str]) -> Reading | None:
        """A score, where the copy speaks of winning: "فاز 3-1" -> "ثلاثة مقابل واحد"."""
        before = self._setting(found, 1).before
        if ":" not in found[0] and before not in self._word["score_after"].split():
            return None
        return reading(
            found, f"{self._number(found[1])} {self._word['score']} {self._number(found[2], case='oblique')}", "score"
        )

    def _fraction(self, found: re.Match[str]) -> Reading | None:
        if int(found[3]) == 0:
            return None
        if not found[1] and is_year_pair(found[2], found[3]):
            return reading(found, f" {AND}".join(self.times.year(y) for y in found.group(2, 3)), "range")
        setting = self._setting(found)
        part = self.numbers.fraction(int(found[2]), int(found[3]), setting.case)
        return self._placed(found, setting, f"{self._number(found[1])} {AND}{part}" if found[1] else part, "fraction")

    def _vulgar(self, found: re.Match[str]) -> Reading:
        setting = self._setting(found)
        part = self.numbers.fraction(*VULGAR[found[2]], setting.case)
        return self._placed(found, setting, f"{self._number(found[1])} {AND}{part}" if found[1] else part, "fraction")

    def _vulgar_alone(self, found: re.Match[str]) -> Reading:
        return reading(found, self.numbers.fraction(*VULGAR[found[1]]), "fraction")

    def _percent(self, found: re.Match[str]) -> Reading:
        setting = self._setting(found)
        return self._placed(
            found, setting, f"{self._number(found['b'], case=setting.case)} {self._word['percent']}", "percent"
        )

    def _signed(self, found: re.Match[str]) -> Reading:
        sign = self._word[{"+": "plus", "±": "plus_minus"}.get(found["sign"], "minus")]
        if found["percent"]:
            return reading(found, f"{sign} {self._number(found['b'])} {self._word['percent']}", "percent")
        noun = self._noun(found["unit"])
        if noun:
            return reading(found, f"{sign} {self._counted(found['b'], noun, 'nominative')}", "measure")
        after = self.context.setting(found.string, found.start(), found.end(), found.start()).noun
        n = int(self._parsed(found["b"])[0][-18:])
        counts = Counted(self.context.is_feminine(after, n), "", "", "", "")
        return reading(found, f"{sign} {self._number(found['b'], counts, bound=bool(after))}", "cardinal")

    def _noun(self, unit: str | None) -> Counted | None:
        if not unit:
            return None
        table = {**self._money, **self._units}
        return table[as_written(unit, table)]

    def _counted(self, written: str, noun: Counted | None, case: str) -> str:
        """The number with its noun in the form that it asks for; a decimal takes the singular."""
        whole, part = self._parsed(written)
        if noun is None or not part:
            return self.numbers.count(whole, noun, case) if noun else self._number(written, case=case)
        return f"{self.numbers.decimal(whole, part, case)} {self.numbers.named(noun)}"

    def _quantity(self, found: re.Match[str]) -> Reading:
        unit, scale = found["unit"], found["scale"]
        setting = self._setting(found, "b")
        if not unit and not scale:
            return self._plain(found, setting)
        noun = self._noun(unit)
        if scale:
            return self._placed(
                found, setting, self._scaled(found["b"], scale, noun, setting.case), "money" if unit else "cardinal"
            )
        if unit in self._money:
            return self._placed(found, setting, self._amount(found["b"], unit, setting.case), "money")
        return self._placed(found, setting, self._counted(found["b"], noun, setting.case), "measure")

    def _scaled(self, written: str, scale: str, noun: Counted | None, case: str) -> str:
        """ "$3.5m" -> "ثلاثة فاصل خمسة مليون دولار", "$5m" -> "خمسة ملايين دولار"."""
        whole, part = self._parsed(written)
        tail = f" {self.numbers.named(noun)}" if noun else ""
        power = self.numbers.scale(self._scales[scale])
        if part:
            return f"{self.numbers.decimal(whole, part, case)} {power.one}{tail}"
        words = self.numbers.cardinal(int(whole[:9]) * 10 ** self._scales[scale], case=case, bound=bool(noun))
        return f"{words}{tail}"

    def _amount(self, written: str, money: str, case: str) -> str:
        whole, part = self._parsed(written)
        known = as_written(money, self._money)
        noun, small = self._money[known], self._parts.get(known)
        if len(part) != 2 or not small:
            return self._counted(written, noun, case)
        if not part.strip("0"):
            return self.numbers.count(whole, noun, case)
        cents = self.numbers.count(part, small, case)
        return f"{self.numbers.count(whole, noun, case)} {AND}{cents}" if whole.strip("0") else cents

    def _money_first(self, found: re.Match[str]) -> Reading:
        setting = self._setting(found)
        if found["scale"]:
            return self._placed(
                found,
                setting,
                self._scaled(found["b"], found["scale"], self._noun(found["unit"]), setting.case),
                "money",
            )
        return self._placed(found, setting, self._amount(found["b"], found["unit"], setting.case), "money")

    def _plain(self, found: re.Match[str], setting: Setting) -> Reading:
        whole, part = self._parsed(found["b"])
        end = found.end("b")
        if part:
            return self._placed(found, setting, self.numbers.decimal(whole, part, setting.case), "decimal", end)
        n = int(whole[-18:])
        if setting.definite:
            return self._placed(found, setting, self._definite(n, whole, setting), "ordinal", end)
        if setting.before in self._ranked and 0 < n < 100 and not setting.prefix:
            said = self.numbers.ordinal(n, feminine=self._ranked[setting.before], case="oblique")
            return self._placed(found, setting, said, "ordinal", end)
        if n in (1, 2) and self.context.can_be_dual(setting):
            return self._one_or_two(found, setting, n)
        feminine = self.context.is_feminine(setting.noun, n)
        said = self.numbers.cardinal(whole, feminine=feminine, case=setting.case, bound=bool(setting.noun))
        return self._placed(found, setting, said, "cardinal", end)

    def _one_or_two(self, found: re.Match[str], setting: Setting, n: int) -> Reading:
        """ "1 طالب" -> "طالب واحد", "2 مليون دولار" -> "مليونا دولار": the noun is said first, or in the dual."""
        noun = counted({"one": setting.noun, "feminine": self.context.is_feminine(setting.noun, 11)})
        end = found.end("b") + 1 + len(setting.written)
        if n == 1:
            said = f"{noun.one} {self.numbers.cardinal(1, feminine=noun.feminine)}"
        else:
            said = self.numbers.dual(noun, setting.case, bound=self.context.counts_on(found.string, end))
        return self._placed(found, setting, said, "cardinal", end)

    def _definite(self, n: int, whole: str, setting: Setting) -> str:
        """ "القرن الـ21" is an ordinal, "الأيام الـ10" is not: a plural before it is counted."""
        before = setting.before
        if 0 < n < 100 and before.startswith("ال") and not self.context.is_plural(before):
            return self.numbers.ordinal(n, feminine=self.context.looks_feminine(before))
        noun = before[2:] if before.startswith("ال") else setting.noun
        feminine = self.context.is_feminine(noun, n)
        return self.numbers.definite(self.numbers.cardinal(whole, feminine=feminine, case="oblique"))

    def _range(self, found: re.Match[str]) -> Reading:
        """ "10–15 دقيقة" -> "من عشر إلى خمس عشرة دقيقة"; a written "من" or "بين" is not said twice."""
        setting = self._setting(found, "b")
        noun = self._noun(found["unit"])
        last = int(self._parsed(found["b"])[0][-18:])
        feminine = noun.feminine if noun else self.context.is_feminine(setting.noun, last)
        gendered = Counted(feminine, "", "", "", "")
        first = self._number(found["a"], gendered, "oblique")
        tail = (
            self._counted(found["b"], noun, "oblique")
            if noun
            else self._number(found["b"], gendered, "oblique", bool(setting.noun))
        )
        lead = "" if setting.before in ("من", "بين") else f"{self._word['from']} "
        link = f" {AND}" if setting.before == "بين" else f" {self._word['to']} "
        return self._placed(
            found, setting, f"{lead}{first}{link}{tail}", "range", found.end() if noun else found.end("b")
        )

    def _roman(self, found: re.Match[str]) -> Reading | None:
        n = roman(found[0])
        if not n or n > 99 or found.string[found.start() - 1 : found.start()].isalnum():
            return None
        before = self._setting(found).before
        feminine = self._ranked.get(before, self.context.looks_feminine(before))
        return reading(found, self.numbers.ordinal(n, feminine=feminine), "roman")

    def _mixed_serial(self, found: re.Match[str]) -> Reading:
        """Letters by name and figures as numbers: "M31" -> "إم واحد وثلاثون"."""
        parts = re.findall(r"\d+|[A-Z]", found[0])
        said = (self._letter.get(p) or self.numbers.cardinal(ascii_digits(p)) for p in parts)
        return reading(found, " ".join(said), "serial")

    def _initialism(self, found: re.Match[str]) -> Reading | None:
        before = found.string[found.start() - 1 : found.start()]
        letters = found[0]
        if (before.isascii() and before.isalnum()) or len(letters) > 6:
            return None
        return reading(found, self._acronyms.get(letters) or " ".join(self._letter[c] for c in letters), "initialism")

    def _abbreviation(self, text: str, start: int, end: int, written: str, said: str) -> Reading:
        forms = self._titles.get(written)
        if forms:
            name = re.match(r"\s*([\u0621-\u0652]+)", text[end : end + 24])
            said = forms[1] if name and self.context.looks_feminine(name[1]) else forms[0]
        return Reading(Span(start, end), said, "abbreviation")

    def _and_so_on(self, found: re.Match[str]) -> Reading | None:
        if found.string[found.start() - 1 : found.start()].isalnum():
            return None
        return reading(found, self._word["and_so_on"], "abbreviation", end=found.start() + 3)


def verbaliser(data: LanguageData, speller: Speller) -> Arabic:
    return Arabic(data, speller)
