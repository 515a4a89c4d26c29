"""Heights at the eye against published tables, and the limits against their sources."""

from __future__ import annotations

import math

import pytest

from promptprep.errors import BadGeometry
from promptprep.model.rig import Reader
from promptprep.sightline.angles import size_mm, subtended_arcmin
from promptprep.sightline.verdicts import acuity_factor, limits_for
from promptprep.store.limits import default_limits

LIMITS = {limit.id: limit for limit in default_limits()}

# H = 2D*tan(a/2), worked; columns 16', 20', 22', 24', 31' (ISO 9241-3; NUREG-0700 rev 2 section 1.3.1-4; ASR A6).
HEIGHTS = {
    600: (2.79, 3.49, 3.84, 4.19, 5.41),
    1000: (4.65, 5.82, 6.40, 6.98, 9.02),
    1500: (6.98, 8.73, 9.60, 10.47, 13.53),
    2000: (9.31, 11.64, 12.80, 13.96, 18.04),
    3000: (13.96, 17.45, 19.20, 20.94, 27.05),
}


@pytest.mark.parametrize("distance", HEIGHTS)
def test_worked_heights(distance: int) -> None:
    found = tuple(round(size_mm(angle, distance), 2) for angle in (16, 20, 22, 24, 31))
    assert found == HEIGHTS[distance]


@pytest.mark.parametrize("distance", HEIGHTS)
@pytest.mark.parametrize("angle", [16, 20, 22, 24, 31])
def test_height_and_angle_undo_each_other(distance: int, angle: int) -> None:
    assert subtended_arcmin(size_mm(angle, distance), distance) == pytest.approx(angle, rel=1e-12)


# Rules of thumb as angles: FAA D/200; ASR A6 section 6.1.3 (2), (3) D/155 and D/110; NUREG-0700 rev 3 x0.004, x0.006.
@pytest.mark.parametrize(
    ("part", "arcmin"),
    [(1 / 200, 17.19), (1 / 155, 22.18), (1 / 110, 31.25), (0.004, 13.75), (0.006, 20.63), (0.0058, 19.94)],
)
def test_rules_of_thumb(part: float, arcmin: float) -> None:
    assert round(subtended_arcmin(1000 * part, 1000), 2) == arcmin


# NUREG-0700 rev 2: H = 6.283 * D * MA / 21600, a small-angle form; it agrees to its own four digits.
@pytest.mark.parametrize("distance", HEIGHTS)
@pytest.mark.parametrize("angle", [16, 20, 24])
def test_the_small_angle_form_of_nureg_0700(distance: int, angle: int) -> None:
    assert size_mm(angle, distance) == pytest.approx(6.283 * distance * angle / 21600, rel=1e-4)


# Snellen's standard: letters of 5' at 6 m are 8.727 mm; sign makers: 1.45 mm a metre at acuity 1, 7.25 mm at 5 m.
def test_snellen_letters() -> None:
    assert round(size_mm(5, 6000), 3) == 8.727
    assert size_mm(5, 5000) == pytest.approx(7.25, abs=0.03)


# ASR A6 section 6.1.3 table 1 (after DIN EN ISO 9241-303): its millimetres are 22' to 31' at its distances.
@pytest.mark.parametrize(
    ("distance", "low", "high"), [(500, 3.2, 4.5), (600, 3.9, 5.5), (700, 4.5, 6.4), (800, 5.2, 7.3)]
)
def test_the_german_workplace_table(distance: float, low: float, high: float) -> None:
    assert size_mm(22, distance) == pytest.approx(low, abs=0.1)
    assert size_mm(31, distance) == pytest.approx(high, abs=0.1)


# Legge & Bigelow 2011: fluent from an x-height of 0.2 to 2 degrees; at 400 mm that is 1.4 to 14 mm.
def test_fluent_range_of_print() -> None:
    assert round(size_mm(LIMITS["x_fluent_least"].bound, 400), 1) == 1.4
    assert round(size_mm(LIMITS["x_fluent_most"].bound, 400)) == 14
    assert round(size_mm(12, 2000), 2) == 6.98


@pytest.mark.parametrize(
    ("name", "bound"),
    [
        ("cap_least", 16),  # ISO 9241-3, NUREG-0700
        ("cap_wanted", 20),  # the same
        ("cap_workplace", 22),  # ASR A6 / DIN EN ISO 9241-303
        ("cap_desk_most", 45),  # NUREG-0700 rev 2: never above for groups
        ("characters_wanted", 13),  # Atilgan, Xiong & Legge
        ("characters_most", 80),  # WCAG SC 1.4.8
        ("characters_wide_most", 40),  # WCAG SC 1.4.8, CJK
        ("leading_wanted", 1.5),  # WCAG SC 1.4.8
        ("contrast_eye_least", 6),  # NUREG-0700 rev 3
        ("contrast_eye_wanted", 10),  # the same
        ("whole_view", 1.6),  # ASR A6 (4)
    ],
)
def test_limits_are_the_published_ones(name: str, bound: float) -> None:
    assert LIMITS[name].bound == bound


# ASR A6 table 2: distance for a whole screen of that diagonal (inches -> mm) is about 1.6 diagonals, to 100 mm.
@pytest.mark.parametrize(("inches", "mm"), [(13, 500), (15, 600), (17, 700), (19, 800), (22, 900), (24, 1000)])
def test_whole_screen_distances(inches: float, mm: float) -> None:
    assert round(LIMITS["whole_view"].bound * inches * 25.4, -2) == mm


# DIN 1450: x1.4 for an acuity of 0.5, x1.75 for 0.4 (= 0.7/0.5, 0.7/0.4); nothing from 0.7 on.
@pytest.mark.parametrize(("acuity", "factor"), [(0.5, 1.4), (0.4, 1.75), (0.7, 1.0), (1.2, 1.0), (None, 1.0)])
def test_weaker_eyes_need_larger_type(acuity: float | None, factor: float) -> None:
    reader = Reader("a", "A", acuity=acuity)
    assert acuity_factor(acuity) == pytest.approx(factor)
    own = {limit.id: limit for limit in limits_for(default_limits(), reader, 0.5)}
    assert own["cap_least"].bound == pytest.approx(16 * factor)


@pytest.mark.parametrize("bad", [0, -1, math.inf, math.nan])
def test_no_angle_of_what_is_not_there(bad: float) -> None:
    with pytest.raises(BadGeometry):
        subtended_arcmin(bad, 1000)
    with pytest.raises(BadGeometry):
        size_mm(20, bad)
