"""Two figures with a bar that are no fraction, and ages by a sign, as French and Spanish copy writes them."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar, noun, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.units import alternatives

_LINKED = re.compile(r"[\w.,:/–-]\Z")
_LEFT = 12
_YEAR = 2  # figures


class BarredRanges:
    """From a smaller to a larger measure: 800/1000 m, 10/15 cm, 24/48 h. Below ten it may be a fraction."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._to = grammar.text("numbers.range").partition("{}")[2].partition("{}")[0]
        units = alternatives(grammar.table("units.names"))
        self._pattern = re.compile(rf"(\d{{2,4}})/(?=(\d{{2,5}})[ \u00a0\u202f]?(?:{units})(?![\w/]))")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or not int(found[1]) < int(found[2]) or _LINKED.search(text, max(0, at - 1), at):
            return None
        return Reading(Span(*found.span()), f"{self.g.cardinal(found[1])}{self._to}", "range")


class Steps:
    """One of several: "étape 1/3", "paso 1/3"; and seasons by two years: "saison 24/25".

    `steps.before` and `steps.seasons` list the words in front, `steps.of` says the bar.
    """

    _pattern = re.compile(r"(\d{1,3})/(\d{1,3})(?![\w/]|[.,]\d)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._before = grammar.wordset("steps.before")
        self._seasons = grammar.wordset("steps.seasons")
        self._of = grammar.text("steps.of")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        before = word_before(text, at).casefold() if found else ""
        if not found or not before:
            return None
        if before in self._seasons and len(found[1]) == len(found[2]) == _YEAR and int(found[2]) == int(found[1]) + 1:
            return Reading(Span(*found.span()), ", ".join(map(self.g.cardinal, found.groups())), "year")
        if before not in self._before:
            return None
        return Reading(Span(*found.span()), self._of.format(*map(self.g.cardinal, found.groups())), "fraction")


class BarredSets:
    """The sets of a match, two at least: "6/4 6/3", "6/4, 3/6 et 7/5"."""

    _pair = r"(?:[67]/[0-7]|[0-5]/[67])"
    _joined = r"(?:,?[ \u00a0]|,?[ \u00a0](?:et|y|e)[ \u00a0])"
    _set = re.compile(rf"(?={_pair})(\d)/(\d)(?![\w/-]|[.,:]\d)(?=({_joined}{_pair}(?![\w/-]))?)")
    _before = re.compile(rf"{_pair}{_joined}\Z")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._between = grammar.text("scores.between")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._set.match(text, at)
        if not found or _LINKED.search(text, max(0, at - 1), at):
            return None
        if not (found[3] or self._before.search(text, max(0, at - _LEFT), at)):
            return None
        said = self._between.format(self.g.cardinal(found[1]), self.g.cardinal(found[2]))
        return Reading(Span(*found.span()), said, "score")


class SignedAges:
    """ "-12 ans", "+65 años": younger or older than. `ages` names the word behind and what the signs say."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._signs = {str(k): str(v) for k, v in grammar.table("ages.signs").items()}
        years = alternatives(grammar.wordset("ages.years"))
        self._left = re.compile(rf"(?<![\w.,%€)])([{''.join(map(re.escape, self._signs))}])\Z")
        self._number = re.compile(rf"\d{{1,3}}(?=[ \u00a0](?:{years}|(kg))(?!\w))")
        self._kilo = noun(str(grammar.table("units.names")["kg"]))
        self._of_class = re.compile(rf"(?<!\w)(?:{alternatives(grammar.wordset('ages.classes'))})[ \u00a0]\Z")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        number = self._number.match(text, at)
        sign = self._left.search(text, max(floor, at - 2), at) if number else None
        if not number or not sign:
            return None
        if number[1] and not self._of_class.search(text, max(0, sign.start() - _LEFT), sign.start()):
            return None
        said, end = self.g.cardinal(number[0]), number.end()
        if number[1]:
            said, end = self.g.counted(Literal(number[0], "", 0), self._kilo), number.end(1)
        return Reading(Span(sign.start(), end), f"{self._signs[sign[1]]} {said}", "cardinal")
