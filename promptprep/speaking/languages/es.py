"""Spanish. A decimal comma, unless the tag names a country that writes a point."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.es_parts import (
    DollarLiterals,
    Heights,
    LetterDays,
    MatchMinutes,
    NumeroSigns,
    SchoolClasses,
    Summits,
    Warmth,
)
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import word_before
from promptprep.speaking.western.literal import Literal, Literals
from promptprep.speaking.western.reader import Western
from promptprep.speaking.western.romance import Romance
from promptprep.speaking.western.romance_pairs import BarredRanges, BarredSets, SignedAges, Steps
from promptprep.speaking.western.romance_parts import IBERIAN, HundredCodes, Scales
from promptprep.speaking.western.romans import roman_value
from promptprep.speaking.western.streets import StreetReader

_BELOW_MILLION = re.compile(r"(.*(?:ón|ones)\b|)(.*)")
_HUNDREDS_OF_THOUSANDS = 6
_PESO_REGIONS = ("MX", "AR", "CL", "CO", "CU", "DO", "UY")
_PESO = "peso|pesos|m; centavo|centavos|m"
_ONE_OCLOCK = re.compile(r"(?<!\w)(?:a|desde|era|es|hacia|hasta|para|sobre) la \Z", re.IGNORECASE)
_OF_THE_DAY = re.compile(r"[ \u00a0](?:de la (?:tarde|madrugada|mañana|noche)|en punto|y media|y cuarto)(?!\w)")
_PLAIN_RANKS = (("decimoprimer", "undécim"), ("decimosegund", "duodécim"))
_CENTURY = re.compile(r"S\.(?=[ \u00a0][IVX]{1,5}(?![\w.]))")
_ENVELOPE = re.compile(r"[ \u00a0]sobre[ \u00a0](?:\(|de[ \u00a0])")
_ROAD = re.compile(r"(N)-([IVX]{1,4})(?!\w)")
_POINT_REGIONS = ("419", "MX", "US", "GT", "HN", "SV", "NI", "PA", "DO", "PR", "PE")


class Spanish(Romance):
    """Apocope before a noun (veintiún años), feminine hours, ordinals up to ten for kings and centuries."""

    cardinal_rules = {  # noqa: RUF012
        "f": "%spellout-cardinal-feminine",
        "m": "%spellout-cardinal-masculine",
    }
    ordinal_rules = {  # noqa: RUF012
        "": "%spellout-ordinal-masculine",
        "a": "%spellout-ordinal-masculine-adjective",
        "f": "%spellout-ordinal-feminine",
        "fp": "%spellout-ordinal-feminine-plural",
        "m": "%spellout-ordinal-masculine",
        "mp": "%spellout-ordinal-masculine-plural",
    }
    highest_rank = 10
    first_parts = (MatchMinutes, Scales, BarredRanges, BarredSets, SignedAges, Steps, NumeroSigns)
    own_parts = (Heights, HundredCodes, LetterDays, SchoolClasses, Summits, Warmth, *IBERIAN)
    hours_after = ("las",)
    feminine_before = ("ellas", "esas", "estas", "otras", "unas")
    cents_link = "con"
    half_feminine = "media"

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        super().__init__(data, speller)
        if data.tag.split("-")[-1] in _POINT_REGIONS:
            self.literals = Literals(",", ".")
        else:
            self.literals = DollarLiterals(self.text("numbers.group"), self.text("numbers.mark"))
        self._saints, self._san = self.wordset("saints.names"), self.text("saints.before")
        self._tonic = self.wordset("nouns.tonic")

    def table(self, key: str) -> Mapping[str, Any]:
        """The dollar sign is the peso's where the country has pesos."""
        found = super().table(key)
        if key == "currencies" and self.tag.split("-")[-1] in _PESO_REGIONS:
            return {**found, "$": _PESO}
        return found

    def singulars(self, word: str) -> tuple[str, ...]:
        if word.endswith("ces"):
            return word, word[:-3] + "z"
        if word.endswith("ones"):
            return word, word[:-4] + "ón"
        return (word, word[:-2], word[:-1]) if word.endswith("es") else super().singulars(word)

    def cardinal(self, digits: str, gender: str = "") -> str:
        """As ICU has it, but the hundreds of thousands agree too: "trescientas mil toneladas"."""
        said = super().cardinal(digits, gender)
        if gender != "f" or len(digits) < _HUNDREDS_OF_THOUSANDS:
            return said
        millions, thousands = _BELOW_MILLION.fullmatch(said).groups()  # type: ignore[union-attr]
        return millions + thousands.replace("cientos", "cientas").replace("quinientos", "quinientas")

    def ordinal(self, digits: str, form: str = "") -> str:
        """As ICU has it, but both words of a plural agree: "vigésimos primeros" (RAE, DPD)."""
        said = super().ordinal(digits, form)
        for long, plain in _PLAIN_RANKS:
            said = said.replace(long, plain)
        return re.sub(r"[ao](?= |\Z)", r"\g<0>s", said) if form in ("fp", "mp") else said

    def before_noun(self, literal: Literal, text: str, at: int, word: str) -> str:
        if literal.is_one and word in self._tonic:
            return self.number(literal, "m")
        if literal.part and not literal.whole and word in ("parte", "partes"):
            above, below = literal.part
            plural = "s" if above > 1 else ""
            return f"{self.cardinal(str(above), 'f')} {self.ordinal(str(below), 'f')}{plural}"
        return super().before_noun(literal, text, at, word)

    def _gender_here(self, literal: Literal, text: str, at: int, word: str) -> str:
        """ "a la una", "la una de la tarde", but the first of a list is "la uno"."""
        if literal.is_one and text[max(0, at - 3) : at].casefold() == "la ":
            hour = _ONE_OCLOCK.search(text, max(0, at - 12), at) or _OF_THE_DAY.match(text, literal.end)
            return "f" if hour else ""
        if literal.is_one and _ENVELOPE.match(text, literal.end):
            return "m"
        return super()._gender_here(literal, text, at, word)

    _saint = re.compile(r"S\.[ \u00a0]?([^\W\d_]+)")

    def named_mark(self, text: str, at: int, floor: int) -> Reading | None:
        """ "máx." and "mín." agree with the noun in front: "temperatura máxima"."""
        short = text[at - 3 : at] if text[at] == "." else ""
        if short not in ("máx", "mín") or at - 3 < floor or self.gender_of(word_before(text, at - 3)) != "f":
            return None
        end = sentence_end(text, at - 3, at + 1, self.openers)
        return Reading(Span(at - 3, end), f"{short}ima", "abbreviation")

    def around_noun(self, literal: Literal, word: str) -> str:
        """One and a half is singular: "una taza y media"."""
        single = literal.is_one_and_more and word.endswith(("as", "os"))
        return super().around_noun(literal, word[:-1] if single else word)

    def named_letters(self, text: str, at: int) -> Reading | None:
        """A road with its Roman numeral ("N-II", a cardinal)."""
        if road := _ROAD.match(text, at):
            said = f"{road[1]} {self.cardinal(str(roman_value(road[2])))}"
            return Reading(Span(*road.span()), said, "serial") if roman_value(road[2]) else None
        if _CENTURY.match(text, at):
            return Reading(Span(at, at + 2), "Siglo", "abbreviation")
        if (saint := self._saint.match(text, at)) and saint[1] in self._saints:
            return Reading(Span(at, at + 2), self._san, "abbreviation")
        return super().named_letters(text, at)

    def ordinal_in(self, text: str, end: int, digits: str, form: str) -> str:
        """Apocope before a masculine noun: "el tercer puesto", but "el tercero de la lista"."""
        if form == "m" and self.counted_gender(text, end) == "m":
            form = "a"
        return self.ordinal(digits, form)

    def date(self, day: str, month: str, year: str, before: str) -> str:
        said = f"{self._day(day)} de {month}"
        return f"{said} de {year}" if year else said

    def days(self, first: str, last: str, month: str, year: str, before: str) -> str:
        next_day = int(last) == int(first) + 1
        joined = "al" if before.casefold() == "del" else "y" if next_day else "a"
        said = f"{self._day(first)} {joined} {self._day(last)} de {month}"
        return f"{said} de {year}" if year else said

    def _day(self, day: str) -> str:
        return "primero" if int(day) == 1 else self.cardinal(day)

    def clock(self, hour: int, minute: int | None, *, marked: bool, half: str) -> str:
        """ "las nueve y media" up to twelve, "las veintiuna cuarenta" after; "h" is said as hours."""
        hours = self.cardinal(str(hour), "f")
        if marked:
            said = self.counted(Literal(str(hour), "", 0), self.hour)
            return f"{said} y {self.counted(Literal(str(minute), '', 0), self.minute)}" if minute else said
        if not minute:
            said = hours
        elif (hour > 12 or hour == 0) and minute >= 10:
            said = f"{hours} {self.cardinal(str(minute))}"
        else:
            said = f"{hours} y {_QUARTERS.get(minute) or self.cardinal(str(minute))}"
        return f"{said} {_part_of_day(hour, half)}" if half else said

    def rank_before(self, value: int, noun: str) -> str:
        """ "la segunda Guerra Mundial", "el tercer Congreso"."""
        return self._rank(value, noun, feminine=self.gender_of(noun) == "f")

    def rank_after(self, article: str, value: int, noun: str) -> str:
        """The article tells the gender where there is one: "la II GM"."""
        told = article in ("al", "del", "el", "la", "las", "los")
        feminine = article in ("la", "las") if told else self.gender_of(noun) == "f"
        return self._rank(value, noun, feminine=feminine)

    def _rank(self, value: int, noun: str, *, feminine: bool) -> str:
        if noun.endswith(("as", "es", "os")):
            return self.ordinal(str(value), "fp" if feminine else "mp")
        return self.ordinal(str(value), "f" if feminine else "a")

    def century(self, value: int) -> str:
        return self.regnal(value)


_QUARTERS = {15: "cuarto", 30: "media"}


def _part_of_day(hour: int, half: str) -> str:
    if half == "am":
        return "de la mañana"
    if hour == 12:
        return "del mediodía"
    return "de la tarde" if hour < 8 else "de la noche"


def verbaliser(data: LanguageData, speller: Speller) -> Western:
    return StreetReader(Spanish(data, speller))
