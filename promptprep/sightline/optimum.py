"""The best type size and column width, and the region in which every bound is kept."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from functools import lru_cache

from promptprep.model.lines import Column
from promptprep.sightline.layout import room_px
from promptprep.sightline.terms import Weighing, column_of

SMALLEST_PX = 6
GOLDEN = (math.sqrt(5) - 1) / 2


@lru_cache(maxsize=256)
def best_column(weighing: Weighing, font_px: float | None = None, column_px: float | None = None) -> Column:
    """The column of least cost; `font_px` or `column_px` given are kept. Whole pixels, an even
    number across so that it can stand evenly about the lens; what was given stays as it is."""
    if font_px is not None:
        return _with_font(weighing, font_px, column_px)
    room_height = room_px(weighing.rig)[1]
    largest = max(SMALLEST_PX, math.floor(room_height / weighing.rig.leading))
    coarse = sorted({round(SMALLEST_PX * (largest / SMALLEST_PX) ** (i / 47)) for i in range(48)})
    near = _least(coarse, lambda size: _cost_with_font(weighing, size, column_px))
    at = coarse.index(near)
    fine = range(coarse[max(at - 1, 0)], coarse[min(at + 1, len(coarse) - 1)] + 1)
    font = _least(fine[:: max(1, len(fine) // 40)], lambda size: _cost_with_font(weighing, size, column_px))
    return _with_font(weighing, float(font), column_px)


def _least(sizes: Iterable[int], cost: Callable[[int], float]) -> int:
    return min(sizes, key=cost)


def _cost_with_font(weighing: Weighing, font_px: float, column_px: float | None) -> float:
    width = column_px if column_px is not None else _best_width(weighing, font_px)
    return weighing.cost(font_px, width, weighing.lines(font_px))


def _with_font(weighing: Weighing, font_px: float, column_px: float | None) -> Column:
    if column_px is None:
        width, lines = _best_width(weighing, font_px), weighing.lines(font_px)
        choices = (max(2.0, 2.0 * math.floor(width / 2)), 2.0 * math.floor(width / 2) + 2.0)
        column_px = min(choices, key=lambda px: weighing.cost(font_px, px, lines))
    return column_of(weighing.rig, font_px, column_px)


def _best_width(weighing: Weighing, font_px: float) -> float:
    """Golden-section search: the cost is convex in the width's logarithm."""
    lines = weighing.lines(font_px)
    low, high = math.log(8.0), math.log(max(room_px(weighing.rig)[0], 9.0))
    a, b = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
    cost_a, cost_b = (weighing.cost(font_px, math.exp(x), lines) for x in (a, b))
    while high - low > 5e-4:
        if cost_a <= cost_b:
            high, b, cost_b = b, a, cost_a
            a = high - GOLDEN * (high - low)
            cost_a = weighing.cost(font_px, math.exp(a), lines)
        else:
            low, a, cost_a = a, b, cost_b
            b = low + GOLDEN * (high - low)
            cost_b = weighing.cost(font_px, math.exp(b), lines)
    return math.exp((low + high) / 2)


def region(weighing: Weighing, steps: int = 40) -> tuple[tuple[float, float, float], ...]:
    """(font_px, least column_px, most column_px) over the type sizes at which every bound can be kept."""
    first = weighing.least_px
    if not weighing.possible():
        return ()
    low, high = first, room_px(weighing.rig)[1] / weighing.rig.leading
    for _ in range(40):
        middle = (low + high) / 2
        least, most = weighing.column_range_px(middle)
        low, high = (middle, high) if least <= most else (low, middle)
    sizes = [first + (low - first) * i / steps for i in range(steps + 1)]
    return tuple((size, *weighing.column_range_px(size)) for size in sizes)
