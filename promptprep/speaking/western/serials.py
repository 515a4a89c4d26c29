"""Telephone and serial numbers digit by digit, ordinals with their endings, fractions with a bar."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import Grammar, leans_left, word_after, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.short_dates import ShortDates
from promptprep.speaking.western.units import Units, alternatives

_MINUS_LEFT = re.compile(r"(?<![\w.)])[-−]\Z")
_SCHOOL_YEARS = 6  # "6.º C" is a class, "25º C" a temperature
_SCALE_NEXT = re.compile(r"[ \u00a0]?[CF](?!\w)")
_WARM = 11
_GROUP = re.compile(r"\d+")
_MORE = re.compile(r"[:,./]\d")
_LONG_RUN = 15
_LINKING = 4
_CODE = 5
_YEAR = re.compile(r"(?:19|20)\d\d\Z")
_SHORT_CODE = 2
_PHONE_DIGITS = 7
_YEAR_NEXT = re.compile(r"(?:19|20)\d\d(?!\d)")
_COUNTRY = re.compile(r"(?<!\w)[A-Z]{2}\Z")
_IBAN = re.compile(r"\d\d(?:[ \u00a0]?\d{4}){1,7}(?:[ \u00a0]?\d{1,3})?(?!\w)")
_MONTH_YEAR = re.compile(r"(0?[1-9]|1[0-2])/((?:19|20)\d\d)(?![\d/])")
_RATING = re.compile(r"(\d{1,3})(?:[.,](\d))?/(5|10|20|100)(?![\d/])")
_LETTERED = re.compile(r"(?:(1)-)?(\d{3})-(?=[A-Z]{4,8}(?![\w]))")
_CODE_PARTS = re.compile(r"\d+(?:-\d+)+(?![\w-]|[.,]\d)")
_PAIR = re.compile(r"(\d)([1-9]\d)(?![\w]|[.,:/]\d)")
_PART_NUMBER = re.compile(r"(?=[\d-]*[A-Z])(?=[A-Z0-9-]{5})[A-Z0-9]+(?:-[A-Z0-9]+)*(?![\w-])")
_GAP = r"[ \u00a0\u202f.\-‐‑–/]"


class Serials:
    """Numbers that name and do not count."""

    _international = re.compile(rf"\+\d{{1,3}}(?:{_GAP}?\(?\d{{1,5}}\)?){{2,8}}(?!\d)")
    _bracketed = re.compile(rf"\(\+?\d{{1,5}}\)[ \u00a0]?\d{{2,5}}(?:{_GAP}\d{{2,5}}){{0,4}}(?!\d)")
    _trunk = re.compile(rf"0\d{{1,5}}(?:(?:{_GAP}|[ ][/–-][ ])\d{{2,8}}){{1,5}}(?![\d.,]\d|\d)")
    _hyphened = re.compile(r"(?:1[- ])?\d{3}[-.‐‑ ]\d{3}[-.‐‑]\d{4}(?!\d)|\d{3}-\d{4}(?![\d-])")
    _groups = re.compile(r"\d+(?:[-‐‑]\d+){2,12}(?:[-‐‑]?X)?(?![\d-])")
    _dotted = re.compile(r"\d+(?:\.\d+){2,12}(?!\w)")
    _version = re.compile(r"\d+(?:\.\d+){1,12}(?!\w)")
    _cards = re.compile(r"\d{4}(?:[ \u00a0]\d{4}){2,4}(?!\d)")
    _run = re.compile(r"\d+")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self.before = grammar.wordset("serials.before")
        self.counted_codes = grammar.wordset("serials.not_before")
        self.point = grammar.text("numbers.marks.point")
        self.currencies = frozenset(
            k for k in grammar.table("currencies") if k.isalpha() and k.isupper() and len(k) > 1
        )
        self._priced = re.compile(rf"(?<!\w)(?:{'|'.join(sorted(self.currencies))})\Z")
        self.number_word = grammar.text("symbols.words.#").casefold()
        self.plus = grammar.text("serials.plus")
        self.paired = frozenset(grammar.data.maybe("spoken", "serials.paired", ()))
        units = alternatives(k for k in grammar.table("units.names") if len(k) > 1)
        self._measured = re.compile(rf"\d+[ \u00a0]?(?:{units})(?!\w)")
        self._spaced = re.compile(rf"\d{{2,5}}(?:{_GAP}\d{{2,5}}){{1,6}}(?!\d)")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        left = text[at - 1] if at > floor else ""
        if left in ("+", "("):
            start = at - 2 if left == "+" and at - 1 > floor and text[at - 2] == "(" else at - 1
            for pattern in (self._international, self._bracketed):
                if (found := pattern.match(text, start)) and self._long_enough(found[0]):
                    return self._one_by_one(found, "telephone")
        crossed = at == floor and text[at - 1 : at] in ("x", "X") and not text[at - 2 : at - 1].isalpha()
        coded = at == floor and text[at - 1 : at].isupper() and not _YEAR_NEXT.match(text, at)
        if (left.isalpha() or coded) and not crossed:
            if self._priced.search(text, max(floor, at - _CODE), at):
                return None
            return self._account(text, at) or self._in_code(text, at)
        return self._grouped(text, at) or self._long(text, at) or self._after_name(text, at)

    def _grouped(self, text: str, at: int) -> Reading | None:
        if found := self._groups.match(text, at):
            return self._one_by_one(found, "serial")
        for pattern in (self._trunk, self._hyphened, self._cards):
            if (found := pattern.match(text, at)) and self._long_enough(found[0]):
                return self._one_by_one(found, "telephone")
        if (found := _LETTERED.match(text, at)) and not text[at - 1 : at].isalnum():
            groups = [self.g.words.one_by_one(g) for g in found.groups() if g]
            return Reading(Span(*found.span()), ", ".join(groups) + ", ", "telephone")
        found = self._dotted.match(text, at)
        if found and not self._is_grouped_number(found[0]):
            return self._with_points(found)
        return None

    def _is_grouped_number(self, written: str) -> bool:
        head, *rest = written.split(".")
        return len(head) <= 3 and all(len(part) == 3 for part in rest)

    def _with_points(self, found: re.Match[str]) -> Reading:
        parts = found[0].split(".")
        say = self.g.words.one_by_one if len(parts) > 3 else self.g.cardinal
        return Reading(Span(*found.span()), f" {self.point} ".join(say(p) for p in parts), "serial")

    def _account(self, text: str, at: int) -> Reading | None:
        """An account's number: two letters, two figures, groups of four (ISO 13616)."""
        found = _IBAN.match(text, at) if _COUNTRY.search(text, max(0, at - 3), at) else None
        return self._one_by_one(found, "serial") if found else None

    def _long(self, text: str, at: int) -> Reading | None:
        """A run with a leading nought, or longer than a number that is not round."""
        found = self._run.match(text, at)
        assert found is not None
        run = ascii_digits(found[0])
        zero_led = len(run) > 1 and run[0] == "0" and not _MORE.match(text, found.end())
        endless = len(run) > _LONG_RUN and not run.endswith("000000")
        return self._one_by_one(found, "serial") if zero_led or endless else None

    def _in_code(self, text: str, at: int) -> Reading | None:
        """Figures after letters: M31, A380, mp3, v3.2.1."""
        if (parts := _CODE_PARTS.match(text, at)) and len(parts[0]) > _CODE:
            return self._one_by_one(parts, "serial")
        if version := self._version.match(text, at):
            return self._with_points(version)
        found = self._run.match(text, at)
        assert found is not None
        if len(found[0]) <= _SHORT_CODE and not found[0].startswith("0"):
            return Reading(Span(*found.span()), self.g.cardinal(ascii_digits(found[0])), "serial")
        return self._one_by_one(found, "serial")

    def _after_name(self, text: str, at: int) -> Reading | None:
        """Figures after a catalogue's, an airline's or a telephone's name: NGC 224, flight 2490."""
        before = word_before(text, at)
        if not before:
            return None
        named = before.casefold().rstrip(".") in self.before or self._called(text, at, before)
        if named and self._measured.match(text, at):
            return None
        if (pair := _PAIR.match(text, at)) and before.casefold() in self.paired:
            said = f"{self.g.cardinal(pair[1])} {self.g.cardinal(pair[2])}"
            return Reading(Span(*pair.span()), said, "serial")
        if not (named or (self._is_code(before) and text[at - 2 : at - 1] != ",")):
            return None
        if named and (found := _PART_NUMBER.match(text, at)):
            return Reading(Span(*found.span()), self._spelled(found[0]), "serial")
        if named and (found := self._spaced.match(text, at)):
            return self._one_by_one(found, "telephone")
        found = self._run.match(text, at)
        if not found or len(found[0]) <= _SHORT_CODE or re.match(r"[.,:/-]\d|[\s]?[%€$£]", text[found.end() :][:2]):
            return None
        if not named and (_YEAR.match(found[0]) or word_after(text, found.end()).islower()):
            return None
        return self._one_by_one(found, "serial")

    def _is_code(self, before: str) -> bool:
        """A catalogue's or an airline's letters; not a currency's, nor a word in capitals before a plain number."""
        letters = 2 <= len(before) <= 4 and before.isupper() and before.isalpha()
        return letters and before not in self.counted_codes and before not in self.currencies

    def _called(self, text: str, at: int, before: str) -> bool:
        """A short word between ("call on", "llame al"), or "number" ("serial number", "Kontonummer")."""
        word = before.casefold()
        if word.endswith(self.number_word) and word != self.number_word:
            return True
        linking = len(before) <= _LINKING or word == self.number_word
        return linking and word_before(text, at - len(before) - 1).casefold() in self.before

    def _spelled(self, code: str) -> str:
        """A part's number with letters in it, sign by sign."""
        parts = (self.g.words.digit(c) if c.isdecimal() else c for c in code if c.isalnum())
        return " ".join(parts)

    def _long_enough(self, written: str) -> bool:
        return sum(c.isdecimal() for c in written) >= _PHONE_DIGITS

    def _one_by_one(self, found: re.Match[str], kind: str) -> Reading:
        groups = [self.g.words.one_by_one(g) for g in _GROUP.findall(found[0])]
        said = ", ".join(groups)
        if found[0].lstrip("(").startswith("+"):
            said = f"{self.plus} {said}"
        if found[0].endswith("X"):
            said += ", X"
        return Reading(Span(*found.span()), said, kind)


