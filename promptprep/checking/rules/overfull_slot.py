"""A slot that cannot hold what is in it."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule
from promptprep.model.timing import Timing
from promptprep.spans import Span
from promptprep.units import clock_text


def find(context: Context) -> Iterator[Hit]:
    script, timing = context.script, context.timing
    if script.slot_s is not None:
        place, time = context.front_place("slot"), timing.timing if timing else None
        yield from _over(script.slot_s, script.fixed_s, time, place, "script")
    for number, segment in enumerate(script.segments):
        if segment.slot_s is not None:
            time = timing.segments[number].timing if timing and number < len(timing.segments) else None
            place = segment.heading_span or segment.span
            yield from _over(segment.slot_s, segment.fixed_s, time, place, "segment")


def _over(slot_s: float, fixed_s: float, time: Timing | None, place: Span, what: str) -> Iterator[Hit]:
    slot = clock_text(slot_s)
    if fixed_s > slot_s:
        message = f"the {what}'s cues alone take {clock_text(fixed_s)}, its slot is {slot}"
        yield Hit(place, message, "shorten a clip, a pause or the live part, or widen the slot")
    elif time is not None and time.low_s > slot_s:
        message = f"the {what} runs {clock_text(time.mean_s)} (at least {clock_text(time.low_s)}), its slot is {slot}"
        yield Hit(place, message, f"cut about {clock_text(time.mean_s - slot_s)}, or widen the slot")


RULE = Rule(
    name="overfull-slot",
    level="fix",
    find=find,
    languages=EVERY,
    sees="A slot shorter than its own clips, pauses and live parts, or than even a quick reading of the copy.",
    trips="The take cannot fit, however it is read: the next item is cut or the end is lost.",
    sources=("promptprep's predicted time: the low end of the range that holds 8 of 10 readings",),
    fires="# Opening {slot=0:10}\n\n[clip 0:20 Moonrise]\n\nGood evening.",
    silent="# Opening {slot=0:40}\n\n[clip 0:20 Moonrise]\n\nGood evening.",
)
