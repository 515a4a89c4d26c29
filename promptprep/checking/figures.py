"""Figures in a passage: written in digits, with what they count as."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from typing import Literal

from promptprep.checking.context import Passage
from promptprep.spans import Span

Kind = Literal["count", "decimal", "date", "clock", "year", "code"]

_GAP = "\u00a0\u202f\u2009"
_FIGURE = re.compile(
    r"(?<![A-Za-z0-9_À-ɏ])(?P<lead>[+#№]?)"
    rf"(?P<body>\d+(?:[.,:/'’٫٬{_GAP}-]\d+| (?=\d{{3}}(?!\d))\d{{3}})*)(?P<tail>[^\W\d_]*)"
)
_CLOCK = re.compile(r"[0-2]?\d[:.h][0-5]\d(?::[0-5]\d)?")
_DATE = re.compile(r"\d{1,4}([./-])\d{1,2}\1\d{1,4}|\d{1,2}/\d{1,2}")
_GROUPED = re.compile(rf"\d{{1,3}}(?:[.,'’٬ {_GAP}]\d{{2,3}})*[.,'’٬ {_GAP}]\d{{3}}")
_NUMBER = re.compile(rf"\d+(?:[.,'’٬ {_GAP}]\d{{2,3}})*[.,٫]\d+")
_LONGEST = 15  # digits: a longer string is an identifier, and nothing to round
_YEARS = range(1100, 2101)
_YEAR_MARK = re.compile(r"\s?[年년]")
_CLASSES: dict[str, Kind] = {
    "date": "date", "year": "year", "clock": "clock", "telephone": "code", "serial": "code", "url": "code",
    "email": "code", "hashtag": "code", "ordinal": "date", "roman": "code",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Figure:
    """`span` covers the digits with their separators. `digits` holds the significant ones, zeros at its ends left out.

    `whole` is the part before a decimal mark, None where there is no plain value.
    """

    span: Span
    text: str
    kind: Kind
    digits: str
    whole: int | None


def figures(passage: Passage) -> list[Figure]:
    """All figures of a passage in order, in any script's digits. None inside words or pronunciations."""
    found = []
    for match in _FIGURE.finditer(passage.text):
        span = Span(*match.span("body"))
        if not passage.has_say(span):
            found.append(_figure(passage, span, match["lead"], match["tail"]))
    return found


def _figure(passage: Passage, span: Span, lead: str, tail: str) -> Figure:
    text = span.of(passage.text)
    plain = _latin(text)
    kind = _kind(passage, span, plain, lead, tail)
    whole, _, part = _parts(plain) if kind in ("count", "decimal", "year") else (plain, "", "")
    digits = (whole.lstrip("0") + part).strip() if whole.strip("0") else part.lstrip("0")
    digits = digits.rstrip("0")
    return Figure(span, text, kind, digits, int(whole) if whole.isdigit() and len(whole) < 19 else None)


def _kind(passage: Passage, span: Span, plain: str, lead: str, tail: str) -> Kind:
    reading = passage.reading_at(span.start)
    if reading is not None and reading.kind in _CLASSES:
        return _CLASSES[reading.kind]
    if (
        sum(c.isdigit() for c in plain) > _LONGEST
        or lead in ("#", "№")
        or (lead == "+" and len(plain) > 6)
        or (plain.startswith("0") and plain[1:2].isdigit())
    ):
        return "code"
    if _CLOCK.fullmatch(plain) and (":" in plain or tail in ("h", "Uhr")):
        return "clock"
    if _DATE.fullmatch(plain):
        return "date"
    if any(mark in plain for mark in ":/-"):
        return "code"
    if plain.isdigit():
        return "year" if len(plain) == 4 and 1000 <= int(plain) <= 2199 and reading is None else "count"
    if _GROUPED.fullmatch(plain):
        return "count"
    return "decimal" if _NUMBER.fullmatch(plain) else "code"


def may_be_year(passage: Passage, figure: Figure) -> bool:
    """Whether a listener could take the figure for a year: it is read as one, called one, or bare and of that size.

    A unit after it ("1997 kg") settles that it is none; a counted noun is for the caller to see.
    """
    if figure.kind == "year" or _YEAR_MARK.match(passage.text, figure.span.end):
        return True
    reading = passage.reading_at(figure.span.start)
    bare = len(figure.text) == 4 and figure.text.isdigit() and figure.whole in _YEARS
    return bare and (reading is None or reading.kind not in ("measure", "money", "percent"))


def _parts(plain: str) -> tuple[str, str, str]:
    """(whole digits, decimal mark, decimal digits). A last group of three after one kind of mark is thousands."""
    if plain.isdigit() or _GROUPED.fullmatch(plain):
        return re.sub(r"\D", "", plain), "", ""
    at = max(plain.rfind(mark) for mark in ".,٫")
    if at < 0:
        return re.sub(r"\D", "", plain), "", ""
    return re.sub(r"\D", "", plain[:at]), plain[at], re.sub(r"\D", "", plain[at:])


def _latin(text: str) -> str:
    return text if text.isascii() else "".join(str(unicodedata.digit(c)) if c.isdigit() else c for c in text)


def rounded(text: str, kept: int = 2) -> str:
    """The figure with all but its first `kept` digits made zero, rounded, in its own separators; decimals cut.

    "384,403" -> "380,000"; "3.14159" -> "3.1". The value changes by less than 5 % of its first digits' step.
    """
    plain = _latin(text)
    whole, mark, part = _parts(plain)
    number = int(whole or "0")
    if len(whole.lstrip("0")) >= kept:
        step = 10 ** max(len(str(number)) - kept, 0)
        return _regrouped(plain, whole, (number + step // 2) // step * step)
    places = max(kept - len(whole.lstrip("0")), 1)
    places += len(part) - len(part.lstrip("0")) if number == 0 else 0
    return f"{whole}{mark}{(part + '0' * places)[:places]}" if mark else whole


def _regrouped(plain: str, whole: str, number: int) -> str:
    """`number` with the separators of `plain` at the same distances from the end."""
    digits = str(number)
    marks, seen = {}, 0
    for char in reversed(plain if _GROUPED.fullmatch(plain) or plain.isdigit() else plain[: _last_mark(plain)]):
        if char.isdigit():
            seen += 1
        else:
            marks[seen] = char
    return "".join(marks.get(len(digits) - i, "") * (i > 0) + d for i, d in enumerate(digits))


def _last_mark(plain: str) -> int:
    return max(plain.rfind(mark) for mark in ".,٫")
