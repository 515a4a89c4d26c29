"""Faults of the session as a whole: holes, slots that do not hold, clock times that cannot be kept."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from promptprep.model.finding import Level
from promptprep.model.session import PlannedItem, Session, SessionFinding, SessionLimits
from promptprep.session.clock import comes_twice, offset_ms, plus
from promptprep.units import clock_text


def session_findings(session: Session, limits: SessionLimits) -> Iterator[SessionFinding]:
    """In the order of the items; the end comes last."""
    for row in session.items:
        yield from _of_item(session, row)
    yield from _of_clock(session)
    yield from _of_end(session, limits)


def _at(session: Session, row: PlannedItem, name: str, level: Level, message: str, hint: str) -> SessionFinding:
    item = row.item
    return SessionFinding(
        name, level, message, hint, item=item.code, file=session.order.file, line=item.line, column=item.column
    )


def _of_item(session: Session, row: PlannedItem) -> Iterator[SessionFinding]:
    if row.timed.fault is not None:
        stands = "its slot stands for it" if row.item.slot_ms is not None else "nothing stands for it: give it a slot"
        message = f"{row.item.file}: {row.timed.fault}; {stands}"
        yield _at(session, row, "missing-script", "fix", message, "put the script there, or take the item out")
    elif not row.done and (row.over_ms or 0) > 0:
        yield _over_slot(session, row, row.over_ms or 0, row.timed.slot_ms or 0)
    if row.item.at is not None and session.origin is not None and not row.done:
        yield from _of_its_time(session, row, row.item.at, session.origin)


def _over_slot(session: Session, row: PlannedItem, over_ms: int, slot_ms: int) -> SessionFinding:
    surely = row.timed.timing.low_s * 1000 > slot_ms
    runs, slot, over = (clock_text(ms / 1000) for ms in (row.timed.runs_ms, slot_ms, over_ms))
    message = f"{row.item.code} runs {runs} in a slot of {slot}: {over} over"
    return _at(session, row, "over-slot", "fix" if surely else "look", message, "see what can be done")


def _of_its_time(session: Session, row: PlannedItem, at: datetime, origin: datetime) -> Iterator[SessionFinding]:
    due = f"{row.item.code} is due at {at:%H:%M:%S}"
    late_ms = row.start_ms - offset_ms(origin, at)
    tight_ms = row.start_high_ms - row.start_ms
    if late_ms > 0:
        message = f"{due} but can start only {clock_text(late_ms / 1000)} after that"
        yield _at(session, row, "late-for-its-time", "fix", message, "start sooner, or move what can come later")
    elif tight_ms >= 1000:
        message = f"{due}; in one session of ten it starts more than {clock_text(tight_ms / 1000)} late"
        yield _at(session, row, "tight-before-its-time", "look", message, "leave more time before it")


def _of_clock(session: Session) -> Iterator[SessionFinding]:
    origin, order = session.origin, session.order
    if origin is None:
        return
    for name, when in (("start", order.start), ("end", order.end)):
        if when is not None and comes_twice(when):
            message = f"the clock shows {when:%H:%M} twice that day; the {name} is taken as {when.isoformat()}"
            hint = f"write {name} as a date and time with its offset to say which"
            yield SessionFinding("clock-time-twice", "look", message, hint, file=order.file)
    if plus(origin, session.end_ms).utcoffset() != origin.utcoffset():
        message = "the clocks change during this session; running times are real time"
        hint = "tell everyone who works by a clock on the wall"
        yield SessionFinding("clock-changes", "note", message, hint, file=order.file)


def _of_end(session: Session, limits: SessionLimits) -> Iterator[SessionFinding]:
    if session.hard_end_ms is None or session.chance is None or session.chance >= limits.chance_wanted.value:
        return
    over = session.over_ms or 0
    spare = f"{clock_text(abs(over) / 1000)} {'over' if over > 0 else 'to spare'}"
    message = f"the session ends in time in {session.chance * 100:.0f} % of cases ({spare})"
    level: Level = "fix" if over > 0 else "look"
    yield SessionFinding("late-session", level, message, "see what can be done", file=session.order.file)
