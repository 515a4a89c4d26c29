"""A session as JSON: items, cues, findings. Times in seconds from the session's start, and by the clock."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from promptprep.model.script import Cue
from promptprep.model.session import ItemCue, PlannedItem, Session, SessionFinding
from promptprep.rendering.timecode import Rate, code_of, frame_at, rate_named
from promptprep.session.clock import clock_ms, plus
from promptprep.session.plan import clock_at


def session_object(session: Session) -> dict[str, Any]:
    """The keys are a contract. `start_s` + `mean_s` of an item is its end; `back_s` its latest start."""
    rate = rate_named(session.order.rate)
    return {
        "session": _session(session, rate),
        "items": [_item(session, row, rate) for row in session.items],
        "cues": list(cue_objects(session, rate)),
        "findings": [_finding(f) for f in session.findings],
    }


def _session(session: Session, rate: Rate) -> dict[str, Any]:
    order = session.order
    return {
        "title": order.title,
        "file": order.file,
        "zone": order.zone_name,
        "rate": rate.name,
        "start": _iso(session, 0),
        "end": _iso(session, session.end_ms),
        "hard_end": None if session.hard_end_ms is None else _iso(session, session.hard_end_ms),
        "mean_s": session.end_ms / 1000,
        "low_s": session.end_low_ms / 1000,
        "high_s": session.end_high_ms / 1000,
        "over_s": None if session.over_ms is None else session.over_ms / 1000,
        "chance_in_time": None if session.chance is None else round(session.chance, 4),
        "now": None if session.now_ms is None else _iso(session, session.now_ms),
        "repairs": [
            {"kind": r.kind, "text": r.text, "gives_s": r.gives_ms / 1000, "enough": r.enough,
             "sentences": [{"item": code, "segment": s.segment, "text": s.text, "start": s.start, "end": s.end,
                            "gives_s": s.gives_ms / 1000} for code, s in r.spare]}
            for r in session.repairs
        ],
        "rests": [
            {"reader": r.reader, "spoken_s": r.spoken_ms / 1000, "longest_s": r.longest_ms / 1000,
             "rest_s": r.rest_ms / 1000, "given_s": r.given_ms / 1000, "due_after": list(r.due_after)}
            for r in session.rests
        ],
        "returns": [
            {"item": r.item, "person": r.person, "feeds": list(r.feeds), "open_s": _s(r.open_ms),
             "close_s": _s(r.close_ms)}
            for r in session.returns
        ],
    }  # fmt: skip


def _s(ms: int | None) -> float | None:
    return None if ms is None else ms / 1000


def _iso(session: Session, ms: int) -> str | None:
    if session.origin is None:
        return None
    when = plus(session.origin, ms)
    text = when.isoformat(timespec="milliseconds") if session.order.dated else f"{when:%H:%M:%S.%f}"[:-3]
    return text if session.order.zone or not session.order.dated else text.removesuffix("+00:00")


def timecode_at(session: Session, ms: int, rate: Rate) -> str:
    """By the time of day where the session has a clock, else from 00:00:00:00 at its start."""
    shown = clock_ms(plus(session.origin, ms)) if session.origin is not None else ms
    return code_of(frame_at(shown, rate), rate)


def _item(session: Session, row: PlannedItem, rate: Rate) -> dict[str, Any]:
    timed, item = row.timed, row.item
    return {
        "code": item.code,
        "kind": item.kind,
        "title": timed.title,
        "file": item.file,
        "language": timed.language,
        "reader": timed.reader_name,
        "rig": timed.rig,
        "start_s": row.start_ms / 1000,
        "start_low_s": row.start_low_ms / 1000,
        "start_high_s": row.start_high_ms / 1000,
        "back_s": _s(row.back_ms),
        "end_s": row.end_ms / 1000,
        "start": _iso(session, row.start_ms),
        "back": None if row.back_ms is None else _iso(session, row.back_ms),
        "timecode": timecode_at(session, row.start_ms, rate),
        "mean_s": timed.runs_ms / 1000,
        "low_s": round(timed.timing.low_s, 3),
        "high_s": round(timed.timing.high_s, 3),
        "slot_s": _s(timed.slot_ms),
        "over_s": _s(row.over_ms),
        "changeover_s": item.changeover_ms / 1000,
        "wait_s": row.wait_ms / 1000,
        "done": row.done,
        "missing": timed.fault,
        "guests": list(item.guests),
        "segments": [
            {"id": s.id, "title": s.title, "start_s": (row.start_ms + s.start_ms) / 1000, "mean_s": s.runs_ms / 1000,
             "back_s": None if row.back_ms is None else (row.back_ms + s.start_ms) / 1000, "slot_s": _s(s.slot_ms)}
            for s in timed.segments
        ],
    }  # fmt: skip


def cue_objects(session: Session, rate: Rate) -> Iterator[dict[str, Any]]:
    """All cues in order, with the time to the next one."""
    points = [(row, cue) for row in session.items for cue in row.timed.cues]
    starts = [row.start_ms + cue.at_ms for row, cue in points]
    for i, (row, cue) in enumerate(points):
        yield {
            "cue": f"{row.item.code}{cue.label}",
            "item": row.item.code,
            "segment": cue.segment,
            "at_s": starts[i] / 1000,
            "at": clock_at(session, starts[i]),
            "timecode": timecode_at(session, starts[i], rate),
            "standby_s": max(0, starts[i] - session.order.standby_ms) / 1000,
            "after_words": cue.words,
            "before_words": cue.first_words,
            "after": cue.after,
            "actions": [_action(action) for action in cue.actions],
            "duration_s": duration_s(cue),
            "next_in_s": (starts[i + 1] - starts[i]) / 1000 if i + 1 < len(starts) else None,
        }


def duration_s(cue: ItemCue) -> float | None:
    """How long a cue's timed actions take one after another."""
    lengths = [a.duration_s for a in cue.actions if a.duration_s is not None]
    return sum(lengths) if lengths else None


def _action(cue: Cue) -> dict[str, Any]:
    return {"kind": cue.kind, "text": cue.text, "duration_s": cue.duration_s}


def _finding(f: SessionFinding) -> dict[str, Any]:
    return {
        "file": f.file,
        "line": f.line,
        "column": f.column,
        "name": f.name,
        "level": f.level,
        "excerpt": f.excerpt,
        "message": f.message,
        "hint": f.hint,
        "item": f.item,
        "cue": f"{f.item}{f.cue}" if f.cue else None,
    }
