"""Letters that stand right behind a figure: "3x" is three times, "1.5M" is one and a half million."""

from __future__ import annotations

import re
from typing import NamedTuple

from promptprep.speaking.western.grammar import Grammar, Noun, noun
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.units import alternatives

_BLANK = r"[ \u00a0\u202f\u2009]"
# Not before a figure or letter (4x4, 0x1F) nor in a sum (2x + 1); but a power of ten is multiplied (2×10^8).
_TIMES = re.compile(
    rf"(?:[x×]|X(?={_BLANK}[a-z])|{_BLANK}[x×](?={_BLANK}(?:[A-Z]{{1,2}}\$|[$€£])))(?:(?=10[\^⁰¹²³⁴⁵⁶⁷⁸⁹⁻])|(?!\w|\^|{_BLANK}?[+=−–*^]|{_BLANK}?/(?![a-zà-ÿ]{{3}})|{_BLANK}-{_BLANK}))"
)
_BY = re.compile(rf"[xX](?=\d)|{_BLANK}[xX×]{_BLANK}(?=(\d+))")
_SUM_AHEAD = 16
_REPEATS, _LONG = 10, 25  # "4 x 100 m": at most so many times, of something so much larger
_TIME_NEXT = re.compile(rf"{_BLANK}?(?:min|mn|s|h|g|kg|mg|ml|cl)(?!\w)")
_MEASURE_NEXT = re.compile(rf"{_BLANK}?[^\W\d_]{{1,2}}[²³23]?(?!\w)|[.,]\d|{_BLANK}?[xX×]")
_RESULT = re.compile(rf"\d+{_BLANK}?=")
_LONG_RUN = re.compile(rf"(\d{{2,5}}){_BLANK}?m(?!\w)")
_SCORE_LEFT = 32
_SMALL_PAIR = re.compile(r"\d{1,2}(?![\w²³]|[.,]\d|[xX]\d)")
_TEAM_LEFT = re.compile(r"[A-ZÀ-Ý][^\W\d_]+ \d{1,2}\Z")
_TEAM_RIGHT = re.compile(r"\d{1,2} [A-ZÀ-Ý][^\W\d_]")
_NEXT_WORDS = re.compile(rf"{_BLANK}([^\W\d_]+)(?:{_BLANK}([^\W\d_]+))?")
_CROWD = re.compile(rf"m{_BLANK}([a-z]+)(?:{_BLANK}([a-z]+))?")
_LINKING = 3
_HUNDRED, _BASKETS = 100, range(60, 170)
_SUM_AHEAD = 24


class Short(NamedTuple):
    """What the letters say, and where they end."""

    noun: Noun
    end: int


