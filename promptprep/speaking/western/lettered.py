"""Figures behind a letter and a sign: f/2.8, T-10 seconds, CO₂, mc²."""

from __future__ import annotations

import re
import unicodedata

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar, leans_left, noun, word_after
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.units import Units

SUBSCRIPTS = "₀₁₂₃₄₅₆₇₈₉"
_LOWERED = re.compile(f"[{SUBSCRIPTS}]{{1,6}}")
_PRODUCT = re.compile(r"(?<![\w\ufffc])[b-df-hj-np-tv-z]{2,3}\Z")
_LONGEST_PRODUCT = 4


class Apertures:
    """The f-numbers of lenses."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if text[at - 2 : at] not in ("f/", "F/", "ƒ/") or at - 2 < floor or text[at - 3 : at - 2].isalnum():
            return None
        number = self.g.literals.at(text, at)
        return Reading(Span(at - 2, number.end), f"f {self.g.number(number)}", "measure") if number else None


class Mileposts:
    """A unit in front of its figure: km 5. `units.leading` maps symbols to what they are called there."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._names = grammar.data.maybe("spoken", "units.leading", {})
        symbols = "|".join(re.escape(s) for s in self._names) or "(?!)"
        self._left = re.compile(rf"(?<![\w.])({symbols})[ \u00a0\u202f]\Z")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._left.search(text, max(floor, at - _LONGEST_PRODUCT), at) if self._names else None
        number = self.g.literals.at(text, at) if found else None
        if found is None or number is None:
            return None
        return Reading(Span(found.start(), number.end), f"{self._names[found[1]]} {self.g.number(number)}", "measure")


class Countdowns:
    """The time before and after a launch: T-10 seconds, T+2 minutes."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._signs = {"-": grammar.minus, "−": grammar.minus, "–": grammar.minus, "+": grammar.text("serials.plus")}
        self._units = frozenset(w for n in (grammar.hour, grammar.minute, grammar.second) for w in (n.one, n.more))
        self._short = {"h": grammar.hour, "min": grammar.minute, "s": grammar.second}

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        sign = self._signs.get(text[at - 1 : at]) if text[at - 2 : at - 1] == "T" and at - 1 >= floor else None
        number = self.g.literals.at(text, at) if sign and not text[at - 3 : at - 2].isalnum() else None
        after = word_after(text, number.end) if number else ""
        if number is None or not (after in self._units or after in self._short):
            return None
        if unit := self._short.get(after):
            end = number.end + 1 + len(after)
            return Reading(Span(at - 1, end), f" {sign} {self.g.counted(number, unit)}", "measure")
        return Reading(Span(at - 1, number.end), f" {sign} {self.g.number(number)}", "measure")


class Zones:
    """Hours from world time: GMT-3, UTC-05:00."""

    _pattern = re.compile(r"(\d{1,2})(?::([0-5]\d))?(?![\w]|[.,:/-]\d)")
    _left = re.compile(r"(?<!\w)(?:GMT|UTC|BST|CET)([-−–+])\Z")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._signs = {"+": grammar.text("serials.plus")}

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        left = self._left.search(text, max(0, at - 5), at) if at > floor else None
        found = self._pattern.match(text, at) if left else None
        if not left or not found:
            return None
        hours = self.g.cardinal(found[1].lstrip("0") or "0")
        minutes = f" {self.g.cardinal(found[2])}" if found[2] and int(found[2]) else ""
        said = f" {self._signs.get(left[1], self.g.minus)} {hours}{minutes}"
        return Reading(Span(at - 1, found.end()), said, "clock")


class Angles:
    """Degrees with minutes and a compass point: 41°24'12"N. `compass` names the points, or they stay letters."""

    _minus = re.compile(r"(?<![^\s(:])([-−])\Z")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._points = dict(grammar.data.maybe("spoken", "compass", {}))
        self._degree = noun(str(grammar.table("units.names")["°"]))
        point = "".join(sorted(self._points)) or "NSEW"
        seconds = r"(\d{1,2})(?:[.,](\d{1,3}))?(?:[\"″”]|'')"
        minutes = rf"[ \u00a0]?(\d{{1,2}})['′’](?:[ \u00a0]?{seconds})?"
        degrees = r"(\d{1,3})(?:[.,](\d{1,8}))?[ \u00a0]?[°º]"
        self._pattern = re.compile(rf"{degrees}({minutes})?[ \u00a0]?([{point}])?(?!\w)")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or not (found[3] or found[7]) or leans_left(text, at, ".,"):
            return None
        whole, part, _, minutes, seconds, rest, point = found.groups()
        counted = [(Literal(whole, part or "", 0, mark=self.g.literals.mark), self._degree)]
        if minutes:
            counted.append((Literal(minutes, "", 0), self.g.minute))
        if seconds:
            counted.append((Literal(seconds, rest or "", 0, mark=self.g.literals.mark), self.g.second))
        said = [self.g.counted(number, what) for number, what in counted]
        if point:
            said.append(str(self._points.get(point, point)))
        minus = self._minus.search(text, max(floor, at - 2), at)
        if minus:
            said.insert(0, self.g.minus)
        return Reading(Span(minus.start(1) if minus else at, found.end()), " ".join(said), "measure")


