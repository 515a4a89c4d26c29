"""Drawings of a rig to scale: from the side, from the reader's eye, and the type and columns that are possible."""

from __future__ import annotations

import math
from collections.abc import Sequence

from jinja2 import Environment

from promptprep.model.sightline import Sightline
from promptprep.rendering.drawn_reader import reader_view
from promptprep.rendering.drawn_region import region_view
from promptprep.rendering.drawn_side import side_view
from promptprep.rendering.environment import render
from promptprep.rendering.wording import ENGLISH, Wording


def rig_drawings(sight: Sightline, env: Environment, say: Wording = ENGLISH) -> Sequence[str]:
    """Three SVG texts: the side view, the reader's view, the region of possible type and column.

    They draw with the page's own text colour, so that they work on light, dark and paper, and tell everything by
    shape, dash or label as well. Any sightline with finite figures can be drawn.
    """
    views = (("side", side_view(sight, say)), ("reader", reader_view(sight, say)), ("region", region_view(sight, say)))
    key = sight.rig.id.encode("utf-8").hex()
    return [
        render(env, f"drawings/{name}.svg", v=view, n=number, r=sight.rig, key=key, say=say) for name, view in views
    ]


def number(value: float) -> str:
    """A coordinate: two decimals at most, so that the same input gives the same bytes on every machine."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") or not math.isfinite(value) else text
