"""Written numbers: digits with the language's separators, and vulgar fractions."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass

from promptprep.speaking.numbers import ascii_digits

VULGAR = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⅐⅑⅒"
_SPACE = r"[ \u00a0]"
_THIN = "\u00a0\u202f\u2009\u2007"


@dataclass(frozen=True, slots=True)
class Literal:
    """A number as written. `whole` and `fraction` are ASCII digits; `part` is a vulgar fraction (3, 4).

    `mark` is the decimal mark that was written; `bare` where nothing stands in front of it.
    """

    whole: str
    fraction: str
    end: int
    grouped: bool = False
    part: tuple[int, int] | None = None
    mark: str = ""
    bare: bool = False

    @property
    def is_whole(self) -> bool:
        return not self.fraction and self.part is None

    @property
    def value(self) -> int:
        """The whole part; capped, for comparisons only."""
        return int(self.whole[:18] or "0")

    @property
    def is_one(self) -> bool:
        return self.is_whole and self.whole.lstrip("0") == "1"

    @property
    def is_one_and_more(self) -> bool:
        """Whether it is one and a vulgar fraction."""
        return self.part is not None and self.whole.lstrip("0") == "1"


class Literals:
    """Finds a number at a place. `group` holds the language's separators of thousands, `mark` its decimal mark."""

    def __init__(self, group: str, mark: str) -> None:
        other = "." if mark == "," else ","
        thousands = f"[{re.escape(group)}{_THIN}’']"
        self.mark = mark
        foreign = rf"\d{{1,3}}(?:[{mark}]\d{{3}})+"
        self._pattern = re.compile(
            rf"(?P<foreign>{foreign})(?P<mark3>[{other}])(?P<part3>\d{{1,2}})(?!\d|[.,]\d)|"
            rf"(?P<grouped>\d{{1,3}}(?: \d{{3}}){{2,8}}(?!\d)|"
            rf"\d{{1,3}}(?:(?P<sep>{thousands})\d{{3}})(?:(?P=sep)\d{{3}})*(?!\d)|"
            rf"\d{{1,3}}(?:(?P<sep2>[{re.escape(other)}.,])\d{{3}})(?:(?P=sep2)\d{{3}})+(?!\d)|"
            r"\d{1,2}(?:,\d{2}){1,5},\d{3}(?!\d))"
            rf"(?:(?P<mark1>[{re.escape(mark)}])(?P<part1>\d+))?|"
            rf"(?P<plain>\d+)(?:(?P<mark2>[{mark}{other}])(?P<part2>\d+)(?!\d|[{mark}{other}]\d))?"
        )
        self._vulgar = re.compile(rf"\s?([{VULGAR}])|[\s\u00a0](\d{{1,2}})[/⁄](\d{{1,2}})(?![\d/])")
        self._then = re.compile(rf"{_SPACE}[^\W\d_]{{1,4}}{_SPACE}(\d)(?![\d.,]*\d)")
        self._leading = re.compile(rf"[{re.escape(mark)}](\d+)")

    def at(self, text: str, at: int) -> Literal | None:
        """The number that begins at a digit (or a vulgar fraction, or a decimal mark before digits)."""
        if text[at] in VULGAR:
            return Literal("", "", at + 1, part=_vulgar(text[at]))
        found = self._pattern.match(text, at)
        if found is None:
            leading = self._leading.match(text, at)
            return Literal("0", ascii_digits(leading[1]), leading.end(), mark=self.mark, bare=True) if leading else None
        whole = found["grouped"] or found["plain"] or found["foreign"]
        fraction = found["part1"] or found["part2"] or found["part3"] or ""
        digits = ascii_digits(whole)
        if not digits.isdecimal():
            digits = "".join(c for c in digits if c.isdecimal())
        end = found.end()
        if not fraction and (vulgar := self._vulgar.match(text, end)):
            part = _vulgar(vulgar[1]) if vulgar[1] else (int(vulgar[2]), int(vulgar[3]))
            if 0 < part[0] < part[1]:
                return Literal(digits, "", vulgar.end(), part=part)
        if found["mark2"] and (_in_list(text, at, found["mark2"]) or self._counts_up(text, found)):
            return Literal(digits, "", found.end("plain"))
        mark = found["mark1"] or found["mark2"] or (self.mark if found["foreign"] else "")
        return Literal(digits, ascii_digits(fraction), end, grouped=found["plain"] is None, mark=mark)

    def _counts_up(self, text: str, found: re.Match[str]) -> bool:
        """Whether the other languages' mark stands between figures that are named in a row: "1,2 or 3"."""
        first, second = found["plain"], found["part2"]
        if found["mark2"] != "," or self.mark == "," or len(first) != 1 or len(second) != 1:
            return False
        third = self._then.match(text, found.end())
        return third is not None and first < second < third[1]


def _in_list(text: str, at: int, mark: str) -> bool:
    """Whether a figure and the same mark stand in front: "1,2,3" counts up and has no decimals."""
    return at > 1 and text[at - 1] == mark and text[at - 2].isdecimal()


def _vulgar(character: str) -> tuple[int, int]:
    """Numerator and denominator of a character such as ¾ (Unicode's compatibility decomposition)."""
    above, below = unicodedata.normalize("NFKD", character).split("⁄")
    return int(above), int(below)