class Comets:
    """Their designations (IAU, 1995): 67P/Churyumov, C/2023 A3."""

    _numbered = re.compile(r"(\d{1,3})([PDI])/(?=[A-Z])")
    _dated = re.compile(r"(\d{4}) ([A-Z]{1,2})(\d{0,3})(?!\w)")
    _letter = re.compile(r"(?<![\w/])([CPDXAI])/\Z")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if (found := self._numbered.match(text, at)) and not text[at - 1 : at].isalnum():
            return Reading(Span(*found.span()), f"{self.g.cardinal(found[1])} {found[2]} ", "serial")
        letter = self._letter.search(text, max(floor, at - 2), at)
        found = self._dated.match(text, at) if letter else None
        if not letter or not found:
            return None
        said = [letter[1], self.g.year(found[1]), *found[2]] + ([self.g.cardinal(found[3])] if found[3] else [])
        return Reading(Span(letter.start(), found.end()), " ".join(said), "serial")


class PowersOfTen:
    """As computers write them: 3.0e8, 1E-9."""

    _pattern = re.compile(r"(\d{1,15})(?:[.,](\d{1,15}))?[eE]([-−+]?)(\d{1,3})(?![\w.,]*\d|\w)")

    def __init__(self, grammar: Grammar, units: Units) -> None:
        self.g = grammar
        self.units = units
        self._times = noun(grammar.text("multiples.times")).one
        self._power = str(grammar.table("symbols.between_figures")["^"])

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        written = found and (found[2] or found[3])
        if not found or not written or leans_left(text, at, ".,"):
            return None
        number = self.g.number(Literal(found[1], found[2] or "", 0, mark=self.g.literals.mark))
        minus = f"{self.g.minus} " if found[3] in ("-", "−") else ""
        ten, exponent = self.g.cardinal("10"), self.g.cardinal(found[4])
        said = f"{number} {self._times} {ten} {self._power} {minus}{exponent}"
        if unit := self.units.at(text, found.end()):
            return Reading(Span(at, unit.end), f"{said} {unit.noun.more}", "measure")
        return Reading(Span(*found.span()), said, "cardinal")


def lowered(grammar: Grammar, text: str, at: int) -> Reading | None:
    """The number of atoms in a formula, behind a letter."""
    found = _LOWERED.match(text, at)
    if not found or not text[at - 1 : at].isalpha():
        return None
    digits = "".join(str(unicodedata.digit(c)) for c in found[0])
    return Reading(Span(*found.span()), grammar.cardinal(digits), "symbol")


def product_before(text: str, at: int, floor: int) -> str:
    """Letters that are multiplied in front of a raised figure ("mc²"), or ""."""
    found = _PRODUCT.search(text, max(floor, at - _LONGEST_PRODUCT), at)
    return found[0] if found else ""
