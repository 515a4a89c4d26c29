"""How long something took, as it is written with colons: 3:45.2, 2:15 hours, 4:05 min."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import Grammar, Noun, leans_left, noun, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.units import SPACE

_WRITTEN = re.compile(
    rf"(?:(\d{{1,3}}){SPACE}?h{SPACE}?)?(\d{{1,2}}){SPACE}?(?:min|mn){SPACE}?(\d{{1,2}})(?:[.,](\d{{1,3}}))?{SPACE}?s(?![\w/])"
)
_LETTERS = re.compile(
    rf"(\d{{1,3}}){SPACE}?h{SPACE}?(\d{{1,2}}){SPACE}?m(?:{SPACE}?(\d{{1,2}})(?:[.,](\d{{1,3}}))?{SPACE}?s)?(?![\w/²³])"
)
_PRIMES = re.compile(r"()(\d{1,3})[’'′][ \u00a0]?(\d{2})(?:[.,](\d{1,3}))?(?:[”\"″]|[’'′]{2})(?![\w])")
_HOURS = re.compile(rf"{SPACE}(h)(?!\w)")
_GROUP = 3  # decimals that are thousands behind the other mark: a scale of 1:25.000
_PARTS = re.compile(r"(\d{1,3}):([0-5]\d)(?::([0-5]\d))?(?:[.,](\d{1,3}))?(?!\d|[:.,]\d)")


class Durations:
    """Two or three parts with a decimal behind them, or with a word for hours or minutes.

    `clock.before` lists the words after which the same figures are a time of day ("at 14:30 hours"), `clock.lasting`
    those after which an h makes them a stretch of time ("Dauer: 1:30 h"); `clock.last_and` joins the last part.
    """

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._clock_before = frozenset(grammar.data.maybe("spoken", "clock.before", ()))
        self._lasting = frozenset(grammar.data.maybe("spoken", "clock.lasting", ()))
        self._primes = bool(grammar.data.maybe("spoken", "clock.primes", False))
        self._and = str(grammar.data.maybe("spoken", "clock.last_and", ""))
        self._hours = _names(grammar, grammar.hour)
        self._ones = (grammar.hour.one, grammar.minute.one)
        words = sorted({*self._hours, *_names(grammar, grammar.minute)}, key=lambda w: (-len(w), w))
        self._unit = re.compile(rf"{SPACE}({'|'.join(re.escape(w) for w in words)})(?!\w)")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if leans_left(text, at, ":.,"):
            return None
        return self._in_units(text, at) or self._with_colons(text, at)

    def _in_units(self, text: str, at: int) -> Reading | None:
        """2 h 01 min 09 s, 5 min 05 s; and 5'32" where `clock.primes` says that this is no height in feet."""
        found = (
            _WRITTEN.match(text, at) or _LETTERS.match(text, at) or (_PRIMES.match(text, at) if self._primes else None)
        )
        if not found or text[max(0, at - 2) : at].rstrip().endswith("°"):
            return None
        nouns = (self.g.hour, self.g.minute, self.g.second) if found[1] else (self.g.minute, self.g.second)
        figures = [part for part in found.groups()[:3] if part]
        end = sentence_end(text, at, found.end(), self.g.openers)
        return Reading(Span(at, end), self._said(figures, found[4] or "", nouns, word_before(text, at)), "measure")

    def _with_colons(self, text: str, at: int) -> Reading | None:
        found = _PARTS.match(text, at)
        if not found or (
            len(found[4] or "") == _GROUP
            and found[4].endswith("00")
            and text[found.start(4) - 1] != self.g.literals.mark
        ):
            return None
        lasting = found[3] or word_before(text, at).casefold() in self._lasting
        unit = self._unit.match(text, found.end()) or (_HOURS.match(text, found.end()) if lasting else None)
        if unit and unit[1] in self._ones and int(found[1]) != 1:
            unit = None
        if not (unit or found[4]) or word_before(text, at).casefold() in self._clock_before:
            return None
        hours = found[3] is not None or (unit is not None and unit[1] in (*self._hours, "h"))
        nouns = (self.g.hour, self.g.minute, self.g.second) if hours else (self.g.minute, self.g.second)
        figures = [part for part in found.groups()[:3] if part is not None]
        end = unit.end() if unit else found.end()
        end = sentence_end(text, at, end, self.g.openers)
        said = self._said(figures, found[4] or "", nouns, word_before(text, at))
        return Reading(Span(at, end), said, "measure")

    def _said(self, figures: list[str], fraction: str, nouns: tuple[Noun, ...], before: str) -> str:
        last = len(figures) - 1
        literals = [
            Literal(part, fraction if n == last else "", 0, mark=self.g.literals.mark) for n, part in enumerate(figures)
        ]
        counted = zip(literals, nouns, strict=False)
        said = [self.g.counted(n, what, None, before) for n, what in counted if n.value or n.fraction]
        if self._and and len(said) > 1:
            return f"{' '.join(said[:-1])} {self._and} {said[-1]}"
        return " ".join(said) or self.g.counted(literals[-1], nouns[-1])


def _names(grammar: Grammar, what: Noun) -> frozenset[str]:
    """The noun's forms and the symbols of two letters or more that stand for it."""
    table = grammar.table("units.names")
    symbols = (symbol for symbol, entry in table.items() if len(symbol) > 1 and noun(str(entry)) == what)
    return frozenset((what.one, what.more, *symbols))
