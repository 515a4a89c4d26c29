"""The verbaliser that the Western languages share: which part reads what begins at a place."""

from __future__ import annotations

import re
from collections.abc import Callable

from promptprep.model.spoken import Reading
from promptprep.speaking.western.dates import Clocks, Dates
from promptprep.speaking.western.durations import Durations
from promptprep.speaking.western.grammar import Grammar
from promptprep.speaking.western.lettered import Angles, Apertures, Comets, Countdowns, Mileposts, PowersOfTen, Zones
from promptprep.speaking.western.letters import CAPITALS, Abbreviations, Capitals
from promptprep.speaking.western.literal import VULGAR
from promptprep.speaking.western.quantities import Quantities
from promptprep.speaking.western.serials import Fractions, Ordinals, Ratios, Serials
from promptprep.speaking.western.symbols import Symbols

Read = Callable[[str, int, int], Reading | None]
_DIGIT_NEAR = re.compile(r"[-−+±~≈<>≤≥]?[ \u00a0\u202f]?[-−+]?(?=\d|(?<=[$€£])\.\d)")


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
            Zones(grammar).at,
            Comets(grammar).at,
            *(part(grammar).at for part in grammar.first_parts),
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
            Mileposts(grammar).at,
            self.quantities.at,
        )
        self.symbols = Symbols(grammar, self.quantities)
        self.starts = re.compile(rf"[\d{VULGAR}{CAPITALS}.º°–\-{self.symbols.starts}]")

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        character = text[at]
        if character.isdecimal():
            return self._figure(text, at, floor)
        if character == ".":
            return self._dot(text, at, floor)
        if character.isupper():
            return self.capitals.at(text, at, floor) or self._capital_sign(text, at, floor)
        if character in VULGAR:
            return self.quantities.at(text, at, floor)
        return self._symbol(text, at, floor)

    def _figure(self, text: str, at: int, floor: int) -> Reading | None:
        for part in self.parts:
            found = part(text, at, floor)
            if found is not None:
                return found
        return None

    def _capital_sign(self, text: str, at: int, floor: int) -> Reading | None:
        """A capital that is a sign by itself: "Δt"."""
        return self.symbols.at(text, at, floor) if text[at] in self.symbols.words else None

    def _dot(self, text: str, at: int, floor: int) -> Reading | None:
        if text[at + 1 : at + 2].isdecimal() and not text[at - 1 : at].isalnum() and self.g.literals.mark == ".":
            return self.quantities.at(text, at, floor)
        return self.g.named_mark(text, at, floor) or self.abbreviations.at(text, at, floor)

    def _symbol(self, text: str, at: int, floor: int) -> Reading | None:
        if named := self.g.named_mark(text, at, floor):
            return named
        if operator := self.symbols.operator(text, at):
            return operator
        near = _DIGIT_NEAR.match(text, at + 1) or _DIGIT_NEAR.match(text, at)
        if near:
            read = self._figure if text[near.end()] != "." else self.quantities.at
            found = read(text, near.end(), floor)
            if found is not None and found.span.start <= at:
                return found
        if text[at] in "°º/" and (found := self.abbreviations.at(text, at, floor)):
            return found
        return self.symbols.at(text, at, floor)
