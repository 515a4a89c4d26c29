"""Sessions for the tests, made without files."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta

from promptprep.model.session import Item, RunningOrder, TimedItem
from promptprep.model.timing import Timing

START = datetime(2026, 12, 1, 14, 0, tzinfo=UTC)


def item(
    code: str, mean_s: float, common_s: float = 0.0, own_s: float = 0.0, *, reader: str = "ines", fixed_s: float = 0.0,
    changeover_ms: int = 0, at: datetime | None = None, slot_ms: int | None = None,
) -> TimedItem:  # fmt: skip
    written = Item(code, "script", code, f"{code}.en.md", slot_ms=slot_ms, changeover_ms=changeover_ms, at=at)
    timing = Timing(mean_s, common_s, own_s, fixed_s=fixed_s)
    return TimedItem(written, timing, code, "en", reader, reader)


def order(timed: Sequence[TimedItem], end_s: float | None = None, *, start: datetime | None = START) -> RunningOrder:
    end = None if end_s is None else START + timedelta(seconds=end_s)
    return RunningOrder(tuple(one.item for one in timed), start=start, end=end, dated=True)
