"""Time and control code: frames as hh:mm:ss:ff, with and without dropped codes.

Counting rules: SMPTE ST 12-1 (from memory); the drop rule as W3C TTML2 gives it (`ttp:dropMode`): codes 00 and 01 at
second 00 of each minute are skipped, except in minutes 00, 10, 20, 30, 40 and 50. At twice the rate four are skipped.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from promptprep.errors import BadCall

_CODE = re.compile(r"(\d\d):([0-5]\d):([0-5]\d)([:;])(\d\d)")


@dataclass(frozen=True, slots=True)
class Rate:
    """Frames a second: exactly `frames` in `per_s` seconds, counted as if there were `nominal` in each second.

    `dropped` codes are skipped each minute but the tenth.
    """

    name: str
    nominal: int
    frames: int
    per_s: int
    dropped: int = 0

    @property
    def day_frames(self) -> int:
        """Codes in 24 hours."""
        return 24 * 6 * self.ten_minutes

    @property
    def ten_minutes(self) -> int:
        return 600 * self.nominal - 9 * self.dropped


RATES = {
    rate.name: rate
    for rate in (
        Rate("23.976", 24, 24000, 1001),
        Rate("24", 24, 24, 1),
        Rate("25", 25, 25, 1),
        Rate("29.97-drop", 30, 30000, 1001, 2),
        Rate("29.97-nondrop", 30, 30000, 1001),
        Rate("30", 30, 30, 1),
        Rate("50", 50, 50, 1),
        Rate("59.94-drop", 60, 60000, 1001, 4),
        Rate("59.94-nondrop", 60, 60000, 1001),
        Rate("60", 60, 60, 1),
    )
}


def rate_named(name: str) -> Rate:
    """The rate of that name; a bare 29.97 or 59.94 drops codes, so that it keeps to the clock. Raises `BadCall`."""
    wanted = name.strip().lower().removesuffix("fps").strip()
    for known in (wanted, f"{wanted}-drop"):
        if known in RATES:
            return RATES[known]
    raise BadCall("unknown-rate", f"there is no timecode rate {name!r} here", "use one of: " + ", ".join(RATES))


def code_of(frame: int, rate: Rate) -> str:
    """The code of a frame counted from 00:00:00:00; it wraps after 24 hours. ";" before the frames marks drop."""
    number = frame % rate.day_frames
    if rate.dropped:
        tens, inside = divmod(number, rate.ten_minutes)
        minute = 60 * rate.nominal - rate.dropped
        late = max(0, (inside - rate.dropped) // minute)  # minutes after the first of each ten
        number += rate.dropped * (9 * tens + late)
    seconds, ff = divmod(number, rate.nominal)
    minutes, ss = divmod(seconds, 60)
    hh, mm = divmod(minutes, 60)
    return f"{hh:02d}:{mm:02d}:{ss:02d}{';' if rate.dropped else ':'}{ff:02d}"


def frame_of(code: str, rate: Rate) -> int:
    """The frame of a code. Raises `BadCall` for what is no code at this rate, dropped codes included."""
    found = _CODE.fullmatch(code.strip())
    if not found:
        raise BadCall("not-a-timecode", f"{code!r} is no timecode", 'write it as "10:00:00:00"')
    hh, mm, ss, ff = (int(found[i]) for i in (1, 2, 3, 5))
    if hh > 23 or ff >= rate.nominal:
        raise BadCall("not-a-timecode", f"{code!r} is no timecode at {rate.name}", f"frames run to {rate.nominal - 1}")
    if rate.dropped and mm % 10 and ss == 0 and ff < rate.dropped:
        raise BadCall("dropped-timecode", f"{code!r} is skipped at {rate.name}", f"take frame {rate.dropped:02d}")
    minutes = 60 * hh + mm
    return (60 * minutes + ss) * rate.nominal + ff - rate.dropped * (minutes - minutes // 10)


def frame_at(ms: int, rate: Rate) -> int:
    """The frame that is on at `ms` whole milliseconds: exact, never rounded up."""
    return ms * rate.frames // (1000 * rate.per_s)
