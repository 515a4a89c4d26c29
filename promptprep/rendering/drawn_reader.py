"""The reader's view: the picture with its column and lines, the lens, degrees, and the gaze cones."""

from __future__ import annotations

import math
from dataclasses import dataclass

from promptprep.model.sightline import Sightline
from promptprep.rendering.drawn_side import travel_text
from promptprep.rendering.studied import GAZE_DEG
from promptprep.rendering.wording import ENGLISH, Wording

WIDTH, HEIGHT = 760.0, 520.0
LEFT, TOP, RIGHT, BOTTOM = 52.0, 40.0, 16.0, 86.0
DASHES = ("2 4", "9 5")  # of the circles, small to large
WORDS = (0.9, 0.5, 1.4, 0.7, 1.1, 0.4, 1.6, 0.8, 1.2, 0.6)  # widths of stand-ins for words, in em times 2

Box = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Tick:
    at: float
    text: str


@dataclass(frozen=True, slots=True)
class ReaderView:
    """Boxes are (x, y, width, height) in the drawing's units; `words` of a line are boxes, the read one's apart."""

    width: float
    height: float
    frame: Box
    column: Box
    words: tuple[Box, ...]
    reading: tuple[Box, ...]
    reading_y: float
    lens: tuple[float, float]
    rings: tuple[tuple[float, str], ...]
    across: tuple[Tick, ...]
    down: tuple[Tick, ...]
    area: Box
    text: str


def reader_view(sight: Sightline, say: Wording = ENGLISH) -> ReaderView:
    """The picture as the eye sees it, flat and to scale, with the gaze cones about the lens."""
    rig, column, path = sight.rig, sight.column, sight.optical_path_mm
    ring_mm = path * math.tan(math.radians(max(GAZE_DEG))) * 1.06
    lens_mm = rig.lens_x * rig.picture_width_mm, rig.lens_y * rig.picture_height_mm
    x0, x1 = min(0.0, lens_mm[0] - ring_mm), max(rig.picture_width_mm, lens_mm[0] + ring_mm)
    y0, y1 = min(0.0, lens_mm[1] - ring_mm), max(rig.picture_height_mm, lens_mm[1] + ring_mm)
    scale = min((WIDTH - LEFT - RIGHT) / (x1 - x0), (HEIGHT - TOP - BOTTOM) / (y1 - y0))
    left = LEFT + (WIDTH - LEFT - RIGHT - (x1 - x0) * scale) / 2

    def at(x_mm: float, y_mm: float) -> tuple[float, float]:
        return left + (x_mm - x0) * scale, TOP + (y_mm - y0) * scale

    lens = at(*lens_mm)
    deg = path * scale  # times a tangent gives units
    column_left = lens[0] - math.tan(math.radians(sight.travel_left_deg)) * deg
    column_width = column.width_px * rig.px_mm * scale
    centres = _centres(sight, lens[1], deg)
    reading_y = lens[1] - math.tan(math.radians(sight.reading_line_deg)) * deg
    heights = sight.cap_height_mm * scale, column.font_px * rig.px_mm * scale
    lines = [(y, _words(column_left, column_width, y, *heights, row)) for row, y in enumerate(centres)]
    area = (*at(x0, y0), (x1 - x0) * scale, (y1 - y0) * scale)
    pitch = column.line_px * rig.py_mm * scale
    return ReaderView(
        width=WIDTH,
        height=TOP + (y1 - y0) * scale + BOTTOM,
        frame=(*at(0, 0), rig.picture_width_mm * scale, rig.picture_height_mm * scale),
        column=(column_left, centres[0] - pitch / 2, column_width, pitch * len(centres)),
        words=tuple(box for y, boxes in lines if abs(y - reading_y) > 0.01 for box in boxes),
        reading=tuple(box for y, boxes in lines if abs(y - reading_y) <= 0.01 for box in boxes),
        reading_y=reading_y,
        lens=lens,
        rings=tuple((math.tan(math.radians(a)) * deg, dash) for a, dash in zip(GAZE_DEG, DASHES, strict=True)),
        across=_ticks(lens[0], deg, area[0], area[0] + area[2], 1),
        down=_ticks(lens[1], deg, area[1], area[1] + area[3], -1),
        area=area,
        text=_text(sight, say),
    )


def _text(sight: Sightline, say: Wording) -> str:
    characters = say("{n} characters a line", n=say.figure(sight.characters_per_line, 0))
    view = say("{n} lines, {s} s in view", n=str(sight.lines_visible), s=say.figure(sight.seconds_visible, 1))
    return f"{travel_text(sight, say)} · {characters} · {view}"


def _centres(sight: Sightline, lens_y: float, deg: float) -> list[float]:
    first, last = (lens_y - math.tan(math.radians(a)) * deg for a in (sight.first_line_deg, sight.last_line_deg))
    count = sight.lines_visible
    return [first + (last - first) * i / (count - 1) for i in range(count)] if count > 1 else [first]


def _words(left: float, width: float, y: float, cap: float, em: float, row: int) -> tuple[Box, ...]:
    """Bars in place of words, as high as capitals, over most of the column."""
    boxes: list[Box] = []
    x, number = left, row * 3
    end = left + width * (1 - 0.04 * ((row * 7) % 5))
    while x < end - 0.4 * em and len(boxes) < 40:
        wide = min(WORDS[number % len(WORDS)] * 2 * em, end - x)
        boxes.append((x, y - cap / 2, wide, cap))
        x += wide + 0.3 * em
        number += 1
    return tuple(boxes)


def _ticks(lens: float, deg: float, low: float, high: float, sign: int) -> tuple[Tick, ...]:
    """Whole degrees from the lens, few enough to read; to the right and upwards positive."""
    reach = math.degrees(math.atan(max(abs(low - lens), abs(high - lens)) / deg))
    step = next((s for s in (1, 2, 5, 10, 15) if reach / s <= 9), 20)
    found = []
    for count in range(-90 // step, 90 // step + 1):
        if abs(count * step) < 90:
            at = lens + math.tan(math.radians(count * step)) * deg
            if low - 0.01 <= at <= high + 0.01:
                found.append(Tick(at, f"{count * step * sign:+d}°".replace("-", "−").replace("+0", "0")))
    return tuple(found)
