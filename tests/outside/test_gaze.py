"""Eye travel against published gaze angles and the millimetres they come to."""

from __future__ import annotations

import pytest

from promptprep.model.lines import Column
from promptprep.rendering.studied import CAPS_ARCMIN, GAZE_DEG
from promptprep.sightline.angles import offset_deg, offset_mm, subtended_arcmin
from promptprep.store.limits import default_limits
from tests.sightline.rigs import DIRECT, rig, seen

LIMITS = {limit.id: limit for limit in default_limits()}

# Degrees at the lens plane in millimetres, d*tan(a): 1, 1.2, 1.7, 2, 2.6, 5 degrees.
OFFSETS = {
    1000: (17.5, 20.9, 29.7, 34.9, 45.4, 87.5),
    1500: (26.2, 31.4, 44.5, 52.4, 68.1, 131.2),
    2000: (34.9, 41.9, 59.4, 69.8, 90.8, 175.0),
}


@pytest.mark.parametrize("distance", OFFSETS)
def test_worked_offsets(distance: int) -> None:
    assert tuple(round(offset_mm(a, distance), 1) for a in (1, 1.2, 1.7, 2, 2.6, 5)) == OFFSETS[distance]


# Text 345 mm wide at 2 m spans 9.86 degrees, 4.93 to each side; 300 mm at 1.5 m spans 11.42 degrees.
def test_width_of_text() -> None:
    assert round(subtended_arcmin(345, 2000) / 60, 2) == 9.86
    assert round(offset_deg(345 / 2, 2000), 2) == 4.93
    assert round(subtended_arcmin(300, 1500) / 60, 2) == 11.42


@pytest.mark.parametrize(
    ("name", "bound"),
    [
        ("travel_strict", 1.2),  # van Eijk et al. 2010
        ("reading_below", 1.7),  # the same, up and down
        ("reading_above", 1.7),
        ("reading_below_far", 5),  # Chen 2002, least noticed below the lens (figure from memory)
        ("travel_cone", 2.6),  # Horstmann & Linke 2021: a cone of 5.2 degrees
        ("travel_most", 4.5),  # Linke & Horstmann 2022: 4 to 9 degrees across the studies
    ],
)
def test_limits_are_the_published_ones(name: str, bound: float) -> None:
    assert LIMITS[name].bound == bound


def test_the_drawing_shows_the_same_circles() -> None:
    assert (LIMITS["travel_strict"].bound, LIMITS["travel_cone"].bound) == GAZE_DEG


def test_the_charts_show_the_limits_of_capitals() -> None:
    assert {LIMITS[name].bound for name in ("cap_least", "cap_wanted", "cap_workplace")} < set(CAPS_ARCMIN)


# With capitals of 20' (0.7 em) and an advance of 0.5 em, 13 characters span about 1.55 degrees to each side.
def test_thirteen_characters_at_the_preferred_height() -> None:
    em_arcmin = 20 / 0.7
    assert round(13 * 0.5 * em_arcmin / 60, 1) == 3.1
    half = offset_deg(offset_mm(13 * 0.5 * em_arcmin / 60 / 2, 2000), 2000)
    assert round(half, 2) == 1.55
    assert LIMITS["travel_strict"].bound < half < LIMITS["travel_cone"].bound


# The worked text of 345 mm at 2 m, on a rig: a picture 400 mm wide, 2000 pixels, column 1725 pixels.
def test_travel_on_a_rig() -> None:
    one = rig(DIRECT, width=400, height=225, pixels="2000x1125", eye_to_screen="2 m", lens_y=0.5)
    sight = seen(one, Column(1725, 60, 90))
    assert round(sight.travel_left_deg, 2) == round(sight.travel_right_deg, 2) == 4.93
