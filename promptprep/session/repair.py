"""Ways to hold the end, least harm first: swap slots, read a little faster, drop sentences, shorten breaks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from promptprep.model.session import PlannedItem, Repair, Session, SessionLimits, Spare
from promptprep.units import clock_text

SWAP = (
    "Swap the slots of {one} ({one_slot}) and {other} ({other_slot}): they run {one_runs} and {other_runs}, "
    "and both fit."
)
FASTER = "Read up to {percent} % faster: gives at most {time} in all."
LEAVE_OUT = "Leave out sentences ({n}) in {where}: gives {time}."
BREAKS = "Shorten the breaks {where} to {least}: gives {time}."
ONE_FASTER = "{item} alone: read {percent} % faster and it fits its slot."
ONE_LEAVES_OUT = "{item} alone: leave out sentences ({n}): gives {time} of {wanted}."


def repairs(session: Session, limits: SessionLimits, needed_ms: int) -> tuple[Repair, ...]:
    """What can be done, least harm first. `needed_ms` is what must be won so that the end holds as surely as wanted.

    `enough` says that a way, together with those before it, gives that much.
    """
    left = [row for row in session.items if not row.done]
    found = list(_swaps(left))
    if needed_ms > 0:
        won = 0
        for repair in (_pace(left, limits), _sentences(left, max(0, needed_ms - _pace_gives(left, limits))),
                       _shorter_breaks(left, limits)):  # fmt: skip
            won += repair.gives_ms
            if repair.gives_ms > 0:
                found.append(replace(repair, enough=won >= needed_ms))
    found += list(_own_slots(left, limits))
    return tuple(found)


def _swaps(rows: Sequence[PlannedItem]) -> Iterator[Repair]:
    """Pairs of scripts of which each fits the other's slot, though not both fit their own. Each is named once."""
    slotted = [r for r in rows if r.item.kind == "script" and r.timed.slot_ms is not None]
    over = [r for r in slotted if (r.over_ms or 0) > 0]
    taken: set[str] = set()
    for row in sorted(over, key=lambda r: -(r.over_ms or 0)):
        fits = [
            other
            for other in slotted
            if other.item.code not in taken | {row.item.code}
            and row.timed.runs_ms <= (other.timed.slot_ms or 0)
            and other.timed.runs_ms <= (row.timed.slot_ms or 0)
        ]
        if fits and row.item.code not in taken:
            best = min(fits, key=lambda r: r.timed.slot_ms or 0)
            taken |= {row.item.code, best.item.code}
            values = {
                "one_slot": _slot(row),
                "one_runs": _runs(row),
                "other_slot": _slot(best),
                "other_runs": _runs(best),
            }
            yield Repair("swap", SWAP, 0, values={"one": row.item.code, "other": best.item.code, **values})


def _slot(row: PlannedItem) -> str:
    return clock_text((row.timed.slot_ms or 0) / 1000)


def _runs(row: PlannedItem) -> str:
    return clock_text(row.timed.runs_ms / 1000)


def _spoken_s(rows: Sequence[PlannedItem]) -> float:
    return sum(r.timed.timing.spoken_s for r in rows if r.item.kind == "script")


def _pace_gives(rows: Sequence[PlannedItem], limits: SessionLimits) -> int:
    change = limits.pace_change.value
    return round(_spoken_s(rows) * 1000 * change / (1 + change))


def _pace(rows: Sequence[PlannedItem], limits: SessionLimits) -> Repair:
    gives = _pace_gives(rows, limits)
    values = {"percent": f"{limits.pace_change.value * 100:.0f}", "time": clock_text(gives / 1000)}
    return Repair("pace", FASTER, gives, values=values)


def _sentences(rows: Sequence[PlannedItem], needed_ms: int) -> Repair:
    """Sentences from the end of the session upwards, until they give enough."""
    chosen: list[tuple[str, Spare]] = []
    won = 0
    for row in reversed(rows):
        for spare in reversed(row.timed.spare):
            if won < needed_ms:
                chosen.append((row.item.code, spare))
                won += spare.gives_ms
    where = ", ".join(dict.fromkeys(code for code, _ in chosen))
    values = {"n": str(len(chosen)), "where": where, "time": clock_text(won / 1000)}
    return Repair("sentences", LEAVE_OUT, won, tuple(chosen), values=values)


def _shorter_breaks(rows: Sequence[PlannedItem], limits: SessionLimits) -> Repair:
    """Breaks down to the shortest rest of a voice, never below it."""
    least_ms = round(limits.rest_least_s.value * 1000)
    cut = [(r, r.timed.runs_ms - least_ms) for r in rows if r.item.kind == "break" and r.timed.runs_ms > least_ms]
    won = sum(ms for _, ms in cut)
    where = ", ".join(r.item.code for r, _ in cut)
    values = {"where": where, "least": clock_text(limits.rest_least_s.value), "time": clock_text(won / 1000)}
    return Repair("rest", BREAKS, won, values=values)


def _own_slots(rows: Sequence[PlannedItem], limits: SessionLimits) -> Iterator[Repair]:
    """For each script over its own slot: the change of pace that it needs, else the sentences that can go."""
    change = limits.pace_change.value
    for row in rows:
        over = row.over_ms or 0
        if row.item.kind != "script" or over <= 0:
            continue
        code, spoken_ms = row.item.code, row.timed.timing.spoken_s * 1000
        faster = over / (spoken_ms - over) if spoken_ms > over else 1.0
        if faster <= change:
            values = {"item": code, "percent": f"{faster * 100:.1f}"}
            yield Repair("pace", ONE_FASTER, over, (), True, values)
            continue
        chosen, won = _cut(row.timed.spare, over)
        if chosen:
            values = {
                "item": code,
                "n": str(len(chosen)),
                "time": clock_text(won / 1000),
                "wanted": clock_text(over / 1000),
            }
            spare = tuple((code, sentence) for sentence in chosen)
            yield Repair("sentences", ONE_LEAVES_OUT, won, spare, won >= over, values)


def _cut(spare: Sequence[Spare], needed_ms: int) -> tuple[list[Spare], int]:
    chosen: list[Spare] = []
    won = 0
    for one in reversed(spare):
        if won < needed_ms:
            chosen.append(one)
            won += one.gives_ms
    return chosen, won
