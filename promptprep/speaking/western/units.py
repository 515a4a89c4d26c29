"""Units of measure: symbols from the SI Brochure (BIPM, 9th edition) and the trade's others, alone, raised, divided."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import NamedTuple

from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar, Noun, noun

BLANK = r"[\s\u00a0\u202f\u2009]"
SPACE = r"[ \u00a0\u202f]"  # a blank inside a line, wide or narrow
_WORD = r"[^\W\d_]{2,24}(?![\w/])"
_ATTACHED_CAPITALS = frozenset("VW")
_LETTERS_LEFT = re.compile(r"(?<![\w./\ufffc])[^\W\d_]{1,6}\Z")
_LONGEST = 8
_STOP = re.compile(r"\.(?=[,;:)]|\s[a-z])")
_POWERS = {"²": "square", "2": "square", "³": "cubic", "3": "cubic"}


def alternatives(words: Iterable[str]) -> str:
    """A regular expression for any of the words, the longest first."""
    return "|".join(re.escape(w) for w in sorted(words, key=lambda w: (-len(w), w)))


class Unit(NamedTuple):
    noun: Noun
    end: int


class Bare(NamedTuple):
    """A unit without a figure: where it stands and what it is called."""

    span: Span
    said: str


class Units:
    """`units.names` maps symbols to nouns; `units.per`, `units.square` and `units.cubic` say how others are made."""

    def __init__(self, grammar: Grammar) -> None:
        self.plural_in_compounds = grammar.plural_in_compounds
        self.names = {symbol: noun(grammar.respelled(entry)) for symbol, entry in grammar.table("units.names").items()}
        self.per = grammar.text("units.per")
        self.raised = {key: tuple(grammar.text(f"units.{key}").split("|")) for key in ("square", "cubic")}
        self.raised_divisor = {"²": grammar.text("units.per_square"), "³": grammar.text("units.per_cubic")}
        symbols = alternatives(self.names)
        self._pattern = re.compile(
            rf"({BLANK}|-)?({symbols})(?:([²³])|(?<=m)([23])(?![\d/,.]\d))?(?:/({symbols})([²³])?)?(?![\w²³*]|/(?!{_WORD}|\d)|\.\w|['’][^\W\d_])"
        )
        self._divisor = re.compile(rf"/({symbols})([²³])?(?![\w²³/])")
        self._per_words = dict(grammar.data.maybe("spoken", "units.per_words", {}))
        self._per_many = grammar.data.maybe("spoken", "units.per_many", self.per)
        self._many = re.compile(rf"/(?=10{{0,6}}{BLANK}?(?:{symbols})(?![\w²³/]))")
        each = alternatives(grammar.data.maybe("spoken", "units.each", (self.per,)))
        self._each = re.compile(rf"{BLANK}({each}){BLANK}({symbols})([²³])?(?![\w²³/'’-])")
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
            named = self._divided(named, self._below(divisor, divisor_power))
        if blank == "-":
            said = named.more if self.plural_in_compounds else named.one
            named = Noun(said, said, named.gender)
        return Unit(named, end)

    def per_at(self, text: str, at: int) -> tuple[str, int]:
        """What a bar behind a unit or price says ("par mois", "per square metre") and where it ends; or "" and `at`."""
        if self._many.match(text, at):
            return f" {self._per_many}", at + 1
        found = self._per.match(text, at)
        if found is None:
            return self._each_at(text, at)
        symbol, power, word = found.groups()
        if word:
            said = self._per_words.get(word) or f"{self.per} {word}"
            return ("", at) if word.isupper() else (f" {said}", found.end())
        return f" {self.per} {self._below(symbol, power)}", found.end()

    def _each_at(self, text: str, at: int) -> tuple[str, int]:
        """A unit behind a word for each ("3 € le kg", "32 ct pro kWh"); one letter only behind "per" itself."""
        found = self._each.match(text, at)
        if found is None or (len(found[2]) == 1 and found[1] != self.per):
            return "", at
        return f" {found[1]} {self._below(found[2], found[3])}", found.end()

    def _below(self, symbol: str, power: str | None) -> str:
        """A divisor: lengths make areas and volumes ("square kilometer"), others are raised ("second squared")."""
        below = self.names[symbol]
        if not power:
            return below.one
        return (
            self._raised(below, _POWERS[power]).one
            if symbol.endswith("m")
            else self.raised_divisor[power].format(below.one)
        )

    def bare(self, text: str, at: int, floor: int) -> Bare | None:
        """A raised or divided unit without a figure ("en km/h"), or its divisor behind a word ("hab./km²").

        `at` is the place of the raised figure or the bar.
        """
        left = _LETTERS_LEFT.search(text, max(floor, at - _LONGEST), at)
        if left and (unit := self._alone(text, left.start(), at)):
            return unit
        if text[at] != "/" or not (at == floor or text[max(0, at - 3) : at].isalpha()):
            return None
        divisor = self._divisor.match(text, at)
        if divisor is None or len(divisor[0]) <= 2:
            return None
        return Bare(Span(*divisor.span()), f" {self.per} {self._below(divisor[1], divisor[2])}")

    def _alone(self, text: str, start: int, at: int) -> Bare | None:
        """A unit from `start` past `at`; single capitals are likelier no units ("A/V")."""
        found = self._pattern.match(text, start)
        if found is None or found[1] or found.end() <= at:
            return None
        if any(len(part) == 1 and part.isupper() for part in (found[2], found[5]) if part):
            return None
        unit = self.at(text, start)
        return Bare(Span(start, unit.end), unit.noun.more) if unit else None

    def _raised(self, base: Noun, power: str) -> Noun:
        form = self.raised[power]
        one, more = form[0], form[-1]
        if one.endswith("{}"):
            return Noun(_put(one, base.one), _put(more, base.more), base.gender)
        return Noun(one.format(base.one), more.format(base.more), base.gender)

    def _divided(self, above: Noun, divisor: str) -> Noun:
        return Noun(f"{above.one} {self.per} {divisor}", f"{above.more} {self.per} {divisor}", above.gender)


def _put(form: str, name: str) -> str:
    """A prefix without a blank takes a small letter: "Quadrat{}" and "Meter" give "Quadratmeter"."""
    return form.format(name) if form.endswith(" {}") else form.format(name[0].lower() + name[1:])
