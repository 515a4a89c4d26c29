"""Breaks a whole script once: the lines that screen copy, stills and report all show."""

from __future__ import annotations

import unicodedata
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from itertools import accumulate

from promptprep.breaking.paragraph import BrokenParagraph, break_paragraphs
from promptprep.breaking.pieces import squeezed
from promptprep.model.language import LanguageData
from promptprep.model.lines import BrokenScript, Column, Line, LineRun, TooWide
from promptprep.model.ports import Engines
from promptprep.model.script import Paragraph, Run, Script
from promptprep.model.timing import BlockTiming, ScriptTiming
from promptprep.spans import Span


def break_script(
    script: Script,
    timing: ScriptTiming,
    column: Column,
    data: LanguageData,
    engines: Engines,
    *,
    sentence_per_line: bool = False,
) -> BrokenScript:
    """All lines of a script in `column`, with the planned seconds at which each is read.

    Raises `BadGeometry` unless the column's width is positive and finite.
    """
    places = [
        (s, b, block)
        for s, segment in enumerate(script.segments)
        for b, block in enumerate(segment.blocks)
        if isinstance(block, Paragraph)
    ]
    broken = break_paragraphs(
        [paragraph.text for _, _, paragraph in places],
        column.width_em,
        data,
        engines,
        stress=[stress_of(paragraph) for _, _, paragraph in places],
        sentence_per_line=sentence_per_line,
    )
    times = {(s, own.block): own for s, segment in enumerate(timing.segments) for own in segment.blocks}
    lines: list[Line] = []
    too_wide: list[TooWide] = []
    at_s = 0.0
    for (s, b, paragraph), result in zip(places, broken, strict=True):
        own = list(_lines(paragraph, result, (s, b), times.get((s, b)), len(lines), at_s))
        at_s = own[-1].end_s if own else at_s
        lines += own
        too_wide += [TooWide(s, b, span, span.of(paragraph.text), width, column.width_em) for span, width in result.cut]
    text = "".join(paragraph.text for _, _, paragraph in places)
    return BrokenScript(
        language=script.language,
        direction=direction_of(text, data),
        column=column,
        lines=tuple(lines),
        missing=tuple(engines.shaper.missing(text, data.tag)),
        too_wide=tuple(too_wide),
    )


def stress_of(paragraph: Paragraph) -> list[Span]:
    """Stretches of the paragraph's text that are stressed, in order."""
    ends = list(accumulate(len(run.text) for run in paragraph.runs))
    return [
        Span(end - len(run.text), end) for run, end in zip(paragraph.runs, ends, strict=True) if run.stress and run.text
    ]


def _lines(
    paragraph: Paragraph,
    broken: BrokenParagraph,
    place: tuple[int, int],
    timing: BlockTiming | None,
    number: int,
    at_s: float,
) -> Iterator[Line]:
    times = line_times(broken.lines, timing, at_s)
    ends = list(accumulate(len(run.text) for run in paragraph.runs))
    for n, span in enumerate(broken.lines):
        last = n == len(broken.lines) - 1
        yield Line(
            number=number + n,
            segment=place[0],
            block=place[1],
            span=span,
            runs=tuple(line_runs(paragraph.runs, ends, span)),
            width_em=broken.widths_em[n],
            at_s=times[n][0],
            end_s=times[n][1],
            ends_sentence=last or broken.ends_sentence[n],
            ends_paragraph=last,
        )


def line_runs(runs: Sequence[Run], ends: Sequence[int], span: Span) -> Iterator[LineRun]:
    """The runs of one line; `ends` are where the paragraph's runs end in its text.

    A pronunciation stands with the part of its run on the line where the run begins.
    """
    for i in range(bisect_right(ends, span.start), len(runs)):
        run, start = runs[i], ends[i] - len(runs[i].text)
        if start >= span.end:
            break
        shown = run.text[max(span.start - start, 0) : span.end - start]
        if shown:
            said = run.say if start >= span.start else None
            yield LineRun(squeezed(shown), stress=run.stress, say=said)


def line_times(lines: Sequence[Span], timing: BlockTiming | None, at_s: float) -> list[tuple[float, float]]:
    """When each line's first word is said and its last word has been said.

    A word that two lines share counts for both. Lines without a word last no time.
    """
    if timing is None or not timing.words:
        start = timing.start_s if timing else at_s
        return [(start, start) for _ in lines]
    words = timing.words
    ends = [word.span.end for word in words]
    starts = [word.span.start for word in words]
    times: list[tuple[float, float]] = []
    now = words[0].start_s
    for span in lines:
        first, stop = bisect_left(ends, span.start + 1), bisect_left(starts, span.end)
        if first < stop:
            times.append((max(now, words[first].start_s), max(now, words[stop - 1].end_s)))
        else:
            times.append((now, now))
        now = times[-1][1]
    return times


def direction_of(text: str, data: LanguageData) -> str:
    """As the language's data say, "rtl" or "ltr"; else by the first strong character (UAX 9, P2 and P3)."""
    known = data.maybe("fonts", "direction")
    if known:
        return str(known)
    for char in text:
        kind = unicodedata.bidirectional(char)
        if kind in ("L", "R", "AL"):
            return "ltr" if kind == "L" else "rtl"
    return "ltr"
