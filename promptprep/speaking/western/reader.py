"""The verbaliser that the Western languages share: which part reads what begins at a place."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.dates import Clocks, Dates
from promptprep.speaking.western.durations import Durations
from promptprep.speaking.western.grammar import Grammar
from promptprep.speaking.western.lettered import (
    SUBSCRIPTS,
    Angles,
    Apertures,
    Countdowns,
    PowersOfTen,
    lowered,
    product_before,
)
from promptprep.speaking.western.letters import CAPITALS, Abbreviations, Capitals
from promptprep.speaking.western.literal import VULGAR
from promptprep.speaking.western.quantities import Quantities
from promptprep.speaking.western.serials import Fractions, Ordinals, Ratios, Serials

Read = Callable[[str, int, int], Reading | None]
SUPERSCRIPTS = "⁰¹⁴⁵⁶⁷⁸⁹⁻"
_RAISED = re.compile("(⁻)?([⁰¹²³⁴⁵⁶⁷⁸⁹]{1,6})")
_LONGEST_JOINED = 12
_WORD_LEFT = re.compile(r"(?<![\w/])[^\W\d_]+\Z")
_WORD_RIGHT = re.compile(r"[^\W\d_]+(?![\w/])")
_OPERATED = re.compile(r"\d[ \u00a0]?\Z")
_SUM_AHEAD = 24
_SILENT = "™®"
_EXPONENT = re.compile(r"[-−]?\d")
_OPERAND = re.compile(r"[ \u00a0]?\d")
_TIMED = re.compile(r"[$€£¥]\d|\d{1,2}(?:[:h]\d\d|\s?[ap]\.?m)")
_RANKED = re.compile(r"\d{1,3}(?:st|nd|rd|th)\b")
_TIGHT = re.compile(r"[$€£¥]?\d")
_DIGIT_NEAR = re.compile(r"[-−+±~≈<>≤≥]?[ \u00a0\u202f]?[-−+]?(?=\d)")


class Western:
    """`Verbaliser` by parts; the first part that gives a reading wins, so their order is the languages' priority."""

    spaced = True

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self.quantities = Quantities(grammar)
        self.capitals = Capitals(grammar, frozenset(self.quantities.currencies))
        self.abbreviations = Abbreviations(grammar)
        self.parts: tuple[Read, ...] = (
            Angles(grammar).at,
            PowersOfTen(grammar, self.quantities.units).at,
            Durations(grammar).at,
            Clocks(grammar).at,
            Dates(grammar).at,
            *(part(grammar).at for part in grammar.own_parts),
            Ordinals(grammar).at,
            Serials(grammar).at,
            Fractions(grammar, self.quantities.units).at,
            Ratios(grammar).at,
            Apertures(grammar).at,
            Countdowns(grammar).at,
            self.quantities.at,
        )
        self.symbols = grammar.table("symbols.words")
        self.between = grammar.table("symbols.between_figures")
        self.pairs = grammar.data.maybe("spoken", "symbols.doubled", {})
        self.joined = grammar.data.maybe("spoken", "symbols.joined", {})
        self.currency_marks = {k: v.unit.more for k, v in self.quantities.currencies.items() if not k[-1].isalpha()}
        marks = "".join(re.escape(k[-1]) for k in (*self.symbols, *self.currency_marks))
        self.operators = grammar.data.maybe("spoken", "symbols.operators", {})
        marks += "".join(re.escape(k) for k in self.operators)
        self.starts = re.compile(rf"[\d{VULGAR}{CAPITALS}.º°–\-{SUPERSCRIPTS}{SUBSCRIPTS}{_SILENT}{marks}]")

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        character = text[at]
        if character.isdecimal():
            return self._figure(text, at, floor)
        if character == ".":
            return self._dot(text, at, floor)
        if character.isupper():
            return self.capitals.at(text, at, floor)
        if character in VULGAR:
            return self.quantities.at(text, at, floor)
        return self._symbol(text, at, floor)

    def _figure(self, text: str, at: int, floor: int) -> Reading | None:
        for part in self.parts:
            found = part(text, at, floor)
            if found is not None:
                return found
        return None

    def _dot(self, text: str, at: int, floor: int) -> Reading | None:
        if text[at + 1 : at + 2].isdecimal() and not text[at - 1 : at].isalnum() and self.g.literals.mark == ".":
            return self.quantities.at(text, at, floor)
        return self.abbreviations.at(text, at, floor)

    def _symbol(self, text: str, at: int, floor: int) -> Reading | None:
        near = _DIGIT_NEAR.match(text, at + 1) or _DIGIT_NEAR.match(text, at)
        if near:
            found = self._figure(text, near.end(), floor)
            if found is not None and found.span.start <= at:
                return found
        mark = text[at]
        if mark == "/" and (found := self._joined_words(text, at, floor)):
            return found
        if mark in "–-":
            return self._to(text, at, floor)
        if mark in SUPERSCRIPTS or (mark in "²³" and text[at + 1 : at + 2] in (*SUPERSCRIPTS, "²", "³")):
            return self._power(text, at)
        if mark in SUBSCRIPTS:
            return lowered(self.g, text, at)
        if mark in _SILENT:
            return Reading(Span(at, at + 1), "", "symbol")
        if mark in self.operators and self._operates(text, at):
            return Reading(Span(at, at + 1), str(self.operators[mark]), "symbol")
        if mark in "²³" and (letters := product_before(text, at, floor)):
            return Reading(Span(at - len(letters), at + 1), f"{' '.join(letters)} {self.symbols[mark]}", "symbol")
        if text[at : at + 2] in self.pairs:
            return Reading(Span(at, at + 2), f"{self.pairs[text[at : at + 2]]}", "symbol")
        if mark in "°º/" and (found := self.abbreviations.at(text, at, floor)):
            return found
        between = text[at - 1 : at].isdecimal() and bool(_EXPONENT.match(text, at + 1))
        said = (self.between.get(mark) if between else None) or self.symbols.get(mark) or self.currency_marks.get(mark)
        return Reading(Span(at, at + 1), str(said), "symbol") if said and self._is_said(text, at) else None

    def _operates(self, text: str, at: int) -> bool:
        """Whether a sign stands between figures; a colon only in a sum with its result."""
        if text[at] == ":" and not (_between_blanks(text, at) and "=" in text[at : at + _SUM_AHEAD]):
            return False
        return bool(_OPERATED.search(text, max(0, at - 2), at) and _OPERAND.match(text, at + 1))

    def _joined_words(self, text: str, at: int, floor: int) -> Reading | None:
        """ "and/or" and what else data lists with a bar."""
        left, right = _WORD_LEFT.search(text, max(floor, at - _LONGEST_JOINED), at), _WORD_RIGHT.match(text, at + 1)
        if not left or not right:
            return None
        written = text[left.start() : right.end()]
        said = self.joined.get(written) or self.joined.get(written.casefold())
        return Reading(Span(left.start(), right.end()), str(said), "symbol") if said else None

    def _power(self, text: str, at: int) -> Reading | None:
        """A raised number after a figure: 10⁶, 10⁻³."""
        found = _RAISED.match(text, at)
        if not found or not text[at - 1 : at].isdecimal():
            return None
        digits = "".join(str(unicodedata.digit(c)) for c in found[2])
        minus = f"{self.g.minus} " if found[1] else ""
        said = f" {self.between['^']} {minus}{self.g.cardinal(digits)}"
        if unit := self.quantities.units.at(text, found.end()):
            return Reading(Span(at, unit.end), f"{said} {unit.noun.more}", "measure")
        return Reading(Span(*found.span()), said, "symbol")

    def _to(self, text: str, at: int, floor: int) -> Reading | None:
        """A dash between two figures that were read apart: "31 May–2 June", "9am-5pm"."""
        ranked = text[at - 1 : at].isalpha() and _RANKED.match(text, at + 1)
        joins = floor == at > 0 and (ranked or (_TIGHT if text[at] == "–" else _TIMED).match(text, at + 1))
        return Reading(Span(at, at + 1), f" {self.g.text('numbers.to')} ", "range") if joins else None

    def _is_said(self, text: str, at: int) -> bool:
        """A sign between letters of one word ("and/or", "a+") belongs to the word only where data says so."""
        return text[at] != "/" or bool(_between_blanks(text, at))


def _between_blanks(text: str, at: int) -> bool:
    return text[at - 1 : at].isspace() and text[at + 1 : at + 2].isspace()
