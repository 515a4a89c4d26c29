"""Hindi: Roman figures, Latin letters beside figures and by themselves, units away from figures.

Latin letters said by name are written as Hindi calls them ("ESA" -> "ई एस ए"), because the copy is Devanagari.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.hi_numbers import HindiNumbers
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.roman import roman
from promptprep.speaking.ruled import Handler, one_of, reading, word_before

SHORTEST_SERIAL = 5  # figures behind letters that are said one by one
MOST_LETTERS = 6  # longer runs of capitals are words
_CENTURY = re.compile(r"[ \u00a0](?:सदी|शताब्दी|शती)")
_END = r"(?![\w\u0900-\u0963])"


class HindiLetters:
    """Handlers for places that begin with a letter."""

    def __init__(self, data: LanguageData, numbers: HindiNumbers) -> None:
        self._numbers = numbers
        self._numbered = frozenset(data.get("spoken", "words.numbered").split())
        self._regnal = frozenset(data.get("spoken", "regnal.names"))
        self._ranks: list[str] = data.get("spoken", "regnal.ranks")
        self._acronyms: Mapping[str, str] = data.get("spoken", "acronyms")
        self._letter: Mapping[str, str] = data.get("spoken", "letters")
        self._endings: list[str] = data.get("spoken", "ordinal_endings.words")
        self._bare: Mapping[str, str] = data.get("spoken", "bare_units")

    def rules(self) -> list[tuple[str, Handler]]:
        return [
            (rf"([IVXLC]+)({one_of(self._endings)}){_END}", self._roman_ordinal),
            (r"[IVXLC]+(?!\w)", self._roman),
            (r"([A-Z]{1,6})(\d+)\.(\d+)(?![\w.])", self._decimal_behind),
            (r"[A-Z]{1,6}\d[A-Z\d]{0,12}(?!\w)", self.mixed_serial),
            (r"[A-Z]+(?![a-z]|\.[A-Z][a-z])", self._initialism),
            (rf"(?<![\u0900-\u0963])(?:{one_of(self._bare)}){_END}", self._bare_unit),
        ]

    def _bare_unit(self, found: re.Match[str]) -> Reading:
        return reading(found, self._bare[found[0]], "abbreviation")

    def _roman_ordinal(self, found: re.Match[str]) -> Reading | None:
        n = roman(found[1])
        return reading(found, self._numbers.ordinal(str(n), found[2]), "roman") if n else None

    def _roman(self, found: re.Match[str]) -> Reading | None:
        n = roman(found[0])
        text, start = found.string, found.start()
        before = text[start - 1 : start]
        if not n or before.isalnum():
            return None
        if word_before(text, start) in self._regnal:
            own = self._ranks[n - 1] if n <= len(self._ranks) else self._numbers.ordinal(str(n), "वें")
            return reading(found, own, "roman")
        if len(found[0]) == 1 and not (before == "-" or word_before(text, start) in self._numbered):
            return None
        if _CENTURY.match(text, found.end()):
            return reading(found, self._numbers.ordinal(str(n), "वीं"), "roman")
        return reading(found, self._numbers.cardinal(n), "roman")

    def mixed_serial(self, found: re.Match[str]) -> Reading:
        """Letters by name and figures as numbers: "M31" -> "एम इकतीस", "H2O" -> "एच दो ओ"."""
        parts = re.findall(r"\d+|[A-Z]", found[0])
        count = {True: self._numbers.digits, False: self._numbers.cardinal}
        said = (self._letter.get(p) or count[len(p) >= SHORTEST_SERIAL](ascii_digits(p)) for p in parts)
        return reading(found, " ".join(said), "serial")

    def _decimal_behind(self, found: re.Match[str]) -> Reading:
        """ "PM2.5" -> "पी एम दो दशमलव पाँच"."""
        letters = " ".join(self._letter[c] for c in found[1])
        whole, part = (ascii_digits(d) for d in found.group(2, 3))
        return reading(found, f"{letters} {self._numbers.decimal(whole, part)}", "serial")

    def _initialism(self, found: re.Match[str]) -> Reading | None:
        before, letters = found.string[found.start() - 1 : found.start()], found[0]
        if before.isascii() and before.isalnum():
            return None
        said = self._acronyms.get(letters)
        if not said and len(letters) > MOST_LETTERS:
            return None
        return reading(found, said or " ".join(self._letter[c] for c in letters), "initialism")
