"""English times that reach over several figures: from noon to one, rows of days, how long a race took."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.dates import Clocks
from promptprep.speaking.western.grammar import Grammar, leans_left, word_after, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.units import alternatives

_ZONES = "hours|hrs\\.?|GMT|UTC|BST|IST|C[EDS]?[SD]?T|E[SD]T|M[SD]T|P[SD]T|AE[SD]T"
_MILITARY = re.compile(rf"([01]\d|2[0-4])([0-5]\d)(?=[ \u00a0](?:{_ZONES})(?!\w))")
_TRAIN = re.compile(
    r"([01]?\d|2[0-3])\.([0-5]\d)(?=[ \u00a0](?:(?:to|from)[ \u00a0][A-Z]|train|service|bus|ferry|flight))"
)
_SAILING = re.compile(r"(0\d)([0-5]\d)(?![\w.,:/-]*\d|\w)")
_HOURS_SHORT = re.compile(r"[ \u00a0]hrs\.?(?!\w)")
_BARE_FIRST = re.compile(r"(\d{1,2})[ \u00a0]?[-–][ \u00a0]?(?=\d{1,2}[:.]\d\d[ \u00a0]?[AaPp]\.?[Mm])")
_LAPSE = re.compile(r"(\d{1,2}):([0-5]\d):([0-5]\d)(?![\d:.,]\d|[:\w]|[ \u00a0]?[AaPp]\.?[Mm])")
_SUFFIX = r"(?:st|nd|rd|th)?"
_LEFT = 64
_LAST_HOUR = 12
_LAST_DAY = 31
_LINKED = ("d ", "r ", "o ", "h ", "& ", ", ")  # and, or, to, through
_INSIDE = re.compile(r"[-–/.,$£€\w]\Z")
_HOUR = re.compile(r"(?:1[0-2]|[1-9])(?![\w]|[:.,]\d)")


class MilitaryTimes:
    """Four figures before "hours", where a time is announced: "at 1300 hours"."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._before = frozenset(grammar.data.get("spoken", "clock.before"))
        self._services = grammar.wordset("clock.services")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if (train := _TRAIN.match(text, at)) and word_before(text, at).casefold() == "the":
            said = self.g.clock(int(train[1]), int(train[2]), marked=False, half="")
            return Reading(Span(*train.span()), said, "clock")
        found = _MILITARY.match(text, at)
        if not found and (found := _SAILING.match(text, at)) and word_after(text, found.end()) not in self._services:
            return None
        timed = found and (found[1][0] == "0" or word_before(text, at).casefold() in self._before)
        if not found or not timed or leans_left(text, at, ".,:"):
            return None
        hours = ("oh " if found[1][0] == "0" else "") + self.g.cardinal(found[1])
        minutes = "hundred" if found[2] == "00" else self.g.cardinal(found[2])
        oh = "oh " if found[2][0] == "0" and found[2] != "00" else ""
        if short := _HOURS_SHORT.match(text, found.end(2)):
            return Reading(Span(at, short.end()), f"{hours} {oh}{minutes} hours", "clock")
        return Reading(Span(at, found.end(2)), f"{hours} {oh}{minutes}", "clock")


class HoursApart:
    """Two times with a dash where only one is marked: "1–5:30 p.m.", "noon-1pm"."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._clock = Clocks(grammar)
        words = alternatives(grammar.wordset("clock.words"))
        self._word_left = re.compile(rf"(?<![\w-])(?:{words})([ \u00a0]?[-–][ \u00a0]?)\Z", re.IGNORECASE)

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        dashed = text[at - 1 : at] in ("-", "–") or text[at - 2 : at] in ("- ", "– ")
        if dashed and (left := self._word_left.search(text, max(0, at - _LEFT // 4), at)):
            return self._after_word(text, at, floor, left.start(1))
        found = _BARE_FIRST.match(text, at)
        if not found or not 1 <= int(found[1]) <= _LAST_HOUR or text[at - 1 : at].isalnum():
            return None
        last = self._clock.at(text, found.end(), found.end())
        if last is None:
            return None
        said = self.g.text("numbers.range").format(self.g.cardinal(found[1]), last.said)
        return Reading(Span(at, last.span.end), said, "clock")

    def _after_word(self, text: str, at: int, floor: int, start: int) -> Reading | None:
        last = self._clock.at(text, at, at)
        if last is not None:
            said, end = last.said, last.span.end
        elif found := _HOUR.match(text, at):
            said, end = self.g.cardinal(found[0]), found.end()
        else:
            return None
        return Reading(Span(start, end), f" {self.g.text('numbers.to')} {said}", "clock") if start >= floor else None


class Lapses:
    """Hours, minutes and seconds that something took: "in 2:08:41"; after "at" they are a time of day."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._clock_before = frozenset(grammar.data.get("spoken", "clock.before"))
        self._lapse_before = grammar.wordset("clock.lapse_before")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _LAPSE.match(text, at)
        if not found or leans_left(text, at, ":.,T"):
            return None
        before = word_before(text, at).casefold()
        short = (found[1][0] != "0" or found[1] == "0") and int(found[1]) < _LAST_HOUR - 2
        if before in self._clock_before or not (short or before in self._lapse_before):
            return None
        units = (self.g.hour, self.g.minute, self.g.second)
        counted = [
            self.g.counted(Literal(str(int(n)), "", 0), u) for n, u in zip(found.groups(), units, strict=True) if int(n)
        ]
        said = " and ".join(filter(None, (", ".join(counted[:-1]), *counted[-1:])))
        return Reading(Span(*found.span()), said, "measure") if said else None


