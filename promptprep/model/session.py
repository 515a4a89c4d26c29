"""A running order of scripts recorded in one sitting, as it was written and as it is planned.

Times are whole milliseconds, so that their sums are exact; an offset counts from the session's start.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, tzinfo
from typing import Literal

from promptprep.model.finding import Level
from promptprep.model.script import Cue, Script
from promptprep.model.timing import ScriptTiming, Timing
from promptprep.units import Sourced

ItemKind = Literal["script", "insert", "setup", "break"]
ITEM_KINDS: tuple[ItemKind, ...] = ("script", "insert", "setup", "break")
DAY_MS = 86_400_000


@dataclass(frozen=True, slots=True)
class Item:
    """One entry of the running order as written. `code` names it ("C"): cue 3 of it is "C3".

    `changeover_ms` comes before it. `at` is a clock time before which it cannot start. `runs_ms` and `runs_sd_ms`
    are the length of what is no script. `line` and `column` are its place in the session file.
    """

    code: str
    kind: ItemKind
    title: str = ""
    file: str | None = None
    slot_ms: int | None = None
    runs_ms: int = 0
    runs_sd_ms: float = 0.0
    changeover_ms: int = 0
    at: datetime | None = None
    guests: tuple[str, ...] = ()
    line: int | None = None
    column: int | None = None


@dataclass(frozen=True, slots=True)
class RunningOrder:
    """What a session file says. `start` and `end` are aware; `zone` is None where the file names no time zone."""

    items: tuple[Item, ...]
    title: str = ""
    file: str | None = None
    start: datetime | None = None
    end: datetime | None = None
    zone: tzinfo | None = None
    zone_name: str | None = None
    dated: bool = False
    standby_ms: int = 5000
    rate: str = "25"


@dataclass(frozen=True, slots=True)
class NumberedCue:
    """One numbered cue (from 1): its actions in the order of the text, and when it is planned.

    `segment` and `block` index into the script; `offset` is the place in the paragraph's text, None for cues
    on lines of their own. `at_s` counts from the start of the script. `label` is what the crew calls it: the number
    that a remark keeps ("12.5"), else a new one that leaves the kept ones alone.
    """

    number: int
    segment: int
    block: int
    offset: int | None
    at_s: float
    actions: tuple[Cue, ...]
    label: str = ""


@dataclass(frozen=True, slots=True)
class Spare:
    """A sentence that can go by the stated rule: its words, its place in the source, and what its going gives."""

    text: str
    segment: str
    start: int
    end: int
    gives_ms: int


@dataclass(frozen=True, slots=True)
class TimedSegment:
    """A script's segment inside the session; `start_ms` counts from the start of its item."""

    id: str
    title: str
    start_ms: int
    runs_ms: int
    slot_ms: int | None


@dataclass(frozen=True, slots=True)
class ItemCue:
    """A numbered cue with what the crew sheets need. `at_ms` counts from the start of its item.

    `words` are the last that are said before it; `first_words` the first after it. `after` names the clip or live part
    that runs between those words and the cue.
    """

    label: str
    at_ms: int
    segment: str
    words: str
    first_words: str
    actions: tuple[Cue, ...]
    after: str = ""


@dataclass(frozen=True, slots=True)
class TimedItem:
    """An item with its time. `fault` says why a script could not be read: then its slot stands for its time.

    `reader` groups what shares one pace error. `direction` is that of the copy. `points` are its cues as they stand in
    the script, `cues` the same as the crew reads them; `digest`
    stands for its wording.
    """

    item: Item
    timing: Timing
    title: str = ""
    language: str | None = None
    reader: str | None = None
    reader_name: str | None = None
    rig: str | None = None
    segments: tuple[TimedSegment, ...] = ()
    cues: tuple[ItemCue, ...] = ()
    spare: tuple[Spare, ...] = ()
    fault: str | None = None
    direction: str = "ltr"
    points: tuple[NumberedCue, ...] = ()
    script: Script | None = None
    plan: ScriptTiming | None = None
    digest: str = ""

    @property
    def runs_ms(self) -> int:
        return round(self.timing.mean_s * 1000)

    @property
    def slot_ms(self) -> int | None:
        return self.item.slot_ms


