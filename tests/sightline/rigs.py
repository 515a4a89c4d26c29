"""Rigs and figures that the tests of this folder share."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from promptprep.model.lines import Column
from promptprep.model.rig import Reader, Rig
from promptprep.model.sightline import Sightline, TypeFigures
from promptprep.sightline.build import rig_from
from promptprep.sightline.column import column_for
from promptprep.sightline.sightline import sightline
from promptprep.store.limits import default_limits

BELOW: Mapping[str, Any] = {
    "diagonal": "24 in",
    "pixels": "1920x1080",
    "lies": "below",
    "top": "camera",
    "eye_to_glass": "2.5 m",
    "glass_to_screen": "28 cm",
}
DIRECT: Mapping[str, Any] = {
    "width": 345,
    "height": "194 mm",
    "pixels": "1920x1080",
    "eye_to_screen": "110 cm",
    "lens_y": "-4 cm",
}
FIGURES = TypeFigures(cap_em=0.714, x_em=0.536, advance_em=0.52, seconds_per_character=0.065)


def rig(base: Mapping[str, Any] = BELOW, **changes: Any) -> Rig:
    return rig_from("test", {**base, **changes})


def seen(one: Rig, column: Column | None = None, reader: Reader | None = None) -> Sightline:
    used = column or column_for(one, reader, FIGURES, default_limits())
    return sightline(one, used, reader, FIGURES, default_limits())
