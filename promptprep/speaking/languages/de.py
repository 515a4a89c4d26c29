"""German: decades, days and ordinals in figures, which take their endings from the words around."""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.de_grammar import German
from promptprep.speaking.languages.de_parts import Hours, PartsOf, Pressures, Ranks, ServiceNumbers, YearsOfDeeds
from promptprep.speaking.ruled import is_season
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import leans_left, word_after, word_before
from promptprep.speaking.western.reader import Western

_DECADE = re.compile(r"(\d{1,4})er(n|s|)(?!\w)")
_SEASON = re.compile(r"([12]\d{3})/(\d\d)(?![\w/]|[.,]\d)")
_FIRST_DAY = re.compile(
    r"(0?[1-9]|[12]\d|3[01])\.[ \u00a0]?[–-][ \u00a0]?(?=(?:0?[1-9]|[12]\d|3[01])\.(?:0?[1-9]|1[0-2])\.)"
)
_DAY_MONTH = re.compile(r"(0?[1-9]|[12]\d|3[01])\.(0?[1-9]|1[0-2])\.(?!\d)")
_POSTCODE = re.compile(r"\d{5}(?=[ \u00a0][A-ZÄÖÜ])")
_HOUSE = re.compile(r"(?<!\d)\d{1,3}[a-z]?,[ \u00a0](?:D-)?\Z|(?<!\w)D-\Z")
_HOUSE_REACH = 10
_COPULAS = ("ist", "war", "wäre", "wird", "haben", "schreiben", "bis")
_TIMES_OR_FOLD = re.compile(
    r"([x×](?=/[A-ZÄÖÜ]|[ \u00a0](?![\d+=−–*/^-])|[.,;:!?)]|\Z)|[-‑]?mal(?!\w)"
    r"|[ \u00a0]x(?=[ \u00a0](?:pro|am|im|in|täglich|tgl|wöchentlich|jährlich|monatlich|die)\b))"
    r"|[-‑]([a-zäöüß]{3,})"
    r"|[-‑]((?:Jährig|Fach|Stellig|Tägig|Tonner|Ender|Achser|Zylinder|Sitzer)[a-zäöü]*)(?!\w)"
)
_ORDINAL_RANGE = re.compile(r"(\d{1,3})\.[ \u00a0]?[–-][ \u00a0]?(?=(\d{1,3})\.[ \u00a0][A-ZÄÖÜa-zäöü])")
_SUPERLATIVE = re.compile(r"(\d{1,2})\.-(?=[a-zäöü]+ste[rsnm]?\b|best|größt|höchst)")
_NEAR_LINES = 400
_SHORT_YEAR = re.compile(r"\d{2}(?!\w|[.,:]\d|%)")
_DAY_PAIR = re.compile(r"([12]?\d|3[01])\.[ \u00a0]?/[ \u00a0]?([12]?\d|3[01])\.(?=[ \u00a0][A-ZÄÖÜ])")
_SPACED_DATE = re.compile(r"(0?[1-9]|[12]\d|3[01])\.[ \u00a0](0?[1-9]|1[0-2])\.(?:[ \u00a0]([12]\d{3}))?(?!\d|[.,]\d)")
_NEXT_ORDINAL = re.compile(r"[ \u00a0](?:bis|und|oder|sowie)[ \u00a0](\d{1,3})\.(?=[ \u00a0][A-ZÄÖÜ])")
_ORDINAL = re.compile(r"(\d{1,3}(?:\.\d{3})+|\d{1,4})\.(?=[ \u00a0][A-ZÄÖÜa-zäöü])")
_LAST_ORDINAL = re.compile(r"([12]?\d|3[01])\.(?=(,[ \u00a0]\d{1,3}\.)|[,;:!?)]|\s*\Z|\s*\n|[ \u00a0]([A-ZÄÖÜ]\w*))")
_BEFORE_LAST = frozenset(("am", "beim", "dem", "vom", "zum"))
_PERCENT_ADJECTIVE = re.compile(r"(\d{1,3}(?:,\d{1,3})?)[- \u00a0]?%-?(ig[a-zäöü]*)")


