"""Figures in words."""

from __future__ import annotations

from promptprep.model.lines import Column
from promptprep.rendering.sightline_rows import figure_rows
from tests.sightline.rigs import DIRECT, rig, seen


def test_every_figure_has_its_unit() -> None:
    rows = dict(figure_rows(seen(rig(split="70/30", glass_thickness=3), Column(800, 90, 135))))
    assert rows["eye to text, by the glass"] == "2.78 m"
    assert rows["capitals"] == "22.0 arcminutes, 17.8 mm"
    assert rows["travel to the left of the lens"] == "2.28°"
    assert rows["first line"] == "2.31° above the lens"
    assert rows["line that is read"] == "at the lens"
    assert rows["last line"] == "2.31° below the lens"
    assert rows["in view"] == "7 lines, 7.8 s of speech"
    assert rows["light lost to the lens"] == "0.51 stops"
    assert rows["contrast at the eye"] == "7.0 : 1"
    assert rows["ghost from the glass's second face"] == "2.2 mm"


def test_what_is_not_known_says_so() -> None:
    rows = dict(figure_rows(seen(rig())))
    assert rows["light lost to the lens"] == "not known: give the glass's split"
    assert dict(figure_rows(seen(rig(DIRECT))))["light lost to the lens"] == "none, there is no glass"
