"""Planned times inside a segment: a clock that runs through words, pauses and cues."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from promptprep.model.language import LanguageData
from promptprep.model.ports import Engines
from promptprep.model.script import Cue, CueLine, InlineCue, Paragraph, Segment
from promptprep.model.spoken import Speak
from promptprep.model.timing import BlockTiming, PauseKind, TimedPause, TimedWord
from promptprep.spans import Span
from promptprep.timing.measure import Measured, measure

_FIXED_KINDS: Mapping[str, PauseKind] = {"pause": "cue", "clip": "clip", "live": "live"}


@dataclass(slots=True)
class Clock:
    """Seconds from the start of the script, and how many of them are fixed by cues."""

    now_s: float = 0.0
    fixed_s: float = 0.0


@dataclass(frozen=True, slots=True)
class SpokenBlock:
    """A paragraph that is said: its index in the segment, its weighed words, which of them are stressed."""

    block: int
    paragraph: Paragraph
    measured: Measured
    stressed: frozenset[int]


@dataclass(slots=True)
class _Track:
    """The words and pauses of one block as they come."""

    words: list[TimedWord] = field(default_factory=list)
    pauses: list[TimedPause] = field(default_factory=list)


def weighed_blocks(segment: Segment, data: LanguageData, engines: Engines, spoken: Speak) -> list[SpokenBlock]:
    """The segment's paragraphs with their words weighed. `spoken` gives a text's spoken form."""
    found = []
    for number, block in enumerate(segment.blocks):
        if isinstance(block, Paragraph):
            said = spoken(block.text, tuple(block.said()))
            measured = measure(said, data, engines)
            found.append(SpokenBlock(number, block, measured, _stressed(block, measured)))
    return found


def _stressed(paragraph: Paragraph, measured: Measured) -> frozenset[int]:
    """Numbers of the words that lie in a stressed run."""
    runs = [span for span, run in paragraph.placed() if run.stress]
    if not runs:
        return frozenset()
    found, current = set(), iter(runs)
    run_now: Span | None = next(current)
    for number, word in enumerate(measured.words):
        while run_now is not None and run_now.end <= word.span.start:
            run_now = next(current, None)
        if run_now is not None and word.span.start < run_now.end and run_now.start < word.span.end:
            found.add(number)
    return frozenset(found)


def run_blocks(
    segment: Segment,
    spoken: Sequence[SpokenBlock],
    coefficients: Mapping[str, float],
    unit: str,
    clock: Clock,
    *,
    last: bool,
) -> Iterator[BlockTiming]:
    """Lets the clock run through the segment's blocks; gives the times of each that takes any.

    After a paragraph comes its sentence's pause and a paragraph's; after the segment's last the segment's instead;
    after the script's last words (`last`) only a breath.
    """
    by_block = {b.block: b for b in spoken}
    sounding = [b.block for b in spoken if b.measured.words]
    final = sounding[-1] if sounding else -1
    for number, block in enumerate(segment.blocks):
        start_s, track = clock.now_s, _Track()
        if isinstance(block, CueLine):
            _run_cue(block.cue, 0, clock, track)
        elif number in by_block:
            said = by_block[number]
            _run_words(said, coefficients, unit, clock, track)
            if said.measured.words:
                _run_end(said, coefficients, clock, track, final=number == final, last=last)
        else:
            continue
        yield BlockTiming(number, start_s, clock.now_s, tuple(track.words), tuple(track.pauses))


def _run_words(block: SpokenBlock, coefficients: Mapping[str, float], unit: str, clock: Clock, track: _Track) -> None:
    get = coefficients.get
    unit_s, word_s, rare_s = get(unit, 0.0), get("word_s", 0.0), get("rare_s", 0.0)
    name_s, stress_s, breath_s = get("name_s", 0.0), get("stress_s", 0.0), get("breath_s", 0.0)
    after_s = {kind: get(f"{kind}_s", 0.0) for kind in ("list", "comma", "colon", "dash", "bracket", "sentence")}
    after_s["paragraph"] = after_s["sentence"] + get("paragraph_s", 0.0)
    cues = iter(block.paragraph.cues)
    cue = next(cues, None)
    measured = block.measured
    for number, (word, load, kind) in enumerate(zip(measured.words, measured.loads, measured.pauses, strict=True)):
        while cue is not None and cue.offset <= word.span.start:
            cue = _run_inline(cue, cues, clock, track)
        start_s = clock.now_s
        clock.now_s += load.units * unit_s + load.words * word_s + load.rarity * rare_s
        clock.now_s += (word.kind == "say") * name_s + (number in block.stressed) * stress_s
        track.words.append(TimedWord(word.span, start_s, clock.now_s))
        if kind is not None:
            _pause(kind, after_s[kind], word.span.end, clock, track)
        if number in measured.breaths:
            _pause("breath", measured.breaths[number] * breath_s, word.span.end, clock, track)
    while cue is not None:
        cue = _run_inline(cue, cues, clock, track)


def _run_inline(inline: InlineCue, cues: Iterator[InlineCue], clock: Clock, track: _Track) -> InlineCue | None:
    _run_cue(inline.cue, inline.offset, clock, track)
    return next(cues, None)


def _run_end(
    said: SpokenBlock, coefficients: Mapping[str, float], clock: Clock, track: _Track, *, final: bool, last: bool
) -> None:
    """The pause after a paragraph's last word."""
    get, offset = coefficients.get, len(said.paragraph.text)
    if final and last:
        _pause("breath", said.measured.end * get("end_s", 0.0), offset, clock, track)
        return
    _pause("sentence", get("sentence_s", 0.0), offset, clock, track)
    kind: PauseKind = "segment" if final else "paragraph"
    _pause(kind, get(f"{kind}_s", 0.0), offset, clock, track)


def _run_cue(cue: Cue, offset: int, clock: Clock, track: _Track) -> None:
    if cue.fixed_s > 0:
        clock.fixed_s += cue.fixed_s
        _pause(_FIXED_KINDS[cue.kind], cue.fixed_s, offset, clock, track)


def _pause(kind: PauseKind, duration_s: float, offset: int, clock: Clock, track: _Track) -> None:
    if duration_s > 0:
        track.pauses.append(TimedPause(kind, clock.now_s, clock.now_s + duration_s, offset))
        clock.now_s += duration_s
