"""How a version fits the slot that all versions share: what to cut, what to add, how much faster to read."""

from __future__ import annotations

import math

from promptprep.model.timing import Z80, ScriptTiming, SegmentTiming, Timing
from promptprep.model.versions import Change, ReaderFit, VersionSegment

Z50 = 0.6745  # half of a normal law lies within this many standard deviations


def change_of(timing: Timing, slot_s: float | None) -> Change | None:
    """What would make a time meet its slot; None without slot."""
    if slot_s is None:
        return None
    over_s = timing.mean_s - slot_s
    word_s = timing.spoken_s / timing.words if timing.words else 0.0
    words = 0 if word_s <= 0 else math.ceil(over_s / word_s) if over_s > 0 else math.ceil(over_s / word_s - 1e-9)
    room_s = slot_s - timing.fixed_s
    faster = (timing.spoken_s / room_s - 1) * 100 if room_s > 0 and timing.spoken_s > 0 else None
    return Change(over_s, min(words, timing.words) if over_s > 0 else words, faster)


def probably_over(timing: Timing, slot_s: float | None) -> bool:
    """Whether a time runs over its slot in at least three of four takes, if not in nine of ten."""
    return slot_s is not None and timing.mean_s - (timing.mean_s - timing.low_s) * Z50 / Z80 > slot_s


def segment_fit(timing: SegmentTiming, shared_s: float | None, source: int | None) -> VersionSegment:
    slot = shared_s if shared_s is not None else timing.slot_s
    return VersionSegment(timing.id, timing.title, timing.timing, slot, change_of(timing.timing, slot), source)


def reader_fit(reader: str, timing: ScriptTiming, slot_s: float | None, own: bool) -> ReaderFit:
    whole = timing.timing
    fits = whole.verdict(slot_s) in ("fits", "no slot")
    return ReaderFit(reader, whole.mean_s, whole.low_s, whole.high_s, fits, own)
