"""Names of days cut short."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import Grammar
from promptprep.speaking.western.units import BLANK, alternatives

_LEFT = 12


class Weekdays:
    """Days of the week cut short, where a date, a time or another day stands behind: "Mon, 3 Aug", "Mo–Fr".

    `weekdays.names` lists the seven names, `weekdays.short` maps what is written to their places from 1 on.
    """

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        names = grammar.data.maybe("spoken", "weekdays.names", ())
        self._short = {k: str(names[int(v) - 1]) for k, v in grammar.data.maybe("spoken", "weekdays.short", {}).items()}
        days = alternatives(self._short) or "(?!)"
        months = alternatives((*grammar.data.get("spoken", "months.names"), *grammar.table("months.short")))
        halves = alternatives(grammar.table("clock.halves")) or "(?!)"
        gap = rf"{BLANK}?"
        followed = alternatives(grammar.data.maybe("spoken", "weekdays.followed", ())) or "(?!)"
        link = grammar.text("dates.link")
        day = rf"\d{{1,2}}(?:{grammar.text('dates.day_suffix')})?{BLANK}(?:{link}{BLANK})?(?:{months})"
        suffix = grammar.text("dates.day_suffix")
        rank = rf"\d{{1,2}}(?:{suffix})(?!\w)|" if suffix[:1].isalpha() else ""
        date = rf"{rank}{day}|(?:{months}){BLANK}\d|\d\d?[./-]\d\d?[./-]"
        time = rf"\d\d?(?::\d\d|(?:\.\d\d)?{gap}(?:{halves}|{grammar.text('clock.mark')})(?!\w)|{gap}[-–]{gap}\d)"
        self._pattern = re.compile(
            rf"({days})\.?(?:{gap}[-–]{gap}({days})\.?(?!\w)|(?=,?{BLANK}(?:(?:the|der|den|dem){BLANK})?(?:{date}|{time})|{BLANK}(?:{followed})(?!\w)))"
        )
        self._and = f" {grammar.text('symbols.words.&')} "
        whole = alternatives((*names, *grammar.data.get("spoken", "months.names"))) or "(?!)"
        self._whole_range = re.compile(rf"({whole})(?:{gap}–{gap}|-)({whole})(?!\w)")
        words = alternatives((grammar.text("symbols.words.&"), grammar.text("numbers.to")))
        link = rf"(?:,?{BLANK}(?:{words}){BLANK}|,{BLANK}|/)"
        self._months = {k: str(grammar.data.get("spoken", "months.names")[int(v) - 1]) for k, v in
                        grammar.table("months.short").items() if k.isalpha()}  # fmt: skip
        short = alternatives(self._months) or "(?!)"
        self._month = re.compile(rf"({short})(?:{gap}[-–]{gap}({short})(?!\w)|(?={BLANK}['’]?\d{{2,4}}(?!\w)))")
        self._list = re.compile(rf"(?:{days})\.?(?:{link}(?:{days})\.?(?!\w))+")
        self._time_left = re.compile(rf"(?:\d:\d\d|\d{gap}(?:{halves})),?{BLANK}\Z")
        led = alternatives(grammar.data.maybe("spoken", "weekdays.before", ())) or "(?!)"
        self._led = re.compile(rf"(?<!\w)(?:{led}){BLANK}\Z")
        self._stopped = re.compile(rf"({days})(\.)?(?!\w|{gap}[-–])")
        self._day = re.compile(rf"({days})\.?(?!\w)")

    def at(self, text: str, at: int) -> Reading | None:
        if found := self._list.match(text, at):
            end = sentence_end(text, at, found.end(), self.g.openers)
            return Reading(Span(at, end), self._day.sub(self._whole, found[0]).replace("/", self._and), "abbreviation")
        if found := self._whole_range.match(text, at):
            return Reading(Span(*found.span()), self.g.text("numbers.range").format(found[1], found[2]), "range")
        if behind := self._behind(text, at):
            return behind
        found, names = self._pattern.match(text, at), self._short
        if not found:
            found, names = self._month.match(text, at), self._months
        if not found:
            return None
        said = names[found[1]]
        if found[2]:
            said = self.g.text("numbers.range").format(said, names[found[2]])
        return Reading(Span(*found.span()), said, "abbreviation")

    def _behind(self, text: str, at: int) -> Reading | None:
        """A day behind its time ("3 p.m. Sat.") or, with a dot, behind a word that leads to it ("on Sat.")."""
        found = self._stopped.match(text, at)
        low = max(0, at - _LEFT)
        if not found or not (self._time_left.search(text, low, at) or (found[2] and self._led.search(text, low, at))):
            return None
        end = sentence_end(text, at, found.end(), self.g.openers)
        return Reading(Span(at, end), self._short[found[1]], "abbreviation")

    def _whole(self, day: re.Match[str]) -> str:
        return self._short[day[1]]
