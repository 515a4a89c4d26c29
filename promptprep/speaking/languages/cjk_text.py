"""What Japanese, Chinese and Korean copy have in common before any number is read: widths, patterns, amounts."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache
from math import gcd

# Full-width ASCII to ASCII, one character for one, so that offsets stay. The comma stays: in full width it
# separates items ("１，２，３"), it does not group digits.
_WIDE = {0xFF01 + i: 0x21 + i for i in range(94) if 0x21 + i != ord(",")}
_WIDE |= {
    ord(a): ord(b) for a, b in zip("￥￦￡￠〜～∼−‐‑–—―⁄：∶．\u00a0\u202f\u3000", "¥₩£¢~~~------/::.   ", strict=True)
}
_WIDE |= {ord(a): ord(b) for a, b in zip("“”’‘ℓ", "\"\"''L", strict=True)}

_WIDE_GROUPS = re.compile(r"(?<![０-９，])[０-９]{1,3}(?:[，,][０-９]{3})+(?![０-９])")

NUMBER = r"(?:\d{1,3}(?:,\d{3})+(?!\d)|\d+)"
CLOCK = re.compile(r"([01]?\d|2\d):([0-5]\d)(?::([0-5]\d))?(?![\d:]|,\d{3}(?!\d))")
RECORD = re.compile(r"(?:(\d{1,2}):)?([0-5]?\d):([0-5]\d)(?:\.(\d{1,3}))?(?![\d:.]|,\d{3}(?!\d))")
PRIMES = re.compile(r"(\d{1,3})[′']\s?([0-5]?\d)(?:\.(\d{1,3}))?[″\"]")
DECADE = re.compile(r"((?:1[5-9]|20)\d0)s(?![A-Za-z])")
STARRED = re.compile(r"([1-7])\s?[★⭐](?![★☆⭐])")
SEASON = re.compile(r"((?:19|20)\d\d)/(\d\d)(?![\d/])")
ISO_TIME = re.compile(r"T([01]\d|2[0-4]):([0-5]\d)(?::([0-5]\d))?(?:Z|[+-]\d\d:?\d\d)?(?![A-Za-z\d:])")
DATE = re.compile(
    r"(\d{4})(?:([-/])(\d{1,2})\2(\d{1,2})|\.\s?(\d{1,2})\.\s?(\d{1,2})\.?)(?![\d/]|-\d(?!\d{3}[-/.]|\d?[/.]\d))"
)
DATE_LAST_YEAR = re.compile(r"(\d{1,2})([/.-])(\d{1,2})\2(\d{4})(?![\d/-])")
YEAR_MONTH = re.compile(r"(\d{4})(?:/(\d{1,2})|-(0\d|1[0-2]))(?![\d/-])")
SLASHED = re.compile(r"(?:(\d+)\s)?(\d+)/(\d{1,3}(?:,\d{3})+(?!\d)|\d+)(?![\d/])")
DOTTED = re.compile(r"\d+(?:\.\d+){2,}")
HYPHENED = re.compile(r"0\d{1,4}-\d{2,4}(?: \d{2,4})+(?!\d)|\d+(?:-\d+)+")
INTERNATIONAL = re.compile(r"\+\d{1,3}(?:[- ]\(?\d+\)?)+")
AREA_CODE = re.compile(r"(?:0\d{1,4}(?: \d{2,4}){2,3}|[48]00 \d{3} \d{4}|1[3-9]\d \d{4} \d{4})(?!\d)")
BRACKETED = re.compile(r"\((?:0\d{1,4}|\+?\d{1,3}[- ]\d{1,4})\) ?\d{2,4}-\d{3,4}(?!\d)")
BRACKETS_INSIDE = re.compile(r"0\d{1,4}(?:\(\d{1,4}\)-?|\)\s?\d{3,4}-)\d{4}(?!\d)")
RANGE_SIGN = re.compile(r"(?:~| ?~ ?| - |-)(?=[+-]?\d|[$¥€£₩]\s?\d)")
DAY_AT_END = re.compile(
    r"(?:(\d{1,2})(?:/|\.\s?)(\d{1,2})\.?|(\d{1,2}))(?![\d/.:,年月日년월일号號時시点點%]|\s?[A-Za-z℃°])"
)
DAY_OF_WEEK = re.compile(
    r"(1[0-2]|0?[1-9])[./]([12]\d|3[01]|0?[1-9])\.?"
    r"(?=\s?\((?:[월화수목금토일月火水木金土日]|周[一二三四五六日])[)·・,、/])"
)
SHORT_DATE = re.compile(r"(\d\d)/(\d{1,2})/(\d{1,2})(?![\d/-])")
DOTTED_SHORT_DATE = re.compile(r"(\d\d)\.\s?(\d{1,2})\.\s?(\d{1,2})(?![\d.]*\d)\.?")
PADDED_DAY = re.compile(r"(0\d|1[0-2])-(0\d|[12]\d|3[01])(?![\d/-])")
MONTH_YEAR = re.compile(r"(0\d|1[0-2])[/-]((?:19|20)\d\d)(?![\d/-])")
NAMED_DAY = re.compile(r"([1-9]|1[0-2])[·・](0?[1-9]|[12]\d|3[01])(?![\d·・]|[.,]\d)")
CLOSE_NAMED_DAY = re.compile(r"([1-9]|1[0-2])(?:\.([1-9]|[12]\d|3[01])|(0[1-9]|[12]\d|3[01]))(?![\d.,:%/-])")
DIFFERENCE = re.compile(rf"{NUMBER}(?:\.\d+)?(?:\s?-\s?{NUMBER}(?:\.\d+)?){{1,4}}(?=\s?=)")
VULGAR = re.compile(r"(\d{1,15})\s?([¼-¾⅐-⅞])")
DURATION = re.compile(r"(\d{1,3})\s?h\s?(\d{1,2})\s?m(?:in)?(?:\s?(\d{1,2}(?:\.\d+)?)\s?s)?(?![A-Za-z\d])")
ERA = re.compile(r"(\d{1,4})\s(BCE?|AD|CE|B\.C\.|A\.D\.)(?![A-Za-z])")
POWER = re.compile(rf"({NUMBER})(?:\.(\d+))?([⁺⁻]?[⁰¹²³⁴-⁹]+|\^[+-]?\d+)(?![\d.])")
SCIENTIFIC = re.compile(rf"({NUMBER})(?:\.(\d+))?\s?[×xX]\s?10([⁺⁻]?[⁰¹²³⁴-⁹]+|\^[+-]?\d+)(?![\d.])")
PAIR = re.compile(r"(\d{1,3})[-:](\d{1,3})")
_BETWEEN_PAIRS = r"(?:[、,，;；/]\s?|\s)"
PAIRS_BEFORE = re.compile(rf"(?<![\d:-])(?:\d{{1,3}}[-:]\d{{1,3}}{_BETWEEN_PAIRS})+\Z")
PAIRS = re.compile(rf"\d{{1,3}}[-:]\d{{1,3}}(?:{_BETWEEN_PAIRS}\d{{1,3}}[-:]\d{{1,3}})*(?![\d:-])")
ROW_LENGTH = 60
EXPONENT = re.compile(r"[⁺⁻]?[⁰¹²³⁴-⁹]+")
LATIN = re.compile(r"[A-Za-z]")
_AMOUNT = re.compile(rf"({NUMBER})(?:\.(\d+))?")
_ROMAN = re.compile(r"M{0,3}(?:CM|CD|D?C{0,3})(?:XC|XL|L?X{0,3})(?:IX|IV|V?I{0,3})")
_ROMAN_VALUES = {"I": 1, "V": 5, "X": 10, "L": 50, "C": 100, "D": 500, "M": 1000}
_WEEKDAY = re.compile(r"\s?\((?:[月火水木金土日一二三四五六]|周.|[월화수목금토일])")


@lru_cache(maxsize=8)
def folded(text: str) -> str:
    """`text` with full-width ASCII, dashes, waves, quotation marks and litre signs in one form each,
    character for character."""
    if text.isascii():
        return text
    return _WIDE_GROUPS.sub(lambda found: found[0].replace("，", ","), text).translate(_WIDE)


@dataclass(frozen=True, slots=True)
class Amount:
    """A written number: whole digits, decimals after the point, and a power left outside ("2.5万": 万)."""

    whole: str
    fraction: str = ""
    power: str = ""
    end: int = 0

    @property
    def plain(self) -> bool:
        return not self.fraction and not self.power

    @property
    def value(self) -> int:
        return int(self.whole) if len(self.whole) < 60 else 10**60

    def times(self, exponent: int) -> Amount:
        """Multiplied by a power of ten, exactly."""
        kept = self.fraction.ljust(exponent, "0")
        return Amount((self.whole + kept[:exponent]).lstrip("0") or "0", kept[exponent:].rstrip("0"), "", self.end)


class Amounts:
    """Reads amounts with a language's powers between the digits: "1億2500万", "3만 5천", "350万"."""

    def __init__(self, powers: dict[str, int], not_before: str) -> None:
        names = "|".join(sorted(powers, key=len, reverse=True))
        self._step = re.compile(rf"({NUMBER})\s?((?:{names})+)(?!{not_before})")
        self._power = re.compile(rf"\s?((?:{names})+)(?!{not_before})")
        self._more = re.compile(rf"\s?({NUMBER})\s?((?:{names})+)?(?!{not_before})(?![.:/-]\d)")
        self._single = re.compile(names)
        self._powers = powers

    def at(self, text: str, at: int) -> Amount | None:
        found = _AMOUNT.match(text, at)
        if found is None:
            return None
        if found[2]:
            power = self._power.match(text, found.end())
            if power:
                return Amount(_digits(found[1]), found[2], power[1], power.end())
            return Amount(_digits(found[1]), found[2], "", found.end())
        step = self._step.match(text, at)
        if step is None:
            return Amount(_digits(found[1]), "", "", found.end(1))
        return self._chain(text, step)

    def _chain(self, text: str, step: re.Match[str]) -> Amount:
        exponent = self._exponent(step[2])
        total, end = int(_digits(step[1])) * 10**exponent, step.end()
        while more := self._more.match(text, end):
            below = self._exponent(more[2]) if more[2] else 0
            if len(more[1]) > 20:
                break
            value = int(_digits(more[1])) * 10**below
            if not (1 if below else 10) <= value < 10**exponent or (text[end] == " " and not more[2]):
                break
            total, end, exponent = total + value, more.end(), below
            if not below:
                break
        return Amount(str(total), "", "", end)

    def _exponent(self, names: str) -> int:
        return sum(self._powers[n] for n in self._single.findall(names))


