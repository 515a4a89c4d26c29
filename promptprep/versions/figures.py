"""Finds the values in a text: numbers, quantities, money, times of day, dates, days of the week.

Each is written down by value, so that 3.5, 3,5, ३.५ and "three and a half" are one, and so are 9:40 p.m., 21 h 40,
21:40 and the Swahili "saa 3:40 usiku" (whose hours count from six).
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from promptprep.model.versions import Figure, FigureKind
from promptprep.spans import Span
from promptprep.versions.digits import western, written_numbers
from promptprep.versions.hours import hours_meant
from promptprep.versions.number_words import han_value, lowered, said_numbers
from promptprep.versions.reading import SPACELESS, Reader, figure_reader
from promptprep.versions.unit_names import CODES, UnitFinder

_TIMES_OF_DAY = re.compile(
    r"(?<![\d.,:/])(\d{1,2})(?: ?: ?|[ \u00a0\u202f]?h[ \u00a0\u202f]?|時|点|點|时|시 ?| बजकर | час(?:а|ов)? )"
    r"(\d{1,2})(?![\d:])(?:分|분| मिनट| минут[аы]?| ?min\b)?"
)
_HALF_HOUR = re.compile(r"(?<![\d.,:/])(\d{1,2})(?:時|点|點|시 ?)(半|반)")
_POINT_TIME = re.compile(r"(?<![\d.,:/])(\d{1,2})[.](\d{2})(?![\d.,:])")
_EAST_DATE = re.compile(r"(\d{1,2})\s?[月월]\s?(\d{1,2})\s?[日号號일]")
_EAST_MONTH = re.compile(r"(?<!\d)(\d{1,2})\s?[月월](?!間|간)")
_NUMERIC_DATE = re.compile(
    r"(?<![\d./-])(\d{4})-(\d{1,2})-(\d{1,2})(?!\d)|(?<![\d./-])(\d{1,2})[./](\d{1,2})[./](\d{4})(?!\d)"
)
_HAN_DATE = re.compile(r"([一二三四五六七八九十]{1,2})月(?:([一二三四五六七八九十]{1,3})[日号號])?")
_BETWEEN_DAY_MONTH = re.compile(r"(?:st|nd|rd|th|er|º|°|ª|\.|-?е|-?го)?[ \u00a0,]*(?:de|of|من|of the)?[ \u00a0]*")
_AFTER_MONTH = re.compile(r"[ \u00a0]*(?:the )?(\d{1,2})(?:st|nd|rd|th)?(?![\d:.,]*\d)")
_WORD = re.compile(r"[^\W\d_][\w’'.²-]*|[^\W\d_]")
_MONEY_SHORT = re.compile(r" ?(bn|k|m|M|K|Mio|Mrd)\b\.?")
_SHORT_SIZE = {"bn": 1e9, "k": 1e3, "K": 1e3, "m": 1e6, "M": 1e6, "Mio": 1e6, "Mrd": 1e9}
_DAY_MINUTES = 24 * 60
_MAGNITUDE = re.compile(r"[ \u00a0\u202f-]?([^\W\d_]+(?:[\u0900-\u094f]+\w*)*\.?)")


__all__ = ["Reader", "figure_reader", "figures"]


def key_of(value: float) -> str:
    return f"n:{value:.12g}"


class _Token(NamedTuple):
    span: Span
    values: tuple[float, ...]
    firm: bool
    ordinal: bool = False
    counted: bool = True


def figures(text: str, reader: Reader) -> list[Figure]:
    """All values in a text, in order, disjoint. Work grows in a straight line with its length."""
    return sorted(_Finder(text, reader).found(), key=lambda f: f.span)


class _Finder:
    def __init__(self, text: str, reader: Reader) -> None:
        self.text = text
        self.plain = western(text)
        self.low = lowered(self.plain)
        self.reader = reader
        self.units = UnitFinder(text, self.low, reader)
        self.covered = bytearray(len(text))
        self.made: list[Figure] = []
        self.tokens: list[_Token] = []

    def found(self) -> list[Figure]:
        self._weekdays()
        self._numeric_dates()
        self._times()
        self.tokens = self._tokens()
        self._dates(self.tokens)
        for token in self.tokens:
            if not self._is_taken(token.span):
                self._one(token)
        return self.made

    # -- what has a shape of its own --------------------------------------------------------------------------

    def _add(self, kind: FigureKind, span: Span, keys: Sequence[str], unit: str = "", **more: bool) -> None:
        self._take(span)
        self.made.append(Figure(kind, span, self.text[span.start : span.end], frozenset(keys), unit, **more))

    def _is_taken(self, span: Span) -> bool:
        return any(self.covered[span.start : span.end])

    def _take(self, span: Span) -> None:
        self.covered[span.start : span.end] = b"\1" * len(span)

    def _numeric_dates(self) -> None:
        for m in _NUMERIC_DATE.finditer(self.plain):
            year, a, b = (m[1], m[2], m[3]) if m[1] else (m[6], m[5], m[4])
            keys = [f"d:{int(a)}-{int(b)}"] + ([] if m[1] else [f"d:{int(b)}-{int(a)}"])
            self._add("date", Span(*m.span()), keys)
            self.made.append(Figure("number", Span(*m.span()), m[0], frozenset([key_of(float(year))])))
        if self.reader.base in SPACELESS:
            for m in _EAST_DATE.finditer(self.plain):
                self._add("date", Span(*m.span()), [f"d:{int(m[1])}-{int(m[2])}"])
            for m in _EAST_MONTH.finditer(self.plain):
                if not self._is_taken(Span(*m.span())) and 1 <= int(m[1]) <= 12:
                    self._add("month", Span(*m.span()), [f"m:{int(m[1])}"], firm=False)
            self._han_dates()

    def _han_dates(self) -> None:
        for m in _HAN_DATE.finditer(self.plain):
            month, day = han_value(m[1]), han_value(m[2]) if m[2] else None
            if month and day:
                self._add("date", Span(*m.span()), [f"d:{month:.0f}-{day:.0f}"])
            elif month:
                self._add("month", Span(*m.span()), [f"m:{month:.0f}"], firm=False)

    def _times(self) -> None:
        patterns = [_HALF_HOUR, _TIMES_OF_DAY, _POINT_TIME]
        for pattern in patterns:
            for m in pattern.finditer(self.plain):
                span = Span(*m.span())
                minute = 30 if pattern is _HALF_HOUR else int(m[2])
                if self._is_taken(span) or int(m[1]) > 24 or minute > 59:
                    continue
                sure = (
                    pattern is not _POINT_TIME
                    or self._part(span)
                    or self.reader.after(self.low, span.end, "clock_after")
                )
                if sure:
                    self._clock(span, int(m[1]), minute)

    def _clock(self, span: Span, hour: int, minute: int, loose: tuple[str, ...] = ()) -> None:
        part = self._part(span)
        swahili = self.reader.base == "sw" and bool(self.reader.before(self.low, span.start, "clock_before"))
        hours = hours_meant(hour, part, swahili)
        keys = [f"t:{(h * 60 + minute) % _DAY_MINUTES}" for h in hours]
        self._add("clock", span, [*keys, *loose])

    def _part(self, span: Span) -> tuple[str, int] | None:
        """The part of the day beside a time: (its word, 0 before noon or 12)."""
        after = self.low[span.end : span.end + 40].lstrip(" \u00a0\u202f,")
        for skip in ("", *self.reader.listed("clock_after")):
            rest = after.removeprefix(skip).lstrip(" \u00a0\u202f,") if after.startswith(skip) else ""
            for word, part in self.reader.parts.items():
                if rest.startswith(word) and not rest[len(word) : len(word) + 1].isalpha():
                    return word, part
        before = self.low[max(0, span.start - 24) : span.start]
        return next(
            ((w, p) for w, p in self.reader.parts_before.items() if w in before.rsplit("。", 1)[-1][-len(w) - 6 :]),
            None,
        )

    # -- numbers ----------------------------------------------------------------------------------------------

    def _tokens(self) -> list[_Token]:
        tokens = [_Token(w.span, w.values, True) for w in written_numbers(self.plain, self.reader.base)]
        taken = {i for t in tokens for i in range(t.span.start, t.span.end)}
        tokens += [
            _Token(said.span, (said.value,), False, said.ordinal, said.counted)
            for said in said_numbers(self.text, self.reader.words)
            if not taken.intersection(range(said.span.start, said.span.end))
        ]
        return sorted(tokens)

    def _dates(self, tokens: Sequence[_Token]) -> None:
        if self.reader.month_words is None:
            return
        ends = {t.span.end: t for t in tokens}
        for m in self.reader.month_words.finditer(self.low):
            month = self.reader.months[m[0]]
            if self._is_taken(Span(*m.span())):
                continue
            day = self._day_before(m.start(), ends)
            capital = self.text[m.start()].isupper() or self.reader.base not in ("en", "de")
            if day is not None and (capital or day.firm):
                self._add("date", Span(day.span.start, m.end()), [f"d:{month}-{day.values[0]:.0f}"])
            elif (after := _AFTER_MONTH.match(self.plain, m.end())) and 1 <= int(after[1]) <= 31:
                self._add("date", Span(m.start(), after.end()), [f"d:{month}-{int(after[1])}"])
            elif capital:
                self._add("month", Span(*m.span()), [f"m:{month}"], firm=False)

    def _day_before(self, start: int, ends: Mapping[int, _Token]) -> _Token | None:
        for end in range(start, max(-1, start - 14), -1):
            token = ends.get(end)
            if token is not None and _BETWEEN_DAY_MONTH.fullmatch(self.low, end, start):
                whole = token.values[0] == int(token.values[0])
                return token if whole and 1 <= token.values[0] <= 31 and not self._is_taken(token.span) else None
        return None

    def _one(self, token: _Token) -> None:
        start, end = token.span
        values = token.values
        if token.ordinal:
            self._add("ordinal", token.span, [key_of(v) for v in values], firm=False, counted=False)
            return
        size, end = self._magnitude(end) if token.firm else (1.0, end)
        if token.firm and self.reader.words.magnitude_first:
            size = self._magnitude_before(start)
        unit, stop = self.units.beside(start, end)
        if unit == "%" and stop > end:
            self._take(Span(end, stop))
        if size == 1.0 and unit in CODES and (short := _MONEY_SHORT.match(self.plain, end)):
            size, end = _SHORT_SIZE[short[1]], short.end()
        span = Span(start, end)
        if size == 1.0 and self._is_hour(token, span):
            half = values[0] % 1 == 0.5 or self._half_after(end)
            minute, span = (30, span) if half else self._minutes(span)
            loose = tuple(key_of(v) for v in values) if half or not minute else ()
            self._clock(span, int(values[0]), minute, loose)
            return
        if size == 1.0 and values[0] in range(1, 13) and self.reader.before(self.low, start, "half_past"):
            hours = (int(values[0]) % 12, int(values[0]) % 12 + 12)
            self._add("clock", span, [f"t:{h * 60 + 30}" for h in hours], firm=False)
            return
        more = 0.5 if unit and self._and_a_half(stop) else 0.0
        sign = -1 if self._negative(start) else 1
        keys = [key_of(sign * (v + more) * size) for v in values]
        kind: FigureKind = "quantity" if unit else "number"
        self._add(kind, span, keys, unit, firm=token.firm, counted=token.counted and self._counts(token))

    def _counts(self, token: _Token) -> bool:
        if token.firm or self.reader.base not in ("zh", "ja"):
            return True
        following = self.text[token.span.end : token.span.end + 1]
        return following in self.reader.listed("counters") if following else False

    def _is_hour(self, token: _Token, span: Span) -> bool:
        value = token.values[0]
        if value * 2 != int(value * 2) or not 0 <= value <= 24:
            return False
        if self.reader.before(self.low, span.start, "clock_before"):
            return True
        after = self.reader.after(self.low, span.end, "clock_after")
        return bool(after) or (self._part_after(span) if token.firm or self.reader.base not in SPACELESS else False)

    def _and_a_half(self, stop: int) -> bool:
        """Whether a half follows the unit: "deux ans et demi", 两年半."""
        return self.text[stop : stop + 1] in ("半", "반") or bool(self.reader.after(self.low, stop, "half"))

    def _half_after(self, end: int) -> bool:
        word = self.reader.after(self.low, end, "clock_after")
        return bool(word) and self.low[end:].lstrip(" \u00a0\u202f")[len(word) : len(word) + 2].strip()[:1] in (
            "半",
            "반",
        )

    def _minutes(self, span: Span) -> tuple[int, Span]:
        """The minutes said after an hour ("dix-huit heures trente"), and the span with them."""
        word = self.reader.after(self.low, span.end, "clock_after")
        at = bisect_right(self.tokens, span.end, key=lambda t: t.span.start)
        near = self.tokens[at] if word and at < len(self.tokens) else None
        if near and near.span.start <= span.end + len(word) + 2 and near.values[0] in range(1, 60):
            return int(near.values[0]), Span(span.start, near.span.end)
        return 0, span

    def _part_after(self, span: Span) -> bool:
        rest = self.low[span.end : span.end + 30].lstrip(" \u00a0\u202f")
        return any(rest.startswith(w) and not rest[len(w) : len(w) + 1].isalpha() for w in self.reader.parts)

    def _negative(self, start: int) -> bool:
        head = self.plain[max(0, start - 2) : start]
        if head.endswith(("-", "−", "–")) and not head[:-1].strip():
            return head[-1] != "–"
        return bool(self.reader.before(self.low, start, "minus"))

    def _magnitude(self, end: int) -> tuple[float, int]:
        m = _MAGNITUDE.match(self.low, end)
        power = self.reader.words.magnitudes.get(m[1].rstrip(".")) if m else None
        return (10.0**power, m.end(1)) if m and power is not None else (1.0, end)

    def _magnitude_before(self, start: int) -> float:
        words = self.low[max(0, start - 24) : start].split()
        power = self.reader.words.magnitudes.get(words[-1]) if words else None
        return 1.0 if power is None else 10.0**power

    def _weekdays(self) -> None:
        if self.reader.weekday_words is None:
            return
        for m in self.reader.weekday_words.finditer(self.low):
            if not self._is_taken(Span(*m.span())):
                self._add("weekday", Span(*m.span()), [f"w:{self.reader.weekdays[m[0]]}"], firm=False)