@dataclass(frozen=True, slots=True)
class PlannedItem:
    """An item at its place. All offsets from the session's start; `back_ms` is the latest start that holds the end.

    `wait_ms` is idle time before it where it may not start earlier. `low` and `high` bound 80 %. `done` items lie
    before the moment from which the session was timed again.
    """

    timed: TimedItem
    start_ms: int
    start_low_ms: int
    start_high_ms: int
    wait_ms: int = 0
    back_ms: int | None = None
    done: bool = False

    @property
    def item(self) -> Item:
        return self.timed.item

    @property
    def end_ms(self) -> int:
        return self.start_ms + self.timed.runs_ms

    @property
    def over_ms(self) -> int | None:
        return None if self.timed.slot_ms is None else self.timed.runs_ms - self.timed.slot_ms


@dataclass(frozen=True, slots=True)
class SessionFinding:
    """A fault in the session, with the item and cue it belongs to and its place in a file where it has one."""

    name: str
    level: Level
    message: str
    hint: str = ""
    item: str | None = None
    cue: str | None = None
    file: str | None = None
    line: int | None = None
    column: int | None = None
    excerpt: str = ""


@dataclass(frozen=True, slots=True)
class Repair:
    """A way to hold the end. `gives_ms` is what it gives at most.

    `spare` are the sentences that it would drop: they are shown and never deleted. `says` is the interface's text,
    whose fields `values` fill.
    """

    kind: Literal["swap", "pace", "sentences", "rest"]
    says: str
    gives_ms: int
    spare: tuple[tuple[str, Spare], ...] = ()
    enough: bool = False
    values: Mapping[str, str] = field(default_factory=dict)

    @property
    def text(self) -> str:
        """What can be done, in English."""
        return self.says.format(**self.values)


@dataclass(frozen=True, slots=True)
class Rest:
    """What a reader says aloud in the session, and the rest that they should have. `pauses` names the items after
    which at least `rest_ms` is due, though the running order does not give it."""

    reader: str
    spoken_ms: int
    longest_ms: int
    rest_ms: int
    given_ms: int
    due_after: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Return:
    """What one person hears: all feeds but their own voice. Opens and closes at offsets from the session's start."""

    item: str
    person: str
    feeds: tuple[str, ...]
    open_ms: int | None
    close_ms: int | None


@dataclass(frozen=True, slots=True)
class SessionLimits:
    """Figures of `data/session.toml`, each with its source."""

    standby_s: Sourced
    pace_change: Sourced
    chance_wanted: Sourced
    speak_most_s: Sourced
    rest_least_s: Sourced
    rest_per_hour_s: Sourced


@dataclass(frozen=True, slots=True)
class Session:
    """The planned session. `end_ms` is the planned end and `hard_end_ms` the one to hold, both from the start.

    `end_low_ms` to `end_high_ms` holds 80 % of sessions. `chance` is that of ending in time, None without an end.
    `origin` is the start by the clock, aware; None where the file gives neither start nor end. `now_ms` is set where
    the rest was timed again.
    """

    order: RunningOrder
    items: tuple[PlannedItem, ...]
    end_ms: int
    end_low_ms: int
    end_high_ms: int
    hard_end_ms: int | None = None
    chance: float | None = None
    origin: datetime | None = None
    now_ms: int | None = None
    findings: tuple[SessionFinding, ...] = ()
    repairs: tuple[Repair, ...] = ()
    rests: tuple[Rest, ...] = ()
    returns: tuple[Return, ...] = ()

    @property
    def over_ms(self) -> int | None:
        return None if self.hard_end_ms is None else self.end_ms - self.hard_end_ms
