"""The sightline's layout is the one that the screen copy shows."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any, cast

import pytest

from promptprep.model.lines import BrokenScript, Column
from promptprep.rendering.screen_plan import frame_of
from promptprep.sightline.layout import layout, margin_px
from tests.sightline.rigs import DIRECT, rig, seen

RIGS = [rig(), rig(lens_x=0.1, lens_y=0.2), rig(DIRECT), rig(DIRECT, lens_x=1.3, lens_y=1.2), rig(margin=0.12)]


@pytest.mark.parametrize("one", RIGS)
@pytest.mark.parametrize("column", [Column(800, 90, 135), Column(501, 53, 80), Column(1728, 40, 60)])
def test_column_and_reading_line_stand_where_the_screen_puts_them(one: Any, column: Column) -> None:
    prepared = SimpleNamespace(rig=one, broken=BrokenScript("en", "ltr", column, ()), sightline=seen(one, column))
    frame, placed = frame_of(cast(Any, prepared)), layout(one, column)
    assert frame.left_px == pytest.approx(placed.left_px, abs=1)
    assert frame.column_px == pytest.approx(placed.right_px - placed.left_px, abs=1)
    assert frame.lens_y_px == pytest.approx(placed.reading_px, abs=1)
    assert frame.margin_px == margin_px(one)
    assert frame.line_px == placed.line_px
