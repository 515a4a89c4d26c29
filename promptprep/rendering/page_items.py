"""What printed pages are filled with: rows, items, and items that belong together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from promptprep.spans import Span

NOWHERE = Span(0, 0)
MOST_CUES = 50  # after a segment's last words; more are not looked through


@dataclass(frozen=True, slots=True)
class Entry:
    """Something in the lane. `number` is a cue's, "" where it has none or the entry before told it."""

    kind: str
    lines: tuple[str, ...]
    height_pt: float
    number: str = ""


@dataclass(frozen=True, slots=True)
class Row:
    """What stands in one piece: a line of copy (`span` in its item's text), a heading, a note, a hold.

    `lead_pt` of `height_pt` lies above the row's own line (a pronunciation stands there). A row that is `clear`
    starts below everything in the lane.
    """

    height_pt: float
    entries: tuple[Entry, ...] = ()
    span: Span = NOWHERE
    lead_pt: float = 0.0
    clear: bool = False


@dataclass(frozen=True, slots=True)
class Item:
    """A row of its own, or the copy of one paragraph with the ends of its sentences.

    `kind` is "title", "sum", "box", "heading", "cues", "hold", "note", "beside" or "copy". `key` (segment, block)
    says where it comes from; `gap_pt` is left above it, but not at the top of a page. `box` are words before a box
    to write into.
    """

    kind: str
    text: str
    key: tuple[int, int]
    row: Row = Row(0.0)
    sentences: tuple[int, ...] = ()
    gap_pt: float = 0.0
    lines: tuple[str, ...] = ()
    box: tuple[str, ...] = ()


@dataclass(slots=True)
class Group:
    """A paragraph, what leads to it, and what belongs to its end: its text in another language, its segment's last
    cues."""

    lead: list[Item] = field(default_factory=list)
    copy: Item | None = None
    tail: list[Item] = field(default_factory=list)


def groups_of(items: Sequence[Item]) -> list[Group]:
    """The items in groups, none left out."""
    groups = [Group()]
    for at, item in enumerate(items):
        group = groups[-1]
        if group.copy is not None and item.kind != "beside" and not _closes(items, at):
            group = Group()
            groups.append(group)
        if group.copy is not None:
            group.tail.append(item)
        elif item.kind == "copy":
            group.copy = item
        else:
            if item.kind == "heading" and group.lead:
                group = Group()
                groups.append(group)
            group.lead.append(item)
    return [group for group in groups if group.lead or group.copy]


def _closes(items: Sequence[Item], at: int) -> bool:
    """Whether an item is one of the cues after a segment's last words."""
    rest = (item.kind for item in items[at : at + MOST_CUES])
    return items[at].kind == "cues" and next((kind == "heading" for kind in rest if kind != "cues"), True)