class Shorthand:
    """`multiples.times` is the word for "x" ("one|more|gender"); `magnitudes.counting` maps letters to magnitudes."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._times = noun(grammar.text("multiples.times"))
        self._repeats = str(grammar.data.maybe("spoken", "multiples.repeats", self._times.more))
        self._by = noun(str(grammar.table("symbols.between_figures")["×"]))
        self._multiplied = noun(str(grammar.table("symbols.words")["×"]))
        self._score = noun(str(grammar.data.maybe("spoken", "scores.cross", "")))
        units = alternatives(grammar.table("units.names"))
        self._measure_next = re.compile(rf"{_BLANK}?(?:{units})[²³23]?(?![\w'’])|[.,]\d|{_BLANK}?[xX×]")
        repeated = alternatives(grammar.data.maybe("spoken", "multiples.counted", ())) or "(?!)"
        money = alternatives(k for k in grammar.table("currencies") if not k[-1].isalpha())
        self._counted_next = re.compile(rf"(?:[.,]\d\d)?{_BLANK}?(?:(?:{money})|(?:{repeated})(?!\w))")
        self._magnitudes = {k: noun(v) for k, v in grammar.data.maybe("spoken", "magnitudes.counting", {}).items()}
        self._crowds = frozenset(grammar.data.maybe("spoken", "magnitudes.crowds", ()))
        words = alternatives(grammar.data.maybe("spoken", "scores.before", ()))
        self._played = re.compile(rf"(?<!\w)(?:{words})(?!\w)[^.;!?]*\Z", re.IGNORECASE)
        self._tight = bool(grammar.data.maybe("spoken", "scores.cross_tight", False))
        self._paid = frozenset(grammar.data.maybe("spoken", "magnitudes.paid", ()))
        self._million = self._magnitudes.get("M")
        self._paid_in = {k.lower(): v for k, v in self._magnitudes.items()}
        self._paid_letter = re.compile(rf"([{''.join(sorted(self._paid_in)) or '~'}])(?![\w/²³])")
        letters = "|".join(re.escape(k) for k in sorted(self._magnitudes)) or "(?!)"
        self._letters = re.compile(rf"({letters})(?!\w)")

    def times(self, text: str, at: int) -> Short | None:
        """ "3x faster", "2×10^8"."""
        found = _TIMES.match(text, at)
        if not found:
            return None
        return Short(self._multiplied if text.startswith("10", found.end()) else self._times, found.end())

    def word_by(self, text: str, at: int) -> str:
        """What a lone "x" between figures says: "by" between sides, "times" in a sum."""
        return self._times.one if "=" in text[at : at + _SUM_AHEAD] else self._by.one

    def by(self, text: str, at: int, number: Literal, *, bare: bool = True) -> Short | None:
        """A side's length with the next one behind it: 4x4, 1920x1080, 3 x 4 m; not after a nought (0x1F).

        The same sign between blanks multiplies before an "=" and where something long is repeated (4 x 100 m); where
        `scores.cross` has a word, it parts a score's `bare` small figures (2 x 1).
        """
        found = _BY.match(text, at)
        if not found or not number.is_whole or not (number.value or found[1] or self._is_played(text, at, found.end())):
            return None
        if not found[1] and self._is_played(text, at, found.end()):
            return Short(self._score, found.end())
        if not found[1] and _RESULT.match(text, found.end()):
            return Short(self._multiplied, found.end())
        if not found[1]:
            return Short(self._relay(text, found.end(), number.value) or self._by, found.end())
        return Short(self._sign(text, found, number.value, bare), found.end())

    def _relay(self, text: str, at: int, first: int) -> Noun | None:
        """What the sign of "4x100 m" says, where something long is run again and again."""
        found = _LONG_RUN.match(text, at)
        if not found or not 1 < first <= _REPEATS or int(found[1]) < _LONG * first:
            return None
        return Noun(self._repeats, self._repeats)

    def _is_played(self, text: str, at: int, end: int) -> bool:
        """Whether "2x1" stands behind a word of a score, between two teams, or (`scores.cross_tight`) falls."""
        left = text[max(0, at - _SCORE_LEFT) : at]
        second = _SMALL_PAIR.match(text, end) if self._score.one else None
        if second is None or self._measure_next.match(text, second.end()):
            return False
        first = text[max(0, at - 2) : at].lstrip()
        if self._tight and first.isdecimal() and (first == "0" or second[0] < first <= "9"):
            return True
        return bool(self._played.search(left) or (_TEAM_LEFT.search(left) and _TEAM_RIGHT.match(text, end)))

    def _sign(self, text: str, found: re.Match[str], first: int, bare: bool) -> Noun:
        second = found[1]
        if "=" in text[found.end() : found.end() + _SUM_AHEAD]:
            return self._multiplied
        if _TIME_NEXT.match(text, found.end(1)):
            return Noun(self._times.more, self._times.more)
        if self._counted_next.match(text, found.end(1)):
            return Noun(self._times.more, self._times.more)
        if 0 < first <= _REPEATS and int(second[:9]) >= _LONG * first:
            return Noun(self._repeats, self._repeats) if first > 1 else self._by
        crossed = "×" in found[0]
        if crossed and bare and not _MEASURE_NEXT.match(text, found.end(1)):
            return self._multiplied
        scored = bare and not crossed and _is_score(first, int(second[:9])) and self._score.one
        return self._score if scored and not self._measure_next.match(text, found.end(1)) else self._by

    def magnitude(self, text: str, at: int, number: Literal) -> Short | None:
        """ "1.5M", "20K views": after a decimal always, after a whole number only where things are counted.

        A whole number with a letter may be a name: a 4K camera, row 12B, a 5K run.
        """
        found = self._letters.match(text, at)
        if not found or not (number.fraction or self._counts_something(text, found.end())):
            return None
        return Short(self._magnitudes[found[1]], found.end())

    def crowd(self, text: str, at: int, before: str) -> Short | None:
        """ "5m people", "spent 2m": the letter of the metre, before a word that nobody measures or after a payment."""
        found = _CROWD.match(text, at)
        counted = found and not self._crowds.isdisjoint(found.groups())
        if before.casefold() in self._paid and (letter := self._paid_letter.match(text, at)):
            return Short(self._paid_in[letter[1]], at + 1)
        return Short(self._million, at + 1) if counted and self._million else None

    def perhaps_million(self, text: str, at: int) -> Noun | None:
        """Of "1.5m waves": a metre as likely as a million, where a counted plural follows an "m" without a blank."""
        found = _CROWD.match(text, at) if self._million else None
        return self._million if found and self.g.counts(found[1]) else None

    def _counts_something(self, text: str, at: int) -> bool:
        """Whether the next word is a counted plural, or the one behind a longer word is ("5M active users")."""
        found = _NEXT_WORDS.match(text, at)
        if not found:
            return False
        first, second = found[1], found[2] or ""
        between = first.islower() and len(first) > _LINKING
        return self.g.counts(first) or (between and self.g.counts(second))


def _is_score(first: int, second: int) -> bool:
    """Two figures each, or what teams reach in basketball."""
    return max(first, second) < _HUNDRED or (first in _BASKETS and second in _BASKETS)
