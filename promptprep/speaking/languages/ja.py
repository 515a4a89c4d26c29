"""Japanese: numbers in kanji ("三百人"), as they are read aloud; letters by their names in katakana."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.speaking.languages.cjk import Cjk
from promptprep.speaking.languages.cjk_numbers import japanese, numerals_of
from promptprep.speaking.languages.cjk_quantities import Said
from promptprep.speaking.languages.cjk_text import Amount, folded, is_day

_ORDINAL = re.compile(r"(\d{1,6})(?:st|nd|rd|th)(?![A-Za-z])")
_RANKED = re.compile(r"([1-9]|10)(?:st|nd|rd|th)(?=\s?[A-Zァ-ヺ])")
_QUARTER = re.compile(r"([1-4])Q(?![A-Za-z\d])")
_ERA = re.compile(r"([MTSHR])([1-9]\d?)(?:(?=年)|\.(\d{1,2})\.(\d{1,2})(?![\d.]))")
_COINS_BEFORE = re.compile(r"(\d[\d,]*)\.(\d\d)")
_RELEASE = re.compile(r"(?:[をにへ](?:ダウンロード|インストール|更新|アップ|リリース|公開)|版|系)")
_RELEASE_NAMED = re.compile(r"(?:バージョン|アプリ|ソフト|ファームウェア|リリース|OS)[はがをの]?\s?\Z")
_LESS = re.compile(r"[▲△](?=\d[\d,]*(?:\.\d|\s?(?:%|‰|ポイント|[千百]?[万億兆]|円)))")


class Japanese(Cjk):
    """Counters stay as written; only zero depends on them (零時, ゼロ人)."""

    last_hour = 29  # broadcasting counts the hours of a night on: 25:30

    def __init__(self, data: LanguageData) -> None:
        super().__init__(data, numerals_of(data.get("spoken", "number"), japanese))
        self._rei_before = tuple(data.get("spoken", "number.zero_is_rei_before"))
        self._ranks: list[str] = data.get("spoken", "number.english_ranks")
        self._coin: str = data.get("spoken", "coins.円")
        self._serial_zero: str = data.get("spoken", "number.serial_zero")
        self._era_letters: Mapping[str, str] = data.get("spoken", "era_letters")
        self._folded = lru_cache(maxsize=8)(lambda text: _LESS.sub("-", folded(text)))

    def folded(self, text: str) -> str:
        """The triangle of accounts read as a minus sign: "▲5.2%"."""
        return self._folded(text)

    def figure(self, amount: Amount, following: str, before: str) -> str:
        if amount.plain and not amount.value and following.startswith(self._rei_before):
            return self.numerals.digits[0]
        return self.numerals.number(amount.whole, amount.fraction) + amount.power

    def hour(self, digits: str) -> str:
        return self.forms["hour"].replace("{n}", self.figure(Amount(digits.lstrip("0") or "0"), "時", ""))

    def serial_digits(self, digits: str) -> str:
        return self.numerals.one_by_one(digits).replace(self.numerals.digits[0], self._serial_zero)

    def ranged(self, text: str, at: int, first: Said, second: Said) -> str:
        """Both ends of a range of sums in the same coins: "150.25~150.30円"."""
        coins = _COINS_BEFORE.fullmatch(text, at, first.end) if second.said.endswith(self._coin) else None
        if coins:
            number = self.numerals.whole
            first = replace(first, said=f"{number(coins[1].replace(',', ''))}円{number(coins[2])}{self._coin}")
        return super().ranged(text, at, first, second)

    def _letters(self, text: str, at: int) -> Said | None:
        """Also an era by its letter: "R8年", "S64.1.7"."""
        found = _ERA.match(text, at)
        if found is None or (text[at - 1 : at].isascii() and text[at - 1 : at].isalnum()):
            return super()._letters(text, at)
        era = self._era_letters[found[1]]
        if found[3] is None:
            return Said(era + self.numerals.whole(found[2]), "year", found.end())
        if not is_day(found[3], found[4]) or _is_release(text, at, found.end()):
            return super()._letters(text, at)
        return Said(era + self.day_said(found[2], found[3], found[4]), "date", found.end())

    def special(self, text: str, at: int) -> Said | None:
        if quarter := _QUARTER.match(text, at):
            return Said(f"第{self.numerals.whole(quarter[1])}四半期", "ordinal", quarter.end())
        ranked = _RANKED.match(text, at)
        if ranked and int(ranked[1]) <= len(self._ranks):
            return Said(self._ranks[int(ranked[1]) - 1], "ordinal", ranked.end())
        if found := _ORDINAL.match(text, at):
            return Said(self.forms["ordinal"].replace("{n}", self.numerals.whole(found[1])), "ordinal", found.end())
        return None


def _is_release(text: str, at: int, end: int) -> bool:
    """Whether "R4.1.2" is a program's release: beside a word for one, or put in or fetched."""
    named = _RELEASE_NAMED.search(text, max(0, at - 10), at)
    return bool(named or _RELEASE.match(text, end))


def verbaliser(data: LanguageData, speller: Speller) -> Japanese:
    """Japanese forms its numbers by itself; ICU's serve as a check (see `cjk_numbers`)."""
    return Japanese(data)
