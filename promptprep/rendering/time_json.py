"""A script's times as a JSON object; the keys are a contract."""

from __future__ import annotations

from typing import Any

from promptprep.model.script import Script
from promptprep.model.timing import ScriptTiming, SegmentTiming, Timing


def script_object(script: Script, timing: ScriptTiming) -> dict[str, Any]:
    """Seconds to the millisecond; `over_s` is negative for a script under its slot."""
    return {
        "file": script.file,
        "language": script.language,
        "language_origin": script.language_origin,
        "title": script.title,
        "reader": script.reader,
        "pace": timing.pace.source,
        **_figures(timing.timing),
        "slot_s": timing.slot_s,
        "over_s": None if timing.over_s is None else round(timing.over_s, 3),
        "segments": [_segment(segment) for segment in timing.segments],
    }


def _segment(segment: SegmentTiming) -> dict[str, Any]:
    return {
        "id": segment.id,
        "title": segment.title,
        "start_s": round(segment.start_s, 3),
        **_figures(segment.timing),
        "slot_s": segment.slot_s,
    }


def _figures(timing: Timing) -> dict[str, Any]:
    return {
        "mean_s": round(timing.mean_s, 3),
        "low_s": round(timing.low_s, 3),
        "high_s": round(timing.high_s, 3),
        "words": timing.words,
        "syllables": timing.syllables,
        "fixed_s": round(timing.fixed_s, 3),
    }
