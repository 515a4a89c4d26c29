"""Crew sheets of a session: one for all, and one a position with only what that position does."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from promptprep.model.script import CUE_KINDS, Cue
from promptprep.model.session import ItemCue, PlannedItem, Session
from promptprep.rendering.csv_text import csv_text
from promptprep.rendering.direction import isolated
from promptprep.rendering.session_json import duration_s, timecode_at
from promptprep.rendering.timecode import rate_named
from promptprep.session.plan import clock_at
from promptprep.units import clock_text

ALL = "all"
POSITIONS: Mapping[str, tuple[str, ...]] = {
    "vision": ("vision", "clip", "live"),
    "graphics": ("graphic",),
    "screen": ("screen",),
    "prompter": ("prompter", "live"),
    "sound": ("sound", "clip", "live"),
    "lights": ("lights",),
    "record": ("record",),
}
TOGETHER = (("vision", "clip", "live"), ("graphic", "screen"), ("prompter",), ("sound",), ("lights", "record"))
MOST_COLUMNS = 4
COLUMNS = (
    "cue", "item", "segment", "at", "at_s", "timecode", "standby", "after_words", "kind", "action", "duration_s",
    "next_in_s",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class PositionRow:
    """One numbered cue as one position reads it. Times as text but for the seconds; `next_s` leads to its next cue."""

    code: str
    item: PlannedItem
    cue: ItemCue
    at_ms: int
    at: str
    standby: str
    timecode: str
    actions: tuple[Cue, ...]
    next_s: float | None

    @property
    def duration(self) -> str:
        length = duration_s(self.cue)
        return "" if length is None else clock_text(length)

    @property
    def next(self) -> str:
        return "" if self.next_s is None else clock_text(self.next_s)


def position_rows(session: Session, position: str = ALL) -> list[PositionRow]:
    """The rows of one position's sheet, in the order of the session."""
    points = [
        (row, cue, chosen)
        for row in session.items
        for cue in row.timed.cues
        if (chosen := tuple(a for a in cue.actions if belongs(a, position)))
    ]
    starts = [row.start_ms + cue.at_ms for row, cue, _ in points]
    gaps: list[float | None] = [(b - a) / 1000 for a, b in pairwise(starts)]
    rate = rate_named(session.order.rate)
    return [
        PositionRow(
            code=f"{row.item.code}{cue.label}",
            item=row,
            cue=cue,
            at_ms=at_ms,
            at=clock_at(session, at_ms),
            standby=clock_at(session, max(0, at_ms - session.order.standby_ms)),
            timecode=timecode_at(session, at_ms, rate),
            actions=chosen,
            next_s=gap,
        )
        for (row, cue, chosen), at_ms, gap in zip(points, starts, [*gaps, None][: len(points)], strict=True)
    ]


def belongs(cue: Cue, position: str) -> bool:
    """Whether a position has to know of an action. Notes and kinds that nobody knows go to everyone."""
    if position == ALL or cue.kind == "note" or not cue.known:
        return True
    return cue.kind in POSITIONS[position]


def busy_positions(session: Session) -> list[str]:
    """The positions that have anything of their own to do."""
    kinds = {a.kind for row in session.items for cue in row.timed.cues for a in cue.actions}
    return [position for position, own in POSITIONS.items() if kinds & set(own)]


def columns_of(rows: Sequence[PositionRow]) -> dict[str, tuple[str, ...]]:
    """The columns of a sheet by head: one a kind where there are few, else kinds of one desk together."""
    found = {a.kind for row in rows for a in row.actions}
    kinds = [k for k in CUE_KINDS if k in found] + sorted(found - set(CUE_KINDS))
    if len(kinds) <= MOST_COLUMNS:
        return {kind: (kind,) for kind in kinds}
    rest = tuple(k for k in kinds if not any(k in group for group in TOGETHER))
    groups = [tuple(k for k in group if k in found) for group in TOGETHER] + [rest]
    return {", ".join(group): group for group in groups if group}


def cells_of(
    row: PositionRow, columns: Mapping[str, tuple[str, ...]], say: Callable[[str], str] = str, page: str = "ltr"
) -> list[list[str]]:
    """The actions of a row in the sheet's columns; where kinds share a column each says which it is."""
    return [
        [
            f"{say(a.kind)}: {isolated(action_text(a), page)}" if len(kinds) > 1 else action_text(a)
            for a in row.actions
            if a.kind in kinds
        ]
        for kinds in columns.values()
    ]


def action_text(cue: Cue) -> str:
    """An action in one cell: its length, then what it says; a dot where there is nothing to say."""
    length = clock_text(cue.duration_s) if cue.duration_s is not None else ""
    return " ".join(part for part in (length, cue.text) if part) or "●"


def positions_csv(session: Session, position: str = ALL) -> str:
    """One line an action (RFC 4180)."""
    rows = [
        (row.code, row.item.item.code, row.cue.segment, row.at, f"{row.at_ms / 1000:.3f}", row.timecode, row.standby,
         row.cue.words, cue.kind, cue.text, "" if cue.duration_s is None else f"{cue.duration_s:.3f}",
         "" if row.next_s is None else f"{row.next_s:.3f}")
        for row in position_rows(session, position)
        for cue in row.actions
    ]  # fmt: skip
    return csv_text(COLUMNS, rows)
