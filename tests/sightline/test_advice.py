"""The advice: a true optimum inside the bounds, and changes that do what they say."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from promptprep.errors import BadGeometry
from promptprep.model.rig import Reader, Rig
from promptprep.sightline.advice import Advice, advise
from promptprep.sightline.changes import keeps_bounds, scaled
from promptprep.sightline.column import column_for
from promptprep.sightline.optimum import best_column
from promptprep.sightline.terms import Weighing, bounds_for, column_of
from promptprep.store.limits import default_limits
from tests.sightline.rigs import DIRECT, FIGURES, rig

LIMITS = default_limits()


def weighing(one: Rig, reader: Reader | None = None) -> Weighing:
    return Weighing(one, FIGURES, bounds_for(LIMITS, reader, FIGURES.advance_em))


def advice(one: Rig, **options: Any) -> Advice:
    return advise(one, None, FIGURES, LIMITS, **options)


def test_the_best_is_inside_every_bound() -> None:
    found = advice(rig())
    assert found.possible
    assert found.figures["cap_height_arcmin"] >= 20
    assert found.figures["travel_deg"] <= 2.6
    assert found.figures["characters_per_line"] >= 13
    assert found.figures["lines_visible"] >= 3
    assert found.figures["seconds_visible"] >= 3
    assert max(found.terms.values()) <= 1
    assert found.changes == ()


def test_nothing_near_or_far_is_better_than_the_best() -> None:
    """A plain search over all type sizes and every eighth column finds nothing cheaper."""
    own = weighing(rig())
    best = best_column(own)
    cost = own.cost(best.font_px, best.width_px, own.lines(best.font_px))
    others = min(own.cost(f, w, own.lines(f)) for f in range(6, 640, 2) for w in range(8, 1812, 8))
    assert cost <= others * (1 + 1e-4)


def test_the_region_is_where_the_bounds_hold() -> None:
    own = weighing(rig())
    rows = advice(rig()).region
    for font, low, high in rows[1:-1]:
        assert keeps_bounds(own, column_of(own.rig, font, (low + high) / 2))
        assert not keeps_bounds(own, column_of(own.rig, font, low * 0.98))
        assert not keeps_bounds(own, column_of(own.rig, font, high * 1.02))
    assert not keeps_bounds(own, column_of(own.rig, rows[0][0] * 0.98, rows[0][2]))


def test_what_the_studio_set_stays() -> None:
    for font, column in ((52.0, 700.0), (52.0, None), (None, 700.0)):
        one = replace(rig(), font_px=font, column_px=column)
        used = column_for(one, None, FIGURES, LIMITS)
        assert font in (None, used.font_px)
        assert column in (None, used.width_px)
        assert used.line_px == math.ceil(used.font_px * 1.5)


def test_the_best_column_holds_the_longest_word_if_it_can() -> None:
    plain = best_column(weighing(rig()))
    for longest in (10.0, 12.5):
        figures = replace(FIGURES, longest_word_em=longest)
        found = advise(rig(), None, figures, LIMITS)
        assert found.possible
        assert found.column.width_em >= longest > plain.width_em
        assert found.figures["cap_height_arcmin"] >= 16
    hopeless = advise(rig(), None, replace(FIGURES, longest_word_em=60.0), LIMITS)
    assert hopeless.column == plain


def test_a_column_too_narrow_for_a_word_is_told_so() -> None:
    figures = replace(FIGURES, longest_word_em=12.0)
    one = rig()
    found = advise(one, None, figures, LIMITS, column=column_of(one, 70, 700))
    assert found.sentence.startswith("The longest word is 12.0 em wide, the column 10.0 em")


def test_an_unknown_pace_leaves_only_the_bound_on_seconds_out() -> None:
    found = advise(rig(), None, replace(FIGURES, seconds_per_character=0.0), LIMITS)
    assert found.possible
    assert found.terms["view"] == 0
    assert found.figures["characters_per_line"] >= 13


@pytest.mark.parametrize("name", ["cap_em", "x_em", "advance_em"])
@pytest.mark.parametrize("bad", [0.0, -1.0, math.nan, math.inf])
def test_type_without_extent_is_a_fault(name: str, bad: float) -> None:
    with pytest.raises(BadGeometry, match=name.split("_")[0]):
        column_for(rig(), None, replace(FIGURES, **{name: bad}), LIMITS)


def test_a_weaker_eye_gets_larger_type() -> None:
    strong, weak = (best_column(weighing(rig(), Reader("a", "A", acuity=a))) for a in (1.0, 0.5))
    assert weak.font_px > strong.font_px * 1.1


def test_small_type_is_answered_with_type_and_with_a_step() -> None:
    one = rig(eye_to_glass="1.6 m")
    found = advice(one, column=column_of(one, 36, 420))
    kinds = [change.kind for change in found.changes]
    assert found.possible
    assert kinds == ["type", "eye_to_glass"]
    step = found.changes[1]
    assert step.after < step.before
    assert "stand" in found.sentence
    assert "nearer" in found.sentence
    moved = replace(one, eye_to_glass_mm=step.after)
    assert keeps_bounds(weighing(moved), column_of(one, 36, 420))
    assert not keeps_bounds(weighing(replace(one, eye_to_glass_mm=step.after + 50)), column_of(one, 36, 420))


FAR = {"diagonal": "10.1 in", "pixels": "1280x800", "eye_to_glass": "4.4 m", "glass_to_screen": "14 cm"}


def test_an_impossible_rig_is_answered_with_the_nearest_changes() -> None:
    one = rig(**FAR)
    found = advice(one)
    assert not found.possible
    assert found.region == ()
    amounts = [change.amount for change in found.changes]
    assert amounts == sorted(amounts)
    for change in found.changes:
        if change.kind == "eye_to_glass":
            moved, short = (replace(one, eye_to_glass_mm=mm) for mm in (change.after, change.after + 50))
        else:
            moved, short = (scaled(one, size / 10.1) for size in (change.after, change.after - 1))
        assert weighing(moved).possible()
        assert not weighing(short).possible()
        assert change.then is not None
        assert keeps_bounds(weighing(moved), change.then)


def test_a_lens_far_beside_the_picture_is_told_so() -> None:
    found = advice(rig(DIRECT, lens_x=1.3, lens_y=0.5))
    assert not found.possible
    assert "beside" in found.sentence
    assert any("middle of the picture" in change.text for change in found.changes)


def test_a_lens_high_above_the_picture_means_standing_back() -> None:
    found = advice(rig(DIRECT, lens_y="-9 cm"))
    assert not found.possible
    assert found.changes[0].kind == "eye_to_glass"
    assert found.changes[0].after > 1100


def test_a_line_above_the_lens_is_borne_less_than_one_below() -> None:
    below, above = advice(rig(DIRECT, lens_y=-0.25)), advice(rig(DIRECT, lens_y=1.25))
    assert below.possible
    assert not above.possible
    assert "above the lens" in above.sentence


@pytest.mark.parametrize(("ink", "ground", "word"), [("#333333", "#000000", "white"), ("#ffff00", "#ffffff", "black")])
def test_colours_that_differ_too_little_are_told_first(ink: str, ground: str, word: str) -> None:
    found = advice(rig(ink=ink, ground=ground))
    assert found.sentence.startswith("The two colours differ too little")
    assert found.changes[-1].kind == "ink"
    assert word in found.changes[-1].text
    assert found.changes[-1].after > 4.5


SIZES = st.fixed_dictionaries(
    {
        "diagonal": st.floats(60, 4000),
        "eye_to_glass": st.floats(150, 30_000),
        "glass_to_screen": st.floats(10, 3000),
        "lens_x": st.floats(-2, 3),
        "lens_y": st.floats(-2, 3),
        "leading": st.floats(1, 4),
        "margin": st.floats(0, 0.45),
        "pixels": st.sampled_from(["1920x1080", "1280x800", "100x100", "3840x2160", "800x1280", "20000x150"]),
    }
)


@given(SIZES, st.sampled_from(["camera", "reader"]))
@settings(max_examples=30, deadline=None)
def test_any_room_gets_finite_advice(sizes: dict[str, Any], top: str) -> None:
    found = advice(rig(top=top, **sizes))
    assert found.sentence
    assert math.isfinite(found.column.width_px)
    assert found.column.font_px >= 6
    assert all(map(math.isfinite, found.figures.values()))
    assert found.possible == bool(found.region)


@given(SIZES)
@settings(max_examples=25, deadline=None)
def test_where_anything_is_possible_the_best_is_legible(sizes: dict[str, Any]) -> None:
    """Whole pixels may miss a bound on pictures of few pixels, so some room is asked for."""
    one = rig(**sizes)
    rows = advice(one).region
    if rows and rows[-1][0] > rows[0][0] + 4 and rows[1][2] > rows[1][1] + 8:
        assert keeps_bounds(weighing(one), advice(one).column)


@pytest.mark.parametrize(("mm", "word"), [(600.0, "60 cm"), (1050.0, "1.05 m"), (2000.0, "2 m")])
def test_distances_read_as_people_say_them(mm: float, word: str) -> None:
    from promptprep.sightline.changes import distance_text

    assert distance_text(mm) == word
