"""Who hears whom: each person's return holds every feed but their own voice."""

from __future__ import annotations

from collections.abc import Sequence

from promptprep.model.session import PlannedItem, Return
from promptprep.session.cue_words import CueWords

CLIPS = "clip sound"
UNNAMED_GUEST = "guest"
UNNAMED_READER = "reader"


def returns_of(row: PlannedItem, words: CueWords) -> tuple[Return, ...]:
    """The returns of one script: of the reader and of each guest, with the times at which the copy opens them."""
    people = people_of(row, words)
    if not people:
        return ()
    clips = any(cue.kind == "clip" for point in row.timed.cues for cue in point.actions)
    open_ms, close_ms = _opened(row, words)
    reader = people[0]
    return tuple(
        Return(
            item=row.item.code,
            person=person,
            feeds=(*(other for other in people if other != person), *([CLIPS] if clips else [])),
            open_ms=row.start_ms if person == reader else open_ms,
            close_ms=row.end_ms if person == reader else close_ms,
        )
        for person in people
    )


def people_of(row: PlannedItem, words: CueWords) -> Sequence[str]:
    """Reader first, then the guests; nobody where the script has no guest."""
    guests = list(dict.fromkeys(row.item.guests))
    if not guests and any(words.names_guest(cue) for point in row.timed.cues for cue in point.actions):
        guests = [UNNAMED_GUEST]
    return [row.timed.reader_name or UNNAMED_READER, *guests] if guests else []


def _opened(row: PlannedItem, words: CueWords) -> tuple[int | None, int | None]:
    opened: int | None = None
    closed: int | None = None
    for point in row.timed.cues:
        for cue in point.actions:
            if cue.kind != "sound" or not words.says(cue.text, "return"):
                continue
            if words.says(cue.text, "shut"):
                closed = row.start_ms + point.at_ms
            elif opened is None:
                opened = row.start_ms + point.at_ms
    return opened, closed if closed is not None else (row.end_ms if opened is not None else None)
