"""What French, Spanish and Portuguese share: two genders, "de" after millions, halves behind the noun."""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.genders import Genders
from promptprep.speaking.western.grammar import Grammar, Noun, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.units import alternatives

_HALVED = re.compile(r"\d[ \u00a0]?(h|[^\W\d_]{2,12})[ \u00a0]\Z")
_HOUR_BEFORE = re.compile(r"(?:\d[ \u00a0]?h(?:[ \u00a0]?\d\d)?|\d[:.]\d\d)[ \u00a0]?\(?\Z")
_SHORT_CAPITALS = re.compile(r"[A-Z]{2,4}(?![\w-])")
_WIND_LEFT = 40
_AND_HALF = re.compile(r"\d[ \u00a0](?:e|et|y)[ \u00a0]\Z")
_PAIR = 2
_HOUR_LEFT = 5
_NOUN_LEFT = 16


class Romance(Grammar):
    """Genders are those of `genders.Genders`."""

    million_link = "de "
    plural_letters = ""
    highest_rank = 1
    hours_between: tuple[str, ...] = ()
    feminine_before: tuple[str, ...] = ()
    articles_one: tuple[str, ...] = ("un",)
    thousand = "mil"
    one_oclock: tuple[str, ...] = ()
    half_feminine = "media"

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        super().__init__(data, speller)
        self._pairs: dict[str, str] = dict(data.maybe("spoken", "acronyms.pairs", {}))
        self._pair = re.compile(rf"(?:{alternatives(self._pairs) or '~'})(?!\w)".replace(r"\ ", "[ \u00a0]"))
        self._zones: dict[str, str] = dict(data.maybe("spoken", "clock.zones", {}))
        self._wind_names: dict[str, str] = dict(data.maybe("spoken", "compass.winds", {}))
        winds = alternatives(data.maybe("spoken", "compass.winds_before", ())) or "(?!)"
        self._wind_left = re.compile(rf"(?<!\w)(?:{winds})(?!\w)[^.;!?\d]*[ \u00a0]\Z", re.IGNORECASE)
        self._queens = self.wordset("roman.feminine_names")
        self.not_nouns = frozenset(w.casefold() for w in self.openers) | self.wordset("nouns.never")
        self.genders = Genders(data, self.singulars, self.not_nouns)

    def named_letters(self, text: str, at: int) -> Reading | None:
        """Letters that are said as words, from `acronyms.pairs`: "EE UU", "S. A. R."."""
        if placed := self._placed_letters(text, at):
            return placed
        pair = self._pair.match(text, at)
        said = str(self._pairs[pair[0].replace("\u00a0", " ")]) if pair else ""
        return Reading(Span(*pair.span()), said, "abbreviation") if pair else None

    def _placed_letters(self, text: str, at: int) -> Reading | None:
        """The world's time behind an hour ("2 h 56 TU"), winds by their quarter ("vent de NO")."""
        found = _SHORT_CAPITALS.match(text, at)
        if found is None or text[at - 1 : at].isalnum():
            return None
        said = self._zones.get(found[0]) if _HOUR_BEFORE.search(text, max(0, at - _NOUN_LEFT), at) else None
        if said is None and found[0] in self._wind_names and self._wind_left.search(text, max(0, at - _WIND_LEFT), at):
            said = self._wind_names[found[0]]
        return Reading(Span(*found.span()), said, "abbreviation") if said else None

    def singulars(self, word: str) -> tuple[str, ...]:
        """The word and what it may be the plural of."""
        return (word, word[:-1]) if word.endswith("s") else (word,)

    def gender_of(self, word: str) -> str:
        """ "f" or "m" by the lists, else by the ending; "" for what is no noun by its look."""
        return self.genders.of(word)

    def counted_gender(self, text: str, end: int) -> str:
        return self.genders.counted(text, end)

    def decimal(self, literal: Literal) -> str:
        """Two decimals are said as one number: "trois virgule quatorze"."""
        if len(literal.fraction) != _PAIR or literal.fraction.startswith("0"):
            return super().decimal(literal)
        mark = self.text("numbers.marks." + ("comma" if literal.mark == "," else "point"))
        return f"{self.cardinal(literal.whole)} {mark} {self.cardinal(literal.fraction)}"

    def counted(self, literal: Literal, what: Noun, magnitude: Noun | None = None, before: str = "") -> str:
        if magnitude is not None and literal.is_one and magnitude.one == self.thousand:
            return f"{magnitude.one} {what.more}"
        if not literal.part or magnitude is not None:
            return super().counted(literal, what, magnitude, before)
        above, below = literal.part
        if not literal.whole:
            return self._part_of(above, below, what)
        whole = super().counted(Literal(literal.whole, "", 0), what)
        return f"{whole} {self.text('fractions.and')} {self._rest(above, below, what)}"

    def _part_of(self, above: int, below: int, what: Noun) -> str:
        if (above, below) == (1, 2):
            return f"{self.half(what.gender)} {what.one}"
        return f"{self.fraction(above, below)} {self.link(what.one)}{what.one}"

    def _rest(self, above: int, below: int, what: Noun) -> str:
        if (above, below) == (1, 2):
            return self.half(what.gender)
        return str(self.data.maybe("spoken", f"fractions.after.{above}/{below}") or self.fraction(above, below))

    def half(self, gender: str) -> str:
        """ "medio", "media"."""
        return self.half_feminine if gender == "f" else str(self.data.get("spoken", "fractions.after.1/2"))

    def around_noun(self, literal: Literal, word: str) -> str:
        gender = self.gender_of(word) if self._is_noun(word) else ""
        if not gender or literal.part is None:
            return ""
        rest = self._rest(*literal.part, Noun(word, word, gender))
        return f"{self.cardinal(literal.whole, gender)} {word} {self.text('fractions.and')} {rest}"

    def half_before(self, gender: str) -> str:
        """Half of the noun that follows: "media hora"."""
        return self.half(gender)

    def before_noun(self, literal: Literal, text: str, at: int, word: str) -> str:
        gender = self._gender_here(literal, text, at, word)
        if literal.part and not literal.whole:
            return self._part_here(literal, text, at, gender)
        if literal.fraction[1:] == "00" and literal.mark == "," and self._plural(word):
            return self.cardinal(literal.whole + literal.fraction, gender)
        said = self.number(literal, gender)
        if literal.is_whole and literal.whole.endswith("000000") and literal.value and self._plural(word):
            return f"{said} {self.link(word)}".rstrip(" ")
        return said

    def _gender_here(self, literal: Literal, text: str, at: int, word: str) -> str:
        """The gender of what is counted at `at`; hours that stand alone are feminine."""
        plural = literal.is_whole and literal.value > 1
        if gender := self.genders.counted(text, literal.end, plural=plural):
            return gender
        before = word_before(text, at).casefold()
        if before in self.hours_after or before in self.feminine_before or word in self.hours_between:
            return "f"
        one_oclock = literal.is_one and text[max(0, at - _HOUR_LEFT) : at].casefold().endswith(self.one_oclock)
        return "f" if one_oclock else ""

    def _part_here(self, literal: Literal, text: str, at: int, gender: str) -> str:
        """A fraction: before its noun, behind it ("8 ans 1/2"), or after an article that is its one."""
        if literal.part == (1, 2) and _AND_HALF.search(text, max(0, at - _NOUN_LEFT), at):
            return self.half(gender)
        if literal.part == (1, 2) and gender:
            return self.half_before(gender)
        if literal.part == (1, 2) and (halved := _HALVED.search(text, max(0, at - _NOUN_LEFT), at)):
            gender = self.hour.gender if halved[1] == "h" else self.gender_of(halved[1])
            return f"{self.text('fractions.and')} {self.half(gender)}"
        said = self.number(literal, gender)
        one = literal.part and literal.part[0] == 1 and word_before(text, at) in self.articles_one
        return said.partition(" ")[2] if one else said

    def _is_noun(self, word: str) -> bool:
        return word.islower() and not any(c.isdecimal() for c in word)

    def _plural(self, word: str) -> bool:
        elided = word[1:2] in ("’", "'")
        return word.islower() and len(word) > 3 and not elided and word.endswith(("s", "x"))

    def counts(self, word: str) -> bool:
        return self._plural(word)

    def amount(self, literal: Literal, unit: Noun, cent: Noun | None) -> str:
        cents = self.counted(Literal(literal.fraction.lstrip("0"), "", 0), cent or unit)
        return f"{self.counted(Literal(literal.whole, '', 0), unit)} {self.cents_link} {cents}"

    cents_link = "e"

    def regnal(self, value: int) -> str:
        return self.ordinal(str(value), "m") if value <= self.highest_rank else self.cardinal(str(value))

    def regnal_of(self, name: str, value: int) -> str:
        """Queens take the feminine."""
        if value <= self.highest_rank and name in self._queens:
            return self.ordinal(str(value), "f")
        return self.regnal(value)
