"""How long something took, as it is written with colons: 3:45.2, 2:15 hours, 4:05 min."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar, Noun, word_before
from promptprep.speaking.western.literal import Literal

_BLANK = r"[ \u00a0\u202f]"
_PARTS = re.compile(r"(\d{1,3}):([0-5]\d)(?::([0-5]\d))?(?:[.,](\d{1,3}))?(?!\d|[:.,]\d)")


class Durations:
    """Two or three parts with a decimal behind them, or with a word for hours or minutes.

    `clock.before` lists the words after which the same figures are a time of day ("at 14:30 hours").
    """

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._clock_before = frozenset(grammar.data.maybe("spoken", "clock.before", ()))
        hours, minutes = ({n.one, n.more} for n in (grammar.hour, grammar.minute))
        self._hours = frozenset(hours)
        words = "|".join(re.escape(w) for w in sorted({*hours, *minutes, "min"}, key=lambda w: (-len(w), w)))
        self._unit = re.compile(rf"{_BLANK}({words})(?!\w)")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _PARTS.match(text, at)
        if not found or (at and (text[at - 1].isalnum() or text[at - 1] in ":.,")):
            return None
        unit = self._unit.match(text, found.end())
        if not (unit or found[4]) or word_before(text, at).casefold() in self._clock_before:
            return None
        hours = found[3] is not None or (unit is not None and unit[1] in self._hours)
        nouns = (self.g.hour, self.g.minute, self.g.second) if hours else (self.g.minute, self.g.second)
        figures = [part for part in found.groups()[:3] if part is not None]
        end = unit.end() if unit else found.end()
        return Reading(Span(at, end), self._said(figures, found[4] or "", nouns), "measure")

    def _said(self, figures: list[str], fraction: str, nouns: tuple[Noun, ...]) -> str:
        last = len(figures) - 1
        literals = [
            Literal(part, fraction if n == last else "", 0, mark=self.g.literals.mark) for n, part in enumerate(figures)
        ]
        counted = zip(literals, nouns, strict=False)
        return " ".join(self.g.counted(literal, what) for literal, what in counted if literal.value or literal.fraction)
