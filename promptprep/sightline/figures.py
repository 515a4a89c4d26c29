"""Figures of the picture as a whole."""

from __future__ import annotations

import math

from promptprep.model.lines import Column
from promptprep.model.rig import Rig


def picture_figures(rig: Rig, column: Column) -> dict[str, float | None]:
    """Line spacing in em, distance over diagonal, and how far a glass at 45 degrees clears the screen.

    A glass at 45 degrees over a flat screen rises as fast as it runs: to cover the whole picture its middle must be
    at least half the picture's depth away from it (for a screen at the side: half its width).
    """
    across = rig.picture_width_mm if rig.lies == "side" else rig.picture_height_mm
    return {
        "line_spacing": column.line_px / column.font_px,
        "path_over_diagonal": rig.optical_path_mm / math.hypot(rig.picture_width_mm, rig.picture_height_mm),
        "glass_clearance": rig.glass_to_screen_mm / (across / 2) if rig.has_glass else None,
    }
