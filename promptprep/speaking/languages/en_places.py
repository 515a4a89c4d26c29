"""English addresses: points of the compass with streets and winds ("1600 W. 23rd St."), states behind their towns."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import Grammar
from promptprep.speaking.western.units import alternatives

_POINT = r"(?:[NS][NS][EW]|[EW][NS][EW]|[NS]\.?[EW]|[NSEW])"
_LEFT_NAME, _LEFT_POINT = 32, 6
_YEAR_LIKE = range(1000, 2200)
_TOWN = re.compile(r"(?<![\w.])(?:[A-Z][\w'’]*[a-z]{2,}\.?,[ \u00a0]|[RDI]-)\Z")
_WIND_NEXT = re.compile(r"[ \u00a0](?:winds?|of|by|horizon|sky|corner|side|coast|quadrant)\b")
_DOTTED = re.compile(r"([A-Z])\.([A-Z])\.(?!\w)")
_CLOSED = re.compile(r"[ \u00a0]\d{5}(?!\d)")
_ENDS = re.compile(r"(?!\w)(?:[,;.)]|[ \u00a0][a-z]|\s*\Z|\n)")
_ALSO_WORDS = frozenset(("HI", "ID", "IN", "MA", "ME", "MS", "OH", "OK", "OR", "PA"))


class Streets:
    """A house's number with a point of the compass ("500 N. Main St."), or the point before a street's rank."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self.points: dict[str, str] = dict(grammar.table("places.directions"))
        kinds = alternatives(grammar.wordset("places.streets"))
        ahead = rf"(?=\d{{1,3}}(?:st|nd|rd|th)(?!\w)|(?:[A-Z][\w'’]+[ \u00a0]){{1,3}}(?:{kinds})(?!\w))"
        self._house = re.compile(rf"(\d{{1,5}})[ \u00a0]({_POINT})\.?[ \u00a0]{ahead}")
        self._named = re.compile(rf"({_POINT})\.?[ \u00a0]{ahead}")
        self._rank = re.compile(r"(\d{1,3})(?:st|nd|rd|th)(?!\w)")
        self._point_left = re.compile(rf"(?<![\w.])({_POINT})\.?[ \u00a0]\Z")
        self._behind = re.compile(rf"(?:[A-Z]\w+|\dth|\dst|\dnd|\drd)[ \u00a0](?:{kinds})\.?,?[ \u00a0]\Z")
        self._wind_left = re.compile(
            r"(?:\b[Ww]inds?|\b(?:from|in|to|of)[ \u00a0]the|[ \u00a0]\d{1,3}[ \u00a0]?(?:mi|miles|km))[ \u00a0]\Z"
        )
        self._point = re.compile(rf"({_POINT})(?![\w&/-]|\.\w|[ \u00a0]*[=+])|([NS]\.[EW]|[NSEW])\.(?!\w)")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if found := self._house.match(text, at):
            if text[at - 1 : at].isalnum():
                return None
            number = self.g.year(found[1]) if int(found[1]) in _YEAR_LIKE else self.g.cardinal(found[1])
            return Reading(Span(at, found.end()), f"{number} {self._said(found[2])} ", "cardinal")
        rank = self._rank.match(text, at)
        left = self._point_left.search(text, max(floor, at - _LEFT_POINT), at) if rank else None
        if not left or not rank:
            return None
        return Reading(Span(left.start(), rank.end()), f"{self._said(left[1])} {self.g.ordinal(rank[1])}", "ordinal")

    def named(self, text: str, at: int) -> Reading | None:
        """A point behind its street, before a street's name, or of a wind."""
        found = self._point.match(text, at)
        if not found:
            return None
        point = found[1] or found[2]
        left = text[max(0, at - _LEFT_NAME) : at]
        if street := self._named.match(text, at):
            return Reading(Span(at, street.end() - 1), self._said(point), "abbreviation")
        windy = len(point) > 1 and (_WIND_NEXT.match(text, found.end()) or self._wind_left.search(left))
        if not windy and not self._behind.search(left):
            return None
        end = sentence_end(text, at, found.end(), self.g.openers)
        said = self._said(point)
        return Reading(Span(at, end), said.lower() if windy else said, "abbreviation")

    def _said(self, point: str) -> str:
        return self.points[point.replace(".", "")]


class Roads:
    """A road's number with the way it leads: "I-95 N", "Rte. 9W"."""

    _number = re.compile(rf"(\d{{1,3}})(?:[ \u00a0]({_POINT})(?![\w.&-])|([NSEW])(?!\w))")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self.points: dict[str, str] = dict(grammar.table("places.directions"))
        self._left = re.compile(rf"(?<!\w)(?:{alternatives(grammar.wordset('places.roads'))})[- \u00a0]\Z")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._number.match(text, at)
        if not found or not self._left.search(text, max(0, at - _LEFT_NAME), at):
            return None
        way = self.points[found[2].replace(".", "")] if found[2] else found[3]
        return Reading(Span(*found.span()), f"{self.g.cardinal(found[1])} {way}", "serial")


class States:
    """A state in two letters behind its town: "Austin, TX"; those that are words too only before a postal code."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self.names: dict[str, str] = dict(grammar.table("places.states"))

    def named(self, text: str, at: int) -> Reading | None:
        if text[at + 1 : at + 2] == ".":
            return self._dotted(text, at)
        name = self.names.get(text[at : at + 2])
        if not name or text[at + 2 : at + 3].isalnum() or text[at - 1 : at] not in (" ", "\u00a0", "-"):
            return None
        if not _TOWN.search(text, max(0, at - _LEFT_NAME), at):
            return None
        coded = _CLOSED.match(text, at + 2)
        if not coded and (text[at : at + 2] in _ALSO_WORDS or not _ENDS.match(text, at + 2)):
            return None
        return Reading(Span(at, at + 2), name, "abbreviation")

    def _dotted(self, text: str, at: int) -> Reading | None:
        found = _DOTTED.match(text, at)
        name = self.names.get(f"{found[1]}{found[2]}") if found else None
        if found is None or not name or not _TOWN.search(text, max(0, at - _LEFT_NAME), at):
            return None
        return Reading(Span(at, sentence_end(text, at, found.end(), self.g.openers)), name, "abbreviation")