class Ordinals:
    """1st, 2e, 3.º: `ordinals.suffixes` maps the written ending to a form of the grammar's ordinals."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._shorts = grammar.data.maybe("spoken", "roman.short", {})
        self._short = re.compile(rf"[ \u00a0\u202f]({'|'.join(map(re.escape, self._shorts)) or '(?!)'})(?!\w)")
        self._counted = grammar.wordset("roman.cardinal_after")
        self._degrees_after = frozenset(grammar.data.maybe("spoken", "ordinals.degrees_after", ()))
        self.suffixes = grammar.table("ordinals.suffixes")
        endings = "|".join(re.escape(s) for s in sorted(self.suffixes, key=lambda s: (-len(s), s)))
        group = f"[,.{re.escape(grammar.text('numbers.group'))}\u00a0\u202f\u2009]"
        figures = rf"\d{{1,3}}(?:{group}\d{{3}}){{1,8}}|\d{{1,15}}"
        mark = re.escape(grammar.text("numbers.mark"))
        self._pattern = re.compile(rf"(?:(\d+){mark}(\d*)(\d)|({figures}))({endings})(?!\w)") if endings else None

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if self._pattern is None or (at and (text[at - 1].isalnum() or _MINUS_LEFT.search(text, max(0, at - 2), at))):
            return None
        found = self._pattern.match(text, at)
        if not found:
            return None
        digits = "".join(c for c in ascii_digits(found[3] or found[4]) if c.isdecimal())
        if int(digits) > _SCHOOL_YEARS and _SCALE_NEXT.match(text, found.end()):
            return None
        if found[5] in ("a", "o") and word_before(text, found.start()).casefold().rstrip(".") in self._counted:
            return None
        if self._is_degrees(text, found, int(digits)):
            return None
        said = self.g.ordinal_in(text, found.end(), digits, self.suffixes[found[5]])
        if short := self._short.match(text, found.end()):
            end = sentence_end(text, at, short.end(), self.g.openers)
            return Reading(Span(at, end), f"{self._first(found)}{said} {self._shorts[short[1]]}", "ordinal")
        return Reading(Span(*found.span()), f"{self._first(found)}{said}", "ordinal")

    def _is_degrees(self, text: str, found: re.Match[str], value: int) -> bool:
        """A raised o behind a temperature: "a los 38º", where nothing follows that has a rank."""
        warm = found[5] in ("º", "°") and value >= _WARM and not self.g.counted_gender(text, found.end())
        return warm and word_before(text, found.start()).casefold() in self._degrees_after

    def _first(self, found: re.Match[str]) -> str:
        """What is said before the last decimal: "ninety-nine point ninth"."""
        if not found[3]:
            return ""
        literal = Literal(found[1], found[2], 0, mark=self.g.literals.mark)
        return f"{self.g.number(literal)} " + ("" if found[2] else f"{self.g.text('numbers.marks.point')} ")


class Fractions:
    """3/4 and what else has a bar: idioms (24/7, 50-50) are data, shares (9/10) are fractions."""

    _pattern = re.compile(r"(\d{1,3})[/⁄](\d{1,4})(?:(?:th|rd|nd)s?(?!\w)|e(?!\w))?(?![\d/])")

    def __init__(self, grammar: Grammar, units: Units) -> None:
        self.g = grammar
        self.units = units
        self.idioms = grammar.table("fractions.idioms")
        self.rating = str(grammar.data.maybe("spoken", "ratings.of", ""))
        self._rated_before = frozenset(grammar.data.maybe("spoken", "ratings.before", ()))
        self._idiom = re.compile(rf"(?:{alternatives(self.idioms) or '(?!)'})(?![\d/:]|[.,-]\d)")
        self.dates = ShortDates(grammar)

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if leans_left(text, at, "/.:-–"):
            return None
        if idiom := self._idiom.match(text, at):
            unit = self.units.at(text, idiom.end())
            measured = f"{self.idioms[idiom[0]]} {unit.noun.more}" if unit else self.idioms[idiom[0]]
            return Reading(Span(at, unit.end if unit else idiom.end()), measured, "fraction")
        if self.rating and (found := _RATING.match(text, at)) and self._is_rated(text, at, found):
            return self._rated(found)
        if self.dates.with_year and (found := _MONTH_YEAR.match(text, at)):
            return self._month(text, at, found)
        found = self._pattern.match(text, at)
        if not found:
            return None
        above, below = int(found[1]), int(found[2])
        if 0 < above < below and self.g.fraction_noun(above, below):
            literal = Literal("", "", found.end(), part=(above, below))
            if unit := self.units.at(text, found.end()):
                return Reading(Span(at, unit.end), self.g.counted(literal, unit.noun), "measure")
            said = self.g.before_noun(literal, text, at, word_after(text, found.end()))
            part = Reading(Span(at, found.end() + said.endswith("-")), said, "fraction")
        else:
            over = self.g.text("fractions.over")
            said = f"{self.g.cardinal(found[1])} {over} {self.g.cardinal(found[2])}"
            if unit := self.units.at(text, found.end()):
                return Reading(Span(at, unit.end), f"{said} {unit.noun.more}", "measure")
            part = Reading(Span(*found.span()), said, "fraction")
        if found.end() != found.end(2):
            return part
        if date := self.dates.said(text, found):
            return Reading(Span(*found.span()), date, "date", (said,))
        doubt = self.dates.doubtful(text, found)
        return Reading(part.span, part.said, part.kind, (doubt,)) if doubt else part

    def _month(self, text: str, at: int, found: re.Match[str]) -> Reading:
        """A month with its year (03/2026); behind a title's word an issue's number."""
        month = self.g.data.get("spoken", "months.names")[int(found[1]) - 1]
        year = self.g.year(found[2])
        if word_before(text, at)[:1].isupper() and word_before(text, at) not in self.g.openers:
            return Reading(Span(*found.span()), f"{self.g.cardinal(found[1])} {year}", "serial", (f"{month} {year}",))
        return Reading(Span(*found.span()), f"{month} {year}", "date")

    def _is_rated(self, text: str, at: int, found: re.Match[str]) -> bool:
        """Points out of five, ten, twenty or a hundred: after a word for giving them, or with a decimal."""
        if self.units.at(text, found.end()):
            return False
        if found[2] or found[1] == found[3]:
            return True
        return word_before(text, at).casefold() in self._rated_before and not word_after(text, found.end()).islower()

    def _rated(self, found: re.Match[str]) -> Reading:
        points = Literal(found[1], found[2] or "", 0, mark=self.g.literals.mark)
        said = self.rating.format(self.g.number(points), self.g.cardinal(found[3]))
        return Reading(Span(*found.span()), said, "score")


class Ratios:
    """Scores and scales with a colon: 3:1."""

    _pattern = re.compile(r"(\d{1,4}):(\d{1,3}(?:[.,]\d{3}){1,4}|\d{1,4})(?![\d:])")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or (at and text[at - 1] in ":.,"):
            return None
        second = "".join(c for c in found[2] if c.isdecimal())
        said = self.g.text("scores.between").format(self.g.cardinal(found[1]), self.g.cardinal(second))
        return Reading(Span(*found.span()), said, "score")