class GermanDecades:
    """Die 1990er, die 90er Jahre; die Saison 2025/26."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _DECADE.match(text, at)
        if found and not text[at - 1 : at].isalnum():
            return Reading(Span(*found.span()), f"{self.g.year(found[1])}er{found[2]}", "year")
        if (season := _SEASON.match(text, at)) and is_season(season[1], season[2]) and not text[at - 1 : at].isalnum():
            said = f"{self.g.year(season[1])} {self.g.cardinal(season[2])}"
            return Reading(Span(*season.span()), said, "range")
        short = _SHORT_YEAR.match(text, at)
        cut = at > floor and text[at - 1] in "'’" and not text[at - 2 : at - 1].strip()
        return Reading(Span(at - 1, short.end()), self.g.cardinal(short[0]), "year") if short and cut else None


class GermanDays:
    """Day and month in figures with two dots: am 19.12."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if leans_left(text, at, ".,"):
            return None
        before = self.g.before_day(text, at)
        if pair := _DAY_PAIR.match(text, at):
            ending = self.g.cases.day_ending(before)
            if word_after(text, pair.end()) not in self.g.month_names:
                ending = self.g.cases.ordinal_ending(text, pair.start(2), pair.end()) or ending
            first, second = (self.g.ordinal(pair[n], ending) for n in (1, 2))
            return Reading(Span(*pair.span()), f"{first} {self.g.text('symbols.words.&')} {second}", "date")
        if (spaced := _SPACED_DATE.match(text, at)) and (spaced[3] or self.g.cases.determined(before, "")):
            name, year = self.g.month_names[int(spaced[2]) - 1], self.g.year(spaced[3]) if spaced[3] else ""
            said = self.g.date(spaced[1], name, year, before)
            return Reading(Span(at, sentence_end(text, at, spaced.end(), self.g.openers)), said, "date")
        if opening := _FIRST_DAY.match(text, at):
            said = f"{self.g.ordinal(opening[1], self.g.cases.day_ending(before))} {self.g.text('numbers.to')} "
            return Reading(Span(*opening.span()), said, "date")
        found = _DAY_MONTH.match(text, at)
        if not found or not self._is_date(text, at, found, before):
            return None
        said = self.g.date(found[1], self.g.month_names[int(found[2]) - 1], "", before)
        return Reading(Span(at, sentence_end(text, at, found.end(), self.g.openers)), said, "date")

    def _is_date(self, text: str, at: int, found: re.Match[str], before: str) -> bool:
        """By its noughts, by the word in front, or where its last dot ends no sentence; not a chapter's number."""
        if found[0].startswith("0") or found[2].startswith("0") or self.g.cases.determined(before, ""):
            return True
        last = word_before(text, at)
        heading = (not at or text[at - 1] == "\n") and word_after(text, found.end())[:1].isupper()
        return last in self.g.weekdays or (last.rstrip(".").lower() not in self.g.numbered and not heading)


