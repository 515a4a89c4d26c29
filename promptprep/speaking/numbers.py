"""Number words of one language: cardinals of any size, decimals, ordinals, digit strings."""

from __future__ import annotations

import unicodedata
from functools import lru_cache

from promptprep.errors import UnknownLanguage
from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller

DIGITS_KEPT = 36  # a longer number is read digit by digit


@lru_cache(maxsize=1024)
def _digit_value(character: str) -> str:
    return str(unicodedata.decimal(character))


def ascii_digits(text: str) -> str:
    """Any decimal digits (Arabic-Indic, Devanagari, full width) as 0-9; everything else unchanged."""
    return text if text.isascii() else "".join(_digit_value(c) if c.isdecimal() else c for c in text)


class Words:
    """Spells numbers for one language. `rules` names are CLDR rule sets; "" is the plain cardinal."""

    def __init__(self, data: LanguageData, speller: Speller, language: str | None = None) -> None:
        self.language = language or data.tag
        self._speller = speller
        self._magnitudes = tuple(data.maybe("spoken", "magnitudes.beyond", ()))
        self._digits: dict[str, str] = {}

    def cardinal(self, digits: str | int, rules: str = "") -> str:
        """A whole number in words. Up to 15 digits by ICU, up to 36 by the language's own words for the powers of ten

        (`magnitudes.beyond`: entries "exponent|one|more"), beyond that digit by digit.
        """
        plain = str(digits).lstrip("0") or "0"
        if len(plain) <= 15:
            return self._speller.spell(int(plain), self.language, rules)
        return self._large(plain, rules) if len(plain) <= DIGITS_KEPT and self._magnitudes else self.one_by_one(plain)

    def _large(self, digits: str, rules: str) -> str:
        said, rest = [], int(digits)
        for entry in self._magnitudes:
            exponent, one, more = entry.split("|")
            count, rest = divmod(rest, 10 ** int(exponent))
            if count:
                said.append(one if count == 1 else f"{self.cardinal(count)} {more}")
        if rest:
            said.append(self._speller.spell(rest, self.language, rules))
        return " ".join(said)

    def ordinal(self, digits: str | int, rules: str = "%spellout-ordinal") -> str:
        """Raises `UnknownLanguage` where the language has no such rule set."""
        plain = str(digits).lstrip("0") or "0"
        if len(plain) > 15:
            return self.cardinal(plain)
        return self._speller.spell(int(plain), self.language, rules)

    def has(self, rules: str) -> bool:
        """Whether ICU knows an ordinal rule set of that name."""
        try:
            self._speller.spell(1, self.language, rules)
        except UnknownLanguage:
            return False
        return True

    def one_by_one(self, text: str, blank: str = " ") -> str:
        """Each digit of `text` in words, other characters left out: "2-07" -> "two zero seven"."""
        return blank.join(self.digit(c) for c in text if c.isdecimal())

    def digit(self, character: str) -> str:
        """One decimal digit, of any script, in words."""
        said = self._digits.get(character)
        if said is None:
            said = self._digits[character] = self._speller.spell(_digit_value(character), self.language)
        return said
