"""Lays the items of a session one after another: starts, back times, ranges, the chance of ending in time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from statistics import NormalDist

from promptprep.model.session import PlannedItem, RunningOrder, Session, TimedItem
from promptprep.model.timing import Z80
from promptprep.session.clock import clock_face, offset_ms, plus
from promptprep.session.spread import Clockwork, Draws, Spread


def planned_session(
    order: RunningOrder, timed: Sequence[TimedItem], now: datetime | None = None, first: int | None = None
) -> Session:
    """The session with all times. `now` times the rest again: item `first` starts then, those before it are done.

    Offsets count from the start; where only the end is given, from the start that holds it.
    """
    origin = _origin(order, timed)
    hard_end_ms = offset_ms(origin, order.end) if origin and order.end else None
    ats = _ats(order, origin)
    backs = back_times(timed, hard_end_ms, ats)
    now_ms = offset_ms(origin, now) if origin and now else None
    rows, whole = _rows(timed, backs, ats)
    if now_ms is not None:
        begin = first if first is not None else next_item(rows, now_ms)
        rest, whole = _rows(timed[begin:], backs[begin:], ats[begin:], now_ms)
        rows = [_done(row) for row in rows[:begin]] + rest
    over = not rows or rows[-1].done
    end_ms = rows[-1].end_ms if rows else 0
    chance = None if hard_end_ms is None else whole.chance_by(hard_end_ms / 1000)
    return Session(
        order=order,
        items=tuple(rows),
        end_ms=end_ms,
        end_low_ms=end_ms if over else round(whole.at(-Z80) * 1000),
        end_high_ms=end_ms if over else round(whole.at(Z80) * 1000),
        hard_end_ms=hard_end_ms,
        chance=float(end_ms <= hard_end_ms) if over and hard_end_ms is not None else chance,
        origin=origin,
        now_ms=now_ms,
    )


def _origin(order: RunningOrder, timed: Sequence[TimedItem]) -> datetime | None:
    if order.start or not order.end:
        return order.start
    whole = sum(t.runs_ms for t in timed) + sum(t.item.changeover_ms for t in timed[1:])
    return plus(order.end, -whole)


def _ats(order: RunningOrder, origin: datetime | None) -> list[int | None]:
    return [offset_ms(origin, item.at) if origin and item.at else None for item in order.items]


def _rows(
    timed: Sequence[TimedItem], backs: Sequence[int | None], ats: Sequence[int | None], from_ms: int = 0
) -> tuple[list[PlannedItem], Clockwork]:
    spread: Clockwork = Draws() if any(at is not None for at in ats) else Spread()
    spread.add_fixed(from_ms / 1000)
    now_ms, rows = from_ms, []
    for i, (one, back, at) in enumerate(zip(timed, backs, ats, strict=True)):
        gap_ms = one.item.changeover_ms if i else 0
        now_ms += gap_ms
        spread.add_fixed(gap_ms / 1000)
        wait_ms = max(0, at - now_ms) if at is not None else 0
        if at is not None:
            spread.wait_until(at / 1000)
        now_ms += wait_ms
        low, high = round(spread.at(-Z80) * 1000), round(spread.at(Z80) * 1000)
        rows.append(PlannedItem(one, now_ms, min(low, now_ms), max(high, now_ms), wait_ms, back))
        _add(spread, one)
        now_ms += one.runs_ms
    return rows, spread


def _add(spread: Clockwork, one: TimedItem) -> None:
    if one.item.kind == "script":
        spread.add(one.timing, one.reader or "")
    else:
        spread.add_fixed(one.timing.mean_s, one.timing.own_sd_s)


def back_times(timed: Sequence[TimedItem], hard_end_ms: int | None, ats: Sequence[int | None]) -> list[int | None]:
    """The latest start of each item that still holds the end, and the clock times of the items after it."""
    backs: list[int | None] = []
    limit = hard_end_ms
    for i in reversed(range(len(timed))):
        back = None if limit is None else limit - timed[i].runs_ms
        backs.append(back)
        at = ats[i]
        start = back if at is None else at if back is None else min(back, at)
        limit = None if start is None else start - timed[i].item.changeover_ms
    return backs[::-1]


def next_item(rows: Sequence[PlannedItem], now_ms: int) -> int:
    """The first item that by the plan is not over at that moment."""
    return next((i for i, row in enumerate(rows) if row.end_ms > now_ms), len(rows))


def _done(row: PlannedItem) -> PlannedItem:
    return replace(row, start_low_ms=row.start_ms, start_high_ms=row.start_ms, done=True)


def clock_at(session: Session, ms: int) -> str:
    """The clock at an offset, or the running time where the session has no clock."""
    if session.origin is not None:
        return clock_face(plus(session.origin, ms))
    sign, seconds = ("-" if ms < 0 else ""), abs(ms) // 1000
    return f"{sign}{seconds // 3600}:{seconds // 60 % 60:02d}:{seconds % 60:02d}"


def needed_ms(session: Session, wanted: float) -> int:
    """How much must be won so that the session ends in time with the chance `wanted`; 0 where it does already."""
    if session.hard_end_ms is None or session.chance is None or session.chance >= wanted:
        return 0
    spread = session_spread(session)
    return max(0, round(spread.at(NormalDist().inv_cdf(wanted)) * 1000) - session.hard_end_ms)


def session_spread(session: Session) -> Clockwork:
    """The end's spread, as `planned_session` reckons it."""
    left = [(i, row) for i, row in enumerate(session.items) if not row.done]
    timed = [row.timed for _, row in left]
    ats = _ats(session.order, session.origin)[len(session.items) - len(left) :]
    return _rows(timed, [None] * len(timed), ats, session.now_ms or 0)[1]
