"""Numbers that are no amounts in Japanese, Chinese and Korean copy: telephone, serial and house numbers, versions."""

from __future__ import annotations

import re
from collections.abc import Sequence

from promptprep.model.language import LanguageData
from promptprep.speaking.languages import cjk_text as patterns
from promptprep.speaking.languages.cjk_numbers import LONGEST, Numerals
from promptprep.speaking.languages.cjk_quantities import Said
from promptprep.speaking.languages.cjk_wording import Wording

LOOK_AROUND = 12  # characters beside a figure in which a word tells what it is
_LONG = re.compile(rf"\d{{{LONGEST + 1},}}|\d{{1,3}}(?:,\d{{3}}){{{LONGEST // 3},}}(?!\d)")
_GOES_ON = re.compile(r"[.,]\d|\d|[番号번]|\s?[°℃℉%‰度圈]")
_DIGITS = re.compile(r"\d+")
_HOUSE_AFTER = re.compile(r"\s?(?:번지|번길|호|番地|号)")
_LOT_AFTER = re.compile(r"\s?(?:번지|番地)")
_LETTERS_BEFORE = re.compile(r"[a-z]{2}\Z")
_PARTICLES = "のにはでへとが에의으"


def any_of(words: Sequence[str]) -> str:
    """A pattern for one of `words`."""
    return "|".join(map(re.escape, words))


class Serials(Wording):
    """Rules `(text, at) -> Said | None`; the text is folded and `at` the first digit of a figure."""

    exchange: frozenset[str] = frozenset()

    def __init__(self, data: LanguageData, numerals: Numerals) -> None:
        super().__init__(data, numerals)

        def words(name: str) -> str:
            return any_of(data.get("spoken", f"context.{name}"))

        self._serial_words = re.compile(rf"(?:{words('serial')})\D{{0,3}}\Z")
        self._address_words = re.compile(rf"(?:{words('address')})\s?\Z")
        self._quarter = re.compile(rf"(?:{words('address_above')})[一-龥ァ-ヺヶーがの]{{1,6}}\s?\Z")
        self._labels = re.compile(rf"(?<![代発发])(?:{words('labels')})\s?\Z")
        self._telephone_after = re.compile(words("telephone_after"))
        self._telephone_words = re.compile(rf"(?:{words('telephone')})\D{{0,3}}(?:\d{{3,4}}\s?[,，、·]\s?)*\Z")

    def _long(self, text: str, at: int) -> Said | None:
        found = _LONG.match(text, at)
        return Said(self.serial_digits(found[0].replace(",", "")), "serial", found.end()) if found else None

    def _serial(self, text: str, at: int) -> Said | None:
        """Telephone numbers and the like: a hyphen more than a range has, a leading zero, or a word that says so."""
        before = max(0, at - LOOK_AROUND)
        if found := patterns.HYPHENED.match(text, at):
            groups = re.split("[- ]", found[0])
            named = bool(self._serial_words.search(text, before, at))
            named = named or (len(groups) == 2 and len(groups[1]) > 2 and groups[1][0] == "0")
            if len(groups) < 5 and self._is_address(text, at, found.end()):
                joint = self.forms["between_house_numbers"]
                return Said(joint.join(map(self.house_number, groups)), "serial", found.end())
            if len(groups) > 2 or named or self._is_telephone(groups):
                serial = named or groups[0][0] not in "0148"
                return (self._serial_number if serial else self._telephone)(groups, found.end())
        if found := patterns.BRACKETS_INSIDE.match(text, at):
            return self._telephone(_DIGITS.findall(found[0]), found.end())
        if found := patterns.AREA_CODE.match(text, at):
            return self._telephone(found[0].split(" "), found.end())
        run = _DIGITS.match(text, at)
        if run is None or len(run[0]) < 3 or not self.stands_alone(text, run.end()):
            return None
        if _LETTERS_BEFORE.search(text, max(0, at - 2), at):
            return self._serial_number([run[0]], run.end())
        called = self._telephone_words.search(text, before, at) or self._telephone_after.match(text, run.end())
        if called and not self.is_counted(text, run):
            return self._telephone([run[0]], run.end())
        named = bool(self._serial_words.search(text, before, at))
        return self._serial_number([run[0]], run.end()) if named else None

    def stands_alone(self, text: str, end: int) -> bool:
        """Whether a digit string ends at `end` with no decimals, group or counter behind it."""
        return not _GOES_ON.match(text, end)

    def is_counted(self, text: str, run: re.Match[str]) -> bool:
        """Whether what follows a figure beside a word for calling makes it an amount: "电话会议有300人"."""
        return False

    def _is_address(self, text: str, at: int, end: int) -> bool:
        """Whether house numbers end here: a street's name before them, no counter or unit behind."""
        before = max(0, at - LOOK_AROUND)
        if _LOT_AFTER.match(text, end) or self._labels.search(text, max(0, at - 5), at):
            return True
        if not (self._address_words.search(text, before, at) or self._quarter.search(text, before, at)):
            return False
        following = text[end : end + 2].strip()[:1]
        return not following.isalpha() or text[end] in _PARTICLES or bool(_HOUSE_AFTER.match(text, end))

    def house_number(self, digits: str) -> str:
        """A part of a house number."""
        return self.numerals.whole(digits)

    def _is_telephone(self, groups: list[str]) -> bool:
        first, last = groups[0], groups[-1]
        return (first.startswith("0") and len(first) > 1 and len(last) >= 3) or (
            len(first) == 4 and len(last) == 4 and first[:2] in ("15", "16", "18") and first[2:] in self.exchange
        )

    def _dotted(self, text: str, at: int) -> Said | None:
        """Version numbers ("1.2.3") part by part, addresses of four parts and telephone numbers digit by digit."""
        found = patterns.DOTTED.match(text, at)
        if found is None:
            return None
        groups = found[0].split(".")
        if len(groups[0]) > 1 and groups[0].startswith("0"):
            return self._telephone(groups, found.end())
        by_digit = len(groups) == 4
        parts = [self.serial_digits(g) if by_digit else self.numerals.whole(g) for g in groups]
        return Said(self.numerals.point.join(parts), "serial", found.end())
