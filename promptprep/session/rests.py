"""Voice rest: how long each reader reads aloud, and where a rest is due. Not medical advice: a hoarse reader stops."""

from __future__ import annotations

from collections.abc import Sequence

from promptprep.model.session import PlannedItem, Rest, SessionLimits

CAUTION = (
    "Rest times are the usual advice, not medical advice: who is hoarse or in pain stops, and sees a doctor "
    "or a speech therapist if it lasts."
)


def rests_of(items: Sequence[PlannedItem], limits: SessionLimits) -> tuple[Rest, ...]:
    """A row a reader, in the order in which they first read."""
    readers = list(dict.fromkeys(r.timed.reader_name or "" for r in items if r.item.kind == "script"))
    return tuple(_rest(name, items, limits) for name in readers)


def _rest(name: str, items: Sequence[PlannedItem], limits: SessionLimits) -> Rest:
    """Speech adds up until the reader is silent for the shortest rest; past the limit a rest is due."""
    own = [r for r in items if r.item.kind == "script" and (r.timed.reader_name or "") == name]
    spoken = longest = run = given = 0
    due: list[str] = []
    last: PlannedItem | None = None
    least_ms, most_ms = limits.rest_least_s.value * 1000, limits.speak_most_s.value * 1000
    for row in own:
        speech = round(row.timed.timing.spoken_s * 1000)
        silent = row.start_ms - last.end_ms if last else 0
        if last and silent >= least_ms:
            given, run = given + silent, 0
        elif last and run + speech > most_ms:
            due.append(last.item.code)
            run = 0
        run, spoken, last = run + speech, spoken + speech, row
        longest = max(longest, run)
    rest = round(spoken / 3_600_000 * limits.rest_per_hour_s.value * 1000)
    return Rest(name or "reader", spoken, longest, rest, given, tuple(due))
