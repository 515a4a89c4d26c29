"""The call sheet of the day: who is needed when, in which language, on which rig, with rests for the voice."""

from __future__ import annotations

from dataclasses import dataclass, replace

from promptprep.model.session import PlannedItem, Rest, Session
from promptprep.rendering.wording import ENGLISH, Wording
from promptprep.session.plan import clock_at
from promptprep.session.rests import CAUTION
from promptprep.units import clock_text

CAUTIONS = (
    CAUTION,
    "Stands weighed down, cables taped, nobody under a raised rig, edges of glass covered. Local rules come first.",
    "Wanted rest: ten minutes for an hour of reading aloud, and five minutes at least before half an hour without one.",
)
HEAD = ("who", "needed_from", "until", "for", "language", "rig", "reads_aloud", "longest_stretch", "rest_wanted",
        "rest_given", "rest_due_after")  # fmt: skip


@dataclass(frozen=True, slots=True)
class Call:
    """One person's call."""

    who: str
    needed_from: str
    until: str
    items: str
    languages: str
    rigs: str
    spoken: str = ""
    longest: str = ""
    rest: str = ""
    given: str = ""
    due: str = ""

    @property
    def cells(self) -> tuple[str, ...]:
        return (self.who, self.needed_from, self.until, self.items, self.languages, self.rigs, self.spoken,
                self.longest, self.rest, self.given, self.due)  # fmt: skip


def calls(session: Session, say: Wording = ENGLISH) -> list[Call]:
    """Readers and guests in the order in which they are needed."""
    rests = {rest.reader: rest for rest in session.rests}
    people: dict[str, list[PlannedItem]] = {}
    for row in session.items:
        if row.item.kind == "script":
            for who in (row.timed.reader_name or say("reader"), *row.item.guests):
                people.setdefault(who, []).append(row)
    return [_call(session, who, rows, rests.get(who)) for who, rows in people.items()]


def _call(session: Session, who: str, rows: list[PlannedItem], rest: Rest | None) -> Call:
    call = Call(
        who=who,
        needed_from=clock_at(session, rows[0].start_ms),
        until=clock_at(session, max(rows[-1].end_ms, rows[-1].start_high_ms + rows[-1].timed.runs_ms)),
        items=", ".join(row.item.code for row in rows),
        languages=", ".join(dict.fromkeys(row.timed.language or "" for row in rows)),
        rigs=", ".join(dict.fromkeys(row.timed.rig or "" for row in rows)) if rest else "",
    )
    if rest is None:
        return call
    return replace(
        call,
        spoken=clock_text(rest.spoken_ms / 1000),
        longest=clock_text(rest.longest_ms / 1000),
        rest=clock_text(rest.rest_ms / 1000),
        given=clock_text(rest.given_ms / 1000),
        due=", ".join(rest.due_after),
    )
