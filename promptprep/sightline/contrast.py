"""Contrast of two colours by the formula of WCAG 2 (relative luminance, contrast ratio)."""

from __future__ import annotations

import re

from promptprep.errors import BadCall

FLARE = 0.05  # the formula's allowance for light on the screen, as a part of its white


def relative_luminance(colour: str) -> float:
    """0 (black) to 1 (white) of "#rrggbb" in sRGB. Raises `BadCall` for anything else."""
    if not re.fullmatch(r"#[0-9a-fA-F]{6}", colour):
        raise BadCall("not-a-colour", f"{colour!r} is no colour", 'write six hexadecimal digits, such as "#ffffff"')
    red, green, blue = (_linear(int(colour[i : i + 2], 16) / 255) for i in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4


def contrast_ratio(ink: str, ground: str) -> float:
    """1 to 21, whichever of the two is the lighter."""
    return _ratio(relative_luminance(ink), relative_luminance(ground), 1.0)


def contrast_in_glass(ink: str, ground: str, reflects: float) -> float:
    """The same formula where a glass sends on only the fraction `reflects` of the picture, the flare staying."""
    return _ratio(relative_luminance(ink), relative_luminance(ground), reflects)


def _ratio(one: float, other: float, reflects: float) -> float:
    light, dark = max(one, other), min(one, other)
    return (reflects * light + FLARE) / (reflects * dark + FLARE)
