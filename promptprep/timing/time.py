"""Running times: of a text by itself, and of a script with its segments, words, pauses and cues."""

from __future__ import annotations

import math
from collections.abc import Sequence

from promptprep.model.language import LanguageData
from promptprep.model.ports import Engines
from promptprep.model.script import Script, Segment
from promptprep.model.spoken import Speak
from promptprep.model.timing import Pace, ScriptTiming, SegmentTiming, Timing
from promptprep.timing.blocks import Clock, SpokenBlock, run_blocks, weighed_blocks
from promptprep.timing.measure import measure
from promptprep.timing.tally import seconds, tally, unit_key


def time_text(text: str, data: LanguageData, pace: Pace, engines: Engines, spoken: Speak) -> Timing:
    """The time of a text read by itself, from its first word to the breath after its last.

    Blank lines part paragraphs. An empty text takes 0 s. Linear in the text's length.
    """
    said = spoken(text, ())
    measured = measure(said, data, engines)
    mean_s = seconds(tally(measured, unit_key(data)), pace.coefficients)
    return timing_of(mean_s, pace, words=len(measured.words), syllables=measured.syllables)


def timing_of(spoken_s: float, pace: Pace, *, words: int = 0, syllables: int = 0, fixed_s: float = 0.0) -> Timing:
    """A time with its two errors: what is not known of the reader, and the passage's own scatter."""
    return Timing(
        mean_s=spoken_s + fixed_s,
        common_sd_s=spoken_s * pace.common_sd,
        own_sd_s=pace.own_sd * math.sqrt(spoken_s),
        words=words,
        syllables=syllables,
        fixed_s=fixed_s,
    )


def time_script(script: Script, data: LanguageData, pace: Pace, engines: Engines, spoken: Speak) -> ScriptTiming:
    """The times of a script: segments one after another, each with its words, pauses and cues.

    The pause after a segment's last words belongs to it; a segment begins where the one before has ended.
    """
    clock = Clock()
    timed: list[SegmentTiming] = []
    for number, segment in enumerate(script.segments):
        blocks = weighed_blocks(segment, data, engines, spoken)
        last = number == len(script.segments) - 1
        timed.append(_time_segment(segment, blocks, pace, unit_key(data), clock, last=last))
    slots = [s.slot_s for s in script.segments]
    whole = sum(s for s in slots if s is not None) if slots and all(s is not None for s in slots) else None
    return ScriptTiming(
        language=script.language,
        timing=Timing.total(s.timing for s in timed),
        segments=tuple(timed),
        pace=pace,
        slot_s=script.slot_s if script.slot_s is not None else whole,
    )


def _time_segment(
    segment: Segment, blocks: Sequence[SpokenBlock], pace: Pace, unit: str, clock: Clock, *, last: bool
) -> SegmentTiming:
    start_s, fixed_before = clock.now_s, clock.fixed_s
    timed = tuple(run_blocks(segment, blocks, pace.coefficients, unit, clock, last=last))
    fixed_s = clock.fixed_s - fixed_before
    timing = timing_of(
        max(0.0, clock.now_s - start_s - fixed_s),
        pace,
        words=sum(len(b.measured.words) for b in blocks),
        syllables=sum(b.measured.syllables for b in blocks),
        fixed_s=fixed_s,
    )
    return SegmentTiming(segment.id, segment.title, start_s, timing, timed, segment.slot_s)
