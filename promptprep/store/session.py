"""Reads `session.toml`: a running order. Every fault has its file, line and column, and a hint."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import replace
from datetime import date, datetime, time, timedelta, tzinfo
from functools import lru_cache
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError, available_timezones

from promptprep.errors import BadCall
from promptprep.model.session import DAY_MS, ITEM_KINDS, Item, ItemKind, RunningOrder, SessionLimits
from promptprep.model.timing import Z80
from promptprep.parsing.toml_text import toml_values
from promptprep.rendering.timecode import rate_named
from promptprep.session.clock import LONGEST, aware, moment, next_at
from promptprep.sightline.values import near_hint
from promptprep.store.checked import Checked
from promptprep.store.files import read_text
from promptprep.store.places import KeyPlaces
from promptprep.units import Sourced, parse_duration

FILE = "session.toml"
DATA = Path(__file__).parent.parent / "data"
KEYS = ("title", "zone", "date", "start", "end", "changeover", "standby", "rate", "items")
ITEM_KEYS = (*ITEM_KINDS, "title", "slot", "runs", "changeover", "at", "guests", "code")
MOST_ITEMS = 2000
NO_DAY = date(2001, 1, 1)  # stands for the day that a file without a date leaves open: no clock changes on it

_HEADER = re.compile(r"^([ \t]*)\[\[[ \t]*items[ \t]*\]\]", re.MULTILINE)
_CLOCK = re.compile(r"([01]?\d|2[0-3]):([0-5]\d)(?::([0-5]\d))?")
_RANGE = re.compile(r"(.+?)\s+to\s+(.+)")
_CODE = re.compile(r"[A-Za-z][A-Za-z0-9]{0,5}")


def read_session(path: Path) -> RunningOrder:
    """The running order in a file, or in the `session.toml` of a folder. Raises `UnreadableInput` or `ManyFaults`."""
    file = path / FILE if path.is_dir() else path
    return parse_session(read_text(file), str(file))


def parse_session(text: str, file: str | None = None) -> RunningOrder:
    """The running order that a TOML text describes; `file` is only named in faults. Raises as `read_session`."""
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    hint = 'write key = value, one a line; text in quotes, such as slot = "4:00"'
    values = toml_values(text, "session-broken", "the session file", hint, file)
    return _Reading(_by_number(values), KeyPlaces(_numbered(text)), file).running_order()


def parse_clock(text: str) -> time:
    """The clock time in "14:07" or "14:07:30". Raises `BadCall`."""
    found = _CLOCK.fullmatch(text.strip())
    if not found:
        raise BadCall("not-a-clock-time", f"{text!r} is no clock time", 'write hours and minutes, such as "14:07:30"')
    return time(int(found[1]), int(found[2]), int(found[3] or 0))


@lru_cache(maxsize=1)
def session_limits() -> SessionLimits:
    """The figures of `data/session.toml`."""
    entries = tomllib.loads((DATA / "session.toml").read_text("utf-8"))
    return SessionLimits(**{name: Sourced(**entry) for name, entry in entries.items()})


@lru_cache(maxsize=1)
def cue_words() -> Mapping[str, Mapping[str, tuple[str, ...]]]:
    """By meaning, then by language, the words of `data/cue_words.toml`."""
    tables = tomllib.loads((DATA / "cue_words.toml").read_text("utf-8"))
    return {meaning: {tag: tuple(words) for tag, words in own.items()} for meaning, own in tables.items()}


def _numbered(text: str) -> str:
    """The text with each `[[items]]` under a name of its own, so that a key of an item has one place."""
    count = iter(range(1, text.count("[[") + 1))
    return _HEADER.sub(lambda found: f"{found[1]}[items.{next(count)}]", text)


def _by_number(values: dict[str, Any]) -> dict[str, Any]:
    items = values.get("items")
    if isinstance(items, list):
        return values | {"items": {str(n): item for n, item in enumerate(items, 1)}}
    return values


class _Reading(Checked):
    """One reading of a session file."""

    def running_order(self) -> RunningOrder:
        self.known((), self.values, KEYS, "session file")
        zone_name = self.text("zone")
        zone = self._zone(zone_name)
        day = self._date()
        start = self._moment("start", day or NO_DAY, zone)
        end = self._end(day or NO_DAY, zone, start)
        items = self._items(start or (end and end - timedelta(days=1)))
        self._check_codes(items)
        order = RunningOrder(
            items=items,
            title=self.text("title", default="") or "",
            file=self.file,
            start=start,
            end=end,
            zone=zone,
            zone_name=zone_name,
            dated=day is not None or isinstance(self.values.get("start", self.values.get("end")), datetime),
            standby_ms=self._length(("standby",), round(session_limits().standby_s.value * 1000)),
            rate=self.attempt(("rate",), lambda: rate_named(str(self.values.get("rate", "25"))).name) or "25",
        )
        self.raise_faults()
        return order

    # -- the clock ----------------------------------------------------------------------------------------------

    def _zone(self, name: str | None) -> tzinfo | None:
        if name is None:
            return None
        try:
            return ZoneInfo(name)
        except (ZoneInfoNotFoundError, ValueError, OSError):
            hint = near_hint(name, tuple(sorted(available_timezones()))) if len(name) < 60 else ""
            self.fault(("zone",), f"there is no time zone {name!r}", hint or 'write one such as "Europe/Paris"',
                       "unknown-zone")  # fmt: skip
            return None

    def _date(self) -> date | None:
        value = self.values.get("date")
        if isinstance(value, datetime):
            return value.date()
        if value is None or isinstance(value, date):
            return value
        try:
            return date.fromisoformat(str(value))
        except ValueError:
            self.fault(("date",), f"{value!r} is no date", "write date = 2026-12-01")
            return None

    def _moment(self, key: str, day: date, zone: tzinfo | None) -> datetime | None:
        value = self.values.get(key)
        if isinstance(value, datetime):
            return self.attempt((key,), lambda: aware(value, zone))
        clock = self._clock((key,), value)
        return None if clock is None else self.attempt((key,), lambda: moment(day, clock, zone))

    def _clock(self, path: tuple[str, ...], value: Any) -> time | None:
        if value is None or isinstance(value, time):
            return value
        return self.attempt(path, lambda: parse_clock(str(value)))

    def _end(self, day: date, zone: tzinfo | None, start: datetime | None) -> datetime | None:
        """The end: without a date of its own the first such clock time after the start."""
        value = self.values.get("end")
        if start is None or isinstance(value, datetime):
            end = self._moment("end", day, zone)
        else:
            clock = self._clock(("end",), value)
            end = None if clock is None else self.attempt(("end",), lambda: next_at(clock, start))
        if start and end and not (start < end <= start + LONGEST):
            hours = LONGEST.seconds // 3600
            message = f"the end {value} does not come after the start {self.values.get('start')} within {hours} hours"
            self.fault(("end",), message, "write both with their dates: 2026-12-01T14:00:00", "contradictory-clock")
        return end

    # -- items --------------------------------------------------------------------------------------------------

    def _items(self, near: datetime | None) -> tuple[Item, ...]:
        raw = self.values.get("items", {})
        if not isinstance(raw, Mapping) or not raw:
            self.fault(("items",), "the session has no items", 'write [[items]] and below it script = "sky.en.md"')
            return ()
        if len(raw) > MOST_ITEMS:
            self.fault(("items",), f"{len(raw)} items are no sitting", f"up to {MOST_ITEMS}")
            return ()
        changeover_ms = self._length(("changeover",), 0)
        last, found = near, []
        for n in raw:
            if not isinstance(raw[n], Mapping):
                self.fault(("items", n), "an item is no table", "write [[items]] and its keys below")
                continue
            item = self._item(n, raw[n], changeover_ms, last)
            last = item.at or last
            found.append(item)
        return tuple(found)

    def _item(self, n: str, table: Mapping[str, Any], changeover_ms: int, last: datetime | None) -> Item:
        path = ("items", n)
        self.known(path, table, ITEM_KEYS, "item")
        kinds: list[ItemKind] = [kind for kind in ITEM_KINDS if kind in table]
        if len(kinds) != 1:
            names = ", ".join(ITEM_KINDS)
            self.fault(path, f"an item is one of {names}; item {n} is {len(kinds) or 'none'} of them",
                       'write script = "sky.en.md", or break = "Tea"')  # fmt: skip
        kind: ItemKind = kinds[0] if kinds else "break"
        name = self.text(*path, kind, default="") or ""
        runs_ms, sd_ms = self._runs(path, kind)
        line, column = self.places.of(*path)
        return Item(
            code=self._code(path, int(n)),
            kind=kind,
            title=self.text(*path, "title", default="") or ("" if kind == "script" else name),
            file=name if kind == "script" else None,
            slot_ms=self._length((*path, "slot"), -1) if "slot" in table else None,
            runs_ms=runs_ms,
            runs_sd_ms=sd_ms,
            changeover_ms=self._length((*path, "changeover"), changeover_ms if kind in ("script", "insert") else 0),
            at=self._at(path, table.get("at"), last),
            guests=self.texts(*path, "guests"),
            line=line,
            column=column,
        )

    def _at(self, path: tuple[str, ...], value: Any, last: datetime | None) -> datetime | None:
        """An item's clock time: the first such time after the one before it."""
        if value is None:
            return None
        if last is None:
            self.fault((*path, "at"), "an item has a clock time but the session has none", "give the session a start")
            return None
        if isinstance(value, datetime):
            return self.attempt((*path, "at"), lambda: aware(value, last.tzinfo))
        clock = self._clock((*path, "at"), value)
        return None if clock is None else self.attempt((*path, "at"), lambda: next_at(clock, last))

    def _code(self, path: tuple[str, ...], n: int) -> str:
        code = self.text(*path, "code")
        if code is None:
            return letters(n)
        if not _CODE.fullmatch(code):
            self.fault((*path, "code"), f"an item cannot be called {code!r}", 'write a letter or two, such as "B"')
        return str(code)

    def _check_codes(self, items: tuple[Item, ...]) -> None:
        seen: set[str] = set()
        for n, item in enumerate(items, 1):
            if item.code.casefold() in seen:
                self.fault(("items", str(n), "code"), f"two items are called {item.code!r}", "give each its own code")
            seen.add(item.code.casefold())

    def _runs(self, path: tuple[str, ...], kind: ItemKind) -> tuple[int, float]:
        """Length and scatter of what is no script. "8:00 to 15:00" holds it in eight of ten cases."""
        value = self.table(*path).get("runs")
        if kind == "script":
            if value is not None:
                self.fault((*path, "runs"), "a script's running time is predicted", "give it a slot instead")
            return 0, 0.0
        if value is None:
            self.fault(path, f"this {kind} has no length", 'write runs = "10:00", or runs = "8:00 to 15:00"')
            return 0, 0.0
        found = _RANGE.fullmatch(value) if isinstance(value, str) else None
        if not found:
            return self._length((*path, "runs"), 0), 0.0
        low, high = (self._ms((*path, "runs"), found[i]) for i in (1, 2))
        if low > high:
            self.fault((*path, "runs"), f"{value!r} runs backwards", "write the shorter length first")
        return (low + high) // 2, abs(high - low) / 2 / Z80

    def _length(self, path: tuple[str, ...], default_ms: int) -> int:
        value = self.table(*path[:-1]).get(path[-1])
        return default_ms if value is None else self._ms(path, value)

    def _ms(self, path: tuple[str, ...], value: Any) -> int:
        text = str(value)
        if text.strip().startswith(("-", "−")):
            hint = "leave it out, or write 0; items cannot overlap"
            self.fault(path, f"{path[-1]} cannot be negative: {text}", hint, "negative-time")
            return 0
        if isinstance(value, bool | time | date):
            self.fault(path, f"{path[-1]} is a length of time, not {text}", f'write it in quotes: {path[-1]} = "4:00"')
            return 0
        seconds = self.attempt(path, lambda: parse_duration(text))
        if seconds is not None and seconds * 1000 > DAY_MS:
            self.fault(path, f"{path[-1]} = {text} is longer than a day", "write minutes and seconds")
            return 0
        return round((seconds or 0.0) * 1000)


def letters(n: int) -> str:
    """A, B ... Z, AA, AB ... for items from 1. I and O are left out: over an intercom and in print they are digits."""
    names = "ABCDEFGHJKLMNPQRSTUVWXYZ"
    text = ""
    while n:
        n, digit = divmod(n - 1, len(names))
        text = names[digit] + text
    return text


def with_rate(order: RunningOrder, name: str) -> RunningOrder:
    """The running order with another timecode rate. Raises `BadCall`."""
    return replace(order, rate=rate_named(name).name)
