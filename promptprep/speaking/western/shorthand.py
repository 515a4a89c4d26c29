"""Letters that stand right behind a figure: "3x" is three times, "1.5M" is one and a half million."""

from __future__ import annotations

import re
from typing import NamedTuple

from promptprep.speaking.western.grammar import Grammar, Noun, noun
from promptprep.speaking.western.literal import Literal

_BLANK = r"[ \u00a0\u202f\u2009]"
# Not before a figure or letter (4x4, 0x1F) nor in a sum (2x + 1); but a power of ten is multiplied (2×10^8).
_TIMES = re.compile(
    rf"(?:[x×]|X(?={_BLANK}[a-z]))(?:(?=10[\^⁰¹²³⁴⁵⁶⁷⁸⁹⁻])|(?![\w^]|{_BLANK}?[+=−–*/^]|{_BLANK}-{_BLANK}))"
)
_BY = re.compile(r"[xX](?=\d)")
_NEXT_WORDS = re.compile(rf"{_BLANK}([^\W\d_]+)(?:{_BLANK}([^\W\d_]+))?")
_CROWD = re.compile(rf"m{_BLANK}([a-z]+)(?:{_BLANK}([a-z]+))?")
_LINKING = 3


class Short(NamedTuple):
    """What the letters say, and where they end."""

    noun: Noun
    end: int


class Shorthand:
    """`multiples.times` is the word for "x" ("one|more|gender"); `magnitudes.counting` maps letters to magnitudes."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._times = noun(grammar.text("multiples.times"))
        self._by = noun(str(grammar.table("symbols.between_figures")["×"]))
        self._magnitudes = {k: noun(v) for k, v in grammar.data.maybe("spoken", "magnitudes.counting", {}).items()}
        self._crowds = frozenset(grammar.data.maybe("spoken", "magnitudes.crowds", ()))
        self._million = self._magnitudes.get("M")
        letters = "|".join(re.escape(k) for k in sorted(self._magnitudes)) or "(?!)"
        self._letters = re.compile(rf"({letters})(?!\w)")

    def times(self, text: str, at: int) -> Short | None:
        """ "3x faster", "2×10^8"."""
        found = _TIMES.match(text, at)
        return Short(self._times, found.end()) if found else None

    def by(self, text: str, at: int, number: Literal) -> Short | None:
        """A side's length with the next one behind it: 4x4, 1920x1080; not after a nought (0x1F)."""
        found = _BY.match(text, at)
        return Short(self._by, found.end()) if found and number.is_whole and number.value else None

    def magnitude(self, text: str, at: int, number: Literal) -> Short | None:
        """ "1.5M", "20K views": after a decimal always, after a whole number only where things are counted.

        A whole number with a letter may be a name: a 4K camera, row 12B, a 5K run.
        """
        found = self._letters.match(text, at)
        if not found or not (number.fraction or self._counts_something(text, found.end())):
            return None
        return Short(self._magnitudes[found[1]], found.end())

    def crowd(self, text: str, at: int) -> Short | None:
        """ "5m people": the letter of the metre, before a word that nobody measures."""
        found = _CROWD.match(text, at)
        counted = found and not self._crowds.isdisjoint(found.groups())
        return Short(self._million, at + 1) if counted and self._million else None

    def _counts_something(self, text: str, at: int) -> bool:
        """Whether the next word is a counted plural, or the one behind a longer word is ("5M active users")."""
        found = _NEXT_WORDS.match(text, at)
        if not found:
            return False
        first, second = found[1], found[2] or ""
        between = first.islower() and len(first) > _LINKING
        return self.g.counts(first) or (between and self.g.counts(second))
