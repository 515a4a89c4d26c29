"""Figures of a sightline, worked by hand from the rig, and its verdicts."""

from __future__ import annotations

import math
from dataclasses import fields, replace

import pytest

from promptprep.model.lines import Column
from promptprep.model.rig import Reader
from promptprep.model.sightline import TypeFigures
from promptprep.rendering.sightline_json import sightline_object
from promptprep.sightline.cautions import cautions
from promptprep.sightline.layout import layout
from promptprep.sightline.sightline import sightline
from promptprep.store.limits import default_limits
from tests.sightline.rigs import DIRECT, rig, seen

COLUMN = Column(800, 90, 135)


def levels(sight: object, quantity: str) -> set[str]:
    return {v.level for v in sight.verdicts if v.quantity == quantity}  # type: ignore[attr-defined]


def test_every_figure_worked_by_hand() -> None:
    """24 inches of 16:9 are 531.31 x 298.86 mm, 0.27673 mm a pixel; the path is 2500 + 280 mm."""
    sight = seen(rig(), COLUMN)
    px = 24 * 25.4 * 16 / math.hypot(16, 9) / 1920
    assert sight.rig.px_mm == pytest.approx(px)
    assert sight.optical_path_mm == 2780
    assert sight.cap_height_mm == pytest.approx(0.714 * 90 * px)
    assert sight.cap_height_arcmin == pytest.approx(60 * math.degrees(2 * math.atan(0.714 * 90 * px / 2 / 2780)))
    assert sight.x_height_arcmin == pytest.approx(60 * math.degrees(2 * math.atan(0.536 * 90 * px / 2 / 2780)))
    assert sight.travel_left_deg == pytest.approx(math.degrees(math.atan(400 * px / 2780)))
    assert sight.travel_right_deg == pytest.approx(sight.travel_left_deg)
    assert sight.characters_per_line == pytest.approx(800 / 90 / 0.52)
    assert sight.lines_visible == 7  # 1080 - 2 * 54 = 972 px: the read line in the middle, 3.1 above and below
    assert sight.first_line_deg == pytest.approx(math.degrees(math.atan(3 * 135 * px / 2780)))
    assert sight.last_line_deg == pytest.approx(-sight.first_line_deg)
    assert sight.seconds_visible == pytest.approx(7 * 800 / 90 / 0.52 * 0.065)
    assert sight.contrast_ratio == pytest.approx(21)
    assert sight.rig.flip == "vertical"


def test_a_lens_above_the_picture_sees_every_line_below_it() -> None:
    sight = seen(rig(DIRECT), Column(500, 50, 75))
    px = 345 / 1920
    margin = 54
    off_px = 40 / (194 / 1080) + margin + 75 / 2
    assert sight.first_line_deg == pytest.approx(-math.degrees(math.atan(off_px * 194 / 1080 / 1100)))
    assert sight.reading_line_deg == sight.first_line_deg
    assert sight.lines_visible == math.floor((1080 - 2 * margin) / 75)
    assert sight.travel_left_deg == pytest.approx(math.degrees(math.atan(250 * px / 1100)))


def test_a_column_at_the_edge_travels_further_to_one_side() -> None:
    sight = seen(rig(lens_x=0.1), Column(800, 90, 135))
    left, width = 54, 800  # moved in to the margin
    px, lens = rig().px_mm, 192
    assert sight.travel_left_deg == pytest.approx(math.degrees(math.atan((lens - left) * px / 2780)))
    assert sight.travel_right_deg == pytest.approx(math.degrees(math.atan((left + width - lens) * px / 2780)))


def test_lines_stay_inside_the_margins() -> None:
    for lens_y in (-0.5, 0.0, 0.3, 0.5, 0.9, 1.4):
        one = rig(lens_y=lens_y)
        placed = layout(one, COLUMN)
        assert placed.first_px - 67.5 >= 54 - 1e-6
        assert placed.last_px + 67.5 <= 1080 - 54 + 1e-6
        assert (placed.last_px - placed.first_px) / 135 == pytest.approx(placed.lines - 1)


