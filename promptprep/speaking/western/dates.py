"""Dates: in figures by the local order, with a month's name, and clock times."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar, word_after, word_before
from promptprep.speaking.western.units import BLANK, alternatives

DAYS, MONTHS = 31, 12
_DOUBTFUL = (".", "'", "’")  # signs between hours and minutes that stand elsewhere too
_WORLD_TIME = "UTC"
_ISO_TIME = re.compile(
    r"T([01]\d|2[0-4]):?([0-5]\d)(?::?([0-5]\d)(?:[.,]\d{1,9})?)?(Z|(?=[+\-−]\d\d)(?:([+\-−])(\d\d)(?::?00)?))?(?![\w:])"
)
_HOURS, _MINUTES = 24, 59
_PAIR_REACH = 10
_PAIR_LEFT = re.compile(r"(?<![\d:.,])(\d{1,3}):(\d{1,2})(?:,? \(|, )\Z")
_PAIR_RIGHT = re.compile(r"(?:,? \(|, )(\d{1,3}):(\d{1,2})(?![\d:])")
_LEFT = 8  # characters in front of an abbreviation that may hold the line's beginning
_REST = re.compile(r"[ \u00a0\"”’»)]*(?:\n|\Z|¿|¡|([^\W\d_]{1,16}))()")


class Dates:
    """`dates.order` is "dmy" or "mdy"; `months.names` lists the twelve names, `months.short` maps abbreviations."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self.names: list[str] = list(grammar.data.get("spoken", "months.names"))
        short = grammar.table("months.short")
        self.months = {n: n for n in self.names} | {k: self.names[int(v) - 1] for k, v in short.items()}
        self.lower = {k.casefold(): v for k, v in self.months.items()}
        names = alternatives(self.months)
        link = grammar.text("dates.link")
        suffix = grammar.text("dates.day_suffix")
        self._iso = re.compile(r"(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?![\d/-])")
        self._figures = re.compile(
            rf"(\d{{1,2}})(?:{suffix})?([./-])(\d{{1,2}})\2(\d{{4}}|['’]?\d{{2}})(?![\d/]|\.\d|-(?!\d\d?[./])\d)"
        )
        self._named = re.compile(
            rf"(\d{{1,2}})(?:{suffix})?(?:(?:{BLANK}?[-–]{BLANK}?|(/))(\d{{1,2}})(?:{suffix})?)?"
            rf"{BLANK}(?:{link}{BLANK})?({names})(?!\w)(?:(?:,|{BLANK}(?:{link}|del))?{BLANK}(\d{{4}})(?![\d.,]\d|\d))?",
            re.IGNORECASE,
        )
        self._after_month = re.compile(
            rf"(\d{{1,2}})(?:{suffix})?(?:[-–](\d{{1,2}})(?:{suffix})?)?(?:,?{BLANK}(\d{{4}})(?!\d))?(?![\w:%°]|[.,:]\d)"
        )
        self.month_first = grammar.month_first
        self.plus = grammar.text("serials.plus")
        self.names_first = bool(grammar.data.maybe("spoken", "dates.month_first_in_words", False))

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if at and (
            text[at - 1].isalnum() or (text[at - 1] in "/.-" and at > 1 and text[at - 2].isdecimal() and floor != at)
        ):
            return None
        return self._in_figures(text, at) or self._with_name(text, at) or self._following(text, at, floor)

    def _in_figures(self, text: str, at: int) -> Reading | None:
        if found := self._iso.match(text, at):
            date = self._reading(text, found, at, found[4], found[3], found[1])
            return self._with_time(text, date) if date else None
        if not (found := self._figures.match(text, at)):
            return None
        first, second, year = found[1], found[3], found[4].lstrip("'’")
        day, month = (second, first) if self.month_first and found[2] != "." else (first, second)
        if int(month) > MONTHS:
            day, month = month, day
        reading = self._reading(text, found, at, day, month, year)
        if reading and found[2] == "/" and day != month and int(day) <= MONTHS:
            other = self._reading(text, found, at, month, day, year)
            return Reading(reading.span, reading.said, "date", (other.said,) if other else ())
        return reading

    def _with_time(self, text: str, date: Reading) -> Reading:
        """The time that ISO 8601 puts behind a "T", with its zone: 2026-05-12T09:30Z, ...T09:30+02:00."""
        found = _ISO_TIME.match(text, date.span.end)
        if found is None:
            return date
        said = f"{date.said}, {self.g.clock(int(found[1]), int(found[2]), marked=False, half='')}"
        if found[3] and int(found[3]):
            said = self.g.with_seconds(said, int(found[3]))
        if found[4]:
            said += f" {' '.join(_WORLD_TIME)}"
        if found[5]:
            sign = self.plus if found[5] == "+" else self.g.minus
            said += f" {sign} {self.g.cardinal(found[6])}"
        return Reading(Span(date.span.start, found.end()), said, "date")

    def _reading(self, text: str, found: re.Match[str], at: int, day: str, month: str, year: str) -> Reading | None:
        if not (1 <= int(day) <= DAYS and 1 <= int(month) <= MONTHS):
            return None
        name, words = self.names[int(month) - 1], self.year(year)
        said = self.g.date_in_figures(day, name, words, self.g.before_day(text, at))
        return Reading(Span(at, found.end()), said, "date")

    def _with_name(self, text: str, at: int) -> Reading | None:
        found = self._named.match(text, at)
        if not found or not 1 <= int(found[1]) <= DAYS:
            return None
        if found[2] and int(found[3]) != int(found[1]) + 1:
            return None
        written = found[4]
        name = self.months.get(written) or self.lower[written.casefold()]
        end = found.end()
        if written.islower() and self.names[0][0].isupper():
            return None
        date = self._date(text, at, end, found[1], name, found[5] or "", found[3] or "")
        if not found[5] or " del " not in found[0]:
            return date
        words = self.year(found[5])
        return Reading(date.span, date.said.replace(f" de {words}", f" del {words}"), "date")

    def _following(self, text: str, at: int, floor: int) -> Reading | None:
        """A day after its month: "May 5, 2026"."""
        if not self.names_first:
            return None
        before = word_before(text, at)
        if before not in self.months:
            return None
        found = self._after_month.match(text, at)
        if not found or not 1 <= int(found[1]) <= DAYS:
            return None
        start = at - len(before) - 1
        short = before != self.months[before] and start >= floor and text.startswith(before, start)
        said = self.g.ordinal(found[1])
        if found[2]:
            said = self.g.text("numbers.range").format(said, self.g.ordinal(found[2]))
        if found[3]:
            said = f"{said}, {self.g.year(found[3])}"
        if short:
            return Reading(Span(start, found.end()), f"{self.months[before]} {said}", "date")
        return Reading(Span(at, found.end()), said, "date")

    def _date(self, text: str, at: int, end: int, day: str, name: str, year: str, last: str = "") -> Reading:
        before = self.g.before_day(text, at)
        words = self.year(year)
        said = self.g.date(day, name, words, before) if not last else self.g.days(day, last, name, words, before)
        return Reading(Span(at, end), said, "date")

    def year(self, digits: str) -> str:
        """A year of two figures is one of this century's up to 49, of the last one's from 50."""
        if len(digits) == 2:
            digits = ("20" if int(digits) < 50 else "19") + digits
        return self.g.year(digits) if digits else ""


