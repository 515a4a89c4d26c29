"""German: three genders, cases of "ein" and of ordinals, compounds."""

from __future__ import annotations

import re
from functools import lru_cache

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.de_cases import Cases, weak_ending
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import Grammar, Noun, word_after, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.reader import Western

_GENDERS = {"m": 0, "f": 1, "n": 2}
_FEMININE = ("ung", "heit", "keit", "schaft", "ion", "tät", "ei", "ik", "ur", "enz", "anz", "e", "in")
_NEUTER = ("chen", "lein", "ment", "um", "skop", "gramm", "nis")
_DECADE = re.compile(r"(\d{1,4})er(n|s|)(?!\w)")
_DAY_MONTH = re.compile(r"(0?[1-9]|[12]\d|3[01])\.(0?[1-9]|1[0-2])\.(?!\d)")
_SUPERLATIVE = re.compile(r"(\d{1,2})\.-(?=[a-zäöü]+ste[rsnm]?\b|best|größt|höchst)")
_NEAR_LINES = 400
_SHORT_YEAR = re.compile(r"\d{2}(?!\w|[.,:]\d|%)")
_DAY_PAIR = re.compile(r"([12]?\d|3[01])\.[ \u00a0]?/[ \u00a0]?([12]?\d|3[01])\.(?=[ \u00a0][A-ZÄÖÜ])")
_SPACED_DATE = re.compile(r"(0?[1-9]|[12]\d|3[01])\.[ \u00a0](0?[1-9]|1[0-2])\.[ \u00a0]([12]\d{3})(?![\d.,]*\d)")
_GOES_ON = re.compile(r"[,;)]|[–-]\d|[ \u00a0](?:[a-zäöü]|\d|\()")
_ORDINAL = re.compile(r"(\d{1,4})\.(?=[ \u00a0][A-ZÄÖÜa-zäöü])")
_LAST_ORDINAL = re.compile(r"([12]?\d|3[01])\.(?=[,;:!?)]|\s*\Z|\s*\n|[ \u00a0]([A-ZÄÖÜ]\w*))")
_BEFORE_LAST = frozenset(("am", "beim", "dem", "vom", "zum"))
_PERCENT_ADJECTIVE = re.compile(r"(\d{1,3}(?:,\d{1,3})?)[- \u00a0]?%-?(ig[a-zäöü]*)")
_WEAK = ("ent", "ist", "ant", "at", "et", "it", "oge", "om", "nom", "graf", "Mensch", "Held", "Fürst", "Bär")
_ADJECTIVE = re.compile(r"[a-zäöüß]{2,20}?(e[rsnm]?)\Z")


