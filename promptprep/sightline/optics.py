"""Light at a glass that lies at an angle: how much it reflects, what the lens loses, where the ghost stands."""

from __future__ import annotations

import math

from promptprep.errors import BadGeometry

GLASS_INDEX = 1.52  # crown and float glass in green light


def fresnel(angle_deg: float, index: float = GLASS_INDEX) -> tuple[float, float]:
    """Reflectance of one uncoated face from air for light polarised across (s) and along (p) the plane of incidence.

    `angle_deg` from the normal, 0 up to 90. Fresnel's equations.
    """
    if not 0 <= angle_deg < 90 or not index >= 1:
        raise BadGeometry("bad-geometry", f"no light meets a glass at {angle_deg:g} degrees", "give 0 up to 90 degrees")
    outside = math.cos(math.radians(angle_deg))
    inside = math.cos(refracted(angle_deg, index))
    s = ((outside - index * inside) / (outside + index * inside)) ** 2
    p = ((index * outside - inside) / (index * outside + inside)) ** 2
    return s, p


def refracted(angle_deg: float, index: float = GLASS_INDEX) -> float:
    """Angle inside the glass in radians, by Snell's law."""
    return math.asin(math.sin(math.radians(angle_deg)) / index)


def two_faces(reflectance: float) -> float:
    """Reflectance of a plate whose faces reflect alike, all echoes between them added: 2R/(1+R)."""
    return 2 * reflectance / (1 + reflectance)


def brewster_deg(index: float = GLASS_INDEX) -> float:
    """Angle at which light polarised along the plane of incidence is not reflected at all."""
    return math.degrees(math.atan(index))


def lens_loss_stops(passes: float) -> float:
    """Light that the lens loses behind a glass which passes the fraction `passes`, in stops."""
    if not 0 < passes <= 1:
        raise BadGeometry("bad-geometry", f"a glass cannot pass {passes:g} of the light", "give a fraction such as 0.7")
    return -math.log2(passes)


def plate_shift_mm(thickness_mm: float, angle_deg: float = 45.0, index: float = GLASS_INDEX) -> float:
    """How far a plate moves the lens's picture sideways."""
    inside = refracted(angle_deg, index)
    return thickness_mm * math.sin(math.radians(angle_deg) - inside) / math.cos(inside)


def ghost_mm(thickness_mm: float, angle_deg: float = 45.0, index: float = GLASS_INDEX) -> float:
    """Distance of the second face's reflection from the first's, across the line of sight."""
    return 2 * thickness_mm * math.tan(refracted(angle_deg, index)) * math.cos(math.radians(angle_deg))


def seen_contrast(white_cd_m2: float, black_cd_m2: float, reflects: float = 1.0, stray_cd_m2: float = 0.0) -> float:
    """Contrast of a panel seen in a glass with stray light through it: (R*white + veil) / (R*black + veil).

    `math.inf` where black and veil are nothing.
    """
    dark = reflects * black_cd_m2 + stray_cd_m2
    return (reflects * white_cd_m2 + stray_cd_m2) / dark if dark > 0 else math.inf
