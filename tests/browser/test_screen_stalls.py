"""Takes tell the truth whatever stalls: slow frames, hidden windows, a computer that slept.

Expected lengths are worked from the plan and from the test's own clock, never from the page's sums.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import expect

from promptprep.model.prepared import PreparedScript
from promptprep.rendering.screen_object import rests_s
from promptprep.rendering.screen_plan import screen_plan
from promptprep.store.takes import read_take
from tests.browser.hand_clock import held
from tests.browser.waits import reloaded
from tests.rendering.screen_factory import prepared

pytestmark = pytest.mark.browser

FRAME_S = 1 / 60
GO = "play(8, 1000 / 60);"
A_END_S = 6.537  # where the second segment begins in the plan, and the test says so

STALLS = {
    "nothing": "play(2, 1000 / 60);",
    "a-slow-frame": "play(2, 1000 / 60); frame(700);",
    "many-slow-frames": "for (let i = 0; i < 9; i += 1) { play(0.3, 1000 / 60); frame(310); }",
    "a-second-and-a-half-across-a-segments-end": f"play({A_END_S - 1}, 1000 / 60); frame(1500);",
    "nearly-two-seconds-just-before-a-segments-end": f"play({A_END_S - 2}, 1000 / 60); frame(1990);",
    "a-whole-segment-in-one-frame": f"play({A_END_S - 0.1}, 1000 / 60); frame(1990);",
    "while-held": "play(2, 1000 / 60); key(' '); play(1, 20); frame(900); frame(4000); play(1, 20); key(' ');",
    "before-a-hold": "play(2, 1000 / 60); pass(800); key(' '); play(1, 20); key(' ');",
    "before-a-release": "play(2, 1000 / 60); key(' '); play(1, 20); pass(800); key(' ');",
    "hold-and-release-within-one": "play(2, 1000 / 60); pass(200); key(' '); pass(600); key(' '); pass(100);",
    "a-key-that-was-heard-late": "play(2, 1000 / 60); pass(1100); key(' ', 900); play(1, 20); key(' ');",
    "in-the-soft-stop": "play(2, 1000 / 60); key(' '); frame(100); frame(1200); play(1, 20); key(' ');",
    "in-the-soft-start": "play(2, 1000 / 60); key(' '); play(1, 20); key(' '); frame(100); frame(1200);",
    "a-short-hold-in-a-soft-stop": "play(2, 1000 / 60); key(' '); play(0.1, 20); key(' ');",
    "hold-before-a-segments-end": f"play({A_END_S - 0.1}, 1000 / 60); key(' '); play(2, 20); pass(500); key(' ');",
    "three-seconds": "play(2, 1000 / 60); frame(3000); play(1, 20); key(' ');",
    "a-hold-after-three-seconds": "play(2, 1000 / 60); pass(3000); key(' '); play(1, 20); key(' ');",
    "hidden-for-a-minute": "play(2, 1000 / 60); hide(true); pass(60000); hide(false); frame(16); frame(9); key(' ');",
    "the-computer-slept": "play(2, 1000 / 60); sleep(600000); frame(16); play(1, 20); key(' ');",
    "the-computer-slept-while-held": "play(2, 1000 / 60); key(' '); play(1, 20); sleep(600000); frame(16); key(' ');",
    "hold-where-the-text-stands": f"play({A_END_S - 0.35}, 1000 / 60); key(' '); play(1, 20); key(' ');",
}
HIDE = """window.hide = (hidden) => {
  Object.defineProperty(document, 'hidden', { value: hidden, configurable: true });
  document.dispatchEvent(new Event('visibilitychange'));
}"""


def script() -> PreparedScript:
    text = "The dome opens slowly and the night comes in. We wait until our eyes can see.\n\n"
    return prepared(f"# A\n\n{text}# B\n\nA short one.\n\n# C\n\n[clip 0:02 Moonrise]\n\n{text}")


def taken(page: Any, folder: Path) -> Path:
    with page.expect_download() as download:
        page.evaluate("key('s')")
    file = folder / str(download.value.suggested_filename)
    download.value.save_as(file)
    return file


def planned_s(one: PreparedScript) -> list[float]:
    pairs = zip(one.timing.segments, rests_s(one.timing), strict=True)
    return [s.timing.mean_s - s.timing.fixed_s - rest for s, rest in pairs]


def summed_s(take: dict[str, Any]) -> float:
    """Reading and holds of a take that nothing was left out of."""
    read = sum(s["ended_s"] - s["started_s"] - s["held_s"] for s in take["segments"])
    return float(read + sum(hold["length_s"] for hold in take["holds"]))


def loaded(file: Path) -> dict[str, Any]:
    return dict(json.loads(file.read_text("utf-8")))


@pytest.mark.parametrize("stall", STALLS.values(), ids=STALLS)
def test_a_stall_neither_shortens_nor_lengthens_a_reading(
    context: Any, write_page: Any, tmp_path: Path, stall: str
) -> None:
    one = script()
    assert one.timing.segments[1].start_s == pytest.approx(A_END_S, abs=0.01)
    page = held(context, write_page, one)
    page.evaluate(HIDE)
    page.evaluate("key('t'); frame(100); key(' ')")
    page.evaluate(stall + GO + GO)
    page.evaluate("key('t')")
    timed = read_take(taken(page, tmp_path))
    assert [reading.seconds for reading in timed] == pytest.approx(planned_s(one), abs=0.005)


@pytest.mark.parametrize("stall", STALLS.values(), ids=STALLS)
def test_readings_and_holds_make_up_the_takes_whole_time(
    context: Any, write_page: Any, tmp_path: Path, stall: str
) -> None:
    """At a pace of 114 %, with stalls before the clap and the end as well."""
    page = held(context, write_page, script())
    page.evaluate(HIDE)
    page.evaluate("key('t'); pass(40); frame(700); pass(300); key(' ', 100)")
    start = page.evaluate("wall() - 1.04")
    page.evaluate("for (let i = 0; i < 7; i += 1) key('ArrowUp')")
    page.evaluate(f"{stall} play(1, 20); pass(400); key('t')")
    gone = page.evaluate("wall()") - start
    take = loaded(taken(page, tmp_path))
    assert take["ended_s"] == pytest.approx(gone, abs=FRAME_S)
    assert summed_s(take) == pytest.approx(gone, abs=FRAME_S)
    starts = [s["started_s"] for s in take["segments"]]
    assert starts == pytest.approx([take["clap_s"], *(s["ended_s"] for s in take["segments"][:-1])])


@pytest.mark.parametrize(
    ("name", "held_s"),
    [("a-slow-frame", 0), ("before-a-release", 1.8), ("in-the-soft-start", 1.0), ("hold-where-the-text-stands", 1.0)],
)
def test_the_picture_is_with_the_plan_again(context: Any, write_page: Any, name: str, held_s: float) -> None:
    """What stood behind is paid back, what ran on is waited for: four seconds later the line is at its place."""
    one = script()
    page = held(context, write_page, one)
    page.evaluate("key('t'); frame(100); key(' ')")
    clap = page.evaluate("wall()")
    page.evaluate(f"{STALLS[name]} play(4, 1000 / 60)")
    at_s = page.evaluate("wall()") - clap - held_s
    plan = screen_plan(one)
    assert page.evaluate("shift()") == pytest.approx(plan.frame.lens_y_px - plan.travel.y_px(at_s), abs=2)


def test_a_hold_that_is_jumped_out_of_counts_for_both_segments(context: Any, write_page: Any, tmp_path: Path) -> None:
    """Held for 4 s in A, then to B, held for 3 s more: B's reading is B's alone."""
    one = script()
    page = held(context, write_page, one)
    page.evaluate("key('t'); frame(100); key(' '); play(2, 20); key(' '); play(4, 20); key('ArrowRight')")
    page.evaluate(f"play(3, 20); key(' '); {GO} key('t')")
    file = taken(page, tmp_path)
    take = loaded(file)
    assert [round(s["held_s"], 2) for s in take["segments"][:2]] == [4.0, 3.0]
    assert [reading.seconds for reading in read_take(file)] == pytest.approx(planned_s(one)[1:2], abs=0.005)


def test_a_reading_that_was_cut_off_teaches_nothing(context: Any, write_page: Any, tmp_path: Path) -> None:
    page = held(context, write_page, script())
    page.evaluate("key('t'); frame(100); key(' '); play(2, 20)")
    reloaded(page, kept_s=1.5)
    expect(page.locator("#notice")).to_contain_text("Take 1 was interrupted")
    page.evaluate(f"frame(20); key(' '); {GO} {GO} key('t')")
    file = taken(page, tmp_path)
    assert [s["whole"] for s in loaded(file)["segments"]] == [False, True, True]
    assert len(read_take(file)) == 2


def test_the_clock_goes_on_after_a_guest_part_that_waits(context: Any, write_page: Any, tmp_path: Path) -> None:
    """A guest part that waits at its end is held there and released once, however late the frame comes."""
    text = "# A\n\nFirst the host says this.\n\n[live 0:03 talk]\n\nThen the host goes on and says this.\n"
    one = prepared(text)
    page = held(context, write_page, one)
    page.evaluate(f"key('g'); key('t'); frame(100); key(' '); {GO} frame(1500); {GO}")
    page.evaluate(f"key(' '); {GO} {GO} key('t')")
    take = loaded(taken(page, tmp_path))
    assert [hold["cause"] for hold in take["holds"]] == ["clap", "guest"]
    assert take["segments"][0]["whole"] is True
    assert read_take(tmp_path / "test.en.take-01.json")[0].seconds == pytest.approx(planned_s(one)[0], abs=0.005)
