"""Sums of money in words: with cents, with a magnitude, and from one price to another."""

from __future__ import annotations

from dataclasses import dataclass, replace

from promptprep.speaking.western.grammar import Grammar, Noun, noun
from promptprep.speaking.western.literal import Literal

_CENTS = 2


@dataclass(frozen=True, slots=True)
class Currency:
    unit: Noun
    cent: Noun | None

    def attributive(self) -> Currency:
        """As it stands before a noun: "a five dollar note"."""
        return Currency(Noun(self.unit.one, self.unit.one, self.unit.gender), self.cent)


def currency(entry: str) -> Currency:
    """From data: "dollar|dollars|gender; cent|cents|gender"."""
    unit, _, cent = entry.partition(";")
    return Currency(noun(unit.strip()), noun(cent.strip()) if cent.strip() else None)


def price(grammar: Grammar, literal: Literal, of: Currency) -> str:
    """A sum whose decimals are cents; "" where they are none."""
    cents = literal.fraction.rstrip("0")
    if not literal.fraction or of.cent is None or len(cents) > _CENTS:
        return ""
    literal = replace(literal, fraction=cents.ljust(_CENTS, "0"))
    small = Literal(literal.fraction.lstrip("0"), "", literal.end)
    if not small.whole:
        return grammar.counted(Literal(literal.whole, "", literal.end), of.unit)
    if not literal.value:
        return grammar.counted(small, of.cent)
    return grammar.amount(literal, of.unit, of.cent)


def price_range(grammar: Grammar, first: Literal, second: Literal, of: Currency) -> str:
    """From one price to another where either has cents, else ""."""
    if not (first.fraction or second.fraction) or of.cent is None:
        return ""
    start = price(grammar, first, of) if first.fraction else grammar.number(first, of.unit.gender)
    end = price(grammar, second, of) if second.fraction else grammar.counted(second, of.unit)
    return grammar.text("numbers.range").format(start, end) if start and end else ""
