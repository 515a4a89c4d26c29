"""What a printed script consists of, in its order: titles, copy, cues in the lane, holds and notes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

from promptprep.model.prepared import PreparedScript
from promptprep.model.script import TIMED_KINDS, Cue, CueLine, Note, Paragraph, Segment
from promptprep.model.timing import BlockTiming, SegmentTiming
from promptprep.rendering.direction import in_order, isolated
from promptprep.rendering.page_items import Entry, Item, Row
from promptprep.rendering.paper_copy import Copy
from promptprep.rendering.printing import PaperTools
from promptprep.rendering.sheets import MIDDLE_EM, Sheet
from promptprep.session.cue_points import numbered_cues
from promptprep.units import MM_PER_PT, clock_text

LANE_PAD_MM = 6.0  # bar, its gap, and the distance to the copy
ENTRY_GAP_PT = 3.0
NOTE_PT = 12.0  # UKAAF G003 (2019): no less than 12 points
NOTE_LINE_PT = 16.0
NOTE_PAD_PT = 8.0
NOTE_PAD_MM = 4.0
TITLE_PT = 20.0
TITLE_LINE_PT = 26.0
SUM_PT = 12.0
SUM_LINE_PT = 18.0
PARAGRAPH_GAP_PT = 12.0
SEGMENT_GAP_PT = 20.0
RULE_PT = 4.0
BOX_PT, BOX_MM = 32.0, 36.0  # a box to write a time into, and its distance from the words
LEAST_LABEL_MM = 8.0
MOST_ENTRY_LINES = 12  # the rest of a very long cue is on the crew sheet
MOST_TITLE_LINES = 4
TITLE_SHARE = 0.25  # of a page's height, for a title
SHARE = 0.4  # cues, notes and holds that are higher than this part of a page are put in several


Variant = Literal["paper", "rehearsal", "cards", "low-ink"]
"""How a script is printed: for reading; with line numbers, breaths, difficulty and boxes; on cards; with little ink."""


class Items:
    """Makes the items of one script. `beside` is its version in a helper language, whose ids are the same."""

    def __init__(
        self,
        one: PreparedScript,
        sheet: Sheet,
        tools: PaperTools,
        variant: Variant,
        beside: PreparedScript | None,
        studio_title: str = "",
    ) -> None:
        self.one, self.sheet, self.tools, self.variant, self.studio_title = one, sheet, tools, variant, studio_title
        self.total_s = one.timing.timing.mean_s
        self.times: dict[tuple[int, int], BlockTiming] = {
            (number, block.block): block for number, s in enumerate(one.timing.segments) for block in s.blocks
        }
        numbers = numbered_cues(one.script, one.timing)
        self.numbers = {action.span: cue.label for cue in numbers for action in cue.actions}
        self.first_actions = {cue.actions[0].span for cue in numbers}
        self.helper = {segment.id: segment for segment in beside.script.segments} if beside else {}
        self.copies: dict[tuple[int, int], Copy] = {}

    def all(self) -> Iterator[Item]:
        yield self._title()
        yield self._sum()
        if self.variant == "rehearsal":
            yield self._whole_box()
        for number, segment in enumerate(self.one.script.segments):
            if segment.title:
                yield self._heading(number, segment, self.one.timing.segments[number])
            yield from self._segment(number, segment)

    # -- titles -----------------------------------------------------------------------------------------------

    def _title(self) -> Item:
        title = self.one.script.title or self.one.script.name
        lines = self._titled(title, TITLE_PT)
        return Item("title", title, (0, -1), Row(len(lines) * TITLE_LINE_PT), lines=tuple(lines))

    def _sum(self) -> Item:
        """Slot, running time with its range, and the studio, below the title; in several lines where one is short."""
        timing, words = self.one.timing.timing, self.tools.words
        slot = "" if self.one.timing.slot_s is None else words("slot") + " " + clock_text(self.one.timing.slot_s)
        about = words("about {time}").replace("{time}", clock_text(timing.mean_s))
        time = f"{about} ({clock_text(timing.low_s)}–{clock_text(timing.high_s)})"
        studio = isolated(self.studio_title, self.one.direction)
        lines: list[str] = []
        for part in (part for part in (slot, time, studio) if part):
            longer = f"{lines[-1]} · {part}" if lines else part
            if lines and self.tools.measure.width_pt(longer, SUM_PT) * MM_PER_PT <= self.sheet.copy_mm:
                lines[-1] = longer
            else:
                lines.append(self.tools.measure.shortened(part, self.sheet.copy_mm, SUM_PT))
        return Item("sum", "\n".join(lines), (0, -1), Row(len(lines) * SUM_LINE_PT), lines=tuple(lines))

    def _heading(self, number: int, segment: Segment, timed: SegmentTiming) -> Item:
        lines = self._titled(segment.title, self.sheet.font_pt)
        time = clock_text(timed.timing.mean_s)
        if timed.slot_s is not None:
            time = f"{time} / {clock_text(timed.slot_s)}"
        height = len(lines) * self.sheet.line_pt + RULE_PT
        box = self._box(f"#{segment.id}", segment.fixed_s) if self.variant == "rehearsal" else ()
        if box:
            height += BOX_PT
        row = Row(height, (Entry("length", (time,), self.sheet.small_line_pt),), clear=True)
        return Item("heading", segment.title, (number, -1), row, gap_pt=SEGMENT_GAP_PT, lines=tuple(lines), box=box)

    def _whole_box(self) -> Item:
        """A box for the whole script, and how what is written into the boxes is typed in."""
        script = self.one.script
        file = (script.file or f"{script.name}.{script.language}.md").replace("\\", "/").rsplit("/", 1)[-1]
        typed = f"promptprep learn {file}#{script.segments[0].id}=0:42" if script.segments else ""
        typed = self.tools.measure.shortened(typed, self.sheet.copy_mm, self.sheet.small_pt)
        box = self._box(file, script.fixed_s)
        height = BOX_PT + self.sheet.small_line_pt
        return Item("box", typed, (0, -1), Row(height), gap_pt=ENTRY_GAP_PT, lines=(typed,), box=box)

    def _box(self, handle: str, fixed_s: float) -> tuple[str, ...]:
        """What stands before a box to write a time into: what the time is of, as `promptprep learn` takes it."""
        words, room, size = self.tools.words, self.sheet.copy_mm - BOX_MM, self.sheet.small_pt
        measure, handle = self.tools.measure, f" · {in_order(handle, self.one.direction)} ="
        left = max(LEAST_LABEL_MM, room - measure.width_pt(handle, size) * MM_PER_PT)
        lines = [measure.shortened(measure.shortened(words("time by hand"), left, size) + handle, room, size)]
        if fixed_s > 0:
            fixed = words("with {time} of clips, pauses and live parts").replace("{time}", clock_text(fixed_s))
            lines.append(measure.shortened(fixed, room, size))
        return tuple(lines)

    def _titled(self, text: str, font_pt: float) -> list[str]:
        lines = self.tools.measure.wrapped(text, self.sheet.copy_mm, font_pt, bold=self.tools.bold)
        most = min(MOST_TITLE_LINES, max(1, int(TITLE_SHARE * self.sheet.body_pt / self.sheet.line_pt)))
        return lines if len(lines) <= most else [*lines[:most], "…"]

    # -- blocks -----------------------------------------------------------------------------------------------

    def _segment(self, number: int, segment: Segment) -> Iterator[Item]:
        waiting: list[Entry] = []  # cues for positions stand beside the copy that follows them
        holding: list[Entry] = []  # cues that take time stop the copy
        place = (number, 0)
        shown = _first_said(segment)
        for index, block in enumerate(segment.blocks):
            place = (number, index)
            if isinstance(block, CueLine):
                if block.cue.kind in TIMED_KINDS:
                    holding = [*waiting, *holding] if not holding else [*holding, *waiting]
                    waiting = []
                    holding.append(self._cue_entry(block.cue))
                elif holding:
                    holding.append(self._cue_entry(block.cue))
                else:
                    waiting.append(self._cue_entry(block.cue))
                continue
            yield from self._holds(holding, place)
            holding = []
            if isinstance(block, Note):
                yield from self._cues(waiting, place)
                waiting = []
                yield from self._notes(block, place)
            elif isinstance(block, Paragraph) and block.text.strip():
                *before, last = self._shares(waiting) or [()]
                yield from self._cues([entry for share in before for entry in share], place)
                yield self._copy(block, place, last, shown.get(index, frozenset()))
                waiting = []
                yield from self._beside(segment, place)
        yield from self._holds(holding, place)
        yield from self._cues(waiting, place)

    def _copy(self, block: Paragraph, key: tuple[int, int], waiting: Sequence[Entry], said: frozenset[int]) -> Item:
        entries = [self._time_entry(key), *waiting]
        copy = Copy(block, said, entries, self._cue_entry, self.times.get(key), self.sheet, self.tools)
        self.copies[key] = copy
        ends = tuple(self.tools.sentences(block.text))
        if not ends or ends[-1] < len(block.text):
            ends = (*ends, len(block.text))
        return Item("copy", block.text, key, sentences=ends, gap_pt=PARAGRAPH_GAP_PT)

    def _holds(self, entries: Sequence[Entry], key: tuple[int, int]) -> Iterator[Item]:
        """A stop in the copy, as high as its cues' texts."""
        for some in self._shares(entries):
            height = max(sum(entry.height_pt for entry in some), self.sheet.line_pt)
            yield Item("hold", "", key, Row(height, some, clear=True), gap_pt=PARAGRAPH_GAP_PT)

    def _shares(self, entries: Sequence[Entry]) -> list[tuple[Entry, ...]]:
        """Entries in groups, none higher than its share of a page unless it is a single one."""
        groups: list[list[Entry]] = []
        for entry in entries:
            if not groups or sum(e.height_pt for e in (*groups[-1], entry)) > SHARE * self.sheet.body_pt:
                groups.append([])
            groups[-1].append(entry)
        return [tuple(group) for group in groups]

    def _cues(self, entries: Sequence[Entry], key: tuple[int, int]) -> Iterator[Item]:
        for entry in entries:
            yield Item("cues", "", key, Row(0.0, (entry,)))

    def _notes(self, note: Note, key: tuple[int, int]) -> Iterator[Item]:
        width = self.sheet.copy_mm - 2 * NOTE_PAD_MM - 1
        lines = [line for part in note.text.split("\n") for line in self.tools.sense_lines(part, width, NOTE_PT)]
        most = max(1, int((self.sheet.body_pt * SHARE - NOTE_PAD_PT) / NOTE_LINE_PT))
        for at in range(0, len(lines), most):
            some = tuple(lines[at : at + most])
            row = Row(len(some) * NOTE_LINE_PT + NOTE_PAD_PT)
            yield Item("note", "\n".join(some), key, row, gap_pt=PARAGRAPH_GAP_PT, lines=some)

    def _beside(self, segment: Segment, key: tuple[int, int]) -> Iterator[Item]:
        """The helper language's paragraph of the same place, in small type; nothing where paragraphs do not pair."""
        other = self.helper.get(segment.id)
        if other is None or len(other.paragraphs) != len(segment.paragraphs):
            return
        nth = sum(isinstance(before, Paragraph) for before in segment.blocks[: key[1]])
        text = other.paragraphs[nth].text
        lines = self.tools.measure.wrapped(text, self.sheet.copy_mm - 4, NOTE_PT)
        most = max(1, int(SHARE * self.sheet.body_pt / NOTE_LINE_PT))
        for at in range(0, len(lines), most):
            some = tuple(lines[at : at + most])
            yield Item("beside", "\n".join(some), key, Row(len(some) * NOTE_LINE_PT), gap_pt=4.0, lines=some)

    # -- the lane ---------------------------------------------------------------------------------------------

    def entry(self, kind: str, text: str, number: str = "") -> Entry:
        """A text of the lane, wrapped. What is longer than the lane bears ends in an ellipsis."""
        width = self.sheet.lane_mm - LANE_PAD_MM
        shown = f"{number} {text}" if number else text
        lines = self.tools.measure.wrapped(shown, width, self.sheet.small_pt)
        most = min(MOST_ENTRY_LINES, int(SHARE * self.sheet.body_pt / self.sheet.small_line_pt) - 1)
        if len(lines) > most:
            lines = [*lines[:most], "…"]
        if number:
            lines[0] = lines[0].removeprefix(number)
        return Entry(kind, tuple(lines), len(lines) * self.sheet.small_line_pt + ENTRY_GAP_PT, number)

    def _cue_entry(self, cue: Cue) -> Entry:
        kind = self.tools.words(cue.kind) if cue.known else cue.kind
        time = f" {clock_text(cue.duration_s)}" if cue.duration_s is not None else ""
        text = f"{kind}{time}: {isolated(cue.text, self.one.direction)}" if cue.text else f"{kind}{time}"
        number = self.numbers.get(cue.span)
        return self.entry("cue", text, str(number) if number and cue.span in self.first_actions else "")

    def _time_entry(self, key: tuple[int, int]) -> Entry:
        block = self.times.get(key)
        start_s = block.start_s if block else 0.0
        to_go = self.tools.words("{time} to go").replace("{time}", clock_text(self.total_s - start_s))
        parts = [f"{clock_text(start_s)} · {to_go}"]
        if len(self.entry("time", parts[0]).lines) > 1:
            parts = [clock_text(start_s), to_go]
        hard = self.one.difficulty.get(key)
        if self.variant == "rehearsal" and hard is not None:
            parts.append(self.tools.words("difficulty {n}").replace("{n}", f"{hard:.0f}"))
        lines = tuple(line for part in parts for line in self.entry("time", part).lines)
        return Entry("time", lines, len(lines) * self.sheet.small_line_pt + ENTRY_GAP_PT)


def lane_drop_pt(sheet: Sheet) -> float:
    """How far a lane line lies below the top of a line of copy so that both stand on one base line."""
    return (sheet.line_pt - sheet.small_line_pt) / 2 + (sheet.font_pt - sheet.small_pt) * MIDDLE_EM


def _first_said(segment: Segment) -> dict[int, frozenset[int]]:
    """For each paragraph the runs whose pronunciation is shown: the first of a word in its segment."""
    seen: set[str] = set()
    found: dict[int, set[int]] = {}
    for index, block in enumerate(segment.blocks):
        if not isinstance(block, Paragraph):
            continue
        for n, run in enumerate(block.runs):
            if run.say is not None and run.text not in seen:
                seen.add(run.text)
                found.setdefault(index, set()).add(n)
    return {index: frozenset(runs) for index, runs in found.items()}
