"""Clock times of a session: offsets in milliseconds laid on a clock that may change by an hour on the way."""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta, tzinfo

from promptprep.errors import BadCall
from promptprep.model.session import DAY_MS

LONGEST = timedelta(hours=18)  # a longer sitting is a mistyped clock time
YEARS = range(1900, 3000)  # another year is a mistyped date


def moment(day: date, clock: time, zone: tzinfo | None) -> datetime:
    """That clock time as an aware moment. Without a zone the clock never changes.

    Raises `BadCall` for a time that the clock skips that day and for a year that nobody records in. One that comes
    twice is taken the first time; a TOML date-time with an offset says which is meant.
    """
    _check_year(day)
    found = datetime.combine(day, clock.replace(tzinfo=None), tzinfo=zone or UTC)
    if found.astimezone(UTC).astimezone(zone or UTC).replace(tzinfo=None) != found.replace(tzinfo=None):
        raise BadCall(
            "skipped-clock-time", f"the clock skips {clock} on {day}", "the clocks go forward then: take another time"
        )
    return found


def aware(when: datetime, zone: tzinfo | None) -> datetime:
    """A date and time as written, by the zone's clock; one without an offset of its own is a time of that clock.

    Raises as `moment`.
    """
    if when.tzinfo is None:
        return moment(when.date(), when.time(), zone)
    _check_year(when)
    return when.astimezone(zone or UTC)


def _check_year(day: date) -> None:
    if day.year not in YEARS:
        hint = f"write a year from {YEARS[0]} to {YEARS[-1]}"
        raise BadCall("not-a-day", f"nothing is recorded in the year {day.year}", hint)


def comes_twice(when: datetime) -> bool:
    """Whether the clock shows that time twice that day."""
    return when.replace(fold=0).utcoffset() != when.replace(fold=1).utcoffset() and not _skipped(when)


def _skipped(when: datetime) -> bool:
    return when.astimezone(UTC).astimezone(when.tzinfo).replace(tzinfo=None) != when.replace(tzinfo=None)


def plus(origin: datetime, ms: int) -> datetime:
    """The clock `ms` later: real milliseconds, whatever the clock does in between."""
    return (origin.astimezone(UTC) + timedelta(milliseconds=ms)).astimezone(origin.tzinfo)


def offset_ms(origin: datetime, when: datetime) -> int:
    """Real milliseconds from one moment to another."""
    return round((when.astimezone(UTC) - origin.astimezone(UTC)) / timedelta(milliseconds=1))


def next_at(clock: time, after: datetime) -> datetime:
    """The first moment not before another at which the clock shows `clock`."""
    today = moment(after.date(), clock, after.tzinfo)
    if today.astimezone(UTC) >= after.astimezone(UTC):
        return today
    return moment(after.date() + timedelta(days=1), clock, after.tzinfo)


def clock_ms(when: datetime) -> int:
    """Milliseconds that the clock shows since midnight: what timecode by the time of day counts."""
    t = when.timetz()
    return (((t.hour * 60 + t.minute) * 60 + t.second) * 1000 + t.microsecond // 1000) % DAY_MS


def clock_face(when: datetime) -> str:
    """What a clock shows then, to the second: "14:07:30" until the next second has come, as timecode does."""
    return f"{when:%H:%M:%S}"
