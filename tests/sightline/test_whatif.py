"""Overrides and sweeps of a rig's values."""

from __future__ import annotations

from pathlib import Path

import pytest

from promptprep.errors import BadCall, BadGeometry, PromptprepError
from promptprep.sightline.whatif import changed, is_range, swept
from promptprep.store.studio import read_studio
from tests.sightline.rigs import DIRECT, rig

DEMO = Path(__file__).parents[2] / "scripts_demo" / "studio.toml"


@pytest.mark.parametrize("name", ["hall", "field", "desk"])
def test_no_change_gives_the_same_rig(name: str) -> None:
    one = read_studio(DEMO).rigs[name]
    assert changed(one, []) == one


@pytest.mark.parametrize(
    ("override", "field", "value"),
    [
        ("font_px=52", "font_px", 52),
        ("font_px = 52 px".replace(" px", "px"), "font_px", 52),
        ("eye_to_glass=1.9m", "eye_to_glass_mm", 1900),
        ("eye-to-glass=190 cm", "eye_to_glass_mm", 1900),
        ("eye_to_glass=6 ft", "eye_to_glass_mm", 1828.8),
        ("eye_to_glass=1900", "eye_to_glass_mm", 1900),
        ("diagonal=32in", "picture_width_mm", 32 * 25.4 * 16 / (16**2 + 9**2) ** 0.5),
        ("lens_x=0.3", "lens_x", 0.3),
        ("lens_y=25%", "lens_y", 0.25),
        ("top=reader", "flip", "horizontal"),
        ("flip=horizontal", "flip", "horizontal"),
        ("lies=side", "flip", "horizontal"),
        ("ink=#ffff00", "ink", "#ffff00"),
        ("leading=1.3", "leading", 1.3),
        ("pixels=1280x720", "width_px", 1280),
    ],
)
def test_overrides(override: str, field: str, value: object) -> None:
    assert getattr(changed(rig(), [override]), field) == pytest.approx(value)


def test_a_rig_without_glass_has_its_own_distance() -> None:
    assert changed(rig(DIRECT), ["eye_to_screen=2m"]).optical_path_mm == 2000


def test_sweeps_hold_both_ends_and_every_pair() -> None:
    rows = swept(rig(), ["font_px=40..90/5"])
    assert [row.font_px for _, row in rows] == list(range(40, 91, 5))
    assert rows[0][0] == {"font_px": "40"}
    pairs = swept(rig(), ["font_px=40..60/10", "eye_to_glass=1.2..3.0m/20cm"])
    assert len(pairs) == 3 * 10
    assert {row.eye_to_glass_mm for _, row in pairs} >= {1200, 3000}
    assert len(swept(rig(), ["margin=0..0.2"])) == 11
    assert is_range("font_px=40..90/5")
    assert not is_range("font_px=40")


@pytest.mark.parametrize(
    ("text", "code"),
    [("font_px", "not-an-override"), ("fnt_px=5", "unknown-key"), ("font_px=", "not-an-override"),
     ("font_px=9..4/1", "not-a-range"), ("font_px=1..x/1", "not-a-range"), ("font_px=10..90/0", "not-a-range"),
     ("font_px=1..9000/1", "too-many-rows"), ("eye_to_glass=1..2m/3%", "not-a-range")],
)  # fmt: skip
def test_what_is_no_change(text: str, code: str) -> None:
    with pytest.raises(BadCall) as caught:
        swept(rig(), [text])
    assert caught.value.code == code
    assert caught.value.hint


@pytest.mark.parametrize("text", ["eye_to_glass=-1m", "diagonal=400in", "font_px=big", "pixels=1920", "lies=up"])
def test_what_no_room_has(text: str) -> None:
    with pytest.raises(PromptprepError) as caught:
        changed(rig(), [text])
    assert isinstance(caught.value, BadGeometry)
