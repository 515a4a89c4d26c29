"""Signs that are said by name, alone or between figures and words."""

from __future__ import annotations

import re
import unicodedata

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar
from promptprep.speaking.western.lettered import SUBSCRIPTS, lowered, product_before
from promptprep.speaking.western.quantities import Quantities
from promptprep.speaking.western.units import BLANK, alternatives

SUPERSCRIPTS = "⁰¹⁴⁵⁶⁷⁸⁹⁻"
_SILENT = "™®"
_RAISED = re.compile("(⁻)?([⁰¹²³⁴⁵⁶⁷⁸⁹]{1,6})")
_TIMED = re.compile(r"[$€£¥]\d|\d{1,2}(?:[:h]\d\d|\s?[ap]\.?m|\s?h(?!\w)|[./]\d{1,2}[./]\d{2})")
_TIGHT = re.compile(r"[$€£¥]?\d")
_RANKED = re.compile(r"\d{1,3}(?:st|nd|rd|th)\b|\d?\d0s\b")
_LONGEST_JOINED = 24
_WORD_LEFT = re.compile(r"(?<![\w/])[^\W\d_]+\Z")
_WORD_RIGHT = re.compile(r"[^\W\d_]+(?![\w/])")
_OPERATED = re.compile(r"\d[ \u00a0]?\Z")
_OPERAND = re.compile(r"[ \u00a0]?\d")
_EXPONENT = re.compile(r"[-−]?\d")
_NOTE = re.compile(r"(?<!\w)[A-G]\Z")
_LONGEST_PRICE = 16
_LONGEST_CODE = 6
_CODE_LEFT = re.compile(r"(?<!\w)([A-Z])\d{1,3}\Z")
_MEASURED = re.compile(r"\d[ \u00a0]?(?:[^\W\d_]|[$€£¥%°]){1,5}\Z|[$€£¥]\d[\d.,]*\Z|\d[h:]\d\d\Z")
_DATE_NEXT = re.compile(r"[ \u00a0]\d{1,2}([./])\d{1,2}\1(?:\d{4}|\d\d)(?!\d)")
_TIME_LEFT = re.compile(r"(?:\d:\d\d|\d[ \u00a0]?h(?:[ \u00a0]?\d\d)?)[ \u00a0]\Z")
_TIME_NEXT = re.compile(r"[ \u00a0]\d{1,2}(?::\d\d|[ \u00a0]?h(?![^\W\d]))")
_MORE_OR_LESS = re.compile(r"\+/[-−–][ \u00a0]?(?=[\d$€£])")
_FIGURE = re.compile(r"[$€£¥]?\d")
_SUM_AHEAD = 24


