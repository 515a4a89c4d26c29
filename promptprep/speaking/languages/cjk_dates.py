"""Days, eras, lengths of time and clock times written in figures in Japanese, Chinese and Korean copy."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.speaking.languages import cjk_text as patterns
from promptprep.speaking.languages.cjk_numbers import Numerals
from promptprep.speaking.languages.cjk_quantities import Said
from promptprep.speaking.languages.cjk_serials import LOOK_AROUND, Serials, any_of

_HALF_DAY = re.compile(r"\s?([ap])\.?m\.?(?![A-Za-z\d])", re.IGNORECASE)
_HOUR_OF_HALF_DAY = re.compile(r"(1[0-2]|0?[1-9])\s?([ap])\.?m\.?(?![A-Za-z\d])", re.IGNORECASE)


class Dates(Serials):
    """Rules `(text, at) -> Said | None`; the text is folded and `at` the first digit of a figure."""

    last_hour = 24

    def __init__(self, data: LanguageData, numerals: Numerals) -> None:
        super().__init__(data, numerals)
        self.eras: Mapping[str, str] = data.get("spoken", "eras")
        self._named_days = re.compile(rf"[\"')」』》]?\s?(?:{any_of(data.get('spoken', 'context.named_day'))})")
        self._score_words = re.compile(any_of(data.get("spoken", "context.score")))
        self._record_words = re.compile(any_of(data.get("spoken", "context.record")))
        self._season_words = re.compile(rf"\s?(?:{any_of(data.get('spoken', 'context.season'))})")

    def _date(self, text: str, at: int) -> Said | None:
        if found := patterns.DATE.match(text, at):
            month, day = found[3] or found[5], found[4] or found[6]
            if patterns.is_day(month, day):
                end = found.end() - (1 if found[0].endswith(".") and not text[found.end() : found.end() + 1] else 0)
                return Said(self.day_said(found[1], month, day), "date", end)
        if found := patterns.DATE_LAST_YEAR.match(text, at):
            month, day = (found[1], found[3]) if int(found[1]) <= 12 else (found[3], found[1])
            if patterns.is_day(month, day):
                both = int(found[1]) <= 12 and int(found[3]) <= 12 and found[1] != found[3]
                other = (self.day_said(found[4], day, month),) if both else ()
                return Said(self.day_said(found[4], month, day), "date", found.end(), other)
        if (found := patterns.YEAR_MONTH.match(text, at)) and patterns.is_day(found[2] or found[3], "1"):
            return Said(self._month_said(found[1], found[2] or found[3]), "date", found.end())
        if found := patterns.DAY_OF_WEEK.match(text, at):
            return Said(self.day_said("", found[1], found[2]), "date", found.end())
        if (found := patterns.SHORT_DATE.match(text, at)) and patterns.is_day(found[2], found[3]):
            return Said(self.day_said(*found.groups()), "date", found.end())
        if (found := patterns.PADDED_DAY.match(text, at)) and "0" in (found[1][0], found[2][0]):
            return Said(self.day_said("", found[1], found[2]), "date", found.end())
        named = self._serial_words.search(text, max(0, at - LOOK_AROUND), at)
        if not named and (found := patterns.MONTH_YEAR.match(text, at)) and patterns.is_day(found[1], "1"):
            return Said(self._month_said(found[2], found[1]), "date", found.end())
        return None

    def _to_a_day(self, text: str, first: Said) -> Said | None:
        """From a day to another without its year, or its month: "2026.6.1~10.31", "12/24-25"."""
        sign = patterns.RANGE_SIGN.match(text, first.end)
        found = patterns.DAY_AT_END.match(text, sign.end()) if sign else None
        month, day = (found[1] or "1", found[2] or found[3]) if found else ("0", "0")
        if found is None or not patterns.is_day(month, day):
            return None
        last = self.forms["day"].replace("{n}", self.numerals.whole(day))
        if found[1]:
            last = self.day_said("", month, day)
        said = self.forms["range_of_time"].replace("{a}", first.said).replace("{b}", last)
        return Said(said, "range", found.end(), (), True)

    def _month_said(self, year: str, month: str) -> str:
        return self.forms["year"].replace("{n}", self.year(year)) + self.forms["blank"] + self.month(month)

    def _duration(self, text: str, at: int) -> Said | None:
        """ "2h30m", "5h 14m 32s"."""
        found = patterns.DURATION.match(text, at)
        if found is None:
            return None
        said = [self.hours_long(found[1])]
        said += [self.quantities.in_words(n, unit) for n, unit in ((found[2], "min"), (found[3], "s")) if n]
        return Said(self.forms["blank"].join(said), "measure", found.end())

    def hours_long(self, digits: str) -> str:
        """A length of so many hours."""
        return self.quantities.in_words(digits, "h")

    def _record(self, text: str, at: int) -> Said | None:
        """How long a race or a film took: "2:05:30" beside a word that says so, "1:45.32", "12′30″"."""
        if found := patterns.PRIMES.match(text, at):
            return self._lasting("", *found.groups(), end=found.end())
        found = patterns.RECORD.match(text, at)
        if found is None or not (found[1] or found[4]):
            return None
        near = (max(0, at - LOOK_AROUND), min(len(text), found.end() + LOOK_AROUND))
        if not found[4] and not self._record_words.search(text, *near):
            return None
        return self._lasting(*found.groups(), end=found.end())

    def _lasting(self, hours: str | None, minutes: str, seconds: str, parts: str | None, *, end: int) -> Said:
        """Hours, minutes and seconds, with the parts of a second figure by figure behind them."""
        said = [self.hours_long(hours)] if hours else []
        said += [self.minute(minutes), self.second(seconds)]
        if parts:
            said.append(self.numerals.one_by_one(parts))
        return Said(self.forms["blank"].join(said), "clock", end)

    def _season(self, text: str, at: int) -> Said | None:
        """From one year into the next: "2024/25シーズン"."""
        if decade := patterns.DECADE.match(text, at):
            return Said(self.forms["decade"].replace("{n}", self.year(decade[1])), "year", decade.end(), (), True)
        found = patterns.SEASON.match(text, at)
        if found is None or (int(found[1]) + 1) % 100 != int(found[2]):
            return None
        if int(found[2]) <= 12 and not self._season_words.match(text, found.end()):
            return None
        said = self.forms["range"].replace("{a}", self.year(found[1])).replace("{b}", self.year(found[2]))
        return Said(said, "range", found.end(), (), True)

    def _era(self, text: str, at: int) -> Said | None:
        """ "300 BC": the era stands before its year."""
        found = patterns.ERA.match(text, at)
        if found is None:
            return None
        year = self.forms["year"].replace("{n}", self.numerals.whole(found[1]))
        return Said(self.eras[found[2]] + self.forms["blank"] + year, "year", found.end())

    def _named_day(self, text: str, at: int) -> Said | None:
        """What is called by its day, figure by figure: "2・26事件", "9·11", "6·25", "3.1운동", "930新政"."""
        if text[at - 1 : at] in ("·", "・", ".", "第", "제"):
            return None
        if found := patterns.NAMED_DAY.match(text, at):
            lone = len(found[2]) > 1 and not text[found.end() : found.end() + 1].isalnum()
            if lone or self._named_days.match(text, found.end()):
                return Said(self.day_figures(found[1], found[2]), "date", found.end())
        found = patterns.CLOSE_NAMED_DAY.match(text, at)
        if found is None or not self._named_days.match(text, found.end()):
            return None
        if found[2] and found[0] != "3.1" and text[found.end()] == "절":
            return None
        return Said(self.day_figures(found[1], found[2] or found[3]), "date", found.end())

    def _clock(self, text: str, at: int) -> Said | None:
        if hour := _HOUR_OF_HALF_DAY.match(text, at):
            return Said(self._half_day(hour[2]) + self.hour(hour[1]), "clock", hour.end())
        found = patterns.CLOCK.match(text, at)
        if found is None or int(found[1]) > self.last_hour or self.near_a_score(text, at, found.end()):
            return None
        said = self._time_said(found)
        end = found.end()
        if text[end : end + 1] == said[-1:] and int(found[2]):
            end += 1
        if half := _HALF_DAY.match(text, end):
            said, end = self._half_day(half[1]) + said, half.end()
        return Said(said, "clock", end)

    def near_a_score(self, text: str, at: int, end: int) -> bool:
        at, end = patterns.row_of_pairs(text, at, end)
        return bool(self._score_words.search(text, max(0, at - LOOK_AROUND), min(len(text), end + LOOK_AROUND)))
