"""From plan to glass to take and back: who reads exactly at the planned pace is learned as exactly that."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from promptprep import faces
from promptprep.store.starter import start
from tests.browser.hand_clock import HAND_CLOCK

pytestmark = pytest.mark.browser
COPY = """+++
reader = "me"
slot = "1:00"
+++

# Opening

Good evening, and welcome to the ridge. The dome is open, and the air is dry.

Tonight we look for three bright things in the south.

# The look

[clip 0:03 Moonrise]

Begin with the brightest. Wait until your eyes are used to the dark, and then look a little to the left of it.

# Close

That was all. Good night, and clear skies.
"""


@pytest.mark.parametrize(("presses", "low", "high"), [(0, 0.985, 1.015), (5, 0.9, 0.97), (-5, 1.03, 1.1)])
def test_a_reader_at_the_planned_pace_is_learned_as_that(
    context: Any, tmp_path: Path, presses: int, low: float, high: float
) -> None:
    """The take's seconds and the learner's words are of the same stretch of speech; at 110 % or 90 % of the plan the
    pace moves that way, part of the way after one take."""
    start(tmp_path / "studio")
    script = tmp_path / "studio" / "night.en.md"
    script.write_text(COPY, "utf-8")
    faces.prepare([script], tmp_path / "out")
    page = context.new_page()
    page.add_init_script(HAND_CLOCK)
    page.goto((tmp_path / "out" / "night.en.screen.html").as_uri())
    faster = f"key('Arrow{'Up' if presses > 0 else 'Down'}');" * abs(presses)
    page.evaluate(f"frame(16); {faster} key('t'); frame(100); key(' '); play(60, 1000 / 60); key('t')")
    with page.expect_download() as download:
        page.evaluate("key('s')")
    take = tmp_path / "studio" / "night.en.take-01.json"
    download.value.save_as(take)
    (pace,) = faces.learn_reader([str(take)], dry=True).paces
    assert pace.samples == 3
    assert low < pace.scale < high
