"""Arabic dates, clock times and lengths of time."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.ar_context import FIRST_END, GAP, ArabicContext, Setting, attach
from promptprep.speaking.languages.ar_numbers import AND, ArabicNumbers, counted
from promptprep.speaking.languages.ar_years import ArabicYears
from promptprep.speaking.ruled import Handler, is_day, one_of, reading, word_before

NEAR = 16  # characters before an hour that may hold another
_ZONE = re.compile(r"\s?بتوقيت")
_MORNING = re.compile(r"\d\s?ص")


class ArabicTimes:
    """Handlers for dates and times; those for years come with them."""

    def __init__(self, data: LanguageData, numbers: ArabicNumbers, context: ArabicContext) -> None:
        self._numbers = numbers
        self._context = context
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._months: Mapping[str, int] = data.get("spoken", "months")
        self._names: list[str] = data.get("spoken", "months_in_order.names")
        self._islamic: list[str] = data.get("spoken", "months_in_order.islamic")
        self._eras = {written: said.split("|") for written, said in data.get("spoken", "eras").items()}
        self._halves: Mapping[str, str] = data.get("spoken", "halves")
        self._part = rf"(?:{one_of(self._word['day_parts'].split())})[\u064b-\u0652\u0627]*(?!\w)"
        self._before_hour = re.compile(rf"\d{GAP}{self._part}{GAP}?\Z")
        self._after_hour = re.compile(rf"{GAP}\d{{1,2}}(?::\d\d)?{GAP}{self._part}")
        self.years = ArabicYears(data, numbers, context)
        self._lasting_words, self._timed_words, self._durations, self._recorded = (
            frozenset(self._word[key].split()) for key in ("lasting", "timed", "duration", "recorded")
        )
        names = ("ساعة", "دقيقة", "ثانية")
        self._share = counted({"one": self._word["share"], "many": self._word["share_many"]})
        self._one_hour, self._minute, self._second = (counted(data.get("spoken", f"units.{u}")) for u in names)

    def rules(self) -> list[tuple[str, Handler]]:
        month = rf"(?:{one_of(self._months)})(?!\w)"
        era = rf"(?:{GAP}?(?P<era>{one_of(self._eras)})(?!\w))?"
        part = self._part
        half = rf"(?:{GAP}?(?P<half>{one_of(self._halves)})(?![\w.]))?"
        lengths = "(?:ساعة|ساعات|دقيقة|دقائق|ثانية|ثوان|ثوانٍ)"
        return [
            (rf"(\d{{1,2}})([/.-])(\d{{1,2}})\2(\d{{4}})(?!\d){era}", self._numeric_date),
            (rf"(\d{{4}})([/-])(\d{{1,2}})\2(\d{{1,2}})(?!\d){era}", self._iso_date),
            (r"(\d{1,2})(/)(\d{1,2})/(\d{2})(?![\d/])(?P<era>)", self._numeric_date),
            (r"(\d{1,2})/(\d{1,2})(?![\d/])", self._day_and_month),
            (rf"(\d{{1,2}}){GAP}?[-–—]{GAP}?(\d{{1,2}})(?={GAP}{month})", self._days),
            (rf"(\d{{1,2}})(?={GAP}(?:إلى|حتى|أو){GAP}\d{{1,2}}{GAP}{month})", self._first_day),
            (rf"(\d{{1,2}})(?=(?:{GAP}و{GAP}?\d{{1,2}}){{1,5}}{GAP}{month})", self._first_day),
            (rf"(\d{{1,2}})(?={GAP}من{GAP}(?:شهر{GAP})?{month})", self._first_day),
            (rf"(\d{{1,2}})(?={GAP}{month})", self._day),
            (r"(\d{1,2}):(\d{2})[ \u00a0]?[-–—][ \u00a0]?(\d{1,2}):(\d{2})(?![\d:])", self._clock_range),
            (rf"(\d{{1,3}}):(\d{{2}}){GAP}(ساعة|ساعات|دقيقة|دقائق)(?!\w)", self._length),
            (rf"(\d{{1,2}}):([0-5]\d):([0-5]\d){GAP}ساع(?:ة|ات)(?!\w)", self._full_length),
            (
                rf"(?:(\d{{1,2}}):)?(\d{{1,2}}):([0-5]\d)[.,٫](\d{{1,3}})(?![\d:.])(?:{GAP}{lengths}(?!\w))?",
                self._timed,
            ),
            (r"(\d{1,2}):(\d{2})(?::(\d{2}))?(?![\d:])" + half, self._clock),
            (rf"(\d{{1,2}})(?={GAP}{part})", self._hour_of_day),
            (rf"(\d{{1,2}})(?={GAP}(?:و{GAP}?|(?:إلى|حتى|أو){GAP})\d{{1,2}}{GAP}{part})", self._hour_of_day),
            (r"(\d{1,2})(?![\d.,:٫٬/])" + half, self._hour),
            (rf"(\d{{1,2}}){GAP}?(?P<half>[صم])(?![\w.])(?!{GAP}?\d)", self._short_hour),
            *self.years.rules(),
        ]

    def dash_rules(self) -> list[tuple[str, Handler]]:
        """ "20 يناير - 5 فبراير", "8 صباحا - 4 مساء", "من 10 أمتار - 20 مترا": between two ends a dash is "to"."""
        return [
            (rf"[-–—](?={GAP}\d{{1,2}}{GAP}(?:{one_of(self._months)})(?!\w))", self._dash),
            (rf"[-–—](?={GAP}\d)", self._dash_between),
        ]

    def _dash_between(self, found: re.Match[str]) -> Reading | None:
        head = found.string[max(0, found.start() - NEAR) : found.start()]
        after = self._after_hour.match(found.string, found.end())
        hours = after and self._before_hour.search(head)
        return reading(found, self._word["to"], "range") if hours or FIRST_END.search(head) else None

    def other_name_rule(self) -> tuple[str, Handler]:
        """ "نوفمبر/تشرين الثاني": a month by both its names."""
        return rf"/{GAP}?(?P<name>{one_of(self._months)})(?!\w)", self._other_name

    def _other_name(self, found: re.Match[str]) -> Reading | None:
        named = self.years.after_month(found.string, found.start())
        return reading(found, f" {found['name']}", "date") if named else None

    def _dash(self, found: re.Match[str]) -> Reading | None:
        before = word_before(found.string, found.start())
        return reading(found, self._word["to"], "range") if before in self._months else None

    def _setting(self, found: re.Match[str]) -> Setting:
        return self._context.setting(found.string, found.start(), found.end(1), 0)

    def _date(self, day: int, month: int, year: str, era: str | None) -> str:
        name = (self._islamic if era and self._eras[era][0] == "هجري" else self._names)[month - 1]
        tail = f" {self._eras[era][0]}" if era else ""
        said = f"{self._numbers.ordinal(day)} {self._word['of']} {name} {self._word['year']} {self.years.said(year)}"
        return said + tail

    def _numeric_date(self, found: re.Match[str]) -> Reading | None:
        day, month, era = int(found[1]), int(found[3]), found["era"]
        year = found[4] if len(found[4]) > 2 else f"20{found[4]}"
        swapped = not is_day(day, month)
        if swapped:
            day, month = month, day
        if not is_day(day, month):
            return None
        other = [self._date(month, day, year, era)] if found[2] != "." and not swapped and is_day(month, day) else []
        return reading(found, self._date(day, month, year, era), "date", *other)

    def _day_and_month(self, found: re.Match[str]) -> Reading | None:
        """ "31/8", and "5/6" after a word for the day."""
        day, month = int(found[1]), int(found[2])
        setting = self._setting(found)
        surely = day > 12 and found[0] != self._word["always"]
        if not is_day(day, month) or not (surely or setting.before in self._word["day_after"].split()):
            return None
        said = f"{self._numbers.ordinal(day)} {self._word['of']} {self._names[month - 1]}"
        return Reading(Span(setting.start, found.end()), attach(setting.prefix, said), "date")

    def _iso_date(self, found: re.Match[str]) -> Reading | None:
        day, month = int(found[4]), int(found[3])
        if not is_day(day, month):
            return None
        return reading(found, self._date(day, month, found[1], found["era"]), "date")

    def _day(self, found: re.Match[str]) -> Reading | None:
        """ "12 مايو" -> "الثاني عشر من مايو"; the month stays as written."""
        if not 1 <= int(found[1]) <= 31:
            return None
        setting = self._setting(found)
        case = "nominative" if self._context.begins(found.string, setting.start) else "oblique"
        said = attach(setting.prefix, f"{self._numbers.ordinal(int(found[1]), case=case)} {self._word['of']}")
        return Reading(Span(setting.start, found.end()), said, "date")

    def _first_day(self, found: re.Match[str]) -> Reading | None:
        """ "من 5 إلى 10 يناير": the first day is an ordinal too."""
        if not 1 <= int(found[1]) <= 31:
            return None
        setting = self._setting(found)
        said = attach(setting.prefix, self._numbers.ordinal(int(found[1])))
        return Reading(Span(setting.start, found.end()), said, "date")

    def _days(self, found: re.Match[str]) -> Reading | None:
        """ "5-10 يناير" -> "من الخامس إلى العاشر من يناير"."""
        first, last = int(found[1]), int(found[2])
        if not (1 <= first <= 31 and 1 <= last <= 31):
            return None
        word, before = self._word, self._setting(found).before
        if before in word["both_after"].split():
            ends = f"{self._numbers.ordinal(first)} {AND}{self._numbers.ordinal(last)}"
            return reading(found, f"{ends} {word['of']}", "range")
        lead = "" if before == word["from"] else f"{word['from']} "
        ends = f"{self._numbers.ordinal(first)} {word['to']} {self._numbers.ordinal(last)}"
        return reading(found, f"{lead}{ends} {word['of']}", "range")

    def _clock(self, found: re.Match[str]) -> Reading | None:
        hours, minutes = int(found[1]), int(found[2])
        seconds = int(found[3]) if found[3] else 0
        if hours > 24 or minutes > 59 or seconds > 59:
            return None
        half = found["half"]
        if seconds and not half and self._lasts(found):
            return reading(found, self._lasting(hours, minutes, seconds, self._setting(found).case), "measure")
        if not found[3] and not half and (parts := self._short_length(found, hours, minutes)):
            return reading(found, self._lasting(*parts, self._setting(found).case), "measure")
        return reading(found, self._said(hours, minutes, seconds, self._clock_case(found)) + self._half(half), "clock")

    def _short_length(self, found: re.Match[str], first: int, second: int) -> tuple[int, int, int] | None:
        """ "مدة المقطع 3:25" has minutes and seconds, "مدة الرحلة 3:25" hours and minutes; None for a time of day."""
        words = found.string[max(0, found.start() - 32) : found.start()].split()[-3:]
        if any(w.endswith("الساعة") for w in words) or _ZONE.match(found.string, found.end()):
            return None
        if not self._timed_words.isdisjoint(words[-2:]):
            return 0, first, second
        if self._durations.isdisjoint(words[-3:]):
            return None
        return (0, first, second) if not self._recorded.isdisjoint(words) else (first, second, 0)

    def _timed(self, found: re.Match[str]) -> Reading:
        """ "1:58.21" -> "دقيقة وثمان وخمسون ثانية وواحد وعشرون جزءًا من المئة"."""
        case = self._setting(found).case
        said = self._lasting(int(found[1] or 0), int(found[2]), int(found[3]), case)
        share = self._word["shares_of_second"].split()[len(found[4]) - 1]
        small = self._numbers.count(found[4].lstrip("0٠") or "0", self._share, case)
        return reading(found, f"{said} {AND}{small} {self._word['of']} {share}", "measure")

    def _full_length(self, found: re.Match[str]) -> Reading:
        """ "2:09:45 ساعة"."""
        hours, minutes, seconds = (int(found[n]) for n in (1, 2, 3))
        return reading(found, self._lasting(hours, minutes, seconds, self._setting(found).case), "measure")

    def _clock_range(self, found: re.Match[str]) -> Reading | None:
        """ "9:00-18:00" -> "من التاسعة إلى الثامنة عشرة"."""
        times = [(int(found[1]), int(found[2])), (int(found[3]), int(found[4]))]
        if any(h > 24 or m > 59 for h, m in times):
            return None
        first, last = (self._said(h, m, 0, "oblique") for h, m in times)
        lead = "" if self._setting(found).before == self._word["from"] else f"{self._word['from']} "
        return reading(found, f"{lead}{first} {self._word['to']} {last}", "range")

    def _clock_case(self, found: re.Match[str]) -> str:
        """After "في الساعة" and its like the minutes stand in the genitive too."""
        setting = self._setting(found)
        if setting.before not in ("الساعة", "ساعة"):
            return setting.case
        place = found.string.rindex("الساعة"[-4:], 0, found.start())
        words = found.string[max(0, place - 24) : place].removesuffix("ال").split()
        return "oblique" if words and self._context.governs(words[-1]) else "nominative"

    def _half(self, half: str | None) -> str:
        return f" {self._halves[half]}" if half else ""

    def _hour(self, found: re.Match[str]) -> Reading | None:
        """A full hour: "الساعة 9" -> "الساعة التاسعة"."""
        if not self._setting(found).before.endswith("الساعة") or not 1 <= int(found[1]) <= 24:
            return None
        setting = self._setting(found)
        said = self._hours(int(found[1]), self._clock_case(found)) + self._half(found["half"])
        return Reading(Span(setting.start, found.end()), attach(setting.prefix, said), "clock")

    def _hour_of_day(self, found: re.Match[str]) -> Reading | None:
        """ "بين 9 و11 صباحًا": a part of the day makes a figure an hour."""
        setting = self._setting(found)
        lone = found.string[max(0, setting.start - 4) : setting.start].rstrip()[-1:] in ("", "-", "–", "—", "•")
        named = (lone or self._context.is_noun(setting.before)) and setting.written.endswith(("ا", "اً", "ًا", "ء", "ءً"))
        if not 1 <= int(found[1]) <= 12 or not (setting.prefix or named or self._context.governs(setting.before)):
            return None
        case = "oblique" if setting.before != "الساعة" else self._clock_case(found)
        return Reading(
            Span(setting.start, found.end()), attach(setting.prefix, self._hours(int(found[1]), case)), "clock"
        )

    def _short_hour(self, found: re.Match[str]) -> Reading | None:
        """ "من 9 ص إلى 5 م": "م" is the evening only beside a morning, else it is metres."""
        text, start = found.string, found.start()
        if found["half"] == "م" and not _MORNING.search(text, max(0, start - NEAR), start):
            return None
        setting = self._setting(found)
        if not 1 <= int(found[1]) <= 12:
            return None
        said = self._hours(int(found[1]), setting.case) + self._half(found["half"])
        return Reading(Span(setting.start, found.end()), attach(setting.prefix, said), "clock")

    def _length(self, found: re.Match[str]) -> Reading | None:
        """ "1:30 ساعة" -> "ساعة ونصف", "2:20 ساعة" -> "ساعتان وعشرون دقيقة"."""
        first, second, case = int(found[1]), int(found[2]), self._setting(found).case
        if second > 59 or not first:
            return None
        if found[3].startswith("د"):
            return reading(found, self._lasting(0, first, second, case), "measure")
        if second not in (15, 30):
            return reading(found, self._lasting(first, second, 0, case), "measure")
        short = self._word["quarter" if second == 15 else "half"].removeprefix("ال")
        hours = self._one_hour.one if first == 1 else self._numbers.count(found[1], self._one_hour, case)
        return reading(found, f"{hours} {AND}{short}", "measure")

    def _lasts(self, found: re.Match[str]) -> bool:
        """Whether "2:09:45" is a length: nobody speaks of "the hour", and it is short or words of lasting are near."""
        words = found.string[max(0, found.start() - 32) : found.start()].split()[-4:]
        if any(w.endswith("الساعة") for w in words) or _ZONE.match(found.string, found.end()):
            return False
        return len(found[1]) == 1 or bool(self._lasting_words.intersection(words))

    def _lasting(self, hours: int, minutes: int, seconds: int, case: str) -> str:
        """ "ساعتان وتسع دقائق وخمس وأربعون ثانية"."""
        parts = zip((hours, minutes, seconds), (self._one_hour, self._minute, self._second), strict=True)
        said = (noun.one if n == 1 else self._numbers.count(str(n), noun, case) for n, noun in parts if n)
        return f" {AND}".join(said)

    def _hours(self, hours: int, case: str) -> str:
        if hours % 12 == 1 and hours == 1:
            return self._word["one_o_clock"]
        return self._numbers.ordinal(hours or 12, feminine=True, case=case)

    def _said(self, hours: int, minutes: int, seconds: int, case: str) -> str:
        """ "التاسعة وأربعون دقيقة", "الثالثة والنصف", "الثالثة والربع", "الرابعة إلا الربع".

        Quarters and halves belong to the twelve-hour clock; other hours are said with their minutes.
        """
        everyday = 1 <= hours <= 12 and not seconds
        if minutes == 45 and everyday:
            return f"{self._hours(hours % 12 + 1, case)} {self._word['less_a_quarter']}"
        short = {15: self._word["quarter"], 30: self._word["half"]}.get(minutes) if everyday else None
        parts = [self._hours(hours, case)]
        if minutes:
            parts.append(short or self._numbers.count(str(minutes), self._minute, case))
        if seconds:
            parts.append(self._numbers.count(str(seconds), self._second, case))
        return f" {AND}".join(parts)
