"""Signs alone or between two things in Japanese, Chinese and Korean copy: arrows, stars, vulgar fractions."""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

from promptprep.speaking.languages import cjk_text as patterns
from promptprep.speaking.languages.cjk_digits import Digits
from promptprep.speaking.languages.cjk_quantities import Said

_STARS = re.compile(r"[★☆⭐]{2,10}")
_BRACKET_LENGTH = 24
_CLOSING = frozenset(")]」』）％%℃")


class Signs(Digits):
    """Rules `(text, at) -> Said | None`; the text is folded and `at` the sign."""

    def _stars(self, text: str, at: int) -> Said | None:
        """A rating by full and empty stars."""
        found = _STARS.match(text, at)
        count = len(found[0].replace("☆", "")) if found else 0
        if found is None or not count:
            return None
        return Said(self.forms["stars"].replace("{n}", self.stars_counted(count)), "symbol", found.end())

    def stars_counted(self, count: int) -> str:
        """So many stars, as they are counted."""
        return self.numerals.whole(str(count))

    def _between(self, text: str, at: int, sign: str) -> Said | None:
        """A sign of comparison that is no bracket, an arrow, or the stroke of two currencies ("원/달러 환율")."""
        if sign == "/":
            return Said(self.forms["currency_pair"], "symbol", at + 1)
        if sign == "→":
            joins = text[max(0, at - 2) : at].rstrip()[-1:]
            return self.bare_sign(text, at) if joins.isalnum() or joins in _CLOSING else self._arrow(at)
        if text[at - 1 : at] == text[at + 1 : at + 2] == " ":
            return self.bare_sign(text, at)
        opens = (
            text.rfind("<", max(0, at - _BRACKET_LENGTH), at)
            if sign == ">"
            else text.find(">", at, at + _BRACKET_LENGTH)
        )
        return None if opens >= 0 else self.bare_sign(text, at)

    def _arrow(self, at: int) -> Said:
        return Said(self.forms["arrow"], "symbol", at + 1)

    def _numeric(self, text: str, at: int) -> Said | None:
        """Vulgar fractions, circled and Roman figures; several Roman ones in a row add up."""
        character = text[at]
        value = Fraction(unicodedata.numeric(character)).limit_denominator(1000)
        if at and (text[at - 1].isalpha() or text[at - 1] in ")]") and (found := patterns.EXPONENT.match(text, at)):
            said = self.symbols.get(found[0]) or self.raised("", patterns.exponent(found[0]))
            return Said(said, "symbol", found.end())
        if value.denominator > 1:
            return Said(self.fraction("", str(value.numerator), str(value.denominator)), "fraction", at + 1)
        if "\u2160" <= character <= "\u217f":
            return self._roman_signs(text, at)
        return Said(self.numerals.whole(str(value.numerator)), "cardinal", at + 1)

    def _roman_signs(self, text: str, at: int) -> Said:
        end = at
        while end < len(text) and "\u2160" <= text[end] <= "\u217f" and end - at < 12:
            end += 1
        letters = unicodedata.normalize("NFKC", text[at:end]).upper()
        value = patterns.roman(letters) or sum(
            patterns.roman(unicodedata.normalize("NFKC", c).upper()) for c in text[at:end]
        )
        return Said(self.numerals.whole(str(value)), "roman", end)