class Clocks:
    """Clock times: 9:40, 21 h 40, 9.40 Uhr, 9 p.m."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self.halves = grammar.table("clock.halves")
        mark = grammar.text("clock.mark")
        half = alternatives(self.halves)
        half = rf"(?:{BLANK}?(?P<half>{half})(?!\w))" if half else r"(?P<half>(?!))"
        separators = grammar.text("clock.separators")
        hours = r"(?<![\d:.,])(?P<hour>2[0-4]|[01]?\d)"
        self._full = re.compile(
            rf"{hours}(?:(?P<sep>[{separators}])|{BLANK}?(?P<mark>{mark}){BLANK}?)(?P<minute>[0-5]\d)"
            rf"(?:(?:[:′m]|{BLANK}?min{BLANK}?)(?P<second>[0-5]\d)s?)?(?![\d%]|[:.,]\d)"
            rf"(?:{BLANK}?(?!{grammar.hour.one}(?!\w))(?P<mark2>{mark}|Uhr|h|hs|hrs)(?![\w/]))?(?:{BLANK}?min(?!\w))?{half}?"
        )
        self._scores = frozenset(grammar.data.maybe("spoken", "scores.after", ()))
        self._played = frozenset(grammar.data.maybe("spoken", "scores.played", ()))
        to = re.escape(grammar.text("numbers.to"))
        self._other_end = re.compile(
            rf"(?:{BLANK}?[-–]{BLANK}?|{BLANK}{to}{BLANK})\d\d?[.:]\d\d{BLANK}?(?:{mark}|(?:{alternatives(self.halves)}))(?!\w)"
        )
        self._bare = re.compile(rf"{hours}(?:{BLANK}?(?P<mark>{mark})(?![\w/²]))?{half}?")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if at and text[at - 1].isalnum():
            return None
        found = self._full.match(text, at)
        if found and found["sep"] == ":" and self._is_score(text, at, found):
            return None
        plain = found and (found["sep"] not in _DOUBTFUL or found["mark2"] or found["half"])
        if found and (plain or self._is_time(text, at, found.end())):
            return self._reading(text, found, found["minute"], found["second"])
        found = self._bare.match(text, at)
        return self._reading(text, found, None, None) if found and (found["mark"] or found["half"]) else None

    def _is_score(self, text: str, at: int, found: re.Match[str]) -> bool:
        """By the word behind, a word of play in front where no hours are marked, or a neighbour that is no time."""
        if word_after(text, found.end()) in self._scores:
            return True
        if not (found["mark2"] or found["half"] or found["second"]) and _beside_score(text, at, found.end()):
            return True
        return not (found["mark2"] or found["half"]) and word_before(text, at).casefold() in self._played

    def _is_time(self, text: str, at: int, end: int) -> bool:
        """Whether the word in front announces hours ("las 9.40"), or the range's other end is marked."""
        return word_before(text, at).casefold() in self.g.hours_after or bool(self._other_end.match(text, end))

    def _reading(self, text: str, found: re.Match[str], minute: str | None, second: str | None) -> Reading:
        groups = found.groupdict()
        half = self.halves[found["half"]] if found["half"] else ""
        marked = bool(groups.get("mark") or groups.get("mark2"))
        said = self.g.clock(int(found["hour"]), None if minute is None else int(minute), marked=marked, half=half)
        if second and int(second):
            said = self.g.with_seconds(said, int(second))
        start = found.start()
        return Reading(Span(start, sentence_end(text, start, found.end(), self.g.openers)), said, "clock")


