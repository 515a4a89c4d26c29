"""Angles at the reader's eye, in the exact forms."""

from __future__ import annotations

import math

from promptprep.errors import BadGeometry


def subtended_arcmin(size_mm: float, distance_mm: float) -> float:
    """Angle that a height or width subtends at the eye, in arcminutes: 2*atan(h/2d).

    `distance_mm` is the optical path: eye to glass plus glass to screen. Raises `BadGeometry` unless both are
    positive and finite.
    """
    _positive("size", size_mm)
    _positive("distance", distance_mm)
    return 60 * math.degrees(2 * math.atan(size_mm / (2 * distance_mm)))


def size_mm(angle_arcmin: float, distance_mm: float) -> float:
    """Height or width that subtends an angle: 2*d*tan(a/2), the reverse of `subtended_arcmin`.

    Raises `BadGeometry` for an angle outside 0 to 180 degrees or a distance that no room has.
    """
    _positive("distance", distance_mm)
    _positive("angle", angle_arcmin)
    if angle_arcmin >= 180 * 60:
        raise BadGeometry("bad-geometry", f"{angle_arcmin:g} arcminutes is half a turn or more", "give a smaller angle")
    return 2 * distance_mm * math.tan(math.radians(angle_arcmin / 60) / 2)


def offset_deg(offset_mm: float, distance_mm: float) -> float:
    """Angle between the lens and a point `offset_mm` beside it, in degrees: atan(x/d), the eye on the lens axis."""
    _positive("distance", distance_mm)
    return math.degrees(math.atan2(offset_mm, distance_mm))


def offset_mm(angle_deg: float, distance_mm: float) -> float:
    """Distance from the lens axis that an angle spans at the picture: d*tan(a)."""
    _positive("distance", distance_mm)
    return distance_mm * math.tan(math.radians(angle_deg))


def _positive(name: str, value: float) -> None:
    if not (math.isfinite(value) and value > 0):
        hint = "measure it in the room and give it with its unit, such as 1.5 m"
        raise BadGeometry("bad-geometry", f"a {name} of {value:g} is not possible", hint)
