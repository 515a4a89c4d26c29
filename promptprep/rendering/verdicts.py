"""Whether a script fits its slot, in one word and in a sentence."""

from __future__ import annotations

from promptprep.model.timing import ScriptTiming
from promptprep.units import clock_text


def slot_verdict(timed: ScriptTiming) -> tuple[str, str]:
    """("fits" | "tight" | "over" | "no slot", a sentence for a person)."""
    timing, slot = timed.timing, timed.slot_s
    if slot is None:
        return "no slot", "No slot is set, so only the time itself can be told."
    spare = slot - timing.mean_s
    if timing.low_s > slot:
        return "over", f"Does not fit: {clock_text(-spare)} over its slot of {clock_text(slot)}."
    if timing.high_s > slot:
        side = f"{clock_text(spare)} to spare" if spare >= 0 else f"{clock_text(-spare)} over"
        return "tight", f"Tight: {side} in a slot of {clock_text(slot)}, and the range crosses its edge."
    return "fits", f"Fits its slot of {clock_text(slot)} with {clock_text(spare)} to spare."
