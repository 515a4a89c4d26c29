"""Names of days cut short in small letters: "du lun. au ven.", "mar. 4 mars", "de lun. a vie."."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import Grammar
from promptprep.speaking.western.units import BLANK, alternatives

_LEFT = 16


class LowerDays:
    """Read at their full stop, beside a date, a time or another day; alone they may be other words ("la mer.").

    `weekdays.lower` maps what is written to places in the week; `weekdays.sure` lists those that are no other words.
    """

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        names: list[str] = list(grammar.data.get("spoken", "weekdays.names"))
        self._days = {k: names[int(v) - 1] for k, v in grammar.table("weekdays.lower").items()}
        self._sure = grammar.wordset("weekdays.sure")
        days = alternatives(self._days)
        links = alternatives((grammar.text("symbols.words.&"), grammar.text("numbers.to"), "au", "al"))
        months = alternatives((*grammar.data.get("spoken", "months.names"), *grammar.table("months.short")))
        suffix, link = grammar.text("dates.day_suffix"), grammar.text("dates.link")
        date = rf"\d{{1,2}}(?:{suffix})?{BLANK}(?:{link}{BLANK})?(?:{months})|\d{{1,2}}[/.-]\d{{1,2}}"
        time = rf"\d{{1,2}}(?:{BLANK}?(?:{grammar.text('clock.mark')})(?!\w)|:\d\d|[hH]\d\d)"
        self._name = re.compile(rf"(?<![\w.])({days})\Z")
        joined = rf"(?:{BLANK}(?:{links}){BLANK}|,{BLANK}|{BLANK}?[-–/]{BLANK}?)"
        self._right = re.compile(rf"\.(?:,?{BLANK}(?:{date}|{time})|{joined}(?:{days})\.)")
        self._left = re.compile(rf"(?<!\w)(?:{days})\.{joined}\Z")

    def at(self, text: str, dot: int, floor: int) -> Reading | None:
        found = self._name.search(text, max(floor, dot - _LEFT), dot)
        if not found:
            return None
        start = found.start()
        beside = self._right.match(text, dot) or self._left.search(text, max(0, start - _LEFT), start)
        if not beside and found[1] not in self._sure:
            return None
        end = sentence_end(text, start, dot + 1, self.g.openers)
        return Reading(Span(start, end), self._days[found[1]], "abbreviation")