class GermanOrdinals:
    """A figure with a dot before a word, where article or preposition asks for an ordinal or a century follows."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if leans_left(text, at, ".,:/"):
            return None
        if first := _ORDINAL_RANGE.match(text, at):
            return self._range(text, at, first)
        found = _ORDINAL.match(text, at)
        if listed := self._in_list(text, at, found):
            return listed
        if found and word_after(text, found.end()) not in self.g.openers:
            ending = self._ending_of_next(text, found.end()) or self.g.cases.ordinal_ending(text, at, found.end())
            digits = found[1].replace(".", "")
            return Reading(Span(at, found.end()), self.g.ordinal(digits, ending), "ordinal") if ending else None
        return self._last(text, at)

    def _ending_of_next(self, text: str, end: int) -> str:
        """Of "1. bis 3. Klasse", whose second ordinal has the noun."""
        following = _NEXT_ORDINAL.match(text, end)
        if following is None:
            return ""
        if word_after(text, following.end()) in self.g.month_names:
            return self.g.cases.day_ending(self.g.before_day(text, following.start(1)))
        return self.g.cases.ordinal_ending(text, following.start(1), following.end())

    def _range(self, text: str, at: int, first: re.Match[str]) -> Reading | None:
        """The first of two: "10.–12. Klasse"."""
        ending = self.g.cases.ordinal_ending(text, at, first.end(2) + 1)
        if not ending:
            return None
        said = f"{self.g.ordinal(first[1], ending)} {self.g.text('numbers.to')}"
        return Reading(Span(at, first.start(2)), f"{said} ", "ordinal")

    def _in_list(self, text: str, at: int, found: re.Match[str] | None) -> Reading | None:
        """A line's number, where a line near it has the next: "1. Licht prüfen"; or a superlative's rank."""
        if found is None:
            ranked = _SUPERLATIVE.match(text, at)
            return Reading(Span(*ranked.span()), self.g.ordinal(ranked[1])[:-1], "ordinal") if ranked else None
        if at and text[at - 1] != "\n":
            return None
        number = int(found[1])
        near = text[max(0, at - _NEAR_LINES) : at + _NEAR_LINES]
        if not any(f"\n{n}. " in f"\n{near}" for n in (number - 1, number + 1) if n):
            return None
        return Reading(Span(at, found.end(1)), f"{self.g.ordinal(found[1])}ns", "ordinal")

    def _last(self, text: str, at: int) -> Reading | None:
        """A day at the end of its clause: "Wir senden am 15."."""
        found = _LAST_ORDINAL.match(text, at)
        before = self.g.cases.before_day(text, at)
        if not found:
            return None
        if word_before(text, at) in self.g.weekdays and not found[2]:
            return Reading(Span(at, found.end() - 1), self.g.ordinal(found[1], self.g.cases.day_ending(before)), "date")
        dated = bool(found[2]) or self._is_day(text, at, before)
        ending = self.g.cases.determined(before, "") if dated else "n"
        if not ending or not (dated or before.lower() in _BEFORE_LAST):
            return None
        end = found.end() if text[found.end() : found.end() + 1] in tuple(",;:!?)") else found.end() - 1
        return Reading(Span(at, end), self.g.ordinal(found[1], ending), "ordinal")

    def _is_day(self, text: str, at: int, article: str) -> bool:
        """Behind "Freitag, der" and "heute ist der"."""
        earlier = word_before(text, at - len(article) - 1) if article.lower() in ("der", "den", "dem") else ""
        return earlier in self.g.weekdays or earlier.lower() in _COPULAS


class Postcodes:
    """Five figures between a house's number and a town: "Hauptstr. 16, 10115 Berlin"."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _POSTCODE.match(text, at) if _HOUSE.search(text, max(0, at - _HOUSE_REACH), at) else None
        return Reading(Span(*found.span()), self.g.words.one_by_one(found[0]), "serial") if found else None


class Multiples:
    """A figure that is one word with what follows: 1-mal, 12-jährig, die 25-Jährige, 3x."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        number = None if leans_left(text, at, ".,-–/") else self.g.literals.at(text, at)
        found = _TIMES_OR_FOLD.match(text, number.end) if number and number.is_whole and not number.part else None
        if not number or not found:
            return None
        said = self.g.cardinal(number.whole).removeprefix(self.g.one_of_round(number.whole))
        said = said.removesuffix("s") if said.endswith("eins") else said
        if found[3]:
            return Reading(Span(at, found.end()), (said + found[3].lower()).capitalize(), "cardinal")
        if text.startswith("/", found.end()):
            return Reading(Span(at, found.end() + 1), f"{said}mal {self.g.text('units.per')} ", "cardinal")
        return Reading(Span(at, found.end()), f"{said}{found[2] or 'mal'}", "cardinal")


class PercentAdjectives:
    """Eine 100%ige Chance."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _PERCENT_ADJECTIVE.match(text, at)
        if not found or (at and text[at - 1].isalnum()):
            return None
        number = self.g.literals.at(text, at)
        words = self.g.number(number).removeprefix(self.g.one_of_round(number.whole)) if number else ""
        said = f"{words}prozent{found[2]}" if words else ""
        return Reading(Span(*found.span()), said, "percent") if said else None


def verbaliser(data: LanguageData, speller: Speller) -> Western:
    grammar = German(data, speller)
    grammar.own_parts = (
        Multiples,
        PartsOf,
        Pressures,
        Ranks,
        ServiceNumbers,
        YearsOfDeeds,
        Hours,
        Postcodes,
        PercentAdjectives,
        GermanDecades,
        GermanDays,
        GermanOrdinals,
    )
    return Western(grammar)
