"""Arabic figures that nobody counts: telephone numbers, cards, accounts, and other long ones."""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.ar_context import ArabicContext
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.plain import HYPHENED, PlainRules
from promptprep.speaking.ruled import Handler

PHONE = (
    r"(?:\+|٠٠|00)\d{1,3}(?:[ \u00a0-]?\d{1,4}){2,5}(?!\d)|[0٠]\d{1,3}(?:[ \u00a0-]\d{3,4}){2}(?!\d)"
    r"|[0٠]\d{8,10}(?!\d)|[0٠]\d{1,3}[ \u00a0-]\d{6,8}(?!\d)"
)
SHORTEST_CALLED = 7  # figures of a telephone number beside a word of calling; fewer may count something
SHORTEST_UNGROUPED = 9  # figures without separators that count nothing are said one by one from here


class ArabicSerials:
    """Handlers for figures said one by one; `unit` is the pattern of what may follow a number that counts."""

    def __init__(self, data: LanguageData, shared: PlainRules, context: ArabicContext, unit: re.Pattern[str]) -> None:
        self._shared = shared
        self._context = context
        self._unit = unit
        self._unified: str = data.get("spoken", "words.unified")
        self._codes = frozenset(data.get("spoken", "before_digits.words"))
        self._calling = frozenset(data.get("spoken", "calling.words"))
        self._numbered = frozenset(data.get("spoken", "numbered.words"))

    def rules(self) -> list[tuple[str, Handler]]:
        return [
            (r"\d{19,}", self._shared.serial),
            (PHONE, self._shared.phone),
            (r"(?<=\()[0٠]\d{1,3}\)[ \u00a0]?\d{3,4}[ \u00a0-]?\d{3,4}(?!\d)", self._shared.bracketed),
            (r"\d{4}(?:[ \u00a0]\d{4}){2,4}(?![\d,.])", self._shared.serial),
            (HYPHENED, self._shared.hyphened),
        ]

    def long_rule(self) -> tuple[str, Handler]:
        """After dates and times."""
        return r"\d{5,}(?![.,٫]?\d)", self._one_by_one

    def is_called(self, text: str, start: int) -> bool:
        """Whether words of calling, of codes or of numbers stand near."""
        return self._context.is_near(self._calling | self._codes | self._numbered, text, start)

    def _one_by_one(self, found: re.Match[str]) -> Reading | None:
        """ "هاتف 4567890": figures that nobody counts."""
        before = self._context.word_before(found.string, found.start())
        near = len(found[0]) >= SHORTEST_CALLED and self._context.is_near(self._calling, found.string, found.start())
        if near or before in self._codes:
            return self._shared.serial(found)
        setting = self._context.setting(found.string, found.start(), found.end(), 0)
        unit = self._unit.match(found.string, found.end())
        counts = setting.written.endswith(("ا", "ة", "ًا", "اً")) or (unit and unit["unit"])
        if counts or found[0].endswith(("000", "٠٠٠")):
            return None
        lone = len(found[0]) >= SHORTEST_UNGROUPED and not setting.noun and setting.case == "nominative"
        alone = (
            self._context.begins(found.string, found.start())
            and not found.string[found.end() : found.end() + 2].strip()
        )
        lone = lone and (not alone or ascii_digits(found[0]).startswith(self._unified))
        named = self._context.is_near(self._numbered, found.string, found.start())
        return self._shared.serial(found) if lone or named else None
