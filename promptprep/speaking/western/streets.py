"""What is written short in small letters: streets before their name ("12 bd Voltaire"), days before a date."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar
from promptprep.speaking.western.lower_days import LowerDays
from promptprep.speaking.western.reader import Western

_NAME = re.compile(r"[^\W\d_]+")


class StreetReader(Western):
    """Reads a capital together with the short word in front. `abbreviations.streets` lists the short words."""

    def __init__(self, grammar: Grammar) -> None:
        super().__init__(grammar)
        self._streets: dict[str, str] = dict(grammar.data.get("spoken", "abbreviations.streets"))
        self._longest = max(map(len, self._streets)) + 2
        self._short = re.compile(rf"(?<![\w.])({'|'.join(sorted(self._streets))})[ \u00a0\u202f]\Z")

        self._days = LowerDays(grammar)

    def _dot(self, text: str, at: int, floor: int) -> Reading | None:
        return self._days.at(text, at, floor) or super()._dot(text, at, floor)

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        found = super().read(text, at, floor)
        if not text[at].isupper() or text[at - 1 : at] not in (" ", "\u00a0", "\u202f"):
            return found
        street = self._short.search(text, max(floor, at - self._longest), at)
        if street is None or (found and found.span.start != at):
            return found
        name = _NAME.match(text, at)
        assert name is not None
        end, said = (found.span.end, found.said) if found else (name.end(), name[0])
        return Reading(Span(street.start(), end), f"{self._streets[street[1]]} {said}", "abbreviation")
