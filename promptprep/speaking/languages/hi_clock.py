"""Hindi dates, years and clock times."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.hi_numbers import HindiNumbers
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import Handler, is_day, one_of, reading, word_before

GAP = "[ \u00a0\u202f]"
_END = r"(?![\w\u0900-\u0963])"

_NEXT = re.compile(rf"{GAP}([\u0900-\u0963]+)")
_AND_YEAR = re.compile(rf"(?:{GAP}(?:और|या|तथा|व|एवं|से){GAP}(?:1\d|20)\d\d)?")  # another year that a word follows
_DAY = re.compile(rf"{GAP}\d{{1,2}}\Z")


class HindiClock:
    """Handlers for dates, years and clock times."""

    def __init__(self, data: LanguageData, numbers: HindiNumbers) -> None:
        self._numbers = numbers
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._months: Mapping[str, int] = data.get("spoken", "months")
        self._names: list[str] = data.get("spoken", "months_in_order.names")
        self._halves: Mapping[str, str] = {h[0]: data.get("spoken", f"units.{h}") for h in ("am", "pm")}
        self._hour: list[str] = data.get("spoken", "units.h").split("|")
        self._parts: list[str] = data.get("spoken", "parts_of_day.names")
        self._before_year = frozenset(data.get("spoken", "beside_a_year.before"))
        self._after_year = tuple(data.get("spoken", "beside_a_year.after"))

    def rules(self) -> list[tuple[str, Handler]]:
        o_clock = self._word["o_clock"]
        bell = rf"(?:{GAP}?{o_clock}{_END})?"
        half = rf"(?:{GAP}?(?P<half>[AaPp])\.?[Mm]\.?(?!\w))?"
        return [
            (r"(\d{1,2})([/.-])(\d{1,2})\2(\d{4})(?!\d)", self._numeric_date),
            (r"(\d{4})-(\d{2})-(\d{2})(?!\d)", self._iso_date),
            (r"(\d{1,2})/(\d{1,2})(?![\d/])", self._day_and_month),
            (rf"(\d{{1,2}})(?={GAP}{one_of(self._months)}{_END})", self._day),
            (r"(\d{1,2}):(\d{2})[ \u00a0]?[-–—][ \u00a0]?(\d{1,2}):(\d{2})(?![\d:])" + bell, self._clock_range),
            (
                rf"(\d{{1,2}}):(\d{{2}})(?::(\d{{2}}))?(?![\d:]|,\d)(?:{GAP}?(?P<bell>{o_clock}){_END})?{half}",
                self._clock,
            ),
            (rf"(\d{{1,2}})\.(\d{{2}})(){GAP}?(?P<bell>{o_clock}){_END}", self._clock),
            (rf"(\d{{1,2}})()(){GAP}?(?P<half>[AaPp])\.?[Mm]\.?(?!\w)", self._clock),
        ]

    def short_date_rule(self) -> tuple[str, Handler]:
        """For "7/4/26", before what is a row of figures."""
        return r"(\d{1,2})([/-])(\d{1,2})\2(\d{2})(?![\d/-])", self._numeric_date

    def is_year(self, text: str, start: int, end: int, n: int) -> bool:
        """Four figures are a year beside "सन", "साल" or a month, or before "में", "से", "तक" with nothing counted."""
        if not 1000 <= n <= 2100:
            return False
        if text[max(0, start - 2) : start] == ", ":
            start -= 2
            if day := _DAY.search(text, max(0, start - 4), start):
                start = day.start()
        before = word_before(text, start)
        if before in self._before_year or before in self._months:
            return True
        after = _NEXT.match(text, _AND_YEAR.match(text, end).end())  # type: ignore[union-attr]
        return bool(after and after[1] in self._after_year)

    def _date(self, day: int, month: int, year: str) -> str:
        return f"{self._numbers.cardinal(day)} {self._names[month - 1]} {self._numbers.year(ascii_digits(year))}"

    def _numeric_date(self, found: re.Match[str]) -> Reading | None:
        day, month, year = int(found[1]), int(found[3]), found[4]
        year = year if len(year) == 4 else f"20{ascii_digits(year)}"
        swapped = not is_day(day, month)
        if swapped:
            day, month = month, day
        if not is_day(day, month):
            return None
        other = [self._date(month, day, year)] if found[2] != "." and not swapped and is_day(month, day) else []
        return reading(found, self._date(day, month, year), "date", *other)

    def _iso_date(self, found: re.Match[str]) -> Reading | None:
        day, month = int(found[3]), int(found[2])
        return reading(found, self._date(day, month, found[1]), "date") if is_day(day, month) else None

    def _day_and_month(self, found: re.Match[str]) -> Reading | None:
        """ "25/12 को", and "5/6" after a word for the date."""
        day, month = int(found[1]), int(found[2])
        after = _NEXT.match(found.string, found.end())
        surely = day > 12 and after is not None and after[1] in self._word["day_after"].split()
        if word_before(found.string, found.start()) not in self._word["day_before"].split() and not surely:
            return None
        said = f"{self._numbers.cardinal(day)} {self._names[month - 1]}" if is_day(day, month) else ""
        return reading(found, said, "date") if said else None

    def _day(self, found: re.Match[str]) -> Reading | None:
        if not 1 <= int(found[1]) <= 31:
            return None
        return reading(found, self._numbers.cardinal(ascii_digits(found[1])), "date")

    def _clock(self, found: re.Match[str]) -> Reading | None:
        hours, minutes = int(found[1]), int(found[2] or 0)
        seconds = int(found[3] or 0)
        if hours > 24 or minutes > 59 or seconds > 59:
            return None
        said, half = self._said(hours, minutes, seconds), found.groupdict().get("half")
        if found[3] and not found["bell"] and not half and self._lasts(found):
            return reading(found, self._lasting(hours, minutes, seconds), "measure")
        if not half:
            return reading(found, said, "clock")
        part = self._part_of_day(hours % 12, half.lower())
        named = word_before(found.string, found.start()) in self._parts
        by_letters = f"{said} {self._halves[half.lower()]}"
        return reading(found, said if named else f"{part} {said}", "clock", by_letters)

    def _lasts(self, found: re.Match[str]) -> bool:
        """Whether "2:09:45" is a length: few hours, or what follows speaks of it; no part of the day before it."""
        after = _NEXT.match(found.string, found.end())
        during = after is not None and after[1] in self._word["length_after"].split()
        return (len(found[1]) == 1 or during) and word_before(found.string, found.start()) not in self._parts

    def _lasting(self, hours: int, minutes: int, seconds: int) -> str:
        """ "दो घंटे नौ मिनट पैंतालीस सेकंड"."""
        hour = self._hour[0 if hours == 1 else 1]
        parts = zip((hours, minutes, seconds), (hour, self._word["minute"], self._word["second"]), strict=True)
        return " ".join(f"{self._numbers.cardinal(n)} {word}" for n, word in parts if n)

    def _part_of_day(self, hour: int, half: str) -> str:
        """What Hindi puts before an hour of the half day: night to four, morning to noon, then noon and evening."""
        night, morning, noon, evening = self._parts
        if half == "a":
            return night if hour < 4 else morning
        return noon if hour < 4 else evening if hour < 8 else night

    def _clock_range(self, found: re.Match[str]) -> Reading | None:
        """ "9:00–18:00" -> "नौ बजे से अठारह बजे"."""
        times = [(int(found[1]), int(found[2])), (int(found[3]), int(found[4]))]
        if any(h > 24 or m > 59 for h, m in times):
            return None
        return reading(found, f" {self._word['range']} ".join(self._said(h, m, 0) for h, m in times), "range")

    def _said(self, hours: int, minutes: int, seconds: int) -> str:
        """ "नौ बजकर चालीस मिनट"; quarters of the twelve-hour clock: "सवा नौ बजे", "साढ़े नौ बजे", "पौने दस बजे"."""
        word, say = self._word, self._numbers.cardinal
        if not minutes and not seconds:
            return f"{say(hours)} {word['o_clock']}"
        if minutes in (15, 30, 45) and not seconds and 1 <= hours <= 12:
            return f"{self._numbers.quarters(hours, minutes // 15, 12)} {word['o_clock']}"
        tail = f" {say(seconds)} {word['second']}" if seconds else ""
        return f"{say(hours)} {word['past']} {say(minutes)} {word['minute']}{tail}"
