"""The hours of the day that a written hour may mean."""

from __future__ import annotations

from collections.abc import Iterator

NIGHT = frozenset({"at night", "nachts", "ночи", "रात", "夜", "夜里", "밤", "usiku", "de la noche", "da noite", "ليلًا"})


def hours_meant(hour: int, part: tuple[str, int] | None, swahili: bool) -> Iterator[int]:
    """The hours of the day, 0 to 23, that a written hour may mean."""
    if hour > 12 or (hour == 0 and not swahili):
        yield hour % 24
        return
    if swahili:
        hour = (hour + 6) % 12
        early = part is not None and part[0] in ("asubuhi", "alfajiri")
        if early or (part is not None and part[0] == "usiku" and hour < 6):
            yield hour
        elif part is not None:
            yield hour + 12
        else:
            yield from (hour, hour + 12)
        return
    hour %= 12
    if part is None or (part[0] in NIGHT and hour <= 5):
        yield from (hour, hour + 12)
    else:
        yield hour + part[1]
