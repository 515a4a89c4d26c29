"""Glass against textbook optics: Snell's law, reflections worked out with matrices."""

from __future__ import annotations

import math

import numpy as np
import pytest

from promptprep.errors import BadGeometry
from promptprep.sightline.flip import TOPS, flip_for
from promptprep.sightline.optics import ghost_mm, lens_loss_stops, seen_contrast


# A stop is a factor of two: log2 of the light that is lost.
@pytest.mark.parametrize(("passes", "stops"), [(0.8, 0.32), (0.7, 0.51), (0.6, 0.74), (0.5, 1.00)])
def test_light_lost_to_the_lens(passes: float, stops: float) -> None:
    assert round(lens_loss_stops(passes), 2) == stops


# Plane-parallel plate at 45 degrees, n = 1.52: the ghost stands 2t*tan(b)*cos(a) from the first reflection.
@pytest.mark.parametrize(("thick", "ghost"), [(3, 2.23), (4, 2.97), (6, 4.46)])
def test_ghost_of_a_plate(thick: float, ghost: float) -> None:
    assert round(ghost_mm(thick), 2) == ghost


@pytest.mark.parametrize("angle", [20, 45, 60])
@pytest.mark.parametrize("index", [1.46, 1.52])
def test_ghost_by_tracing_two_rays(angle: float, index: float) -> None:
    """Rays as vectors: refracted by Snell's law in vector form (any text on ray tracing), met with both faces."""
    up, thick = np.array([0.0, 1.0]), 3.0
    down = np.array([math.sin(math.radians(angle)), -math.cos(math.radians(angle))])
    mirrored = down - 2 * (down @ up) * up
    into = _refracted(down, up, 1 / index)
    far = into * (thick / -into[1])  # where it meets the second face
    back = into - 2 * (into @ up) * up
    near = far + back * (thick / back[1])  # where it leaves the first face
    out = _refracted(back, -up, index)
    assert np.allclose(out, mirrored)
    assert ghost_mm(thick, angle, index) == pytest.approx(abs(near[0] * mirrored[1] - near[1] * mirrored[0]))


def _refracted(ray: np.ndarray, normal: np.ndarray, ratio: float) -> np.ndarray:
    inward = -(normal @ ray)
    return ratio * ray + (ratio * inward - math.sqrt(1 - ratio**2 * (1 - inward**2))) * normal


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
