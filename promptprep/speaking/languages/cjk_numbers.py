"""Number words of Japanese, Chinese and Korean: groups of four digits, each language's own ones and zeros.

ICU's rule sets write 〇 inside Chinese and Japanese numbers and never 两, so the words are formed here and
checked against ICU in the tests.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

LONGEST = 48  # digits; a longer number is read digit by digit in every language


@dataclass(frozen=True)
class Numerals:
    """The characters of one language's numbers, and how it forms whole numbers from digits without leading zeros."""

    digits: tuple[str, ...]
    units: tuple[str, str, str]
    powers: tuple[str, ...]
    point: str
    zero: str
    two: str
    form: Callable[[Numerals, str], str]

    def whole(self, digits: str) -> str:
        """A whole number; beyond the powers that the language names, digit by digit."""
        plain = digits.lstrip("0")
        if not plain:
            return self.zero
        if len(plain) > LONGEST:
            return self.one_by_one(plain)
        return _whole(self, plain)

    def one_by_one(self, digits: str) -> str:
        return "".join(self.digits[int(d)] for d in digits)

    def number(self, digits: str, fraction: str = "") -> str:
        """Whole part and, after the point, digit by digit."""
        whole = self.whole(digits) if digits.strip("0") else self.digits[0]
        return whole + self.point + self.one_by_one(fraction) if fraction else self.whole(digits)

    def __hash__(self) -> int:
        return id(self)


@lru_cache(maxsize=32768)
def _whole(numerals: Numerals, digits: str) -> str:
    return numerals.form(numerals, digits)


def numerals_of(table: Mapping[str, Any], form: Callable[[Numerals, str], str]) -> Numerals:
    """The `number` table of a language's `spoken.toml`: digits from zero, units from ten, powers from ten thousand."""
    ten, hundred, thousand = table["units"]
    return Numerals(
        tuple(table["digits"]),
        (ten, hundred, thousand),
        tuple(table["powers"]),
        table["point"],
        table["zero"],
        table["two"],
        form,
    )


def groups_of_four(digits: str) -> list[str]:
    """Most significant first: "1234567" -> ["123", "4567"]."""
    head = len(digits) % 4
    return ([digits[:head]] if head else []) + [digits[i : i + 4] for i in range(head, len(digits), 4)]


def japanese(numerals: Numerals, digits: str) -> str:
    """一 is said before 千 only where a power follows (一千万), never before 百 and 十."""
    groups = groups_of_four(digits)
    said = []
    for place, group in zip(range(len(groups) - 1, -1, -1), groups, strict=True):
        if int(group):
            one_before = (numerals.units[2],) if place else ()
            said.append(_four(numerals, group, one_before) + (numerals.powers[place - 1] if place else ""))
    return "".join(said)


def korean(numerals: Numerals, digits: str) -> str:
    """일 is not said before 천, 백, 십, nor before a leading 만; a blank after each power (한글 맞춤법, 44항)."""
    groups = groups_of_four(digits)
    said: list[str] = []
    for place, group in zip(range(len(groups) - 1, -1, -1), groups, strict=True):
        if int(group):
            bare = place == 1 and int(group) == 1 and not said
            said.append(("" if bare else _four(numerals, group, ())) + (numerals.powers[place - 1] if place else ""))
    return " ".join(said)


def _four(numerals: Numerals, group: str, one_before: tuple[str, ...]) -> str:
    said = ""
    for figure, unit in zip(group.zfill(4), (*reversed(numerals.units), ""), strict=True):
        if figure == "1" and unit and unit not in one_before:
            said += unit
        elif figure != "0":
            said += numerals.digits[int(figure)] + unit
    return said


def chinese(numerals: Numerals, digits: str) -> str:
    """零 for skipped places, 两 before 千, 万 and 亿 where it is said, plain 十 at the beginning.

    亿 is the highest power; beyond it 万亿 and 亿亿 as in use on the mainland.
    """
    return _chinese(numerals, digits, leading=True, powered=False)


def _chinese(numerals: Numerals, digits: str, *, leading: bool, powered: bool) -> str:
    for zeros, power in ((8, numerals.powers[1]), (4, numerals.powers[0])):
        if len(digits) > zeros:
            high, rest = digits[:-zeros], digits[-zeros:].lstrip("0")
            head = numerals.two if high == "2" else _chinese(numerals, high, leading=leading, powered=True)
            gap = numerals.digits[0] if 0 < len(rest) < zeros else ""
            tail = _chinese(numerals, rest, leading=False, powered=powered) if rest else ""
            return head + power + gap + tail
    return _chinese_four(numerals, digits, leading, powered)


def _chinese_four(numerals: Numerals, digits: str, leading: bool, powered: bool) -> str:
    said, skipped = "", False
    for place, figure in zip(range(len(digits) - 1, -1, -1), digits, strict=True):
        if figure == "0":
            skipped = True
            continue
        word = numerals.digits[int(figure)]
        if figure == "2" and place == 3 and (leading or powered):
            word = numerals.two
        elif figure == "1" and place == 1 and leading and len(digits) == 2:
            word = ""
        said += (numerals.digits[0] if skipped and said else "") + word + (numerals.units[place - 1] if place else "")
        skipped = False
    return said
