"""One show in several languages: what was paired, what fits, and what differs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from promptprep.model.finding import Level
from promptprep.model.script import Script
from promptprep.model.timing import ScriptTiming, Timing
from promptprep.spans import Span

FigureKind = Literal["number", "quantity", "clock", "date", "weekday", "month", "ordinal"]
PairedBy = Literal["id", "order", "nothing"]


@dataclass(frozen=True, slots=True)
class Figure:
    """A value in a text, whatever it is written with. `span` is its place in the paragraph's text.

    `keys` are the values it may stand for ("n:504", "t:1300" minutes of the day, "d:12-14", "w:4"); two figures
    agree where they share one. `unit` is a code ("km", "EUR", "%"), "" where none is known. A figure that is `firm`
    is written in digits; number words are looser: languages use them in turns of phrase.
    """

    kind: FigureKind
    span: Span
    text: str
    keys: frozenset[str]
    unit: str = ""
    firm: bool = True
    counted: bool = True


@dataclass(frozen=True, slots=True)
class Name:
    """A proper name's word in a text. `certain` where it must come through: a person's, or one in no word list.

    `whole` is the name that it is a word of ("Amina Osei").
    """

    text: str
    span: Span
    certain: bool = False
    whole: str = ""


@dataclass(frozen=True, slots=True)
class SegmentPair:
    """Indices of two segments that say the same; None where one has no partner."""

    source: int | None
    target: int | None
    by: PairedBy = "id"


@dataclass(frozen=True, slots=True)
class Bead:
    """Passages that say the same: indices of source and of target units (0 to 3 of each)."""

    source: tuple[int, ...]
    target: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class WordChange:
    """Words of the source that were changed: `gone` became `new`, between words that stayed ("" at an end)."""

    before: str
    gone: str
    new: str
    after: str


@dataclass(frozen=True, slots=True)
class VersionFinding:
    """A fault in a version. `start` and `end` are offsets in the source text of the file of `language`.

    `changes` are the changed words of the source, where the fault is that it was changed; `about` is what of the
    source it is about (a figure, a name, a cue): the same in all versions that have the same fault.
    """

    name: str
    level: Level
    language: str
    segment: str
    start: int
    end: int
    message: str
    hint: str = ""
    changes: tuple[WordChange, ...] = ()
    about: str = ""


@dataclass(frozen=True, slots=True)
class Change:
    """What a length needs: words and seconds to take out (positive) or to add (negative), or per cent of pace.

    `faster_percent` is how much faster the spoken part would have to be read; None where no pace would do.
    """

    seconds: float
    words: int
    faster_percent: float | None


@dataclass(frozen=True, slots=True)
class ReaderFit:
    """How long a reader of the studio would take. `own` says whether their pace in this language was learned."""

    reader: str
    mean_s: float
    low_s: float
    high_s: float
    fits: bool
    own: bool


@dataclass(frozen=True, slots=True)
class VersionSegment:
    """One segment of a version with its time against the slot that it shares (None: no slot)."""

    id: str
    title: str
    timing: Timing
    slot_s: float | None
    change: Change | None
    source: int | None


@dataclass(frozen=True, slots=True)
class Version:
    """One language's version with everything that was found in it. `pairs` pair its segments with the source's."""

    script: Script
    timing: ScriptTiming
    slot_s: float | None
    change: Change | None
    segments: tuple[VersionSegment, ...]
    readers: tuple[ReaderFit, ...] = ()
    pairs: tuple[SegmentPair, ...] = ()
    findings: tuple[VersionFinding, ...] = ()
    beads: Mapping[int, tuple[Bead, ...]] | None = None
    direction: str = "ltr"

    @property
    def language(self) -> str:
        return self.script.language


@dataclass(frozen=True, slots=True)
class Expected:
    """How long a version in a language that has none yet may run: expected seconds, the range, where it is from."""

    language: str
    mean_s: float
    low_s: float
    high_s: float
    slot_s: float | None
    basis: str


@dataclass(frozen=True, slots=True)
class Unread:
    """A version's file that cannot be read, and why: the rest is compared without it."""

    file: str
    code: str
    message: str
    hint: str
    line: int = 1
    column: int = 1


@dataclass(frozen=True, slots=True)
class Versions:
    """All versions of one show; the first is the source, of which the others are made."""

    source: Version
    others: tuple[Version, ...]
    expected: tuple[Expected, ...] = ()
    unread: tuple[Unread, ...] = ()

    @property
    def all(self) -> tuple[Version, ...]:
        return (self.source, *self.others)
