"""A session in lines of text: what a terminal shows."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.model.session import PlannedItem, Session
from promptprep.rendering.wording import ENGLISH, Wording
from promptprep.session.plan import clock_at
from promptprep.session.rests import CAUTION
from promptprep.session.spare import RULE
from promptprep.units import clock_text

HEAD = (
    "item", "title", "language", "reader", ">starts", ">in 9 of 10 by", ">must start", ">runs", ">80 % range", ">slot",
    ">over",
)  # fmt: skip


def summary_lines(session: Session, say: Wording = ENGLISH) -> Iterator[str]:
    """The day, and how it ends, in the language of `say`."""
    order = session.order
    day = f", {session.origin:%Y-%m-%d}" if session.origin and order.dated else ""
    title = order.title or order.file or say("session")
    yield f"{title}{day}" + (f" ({order.zone_name})" if order.zone_name else "")
    if session.now_ms is not None:
        now, left = clock_at(session, session.now_ms), next((r for r in session.items if not r.done), None)
        yield (
            say("from {time}: nothing is left", time=now)
            if left is None
            else say("from {time}, beginning with {item}", time=now, item=left.item.code)
        )
    low, high = clock_at(session, session.end_low_ms), clock_at(session, session.end_high_ms)
    ends = "ends at {time}, in 8 of 10 sessions between {low} and {high}"
    yield say(ends, time=clock_at(session, session.end_ms), low=low, high=high)
    if session.hard_end_ms is not None and session.chance is not None:
        over = session.over_ms or 0
        must = "must end by {time}: {over} over" if over > 0 else "must end by {time}: {over} to spare"
        yield say(must, time=clock_at(session, session.hard_end_ms), over=clock_text(abs(over) / 1000))
        yield say("it ends in time in {chance} of cases", chance=chance_text(session.chance, say))


def chance_text(chance: float, say: Wording = ENGLISH) -> str:
    """A chance in whole per cent: no session is ever sure."""
    if 0.01 <= chance <= 0.99:
        return say("{n} %", n=f"{chance * 100:.0f}")
    return say("more than {n} %", n="99") if chance > 0.99 else say("less than {n} %", n="1")


def item_rows(session: Session) -> list[tuple[str, ...]]:
    return [_row(session, row) for row in session.items]


def _row(session: Session, row: PlannedItem) -> tuple[str, ...]:
    timed, over = row.timed, row.over_ms
    spread = timed.timing.sd_s > 0
    title = timed.title if timed.item.kind in ("script", "insert") else f"({timed.title})"
    return (
        row.item.code,
        ("done: " if row.done else "") + (f"missing: {timed.title}" if timed.fault else title),
        timed.language or "",
        timed.reader_name or "",
        clock_at(session, row.start_ms),
        "" if row.done else clock_at(session, row.start_high_ms),
        "" if row.back_ms is None or row.done else clock_at(session, row.back_ms),
        clock_text(timed.runs_ms / 1000),
        f"{clock_text(timed.timing.low_s)} to {clock_text(timed.timing.high_s)}" if spread else "",
        "" if timed.slot_ms is None else clock_text(timed.slot_ms / 1000),
        "" if over is None else ("+" if over > 0 else "") + clock_text(over / 1000),
    )


def repair_lines(session: Session) -> Iterator[str]:
    if session.repairs:
        yield "\nwhat can be done, least harm first:"
    for repair in session.repairs:
        yield f"  - {repair.text}" + (" That is enough." if repair.enough else "")
        for code, spare in repair.spare:
            yield f"      {code}, {spare.segment} ({clock_text(spare.gives_ms / 1000, tenths=True)}): {spare.text}"
    if any(repair.spare for repair in session.repairs):
        yield f"  ({RULE})"
    resting = [rest for rest in session.rests if rest.due_after]
    for rest in resting:
        after = ", ".join(rest.due_after)
        yield f"  - {rest.reader} should rest their voice for five minutes or more after {after}."
    if resting:
        yield f"  ({CAUTION})"


def findings_lines(session: Session) -> Iterator[str]:
    if session.findings:
        yield ""
    for f in session.findings:
        place = ":".join(str(p) for p in (f.file, f.line, f.column) if p is not None)
        cue = f" (cue {f.item}{f.cue})" if f.cue else ""
        yield f"{place}: {f.level}: {f.message}{cue} [{f.name}]"
        if f.hint:
            yield f"    {f.hint}"
