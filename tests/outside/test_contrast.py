"""Contrast against the formula of WCAG 2.2 and its well-known values."""

from __future__ import annotations

import pytest

from promptprep.errors import BadCall
from promptprep.sightline.contrast import contrast_in_glass, contrast_ratio, relative_luminance
from promptprep.sightline.verdicts import small_type_verdict

# WCAG 2.2, definitions of relative luminance and contrast ratio
# (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio), worked to the last digit.
WORKED = [
    ("#ffffff", "#000000", 21.00),
    ("#767676", "#ffffff", 4.542),
    ("#777777", "#ffffff", 4.478),
    ("#595959", "#ffffff", 7.005),
    ("#949494", "#ffffff", 3.033),
    ("#ffff00", "#000000", 19.556),
    ("#ffff00", "#ffffff", 1.074),
    ("#00ff00", "#000000", 15.304),
    ("#ff0000", "#000000", 5.252),
    ("#ff0000", "#ffffff", 3.998),
    ("#0000ff", "#000000", 2.444),
    ("#808080", "#ffffff", 3.949),
    ("#808080", "#000000", 5.317),
]


@pytest.mark.parametrize(("ink", "ground", "ratio"), WORKED)
def test_worked_ratios(ink: str, ground: str, ratio: float) -> None:
    assert round(contrast_ratio(ink, ground), 3) == ratio
    assert contrast_ratio(ink, ground) == contrast_ratio(ground, ink)


def test_a_glass_takes_contrast_and_no_glass_takes_none() -> None:
    assert contrast_in_glass("#ffffff", "#000000", 1.0) == contrast_ratio("#ffffff", "#000000")
    assert round(contrast_in_glass("#ffffff", "#000000", 0.3), 3) == 7.0  # (0.3 + 0.05) / 0.05


@pytest.mark.parametrize("bad", ["white", "#fff", "#gggggg", "", "#ffffff00"])
def test_what_is_no_colour(bad: str) -> None:
    with pytest.raises(BadCall):
        relative_luminance(bad)


# NUREG-0700 rev 3 (after MIL-STD-1472G): M = 0.3 + 0.07 (20 - S) for S of 10 to 17 arcminutes.
@pytest.mark.parametrize(("height", "least"), [(10, 1.0), (16, 0.58), (17, 0.51)])
def test_small_type_needs_more_contrast(height: float, least: float) -> None:
    (verdict,) = small_type_verdict({"cap_height_arcmin": height, "contrast_at_eye": 4.0})
    assert verdict.low == pytest.approx(least)
    assert verdict.value == pytest.approx(0.6)
    assert verdict.level == ("good" if least <= 0.6 else "look")


def test_large_type_needs_no_more() -> None:
    assert small_type_verdict({"cap_height_arcmin": 20, "contrast_at_eye": 2.0}) == ()
