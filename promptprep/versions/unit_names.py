"""Units and currencies beside a number, as codes."""

from __future__ import annotations

import re

from promptprep.versions.number_words import folded
from promptprep.versions.reading import SPACELESS, Reader

SIGNS = {"€": "EUR", "$": "USD", "£": "GBP", "¥": "JPY", "₹": "INR", "₩": "KRW", "₽": "RUB", "R$": "BRL", "%": "%",
         "٪": "%", "％": "%", "‰": "‰"}  # fmt: skip
SYMBOLS = (
    "km", "m", "cm", "mm", "kg", "g", "t", "s", "min", "h", "°C", "°F", "K", "km²", "m²", "ha", "l", "L", "W", "kW",
    "MW", "GW", "Hz", "kHz", "MHz", "GHz", "MB", "GB", "TB", "ly", "au", "AU", "mi", "ft", "in", "yd", "lb", "°",
)  # fmt: skip
CODES = ("EUR", "USD", "GBP", "JPY", "CNY", "KRW", "INR", "RUB", "BRL", "CHF", "KES", "TZS", "MXN")
_IN = r"\w\u0900-\u094f’'.²-"  # what a unit's name is written with
_SYMBOL = re.compile(r"[A-Za-z°µ][A-Za-z²³]*(?![^\W\d_])")
_UNIT_WORDS = [re.compile(rf"[^\W\d_][{_IN}]*(?: [{_IN}]+){{{n}}}") for n in (3, 2, 1, 0)]


class UnitFinder:
    """Finds units in one text; `low` is the text in small letters, place for place."""

    def __init__(self, text: str, low: str, reader: Reader) -> None:
        self.text = text
        self.low = low
        self.reader = reader

    def beside(self, start: int, end: int) -> tuple[str, int]:
        """The unit's code after or before a number, "" where none is known, and where it ends."""
        head = self.text[max(0, start - 24) : start].rstrip(" \u00a0\u202f")
        for sign, code in sorted(SIGNS.items(), key=lambda s: -len(s[0])):
            if head.endswith(sign) and code in CODES:
                return code, end
        at = end
        while at < len(self.text) and self.text[at] in " \u00a0\u202f-":
            at += 1
        for sign, code in SIGNS.items():
            if self.text.startswith(sign, at):
                return code, at + len(sign)
        return self._word_unit(at) or (self._unit_before(head), end)

    def _word_unit(self, at: int) -> tuple[str, int] | None:
        if self.reader.base in SPACELESS:
            for length in range(min(8, len(self.text) - at), 0, -1):
                if code := self.reader.units.get(self.low[at : at + length]):
                    return code, at + length
        if (m := _SYMBOL.match(self.text, at)) and m[0] in (*SYMBOLS, *CODES):
            return m[0], m.end()
        for pattern in _UNIT_WORDS:
            m = pattern.match(self.low, at)
            if m and (code := self.reader.units.get(m[0].rstrip("."))):
                return code, m.end()
        for word in self.reader.listed("percent"):
            if self.low.startswith(word, at):
                return "%", at + len(word)
        return None

    def _unit_before(self, head: str) -> str:
        low = folded(head)
        if any(low.endswith(w) for w in self.reader.listed("percent")):
            return "%"
        if self.reader.base == "sw":
            last = low.rsplit(" ", 1)[-1]
            return self.reader.units.get(last, "")
        last = head.rsplit(" ", 1)[-1]
        return last if last in CODES else ""
