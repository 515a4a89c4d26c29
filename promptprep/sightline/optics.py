"""Light at a glass that lies at an angle: what the lens loses, where the ghost stands, what contrast is left."""

from __future__ import annotations

import math

from promptprep.errors import BadGeometry

GLASS_INDEX = 1.52  # crown and float glass in green light


def _refracted(angle_deg: float, index: float = GLASS_INDEX) -> float:
    """Angle inside the glass in radians, by Snell's law."""
    return math.asin(math.sin(math.radians(angle_deg)) / index)


def lens_loss_stops(passes: float) -> float:
    """Light that the lens loses behind a glass which passes the fraction `passes`, in stops."""
    if not 0 < passes <= 1:
        raise BadGeometry("bad-geometry", f"a glass cannot pass {passes:g} of the light", "give a fraction such as 0.7")
    return -math.log2(passes)


def ghost_mm(thickness_mm: float, angle_deg: float = 45.0, index: float = GLASS_INDEX) -> float:
    """Distance of the second face's reflection from the first's, across the line of sight."""
    return 2 * thickness_mm * math.tan(_refracted(angle_deg, index)) * math.cos(math.radians(angle_deg))


def seen_contrast(white_cd_m2: float, black_cd_m2: float, reflects: float = 1.0, stray_cd_m2: float = 0.0) -> float:
    """Contrast of a panel seen in a glass with stray light through it: (R*white + veil) / (R*black + veil).

    `math.inf` where black and veil are nothing.
    """
    dark = reflects * black_cd_m2 + stray_cd_m2
    return (reflects * white_cd_m2 + stray_cd_m2) / dark if dark > 0 else math.inf