def _digits(written: str) -> str:
    return written.replace(",", "")


def roman(letters: str) -> int:
    """Value of a Roman numeral in canonical form, else 0."""
    if not letters or len(letters) > 15 or not _ROMAN.fullmatch(letters):
        return 0
    values = [_ROMAN_VALUES[c] for c in letters]
    return sum(-v if v < max(values[i:]) else v for i, v in enumerate(values))


def exponent(written: str) -> str:
    """A superscript or what stands behind "^" in plain digits, with its minus sign."""
    return unicodedata.normalize("NFKC", written).lstrip("^").replace("\u2212", "-").lstrip("+")


def row_of_pairs(text: str, at: int, end: int) -> tuple[int, int]:
    """Where the row of pairs ("21:15, 19:21") around a pair begins and ends; the place itself where none is."""
    before = PAIRS_BEFORE.search(text, max(0, at - ROW_LENGTH), at)
    start = before.start() if before else at
    row = PAIRS.match(text, start)
    return start, max(end, row.end() if row else end)


def is_day(month: str, day: str) -> bool:
    return len(month) <= 2 and len(day) <= 2 and 1 <= int(month) <= 12 and 1 <= int(day) <= 31


def slash_is_date(text: str, found: re.Match[str], likely: bool) -> bool:
    """Whether "a/b" is a day rather than a fraction: by a zero or a weekday, or because no one says such a fraction.

    `likely`: the language often writes days so, and then only fractions of ten and less count. Elsewhere a day is what
    has more than twelve below and more than one above, or no less above than below ("5/5").
    """
    over, under = found[2], found[3]
    if found[1] or not is_day(over, under):
        return False
    if "0" in (over[0], under[0]) or _WEEKDAY.match(text, found.end()):
        return True
    proper = int(over) < int(under) and gcd(int(over), int(under)) == 1
    if likely:
        return not proper or int(under) > 10
    return (int(over) > 1 and int(under) > 12) or int(over) >= max(5, int(under))
