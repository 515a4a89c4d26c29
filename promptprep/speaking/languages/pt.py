"""Portuguese: Brazil's unless the tag is pt-PT (or a country that follows Portugal)."""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.pt_parts import (
    FirstDays,
    InchParts,
    Laps,
    NamedMonths,
    Phones,
    Sets,
    StreetLetters,
    TypedRanks,
    WeekdayRanks,
    Winds,
)
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.reader import Western
from promptprep.speaking.western.romance import Romance
from promptprep.speaking.western.romance_parts import IBERIAN, LongMetres
from promptprep.speaking.western.verses import Verses

_PLURALS = (("ões", "ão"), ("ães", "ão"), ("ais", "al"), ("zes", "z"), ("res", "r"), ("ns", "m"))
_NUMBER_AND = re.compile(r"\d e \Z")
_LEFT = 4
_EXTREMES = {"mín": "mínima", "máx": "máxima"}
_WARMTH = re.compile(r"[ \u00a0](?:de )?[-−]?\d{1,2}(?:,\d)?[ \u00a0]?[°º]")
_PORTUGAL = "pt-PT"
_MILLIARD, _BILLION = 9, 12  # digits
_EUROPEAN = ("PT", "AO", "MZ", "CV", "GW", "ST", "TL")


class Portuguese(Romance):
    """Um, dois and the hundreds agree in gender; "e" joins as ICU has it."""

    cardinal_rules = {  # noqa: RUF012
        "f": "%spellout-cardinal-feminine",
    }
    ordinal_rules = {  # noqa: RUF012
        "": "%spellout-ordinal-masculine",
        "f": "%spellout-ordinal-feminine",
        "m": "%spellout-ordinal-masculine",
    }
    small_is_singular = True
    highest_rank = 10
    first_parts = (Verses, Sets, WeekdayRanks, Phones, InchParts, NamedMonths, Laps, FirstDays, TypedRanks)
    own_parts = (LongMetres, *IBERIAN)
    plural_letters = "s"
    hours_after = ("as", "às")
    articles_one = ("um",)
    hours_between = ("às",)
    feminine_before = ("delas", "essas", "estas", "nas", "outras", "pelas", "umas")
    one_oclock = ("à ",)
    half_feminine = "meia"

    _streets = StreetLetters()

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        super().__init__(data, speller)
        self._winds = Winds(self)

    def spelling_tag(self, tag: str) -> str:
        return _PORTUGAL if tag.split("-")[-1] in _EUROPEAN else tag

    def cardinal(self, digits: str, gender: str = "") -> str:
        """As ICU has it, but a thousand million in Portugal takes no "um"."""
        plain = digits.lstrip("0")
        if self.words.language == _PORTUGAL and _MILLIARD < len(plain) <= _BILLION:
            return self._by_millions(plain, gender)
        said = super().cardinal(digits, gender)
        return said.removeprefix("um ") if said.startswith("um mil ") else said

    def _by_millions(self, digits: str, gender: str) -> str:
        """ "dois mil e quinhentos milhões": thousands of millions are counted in one."""
        millions, rest = digits[:-6], digits[-6:].lstrip("0")
        said = f"{self.cardinal(millions)} milhões"
        if not rest:
            return said
        joined = len(rest) < 3 or (len(rest) == 3 and rest.endswith("00"))
        return f"{said}{' e' if joined else ''} {self.cardinal(rest, gender)}"

    def respelled(self, word: str) -> str:
        """Portugal writes "quilómetro" and "eletrão"."""
        if self.words.language != _PORTUGAL:
            return word
        return word.replace("ômetr", "ómetr").replace("nômic", "nómic").replace("elétron", "eletrão")

    def singulars(self, word: str) -> tuple[str, ...]:
        for plural, singular in _PLURALS:
            if word.endswith(plural):
                return word, word.removesuffix(plural) + singular, word[:-1]
        return super().singulars(word)

    def ordinal(self, digits: str, form: str = "") -> str:
        plural = form.endswith("p")
        said = super().ordinal(digits, form.removesuffix("p"))
        return " ".join(f"{word}s" for word in said.split()) if plural else said

    def date(self, day: str, month: str, year: str, before: str) -> str:
        said = f"{self._day(day)} de {month}"
        return f"{said} de {year}" if year else said

    def days(self, first: str, last: str, month: str, year: str, before: str) -> str:
        said = f"{self._day(first)} a {self._day(last)} de {month}"
        return f"{said} de {year}" if year else said

    def _day(self, day: str) -> str:
        return "primeiro" if int(day) == 1 else self.cardinal(day)

    def clock(self, hour: int, minute: int | None, *, marked: bool, half: str) -> str:
        """ "vinte e uma horas e quarenta minutos" with an h, "nove e quarenta" with a colon."""
        if marked or not minute:
            hours = self.counted(Literal(str(hour), "", 0), self.hour)
        else:
            hours = self.cardinal(str(hour), "f")
        said = hours
        if minute and marked:
            said = f"{hours} e {self.counted(Literal(str(minute), '', 0), self.minute)}"
        elif minute:
            said = f"{hours} e {'meia' if minute == 30 and hour <= 12 else self.cardinal(str(minute))}"
        return f"{said} {_part_of_day(hour, half)}" if half else said

    def before_noun(self, literal: Literal, text: str, at: int, word: str) -> str:
        """Half of what "da" names is "metade", and half behind a number with "e" is "meio"."""
        if literal.part == (1, 2) and not literal.whole:
            if word in ("da", "das", "do", "dos"):
                return "metade"
            if _NUMBER_AND.search(text, max(0, at - _LEFT), at):
                return "meio"
        return super().before_noun(literal, text, at, word)

    def rank_before(self, value: int, noun: str) -> str:
        """ "a vigésima terceira Festa"."""
        return self.ordinal(str(value), "f" if self.gender_of(noun) == "f" else "m")

    def rank_after(self, article: str, value: int, noun: str) -> str:
        """By its article, which knows the gender: "a terceira Bienal"."""
        if article in ("a", "as", "à", "da", "na", "pela"):
            return self.ordinal(str(value), "f")
        return self.rank_before(value, noun)

    def named_letters(self, text: str, at: int) -> Reading | None:
        return self._streets.named(text, at) or self._winds.named(text, at)

    def named_mark(self, text: str, at: int, floor: int) -> Reading | None:
        """Lowest and highest temperatures are feminine: "mín. 17°"."""
        said = _EXTREMES.get(text[max(floor, at - 3) : at].lower()) if text[at] == "." else None
        if not said or not _WARMTH.match(text, at + 1) or text[at - 4 : at - 3].isalnum():
            return None
        said = said.capitalize() if text[at - 3].isupper() else said
        return Reading(Span(at - 3, at + 1), said, "abbreviation")

    def century(self, value: int) -> str:
        return self.regnal(value)


def _part_of_day(hour: int, half: str) -> str:
    if half == "am":
        return "da manhã"
    return "da tarde" if hour < 7 or hour == 12 else "da noite"


def verbaliser(data: LanguageData, speller: Speller) -> Western:
    return Western(Portuguese(data, speller))
