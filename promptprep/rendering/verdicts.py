"""Whether a script fits its slot: in one word, in a sentence, and what to do where it does not."""

from __future__ import annotations

from promptprep.model.timing import ScriptTiming, SlotVerdict
from promptprep.units import clock_text

WORTH_SAYING = 0.02  # of the slot: common practice, no source; less is lost in any reader's scatter


def slot_verdict(timed: ScriptTiming) -> tuple[SlotVerdict, str]:
    """The verdict, and a sentence for a person."""
    verdict = timed.timing.verdict(timed.slot_s)
    if timed.slot_s is None:
        return verdict, "No slot is set, so only the time itself can be told."
    slot, side = clock_text(timed.slot_s), _side(timed.slot_s - timed.timing.mean_s)
    if verdict == "over":
        return verdict, f"Does not fit its slot of {slot}: {side}."
    if verdict == "tight":
        return verdict, f"Tight in its slot of {slot}: {side} as planned, {_other_take(timed, timed.slot_s)}."
    return verdict, f"Fits its slot of {slot}: {side}."


def slot_task(name: str, timed: ScriptTiming) -> str | None:
    """What to do about a script of that name; None where it fits, or will as likely as not."""
    timing, slot_s = timed.timing, timed.slot_s
    if slot_s is None:
        return None
    over_s, slot = timing.mean_s - slot_s, clock_text(slot_s)
    if timing.verdict(slot_s) == "over":
        words = max(1, round(over_s / max(timing.spoken_s, 1e-9) * timing.words))
        return (
            f"{name} does not fit its slot of {slot}: it runs {clock_text(timing.mean_s)}. "
            f"Cut about {words} words, or give it {clock_text(timing.high_s)}."
        )
    if over_s > slot_s * WORTH_SAYING:
        return f"{name} is likely to run {clock_text(over_s)} over its slot of {slot}."
    return None


def _side(spare_s: float) -> str:
    return f"{clock_text(abs(spare_s))} {'to spare' if spare_s >= 0 else 'over'}"


def _other_take(timed: ScriptTiming, slot_s: float) -> str:
    """The take at the range's far end, which lies beyond the slot's edge."""
    if timed.timing.mean_s > slot_s:
        return f"a fast take {_side(slot_s - timed.timing.low_s)}"
    return f"a slow take {_side(slot_s - timed.timing.high_s)}"
