"""Day and month in figures without a year ("on 3/4"), which are written as fractions are."""

from __future__ import annotations

import re

from promptprep.speaking.western.dates import DAYS, MONTHS
from promptprep.speaking.western.grammar import Grammar, noun, word_after, word_before
from promptprep.speaking.western.units import BLANK, alternatives

_PAIR, _TENTH = 2, 10
_SHARES = (2, 3, 4, 5, 8, 10)


class ShortDates:
    """`dates.before` lists the words after which a fraction is likelier a day.

    `dates.not_after` (in front of those words) and `dates.not_before` (behind the figures) list what undoes them.
    """

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._before = frozenset(grammar.data.maybe("spoken", "dates.before", ()))
        self._not_after = frozenset(grammar.data.maybe("spoken", "dates.not_after", ()))
        units = (noun(entry) for entry in grammar.table("units.names").values())
        what_follows = {*grammar.data.maybe("spoken", "dates.not_before", ()), grammar.text("dates.link")}
        self._no_day_before = frozenset(what_follows.union(*({u.one, u.more} for u in units)))
        halves = alternatives(grammar.table("clock.halves")) or "(?!)"
        led = alternatives(grammar.data.maybe("spoken", "clock.before", ("@",)))
        hour = rf"\d{{1,2}}(?::[0-5]\d{BLANK}?(?:{halves})?|{BLANK}?(?:{halves}))(?!\w)"
        self._timed = re.compile(rf",?{BLANK}(?:(?:{led}|@){BLANK})?{hour}")
        self._improper = bool(grammar.data.maybe("spoken", "dates.improper", False))
        self._sided = frozenset(grammar.data.maybe("spoken", "dates.improper_not_after", ()))
        self.with_year = bool(grammar.data.maybe("spoken", "dates.month_and_year", False))
        self._names: list[str] = list(grammar.data.get("spoken", "months.names"))

    def said(self, text: str, found: re.Match[str]) -> str:
        """The date in words, or "" where the two figures of `found` are more likely a fraction."""
        before = word_before(text, found.start())
        if self._is_ratio(text, found.start()):
            return ""
        if len(found[2]) == _PAIR and "0" in (found[1][0], found[2][0]):
            return self._date(found, before)
        if self._improper and int(found[2]) < int(found[1]) >= _TENTH:
            return self._date(found, before)
        if self._timed.match(text, found.end()) and int(found[1]) and int(found[2]):
            return self._date(found, before)
        if before.casefold() not in self._before or word_after(text, found.end()) in self._no_day_before:
            return ""
        if word_before(text, found.start() - len(before) - 1).casefold() in self._not_after:
            return ""
        return self._date(found, before)

    def _is_ratio(self, text: str, at: int) -> bool:
        """Behind a word for what has two sides, or two figures of pressure."""
        before = word_before(text, at)
        nouns = {before.casefold(), word_before(text, at - len(before) - 1).casefold()}
        return not self._sided.isdisjoint(nouns)

    def doubtful(self, text: str, found: re.Match[str]) -> str:
        """The date that a fraction of its own may be, where nothing behind is shared out; "" for plain shares."""
        if int(found[2]) in _SHARES or int(found[1]) == 1 or word_after(text, found.end()):
            return ""
        return self._date(found, word_before(text, found.start()))

    def _date(self, found: re.Match[str], before: str) -> str:
        day, month = (found[2], found[1]) if self.g.month_first else (found[1], found[2])
        if not (1 <= int(day) <= DAYS and 1 <= int(month) <= MONTHS):
            return ""
        return self.g.date_in_figures(day, self._names[int(month) - 1], "", before)
