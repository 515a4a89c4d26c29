"""Captions from planned or real times: lines at groups of sense, each caption on while it is said."""

from __future__ import annotations

import unicodedata
from bisect import bisect_left
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from promptprep.model.language import LanguageData
from promptprep.model.script import Paragraph, Script
from promptprep.model.timing import FIXED_PAUSES, BlockTiming, ScriptTiming
from promptprep.rendering.printing import PaperTools
from promptprep.spans import Span

Retime = Callable[[float], float]  # seconds of the plan to seconds of the recording
_TRIES = 8


@dataclass(frozen=True, slots=True)
class CaptionLimits:
    """A language's limits (table `captions`): lines a caption, characters a line and a second, seconds on screen and
    between captions. `general` ones are those of no language in particular."""

    lines: int
    line_characters: int
    characters_per_s: float
    least_s: float
    most_s: float
    gap_s: float
    general: bool = False


GENERAL = CaptionLimits(2, 37, 17.0, 1.0, 7.0, 0.08, general=True)  # common practice, no source


@dataclass(frozen=True, slots=True)
class Caption:
    """One caption: its lines, and from when to when it is on. `fast` ones cannot be read at the language's speed."""

    start_ms: int
    end_ms: int
    lines: tuple[str, ...]
    fast: bool = False


@dataclass(frozen=True, slots=True)
class _Timed:
    """A line, or a few, with when it is said. `closes` says that nothing may join it."""

    lines: tuple[str, ...]
    start_s: float
    end_s: float
    closes: bool


def caption_limits(data: LanguageData) -> CaptionLimits:
    """The limits of a language; for one without a table general ones, which say so."""
    if not data.has("captions"):
        return GENERAL
    names = ("lines", "line_characters", "characters_per_s", "least_s", "most_s", "gap_s")
    return CaptionLimits(*(data.get("captions", name) for name in names))


def captions_of(
    script: Script, timing: ScriptTiming, tools: PaperTools, limits: CaptionLimits, retime: Retime | None = None
) -> list[Caption]:
    """The captions of all that is said. `retime` leads from the plan to a take. Linear in the script's length."""
    moved = retime or (lambda seconds: seconds)
    lines: list[_Timed] = []
    for segment, timed in zip(script.segments, timing.segments, strict=True):
        times = {block.block: block for block in timed.blocks}
        for b, block in enumerate(segment.blocks):
            if isinstance(block, Paragraph) and b in times and times[b].words:
                lines += _paragraph(block, times[b], tools, limits)
    placed = [replace(line, start_s=moved(line.start_s), end_s=moved(line.end_s)) for line in lines]
    return _shown(list(_grouped(placed, limits)), limits)


def count(text: str) -> int:
    """Characters that take room of their own: marks that stand on others do not."""
    return sum(unicodedata.category(c) not in ("Mn", "Me", "Cf") for c in text)


# -- lines --------------------------------------------------------------------------------------------------


def _paragraph(block: Paragraph, timed: BlockTiming, tools: PaperTools, limits: CaptionLimits) -> Iterator[_Timed]:
    starts = [w.span.start for w in timed.words]
    for chunk in _chunks(block, timed, tools.sentences(block.text)):
        spans = _lines(chunk.of(block.text), tools, limits)
        for n, inner in enumerate(spans):
            span = inner.shifted(chunk.start)
            first, last = bisect_left(starts, span.start), bisect_left(starts, span.end)
            if first == last:
                first = max(0, min(first, len(starts)) - 1)
                last = first + 1
            text = " ".join(span.of(block.text).split())
            yield _Timed((text,), timed.words[first].start_s, timed.words[last - 1].end_s, n == len(spans) - 1)


def _chunks(block: Paragraph, timed: BlockTiming, sentences: Sequence[int]) -> list[Span]:
    """The paragraph's sentences, parted also where a silence by cue, a clip or a live part stands."""
    cuts = {p.offset for p in timed.pauses if p.kind in FIXED_PAUSES} | set(sentences)
    edges = sorted({0, len(block.text), *(c for c in cuts if 0 < c < len(block.text))})
    return [span for a, b in pairwise(edges) if (span := Span(a, b)).of(block.text).strip()]


def _lines(text: str, tools: PaperTools, limits: CaptionLimits) -> list[Span]:
    """Lines of at most so many characters: the measure is in em, so it is drawn in until all lines keep to it."""
    whole_em = tools.measure.widths_em([text], False)[0]
    width_em = whole_em / max(1, count(text)) * limits.line_characters * 1.1
    spans: list[Span] = []
    for _ in range(_TRIES):
        spans = list(tools.breaker(text, max(width_em, 0.5)))
        if all(count(span.of(text)) <= limits.line_characters for span in spans):
            return spans
        width_em *= 0.93
    return [part for span in spans for part in _cut(text, span, limits.line_characters)]


def _cut(text: str, span: Span, most: int) -> Iterator[Span]:
    """A line that is still too long, at its last blank that fits; a word longer than a line stands alone."""
    start = span.start
    while count(text[start : span.end]) > most:
        blanks = [i for i in range(start + 1, span.end) if text[i].isspace()]
        fitting = [i for i in blanks if count(text[start:i]) <= most] or blanks[:1]
        if not fitting:
            break
        yield Span(start, fitting[-1])
        start = fitting[-1] + 1
    yield Span(start, span.end)


# -- captions -----------------------------------------------------------------------------------------------


def _grouped(lines: Sequence[_Timed], limits: CaptionLimits) -> Iterator[_Timed]:
    """Lines of one sentence together, as many as a caption holds and not longer on than it may be."""
    group: list[_Timed] = []
    for line in lines:
        if group and (len(group) == limits.lines or line.end_s - group[0].start_s > limits.most_s):
            yield _joined(group)
            group = []
        group.append(line)
        if line.closes:
            yield _joined(group)
            group = []
    if group:
        yield _joined(group)


def _joined(group: Sequence[_Timed]) -> _Timed:
    lines = tuple(text for line in group for text in line.lines)
    return _Timed(lines, group[0].start_s, group[-1].end_s, group[-1].closes)


def _shown(groups: Sequence[_Timed], limits: CaptionLimits) -> list[Caption]:
    """When each is on: as long as reading it takes, but never into the next one. Starts do not go back."""
    found: list[Caption] = []
    start_ms = 0
    for n, group in enumerate(groups):
        start_ms = max(start_ms, round(group.start_s * 1000))
        characters = count(" ".join(group.lines))
        wanted = max(round(group.end_s * 1000), start_ms + round(limits.least_s * 1000),
                     start_ms + round(characters / limits.characters_per_s * 1000))  # fmt: skip
        if n + 1 < len(groups):
            wanted = min(wanted, round((groups[n + 1].start_s - limits.gap_s) * 1000))
        end_ms = max(wanted, start_ms + 1)
        fast = characters > (end_ms - start_ms) / 1000 * limits.characters_per_s + 0.5
        found.append(Caption(start_ms, end_ms, group.lines, fast))
        start_ms = end_ms
    return found
