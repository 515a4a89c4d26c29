"""Numbers written in figures, in any script's digits and with any language's separators, as values."""

from __future__ import annotations

import math
import re
import unicodedata
from typing import NamedTuple

from promptprep.spans import Span

COMMA_DECIMAL = frozenset({"de", "es", "fr", "pt", "ru", "it", "nl", "pl", "tr", "uk"})
FRACTIONS = {"¼": 0.25, "½": 0.5, "¾": 0.75, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 0.125}
_BLANKS = " \u00a0\u202f\u2009"
_NUMBER = re.compile(rf"\d{{1,3}}(?:[{_BLANKS}'’]\d{{3}})+(?!\d)(?:[.,]\d+)?|\d+(?:[.,]\d+)*")
_EAST = re.compile(r"(\d+(?:\.\d+)?)\s?([万萬亿億兆만억조천백]+)")
_EAST_SIZE = {
    "万": 1e4,
    "萬": 1e4,
    "만": 1e4,
    "亿": 1e8,
    "億": 1e8,
    "억": 1e8,
    "兆": 1e12,
    "조": 1e12,
    "천": 1e3,
    "백": 1e2,
}


class Written(NamedTuple):
    """A number in figures at its place, with every value that its separators allow (the likeliest first)."""

    span: Span
    values: tuple[float, ...]


def western(text: str) -> str:
    """The text with the digits and separators of all scripts as ASCII ones; no place moves."""
    if text.isascii():
        return text
    return "".join(_digit(c) if not c.isascii() else c for c in text)


def _digit(char: str) -> str:
    if char == "٫":
        return "."
    if char == "٬":
        return ","
    return str(unicodedata.decimal(char)) if char.isdecimal() else char


def written_numbers(text: str, base: str) -> list[Written]:
    """Numbers in a text of western digits. A sign is not part of them."""
    found: list[Written] = []
    for match in _NUMBER.finditer(text):
        if found and match.start() < found[-1].span.end:
            continue
        span = Span(*match.span())
        values = _values(match[0], base)
        if (east := _EAST.match(text, match.start())) is not None:
            span, values = _eastern(text, east)
        elif match.end() < len(text) and text[match.end()] in FRACTIONS:
            values = tuple(v + FRACTIONS[text[match.end()]] for v in values)
            span = Span(span.start, span.end + 1)
        if finite := tuple(filter(math.isfinite, values)):  # more digits than a float holds are an identifier
            found.append(Written(span, finite))
    found += [Written(Span(i, i + 1), (FRACTIONS[c],)) for i, c in _lone_fractions(text)]
    return sorted(found)


def _lone_fractions(text: str) -> list[tuple[int, str]]:
    return [(i, c) for i, c in enumerate(text) if c in FRACTIONS and not (i and text[i - 1].isdigit())]


def _eastern(text: str, first: re.Match[str]) -> tuple[Span, tuple[float, ...]]:
    """1億2000万: each figure with its magnitude, added up."""
    total, at = 0.0, first.start()
    found: re.Match[str] | None = first
    while found is not None:
        size = 1.0
        for c in found[2]:
            size *= _EAST_SIZE[c]
        total, at = total + float(found[1]) * size, found.end()
        found = _EAST.match(text, at) or _EAST.match(text, at + 1) if at < len(text) else None
    return Span(first.start(), at), (total,)


def _values(text: str, base: str) -> tuple[float, ...]:
    plain = re.sub(rf"[{_BLANKS}'’]", "", text)
    marks = [c for c in plain if c in ".,"]
    if not marks:
        return (float(plain),)
    decimal = "," if base in COMMA_DECIMAL else "."
    if len(set(marks)) == 2:
        last = marks[-1]
        return (_float(plain.replace("." if last == "," else ",", "").replace(last, ".")),)
    groups = re.split(r"[.,]", plain)
    if len(marks) > 1:
        grouped = all(len(g) in (2, 3) for g in groups[1:]) and len(groups[-1]) == 3
        return (float("".join(groups)),) if grouped else tuple(float(g) for g in groups)
    as_decimal = _float(plain.replace(",", "."))
    if len(groups[1]) == 3 and groups[0] != "0" and len(groups[0]) <= 3:
        as_group = float("".join(groups))
        return (as_decimal, as_group) if marks[0] == decimal and base != "en" else (as_group, as_decimal)
    return (as_decimal,)


def _float(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        return float(re.sub(r"\D", "", text) or 0)
