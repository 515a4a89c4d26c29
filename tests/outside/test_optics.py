"""Glass against textbook optics: Fresnel's equations, Snell's law, reflections worked out with matrices."""

from __future__ import annotations

import math

import numpy as np
import pytest

from promptprep.errors import BadGeometry
from promptprep.sightline.flip import TOPS, flip_for
from promptprep.sightline.optics import (
    brewster_deg,
    fresnel,
    ghost_mm,
    lens_loss_stops,
    plate_shift_mm,
    refracted,
    seen_contrast,
    two_faces,
)


# Fresnel's equations (formula: Springer reference 978-1-4419-6247-8_9862), worked for n = 1.52.
def test_reflectance_of_one_uncoated_face() -> None:
    s0, p0 = fresnel(0)
    s45, p45 = fresnel(45)
    assert round(100 * s0, 2) == round(100 * p0, 2) == 4.26
    assert (round(100 * s45, 2), round(100 * p45, 2)) == (9.67, 0.94)
    assert round(100 * (s45 + p45) / 2, 2) == 5.30
    assert round(100 * two_faces((s45 + p45) / 2), 1) == 10.1


# Brewster's law: tan(angle) = n, about 56 degrees for glass, and there is no reflection along the plane.
def test_brewsters_angle() -> None:
    assert round(brewster_deg()) in (56, 57)
    assert brewster_deg(1.5) == pytest.approx(56.31, abs=0.005)  # Hecht, Optics: 56.3 degrees for n = 1.5 (from memory)
    assert fresnel(brewster_deg())[1] == pytest.approx(0, abs=1e-12)


# The same reflectances by the optical-admittance form that thin-film textbooks use (Macleod; from memory).
@pytest.mark.parametrize("angle", [0, 20, 45, 60, 80])
def test_reflectance_by_admittances(angle: float) -> None:
    inside = refracted(angle)
    s_out, s_in = math.cos(math.radians(angle)), 1.52 * math.cos(inside)
    p_out, p_in = 1 / math.cos(math.radians(angle)), 1.52 / math.cos(inside)
    expected = ((s_out - s_in) / (s_out + s_in)) ** 2, ((p_out - p_in) / (p_out + p_in)) ** 2
    assert fresnel(angle) == pytest.approx(expected)


# A stop is a factor of two: log2 of the light that is lost.
@pytest.mark.parametrize(("passes", "stops"), [(0.8, 0.32), (0.7, 0.51), (0.6, 0.74), (0.5, 1.00)])
def test_light_lost_to_the_lens(passes: float, stops: float) -> None:
    assert round(lens_loss_stops(passes), 2) == stops


# Plane-parallel plate at 45 degrees, n = 1.52: shift t*sin(a-b)/cos(b), ghost 2t*tan(b)*cos(a).
@pytest.mark.parametrize(("thick", "shift", "ghost"), [(3, 1.01, 2.23), (4, 1.34, 2.97), (6, 2.01, 4.46)])
def test_shift_and_ghost_of_a_plate(thick: float, shift: float, ghost: float) -> None:
    assert (round(plate_shift_mm(thick), 2), round(ghost_mm(thick), 2)) == (shift, ghost)


def test_ghost_by_tracing_two_rays() -> None:
    """The second reflection leaves the plate where Snell's law says; its distance across the beam is measured."""
    thick, n = 3.0, 1.52
    inside = math.asin(math.sin(math.pi / 4) / n)
    along_face = 2 * thick * math.tan(inside)
    assert ghost_mm(thick) == pytest.approx(along_face * math.cos(math.pi / 4))


# Worked example: panel 300 and 0.3 cd/m2, glass reflects 0.30, stray light 5 cd/m2: 18.7:1 in place of 1000:1.
def test_contrast_in_a_glass_with_stray_light() -> None:
    assert round(seen_contrast(300, 0.3), 6) == 1000
    assert round(seen_contrast(300, 0.3, 0.30, 5), 1) == 18.7


# Householder reflections (any linear algebra text): presenter looks along +z, glass at 45 degrees.
SCREENS = {
    ("below", "camera"): ((0, -1, 0), (0, 0, 1), "vertical"),
    ("below", "reader"): ((0, -1, 0), (0, 0, -1), "horizontal"),
    ("above", "camera"): ((0, 1, 0), (0, 0, 1), "horizontal"),
    ("above", "reader"): ((0, 1, 0), (0, 0, -1), "vertical"),
    ("side", "up"): ((1, 0, 0), (0, 1, 0), "horizontal"),
}


@pytest.mark.parametrize(("lie", "screen"), SCREENS.items())
def test_flip_by_reflection_matrices(
    lie: tuple[str, str], screen: tuple[tuple[int, ...], tuple[int, ...], str]
) -> None:
    """A picture of an F on the screen, mirrored in the glass, projected for the reader, matched with all four flips."""
    towards, top, expected = np.array(screen[0], float), np.array(screen[1], float), screen[2]
    look = np.array([0, 0, 1.0])
    normal = (look - towards) / np.linalg.norm(look - towards)
    mirror = np.eye(3) - 2 * np.outer(normal, normal)
    assert np.allclose(mirror @ look, towards)
    right = np.cross(top, towards)  # of one who looks at the screen with its top up, in a left-handed room
    letter = np.array([(0, 0), (0, 2), (1, 2), (0, 1), (0.6, 1)])
    found = []
    for name, sx, sy in (("none", 1, 1), ("horizontal", -1, 1), ("vertical", 1, -1), ("both", -1, -1)):
        points = [mirror @ (sx * x * right + sy * y * top) for x, y in letter]
        if all(np.allclose((p[0], p[1]), xy) for p, xy in zip(points, letter, strict=True)):
            found.append(name)
    assert found == [expected] == [flip_for(*lie)]
    assert set(SCREENS) <= {(a, b) for a, tops in TOPS.items() for b in tops}


@pytest.mark.parametrize("bad", [0.0, -0.1, 1.1, math.nan])
def test_what_no_glass_passes(bad: float) -> None:
    with pytest.raises(BadGeometry):
        lens_loss_stops(bad)
