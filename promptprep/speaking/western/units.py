"""Units of measure: symbols from the SI Brochure (BIPM, 9th edition) and the trade's others, alone, raised, divided."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import NamedTuple

from promptprep.speaking.western.grammar import Grammar, Noun, noun

BLANK = r"[\s\u00a0\u202f\u2009]"
_WORD = r"[^\W\d_]{2,24}(?![\w/])"
_ATTACHED_CAPITALS = frozenset("VW")
_STOP = re.compile(r"\.(?=[,;:)]|\s[a-z])")
_POWERS = {"²": "square", "2": "square", "³": "cubic", "3": "cubic"}


def alternatives(words: Iterable[str]) -> str:
    """A regular expression for any of the words, the longest first."""
    return "|".join(re.escape(w) for w in sorted(words, key=lambda w: (-len(w), w)))


class Unit(NamedTuple):
    noun: Noun
    end: int


class Units:
    """`units.names` maps symbols to nouns; `units.per`, `units.square` and `units.cubic` say how others are made."""

    def __init__(self, grammar: Grammar) -> None:
        self.names = {symbol: noun(grammar.respelled(entry)) for symbol, entry in grammar.table("units.names").items()}
        self.per = grammar.text("units.per")
        self.raised = {key: tuple(grammar.text(f"units.{key}").split("|")) for key in ("square", "cubic")}
        self.raised_divisor = {"²": grammar.text("units.per_square"), "³": grammar.text("units.per_cubic")}
        symbols = alternatives(self.names)
        self._pattern = re.compile(
            rf"({BLANK}|-)?({symbols})(?:([²³])|(?<=m)([23])(?![\d/,.]\d))?(?:/({symbols})([²³])?)?(?![\w²³]|/(?!{_WORD})|\.\w)"
        )
        self._per = re.compile(rf"/(?:({symbols})([²³])?(?![\w²³/])|({_WORD}))")

    def at(self, text: str, at: int) -> Unit | None:
        """The unit that begins at `at`, after one blank at most."""
        found = self._pattern.match(text, at)
        if found is None:
            return None
        blank, symbol, power, digit, divisor, divisor_power = found.groups()
        if blank in (None, "-") and len(symbol) == 1 and symbol.isupper() and symbol not in _ATTACHED_CAPITALS:
            return None
        if blank == "\n":
            return None
        end = found.end()
        if symbol.isalpha() and (stop := _STOP.match(text, end)):
            end = stop.end()
        named = self.names[symbol]
        if power or digit:
            named = self._raised(named, _POWERS[power or digit])
        if divisor:
            named = self._divided(named, self.names[divisor], divisor_power)
        if blank == "-":
            named = Noun(named.one, named.one, named.gender)
        return Unit(named, end)

    def per_at(self, text: str, at: int) -> tuple[str, int]:
        """What a bar behind a unit or price says ("par mois", "per square metre") and where it ends; or "" and `at`."""
        found = self._per.match(text, at)
        if found is None:
            return "", at
        symbol, power, word = found.groups()
        if word:
            return ("", at) if word.isupper() else (f" {self.per} {word}", found.end())
        below = self.names[symbol].one
        return f" {self.per} {self.raised_divisor[power].format(below) if power else below}", found.end()

    def _raised(self, base: Noun, power: str) -> Noun:
        form = self.raised[power]
        one, more = form[0], form[-1]
        if one.endswith("{}"):
            return Noun(_put(one, base.one), _put(more, base.more), base.gender)
        return Noun(one.format(base.one), more.format(base.more), base.gender)

    def _divided(self, above: Noun, below: Noun, power: str | None) -> Noun:
        divisor = below.one
        if power:
            divisor = self.raised_divisor[power].format(below.one)
        return Noun(f"{above.one} {self.per} {divisor}", f"{above.more} {self.per} {divisor}", above.gender)


def _put(form: str, name: str) -> str:
    """A prefix without a blank takes a small letter: "Quadrat{}" and "Meter" give "Quadratmeter"."""
    return form.format(name) if form.endswith(" {}") else form.format(name[0].lower() + name[1:])