def test_light_with_a_known_glass() -> None:
    known = rig(split="70/30", glass_thickness="3 mm", screen_cd_m2=300, black_cd_m2=0.3, stray_cd_m2=5)
    sight = seen(known, COLUMN)
    assert sight.lens_loss_stops == pytest.approx(-math.log2(0.7))
    assert sight.contrast_at_eye == pytest.approx((0.3 * 300 + 5) / (0.3 * 0.3 + 5))
    assert sight.ghost_mm == pytest.approx(2.23, abs=0.005)


def test_light_with_an_unknown_glass_is_not_guessed() -> None:
    sight = seen(rig(), COLUMN)
    assert sight.lens_loss_stops is sight.contrast_at_eye is sight.ghost_mm is None
    assert "contrast_at_eye" not in {v.quantity for v in sight.verdicts}


def test_type_that_is_too_small_is_a_fault_with_its_source() -> None:
    sight = seen(rig(), Column(500, 40, 60))
    assert levels(sight, "cap_height_arcmin") >= {"fix", "look", "good"}
    worst = next(v for v in sight.verdicts if v.level == "fix")
    assert (worst.quantity, worst.low, worst.unit) == ("cap_height_arcmin", 16, "arcmin")
    assert "ISO 9241-3" in worst.source


def test_a_wide_column_makes_the_eyes_sweep() -> None:
    assert "fix" in levels(seen(rig(), Column(1700, 90, 135)), "travel_deg")
    assert levels(seen(rig(), Column(380, 90, 135)), "travel_deg") == {"good"}


def test_what_sources_contradict_is_said() -> None:
    said = " ".join(seen(rig(), COLUMN).contradictions)
    assert "van Eijk" in said
    assert "Horstmann & Linke 2021 (at most 2.6)" in said
    assert "(at most 1.2) would not" in said


def test_a_weaker_eye_gets_stricter_limits() -> None:
    column = Column(800, 75, 113)
    assert "fix" not in levels(seen(rig(), column), "cap_height_arcmin")
    assert "fix" in levels(seen(rig(), column, Reader("a", "A", acuity=0.5)), "cap_height_arcmin")


def test_square_characters_have_limits_of_their_own() -> None:
    figures = TypeFigures(cap_em=0.73, x_em=0.54, advance_em=1.0, seconds_per_character=0.15)
    sight = sightline(rig(), COLUMN, None, figures, default_limits())
    assert [v.low or v.high for v in sight.verdicts if v.quantity == "characters_per_line"] == [8, 40]
    assert sight.words_per_line is None


CONTRACT = (
    "id", "optical_path_mm", "cap_height_mm", "cap_height_arcmin", "x_height_arcmin", "travel_left_deg",
    "travel_right_deg", "first_line_deg", "last_line_deg", "characters_per_line", "lines_visible", "seconds_visible",
    "contrast_ratio", "flip", "verdicts", "advice",
)  # fmt: skip


def test_json_has_the_contracts_keys_and_the_records_figures() -> None:
    sight = seen(rig(), COLUMN)
    found = sightline_object(sight)
    assert set(CONTRACT) <= set(found)
    assert set(found["verdicts"][0]) == {"quantity", "value", "unit", "low", "high", "level", "source"}
    for field in fields(sight):
        value = getattr(sight, field.name)
        if isinstance(value, float) and field.name in found:
            assert found[field.name] == pytest.approx(value, abs=1e-6)


def test_cautions_fit_the_rig() -> None:
    below, above, direct = (" ".join(cautions(one)) for one in (rig(), rig(lies="above"), rig(DIRECT)))
    assert "glass" in below.lower()
    assert "hangs over" in above
    assert "hangs over" not in below
    assert "counterweight" not in direct
    assert all("Local codes" in text and "cables" in text for text in (below, above, direct))
    assert any("nearer than a metre" in text for text in cautions(replace(rig(DIRECT), eye_to_glass_mm=600)))


def test_glasses_get_a_word_of_their_own() -> None:
    said = " ".join(cautions(rig(), Reader("a", "Ada", glasses="varifocals")))
    assert "Ada wears glasses (varifocals)" in said
    assert "wears glasses" not in " ".join(cautions(rig(), Reader("a", "Ada")))
