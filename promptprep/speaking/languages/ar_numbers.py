"""Arabic numbers in words, with polarity, the dual, and the counted noun's number and case.

The CLDR's Arabic rules (48) know no feminine above two and spell "ثلاثة مائة", so the words are put together
here from `spoken.toml`. Written without vowel marks but for the accusative's "ًا", as broadcast copy is.
`case` is "nominative", "oblique" (genitive) or "accusative", which looks the same but for "ًا" ("ألفًا ومائتين").
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from promptprep.model.language import LanguageData

AND = "و"
MOST_DIGITS = 18
_TANWEEN = "ًا"


@dataclass(frozen=True)
class Counted:
    """A noun that numbers count: its gender, singular, dual in both cases, plural, and what follows it unchanged."""

    feminine: bool
    one: str
    two: str
    two_oblique: str
    many: str
    tail: str = ""
    adjective: str = ""

    @property
    def accusative(self) -> str:
        """The singular after 11 to 99; a feminine ending, "ء" after alif and foreign vowels take no alif."""
        return self.one if self.one.endswith(("ة", "ى", "ا", "و", "اء", "ي")) or self.feminine else self.one + _TANWEEN


def counted(entry: Mapping[str, Any]) -> Counted:
    """A noun from the data; the dual follows from the singular unless given."""
    one = entry["one"]
    stem = one[:-1] + "ت" if one.endswith("ة") else one
    feminine = entry.get("feminine", one.endswith("ة"))
    return Counted(
        feminine,
        one,
        entry.get("two", stem + "ان"),
        entry.get("two_oblique", stem + "ين"),
        entry.get("many", one),
        entry.get("tail", ""),
        entry.get("adjective", ""),
    )


class ArabicNumbers:
    """Number words from one `LanguageData`."""

    def __init__(self, data: LanguageData) -> None:
        self._data = data
        self._said: dict[tuple[str, bool, str, bool], str] = {}

    @cached_property
    def _words(self) -> Mapping[str, Any]:
        return dict(self._data.get("spoken", "numbers"))

    @cached_property
    def _scales(self) -> list[tuple[int, Counted]]:
        return [
            (10 ** int(power), counted(entry)) for power, entry in self._data.get("spoken", "number_scales").items()
        ]

    def cardinal(
        self, digits: str | int, *, feminine: bool = False, case: str = "nominative", bound: bool = False
    ) -> str:
        """A whole number that counts something `feminine` or not; `bound`: the counted noun follows at once.

        Beyond eighteen digits the figures are said one by one.
        """
        plain = str(digits).lstrip("0") or "0"
        if len(plain) > MOST_DIGITS:
            return self.digits(plain)
        key = (plain, feminine, case, bound)
        if key not in self._said:
            self._said[key] = self._whole(int(plain), feminine, case, bound)
        return self._said[key]

    def digits(self, digits: str) -> str:
        """Figures said one by one."""
        return " ".join(self._words["units"][int(d)] for d in digits)

    def _whole(self, n: int, feminine: bool, case: str, bound: bool) -> str:
        if n == 0:
            return str(self._words["units"][0])
        parts: list[str] = []
        for scale, noun in self._scales:
            group, n = divmod(n, scale)
            if group:
                parts.append(self._scaled(group, noun, case, bound and n == 0))
        if n:
            parts.append(self._below_thousand(n, feminine, case, bound))
        return f" {AND}".join(parts)

    def _scaled(self, group: int, noun: Counted, case: str, bound: bool) -> str:
        """ "ثلاثة آلاف", "أحد عشر ألفًا", "ألفان": a group of thousands, millions and so on."""
        if group == 1:
            return noun.accusative if case == "accusative" and not bound else noun.one
        if group == 2:
            return self.dual(noun, case, bound)
        head = self._below_thousand(group, noun.feminine, case, True)
        return f"{head} {self.form(noun, group, bound=bound)}"

    def scale(self, power: int) -> Counted:
        """The noun of a power of ten: 3, 6, 9, 12 or 15."""
        return next(noun for value, noun in self._scales if value == 10**power)

    @staticmethod
    def named(noun: Counted) -> str:
        """The singular with its adjective and tail, as it follows a decimal: "متر مربع"."""
        adjective = f" {noun.adjective}{'ة' if noun.feminine else ''}" if noun.adjective else ""
        return f"{noun.one}{adjective}" + (f" {noun.tail}" if noun.tail else "")

    @staticmethod
    def dual(noun: Counted, case: str, bound: bool = False) -> str:
        """ "كيلومتران", "كيلومترين"; without its "ن" before a noun that it is `bound` to."""
        word = noun.two if case == "nominative" else noun.two_oblique
        return word.removesuffix("ن") if bound else word

    @staticmethod
    def form(noun: Counted, n: int, *, bound: bool = False) -> str:
        """The counted noun after `n`: plural after 3-10, accusative singular after 11-99, else singular."""
        last = n % 100
        if 3 <= last <= 10:
            return noun.many
        return noun.accusative if last >= 11 and not bound else noun.one

    def _below_thousand(self, n: int, feminine: bool, case: str, bound: bool) -> str:
        hundreds, rest = divmod(n, 100)
        parts = []
        if hundreds:
            word = self._words["hundreds" if case == "nominative" else "hundreds_oblique"][hundreds - 1]
            parts.append(word.removesuffix("ن") if hundreds == 2 and bound and not rest else word)
        if rest:
            parts.append(self._below_hundred(rest, feminine, case, bound))
        return f" {AND}".join(parts)

    def _below_hundred(self, n: int, feminine: bool, case: str, bound: bool) -> str:
        units, teens = ("units_feminine", "teens_feminine") if feminine else ("units", "teens")
        tail = "" if case == "nominative" else "_oblique"
        if n == 1 and case == "accusative" and not feminine and not bound:
            return f"{self._words[units][1]}{_TANWEEN}"
        if n <= 10:
            word = str(self._words[f"{units}{tail}" if n == 2 else units][0 if n == 2 and tail else n])
            return self._words["eight_bound"] if bound and feminine and n == 8 else word
        if n < 20:
            return str(self._words[teens + tail][n - 11])
        ten, unit = divmod(n, 10)
        tens = str(self._words["tens" + tail][ten - 2])
        if not unit:
            return tens
        if unit == 1 and feminine:
            return f"{self._words['one_feminine_in_tens']} {AND}{tens}"
        one = self._below_hundred(unit, feminine, case, False)
        marked = feminine and case == "accusative" and unit > 2
        return f"{self._words['eight_bound'] if marked and unit == 8 else one}{_TANWEEN if marked else ''} {AND}{tens}"

    def count(self, digits: str, noun: Counted, case: str = "nominative") -> str:
        """The number with its noun: "كيلومتر واحد", "كيلومتران", "ثلاثة كيلومترات", "أحد عشر كيلومترًا"."""
        n = int(digits[-MOST_DIGITS:]) if len(digits) <= MOST_DIGITS else 100
        tail = f" {noun.tail}" if noun.tail else ""
        if n == 1:
            one = noun.accusative if case == "accusative" else noun.one
            words = self.cardinal(1, feminine=noun.feminine, case=case)
            return f"{one}{self._adjective(noun, 1, case)}{tail} {words}"
        if n == 2:
            return f"{self.dual(noun, case)}{self._adjective(noun, 2, case)}{tail}"
        words = self.cardinal(digits, feminine=noun.feminine, case=case, bound=True)
        return f"{words} {self.form(noun, n)}{self._adjective(noun, n)}{tail}"

    @staticmethod
    def _adjective(noun: Counted, n: int, case: str = "nominative") -> str:
        """The noun's adjective agrees: "متر مربع", "متران مربعان", "ثلاثة أمتار مربعة", "عشرون مترًا مربعًا"."""
        if not noun.adjective:
            return ""
        word, last = noun.adjective, n % 100
        if n == 2:
            stem = word + "ت" if noun.feminine else word
            return f" {stem}{'ان' if case == 'nominative' else 'ين'}"
        if noun.feminine or 3 <= last <= 10:
            return f" {word}ة"
        return f" {word}{_TANWEEN if last >= 11 or case == 'accusative' else ''}"

    def ordinal(self, n: int, *, feminine: bool = False, case: str = "oblique") -> str:
        """The definite ordinal: "الثالث", "الحادية عشرة", "الخامس والعشرين"; above 99 the cardinal with the article."""
        units: list[str] = self._words["ordinals_feminine" if feminine else "ordinals"]
        if n <= 10:
            return units[n - 1]
        tail = "" if case == "nominative" else "_oblique"
        if n < 20:
            eleven = self._words["ordinal_eleven_feminine" if feminine else "ordinal_eleven"]
            head = eleven if n == 11 else units[n - 11]
            return f"{head} {'عشرة' if feminine else 'عشر'}"
        if n < 100:
            ten, unit = divmod(n, 10)
            tens = f"ال{self._words['tens' + tail][ten - 2]}"
            if not unit:
                return tens
            one = self._words["ordinal_eleven_feminine" if feminine else "ordinal_eleven"]
            return f"{one if unit == 1 else units[unit - 1]} {AND}{tens}"
        return self.definite(self.cardinal(n, feminine=feminine, case=case))

    def definite(self, words: str) -> str:
        """The article on a spelled number: on each part that "and" joins, but on the first word of "ثلاثة عشر"."""
        eight = {self._words["units_feminine"][8]: self._words["eight_bound"]}
        parts = [eight.get(part, part) for part in words.split(f" {AND}")]
        return f" {AND}".join(part if part.startswith("ال") else "ال" + part for part in parts)

    def decimal(self, whole: str, part: str, case: str = "nominative") -> str:
        """ "2.5" -> "اثنان فاصلة خمسة": the whole number, then the figures one by one, as the CLDR's rules say them."""
        plain = "oblique" if case == "accusative" else case
        return f"{self.cardinal(whole, case=plain)} {self._words['point']} {self.digits(part)}"

    def fraction(self, over: int, under: int, case: str = "nominative", *, bound: bool = False) -> str:
        """ "3/4" -> "ثلاثة أرباع"; denominators above ten are said "on": "خمسة على اثني عشر"."""
        nouns: list[Mapping[str, Any]] = self._words["shares"]
        if 2 <= under <= 10 and 0 < over < 100:
            noun = counted(nouns[under - 2])
            if over == 2 and bound:
                return self.dual(noun, case, bound)
            return noun.one if over == 1 else self.count(str(over), noun, case)
        return f"{self.cardinal(over, case=case)} {self._words['over']} {self.cardinal(under, case='oblique')}"