class German(Grammar):
    """Only "ein" declines before a noun; ordinals take -e, -en, -er or -es by the word in front."""

    ordinal_rules = {  # noqa: RUF012
        "": "%spellout-ordinal",
        "e": "%spellout-ordinal",
        "m": "%spellout-ordinal-m",
        "n": "%spellout-ordinal-n",
        "r": "%spellout-ordinal-r",
        "s": "%spellout-ordinal-s",
    }
    roman_dot = True
    plural_letters = "s"

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        super().__init__(data, speller)
        self.own_parts = (PercentAdjectives, GermanDecades, GermanDays, GermanOrdinals)
        self.cases = Cases(data, self.gender_of)
        self.weekdays = self.wordset("weekdays.names")
        self.weekdays |= frozenset(self.table("weekdays.short")) | {f"{k}." for k in self.table("weekdays.short")}
        self.numbered = self.wordset("dates.not_after")
        self.month_names = list(data.get("spoken", "months.names"))
        self._queens = self.wordset("roman.feminine_names")
        self._rulers = self.wordset("roman.names")
        self._one: dict[str, list[str]] = {case: forms.split("|") for case, forms in self.table("one.forms").items()}
        self._lists = {g: self.wordset(f"nouns.{name}") for g, name in
                       (("f", "feminine"), ("m", "masculine"), ("n", "neuter"))}  # fmt: skip
        self._gender = lru_cache(maxsize=4096)(self._looked_up)

    def cardinal(self, digits: str, gender: str = "") -> str:
        if gender and digits.lstrip("0") == "1":
            return str(self._one["nominative"][_GENDERS[gender]])
        return self.words.cardinal(digits)

    def year(self, digits: str) -> str:
        return self.words.cardinal(digits, "%spellout-numbering-year")

    def counted(self, literal: Literal, what: Noun, magnitude: Noun | None = None, before: str = "") -> str:
        if literal.part == (1, 2) and not literal.whole and magnitude is None:
            return f"{self.halved(what.gender or 'm', self.cases.case_after(before))} {what.one}"
        if literal.is_one and magnitude is None and before:
            return f"{self.one(what.gender or 'm', before)} {what.one}"
        return super().counted(literal, what, magnitude, before)

    def halved(self, gender: str, case: str = "nominative") -> str:
        """ "ein halber", "eine halbe", "einer halben"."""
        one = self._one[case][_GENDERS[gender]]
        strong = {"ein": ("er", "e", "es")[_GENDERS[gender]], "eine": "e"}.get(one, "en")
        return f"{one} halb{strong}"

    def one(self, gender: str, before: str) -> str:
        """ "einem Kilometer" after "mit"; the nominative where the word in front does not say."""
        case = self.cases.case_after(before)
        return str(self._one[case][_GENDERS[gender]])

    def mixed(self, literal: Literal, gender: str = "") -> str:
        """ "dreieinhalb", "drei drei Viertel"."""
        if literal.whole and literal.part == (1, 2):
            return self.cardinal(literal.whole, "m") + "einhalb"
        return re.sub(" +", " ", super().mixed(literal, ""))

    def gender_of(self, word: str) -> str:
        """Of a noun (a capital), by the lists, then by its ending or its last member."""
        return self._gender(word) if word[:1].isupper() else ""

    def _looked_up(self, word: str) -> str:
        for start in range(max(1, len(word) - 2)):
            last = word[start:].capitalize()
            for gender, words in self._lists.items():
                if last in words:
                    return gender
        if word.endswith(_FEMININE):
            return "f"
        return "n" if word.endswith(_NEUTER) else "m"

    def before_noun(self, literal: Literal, text: str, at: int, word: str) -> str:
        if literal.part == (1, 2) and not literal.whole and self.gender_of(word):
            return self.halved(self.gender_of(word), self.cases.case_after(word_before(text, at)))
        if not literal.is_one:
            return self.number(literal)
        before = self.cases.governor(text, at)
        if gender := self.gender_of(word):
            return self._one_of(word, gender, before)
        return self._one_described(text, at + 1, word, before) or self.number(literal)

    def _one_of(self, noun: str, gender: str, before: str) -> str:
        """A weak masculine in -en is no nominative: "einen Planeten"."""
        case = self.cases.case_after(before)
        if case == "nominative" and noun.endswith("en") and noun[:-2].endswith(_WEAK):
            return self._one["accusative"][0]
        return self._one[case][_GENDERS[gender]]

    def _one_described(self, text: str, end: int, adjective: str, before: str) -> str:
        """Before an adjective and its noun, whose ending tells: "eine neue Kamera", "ein großes Teleskop"."""
        found = _ADJECTIVE.match(adjective)
        noun = word_after(text, end + 1 + len(adjective))
        if not found or not (gender := self.gender_of(noun)):
            return ""
        case = self.cases.case_after(before)
        if case == "nominative" and found[1] == "en":
            return self._one["accusative"][0]
        told = {"e": "f", "es": "n", "er": "m"}.get(found[1], gender)
        return self._one[case][_GENDERS[told]]

    def counts(self, word: str) -> bool:
        return word[:1].isupper()

    def before_day(self, text: str, at: int) -> str:
        return self.cases.before_day(text, at)

    def date(self, day: str, month: str, year: str, before: str) -> str:
        ending = self.cases.determined(before, "") or "r"
        return f"{self.ordinal(day, ending)} {month} {year}".rstrip()

    def days(self, first: str, last: str, month: str, year: str, before: str) -> str:
        ending = self.cases.determined(before, "") or "r"
        both = f"{self.ordinal(first, ending)} bis {self.ordinal(last, ending)}"
        return f"{both} {month} {year}".rstrip()

    def clock(self, hour: int, minute: int | None, *, marked: bool, half: str) -> str:
        hours = "ein" if hour == 1 else self.cardinal(str(hour))
        return f"{hours} Uhr {self.cardinal(str(minute))}" if minute else f"{hours} Uhr"

    def amount(self, literal: Literal, unit: Noun, cent: Noun | None) -> str:
        """ "vier Euro fünfzig"; with the word where it is fewer than ten."""
        units = self.counted(Literal(literal.whole, "", 0), unit)
        if literal.fraction.startswith("0"):
            return f"{units} und {self.counted(Literal(literal.fraction[1:], '', 0), cent or unit)}"
        return f"{units} {self.cardinal(literal.fraction)}"

    def after_preposition(self, unit: Noun, before: str) -> Noun:
        """The dative plural: "nach zehn Kilometern", "in zwei astronomischen Einheiten"."""
        if self.cases.case_after(before) != "dative":
            return unit
        first, *rest = unit.more.split(" ")
        if first.endswith(("el", "er")) or (first.endswith("e") and unit.one != unit.more):
            first += "n"
        return Noun(unit.one, " ".join([first, *rest]), unit.gender)

    def ruler(self, name: str) -> str:
        """Without the genitive's s: "Ludwigs XIV."."""
        return name[:-1] if name.endswith("s") and name not in self._rulers and name[:-1] in self._rulers else name

    def regnal_of(self, name: str, value: int) -> str:
        return self._regnal(name, value, "nominative")

    def regnal_in(self, text: str, at: int, name: str, value: int) -> str:
        gender = "f" if name in self._queens else "m"
        return self._regnal(name, value, self.cases.ruler_case(text, at, name, gender))

    def _regnal(self, name: str, value: int, case: str) -> str:
        gender = "f" if name in self._queens else "m"
        rank = self.ordinal(str(value), weak_ending(case, gender)).capitalize()
        return f"{self.cases.article(case, gender)} {rank}"

    def rank_in(self, text: str, span: Span, value: int) -> str:
        """ "im XIX. Jahrhundert", "der II. Weltkrieg"."""
        if not word_after(text, span.end)[:1].isupper() or word_after(text, span.end) in self.openers:
            return ""
        ending = self.cases.ordinal_ending(text, span.start, span.end)
        return self.ordinal(str(value), ending) if ending else ""


