"""The chart page: with it the crew checks flip, geometry and focus before the first take."""

from __future__ import annotations

import math
from dataclasses import dataclass

from promptprep.model.prepared import PreparedScript
from promptprep.rendering.screen_plan import Frame
from promptprep.rendering.sheets import CAP_EM
from promptprep.rendering.studied import CAPS_ARCMIN, GAZE_DEG
from promptprep.sightline.angles import size_mm

ALIKE_ARCMIN = 0.3
"""Capitals nearer than this look the same on the chart: this script's own stands for the limit's."""


@dataclass(frozen=True, slots=True)
class Ring:
    """A circle of equal visual angle about the lens point."""

    degrees: float
    radius_px: float


@dataclass(frozen=True, slots=True)
class Capital:
    """A letter E that subtends `arcmin` at the eye; `font_px` is the type size that makes it `height_px` high."""

    arcmin: float
    height_px: float
    font_px: float
    x_px: float


@dataclass(frozen=True, slots=True)
class Chart:
    """All in pixels of the rig's picture. `columns` and `rows` are the places of the grid's lines."""

    columns: tuple[int, ...]
    rows: tuple[int, ...]
    lens_x_px: float
    lens_y_px: float
    lens_inside: bool
    rings: tuple[Ring, ...]
    capitals: tuple[Capital, ...]
    baseline_px: float
    label_px: float
    word_px: float
    word_x_px: float
    word_y_px: float


def chart(prepared: PreparedScript, frame: Frame) -> Chart:
    """The chart of a rig: a grid of tenths, the lens point, rings of visual angle, capitals of given angles."""
    rig = prepared.rig
    path, px_mm = rig.optical_path_mm, rig.px_mm
    lens_x, lens_y = rig.lens_x * rig.width_px, rig.lens_y * rig.height_px
    label = max(min(rig.width_px, rig.height_px) * 0.022, 9.0)
    return Chart(
        tuple(round(rig.width_px * i / 10) for i in range(1, 10)),
        tuple(round(rig.height_px * i / 10) for i in range(1, 10)),
        lens_x,
        lens_y,
        0 <= rig.lens_x <= 1 and 0 <= rig.lens_y <= 1,
        tuple(Ring(d, path * math.tan(math.radians(d)) / px_mm) for d in GAZE_DEG),
        _capitals(prepared, frame, path / px_mm),
        rig.height_px * 0.88,
        label,
        min(rig.width_px * 0.07, rig.height_px * 0.12),
        rig.width_px * (0.25 if rig.lens_x >= 0.4 else 0.75),
        rig.height_px * (0.2 if rig.lens_y >= 0.4 else 0.68),
    )


def _capitals(prepared: PreparedScript, frame: Frame, path_px: float) -> tuple[Capital, ...]:
    """Capitals in a row; `cap_px` of the planned type gives the ratio of capital height to type size."""
    cap_em = frame.cap_px / frame.font_px if frame.cap_px > 0 else CAP_EM
    own = round(prepared.sightline.cap_height_arcmin, 1)
    wanted = sorted({own, *(limit for limit in CAPS_ARCMIN if abs(limit - own) > ALIKE_ARCMIN)})
    heights = [size_mm(a, path_px) for a in wanted]  # in dots, for the path is
    places = [prepared.rig.width_px * (i + 1) / (len(wanted) + 1) for i in range(len(wanted))]
    return tuple(Capital(a, h, h / cap_em, x) for a, h, x in zip(wanted, heights, places, strict=True))
