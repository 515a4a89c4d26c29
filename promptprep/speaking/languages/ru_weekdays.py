"""Russian days of the week written short: "пн–пт" -> "с понедельника по пятницу", "в сб" -> "в субботу"."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.ru_context import RussianContext
from promptprep.speaking.languages.ru_numbers import RussianNumbers
from promptprep.speaking.ruled import Handler, one_of, reading

_TIME_NEXT = re.compile(r"\s*(?:\Z|[,;:()–—-]|\d|(?:с|со|до|в|и)\s(?:\d|[а-я]{2}\b))")  # not "ср. школа"
_ENDS_SENTENCE = re.compile(r"\s*\Z|\s+[А-ЯЁ]")


class RussianWeekdays:
    """Handlers for one day, and for the days from one to another."""

    def __init__(self, data: LanguageData, numbers: RussianNumbers, context: RussianContext) -> None:
        self._numbers = numbers
        self._context = context
        self._days: Mapping[str, str] = data.get("spoken", "short_weekdays")

    def letter_rules(self) -> list[tuple[str, Handler]]:
        day = one_of([*self._days, *(d.capitalize() for d in self._days)])
        return [
            (rf"({day})\.?[ \u00a0]?[-–—][ \u00a0]?({day})\.?(?!\w)", self._from_to),
            (rf"({day})(?!\w)\.?", self._day),
        ]

    def _from_to(self, found: re.Match[str]) -> Reading:
        first, last = (self._numbers.noun(self._days[d.lower()]) for d in found.groups())
        said = f"{first.one('genitive')} по {last.one('accusative')}"
        head = "со" if said.startswith("вт") else "с"
        return reading(found, f"{head} {said}", "date", end=self._end(found))

    def _day(self, found: re.Match[str]) -> Reading | None:
        if found[1].lower() == "ср" and found[0].endswith(".") and not _TIME_NEXT.match(found.string, found.end()):
            return None
        before = self._context.word_before(found.string, found.start())
        case = {"с": "genitive", "на": "accusative", "по": "accusative"}.get(before)
        case = case or self._context.governs.get(before, "nominative")
        said = self._numbers.noun(self._days[found[1].lower()]).one(case)
        return reading(found, said, "date", end=self._end(found))

    @staticmethod
    def _end(found: re.Match[str]) -> int:
        """A full stop that also ends the sentence stays for the pause."""
        stops = found[0].endswith(".") and _ENDS_SENTENCE.match(found.string, found.end())
        return found.end() - bool(stops)
