"""Which values of one passage are missing from another, by value."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from promptprep.model.versions import Figure

SMALLEST_WORD = 3.0  # "one" and "two" in words come and go between languages (articles, duals, "both")
CONVERSIONS = {
    "km": ("m", 1000.0), "m": ("m", 1.0), "cm": ("m", 0.01), "mm": ("m", 0.001), "mi": ("m", 1609.344),
    "ft": ("m", 0.3048), "in": ("m", 0.0254), "yd": ("m", 0.9144), "kg": ("kg", 1.0), "g": ("kg", 0.001),
    "t": ("kg", 1000.0), "lb": ("kg", 0.45359237), "s": ("s", 1.0), "min": ("s", 60.0), "h": ("s", 3600.0),
    "day": ("s", 86400.0), "week": ("s", 604800.0),
}  # fmt: skip
ROUNDED = 0.06  # a converted value may be rounded this much
SAME_UNIT = {"°": "°C", "L": "l", "AU": "au"}


@dataclass(frozen=True, slots=True)
class Mismatch:
    """A value of the source that the target lacks, one of the target that the source lacks, or both: they differ.

    `what` is "value" or "unit".
    """

    source: Figure | None
    target: Figure | None
    what: str = "value"


def mismatches(source: Sequence[Figure], target: Sequence[Figure]) -> list[Mismatch]:
    """What differs between two passages that should say the same, in the order of the source."""
    left, right = list(source), list(target)
    found: list[Mismatch] = []
    for exact in (True, False):
        for figure in list(left):
            twin = _twin(figure, right, exact)
            if twin is not None:
                left.remove(figure)
                right.remove(twin)
                if _units_differ(figure, twin):
                    found.append(Mismatch(figure, twin, "unit"))
    _drop_loose(left, right)
    _drop_loose(right, left)
    return found + _left_over(left, right)


def _twin(figure: Figure, others: Sequence[Figure], exact: bool) -> Figure | None:
    same = [f for f in others if _agree(figure, f)]
    if exact:
        return next((f for f in same if f.kind == figure.kind and f.unit == figure.unit), None)
    return next(iter(same), None) or next((f for f in others if _converts(figure, f)), None)


def _agree(one: Figure, other: Figure) -> bool:
    """Whether two figures share a value; two times of day share the time, not just the hour's number."""
    shared = one.keys & other.keys
    if one.kind == other.kind == "clock":
        return any(key.startswith("t:") for key in shared)
    return bool(shared)


def _converts(one: Figure, other: Figure) -> bool:
    a, b = CONVERSIONS.get(one.unit), CONVERSIONS.get(other.unit)
    if a is None or b is None or a[0] != b[0] or one.unit == other.unit:
        return False
    x, y = value_of(one), value_of(other)
    return x is not None and y is not None and abs(x * a[1] - y * b[1]) <= ROUNDED * max(x * a[1], y * b[1])


def value_of(figure: Figure) -> float | None:
    return next((float(k[2:]) for k in sorted(figure.keys) if k.startswith("n:")), None)


def _units_differ(one: Figure, other: Figure) -> bool:
    a, b = SAME_UNIT.get(one.unit, one.unit), SAME_UNIT.get(other.unit, other.unit)
    return bool(a and b) and a != b


def _drop_loose(figures: list[Figure], others: list[Figure]) -> None:
    """Lets pass what may be said with other words: a bare day for a date, an hour in words for a time."""
    for figure in list(figures):
        near = _loose_keys(figure)
        twin = next((f for f in others if f.keys & near and (figure.kind == "date" or not f.firm)), None)
        if twin is not None:
            figures.remove(figure)
            others.remove(twin)


def _loose_keys(figure: Figure) -> frozenset[str]:
    if figure.kind == "date":
        return frozenset(f"n:{k.rsplit('-', 1)[1]}" for k in figure.keys)
    if figure.kind == "clock":
        hours = {int(k[2:]) // 60 + more for k in figure.keys if k.startswith("t:") for more in (0, 1)}
        return frozenset(f"n:{h % 12 or 12}" for h in hours)
    return frozenset()


def _left_over(left: Sequence[Figure], right: Sequence[Figure]) -> list[Mismatch]:
    """Leftovers: two of one kind are a value that was changed; single ones only where they are sure to count."""
    found: list[Mismatch] = []
    rest = [f for f in right if f.counted]
    for figure in (f for f in left if f.counted):
        twin = _counterpart(figure, rest)
        if twin is not None:
            rest.remove(twin)
            found.append(Mismatch(figure, twin))
        elif _counts_alone(figure):
            found.append(Mismatch(figure, None))
    return found + [Mismatch(None, f) for f in rest if _counts_alone(f)]


def _counterpart(figure: Figure, rest: Sequence[Figure]) -> Figure | None:
    numbers = ("number", "quantity")
    alike = [f for f in rest if f.kind == figure.kind or (f.kind in numbers and figure.kind in numbers)]
    best = (
        [f for f in alike if f.unit == figure.unit and f.unit] or [f for f in alike if f.firm == figure.firm] or alike
    )
    single = value_of(figure) == 1 and not figure.firm
    return best[0] if best and not single else None


def _counts_alone(figure: Figure) -> bool:
    if figure.kind in ("month", "weekday", "ordinal"):
        return False
    value = value_of(figure)
    if figure.firm:
        return figure.kind in ("date", "clock") or value != 1
    return value is not None and value >= SMALLEST_WORD
