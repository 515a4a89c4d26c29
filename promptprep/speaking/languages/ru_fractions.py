"""Russian fractions, and other figures that a stroke or a colon parts: "3/4 л", "2½", "3:1", "24/7"."""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.ru_clock import GAP
from promptprep.speaking.languages.ru_nouns import RussianNouns
from promptprep.speaking.languages.ru_quantities import Figure, RussianQuantities
from promptprep.speaking.ruled import VULGAR, Handler, as_written, is_year_pair, joined, one_of, reading

_STREET_LEFT = re.compile(r"[А-ЯЁ][а-яё]+, \Z")
MOST_POINTS = 3  # figures of a score; longer ones are of a scale


class RussianFractions:
    """Handlers for two whole numbers that make one thing."""

    def __init__(self, data: LanguageData, quantities: RussianQuantities, nouns: RussianNouns) -> None:
        self._numbers = quantities.numbers
        self._context = quantities.context
        self._quantities = quantities
        self._nouns = nouns
        self._by: str = data.get("spoken", "symbols")["×"]
        self._stroke: str = data.get("spoken", "house_stroke")
        self._half: str = data.get("spoken", "and_a_half")
        self._rounds = tuple(data.get("spoken", "rounds.stems"))
        self._into = tuple(data.get("spoken", "rounds.into"))
        self._ratio_after = tuple(data.get("spoken", "ratios.before"))

    def ratio_rule(self) -> tuple[str, Handler]:
        return rf"(\d{{1,3}}):(\d{{1,3}}(?:{GAP}\d{{3}})+|\d{{1,4}})(?![\d:])", self._ratio

    def idiom_rule(self) -> tuple[str, Handler]:
        return r"(24/7|(\d\d)/\2)(?![\d/])", self._idiom

    def rules(self, also_words: tuple[str, ...]) -> list[tuple[str, Handler]]:
        """Units in `also_words` are none behind a fraction."""
        units = one_of([u for u in self._quantities.units if u not in also_words])
        unit = rf"(?:{GAP}?(?P<unit>{units})(?![\w²³/.]))?"
        return [
            (rf"(?:(\d{{1,9}}){GAP})?(\d{{1,9}})/(\d{{1,9}})(?![\d/]){unit}", self._fraction),
            (rf"(?:(\d{{1,9}})|(?P<apart>\d{{1,2}}){GAP})?(?P<part>[{''.join(VULGAR)}]){unit}", self._vulgar),
        ]

    def _case(self, found: re.Match[str]) -> str:
        return self._context.governed_case(found.string, found.start(), found.end())

    def _ratio(self, found: re.Match[str]) -> Reading:
        """A score ("со счётом 3:1" -> "три один"); scales and shares are said "один к тысяче"."""
        before = self._context.word_before(found.string, found.start())
        first, whole = self._numbers.cardinal(found[1]), "".join(found[2].split())
        if before.startswith(self._ratio_after) or len(whole) > MOST_POINTS:
            second = self._numbers.cardinal(whole, "masculine", "dative")
            return reading(found, f"{first} к {second}", "score")
        return reading(found, joined(first, self._numbers.cardinal(whole)), "score")

    def _idiom(self, found: re.Match[str]) -> Reading:
        """ "24/7" -> "двадцать четыре на семь", "50/50" -> "пятьдесят на пятьдесят"."""
        first, last = (self._numbers.cardinal(n) for n in found[1].split("/"))
        return reading(found, f"{first} {self._by} {last}", "symbol")

    def _fraction(self, found: re.Match[str]) -> Reading | None:
        whole, over, under = found[1], int(found[2]), int(found[3])
        if under == 0:
            return None
        if not whole and is_year_pair(found[2], found[3]):
            return reading(found, joined(self._numbers.cardinal(found[2]), self._numbers.cardinal(found[3])), "range")
        before = self._context.word_before(found.string, found.start())
        if not whole and not found["unit"] and before.startswith("давлен"):
            pressure = (self._numbers.cardinal(n) for n in (over, under))
            return reading(found, f" {self._by} ".join(pressure), "measure", end=found.end(3))
        if not whole and not found["unit"] and self._is_house(found, before, over > under):
            said = f"{self._numbers.cardinal(over)} {self._stroke} {self._numbers.cardinal(under)}"
            return reading(found, said, "serial", end=found.end(3))
        case = self._case(found)
        if whole and (over, under) == (1, 2):
            said = self._and_half(found, whole, case)
        elif whole:
            said = f"{self._numbers.whole_part(whole, case)} {self._numbers.fraction(over, under, case)}"
        else:
            said = self._share(found, (over, under), case)
        return reading(found, said + self._unit(found), "fraction")

    def _vulgar(self, found: re.Match[str]) -> Reading:
        whole, part, case = found[1] or found["apart"], VULGAR[found["part"]], self._case(found)
        if not whole:
            said = self._share(found, part, case)
        elif part == (1, 2):
            said = self._and_half(found, whole, case)
        else:
            said = f"{self._numbers.whole_part(whole, case)} {self._numbers.fraction(*part, case)}"
        return reading(found, said + self._unit(found), "fraction")

    def _and_half(self, found: re.Match[str], whole: str, case: str) -> str:
        """ "полтора" of something that follows, "три с половиной"."""
        if whole == "1" and (noun := self._counted(found)):
            return self._nouns.one_and_a_half(noun, case)
        return f"{self._numbers.cardinal(whole, 'masculine', case)} {self._half}"

    @staticmethod
    def _is_house(found: re.Match[str], before: str, improper: bool) -> bool:
        """Whether "12/3" is a house: behind "д.", or behind a street's name and a comma."""
        after_street = _STREET_LEFT.search(found.string, max(0, found.start() - 30), found.start())
        return before in ("д.", "дом", "дома", "доме", "дому") or (improper and bool(after_street))

    def _counted(self, found: re.Match[str]) -> str:
        """The gender of what follows; "" where nothing does."""
        if found["unit"]:
            unit = self._quantities.units[as_written(found["unit"], self._quantities.units)]
            return self._numbers.noun(self._quantities.noun_of(unit)).gender
        after = self._context.words_after(found.string, found.end())
        return ("feminine" if after[0][-1] in "ыи" else "masculine") if after else ""

    def _share(self, found: re.Match[str], part: tuple[int, int], case: str) -> str:
        """ "две трети" of something that follows, "две третьих" alone."""
        over, under = part
        after = self._context.words_after(found.string, found.end())
        if after and after[0].startswith(self._rounds):
            return self._numbers.fraction(over, under, self._round_case(found, case))
        follows = found["unit"] or after
        noun = (follows or (over == 1 and case != "nominative")) and self._nouns.share(over, under, case)
        return noun or self._numbers.fraction(over, under, case)

    def _round_case(self, found: re.Match[str], case: str) -> str:
        """ "вышла в 1/8 финала" -> "в одну восьмую", "проиграла в 1/8" -> "в одной восьмой"."""
        place = max(0, found.start() - 3)
        if found.string[place : found.start()].lower() not in (" в ", "в "):
            return case
        verb = self._context.word_before(found.string, place)
        return "accusative" if verb.startswith(self._into) else "prepositional"

    def _unit(self, found: re.Match[str]) -> str:
        if not found["unit"]:
            return ""
        unit = self._quantities.units[as_written(found["unit"], self._quantities.units)]
        return f" {self._quantities.unit(Figure('', '1', '1'), unit)}"
