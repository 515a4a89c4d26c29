"""German numbers with their nouns: three genders, cases of "ein", rulers, dates and prices."""

from __future__ import annotations

import re
from functools import lru_cache

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.de_cases import Cases, weak_ending
from promptprep.speaking.languages.de_shorts import GermanShorts
from promptprep.speaking.western.grammar import Grammar, Noun, word_after, word_before
from promptprep.speaking.western.literal import Literal

_GENDERS = {"m": 0, "f": 1, "n": 2}
_FEMININE = ("ung", "heit", "keit", "schaft", "ion", "tät", "ei", "ik", "ur", "enz", "anz", "e", "in")
_NEUTER = ("chen", "lein", "ment", "um", "skop", "gramm", "nis")
_PLURALS = ("innen", "en", "e", "n", "s")
_ALWAYS_SINGULAR = ("ung", "heit", "keit", "schaft", "ion", "tät", "ei", "ik", "ur", "enz", "anz")
_UMLAUTS = str.maketrans("äöüÄÖÜ", "aouAOU")
_SHORTEST_STEM = 2
_THOUSAND = "Tausend"  # as `magnitudes.written` has it: "10 Tsd." is "zehntausend"
_LARGEST_FRACTION = 1000
_WEAK = ("ent", "ist", "ant", "at", "et", "it", "oge", "om", "nom", "graf", "Mensch", "Held", "Fürst", "Bär")
_ONE_OR_TWO = re.compile(r"[ \u00a0](?:bis|oder)[ \u00a0]\d{1,2}[ \u00a0][A-ZÄÖÜ]")
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
    plural_in_compounds = True

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        super().__init__(data, speller)
        self.cases = Cases(data, self.gender_of, self.is_plural)
        self.shorts = GermanShorts(self, self.cases, self.names_thing)
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

    def ordinal(self, digits: str, form: str = "") -> str:
        """ "hundertste", "tausendste": without "ein" where nothing else is counted."""
        return super().ordinal(digits, form).removeprefix(self.one_of_round(digits))

    def one_of_round(self, digits: str) -> str:
        """What the cardinal begins with and compounds leave out: "ein" of 100 and 1000."""
        return self._one["nominative"][0] if digits in ("100", "1000") else ""

    def year(self, digits: str) -> str:
        return self.words.cardinal(digits, "%spellout-numbering-year")

    def counted(self, literal: Literal, what: Noun, magnitude: Noun | None = None, before: str = "") -> str:
        if literal.is_whole and not literal.part and (magnitude or what).one == _THOUSAND:
            thousands = Literal(f"{literal.whole}000", "", 0)
            return super().counted(thousands, what, None, before) if magnitude else self.number(thousands)
        if literal.part == (1, 2) and not literal.whole and magnitude is None:
            return f"{self.halved(what.gender or 'm', self.cases.case_after(before))} {what.one}"
        if literal.is_one and magnitude is None and before:
            return f"{self.one(what.gender or 'm', before)} {what.one}"
        return super().counted(literal, what, magnitude, before)

    def counted_gender(self, text: str, end: int) -> str:
        return self.gender_of(word_after(text, end))

    def range_start(self, literal: Literal, gender: str) -> str:
        """ "ein bis zwei Stunden", whatever the gender."""
        return self.cardinal("1", "m") if literal.is_one and gender else self.number(literal)

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

    def is_plural(self, noun: str, article: str) -> bool:
        """Whether the lists have its singular ("Plätze"), or an article of the plural stands before it ("Spieler")."""
        if noun.endswith(_ALWAYS_SINGULAR):
            return False
        if gender := self._listed(noun):
            return gender != "f" and bool(article)
        stems = {noun.removesuffix(ending) for ending in _PLURALS} - {noun}
        if any(self._listed(s) or self._listed(s.translate(_UMLAUTS)) for s in stems if len(s) > _SHORTEST_STEM):
            return True
        plain = noun.translate(_UMLAUTS)
        if noun.endswith("er"):
            stem = self._listed(plain.removesuffix("er"))
            return stem == "n" or (bool(stem) and plain != noun) or article.lower() == "die"
        return plain != noun and bool(self._listed(plain))

    def named_letters(self, text: str, at: int) -> Reading | None:
        return self.shorts.capitals(text, at)

    def named_mark(self, text: str, at: int, floor: int) -> Reading | None:
        return self.shorts.mark(text, at, floor)

    def names_thing(self, word: str) -> bool:
        """Whether the lists have the word as a noun."""
        return bool(self._listed(word))

    def _listed(self, word: str) -> str:
        """The gender of a noun or of its last member, where the lists have it."""
        for start in range(max(1, len(word) - 2)):
            last = word[start:].capitalize()
            for gender, words in self._lists.items():
                if last in words:
                    return gender
        return ""

    def _looked_up(self, word: str) -> str:
        if listed := self._listed(word):
            return listed
        if word.endswith(_FEMININE):
            return "f"
        return "n" if word.endswith(_NEUTER) else "m"

    def before_noun(self, literal: Literal, text: str, at: int, word: str) -> str:
        if literal.part == (1, 2) and not literal.whole and self.gender_of(word):
            return self.halved(self.gender_of(word), self.cases.case_after(word_before(text, at)))
        if not literal.is_one:
            return self.number(literal)
        if _ONE_OR_TWO.match(text, at + 1):
            return self.cardinal("1", "m")
        before = self.cases.governor(text, at)
        if self._is_label(text, at, word_before(text, at)):
            return self.number(literal)
        if gender := self.gender_of(word):
            return self._one_of(word, gender, before)
        return self._one_described(text, at + 1, word, before) or self.number(literal)

    def _is_label(self, text: str, at: int, before: str) -> bool:
        """A one that names what stands in front: "§ 1 Abs. 2", "Gruppe 1 Startplatz 4"."""
        left = text[max(0, at - 2) : at].strip()
        if left == "§" or left == "," or not before[:1].isupper() or before in self.openers:
            return left == "§"
        word = before.lower()
        return not (word in self.cases.governed or word in self.cases.adverbs or word in self.cases.after)

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

    def governor(self, text: str, at: int, before: str) -> str:
        return self.cases.governor(text, at)

    def fraction_noun(self, above: int, below: int) -> Noun | None:
        """ "ein Hundertfünfundzwanzigstel"."""
        known = super().fraction_noun(above, below)
        if known or above != 1 or below > _LARGEST_FRACTION:
            return known
        name = f"{self.ordinal(str(below))[:-1].capitalize()}el"
        return Noun(name, name, "n")

    def before_day(self, text: str, at: int) -> str:
        return self.cases.before_day(text, at)

    def date(self, day: str, month: str, year: str, before: str) -> str:
        ending = self.cases.day_ending(before)
        return f"{self.ordinal(day, ending)} {month} {year}".rstrip()

    def days(self, first: str, last: str, month: str, year: str, before: str) -> str:
        ending = self.cases.day_ending(before)
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
        if self.cases.case_after(before) != "dative" or before == "bis zu":
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