class Symbols:
    """Reads the sign at a place. The tables are those of `symbols` in `spoken.toml`."""

    def __init__(self, grammar: Grammar, quantities: Quantities) -> None:
        self.g = grammar
        self.units = quantities.units
        self.words = grammar.table("symbols.words")
        self.between = grammar.table("symbols.between_figures")
        self.doubled = grammar.data.maybe("spoken", "symbols.doubled", {})
        self.sharp = str(grammar.data.maybe("spoken", "symbols.sharp", ""))
        self.joined = grammar.data.maybe("spoken", "symbols.joined", {})
        self._bar_in_words = bool(grammar.data.maybe("spoken", "symbols.bar_in_words", True))
        self.operators = grammar.data.maybe("spoken", "symbols.operators", {})
        self.periods = frozenset(grammar.data.maybe("spoken", "units.periods", ()))
        self.money = {k: v.unit.more for k, v in quantities.currencies.items() if not k[-1].isalpha()}
        months = alternatives((*grammar.data.get("spoken", "months.names"), *grammar.table("months.short")))
        first, link = grammar.text("dates.day_suffix"), grammar.text("dates.link")
        day = rf"\d{{1,2}}(?:{first})?{BLANK}(?:{link}{BLANK})?(?:{months})"
        self._to_day = str(grammar.data.maybe("spoken", "dates.to", grammar.text("numbers.to")))
        self._day_next = re.compile(rf"{BLANK}{day}")
        self._month_left = re.compile(rf"(?:{months})(?:{BLANK}(?:{link}{BLANK})?\d{{4}})?{BLANK}\Z")
        self._month = re.compile(rf"(?:{months}){BLANK}\d")
        times = alternatives(grammar.data.maybe("spoken", "clock.words", ())) or "(?!)"
        self._time_word = re.compile(rf"(?:{times})(?!\w)")
        named = (*self.words, *self.money, *self.operators)
        self.starts = f"{SUPERSCRIPTS}{SUBSCRIPTS}{_SILENT}" + "".join(re.escape(k[-1]) for k in named)

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        mark = text[at]
        if mark in "/²³" and (unit := self.units.bare(text, at, floor)):
            return Reading(unit.span, unit.said, "measure")
        if mark == "/":
            return self._bar(text, at, floor)
        if mark in "–-":
            return self._to(text, at, floor)
        if mark in SUBSCRIPTS:
            return lowered(self.g, text, at)
        if mark in _SILENT:
            return Reading(Span(at, at + 1), "", "symbol")
        if mark in SUPERSCRIPTS or mark in "²³":
            return self._raised(text, at, floor)
        if text[at : at + 2] in self.doubled:
            return Reading(Span(at, at + 2), str(self.doubled[text[at : at + 2]]), "symbol")
        return self._named(text, at)

    def _named(self, text: str, at: int) -> Reading | None:
        mark = text[at]
        if (
            mark == "#"
            and self.sharp
            and _NOTE.search(text, max(0, at - 2), at)
            and not text[at + 1 : at + 2].isalnum()
        ):
            return Reading(Span(at, at + 1), self.sharp, "symbol")
        between = text[at - 1 : at].isdecimal() and bool(_EXPONENT.match(text, at + 1))
        if mark in self.money and text[at - 1 : at].isalpha() and text[at + 1 : at + 2].isalpha():
            return None
        if mark == "@" and text[at - 1 : at].isalpha() and text[at + 1 : at + 2].isalpha():
            return None
        if mark.isalpha() and (text[at - 1 : at].isalpha() or _letter_next(text, at)):
            return None
        said = (self.between.get(mark) if between else None) or self.words.get(mark) or self.money.get(mark)
        return Reading(Span(at, at + 1), str(said), "symbol") if said else None

    def operator(self, text: str, at: int) -> Reading | None:
        """A sign that is said between figures only; a colon only in a sum with its result."""
        if text[at] == "+" and "±" in self.words and (sign := _MORE_OR_LESS.match(text, at)):
            return Reading(Span(*sign.span()), f"{self.words['±']} ", "symbol")
        said = self.operators.get(text[at])
        if not said or not _OPERATED.search(text, max(0, at - 2), at) or not _OPERAND.match(text, at + 1):
            return None
        divided = _between_blanks(text, at) and "=" in text[at : at + _SUM_AHEAD]
        return Reading(Span(at, at + 1), str(said), "symbol") if text[at] != ":" or divided else None

    def _bar(self, text: str, at: int, floor: int) -> Reading | None:
        """ "and/or" and what else data list, "tickets/day", "180 °C/350 °F"; inside other words it is left as it is."""
        left, right = _WORD_LEFT.search(text, max(floor, at - _LONGEST_JOINED), at), _WORD_RIGHT.match(text, at + 1)
        if left and right:
            written = text[left.start() : right.end()]
            said = self.joined.get(written) or self.joined.get(written.casefold())
            if said:
                return Reading(Span(left.start(), right.end()), str(said), "symbol")
        if left and right and right[0] in self.periods and left[0][-1].islower():
            return Reading(Span(at, at + 1), f" {self.units.per} ", "symbol")
        if floor == at > 0 and _MEASURED.search(text, max(0, at - _LONGEST_PRICE), at) and _FIGURE.match(text, at + 1):
            return Reading(Span(at, at + 1), ", ", "symbol")
        if floor == at - 1 > 0 and _timed(text, at):
            return Reading(Span(at - 1, at + 1), ",", "symbol")
        if not self._bar_in_words and not (text[at - 2 : at - 1].isdecimal() and text[at + 2 : at + 3].isdecimal()):
            return None
        return self._named(text, at) if _between_blanks(text, at) else None

    def _raised(self, text: str, at: int, floor: int) -> Reading | None:
        """A raised number after a figure (10⁶, 10⁻³), or a square behind letters (mc²)."""
        following = text[at + 1 : at + 2]
        if text[at] in "²³" and not (following and following in f"{SUPERSCRIPTS}²³"):
            letters = product_before(text, at, floor)
            plain = self._named(text, at)
            if not letters or plain is None:
                return plain
            return Reading(Span(at - len(letters), at + 1), f"{' '.join(letters)} {plain.said}", "symbol")
        found = _RAISED.match(text, at)
        if not found or not text[at - 1 : at].isdecimal():
            return None
        digits = "".join(str(unicodedata.digit(c)) for c in found[2])
        minus = f"{self.g.minus} " if found[1] else ""
        said = f" {self.between['^']} {minus}{self.g.cardinal(digits)}"
        if unit := self.units.at(text, found.end()):
            return Reading(Span(at, unit.end), f"{said} {unit.noun.more}", "measure")
        return Reading(Span(*found.span()), said, "symbol")

    def _parts(self, text: str, at: int) -> bool:
        """Whether a dash between blanks parts two dates or two times."""
        day = self._day_next.match(text, at + 1) and self._month_left.search(text, max(0, at - _LONGEST_JOINED), at)
        return bool(_DATE_NEXT.match(text, at + 1) or _timed(text, at) or day)

    def _to(self, text: str, at: int, floor: int) -> Reading | None:
        """A dash between two figures that were read apart: "31 May–2 June", "9am-5pm", "Dec. 20–Jan. 3"."""
        if floor == at - 1 > 0 and text[at - 1].isspace() and self._parts(text, at):
            said = self.g.text("numbers.to") if _TIME_NEXT.match(text, at + 1) else self._to_day
            return Reading(Span(at, at + 1), said, "range")
        if floor != at or not at:
            return None
        ranked = text[at - 1].isalpha() and _RANKED.match(text, at + 1)
        dated = not text[at - 1].isspace() and self._month.match(text, at + 1)
        row = _CODE_LEFT.search(text, max(0, at - _LONGEST_CODE), at)
        if row and text[at + 1 : at + 2] == row[1] and text[at + 2 : at + 3].isdecimal():
            return Reading(Span(at, at + 1), f" {self.g.text('numbers.to')} ", "range")
        timed = (_TIGHT if text[at] == "–" else _TIMED).match(text, at + 1) or self._time_word.match(text, at + 1)
        joins = ranked or dated or timed
        return Reading(Span(at, at + 1), f" {self.g.text('numbers.to')} ", "range") if joins else None


def _timed(text: str, at: int) -> bool:
    """Whether a sign between blanks parts two times of day."""
    return _TIME_NEXT.match(text, at + 1) is not None and _TIME_LEFT.search(text, max(0, at - 8), at) is not None


def _letter_next(text: str, at: int) -> bool:
    """Whether a letter that is a sign ("π") goes on as a word does; a Latin letter may follow ("2πr")."""
    following = text[at + 1 : at + 2]
    return following.isalpha() and not following.isascii()


def _between_blanks(text: str, at: int) -> bool:
    return text[at - 1 : at].isspace() and text[at + 1 : at + 2].isspace()
