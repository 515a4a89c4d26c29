"""What the page on the glass shows, where and when: one plan for the page, its stills, its PDF and its movie."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from promptprep.model.lines import Line, LineRun
from promptprep.model.prepared import PreparedScript
from promptprep.model.script import CueLine, Note, Paragraph, Segment
from promptprep.model.session import NumberedCue
from promptprep.model.timing import FIXED_PAUSES, SegmentTiming, TimedPause, TimedWord
from promptprep.rendering.commas import after_comma
from promptprep.rendering.screen_travel import Travel, travel
from promptprep.rendering.screenfuls import Screenful, screenfuls
from promptprep.session.cue_points import numbered_cues
from promptprep.sightline.layout import clamped, margin_px

CARD_FROM_S = 1.5  # shorter waits get no card


@dataclass(frozen=True, slots=True)
class Frame:
    """Where things stand on the rig's picture, in its pixels. `lens_y_px` is moved in where the lens is outside."""

    width_px: int
    height_px: int
    left_px: int
    column_px: int
    font_px: float
    line_px: int
    lens_x_px: float
    lens_y_px: int
    margin_px: int
    cap_px: float


@dataclass(frozen=True, slots=True)
class Placed:
    """A line with the top of its box on the strip; `gap` names the space before it, `room` its space for sayings."""

    line: Line
    runs: tuple[LineRun, ...]
    top_px: int
    gap: str
    room: bool


