"""German: three genders, cases of "ein" and of ordinals, compounds."""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import Grammar, Noun, word_after, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.reader import Western

_GENDERS = {"m": 0, "f": 1, "n": 2}
_FEMININE = ("ung", "heit", "keit", "schaft", "ion", "tät", "ei", "ik", "ur", "enz", "anz", "e", "in")
_NEUTER = ("chen", "lein", "ment", "um", "skop", "gramm", "nis")
_DECADE = re.compile(r"(\d{1,4})er(n|s|)(?!\w)")
_DAY_MONTH = re.compile(r"(0?[1-9]|[12]\d|3[01])\.(0?[1-9]|1[0-2])\.(?!\d)")
_STRONG = {"m": "r", "f": "e", "n": "s", "": ""}
_ORDINAL = re.compile(r"(\d{1,3})\.(?=[ \u00a0][A-ZÄÖÜa-zäöü])")


class German(Grammar):
    """Only "ein" declines before a noun; ordinals take -e, -en, -er or -es by the word in front."""

    ordinal_rules = {  # noqa: RUF012
        "": "%spellout-ordinal",
        "e": "%spellout-ordinal",
        "n": "%spellout-ordinal-n",
        "r": "%spellout-ordinal-r",
        "s": "%spellout-ordinal-s",
    }
    roman_dot = True

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        super().__init__(data, speller)
        self.own_parts = (GermanDecades, GermanDays, GermanOrdinals)
        self.month_names = list(data.get("spoken", "months.names"))
        self._queens = self.wordset("roman.feminine_names")
        self.after = self.table("ordinals.after")
        self.datives = self.wordset("ordinals.dative.before")
        self._one_after = self.table("one.after")
        self._one = {case: forms.split("|") for case, forms in self.table("one.forms").items()}
        self._lists = {g: self.wordset(f"nouns.{name}") for g, name in
                       (("f", "feminine"), ("m", "masculine"), ("n", "neuter"))}  # fmt: skip

    def cardinal(self, digits: str, gender: str = "") -> str:
        if gender and digits.lstrip("0") == "1":
            return str(self._one["nominative"][_GENDERS[gender]])
        return self.words.cardinal(digits)

    def year(self, digits: str) -> str:
        return self.words.cardinal(digits, "%spellout-numbering-year")

    def counted(self, literal: Literal, what: Noun, magnitude: Noun | None = None, before: str = "") -> str:
        if literal.part == (1, 2) and not literal.whole and magnitude is None:
            return f"{self.halved(what.gender or 'm')} {what.one}"
        if literal.is_one and magnitude is None and before:
            return f"{self.one(what.gender or 'm', before)} {what.one}"
        return super().counted(literal, what, magnitude, before)

    def halved(self, gender: str) -> str:
        """ "ein halber", "eine halbe", "ein halbes"."""
        ending = ("er", "e", "es")[_GENDERS[gender]]
        return f"{self.cardinal('1', gender)} halb{ending}"

    def one(self, gender: str, before: str) -> str:
        """ "einem Kilometer" after "mit"; the nominative where the word in front does not say."""
        case = self._one_after.get(before.casefold(), "nominative")
        return str(self._one[case][_GENDERS[gender]])

    def mixed(self, literal: Literal, gender: str = "") -> str:
        """ "dreieinhalb", "drei drei Viertel"."""
        if literal.whole and literal.part == (1, 2):
            return self.cardinal(literal.whole, "m") + "einhalb"
        return re.sub(" +", " ", super().mixed(literal, ""))

    def gender_of(self, word: str) -> str:
        """Of a noun (a capital), by the lists, then by its ending or its last member."""
        if not word[:1].isupper():
            return ""
        for gender, words in self._lists.items():
            if word in words:
                return gender
        for gender, words in self._lists.items():
            if any(word.endswith(w.lower()) for w in words if len(w) > 3):
                return gender
        if word.endswith(_NEUTER):
            return "n"
        return "f" if word.endswith(_FEMININE) else "m"

    def before_noun(self, literal: Literal, text: str, at: int, word: str) -> str:
        if literal.part == (1, 2) and not literal.whole and self.gender_of(word):
            return self.halved(self.gender_of(word))
        if literal.is_one and (gender := self.gender_of(word)):
            return self.one(gender, word_before(text, at))
        return self.number(literal)

    def counts(self, word: str) -> bool:
        return word[:1].isupper()

    def ending(self, before: str, earlier: str) -> str:
        """The ordinal's ending after the word in front and the one before that; "" where nothing asks for one."""
        word = before.casefold()
        if word == "der" and earlier.casefold() in self.datives:
            return "n"
        return str(self.after.get(word, ""))

    def date(self, day: str, month: str, year: str, before: str) -> str:
        ending = self.ending(before, "") or "r"
        return f"{self.ordinal(day, ending)} {month} {year}".rstrip()

    def days(self, first: str, last: str, month: str, year: str, before: str) -> str:
        ending = self.ending(before, "") or "r"
        both = f"{self.ordinal(first, ending)} bis {self.ordinal(last, 'n' if ending == 'n' else ending)}"
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

    def regnal_of(self, name: str, value: int) -> str:
        return f"{'die' if name in self._queens else 'der'} {self.ordinal(str(value)).capitalize()}"


class GermanDecades:
    """Die 1990er, die 90er Jahre."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _DECADE.match(text, at)
        if not found or (at and text[at - 1].isalnum()):
            return None
        return Reading(Span(*found.span()), f"{self.g.year(found[1])}er{found[2]}", "year")


class GermanDays:
    """Day and month in figures with two dots: am 19.12."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _DAY_MONTH.match(text, at)
        if not found or (at and (text[at - 1].isalnum() or text[at - 1] in ".,")):
            return None
        before = word_before(text, at)
        padded = found[0].startswith("0") or found[2].startswith("0")
        if not padded and not self.g.ending(before, ""):
            return None
        said = self.g.date(found[1], self.g.month_names[int(found[2]) - 1], "", before)
        return Reading(Span(at, sentence_end(text, at, found.end(), self.g.openers)), said, "date")


class GermanOrdinals:
    """A figure with a dot before a word, where article or preposition asks for an ordinal or a century follows."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _ORDINAL.match(text, at)
        if not found or (at and (text[at - 1].isalnum() or text[at - 1] in ".,:/")):
            return None
        before, after = word_before(text, at), word_after(text, found.end())
        if after in self.g.openers:
            return None
        earlier = word_before(text, at - len(before) - 1) if before else ""
        ending = self.g.ending(before, earlier)
        if ending == "r" and self.g.gender_of(after) == "n":
            ending = "s"
        if not ending and after[:1].isupper() and not text[max(0, at - 2) : at].strip(" .!?\n"):
            ending = _STRONG[self.g.gender_of(after)]
        if not ending and after.casefold().startswith(("jahrhundert", "jahrtausend", "mal", "platz", "stock")):
            ending = "s" if after.startswith("Jahr") else "r"
        if not ending:
            return None
        return Reading(Span(at, found.end()), self.g.ordinal(found[1], ending), "ordinal")


def verbaliser(data: LanguageData, speller: Speller) -> Western:
    return Western(German(data, speller))
