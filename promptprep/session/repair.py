"""Ways to hold the end, least harm first: swap slots, read a little faster, drop sentences, shorten breaks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from promptprep.model.session import PlannedItem, Repair, Session, SessionLimits, Spare
from promptprep.session.spare import RULE
from promptprep.units import clock_text


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
                found.append(_judged(repair, won >= needed_ms))
    found += list(_own_slots(left, limits))
    return tuple(found)


def _judged(repair: Repair, enough: bool) -> Repair:
    return Repair(repair.harm, repair.kind, repair.text, repair.gives_ms, repair.spare, enough)


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
            text = (
                f"Swap the slots of {row.item.code} ({_slot(row)}) and {best.item.code} ({_slot(best)}): "
                f"they run {_runs(row)} and {_runs(best)}, and both fit."
            )
            yield Repair(1, "swap", text, 0)


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
    text = f"Read up to {limits.pace_change.value * 100:.0f} % faster: gives at most {clock_text(gives / 1000)} in all."
    return Repair(2, "pace", text, gives)


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
    text = f"Leave out {len(chosen)} sentences in {where}: gives {clock_text(won / 1000)}. {RULE}"
    return Repair(3, "sentences", text, won, tuple(chosen))


def _shorter_breaks(rows: Sequence[PlannedItem], limits: SessionLimits) -> Repair:
    """Breaks down to the shortest rest of a voice, never below it."""
    least_ms = round(limits.rest_least_s.value * 1000)
    cut = [(r, r.timed.runs_ms - least_ms) for r in rows if r.item.kind == "break" and r.timed.runs_ms > least_ms]
    won = sum(ms for _, ms in cut)
    where = ", ".join(r.item.code for r, _ in cut)
    text = f"Shorten the breaks {where} to {clock_text(limits.rest_least_s.value)}: gives {clock_text(won / 1000)}."
    return Repair(4, "rest", text, won)


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
            yield Repair(
                2, "pace", f"{code} alone: read {faster * 100:.1f} % faster and it fits its slot.", over, (), True
            )
            continue
        chosen, won = _cut(row.timed.spare, over)
        if chosen:
            given, wanted = clock_text(won / 1000), clock_text(over / 1000)
            text = f"{code} alone: leave out {len(chosen)} sentences: gives {given} of {wanted}."
            yield Repair(3, "sentences", text, won, tuple((code, s) for s in chosen), won >= over)


def _cut(spare: Sequence[Spare], needed_ms: int) -> tuple[list[Spare], int]:
    chosen: list[Spare] = []
    won = 0
    for one in reversed(spare):
        if won < needed_ms:
            chosen.append(one)
            won += one.gives_ms
    return chosen, won
