"""Russian clock times and laps, in the case that the words around them ask for."""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.ru_context import REACH, RussianContext
from promptprep.speaking.languages.ru_numbers import RussianNumbers, governed
from promptprep.speaking.ruled import Handler, reading

GAP = "[ \u00a0\u202f\u2009]"
BEFORE_TIMES = ("в", "к", "до", "с", "около", "после")
_DASHED = re.compile(rf"{GAP}[-–—] ?[^\W\d]")


class RussianClocks:
    """Handlers for times of the day."""

    def __init__(self, data: LanguageData, numbers: RussianNumbers, context: RussianContext) -> None:
        self._numbers = numbers
        self._context = context
        self._after_times = frozenset(data.get("spoken", "after_a_time.words"))
        self._played = tuple(data.get("spoken", "played.stems"))

    def rules(self) -> list[tuple[str, Handler]]:
        return [
            (r"(\d{1,2}):([0-5]\d)[.,](\d{1,3})(?![\d:])", self._lap),
            (rf"(\d{{1,2}}):(\d{{2}}){GAP}?[-–—]{GAP}?(\d{{1,2}}):(\d{{2}})(?![\d:])", self._clock_range),
            (r"(\d{1,2}):(\d{2})(?::(\d{2}))?(?![\d:]|[ \u00a0]\d{3}(?!\d))", self._clock),
            (r"(\d{1,2})\.([0-5]\d)()(?![\d%]|[.,]\d)", self._dotted_clock),
            (rf"1(?={GAP}(?:ночи|дня)(?!\w))", self._one_o_clock),
        ]

    def _clock(self, found: re.Match[str]) -> Reading | None:
        hours, minutes = int(found[1]), int(found[2])
        seconds = int(found[3]) if found[3] else None
        if hours > 24 or minutes > 59 or (seconds or 0) > 59:
            return None
        before = self._context.word_before(found.string, found.start())
        if not found[3] and before not in BEFORE_TIMES and self._is_score(found.string, found.start()):
            return None
        case = "genitive" if before == "с" else self._context.governs.get(before, "nominative")
        return reading(found, self.clock(hours, minutes, seconds, case), "clock")

    def _is_score(self, text: str, start: int) -> bool:
        """Whether a word of play stands before in the sentence: "при счёте 15:15", "обыграла Данию 31:28"."""
        sentence = re.split(r"[.!?]\s", text[max(0, start - REACH) : start])[-1]
        return any(word.startswith(self._played) for word in sentence.lower().split())

    def _lap(self, found: re.Match[str]) -> Reading:
        """ "1:45,32": a winner's minutes and seconds."""
        minutes = self._counted(int(found[1]), "минута", "nominative")
        seconds = f"{self._numbers.decimal(found[2], found[3])} {self._numbers.noun('секунда').one('genitive')}"
        return reading(found, f"{minutes} {seconds}", "measure")

    def _dotted_clock(self, found: re.Match[str]) -> Reading | None:
        """ "в 19.30": a time where a preposition of time stands before and nothing is counted after."""
        before = self._context.word_before(found.string, found.start())
        after = self._context.words_after(found.string, found.end())
        heads = begins_sentence(found.string, found.start()) and _DASHED.match(found.string, found.end())
        if (before not in BEFORE_TIMES and not heads) or (after and after[0] not in self._after_times):
            return None
        clock = self._clock(found)
        if clock is None:
            return None
        return reading(found, clock.said, "clock", self._numbers.decimal(found[1], found[2]))

    def _one_o_clock(self, found: re.Match[str]) -> Reading | None:
        """ "в 1 ночи" -> "в час ночи"."""
        before = self._context.word_before(found.string, found.start())
        if before not in BEFORE_TIMES:
            return None
        case = "genitive" if before == "с" else self._context.governs.get(before, "nominative")
        return reading(found, self._numbers.noun("час").one(case), "clock")

    def _clock_range(self, found: re.Match[str]) -> Reading | None:
        times = [(int(found[1]), int(found[2])), (int(found[3]), int(found[4]))]
        if any(h > 24 or m > 59 for h, m in times):
            return None
        first, last = (self.clock(h, m, None, "genitive") for h, m in times)
        return reading(found, f"с {first} до {last}", "range")

    def clock(self, hours: int, minutes: int, seconds: int | None, case: str) -> str:
        """ "двадцать один час сорок минут"; at the full hour the minutes are left out."""
        parts = [self._counted(hours, "час", case)]
        if minutes or seconds is not None:
            parts.append(self._counted(minutes, "минута", case))
        if seconds is not None:
            parts.append(self._counted(seconds, "секунда", case))
        return " ".join(parts)

    def _counted(self, n: int, word: str, case: str) -> str:
        noun = self._numbers.noun(word)
        return f"{self._numbers.cardinal(n, noun.gender, case)} {governed(noun, n, case)}"


def begins_sentence(text: str, start: int) -> bool:
    """Whether a sentence begins at `start`."""
    return not text[max(0, start - 3) : start].strip() or text[max(0, start - 3) : start].rstrip()[-1:] in ".!?:"
