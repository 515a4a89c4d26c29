"""How one language puts numbers and nouns together: the defaults, which a language's module overrides."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.numbers import Words
from promptprep.speaking.western.literal import Literal, Literals

_LAST_WORD = re.compile(r"(?:^|(?<=[\s(\[«„“\"'’‘/—–-]))([^\W\d_][\w’'.ºª-]*)[,:]?[\s\u00a0]\Z")
_NEXT_WORD = re.compile(r"[\s\u00a0\u202f]([^\W\d_][\w’'-]*)")
_BEFORE = 32


@dataclass(frozen=True, slots=True)
class Noun:
    """A counted noun: one kilometre, more kilometres, its gender ("m" "f" "n" or "")."""

    one: str
    more: str
    gender: str = ""


def noun(entry: str) -> Noun:
    """From data: "kilomètre|kilomètres|m"; a missing plural is the same word."""
    one, *rest = entry.split("|")
    return Noun(one, rest[0] if rest and rest[0] else one, rest[1] if len(rest) > 1 else "")


def word_before(text: str, at: int) -> str:
    """The word that ends just before `at` with a blank (or comma and blank) between, or ""."""
    found = _LAST_WORD.search(text[max(0, at - _BEFORE) : at])
    return found[1] if found else ""


def leans_left(text: str, at: int, signs: str) -> bool:
    """Whether a letter, a figure or one of the signs stands right before `at`: what begins there is part of more."""
    return at > 0 and (text[at - 1].isalnum() or text[at - 1] in signs)


def word_after(text: str, at: int) -> str:
    """The word that begins after one blank at `at`, or ""."""
    found = _NEXT_WORD.match(text, at)
    return found[1] if found else ""


class Grammar:
    """Numbers with their agreement. `gender` is that of the noun counted; "" where nothing follows."""

    ordinal_rules: Mapping[str, str] = {"": "%spellout-ordinal"}
    cardinal_rules: Mapping[str, str] = {}
    first_parts: tuple[Callable[[Any], Any], ...] = ()
    own_parts: tuple[Callable[[Any], Any], ...] = ()
    roman_dot = False
    articled_ranks = False
    plural_letters = "'s"
    hours_after: tuple[str, ...] = ()
    small_is_singular = False
    plural_in_compounds = False  # "24-h-Rennen" says "Stunden" where "10-hour race" says "hour"
    million_link = ""

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        self.data = data
        self.tag = data.tag
        self._texts: dict[str, str] = {}
        self.openers = self.wordset("sentences.openers")
        self.words = Words(data, speller, self.spelling_tag(data.tag))
        self.literals = Literals(self.text("numbers.group"), self.text("numbers.mark"))
        self.minus = self.text("numbers.minus")

    def spelling_tag(self, tag: str) -> str:
        """The tag by which ICU spells; a language may know better than ICU's inheritance."""
        return tag

    def respelled(self, word: str) -> str:
        """A unit's name as the tag's region spells it."""
        return word

    def text(self, key: str) -> str:
        known = self._texts.get(key)
        if known is None:
            known = self._texts[key] = str(self.data.get("spoken", key))
        return known

    def table(self, key: str) -> Mapping[str, Any]:
        found: Mapping[str, Any] = self.data.get("spoken", key)
        return found

    def wordset(self, key: str) -> frozenset[str]:
        return frozenset(self.data.get("spoken", key))

    @property
    def month_first(self) -> bool:
        """Whether a date in figures begins with its month."""
        return self.text("dates.order") == "mdy"

    @cached_property
    def fractions(self) -> dict[int, Noun]:
        return {int(k): noun(v) for k, v in self.table("fractions.names").items()}

    def fraction_noun(self, above: int, below: int) -> Noun | None:
        """What parts of a whole are called, None where the language says the bar instead."""
        return self.fractions.get(below)

    def governor(self, text: str, at: int, before: str) -> str:
        """The word that decides the case of a number at `at`; `before` stands right in front."""
        return before

    def range_start(self, literal: Literal, gender: str) -> str:
        """The first number of a range whose second is counted."""
        return self.number(literal, gender)

    def named_letters(self, text: str, at: int) -> Reading | None:
        """Capitals at `at` with a name of their own in this place ("Austin, TX"), before they are letters."""
        return None

    def named_mark(self, text: str, at: int, floor: int) -> Reading | None:
        """What a full stop or sign at `at` stands for in this language alone, before it is said by name."""
        return None

    # numbers

    def cardinal(self, digits: str, gender: str = "") -> str:
        """A whole number; with a gender, in the form that stands before a noun."""
        return self.words.cardinal(digits, self.cardinal_rules.get(gender, ""))

    def ordinal(self, digits: str, form: str = "") -> str:
        """`form` is a key of `ordinal_rules`, such as a gender."""
        return self.words.ordinal(digits, self.ordinal_rules.get(form, self.ordinal_rules[""]))

    def ordinal_in(self, text: str, end: int, digits: str, form: str) -> str:
        """An ordinal that ends at `end` in the text, in the shape that stands before what follows."""
        return self.ordinal(digits, form)

    def number(self, literal: Literal, gender: str = "") -> str:
        """A number of any kind in words."""
        if literal.part:
            return self.mixed(literal, gender)
        if literal.fraction:
            return self.decimal(literal)
        return self.cardinal(literal.whole, gender)

    def decimal(self, literal: Literal) -> str:
        mark = self.text("numbers.marks." + ("comma" if literal.mark == "," else "point"))
        return f"{self.cardinal(literal.whole)} {mark} {self.words.one_by_one(literal.fraction)}"

    def fraction(self, above: int, below: int) -> str:
        """ "two thirds"; unusual denominators by the word that stands for the bar."""
        name = self.fraction_noun(above, below)
        if name is None:
            return f"{self.cardinal(str(above))} {self.text('fractions.over')} {self.cardinal(str(below))}"
        one = above == 1
        return f"{self.cardinal(str(above), name.gender or 'm')} {name.one if one else name.more}"

    def mixed(self, literal: Literal, gender: str = "") -> str:
        """ "three and three quarters"."""
        above, below = literal.part or (0, 1)
        if not literal.whole:
            alone = self.data.maybe("spoken", f"fractions.alone.{above}/{below}")
            return alone or self.fraction(above, below)
        special = self.data.maybe("spoken", f"fractions.after.{above}/{below}")
        part = special or self.fraction(above, below)
        return f"{self.cardinal(literal.whole, gender)} {self.text('fractions.and')} {part}"

    def year(self, digits: str) -> str:
        return self.cardinal(digits)

    # nouns

    def is_singular(self, literal: Literal) -> bool:
        if self.small_is_singular:
            return literal.value < 2
        return literal.is_one or (not literal.whole and literal.part is not None)

    def counted(self, literal: Literal, what: Noun, magnitude: Noun | None = None, before: str = "") -> str:
        """A number and its noun, agreeing: "ein Kilometer", "trois millions d'euros".

        `before` is the word in front of the number, for languages with cases.
        """
        if magnitude is not None:
            amount = self.counted(literal, magnitude, None, before)
            return self._linked(amount, what.more) if magnitude.gender else f"{amount} {what.more}"
        if self.million_link and literal.is_whole and literal.whole.endswith("000000"):
            return self._linked(self.number(literal, what.gender or "m"), what.more)
        said = self.number(literal, what.gender or "m")
        return f"{said} {what.one if self.is_singular(literal) else what.more}"

    def _linked(self, amount: str, what: str) -> str:
        return f"{amount} {self.link(what)}{what}" if what else amount

    def link(self, what: str) -> str:
        """What stands between million and its noun ("de ")."""
        return self.million_link

    def gender_of(self, word: str) -> str:
        """The gender of a noun in the text, or "" where it is not known."""
        return ""

    def counted_gender(self, text: str, end: int) -> str:
        """The gender of what a figure that ends at `end` counts; "" where nothing follows or the language has none."""
        return ""

    def before_noun(self, literal: Literal, text: str, at: int, word: str) -> str:
        """A plain number that stands at `at`, before `word` (or "" at a clause's end) in the text."""
        return self.number(literal, self.gender_of(word) if word else "")

    def around_noun(self, literal: Literal, word: str) -> str:
        """A mixed number with the noun inside ("trois heures et demie"), or "" where the language has it behind."""
        return ""

    # whole expressions with an order of their own

    def date(self, day: str, month: str, year: str, before: str) -> str:
        """Day digits, month's name, year in words or ""; `before` is the word in front."""
        raise NotImplementedError

    def date_in_figures(self, day: str, month: str, year: str, before: str) -> str:
        """A date that was written without its month's name."""
        return self.date(day, month, year, before)

    def before_day(self, text: str, at: int) -> str:
        """The word in front that decides the form of a day at `at`."""
        return word_before(text, at)

    def days(self, first: str, last: str, month: str, year: str, before: str) -> str:
        """Two days of one month."""
        raise NotImplementedError

    def clock(self, hour: int, minute: int | None, *, marked: bool, half: str) -> str:
        """`minute` None for a bare hour; `marked` where "h" or "Uhr" was written; `half` "am", "pm" or ""."""
        raise NotImplementedError

    def amount(self, literal: Literal, unit: Noun, cent: Noun | None) -> str:
        """Money with two decimals and no magnitude."""
        raise NotImplementedError

    def with_seconds(self, said: str, seconds: int) -> str:
        """A clock time with its seconds."""
        return f"{said} {self.text('clock.and')} {self.counted(Literal(str(seconds), '', 0), self.second)}"

    @cached_property
    def second(self) -> Noun:
        return noun(str(self.table("units.names")["s"]))

    @cached_property
    def hour(self) -> Noun:
        return noun(str(self.table("units.names")["h"]))

    @cached_property
    def minute(self) -> Noun:
        return noun(str(self.table("units.names")["min"]))

    def attributive(self, before: str, after: str) -> bool:
        """Whether a quantity stands before its noun as an adjective does ("a five dollar note")."""
        return False

    def after_preposition(self, unit: Noun, before: str) -> Noun:
        """A unit in the case that the word in front of its number asks for."""
        return unit

    def regnal(self, value: int) -> str:
        """The number of a king or pope."""
        return self.cardinal(str(value))

    def regnal_of(self, name: str, value: int) -> str:
        """The number after a ruler's name."""
        return self.regnal(value)

    def ruler(self, name: str) -> str:
        """The plain form of a name that may be declined."""
        return name

    def regnal_in(self, text: str, at: int, name: str, value: int) -> str:
        """The number after a ruler's name (its plain form), which ends just before `at`."""
        return self.regnal_of(name, value)

    def rank_before(self, value: int, noun: str) -> str:
        """A Roman numeral in front of its noun; "" where the language writes none there."""
        return ""

    def rank_after(self, article: str, value: int, noun: str) -> str:
        """The same behind its article, which may tell the gender: "a III Bienal"."""
        return self.rank_before(value, noun)

    def rank_in(self, text: str, span: Span, value: int) -> str:
        """A Roman numeral with a dot in front of its noun ("im XIX. Jahrhundert"), or ""."""
        return ""

    def century(self, value: int) -> str:
        """A Roman numeral after a word of rank, such as "siglo"."""
        return self.cardinal(str(value))

    def counts(self, word: str) -> bool:
        """Whether the word after four figures is counted by them ("1999 people")."""
        return False

    def precedes_capitals(self, said: str) -> bool:
        """Whether an abbreviation's words usually stand before a capital (a title), so its dot ends no sentence."""
        return said in self.titles

    @cached_property
    def titles(self) -> frozenset[str]:
        """Said forms after which a capital begins no sentence."""
        return frozenset(self.data.maybe("spoken", "abbreviations.before_capital", ()))
