"""French. Numbers as ICU spells them (with the hyphens of 1990); Swiss and Belgian tags get their own tens."""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.fr_parts import (
    DaysBefore,
    LawNumbers,
    LetteredNumbers,
    MatchMinutes,
    NumeroSigns,
    Phones,
    WarYears,
)
from promptprep.speaking.western.grammar import Noun, leans_left, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.money import currency, price
from promptprep.speaking.western.reader import Western
from promptprep.speaking.western.romance import Romance
from promptprep.speaking.western.romance_pairs import BarredRanges, BarredSets, SignedAges, Steps
from promptprep.speaking.western.romance_parts import SHARED, HundredCodes, LongMetres, Scales
from promptprep.speaking.western.streets import StreetReader

_PLURAL_BEFORE_MILLIONS = re.compile(
    r"(\b(?:deux|trois|quatre|cinq|six|sept|huit|neuf)[- ]cent|quatre[- ]vingt)(?= (?:m|b|tr)illi)"
)
_MARKS = 20
_NO_AND = re.compile(r"(quatre-vingt|\bcent)-et-(?=unième)")
_HALF_LED = frozenset(("cette", "chaque", "la", "le", "ma", "par", "sa", "un", "une"))
_PLURAL_END = re.compile(r"(cent|vingt)s\Z")
_NUMBER_SIGN = re.compile(r"n[°ºᵒ][ \u00a0\u202f]?\Z", re.IGNORECASE)
_VOWELS = "aeiouyhàâéèêëîïôœùû"


class CentsBehind:
    """A price with its cents behind the sign: 12 €50."""

    _pattern = re.compile(r"(\d{1,6})[ \u00a0\u202f]?€(\d{2})(?![\d.,])")

    def __init__(self, grammar: French) -> None:
        self.g = grammar
        self.euro = currency(str(grammar.table("currencies")["€"]))

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or leans_left(text, at, ".,"):
            return None
        return Reading(Span(*found.span()), price(self.g, Literal(found[1], found[2], 0), self.euro), "money")


class French(Romance):
    """Zero to one and a half are singular; minutes are feminine; the first of a month is the only ordinal day."""

    cardinal_rules = {"f": "%spellout-cardinal-feminine"}  # noqa: RUF012
    ordinal_rules = {  # noqa: RUF012
        "": "%spellout-ordinal-masculine",
        "f": "%spellout-ordinal-feminine",
        "fp": "%spellout-ordinal-feminine-plural",
        "m": "%spellout-ordinal-masculine",
        "mp": "%spellout-ordinal-masculine-plural",
    }
    small_is_singular = True
    first_parts = (MatchMinutes, Scales, WarYears, BarredRanges, BarredSets, SignedAges, Steps, NumeroSigns)
    own_parts = (CentsBehind, DaysBefore, LetteredNumbers, Phones, LawNumbers, HundredCodes, LongMetres, *SHARED)
    thousand = "mille"
    half_feminine = "demie"

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        super().__init__(data, speller)
        self._naming = self.wordset("numbers.naming")

    def singulars(self, word: str) -> tuple[str, ...]:
        return (word, word[:-1]) if word.endswith(("s", "x")) else (word,)

    def cardinal(self, digits: str, gender: str = "") -> str:
        """As ICU has it, but million is a noun that leaves the plural before it: "huit cents millions"."""
        return _PLURAL_BEFORE_MILLIONS.sub(r"\1s", super().cardinal(digits, gender))

    def year(self, digits: str) -> str:
        """A number that ranks leaves the plural: "l'an huit cent", "page quatre-vingt"."""
        return _PLURAL_END.sub(r"\1", self.cardinal(digits))

    def link(self, what: str) -> str:
        """The elided "de" before a vowel; an aspirated h is rare among what is counted."""
        return "d'" if what[:1].casefold() in _VOWELS else "de "

    def ordinal(self, digits: str, form: str = "") -> str:
        if form in ("second", "seconde"):
            return form if digits == "2" else super().ordinal(digits, "f" if form.endswith("e") else "m")
        said = super().ordinal(digits, form)
        return _NO_AND.sub(r"\1-", said)

    def fraction(self, above: int, below: int) -> str:
        """Twentieths are marks out of twenty, but for a single one."""
        if below == _MARKS and above > 1:
            return f"{self.cardinal(str(above))} {self.text('fractions.over')} {self.cardinal(str(below))}"
        return super().fraction(above, below)

    def half(self, gender: str) -> str:
        return "demie" if gender == "f" else "demi"

    def before_noun(self, literal: Literal, text: str, at: int, word: str) -> str:
        """ "les huitièmes de finale", "en quart de finale": the article has taken the one's place."""
        before = word_before(text, at).casefold()
        if literal.is_whole and (
            re.split("['’]", before)[-1] in self._naming or _NUMBER_SIGN.search(text, max(0, at - 3), at)
        ):
            return _PLURAL_END.sub(r"\1", super().before_noun(literal, text, at, word))
        if not literal.whole and literal.part and literal.part[0] == 1 and before in ("les", "des", "aux", "en"):
            if literal.part[1] == 2:
                return "demi-" if word.startswith("finale") else super().before_noun(literal, text, at, word)
            name = self.fractions[literal.part[1]]
            return name.one if before == "en" else name.more
        if literal.part == (1, 2) and not literal.whole and before in _HALF_LED and self.gender_of(word):
            return "demi-"
        return super().before_noun(literal, text, at, word)

    def half_before(self, gender: str) -> str:
        return f"{'une' if gender == 'f' else 'un'} demi-"

    def _part_of(self, above: int, below: int, what: Noun) -> str:
        if (above, below) == (1, 2):
            return f"{self.half_before(what.gender)}{what.one}"
        return super()._part_of(above, below, what)

    def date(self, day: str, month: str, year: str, before: str) -> str:
        return " ".join(part for part in (self._day(day), month, year) if part)

    def days(self, first: str, last: str, month: str, year: str, before: str) -> str:
        """ "les vingt et vingt et un mai", but "du douze au quinze mars"."""
        next_day = int(last) == int(first) + 1 and before.casefold() != "du"
        joined = self.text("fractions.and") if next_day else self.text("dates.to")
        return f"{self._day(first)} {joined} {self._day(last)} {month} {year}".rstrip()

    def _day(self, day: str) -> str:
        return "premier" if int(day) == 1 else self.cardinal(day)

    def clock(self, hour: int, minute: int | None, *, marked: bool, half: str) -> str:
        said = self.counted(Literal(str(hour), "", 0), self.hour)
        return f"{said} {self.cardinal(str(minute), 'f')}" if minute else said

    def amount(self, literal: Literal, unit: Noun, cent: Noun | None) -> str:
        """ "douze euros cinquante"; with the word where it is fewer than ten."""
        units = self.counted(Literal(literal.whole, "", 0), unit)
        if literal.fraction.startswith("0"):
            return f"{units} et {self.counted(Literal(literal.fraction[1:], '', 0), cent or unit)}"
        return f"{units} {self.cardinal(literal.fraction)}"


def verbaliser(data: LanguageData, speller: Speller) -> Western:
    return StreetReader(French(data, speller))
