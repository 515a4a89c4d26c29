"""Swahili dates and clock times."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.sw_numbers import SwahiliNumbers
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import Handler, is_day, one_of, reading, word_before

MOST_MONTHS = 12
GAP = "[ \u00a0\u202f]"


class SwahiliClock:
    """Handlers for dates and clock times."""

    def __init__(self, data: LanguageData, numbers: SwahiliNumbers) -> None:
        self._numbers = numbers
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._months: Mapping[str, int] = data.get("spoken", "months")
        self._days = frozenset(self._word["days"].split())
        self._names: list[str] = data.get("spoken", "months_in_order.names")
        parts: Mapping[str, str] = data.get("spoken", "day_parts")
        self._parts = sorted(((int(hour), part) for hour, part in parts.items()), reverse=True)

    def rules(self) -> list[tuple[str, Handler]]:
        month = f"(?i:{one_of(self._months)})(?!\\w)"
        return [
            (r"(\d{1,2})([/.-])(\d{1,2})\2(\d{4})(?!\d)", self._numeric_date),
            (r"(\d{4})-(\d{2})-(\d{2})(?!\d)", self._iso_date),
            (r"(\d{1,2})(/)(\d{1,2})/(\d{2})(?![\d/])", self._numeric_date),
            (r"(\d{1,2})/(\d{1,2})(?![\d/])", self._day_and_month),
            (rf"(\d{{1,2}})(?={GAP}{month})", self._day),
            (r"(\d{1,2}):(\d{2})[ \u00a0]?[-–—][ \u00a0]?(\d{1,2}):(\d{2})(?![\d:])", self._clock_range),
            (
                rf"(\d{{1,2}})[:.](\d{{2}})(?::(\d{{2}}))?(?:{GAP}?(?P<half>[ap]\.?m\.?)(?!\w))?(?![:.]?\d)",
                self._clock,
            ),
            (rf"(\d{{1,2}}){GAP}?(?P<half>[ap]\.?m\.?)(?!\w)", self._hour),
        ]

    def _numeric_date(self, found: re.Match[str]) -> Reading | None:
        day, month, year = int(found[1]), int(found[3]), found[4]
        year = year if len(year) == 4 else f"20{ascii_digits(year)}"
        swapped = not is_day(day, month)
        if swapped:
            day, month = month, day
        if not is_day(day, month):
            return None
        other = [self._date(found, month, day, year)] if found[2] == "/" and not swapped and is_day(month, day) else []
        return reading(found, self._date(found, day, month, year), "date", *other)

    def _day_and_month(self, found: re.Match[str]) -> Reading | None:
        """ "30/6", and "5/6" after "tarehe"."""
        day, month = int(found[1]), int(found[2])
        dated = word_before(found.string, found.start()) == self._word["date"]
        if not is_day(day, month) or not (dated or day > MOST_MONTHS) or found[0] == self._word["always"]:
            return None
        said = f"{self._day_word(day)} {self._names[month - 1]}"
        return reading(found, said if dated else f"{self._word['date']} {said}", "date")

    def dash_rule(self) -> tuple[str, Handler]:
        """ "Machi–Mei", "Jumatatu-Ijumaa": between two months or two days a dash is "to"."""
        names = one_of([*self._months, *self._days])
        return rf"[-–—](?={GAP}?(?i:{names})(?!\w))", self._dash

    def _dash(self, found: re.Match[str]) -> Reading | None:
        before = word_before(found.string, found.start())
        return reading(found, self._word["range"], "range") if before in self._months or before in self._days else None

    def _iso_date(self, found: re.Match[str]) -> Reading | None:
        day, month = int(found[3]), int(found[2])
        return reading(found, self._date(found, day, month, found[1]), "date") if is_day(day, month) else None

    def _date(self, found: re.Match[str], day: int, month: int, year: str) -> str:
        """ "tarehe kumi na mbili Mei elfu mbili ishirini na sita"; "tarehe" is said once."""
        said = f"{self._day_word(day)} {self._names[month - 1]} {self._numbers.cardinal(ascii_digits(year))}"
        return (
            said if word_before(found.string, found.start()) == self._word["date"] else f"{self._word['date']} {said}"
        )

    def _day(self, found: re.Match[str]) -> Reading | None:
        return reading(found, self._day_word(int(found[1])), "date") if 1 <= int(found[1]) <= 31 else None

    def _day_word(self, day: int) -> str:
        """The first of a month has a word of its own, "mosi"."""
        return self._word["first_of_month"] if day == 1 else self._numbers.cardinal(day)

    def _clock(self, found: re.Match[str]) -> Reading | None:
        hours, minutes = int(found[1]), int(found[2])
        after_saa = word_before(found.string, found.start()) == self._word["hour"]
        dotted = found[0][len(found[1])] == "."
        if hours > 24 or minutes > 59 or (dotted and not (after_saa or found["half"])):
            return None
        seconds = int(found[3]) if found[3] else 0
        said = self._said(hours, minutes, seconds, found["half"], self._part_follows(found))
        if after_saa:
            return reading(found, said, "clock")
        hour, other = self._word["hour"], []
        if not found["half"] and 1 <= hours <= 12:  # without "saa" the hours may be international
            other = [f"{hour} {self._swahili_hours((hours + 6) % 12 or 12, minutes, seconds)}"]
        return reading(found, f"{hour} {said}", "clock", *other)

    def _clock_range(self, found: re.Match[str]) -> Reading | None:
        """ "2:00-4:00" -> "saa mbili hadi saa nne"."""
        times = [(int(found[1]), int(found[2])), (int(found[3]), int(found[4]))]
        if any(h > 24 or m > 59 for h, m in times):
            return None
        hour = self._word["hour"]
        half = "" if any(h > 12 or h == 0 for h, _ in times) else None
        first, last = (self._said(h, m, 0, half, self._part_follows(found)) for h, m in times)
        lead = "" if word_before(found.string, found.start()) == hour else f"{hour} "
        return reading(found, f"{lead}{first} {self._word['range']} {hour} {last}", "range")

    def _hour(self, found: re.Match[str]) -> Reading | None:
        if not 1 <= int(found[1]) <= 12:
            return None
        said = self._said(int(found[1]), 0, 0, found["half"], self._part_follows(found))
        after_saa = word_before(found.string, found.start()) == self._word["hour"]
        return reading(found, said if after_saa else f"{self._word['hour']} {said}", "clock")

    def _part_follows(self, found: re.Match[str]) -> bool:
        """Whether the copy itself names the part of the day."""
        rest = found.string[found.end() : found.end() + 20]
        return bool(
            re.match(rf"{GAP}(?:(?:ya|za){GAP})?(?:{'|'.join({p for _, p in self._parts})}|alasiri|adhuhuri)\b", rest)
        )

    def _said(self, hours: int, minutes: int, seconds: int, half: str | None, named: bool) -> str:
        part = ""
        if half:  # "" says that the hours are international but not which half
            hours = hours % 12 + (12 if half.lower().startswith("p") else 0)
        if half is not None or hours > 12 or hours == 0:
            hours %= 24
            part = "" if named else " " + next(name for hour, name in self._parts if hours >= hour)
            hours = (hours + 6) % 12 or 12
        return self._swahili_hours(hours, minutes, seconds) + part

    def _swahili_hours(self, hours: int, minutes: int, seconds: int) -> str:
        """ "tatu na dakika arobaini", "tatu na nusu", "tatu na robo", "nne kasorobo"."""
        word, say = self._word, self._numbers.cardinal
        tail = f" {word['and']} {word['second']} {say(seconds)}" if seconds else ""
        if minutes == 45 and not seconds:
            return f"{say(hours % 12 + 1)} {word['quarter_to']}"
        short = {15: word["quarter"], 30: word["half"]}.get(minutes)
        if not minutes:
            return say(hours) + tail
        past = short if short and not seconds else f"{word['minute']} {say(minutes)}"
        return f"{say(hours)} {word['and']} {past}{tail}"
