"""What only Spanish writes: degrees with a raised o, classes of a school, days of a month by their letter."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar, leans_left, noun, word_before
from promptprep.speaking.western.literal import Literal, Literals
from promptprep.speaking.western.romance_parts import LongMetres

_SENTENCE_LEFT = 60
_ARTICLES = frozenset(("al", "del", "el", "la"))


class Heights(LongMetres):
    """ "1,85 m" of a person is a metre eighty-five; longer lengths keep their decimals."""

    _most = 2


class DollarLiterals(Literals):
    """Numbers whose thousands, behind a dollar sign, are parted by commas as in most of America: "$1,000".

    A decimal may also stand behind an apostrophe, as by hand: "magnitud 4'7" (RAE, Ortografía, from memory).
    """

    _by_hand = re.compile(r"(\d{1,3})['’](\d{1,2})(?![\w'’″\"]|[.,]\d)")

    _grouped = re.compile(r"\d{1,3}(?:,\d{3})+(?![\d.,]*\d)")
    _sign_left = re.compile(r"\$[ \u00a0]?\Z")

    def at(self, text: str, at: int) -> Literal | None:
        found = self._grouped.match(text, at) if self._sign_left.search(text, max(0, at - 2), at) else None
        if found:
            return Literal(found[0].replace(",", ""), "", found.end(), grouped=True)
        if hand := self._by_hand.match(text, at):
            return Literal(hand[1], hand[2], hand.end(), mark=self.mark)
        return super().at(text, at)


class Warmth:
    """A temperature with a raised o: "de 10º a 21º", "una mínima de 5º". `ordinals.warm` lists words of weather."""

    _pattern = re.compile(
        r"(\d{1,3})(?:[.,](\d{1,3}))?[º°](?:([ \u00a0](?:a|y)[ \u00a0]|[-–])[-−]?(\d{1,2})[º°])?(?!\w)"
    )
    _minus = re.compile(r"(?<![\w.)])[-−]\Z")
    _warmest = 11

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        words = "|".join(sorted(grammar.wordset("ordinals.warm"), key=len, reverse=True))
        self._weather = re.compile(rf"(?<!\w)(?:{words})(?!\w)[^.!?\n]*\Z", re.IGNORECASE)
        of = "|".join((words, *sorted(grammar.wordset("ordinals.degrees_of"))))
        self._of_weather = re.compile(rf"[º°][ \u00a0](?:al|bajo|de|sobre el)[ \u00a0](?:{of})(?!\w)")
        self._degree = noun(str(grammar.table("units.names")["°"]))

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or (at and text[at - 1].isalnum()):
            return None
        sign = found.end(2) if found[2] else found.end(1)
        if not found[2] and not self._is_measured(text, found, sign):
            return None
        minus = self._minus.search(text, max(floor, at - 2), at)
        end = sign + 1
        said = self.g.counted(Literal(found[1], found[2] or "", 0, mark=self.g.literals.mark), self._degree)
        return Reading(Span(at - 1 if minus else at, end), f"{self.g.minus} {said}" if minus else said, "measure")

    def _is_measured(self, text: str, found: re.Match[str], sign: int) -> bool:
        if word_before(text, found.start()).casefold() in _ARTICLES:
            return False
        if found[4] is not None and int(found[4]) >= self._warmest:
            return True
        left = self._weather.search(text, max(0, found.start() - _SENTENCE_LEFT), found.start())
        return bool(left or self._of_weather.match(text, sign))


class NumeroSigns:
    """ "el No. 5": number, as most of America writes it; not a "no" that ends its sentence."""

    _left = re.compile(r"(?<=[a-zñáéíóú,][ \u00a0])No\.[ \u00a0]?\Z")
    _number = re.compile(r"\d{1,4}(?![\w%]|[.,:/-]\d)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._word = grammar.text("symbols.words.#")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        number = self._number.match(text, at)
        left = self._left.search(text, max(floor, at - 5), at) if number else None
        if not number or not left:
            return None
        return Reading(Span(left.start(), number.end()), f"{self._word} {self.g.cardinal(number[0])}", "serial")


class Summits:
    """The number of a climate summit, whose letters are also a currency's: "la COP28"."""

    _left = re.compile(r"(?<!\w)COP[- \u00a0]?\Z")
    _number = re.compile(r"[1-9]\d?(?![\w%]|[.,]\d|[ \u00a0\u202f]\d)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._number.match(text, at) if self._left.search(text, max(0, at - 5), at) else None
        return Reading(Span(*found.span()), self.g.cardinal(found[0]), "serial") if found else None


class SchoolClasses:
    """A year of school with its class: "3ºB"."""

    _pattern = re.compile(r"(\d{1,2})\.?[ºª]([ABDEGH])(?!\w)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or leans_left(text, at, ".,-/"):
            return None
        form = "f" if "ª" in found[0] else "m"
        return Reading(Span(*found.span()), f"{self.g.ordinal(found[1], form)} {found[2]}", "ordinal")


class LetterDays:
    """A day that is known by its month's letter: "el 8M", "el 15M"."""

    _pattern = re.compile(r"(\d{1,2})([A-Z])(?!\w)")
    _article_left = re.compile(r"(?<!\w)(?:al|del|el|[Ee]l)[ \u00a0]\Z")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or not self._article_left.search(text, max(0, at - 5), at):
            return None
        return Reading(Span(*found.span()), f"{self.g.cardinal(found[1])} {found[2]}", "serial")


class MatchMinutes:
    """The minute of a match: "en el 45'", "el minuto 90'+3"."""

    _pattern = re.compile(r"(\d{1,3})['’′](?:[ \u00a0]?\+[ \u00a0]?(\d{1,2}))?(?![\w'’′\"])")
    _left = re.compile(r"(?<!\w)(?:al|del|el|en|min\.|minuto|minutos|y)[ \u00a0]\Z", re.IGNORECASE)

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._plus = grammar.text("serials.plus")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or not self._left.search(text, max(0, at - 9), at):
            return None
        added = f" {self._plus} {self.g.cardinal(found[2])}" if found[2] else ""
        return Reading(Span(*found.span()), self.g.cardinal(found[1]) + added, "cardinal")
