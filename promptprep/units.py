"""Seconds, millimetres and degrees, and how people write them."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from promptprep.errors import BadCall

MM_PER_UNIT = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, '"': 25.4, "ft": 304.8, "'": 304.8}
MM_PER_PT = 25.4 / 72
LONGEST_S = 3_600_000  # 1000 hours: no script, clip or sitting is as long

_CLOCK = re.compile(r"(?:(\d{1,3}):)?(\d{1,3}):([0-5]\d(?:[.,]\d+)?)")
_SECONDS = re.compile(r"(\d+(?:[.,]\d+)?)\s*(s|sec|min|h)?")
_LENGTH = re.compile(r"([+-]?\d+(?:[.,]\d+)?)\s*(mm|cm|m|in|ft|\"|')")
_FEET_INCHES = re.compile(r"(\d+)\s*(?:ft|')\s*(\d+(?:[.,]\d+)?)\s*(?:in|\")")
_LONG_UNITS = (
    (re.compile(r"[″”“„]|''|(?<![a-z])inch(?:es)?\b"), '"'),
    (re.compile(r"[′’‘]"), "'"),
    (re.compile(r"(?<![a-z])(?:feet|foot)\b"), "ft"),
    (re.compile(r"(?<![a-z])millimet(?:re|er)s?\b"), "mm"),
    (re.compile(r"(?<![a-z])centimet(?:re|er)s?\b"), "cm"),
    (re.compile(r"(?<![a-z])met(?:re|er)s?\b"), "m"),
)
_SCALE = {"": 1, "s": 1, "sec": 1, "min": 60, "h": 3600}


@dataclass(frozen=True, slots=True)
class Sourced:
    """A figure that may be used: its value, unit, honest range and where it comes from."""

    value: float
    unit: str
    low: float
    high: float
    source: str

    def __post_init__(self) -> None:
        if not (self.low <= self.value <= self.high) or not self.source or not self.unit:
            raise ValueError(f"not a sourced figure: {self!r}")


def parse_duration(text: str) -> float:
    """Seconds in "4:00", "1:02:03.5", "25", "25 s", "2 min". Raises `BadCall` on anything else and from 1000 hours on.

    A bare number is seconds; minutes and seconds below 60 after the first colon.
    """
    seconds = _written_duration(text.strip())
    if seconds is None or seconds >= LONGEST_S:
        raise BadCall("not-a-time", f"{text!r} is no length of time", 'write minutes and seconds, such as "4:00"')
    return seconds


def _written_duration(text: str) -> float | None:
    if clock := _CLOCK.fullmatch(text):
        hours, minutes, seconds = clock.groups()
        if hours is None or int(minutes) < 60:
            return int(hours or 0) * 3600 + int(minutes) * 60 + _number(seconds)
    if plain := _SECONDS.fullmatch(text):
        return _number(plain[1]) * _SCALE[plain[2] or ""]
    return None


def parse_length(value: str | float) -> float:
    """Millimetres in "1.5 m", "60 cm", "8 inches", "6 ft 2 in". Raises `BadCall`; a bare number is millimetres."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        length = as_float(value)
    else:
        length = _written_length(str(value))
    if not math.isfinite(length):
        raise BadCall("not-a-length", f"{value!r} is no finite length", 'write a number and its unit, such as "1.5 m"')
    return length


def _written_length(text: str) -> float:
    cleaned = text.strip().lower()
    for written, unit in _LONG_UNITS:
        cleaned = written.sub(unit, cleaned)
    if both := _FEET_INCHES.fullmatch(cleaned):
        return _number(both[1]) * MM_PER_UNIT["ft"] + _number(both[2]) * MM_PER_UNIT["in"]
    if one := _LENGTH.fullmatch(cleaned):
        return _number(one[1]) * MM_PER_UNIT[one[2]]
    raise BadCall("not-a-length", f"{text!r} is no length", 'write a number and its unit, such as "1.5 m" or "8 in"')


def as_float(value: float) -> float:
    """A number as a float; infinite where it is a whole number too large for one."""
    try:
        return float(value)
    except OverflowError:
        return math.inf if value > 0 else -math.inf


def _number(text: str) -> float:
    return float(text.replace(",", "."))


def clock_text(seconds: float, *, tenths: bool = False) -> str:
    """Minutes and seconds as people in a studio write them: 245.3 -> "4:05" (or "4:05.3"); hours from 3600 s."""
    sign = "-" if seconds < 0 else ""
    ticks = round(abs(seconds) * (10 if tenths else 1))
    whole, part = divmod(ticks, 10) if tenths else (ticks, 0)
    minutes, secs = divmod(whole, 60)
    hours, minutes = divmod(minutes, 60)
    head = f"{hours}:{minutes:02d}" if hours else f"{minutes}"
    return f"{sign}{head}:{secs:02d}" + (f".{part}" if tenths else "")
