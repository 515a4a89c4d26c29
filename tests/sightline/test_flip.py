"""The flip that follows from how the screen lies, and what cannot be."""

from __future__ import annotations

import pytest

from promptprep.errors import BadGeometry
from promptprep.sightline.flip import TOPS, flip_for


def test_half_a_turn_of_the_screen_adds_both_flips() -> None:
    pairs = {"none": "both", "both": "none", "horizontal": "vertical", "vertical": "horizontal"}
    for lies, tops in TOPS.items():
        one, other = (flip_for(lies, top) for top in tops)
        assert pairs[one] == other


def test_one_reflection_needs_exactly_one_flip_and_none_an_even_number() -> None:
    """A reflection has determinant -1; two of them, or half a turn, have +1."""
    for lies, tops in TOPS.items():
        for top in tops:
            single = flip_for(lies, top) in ("horizontal", "vertical")
            assert single == (lies != "direct")


@pytest.mark.parametrize(("lies", "top"), [("beside", "up"), ("below", "up"), ("direct", "camera"), ("", "")])
def test_what_no_screen_does(lies: str, top: str) -> None:
    with pytest.raises(BadGeometry):
        flip_for(lies, top)
