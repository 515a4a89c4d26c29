"""Whether a script fits its slot, in one word and in a sentence."""

from __future__ import annotations

from promptprep.model.timing import ScriptTiming, SlotVerdict
from promptprep.units import clock_text


def slot_verdict(timed: ScriptTiming) -> tuple[SlotVerdict, str]:
    """The verdict, and a sentence for a person."""
    verdict = timed.timing.verdict(timed.slot_s)
    if timed.slot_s is None:
        return verdict, "No slot is set, so only the time itself can be told."
    slot, spare_s = clock_text(timed.slot_s), timed.slot_s - timed.timing.mean_s
    side = f"{clock_text(abs(spare_s))} {'to spare' if spare_s >= 0 else 'over'}"
    if verdict == "over":
        return verdict, f"Does not fit: {side} its slot of {slot}."
    if verdict == "tight":
        return verdict, f"Tight: {side} in a slot of {slot}, and the range crosses its edge."
    return verdict, f"Fits its slot of {slot} with {side}."
