"""Arabic years: beside a word for the year, with an era, after what happened in them."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.ar_context import GAP, ArabicContext, Setting, attach, bare
from promptprep.speaking.languages.ar_numbers import AND, ArabicNumbers
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import Handler, one_of, reading, word_before

LAST_LIKELY_YEAR = 2100


class ArabicYears:
    """Handlers for years and centuries."""

    def __init__(self, data: LanguageData, numbers: ArabicNumbers, context: ArabicContext) -> None:
        self._numbers = numbers
        self._context = context
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._months: Mapping[str, int] = data.get("spoken", "months")
        self._eras = {written: said.split("|") for written, said in data.get("spoken", "eras").items()}
        self._feminine_years = frozenset(data.get("spoken", "year_words.feminine"))
        self._masculine_years = frozenset(data.get("spoken", "year_words.masculine"))
        self._dated = frozenset(self._word["dated"].split())

    def rules(self) -> list[tuple[str, Handler]]:
        return [
            (rf"(\d{{1,4}}){GAP}?(ه|هـ){GAP}?[/–-]{GAP}?(\d{{3,4}}){GAP}?(م)(?!\w)", self._two_eras),
            (rf"(\d{{1,2}}){GAP}?(?P<era>{one_of(self._eras)})(?!\w)", self._century),
            (rf"(\d{{1,4}})(?![.,:٫٬/]?\d){GAP}?(?P<era>{one_of(self._eras)})(?!\w)", self._year_of_era),
            (rf"([12١٢]\d{{3}}){GAP}?[-–]{GAP}?([12١٢]\d{{3}})(?![.,:٫٬/]?\d)", self._years),
            (r"([12١٢]\d{3})(?![.,:٫٬/]?\d)", self._bare_year),
        ]

    def _setting(self, found: re.Match[str]) -> Setting:
        return self._context.setting(found.string, found.start(), found.end(1), 0)

    def said(self, digits: str, feminine: bool = False) -> str:
        """A year stands in the genitive: "ألفين وستة وعشرين"; after "سنة" its units are feminine."""
        return self._numbers.cardinal(ascii_digits(digits), feminine=feminine, case="oblique")

    def _year_of_era(self, found: re.Match[str]) -> Reading | None:
        before = self._setting(found).before
        feminine = before in self._feminine_years
        known = self._feminine_years | self._masculine_years | {self._word["same_as"]}
        if before not in known and not self._says_era(found):
            return None
        era = self._eras[found["era"]][1 if feminine else 0]
        return reading(found, f"{self.said(found[1], feminine)} {era}", "year")

    def _century(self, found: re.Match[str]) -> Reading | None:
        """ "القرن 7 م" -> "القرن السابع الميلادي"."""
        if self._setting(found).before not in self._word["centuries"].split():
            return None
        era = self._eras[found["era"]][0]
        named = era if " " in era else f"ال{era.removesuffix('ة')}"
        return reading(found, f"{self._numbers.ordinal(int(found[1]))} {named}", "year")

    def _years(self, found: re.Match[str]) -> Reading | None:
        """ "بين عامي 2010-2015": two years after a word for the year."""
        before = self._setting(found).before
        known = before in self._feminine_years | self._masculine_years or self._dates(found.string, found.start())
        if not known or not int(found[1]) < int(found[2]) <= LAST_LIKELY_YEAR:
            return None
        link = AND if before == self._word["two_years"] else f"{self._word['to']} "
        years = [self.said(found[n], before in self._feminine_years) for n in (1, 2)]
        return reading(found, f" {link}".join(years), "range")

    def is_feminine_year(self, before: str) -> bool:
        """Whether a figure after this word has feminine units: "سنة 85"."""
        return before in self._feminine_years

    def _two_eras(self, found: re.Match[str]) -> Reading:
        """ "480 هـ/1087 م": the same year by two calendars."""
        eras = [f"{self.said(found[n])} {self._eras[found[n + 1]][0]}" for n in (1, 3)]
        return reading(found, f" {self._word['same_as']} ".join(eras), "year")

    @staticmethod
    def _says_era(found: re.Match[str]) -> bool:
        """Whether what follows is an era without a word for the year before: "م" apart may be metres."""
        short = found["era"] == "م"
        return len(found[1]) == 4 and found.end(1) == found.start("era") if short else len(found[1]) > 2

    def _bare_year(self, found: re.Match[str]) -> Reading | None:
        setting = self._setting(found)
        before, text = setting.before, found.string
        if self.after_month(text, found.start()):
            return reading(found, f"{self._word['year']} {self.said(found[1])}", "year")
        if before in self._feminine_years or before in self._masculine_years:
            said = attach(setting.prefix, self.said(found[1], before in self._feminine_years))
            return Reading(Span(setting.start, found.end()), said, "year")
        n = int(found[1])
        likely = 1000 <= n <= LAST_LIKELY_YEAR and not self._context.may_count(setting, n)
        likely = likely and (before in self._word["years_after"].split() or self._dates(text, setting.start))
        if likely and not setting.prefix:
            return reading(found, self.said(found[1]), "year", self._numbers.cardinal(ascii_digits(found[1])))
        return None

    def _dates(self, text: str, start: int) -> bool:
        """Whether what happens in a year stands before: "صيف 2025", "كأس العالم 2026"."""
        return any(bare(w) in self._dated for w in text[max(0, start - 28) : start].split()[-3:])

    def after_month(self, text: str, start: int) -> bool:
        """Whether a month's name, of one word or two, stands before."""
        last = word_before(text, start)
        if last in self._months:
            return True
        words = re.split(r"[\s/]+", text[max(0, start - 32) : start].rstrip())
        return " ".join(words[-2:]) in self._months