def _beside_score(text: str, start: int, end: int) -> bool:
    """Whether the next pair of figures on a side is no time of day: "31:28 (15:14)", "25:20, 18:25"."""
    left, right = _PAIR_LEFT.search(text, max(0, start - _PAIR_REACH), start), _PAIR_RIGHT.match(text, end)
    return any(int(pair[1]) > _HOURS or int(pair[2]) > _MINUTES or len(pair[2]) == 1 for pair in (left, right) if pair)


def sentence_end(text: str, start: int, end: int, openers: frozenset[str]) -> int:
    """Where a reading from `start` that ends in a full stop must end so that the sentence keeps its own.

    A sentence ends with the text or line, and before a word that often opens one (`openers`). What stands alone on
    its line is no sentence, and all its stops are its own.
    """
    if text[end - 1] != ".":
        return end
    rest = _REST.match(text, end)
    if rest is None or (rest[1] and rest[1] not in openers):
        return end
    return end if not rest[1] and _begins_line(text, start) else end - 1


def _begins_line(text: str, start: int) -> bool:
    """Whether nothing but blanks and opening marks stands in front on the line, as far as is looked."""
    before = text[max(0, start - _LEFT) : start]
    line = before.rpartition("\n")[2]
    return (start <= _LEFT or line != before) and not line.strip(' \t\u00a0"“«„(')
