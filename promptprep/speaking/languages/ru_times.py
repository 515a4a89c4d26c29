"""Russian years and dates, in the case that the words around them ask for."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.ru_clock import BEFORE_TIMES, GAP, RussianClocks, begins_sentence
from promptprep.speaking.languages.ru_context import RussianContext
from promptprep.speaking.languages.ru_numbers import RussianNumbers, plural_class
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import Handler, is_day, is_season, is_year_pair, one_of, reading

DASH = "[-–—−]"
YEAR_WORD = r"(?:гг?\.|гг?(?!\w)|год(?:а|у|ом|е|ы|ов|ам|ами|ах)?(?!\w))"
_SHORT = ("г.", "г", "гг.", "гг", "")
_AT_A_TIME = ("в", "во", "о", "об", "на")
# The case that a written form of "год" shows; "году" is dative after "к" and "по".
_FORMS = {
    "год": "nominative",
    "года": "genitive",
    "году": "prepositional",
    "годом": "instrumental",
    "годе": "prepositional",
    "годы": "nominative",
    "годов": "genitive",
    "годам": "dative",
    "годами": "instrumental",
    "годах": "prepositional",
}

_OF_YEAR = (*_FORMS.items(), ("учебный", "nominative"), ("учебного", "genitive"), ("учебном", "prepositional"))
_WEEKDAY_NEXT = re.compile(r",? \(?(?:пн|вт|ср|чт|пт|сб|вс|понед|вторн|сред|четв|пятн|субб|воскр)")
_TO_FIGURE = re.compile(r" (?:по|до|и|или|на) \d{1,4}(?!\d)")
_NAME = re.compile(r" [А-ЯЁ][а-яё]{2}")
_FROM_YEAR = re.compile(r"\b[Сс]о? [12]\d{3} (?:по|до) \Z")
_GREETED = re.compile(r"[Пп]о(?:здравл|здрави)\w+(?: [а-яё]+){0,2} с \Z")
_VERB = re.compile(r"(?:[еия]тся|[еи]т|[уюая]т|л[аио]сь|лся|[аеи]л[аио]?|крыт[ыао]?|[аен]н[аоы]?)$")
_ERA = re.compile(rf"{GAP}(?:до{GAP})?н\.{GAP}?э\.")


class RussianTimes:
    """Handlers for years, dates and, by `ru_clock`, clock times."""

    def __init__(self, data: LanguageData, numbers: RussianNumbers, context: RussianContext) -> None:
        self._numbers = numbers
        self._context = context
        self._months: Mapping[str, int] = data.get("spoken", "months")
        self._genitive: list[str] = data.get("spoken", "months_in_order.genitive")
        self._clocks = RussianClocks(data, numbers, context)
        self._dated = tuple(data.get("spoken", "before_a_date.endings"))
        self._after_days = frozenset(data.get("spoken", "after_a_day.words"))
        self._after_years = frozenset(data.get("spoken", "after_a_year.words"))
        self._naming = frozenset(data.get("spoken", "before_a_named_day.words"))

    def rules(self) -> list[tuple[str, Handler]]:
        short = [m for m in self._months if m.endswith(".")]
        month = f"(?i:{one_of(self._months)})(?![\\w])" if self._months else "(?!)"
        return [
            (
                rf"(\d{{1,2}})([./])(\d{{1,2}})\2(\d{{4}}|\d{{2}})(?![\d.,]?\d)(?:{GAP}?(?:г\.|года?(?!\w)))?",
                self._numeric_date,
            ),
            (r"(\d{4})-(\d{2})-(\d{2})(?!\d)", self._iso_date),
            (r"(\d{1,2})(-)(\d{1,2})-(\d{4})(?!\d)", self._numeric_date),
            (rf"(\d{{1,2}}){GAP}?[-–—]{GAP}?(\d{{1,2}})(?={GAP}{month})", self._days),
            (rf"(\d{{1,2}}){GAP}({one_of(short)})(?:{GAP}?([12]\d{{3}}){GAP}?(?:г\.|года?(?!\w))?)?", self._short_date),
            (rf"(\d{{1,2}})(?:-?го)?(?={GAP}{month})", self._day),
            (
                rf"(\d{{1,2}})(?=(?:,{GAP}\d{{1,2}}){{0,5}}{GAP}(?:до|и|или|на|по){GAP}\d{{1,2}}(?:-?го)?{GAP}{month})",
                self._day,
            ),
            (
                rf"(\d\d?)\.(0[1-9]|1[0-2]){GAP}?{DASH}{GAP}?(\d\d?)\.(0[1-9]|1[0-2])(?:\.([12]\d{{3}}))?(?![.,]?\d|%)",
                self._from_day,
            ),
            (rf"(\d\d?)(?:\.(0[1-9]|1[0-2]))?(?={GAP}по{GAP}\d\d?\.(?:0[1-9]|1[0-2])(?![\d%]))", self._first_day),
            *self._clocks.rules(),
            (rf"([0-3]\d)\.(0[1-9]|1[0-2])(?![\d%°]|[.,/:-]\d|{GAP}?[A-Za-z$€₽])", self._day_and_month),
            (rf"(\d{{3,4}}){GAP}?{DASH}{GAP}?(\d{{2,4}})(?!\d){GAP}?({YEAR_WORD})", self._years),
            (rf"(\d{{3,4}})(?={GAP}(?:по|до|и|или){GAP}\d{{3,4}}{GAP}?({YEAR_WORD}))", self._first_year),
            (rf"([12]\d{{3}}){GAP}(?:по|до){GAP}([12]\d{{3}})(?![\d.,:])", self._from_year),
            (r"([12]\d{3})/(\d{4}|\d\d)(?![\d/])", self._season),
            (rf"(\d{{1,4}}){GAP}?({YEAR_WORD})", self._year_with_word),
            (r"([12]\d{3})(?![\d,.:/-]?\d|[-‑][а-яё])", self._bare_year),
            (rf"([12]\d{{3}}){GAP}?[-–—]{GAP}?([12]\d{{3}})(?![\d,.]?\d|{GAP}?[^\W\d])", self._bare_years),
        ]

    def _numeric_date(self, found: re.Match[str]) -> Reading | None:
        first, sign, second, year = found[1], found[2], found[3], found[4]
        day, month = int(first), int(second)
        if len(year) == 2 and not found[0].endswith(("г.", "года", "год")) and sign == "/":
            return None
        if not is_day(day, month):
            day, month = month, day
        if not is_day(day, month):
            return None
        full = _full_year(year)
        case = self._day_case(found)
        other = self._date(month, day, full, case) if sign == "/" and day != month and is_day(month, day) else ""
        said = self._date(day, month, full, case)
        return reading(found, said, "date", *([other] if other else []))

    def _day_and_month(self, found: re.Match[str]) -> Reading | None:
        """ "Премьера 23.02", "до 31.12": a date where nothing is counted after it."""
        text, before = found.string, self._context.word_before(found.string, found.start())
        after = self._context.words_after(text, found.end())
        dated = (
            before in (*BEFORE_TIMES, "на", "от", "по")
            or _WEEKDAY_NEXT.match(text, found.end())
            or before.endswith(self._dated)
        )
        if after and (after[0] in self._after_days or _VERB.search(after[0])):
            dated, after = dated or begins_sentence(text, found.start()), []
        if not dated or after or not is_day(int(found[1]), int(found[2])):
            return None
        said = self._numbers.ordinal(found[1], "neuter", self._day_case(found))
        return reading(found, f"{said} {self._genitive[int(found[2]) - 1]}", "date")

    def _from_day(self, found: re.Match[str]) -> Reading | None:
        """ "10.07–12.07.2025"."""
        day, month, last, end = (int(n) for n in found.groups()[:4])
        if not (is_day(day, month) and is_day(last, end)) or (month, day) >= (end, last):
            return None
        first = f"{self._numbers.ordinal(day, 'neuter', 'genitive')} {self._genitive[month - 1]}"
        second = f"{self._numbers.ordinal(last, 'neuter', 'accusative')} {self._genitive[end - 1]}"
        year = f" {self._numbers.ordinal(found[5], 'masculine', 'genitive')} года" if found[5] else ""
        return reading(found, f"с {first} по {second}{year}", "range")

    def _first_day(self, found: re.Match[str]) -> Reading | None:
        """ "с 10 по 12.07", "с 10.07 по 12.08"."""
        if not is_day(int(found[1]), int(found[2] or 1)):
            return None
        month = f" {self._genitive[int(found[2]) - 1]}" if found[2] else ""
        return reading(found, self._numbers.ordinal(found[1], "neuter", self._day_case(found)) + month, "date")

    def _iso_date(self, found: re.Match[str]) -> Reading | None:
        day, month = int(found[3]), int(found[2])
        return (
            reading(found, self._date(day, month, found[1], self._day_case(found)), "date")
            if is_day(day, month)
            else None
        )

    def _date(self, day: int, month: int, year: str, case: str) -> str:
        words = f"{self._numbers.ordinal(day, 'neuter', case)} {self._genitive[month - 1]}"
        return f"{words} {self._numbers.ordinal(year, 'masculine', 'genitive')} года"

    def _day(self, found: re.Match[str]) -> Reading | None:
        if not 1 <= int(found[1]) <= 31:
            return None
        return reading(found, self._numbers.ordinal(found[1], "neuter", self._day_case(found)), "date")

    def _short_date(self, found: re.Match[str]) -> Reading | None:
        """ "25 дек. 1991 г." """
        if not 1 <= int(found[1]) <= 31:
            return None
        day = self._numbers.ordinal(found[1], "neuter", self._day_case(found))
        said = f"{day} {self._genitive[self._months[found[2]] - 1]}"
        if found[3]:
            said += f" {self._numbers.ordinal(found[3], 'masculine', 'genitive')} года"
        ends = found[0].endswith(".") and not found.string[found.end() :].strip()
        return reading(found, said, "date", end=found.end() - ends)

    def _days(self, found: re.Match[str]) -> Reading | None:
        """ "5–7 мая" -> "с пятого по седьмое мая"."""
        if not (1 <= int(found[1]) <= 31 and 1 <= int(found[2]) <= 31):
            return None
        first = self._numbers.ordinal(found[1], "neuter", "genitive")
        return reading(found, f"с {first} по {self._numbers.ordinal(found[2], 'neuter', 'accusative')}", "range")

    def _day_case(self, found: re.Match[str]) -> str:
        """Named ("сегодня первое декабря"), asked for by a preposition, or by default when ("первого декабря")."""
        before = self._context.word_before(found.string, found.start())
        if before in self._naming:
            return "nominative"
        if before in ("на", "за", "в", "во", "про", "через", "под", "по"):
            return "accusative"
        if before == "с":
            greeted = _GREETED.search(found.string, max(0, found.start() - 40), found.start())
            return "instrumental" if greeted else "genitive"
        case = self._context.governs.get(before, "genitive")
        return "genitive" if case in ("nominative", "accusative") else case

    def _year_with_word(self, found: re.Match[str]) -> Reading | None:
        digits, word = ascii_digits(found[1]), found[2]
        case = self._year_case(found, word)
        if word in _SHORT:
            ancient = _ERA.match(found.string, found.end())
            if not ancient and self._may_be_grams(found, case):
                return None
            said = f"{self._numbers.ordinal(digits, 'masculine', case)} {self._short_year(word, case)}"
            return reading(found, said, "year")
        if _counts(int(digits), word, case):
            return None
        return reading(found, self._numbers.ordinal(digits, "masculine", case), "year", end=found.end(1))

    def _may_be_grams(self, found: re.Match[str], case: str) -> bool:
        """ "200 г муки", "весит 1500 г" are grams; "в 988 г." is a year."""
        before = self._context.word_before(found.string, found.start())
        if int(found[1]) >= 1000:
            return found[2] == "г" and (self._context.takes_object(before) or int(found[1]) > 2100)
        dated = before in self._context.governs or before in self._months
        return len(found[1]) < 3 or not dated or case == "nominative" or (found[2] == "г" and before not in ("в", "к"))

    def _first_year(self, found: re.Match[str]) -> Reading:
        """ "с 1998 по 2003 год", "между 1914 и 1918 годами": the first year stands in its own case before "год"."""
        before = self._context.word_before(found.string, found.start())
        case = "genitive" if before == "с" else self._year_case(found, found[2])
        return reading(found, self._numbers.ordinal(ascii_digits(found[1]), "masculine", case), "year")

    def _season(self, found: re.Match[str]) -> Reading | None:
        """ "сезон 2024/25" -> "две тысячи двадцать четыре — двадцать пять"."""
        if not (is_season(found[1], found[2]) or is_year_pair(found[1], found[2])):
            return None
        after = self._context.words_after(found.string, found.end())
        if case := next((case for word in after[:2] for end, case in _OF_YEAR if word.endswith(end)), ""):
            both = (self._numbers.ordinal(year, "masculine", case) for year in found.groups())
            return reading(found, " — ".join(both), "range")
        said = f"{self._numbers.cardinal(found[1])} — {self._numbers.cardinal(found[2])}"
        return reading(found, said, "range")

    def _year_case(self, found: re.Match[str], word: str) -> str:
        before = self._context.word_before(found.string, found.start())
        if word in _SHORT:
            if before in _AT_A_TIME:
                return "prepositional"
            if before in self._months or before == "с":
                return "genitive"
            if before in ("по", "на", "за", "про", "через"):
                return "nominative"
            alone = not before or before in self._naming or before.endswith(("л", "ло"))
            return self._context.governs.get(before, "nominative" if alone else "genitive")
        return "dative" if word == "году" and before in ("к", "ко", "по", "благодаря") else _FORMS[word]

    def _short_year(self, word: str, case: str) -> str:
        noun = self._numbers.noun("год")
        if word.startswith("гг"):
            return "годов" if case == "genitive" else noun.many(case)
        return noun.one(case)

    def _years(self, found: re.Match[str]) -> Reading | None:
        """ "в 1941–1945 гг." -> "в тысяча девятьсот сорок первом — тысяча девятьсот сорок пятом годах"."""
        first, last, word = ascii_digits(found[1]), ascii_digits(found[2]), found[3]
        case = self._year_case(found, word)
        ends = [self._numbers.ordinal(y, "masculine", case) for y in (first, last)]
        said = " — ".join(ends)
        if word in _SHORT:
            return reading(found, f"{said} {self._short_year('гг.', case)}", "range")
        return reading(found, said, "range", end=found.end(2))

    def _bare_year(self, found: re.Match[str]) -> Reading | None:
        """Four figures without "год": a year after a month, or after "в", "с", "до" where nothing is counted."""
        text = found.string
        before = self._context.word_before(text, found.start())
        if before in self._months:
            return reading(found, f"{self._numbers.ordinal(found[1], 'masculine', 'genitive')} года", "year")
        if not 1000 <= int(found[1]) <= 2100 or self._counts_on(text, found.end(), before):
            return None
        if before in ("по", "до") and _FROM_YEAR.search(text, max(0, found.start() - 12), found.start()):
            said = self._numbers.ordinal(found[1], "masculine", "nominative" if before == "по" else "genitive")
            return reading(found, said, "year", self._numbers.cardinal(found[1]))
        if before in _AT_A_TIME[:2] or (
            before in ("с", "до", "после", "к") and not text[found.end() : found.end() + 2].strip()[:1].isdecimal()
        ):
            case = {"в": "prepositional", "во": "prepositional", "к": "dative"}.get(before, "genitive")
            return reading(
                found, self._numbers.ordinal(found[1], "masculine", case), "year", self._numbers.cardinal(found[1])
            )
        return None

    def _counts_on(self, text: str, end: int, before: str) -> bool:
        """Whether what follows is counted: "в 1999 домах"; not "в 1999 он", "к 1999 завод закрыли"."""
        if further := _TO_FIGURE.match(text, end):
            end = further.end()
        after = self._context.words_after(text, end)
        if not after:
            return text[end : end + 1] in (" ", "\u00a0") and text[end + 1 : end + 2].isalpha()
        if before == "к":
            return after[0].endswith(("ам", "ям", "м"))
        goes_on = after[0] in self._after_years or self._context.is_past(after[0]) or _NAME.match(text, end)
        return not goes_on

    def _from_year(self, found: re.Match[str]) -> Reading | None:
        """ "с 1990 по 2020": two years where nothing is counted."""
        counted = self._counts_on(found.string, found.end(2), "с")
        if counted or self._context.word_before(found.string, found.start()) != "с":
            return None
        said = self._numbers.ordinal(found[1], "masculine", "genitive")
        return reading(found, said, "year", self._numbers.cardinal(found[1]), end=found.end(1))

    def _bare_years(self, found: re.Match[str]) -> Reading | None:
        if not 1000 <= int(found[1]) < int(found[2]) <= 2100:
            return None
        said = " — ".join(self._numbers.ordinal(y, "masculine", "nominative") for y in (found[1], found[2]))
        counted = " — ".join(self._numbers.cardinal(y) for y in (found[1], found[2]))
        return reading(found, said, "range", counted)


def _full_year(year: str) -> str:
    """Two figures mean this century up to 49, the last one from 50 on (common practice, no source)."""
    plain = ascii_digits(year)
    return plain if len(plain) == 4 else str((2000 if int(plain) < 50 else 1900) + int(plain))


def _counts(n: int, word: str, case: str) -> bool:
    """Whether "21 год", "2 года" may be a stretch of years: the form agrees, and it is not as long as a date."""
    if n >= 1000:
        return False
    kind = plural_class(n)
    agrees = (kind == "one" and word in ("год", "года", "году")) or (kind == "few" and word == "года")
    plural = word in ("годам", "годами", "годах")
    return (agrees and not (word == "году" and case == "prepositional")) or plural
