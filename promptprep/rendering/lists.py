"""Lists for the people who prepare: shots by source, graphics to proof-read, clips, and who hears whom."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from promptprep.model.script import Cue
from promptprep.model.session import Session
from promptprep.rendering.crew_positions import PositionRow, position_rows
from promptprep.rendering.csv_text import csv_text
from promptprep.rendering.wording import ENGLISH, Wording
from promptprep.session.cue_words import CueWords
from promptprep.session.feeds import CLIPS, UNNAMED_GUEST, UNNAMED_READER
from promptprep.session.plan import clock_at
from promptprep.units import clock_text

SHOT_HEAD = ("camera_or_source", "cue", "at", "shot", "after_words", "until")
GRAPHIC_HEAD = ("cue", "at", "kind", "line_1", "line_2", "line_3", "language", "off_at", "shown_s")
CLIP_HEAD = ("cue", "at", "clip", "duration", "after_words", "before_words")
SOUND_HEAD = ("item", "person", "hears", "never_hears", "opens", "closes")

NAMELESS = (CLIPS, UNNAMED_GUEST, UNNAMED_READER)

_PARTS = re.compile(r"\s*[,،、，]\s*")


@dataclass(frozen=True, slots=True)
class ListRow:
    """Cells of one row, with the language and direction of the copy in it."""

    cells: tuple[str, ...]
    language: str = ""
    direction: str = "ltr"


def shot_list(session: Session) -> list[ListRow]:
    """Shots grouped by camera or source, each with the time until which it stays."""
    shots = [(row, cue) for row in position_rows(session) for cue in row.actions if cue.kind == "vision"]
    following = [row.at_ms for row, _ in shots[1:]] + [session.end_ms] if shots else []
    ends = [clock_at(session, min(ms, row.item.end_ms)) for (row, _), ms in zip(shots, following, strict=True)]
    found = []
    for (row, cue), end in zip(shots, ends, strict=True):
        source, *rest = _PARTS.split(cue.text, maxsplit=1)
        found.append((source, row.at_ms, _row(row, source, row.code, row.at, *rest or [""], row.cue.words, end)))
    order = {source: i for i, source in enumerate(sorted({s.casefold() for s, _, _ in found}))}
    return [row for _, _, row in sorted(found, key=lambda entry: (order[entry[0].casefold()], entry[1]))]


def _row(row: PositionRow, *cells: str) -> ListRow:
    return ListRow(tuple(cells), row.item.timed.language or "", row.item.timed.direction)


def graphic_list(session: Session, words: Mapping[str, CueWords]) -> list[ListRow]:
    """Every graphic with its exact text, line by line, and how long it stands. `words` tells by item code what its
    cues' texts mean: those that take a graphic away are no graphics."""
    points = [(row, cue) for row in position_rows(session, "graphics") for cue in row.actions if cue.kind == "graphic"]
    found = []
    for i, (row, cue) in enumerate(points):
        if words[row.item.item.code].says(cue.text, "off"):
            continue
        off = next((other.at_ms for other, _ in points[i + 1 :] if other.at_ms > row.at_ms), row.item.end_ms)
        off = min(off, row.item.end_ms)
        kind, *lines = _PARTS.split(cue.text)
        lines = [*lines, "", ""]
        shown = f"{(off - row.at_ms) / 1000:.1f}"
        language = row.item.timed.language or ""
        rest = ", ".join(line for line in lines[2:] if line)
        found.append(_row(row, row.code, row.at, kind, *lines[:2], rest, language, clock_at(session, off), shown))
    return found


def clip_list(session: Session) -> list[ListRow]:
    """Clips with the words said before and after them, and their lengths."""
    return [
        _row(row, row.code, row.at, cue.text, _length(cue), row.cue.words, row.cue.first_words)
        for row in position_rows(session)
        for cue in row.actions
        if cue.kind == "clip"
    ]


def _length(cue: Cue) -> str:
    return "" if cue.duration_s is None else clock_text(cue.duration_s)


def sound_list(session: Session, say: Wording = ENGLISH) -> list[ListRow]:
    """What each person's return is made of; their own voice never is."""
    return [
        ListRow(
            (
                found.item,
                _person(found.person, say),
                " + ".join(_person(feed, say) for feed in found.feeds),
                say("{person}'s own voice", person=_person(found.person, say)),
                say("never opened") if found.open_ms is None else clock_at(session, found.open_ms),
                "" if found.close_ms is None else clock_at(session, found.close_ms),
            )
        )
        for found in session.returns
    ]


def _person(name: str, say: Wording) -> str:
    """A name as it is; what stands for one, in the sheet's language."""
    return say(name) if name in NAMELESS else name


def list_csv(head: tuple[str, ...], rows: list[ListRow]) -> str:
    return csv_text(head, [row.cells for row in rows])