@dataclass(frozen=True, slots=True)
class Wait:
    """A clip, a live part or a pause by cue. `names`, `sayings` and `notes` fill the guest card of a live part."""

    kind: str
    at_s: float
    end_s: float
    segment: int
    text: str
    names: tuple[str, ...] = ()
    sayings: tuple[tuple[str, str], ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ScreenPlan:
    """Everything that the templates and the movie need. Heights of the strip start at 0 with the first line's top."""

    frame: Frame
    lines: tuple[Placed, ...]
    travel: Travel
    screenfuls: tuple[Screenful, ...]
    waits: tuple[Wait, ...]
    cues: tuple[NumberedCue, ...]
    gaps_px: Mapping[str, int]
    end_s: float

    @property
    def centres_px(self) -> list[float]:
        return [placed.top_px + self.frame.line_px / 2 for placed in self.lines]


def screen_plan(prepared: PreparedScript) -> ScreenPlan:
    """Places the planned lines, plans the travel, cuts the screenfuls. Nothing is broken or timed again here."""
    frame = frame_of(prepared)
    gaps = {
        "paragraph": round(frame.line_px * 0.5),
        "segment": frame.line_px,
        "room": round(frame.font_px * 0.34),
    }
    lines = _placed(prepared.broken.lines, frame.line_px, gaps)
    centres = [placed.top_px + frame.line_px / 2 for placed in lines]
    index = WordIndex(prepared.timing.segments)
    words = [index.words(line) for line in prepared.broken.lines]
    waits = tuple(_waits(prepared))
    tops = [placed.top_px for placed in lines]
    parts = [wait.end_s for wait in waits if wait.kind == "live"]
    ends = [prepared.timing.timing.mean_s, *(line.end_s for line in prepared.broken.lines[-1:])]
    return ScreenPlan(
        frame,
        lines,
        travel(prepared.broken.lines, centres, words),
        screenfuls(prepared.broken.lines, tops, frame.line_px, _page_px(frame), parts),
        waits,
        numbered_cues(prepared.script, prepared.timing),
        gaps,
        max(ends),
    )


def frame_of(prepared: PreparedScript) -> Frame:
    """The frame of the rig's picture with the planned column: its middle on the lens, moved in to fit."""
    rig, column = prepared.rig, prepared.broken.column
    widest = max((line.width_em for line in prepared.broken.lines), default=0.0) * column.font_px
    width = min(math.ceil(max(column.width_px, widest)), rig.width_px)
    line_px = max(round(column.line_px), 1)
    margin = margin_px(rig)
    lens_x, lens_y = rig.lens_x * rig.width_px, rig.lens_y * rig.height_px
    return Frame(
        rig.width_px,
        rig.height_px,
        round(clamped(lens_x - width / 2, margin, rig.width_px - margin - width)),
        width,
        column.font_px,
        line_px,
        lens_x,
        round(clamped(lens_y, margin + line_px / 2, rig.height_px - margin - line_px / 2)),
        margin,
        prepared.sightline.cap_height_mm / rig.px_mm if rig.px_mm > 0 else 0.0,
    )


def _page_px(frame: Frame) -> float:
    """Height for a screenful: what fits about the lens if that is most of the picture, else the whole picture."""
    room = frame.height_px - 2 * frame.margin_px
    about = 2 * min(frame.lens_y_px - frame.margin_px, frame.height_px - frame.margin_px - frame.lens_y_px)
    return max(about if about > 0.6 * room else room, frame.line_px)


def page_shift_px(frame: Frame, page: Screenful, tops_px: Sequence[int]) -> int:
    """What to add to heights of the strip so that the screenful stands about the lens and inside the picture."""
    top, bottom = tops_px[page.first], tops_px[page.last] + frame.line_px
    middle = clamped(
        frame.lens_y_px,
        frame.margin_px + (bottom - top) / 2,
        frame.height_px - frame.margin_px - (bottom - top) / 2,
    )
    return round(middle - page.centre_px)


def _placed(lines: Sequence[Line], line_px: int, gaps: Mapping[str, int]) -> tuple[Placed, ...]:
    placed: list[Placed] = []
    said: set[tuple[int, str, str]] = set()
    top = 0
    for i, line in enumerate(lines):
        gap = _gap(lines[i - 1], line) if i else ""
        runs = _said_once(line, said)
        room = any(run.say for run in runs)
        top += (line_px if i else 0) + gaps.get(gap, 0) + (gaps["room"] if room else 0)
        placed.append(Placed(line, runs, top, gap, room))
    return tuple(placed)


def _gap(before: Line, line: Line) -> str:
    if before.segment != line.segment:
        return "segment"
    return "paragraph" if before.block != line.block else ""


def _said_once(line: Line, said: set[tuple[int, str, str]]) -> tuple[LineRun, ...]:
    """The line's runs, each pronunciation only where it comes first in its segment."""
    runs: list[LineRun] = []
    for run in line.runs:
        key = (line.segment, run.text.strip(), run.say or "")
        seen = run.say is not None and key in said
        said.add(key)
        runs.append(LineRun(run.text, run.stress, None) if seen else run)
    return tuple(runs)


class WordIndex:
    """Finds the timed words of a line: one dictionary look-up and a bisection each."""

    def __init__(self, segments: Sequence[SegmentTiming]) -> None:
        self._blocks = {(s, b.block): b.words for s, segment in enumerate(segments) for b in segment.blocks}

    def words(self, line: Line) -> Sequence[TimedWord]:
        """Words that begin on the line, in order."""
        words = self._blocks.get((line.segment, line.block), ())
        first = bisect_left(words, line.span.start, key=lambda w: w.span.start)
        return words[first : bisect_left(words, line.span.end, key=lambda w: w.span.start)]


def _waits(prepared: PreparedScript) -> Iterator[Wait]:
    for s, (segment, timed) in enumerate(zip(prepared.script.segments, prepared.timing.segments, strict=True)):
        for block in timed.blocks:
            for pause in block.pauses:
                if pause.kind in FIXED_PAUSES and pause.end_s - pause.start_s >= CARD_FROM_S:
                    yield _wait(s, segment, block.block, pause)


def _wait(s: int, segment: Segment, block: int, pause: TimedPause) -> Wait:
    kind = "pause" if pause.kind == "cue" else pause.kind
    text = _cue_text(segment.blocks[block], kind, pause.offset)
    if kind != "live":
        return Wait(kind, pause.start_s, pause.end_s, s, text)
    return Wait(kind, pause.start_s, pause.end_s, s, text, _names(segment), _sayings(segment), _notes(segment))


def _cue_text(block: object, kind: str, offset: int) -> str:
    if isinstance(block, CueLine):
        return block.cue.text
    cues = block.cues if isinstance(block, Paragraph) else ()
    return next((c.cue.text for c in cues if c.offset == offset and c.cue.kind == kind), "")


def _names(segment: Segment) -> tuple[str, ...]:
    """Who the guest is: the wording of the segment's graphics that name somebody ("name strap, Dr ...")."""
    texts = (cue.text for cue in segment.cues if cue.kind == "graphic")
    return tuple(dict.fromkeys(who for text in texts if (who := after_comma(text))))


def _sayings(segment: Segment) -> tuple[tuple[str, str], ...]:
    pairs = (
        (span.of(paragraph.text).strip(), say) for paragraph in segment.paragraphs for span, say in paragraph.said()
    )
    return tuple(dict.fromkeys(pairs))


def _notes(segment: Segment) -> tuple[str, ...]:
    lines = (line.strip() for b in segment.blocks if isinstance(b, Note) for line in b.text.splitlines())
    return tuple(line for line in lines if line)