class GermanDecades:
    """Die 1990er, die 90er Jahre."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _DECADE.match(text, at)
        if found and not text[at - 1 : at].isalnum():
            return Reading(Span(*found.span()), f"{self.g.year(found[1])}er{found[2]}", "year")
        short = _SHORT_YEAR.match(text, at)
        cut = at > floor and text[at - 1] in "'’" and not text[at - 2 : at - 1].strip()
        return Reading(Span(at - 1, short.end()), self.g.cardinal(short[0]), "year") if short and cut else None


class GermanDays:
    """Day and month in figures with two dots: am 19.12."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if at and (text[at - 1].isalnum() or text[at - 1] in ".,"):
            return None
        before = self.g.before_day(text, at)
        if pair := _DAY_PAIR.match(text, at):
            days = f"{pair[1]}", f"{pair[2]}"
            ending = self.g.cases.determined(before, "") or "r"
            first, second = (self.g.ordinal(day, ending) for day in days)
            return Reading(Span(*pair.span()), f"{first} {self.g.text('symbols.words.&')} {second}", "date")
        if spaced := _SPACED_DATE.match(text, at):
            name = self.g.month_names[int(spaced[2]) - 1]
            said = self.g.date(spaced[1], name, self.g.year(spaced[3]), before)
            return Reading(Span(*spaced.span()), said, "date")
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
        numbered = last.casefold() in self.g.numbered or f"{last}" in self.g.numbered
        return last in self.g.weekdays or (not numbered and bool(_GOES_ON.match(text, found.end())))


class GermanOrdinals:
    """A figure with a dot before a word, where article or preposition asks for an ordinal or a century follows."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if at and (text[at - 1].isalnum() or text[at - 1] in ".,:/"):
            return None
        found = _ORDINAL.match(text, at)
        if listed := self._in_list(text, at, found):
            return listed
        if found and word_after(text, found.end()) not in self.g.openers:
            ending = self.g.cases.ordinal_ending(text, at, found.end())
            return Reading(Span(at, found.end()), self.g.ordinal(found[1], ending), "ordinal") if ending else None
        return self._last(text, at)

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
        if not found or word_before(text, at).casefold() not in _BEFORE_LAST:
            return None
        end = found.end() if text[found.end() : found.end() + 1] in tuple(",;:!?)") else found.end() - 1
        return Reading(Span(at, end), self.g.ordinal(found[1], "n"), "ordinal")


class PercentAdjectives:
    """Eine 100%ige Chance."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _PERCENT_ADJECTIVE.match(text, at)
        if not found or (at and text[at - 1].isalnum()):
            return None
        number = self.g.literals.at(text, at)
        said = f"{self.g.number(number)}prozent{found[2]}" if number else ""
        return Reading(Span(*found.span()), said, "percent") if said else None


def verbaliser(data: LanguageData, speller: Speller) -> Western:
    return Western(German(data, speller))
