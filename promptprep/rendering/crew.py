"""The crew sheet of one script: numbered cues, when they come, after which words, and who does what."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import Studio
from promptprep.model.script import POSITION_KINDS, TIMED_KINDS, Cue
from promptprep.rendering.csv_text import csv_text
from promptprep.rendering.direction import direction_of
from promptprep.rendering.printing import PaperTools, pdf_from_html, rendered
from promptprep.rendering.sheets import sheet_for
from promptprep.session.cue_points import numbered_cues
from promptprep.session.cue_sheet import cue_sheet
from promptprep.units import clock_text

COLUMNS = ("number", "at", "at_s", "segment", "after_words", "position", "action", "duration_s", "next_in_s")
UNKNOWN = "unknown"  # the column of cues that no position answers for


@dataclass(frozen=True, slots=True)
class CrewRow:
    """One numbered cue as the crew reads it. `next_in_s` is the time to the cue after it, None at the last."""

    number: str
    at_s: float
    segment: str
    after_words: str
    actions: tuple[Cue, ...]
    next_in_s: float | None


def crew_rows(one: PreparedScript) -> list[CrewRow]:
    """All cues of a script in order; cues at one point of the text are one row."""
    points = numbered_cues(one.script, one.timing)
    gaps = [*(after.at_s - before.at_s for before, after in pairwise(points)), None][: len(points)]
    return [
        CrewRow(cue.label, cue.at_s, one.timing.segments[cue.segment].title, sheet.words, cue.actions, gap)
        for cue, sheet, gap in zip(points, cue_sheet(one.script, points), gaps, strict=True)
    ]


def crew_csv(one: PreparedScript) -> str:
    """One line an action, in the columns of `COLUMNS`."""
    return csv_text(COLUMNS, [_cells(row, cue) for row in crew_rows(one) for cue in row.actions])


def _cells(row: CrewRow, cue: Cue) -> tuple[str, ...]:
    length = "" if cue.duration_s is None else f"{cue.duration_s:.3f}"
    following = "" if row.next_in_s is None else f"{row.next_in_s:.3f}"
    at = clock_text(row.at_s), f"{row.at_s:.3f}"
    return (row.number, *at, row.segment, row.after_words, cue.kind, cue.text, length, following)


def crew_pdf(one: PreparedScript, studio: Studio, tools: PaperTools) -> bytes:
    """The printed crew sheet: a row a cue, a column a position that has anything to do."""
    rows = crew_rows(one)
    kinds = [k for k in (*TIMED_KINDS, *POSITION_KINDS) if any(c.kind == k for r in rows for c in r.actions)]
    if any(not cue.known for row in rows for cue in row.actions):
        kinds.append(UNKNOWN)
    html = rendered(
        tools,
        "crew/sheet.html",
        one=one,
        script=one.script,
        studio=studio,
        sheet=sheet_for(studio.paper),
        kinds=kinds,
        rows=[_view(row, kinds) for row in rows],
        whole=clock_text(one.timing.timing.mean_s),
        slot="" if one.timing.slot_s is None else clock_text(one.timing.slot_s),
    )
    return pdf_from_html(html, f"{one.script.name}.{one.script.language}.{one.digest}.crew")


def _view(row: CrewRow, kinds: list[str]) -> dict[str, Any]:
    return {
        "number": row.number,
        "at": clock_text(row.at_s),
        "segment": row.segment,
        "words": row.after_words,
        "cells": [[_action(cue) for cue in row.actions if _column(cue) == kind] for kind in kinds],
        "next": "" if row.next_in_s is None else clock_text(row.next_in_s),
    }


def _action(cue: Cue) -> tuple[str, str]:
    """What to do, in words, and their direction; a cue of an unknown kind is given as it was written."""
    time = clock_text(cue.duration_s) if cue.duration_s is not None else ""
    kind = "" if cue.known else f"{cue.kind}:"
    text = " ".join(part for part in (kind, time, cue.text) if part) or "●"
    return text, direction_of(cue.text) or ""


def _column(cue: Cue) -> str:
    return cue.kind if cue.known else UNKNOWN