class DaysInRow:
    """Days that share a month: "Jan. 9, 16 and 23", "from May 5 to 8", "between 9 and 16 January"."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        months = alternatives((*grammar.data.get("spoken", "months.names"), *grammar.table("months.short")))
        link = r",? (?:and|or|to|through|&) "
        row = rf"\d{{1,2}}{_SUFFIX}(?:,[ ]\d{{1,2}}{_SUFFIX})*"
        self._month_left = re.compile(rf"(?<!\w)(?:{months})[ ]{row}(?:{link}|(, ))\Z")
        self._goes_on = re.compile(rf"(?:,[ ]\d{{1,2}}{_SUFFIX})*{link}\d{{1,2}}{_SUFFIX}(?!\w|[.,:]\d|%)")
        follows = alternatives(grammar.wordset("dates.row_followed"))
        year, words = rf",? (?:\d{{4}}(?!\d)|{link.strip()} \d)", rf",? (?:{follows})(?!\w)"
        self._ends = re.compile(rf"(?![\w%°])(?:{year}|{words}|[.;:)]?(?:\s*\Z|\n| [A-Z])|[,;)](?! ?\d))")
        self._day = re.compile(rf"(\d{{1,2}}){_SUFFIX}(?![\w%°/-]|[.,:]\d)")
        self._before_month = re.compile(rf"({row})({link})(\d{{1,2}}){_SUFFIX} (?:of )?({months})(?!\w)")
        self._months: dict[str, str] = {k: str(v) for k, v in grammar.table("months.short").items()}
        self._names: list[str] = list(grammar.data.get("spoken", "months.names"))

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        day = self._day.match(text, at)
        if not day or not 1 <= int(day[1]) <= _LAST_DAY or _INSIDE.search(text, max(0, at - 1), at):
            return None
        if found := self._before_month.match(text, at):
            return self._with_month(text, found)
        linked = text[at - 2 : at] in _LINKED
        left = self._month_left.search(text, max(0, at - _LEFT), at) if linked else None
        if not left:
            return None
        on = self._goes_on.match(text, day.end())
        if on or (not left[1] and self._ends.match(text, day.end())):
            return Reading(Span(*day.span()), self.g.ordinal(day[1]), "date")
        return None

    def _with_month(self, text: str, found: re.Match[str]) -> Reading | None:
        days = re.findall(r"\d+", found[1])
        if any(not 1 <= int(d) <= _LAST_DAY for d in (*days, found[3])) or int(days[-1]) >= int(found[3]):
            return None
        month = found[4] if found[4] in self._names else self._names[int(self._months[found[4]]) - 1]
        the = "" if word_before(text, found.start()).casefold() == "the" else "the "
        row = ", ".join(self.g.ordinal(d) for d in days)
        link = found[2].strip(" ,").replace("&", "and")
        return Reading(Span(*found.span()), f"{the}{row} {link} {self.g.ordinal(found[3])} of {month}", "date")


class WeekdayRanks:
    """A day of the month right behind its weekday: "Friday 13th", "Thurs. 3rd"."""

    _rank = re.compile(r"(\d{1,2})(?:st|nd|rd|th)(?![\w-])")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        days = alternatives((*grammar.data.get("spoken", "weekdays.names"), *grammar.table("weekdays.short")))
        self._left = re.compile(rf"(?<!\w)(?:{days})\.?,?[ \u00a0]\Z")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._rank.match(text, at)
        if not found or not self._left.search(text, max(0, at - _LEFT // 4), at):
            return None
        return Reading(Span(*found.span()), f"the {self.g.ordinal(found[1])}", "date")
