"""The copy of one paragraph on paper: its lines, with what stands above, in and beside them."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import accumulate, groupby

from promptprep.breaking.pieces import squeezed
from promptprep.model.script import Cue, Paragraph
from promptprep.model.timing import BlockTiming
from promptprep.rendering.page_items import Entry, Row
from promptprep.rendering.printing import PaperTools
from promptprep.rendering.sheets import Sheet
from promptprep.spans import Span
from promptprep.units import MM_PER_PT

LONG_PAUSE_S = 0.45  # two strokes from here: between the pauses at commas and at sentences that the paces have
MOST_LANE = 0.55  # of a page's height, for the cues of one line
MARKED_PAUSES = ("list", "comma", "colon", "dash", "bracket", "sentence", "breath")


@dataclass(frozen=True, slots=True)
class RunView:
    text: str
    stress: bool


@dataclass(frozen=True, slots=True)
class Mark:
    """Something drawn at `x_pt` from the line's start: a cue's point, a breath, or a pronunciation's `text`."""

    kind: str
    x_pt: float
    text: str = ""
    tier: int = 0


class Copy:
    """One paragraph, ready to be asked for lines again and again. `said` are the indices of the runs whose
    pronunciation is shown; `entries_at_start` stand beside its first line."""

    def __init__(
        self,
        paragraph: Paragraph,
        said: frozenset[int],
        entries_at_start: Sequence[Entry],
        cue_entry: Callable[[Cue], Entry],
        timed: BlockTiming | None,
        sheet: Sheet,
        tools: PaperTools,
    ) -> None:
        self.text = paragraph.text
        self.runs = paragraph.runs
        self.run_ends = list(accumulate(len(run.text) for run in paragraph.runs))
        self.said = said
        self.entries_at_start = tuple(entries_at_start)
        self.cues = sorted(paragraph.cues, key=lambda inline: inline.offset)
        self.cue_offsets = [inline.offset for inline in self.cues]
        self.cue_entry = cue_entry
        marked = [pause for pause in timed.pauses if pause.kind in MARKED_PAUSES] if timed else []
        self.pauses = sorted(marked, key=lambda pause: pause.offset)
        self.sheet = sheet
        self.tools = tools
        self.first = len(self.text) - len(self.text.lstrip())
        self.stress = [
            Span(end - len(run.text), end) for run, end in zip(self.runs, self.run_ends, strict=True) if run.stress
        ]

    def rows(self, start: int, end: int) -> list[Row]:
        """The lines of a part of the text, measured."""
        low = bisect_left(self.cue_offsets, start) if start > self.first else 0
        high = bisect_left(self.cue_offsets, end) if end < len(self.text) else len(self.cues)
        spans = self._broken(start, end)
        rows = []
        for span in spans:
            stop = high if span is spans[-1] else bisect_left(self.cue_offsets, span.end, low)
            rows.append(self._row(span, low, stop))
            low = stop
        return rows

    def _broken(self, start: int, end: int) -> list[Span]:
        start += len(self.text[start:end]) - len(self.text[start:end].lstrip())
        end = start + len(self.text[start:end].rstrip())
        stress = [Span(max(s.start, start) - start, min(s.end, end) - start) for s in self._stress_between(start, end)]
        return [s.shifted(start) for s in self.tools.breaker(self.text[start:end], self.sheet.copy_em, stress)]

    def _stress_between(self, start: int, end: int) -> list[Span]:
        low = bisect_right(self.stress, start, key=lambda s: s.end)
        high = bisect_left(self.stress, end, key=lambda s: s.start)
        return self.stress[low:high]

    def _row(self, span: Span, low: int, high: int) -> Row:
        entries = list(self.entries_at_start) if span.start <= self.first else []
        entries += [self.cue_entry(inline.cue) for inline in self.cues[low:high]]
        entries = self._fitting(entries)
        tiers = max([mark.tier + 1 for mark in self.says(span)], default=0)
        lead = tiers * self.sheet.small_line_pt
        return Row(self.sheet.line_pt + lead, tuple(entries), span, lead)

    def _fitting(self, entries: list[Entry]) -> list[Entry]:
        """What one line's lane bears: of very many cues the first, and an ellipsis. The crew sheet has them all."""
        room = MOST_LANE * self.sheet.body_pt
        heights = list(accumulate(entry.height_pt for entry in entries))
        fit = bisect_right(heights, room)
        return entries if fit == len(entries) else [*entries[:fit], Entry("cue", ("…",), self.sheet.small_line_pt)]

    # -- what is drawn ----------------------------------------------------------------------------------------

    def views(self, span: Span) -> list[RunView]:
        """The runs of one line, blanks in it as one space each, as lines are measured."""
        runs = self._runs(span)
        return [RunView(squeezed(self.text[low:high]), self.runs[index].stress) for index, low, high in runs]

    def _runs(self, span: Span) -> list[tuple[int, int, int]]:
        """(index, start, end) of the runs in a line."""
        found = []
        index = bisect_right(self.run_ends, span.start)
        while index < len(self.runs) and self.run_ends[index] - len(self.runs[index].text) < span.end:
            low = max(span.start, self.run_ends[index] - len(self.runs[index].text))
            found.append((index, low, min(span.end, self.run_ends[index])))
            index += 1
        return found

    def x_pt(self, span: Span, offset: int) -> float:
        """How far from its start a line has come at `offset`. Runs of one weight are set, and kerned, as one text."""
        wide = 0.0
        runs = self._runs(Span(span.start, max(span.start, offset)))
        for bold, same in groupby(runs, key=lambda run: self.runs[run[0]].stress and self.tools.bold):
            parts = [self.text[low:high] for _, low, high in same]
            wide += self.tools.measure.width_pt(squeezed("".join(parts)), self.sheet.font_pt, bold=bold)
        return wide

    def says(self, span: Span) -> list[Mark]:
        """Pronunciations above their words; one that would touch the one before stands a tier higher."""
        found: list[Mark] = []
        room = self.sheet.copy_em * self.sheet.font_pt
        ends, size = [0.0], self.sheet.small_pt
        for index, low, _ in self._runs(span):
            text = self.runs[index].say
            begins = self.run_ends[index] - len(self.runs[index].text)
            if text is None or index not in self.said or low != begins:
                continue
            text = self.tools.measure.shortened(text, room * MM_PER_PT, size)
            wide = self.tools.measure.width_pt(text, size)
            x = max(0.0, min(self.x_pt(span, low), room - wide))
            tier = next((n for n, end in enumerate(ends) if x >= end), len(ends))
            ends[tier : tier + 1] = [x + wide + size / 2]
            found.append(Mark("say", x, text, tier))
        return found

    def points(self, span: Span, *, breaths: bool) -> list[Mark]:
        """Where cues fall inside a line, and where pauses are planned."""
        low, high = bisect_right(self.cue_offsets, span.start), bisect_left(self.cue_offsets, span.end)
        found = [Mark("point", self.x_pt(span, offset)) for offset in sorted(set(self.cue_offsets[low:high]))]
        return found + (self._breaths(span) if breaths else [])

    def _breaths(self, span: Span) -> list[Mark]:
        low = bisect_right(self.pauses, span.start, key=lambda pause: pause.offset)
        high = bisect_right(self.pauses, span.end + 1, key=lambda pause: pause.offset)
        longest: dict[int, float] = {}
        for pause in self.pauses[low:high]:
            at = len(self.text[span.start : min(pause.offset, span.end)].rstrip()) + span.start
            longest[at] = max(longest.get(at, 0.0), pause.end_s - pause.start_s)
        return [Mark("long" if s >= LONG_PAUSE_S else "short", self.x_pt(span, at)) for at, s in longest.items()]
