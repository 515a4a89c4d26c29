"""Drawings of a rig: well-formed, to scale, right for every way a screen lies, the same bytes each time."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from promptprep.model.lines import Column
from promptprep.model.rig import Rig
from promptprep.rendering.drawings import rig_drawings
from promptprep.rendering.drawn_reader import reader_view
from promptprep.rendering.drawn_region import region_view
from promptprep.rendering.drawn_side import side_view
from promptprep.rendering.environment import environment
from tests.sightline.rigs import BELOW, DIRECT, rig, seen

ENV = environment([Path(__file__).parents[2] / "templates"])
RIGS = {
    "below": rig(),
    "reader": rig(top="reader"),
    "above": rig(lies="above"),
    "side": rig({k: v for k, v in BELOW.items() if k != "top"}, lies="side"),
    "direct": rig(DIRECT),
    "beside": rig(DIRECT, lens_x=1.2, lens_y=0.5),
}


@pytest.mark.parametrize("name", RIGS)
def test_drawings_are_well_formed_and_do_not_change(name: str) -> None:
    sight = seen(RIGS[name])
    drawings = rig_drawings(sight, ENV)
    assert len(drawings) == 3
    assert drawings == rig_drawings(sight, ENV)
    for svg in drawings:
        root = ElementTree.fromstring(svg)
        assert root.get("role") == "img"
        assert root.get("aria-label")
        assert "nan" not in svg.lower()


@pytest.mark.parametrize("name", RIGS)
def test_a_ray_is_as_long_by_the_glass_as_straight_to_the_image(name: str) -> None:
    """The image stands as far behind the glass as the screen before it: a folded ray is as long as a straight one."""
    sight = seen(RIGS[name])
    view = side_view(sight)
    scale = (view.image[0][0] - view.eye[0]) / sight.optical_path_mm
    plan = name in ("side", "beside")
    first = sight.travel_left_deg if plan else sight.first_line_deg
    length = sum(math.dist(a, b) for a, b in zip(view.rays[0], view.rays[0][1:], strict=False))
    assert length == pytest.approx(scale * sight.optical_path_mm / math.cos(math.radians(first)), rel=1e-9)


@pytest.mark.parametrize("name", RIGS)
def test_rays_end_on_the_screen(name: str) -> None:
    view = side_view(seen(RIGS[name]))
    (x1, y1), (x2, y2) = view.screen
    for ray in view.rays:
        x, y = ray[-1]
        assert min(x1, x2) - 0.01 <= x <= max(x1, x2) + 0.01
        assert min(y1, y2) - 0.01 <= y <= max(y1, y2) + 0.01


def test_the_screen_lies_where_it_is_said_to() -> None:
    below, above = (side_view(seen(RIGS[name])) for name in ("below", "above"))
    assert below.screen[0][1] == below.screen[1][1] > below.eye[1]
    assert above.screen[0][1] == above.screen[1][1] < above.eye[1]
    direct = side_view(seen(RIGS["direct"]))
    assert direct.glass is None
    assert direct.screen == direct.image
    assert not below.plan
    assert side_view(seen(RIGS["side"])).plan


def test_the_readers_view_is_to_scale() -> None:
    sight = seen(rig(), Column(800, 90, 135))
    view = reader_view(sight)
    assert view.frame[2] / view.frame[3] == pytest.approx(16 / 9)
    assert view.column[2] / view.frame[2] == pytest.approx(800 / 1920)
    assert view.column[3] / view.frame[3] == pytest.approx(7 * 135 / 1080)
    assert view.lens == pytest.approx((view.frame[0] + view.frame[2] / 2, view.frame[1] + view.frame[3] / 2))
    cone = math.tan(math.radians(2.6)) * 2780 / sight.rig.picture_width_mm
    assert view.rings[1][0] / view.frame[2] == pytest.approx(cone)
    assert all(box[1] + box[3] / 2 == pytest.approx(view.reading_y) for box in view.reading)
    assert all(box[0] + box[2] <= view.column[0] + view.column[2] + 1e-6 for box in (*view.words, *view.reading))


def test_the_chart_shows_the_column_where_it_belongs() -> None:
    good, bad = region_view(seen(rig())), region_view(seen(rig(), Column(300, 30, 45)))
    assert good.used == good.best
    assert good.polygon
    assert bad.used != bad.best
    assert "Nowhere" in region_view(seen(rig(diagonal="7 in", eye_to_glass="8 m"))).sentence


@given(
    st.floats(60, 4000), st.floats(150, 30_000), st.floats(10, 3000), st.floats(-3, 4), st.floats(-3, 4),
    st.sampled_from(["below", "above"]),
)  # fmt: skip
@settings(max_examples=15, deadline=None)
def test_any_room_can_be_drawn(size: float, eye: float, behind: float, x: float, y: float, lies: str) -> None:
    changes: dict[str, Any] = {
        "diagonal": size,
        "eye_to_glass": eye,
        "glass_to_screen": behind,
        "lens_x": x,
        "lens_y": y,
    }
    one: Rig = rig(lies=lies, **changes)
    for svg in rig_drawings(seen(one, Column(400, 60, 90)), ENV):
        ElementTree.fromstring(svg)
