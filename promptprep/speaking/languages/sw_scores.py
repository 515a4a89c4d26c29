"""Swahili scores, products and sides: "mabao 3-1", "2 x 3 = 6", "sentimita 30 x 40"."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.sw_numbers import SwahiliNumbers
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import Handler, reading, word_before

GAP = "[ \u00a0\u202f]"
HIGHEST_SCORE = 30  # above it two falling figures may be of another kind
REACH = 40  # characters before a pair of figures in which a word of sport makes it a score


class SwahiliScores:
    """Handlers for two numbers that are set against each other."""

    def __init__(self, data: LanguageData, numbers: SwahiliNumbers) -> None:
        self._numbers = numbers
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._degree: str = data.get("spoken", "symbols")["°"]
        words = "|".join(re.escape(w) for w in data.get("spoken", "scores.words"))
        self._sport = re.compile(rf"(?:{words})[^.!?\n]{{0,24}}\Z", re.IGNORECASE)

    def rules(self, number: str) -> list[tuple[str, Handler]]:
        return [
            (r"(\d{1,3})[-–:](\d{1,3})(?=\s*(?:dhidi|mabao|magoli)\b)", self._score),
            (r"(24/7|(\d\d)/\2)(?![\d/])", self._idiom),
            (r"(\d{1,3})°[ ]?(\d{1,2})[′'’](?:[ ]?(\d{1,2})[″\"”])?", self._angle),
            self.minus(number),
            (r"(\d{1,2})(?::|[ \u00a0]?[-–][ \u00a0]?)(\d{1,2})(?![\d:%-]|[.,]\d)", self._after_sport),
        ]

    def minus(self, number: str) -> tuple[str, Handler]:
        """ "6 - 2 = 4" takes away."""
        return rf"({number}){GAP}(?:[-–](?={GAP}{number}{GAP}?=)|−(?={GAP}\d))", self._minus

    def _angle(self, found: re.Match[str]) -> Reading:
        """ "55°45′" -> "nyuzi hamsini na tano dakika arobaini na tano"."""
        names = (self._degree, self._word["minute"], self._word["second"])
        said = (f"{name} {self._say(n)}" for n, name in zip(found.groups(), names, strict=True) if n)
        return reading(found, " ".join(said), "measure")

    def _idiom(self, found: re.Match[str]) -> Reading:
        """ "24/7", "50/50": said as they stand."""
        first, last = (self._say(n) for n in found[1].split("/"))
        return reading(found, f"{first} {self._word['over']} {last}", "symbol")

    def _minus(self, found: re.Match[str]) -> Reading:
        return reading(found, f"{self._say(found[1])} {self._word['less']}", "symbol")

    def _say(self, written: str) -> str:
        plain = re.sub(r"[,\s]", "", ascii_digits(written))
        whole, _, part = plain.partition(".")
        return self._numbers.decimal(whole, part) if part else self._numbers.cardinal(whole)

    def ratio(self) -> tuple[str, Handler]:
        """After the clock: what is no time is a score or a ratio."""
        return r"(\d{1,3}) ?: ?(\d{1,4})(?![\d:])", self._score

    def times(self, number: str) -> tuple[str, Handler]:
        return rf"({number}){GAP}?[x×]{GAP}?(?=(?P<equals>{number}{GAP}?=|10[\^⁻⁰¹²³⁴-⁹])|\d)", self._times

    def _score(self, found: re.Match[str]) -> Reading:
        before = word_before(found.string, found.start())
        prefix = self._numbers.class_of(before) if before.startswith("ma") else ""
        first = self._numbers.cardinal(ascii_digits(found[1]), prefix)
        return reading(
            found, f"{first} {self._word['score']} {self._numbers.cardinal(ascii_digits(found[2]))}", "score"
        )

    def _after_sport(self, found: re.Match[str]) -> Reading | None:
        start = found.start()
        return self._score(found) if self._sport.search(found.string, max(0, start - REACH), start) else None

    def falling(self, first: str, last: str, *, row: bool = False) -> str | None:
        """ "3-1": what does not rise is no range; in a `row` of pairs all are scores."""
        if not (first + last).isdecimal():
            return None
        falls = int(first) == int(last) or HIGHEST_SCORE >= int(first) > int(last)
        if not (falls or row):
            return None
        return f"{self._numbers.cardinal(first)} {self._word['score']} {self._numbers.cardinal(last)}"

    def _times(self, found: re.Match[str]) -> Reading:
        """ "2 x 3 = 6" multiplies; "30 x 40" are sides."""
        return reading(found, f"{self._say(found[1])} {self._word['times' if found['equals'] else 'over']}", "symbol")
