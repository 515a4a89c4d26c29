"""Roman numerals where they are read as numbers."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import Grammar, word_after, word_before

_ROMAN = re.compile(r"M{0,3}(?:CM|CD|D?C{0,3})(?:XC|XL|L?X{0,3})(?:IX|IV|V?I{0,3})")
_VALUES = {"I": 1, "V": 5, "X": 10, "L": 50, "C": 100, "D": 500, "M": 1000}
_LONGEST = 24
_SUBCLASS = re.compile(r"(I{1,3}|IV|V)([a-c])(?!\w)")
_NO_MORE = r"(?!\w)(?![’'](?!s\b))"
_TYPE_NUMBER = re.compile(r"[-‑]\d")  # "Typ X-200"
_SURE = 5
_SMALL = re.compile("[IVX]{2,}")
_CLEAR = 3
_KISSES = "XXX"
_LARGEST_RANK = 99
_LAST = re.compile(r"[-–]([IVXLC]{1,7})(?![\w.])")
_LARGEST_CENTURY = 30
_HUNDRED = 100
_ROW = re.compile(r"(?<!\w)[IVXLC]{1,7}\.?,? (?:y|e|et|and|und|a|al|ao|to|bis|à)[ \u00a0]\Z")


def roman_value(numeral: str) -> int:
    """The value of a well-formed Roman numeral, 0 for anything else."""
    if not numeral or not _ROMAN.fullmatch(numeral):
        return 0
    values = [_VALUES[c] for c in numeral]
    return sum(-v if v < later else v for v, later in zip(values, [*values[1:], 0], strict=True))


class Romans:
    """Roman numerals where they are read as numbers: after the words that data list, never a plain "I"."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self.counted = grammar.wordset("roman.cardinal_after")
        self.ranked = grammar.wordset("roman.ordinal_after")
        self.names = grammar.wordset("roman.names")
        self.articles = grammar.wordset("roman.articles")
        self.first = grammar.wordset("roman.first_suffixes")
        self.events = frozenset(grammar.data.maybe("spoken", "roman.events", ()))
        self.never = grammar.wordset("roman.never")
        endings = (
            "|".join(re.escape(e) for e in sorted(grammar.table("roman.suffixes"), key=lambda e: -len(e))) or "(?!)"
        )
        self.suffixes = grammar.table("roman.suffixes")
        self.short = grammar.data.maybe("spoken", "roman.short", {})
        self._short = re.compile(rf"[ \u00a0\u202f]({'|'.join(map(re.escape, self.short)) or '(?!)'})")
        self._pattern = re.compile(rf"([IVXLCDM]{{1,15}})({endings})?{_NO_MORE}")

    def at(self, text: str, at: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found:
            return self._with_letter(text, at)
        value = roman_value(found[1])
        if not value or _TYPE_NUMBER.match(text, found.end()):
            return None
        span = Span(at, found.end())
        if found[2]:
            if not self._ranks(found[1], found[2]):
                return None
            said = self.g.ordinal(str(value), self.suffixes[found[2]])
            return self._with_short(text, span, said)
        name = word_before(text, at)
        before = self.g.ruler(name)
        owns = before != name
        if before not in self.names and (ranked := self._ranked(text, found, value)):
            return ranked
        said = self._said(text, found, value, before) or self._in_row(text, found, value)
        said = said or self._before_noun(text, found, value, before) or self._after_article(text, found, value, before)
        if not said and self._is_clear(text, found):
            said = self.g.cardinal(str(value))
        if not said:
            return None
        if last := _LAST.match(text, found.end()):
            return self._to_last(text, Span(at, last.end()), said, last[1], before)
        return Reading(Span(at, self._end(text, found.end(), before, owns)), said, "roman")

    def _with_short(self, text: str, span: Span, said: str) -> Reading:
        """With the short form that only follows such a numeral ("IIIe s.")."""
        following = self._short.match(text, span.end)
        if following is None:
            return Reading(span, said, "roman")
        end = sentence_end(text, span.start, following.end(), self.g.openers)
        return Reading(Span(span.start, end), f"{said} {self.short[following[1]]}", "roman")

    def _after_article(self, text: str, found: re.Match[str], value: int, before: str) -> str:
        """A century without its word: "del XVI al XVIII"."""
        named = before.casefold() in self.articles and len(found[1]) > 1 and value <= _LARGEST_CENTURY
        return self.g.century(value) if named and found[1] not in self.never else ""

    def _to_last(self, text: str, span: Span, first: str, numeral: str, before: str) -> Reading | None:
        """A range: "siglos XVI-XVIII"."""
        value = roman_value(numeral)
        if not value:
            return None
        ranked = before.casefold().rstrip(".") in self.ranked
        last = self.g.century(value) if ranked else self.g.cardinal(str(value))
        return Reading(span, self.g.text("numbers.range").format(first, last), "roman")

    def _ranked(self, text: str, found: re.Match[str], value: int) -> Reading | None:
        """With its dot in front of a noun: "im XIX. Jahrhundert"."""
        if not self.g.roman_dot or text[found.end() : found.end() + 1] != "." or value > _LARGEST_RANK:
            return None
        span = Span(found.start(), found.end() + 1)
        said = self.g.rank_in(text, span, value)
        return Reading(span, said, "roman") if said else None

    def _with_letter(self, text: str, at: int) -> Reading | None:
        """A class with its sub-class: "Type Ia" after a word that is counted."""
        found = _SUBCLASS.match(text, at)
        if not found or word_before(text, at).casefold() not in self.counted:
            return None
        said = f"{self.g.cardinal(str(roman_value(found[1])))} {found[2].upper()}"
        return Reading(Span(*found.span()), said, "roman")

    def _in_row(self, text: str, found: re.Match[str], value: int) -> str:
        """The second of two numerals: "siglos XVIII y XIX", "Elizabeth I and II"."""
        row = _ROW.search(text, max(0, found.start() - _LONGEST), found.start()) if value > 1 else None
        initial = found[1] in ("C", "D", "L", "M") and text[found.end() : found.end() + 1] == "."
        if row is None or initial:
            return ""
        name = self.g.ruler(word_before(text, row.start()))
        return self.g.regnal_of(name, value) if name in self.names else self.g.century(value)

    def _before_noun(self, text: str, found: re.Match[str], value: int, before: str) -> str:
        """In front of its noun: "la II Guerra Mundial"."""
        noun = word_after(text, found.end())
        if self.g.articled_ranks and before.casefold() not in self.articles:
            return ""
        articled = before.casefold() in self.articles
        sure = len(found[1]) > 1 or (articled and (noun[:1].isupper() or noun in self.events))
        sure = sure or (found[1] in "IVX" and noun[:1].isupper() and noun.casefold() in self.events)
        if (
            not sure
            or not noun
            or noun.capitalize() in self.g.openers
            or noun.isupper()
            or value > _LARGEST_RANK
            or (found[1] in self.never and not (articled and noun.casefold() in self.events))
        ):
            return ""
        return self.g.rank_after(before.casefold(), value, noun)

    def _ranks(self, numeral: str, suffix: str) -> bool:
        """ "Ier" and "XXe", but not the words "Le", "Ce", "Vers"."""
        first = suffix in self.first
        return (numeral == "I") == first and (first or len(numeral) > 1 or numeral in "VX")

    def _end(self, text: str, end: int, before: str, owns: bool) -> int:
        """A regnal numeral takes its dot along where the language writes one ("Ludwig XIV. war")."""
        named = before in self.names or self._is_dotted_name(text, end, before)
        return end + 1 if named and (self._dot_goes_on(text, end) or (owns and self._owned(text, end))) else end

    def _owned(self, text: str, end: int) -> bool:
        """Whether a dot and the noun that is the ruler's stand at `end`: "Friedrichs II. Schloss"."""
        noun = word_after(text, end + 1) if self.g.roman_dot and text[end : end + 1] == "." else ""
        return noun[:1].isupper() and noun not in self.g.openers

    def _dot_goes_on(self, text: str, end: int) -> bool:
        following = text[end + 1 : end + 3].lstrip()[:1]
        dotted = self.g.roman_dot and text[end : end + 1] == "."
        return dotted and (following.islower() or following in tuple(",;:)!?"))

    @staticmethod
    def _is_clear(text: str, found: re.Match[str]) -> bool:
        """A numeral of small letters' values that is no initialism ("XIX"), or is all that the text says ("IV")."""
        numeral, at, end = found[1], found.start(), found.end()
        if not _SMALL.fullmatch(numeral) or numeral == _KISSES or text[at - 1 : at] in ("-", "/", "&", "."):
            return False
        alone = len(text) <= end + 1 and not text[:at].strip()
        return (len(numeral) >= _CLEAR and text[end : end + 1] not in ("-", "/", "&")) or (alone and len(numeral) > 1)

    def _is_dotted_name(self, text: str, end: int, before: str) -> bool:
        """Whether a dot inside the sentence makes any name a ruler's: "Mehmed II. nahm"."""
        plain = before[:1].isupper() and before[1:].islower() and before.casefold() not in self.counted
        return plain and self._dot_goes_on(text, end)

    def _said(self, text: str, found: re.Match[str], value: int, before: str) -> str:
        at, numeral = found.start(), found[1]
        left = text[max(0, at - 2) : at]
        word = re.split("['’]", before.casefold())[-1].rstrip(".")
        if before in self.names and left[-1:] in (" ", "\u00a0") and left[:1] != ",":
            return self.g.regnal_in(text, at, before, value)
        if left[-1:] in (" ", "\u00a0") and numeral[-1] in "IVX" and self._is_dotted_name(text, found.end(), before):
            return self.g.regnal_in(text, at, before, value)
        if word in self.ranked and not (
            before == "S." and (numeral in "CDLM" or text[found.end() : found.end() + 1] == ".")
        ):
            return self.g.century(value)
        unlikely = value > _HUNDRED and numeral in self.never
        if word in self.counted and not unlikely and numeral not in "CDLM":
            return self.g.cardinal(str(value))
        if len(numeral) >= _SURE and value > 1000:
            return self.g.year(str(value))
        name = before[:1].isupper() and not before.isupper() and before.casefold() not in self.articles
        plain_word = name and left[-1:] in (" ", "\u00a0") and left[:1] != ","
        if plain_word and len(numeral) >= 2 and (value < 40 or len(numeral) > 3) and numeral not in self.never:
            return self.g.cardinal(str(value))
        return ""
