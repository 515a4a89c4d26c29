"""Which flip a picture needs, derived from how the screen lies: a reflection worked out in the room.

The room's axes: x to the reader's right, y up, z from the camera to the reader. The reader looks along -z. A glass
turns that line of sight by 90 degrees onto the screen. A flip is a reflection of the finished picture; a single
reflection in a glass needs exactly one, no reflection needs none, and half a turn of the screen adds both.
"""

from __future__ import annotations

from collections.abc import Mapping

from promptprep.errors import BadGeometry
from promptprep.model.rig import Flip

Vector = tuple[float, float, float]

FORWARD: Vector = (0.0, 0.0, -1.0)
UP: Vector = (0.0, 1.0, 0.0)
RIGHT: Vector = (1.0, 0.0, 0.0)
CAMERA, READER, DOWN = FORWARD, (0.0, 0.0, 1.0), (0.0, -1.0, 0.0)

# Where a look through the glass ends up: the direction in which the screen is seen.
SEEN_ALONG: Mapping[str, Vector] = {"below": DOWN, "above": UP, "side": RIGHT, "direct": FORWARD}
TOPS: Mapping[str, Mapping[str, Vector]] = {
    "below": {"camera": CAMERA, "reader": READER},
    "above": {"camera": CAMERA, "reader": READER},
    "side": {"up": UP, "down": DOWN},
    "direct": {"up": UP, "down": DOWN},
}


def flip_for(lies: str, top: str) -> Flip:
    """The flip that lets the reader see the picture upright and the right way round.

    `lies` is "below" (flat, face up), "above" (flat, face down), "side" (upright beside a glass that is turned
    about a vertical axis) or "direct" (no glass); `top` says where the picture's top edge points: "camera" or
    "reader" for a flat screen, "up" or "down" for an upright one. Raises `BadGeometry` for anything else.
    """
    if lies not in TOPS:
        raise BadGeometry("bad-geometry", f"a screen cannot lie {lies!r}", "use one of: " + ", ".join(TOPS))
    if top not in TOPS[lies]:
        hint = f"for a screen that lies {lies} its top points to one of: " + ", ".join(TOPS[lies])
        raise BadGeometry("bad-geometry", f"the top of the picture cannot point to {top!r}", hint)
    along, top_edge = SEEN_ALONG[lies], TOPS[lies][top]
    right_edge = _cross(along, top_edge)
    right, up = (_reflected(edge, along) for edge in (right_edge, top_edge))
    return _flip(_dot(right, RIGHT) < 0, _dot(up, UP) < 0)


def _flip(sides: bool, ends: bool) -> Flip:
    if sides:
        return "both" if ends else "horizontal"
    return "vertical" if ends else "none"


def _reflected(vector: Vector, along: Vector) -> Vector:
    """`vector` seen in the glass that turns FORWARD into `along`; unchanged where there is no glass."""
    normal = tuple(a - b for a, b in zip(FORWARD, along, strict=True))
    length2 = sum(n * n for n in normal)
    if length2 == 0:
        return vector
    scale = 2 * sum(v * n for v, n in zip(vector, normal, strict=True)) / length2
    x, y, z = (v - scale * n for v, n in zip(vector, normal, strict=True))
    return x, y, z


def _cross(a: Vector, b: Vector) -> Vector:
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


def _dot(a: Vector, b: Vector) -> float:
    return sum(p * q for p, q in zip(a, b, strict=True))
