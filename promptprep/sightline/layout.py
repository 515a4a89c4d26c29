"""Where the column and its lines stand on the rig's picture, by the same rule as the screen copy shows them."""

from __future__ import annotations

import math
from dataclasses import dataclass

from promptprep.model.lines import Column
from promptprep.model.rig import Rig


@dataclass(frozen=True, slots=True)
class Layout:
    """Edges of the column and centres of lines, in pixels from the picture's left and top.

    The line that is read stands at the lens, moved in where the lens is outside the picture; whole lines between
    the margins count as visible.
    """

    left_px: float
    right_px: float
    reading_px: float
    line_px: float
    lines_above: int
    lines_below: int

    @property
    def lines(self) -> int:
        return self.lines_above + 1 + self.lines_below

    @property
    def first_px(self) -> float:
        return self.reading_px - self.lines_above * self.line_px

    @property
    def last_px(self) -> float:
        return self.reading_px + self.lines_below * self.line_px


def margin_px(rig: Rig) -> int:
    """The margin, a fraction of the picture's shorter side, in whole pixels."""
    return round(rig.margin * min(rig.width_px, rig.height_px))


def room_px(rig: Rig) -> tuple[float, float]:
    """Width and height between the margins."""
    return rig.width_px - 2 * margin_px(rig), rig.height_px - 2 * margin_px(rig)


def layout(rig: Rig, column: Column) -> Layout:
    """The column's middle on the lens, the line being read at its height, both moved in to fit."""
    margin, line = margin_px(rig), column.line_px
    left, right = across(rig, column.width_px)
    top, bottom = margin, rig.height_px - margin
    reading = clamped(rig.lens_y * rig.height_px, top + line / 2, bottom - line / 2)
    above = _whole((reading - line / 2 - top) / line)
    below = _whole((bottom - reading - line / 2) / line)
    return Layout(left, right, reading, line, above, below)


def across(rig: Rig, column_px: float) -> tuple[float, float]:
    """The column's left and right edge."""
    margin, width = margin_px(rig), min(column_px, rig.width_px)
    left = clamped(rig.lens_x * rig.width_px - width / 2, margin, rig.width_px - margin - width)
    return left, left + width


def clamped(value: float, low: float, high: float) -> float:
    """`value` moved into the range; its middle where the range is empty."""
    return (low + high) / 2 if high < low else min(max(value, low), high)


def _whole(lines: float) -> int:
    return max(0, math.floor(lines + 1e-9))
