"""The text moves at the planned pace; holds, jumps and sleep are soft and lose nothing."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest

from promptprep.rendering.screen import screen_html
from promptprep.rendering.screen_plan import screen_plan
from tests.browser.hand_clock import held
from tests.browser.waits import ready, sent_to, until
from tests.rendering.screen_factory import HALL, demo, env, fonts, hour, prepared

pytestmark = pytest.mark.browser


def press(page: Any, *keys: str) -> None:
    for key in keys:
        page.keyboard.press(key)


def late_s(seen: list[list[float]], places: list[float], at_s: list[float], lens_px: float) -> list[float]:
    """For each line how many seconds before or after its planned one it stood within 2 px of the lens."""
    found = []
    for place, planned in zip(places, at_s, strict=True):
        near = [abs(t - planned) for t, shift in seen if abs(t - planned) < 3 and abs(place + shift - lens_px) <= 2]
        found.append(min(near, default=3.0))
    return found


def places(page: Any, count: int) -> list[float]:
    """Middles of the lines from the strip's top."""
    middles = "(n) => { const s = shift(); return [...Array(n).keys()].map((i) => lensOf(i) - s); }"
    found: list[float] = page.evaluate(middles, count)
    return found


def test_each_line_of_ten_minutes_is_at_the_lens_in_time(context: Any, write_page: Any) -> None:
    one = prepared(hour(1500))
    assert one.timing.timing.mean_s > 600
    page = held(context, write_page, one)
    middles = places(page, len(one.broken.lines))
    press(page, " ")
    start = page.evaluate("performance.now() / 1000")
    seen = [[t - start, y] for t, y in page.evaluate("play(605, 1000 / 60)")]
    lines = [line for line in one.broken.lines if line.at_s < 600]
    late = late_s(seen, middles[: len(lines)], [line.at_s for line in lines], HALL.height_px / 2)
    assert max(late) <= 0.1


def test_time_is_kept_at_uneven_frame_rates(context: Any, write_page: Any) -> None:
    one = prepared(hour(300))
    page = held(context, write_page, one)
    middles = places(page, len(one.broken.lines))
    press(page, " ")
    start = page.evaluate("performance.now() / 1000")
    seen = page.evaluate("[16.7, 33.4, 50, 7, 90, 16.7, 41.7, 8.3].flatMap((ms) => play(10, ms))")
    lines = [line for line in one.broken.lines if line.at_s < 78]
    late = late_s([[t - start, y] for t, y in seen], middles[: len(lines)], [x.at_s for x in lines], HALL.height_px / 2)
    assert max(late) <= 0.1


def test_the_text_never_jumps_and_stands_still_in_waits(context: Any, write_page: Any) -> None:
    one = demo("sky.en")
    page = held(context, write_page, one)
    press(page, " ")
    start = page.evaluate("performance.now() / 1000")
    seen = [[t - start, y] for t, y in page.evaluate(f"play({one.timing.timing.mean_s}, 1000 / 60)")]
    steps = [b[1] - a[1] for a, b in pairwise(seen)]
    assert max(steps) <= 0, "the text never runs back"
    assert min(steps) > -0.12 * one.broken.column.line_px, "nor jumps: a line takes eight frames at least"
    for wait in screen_plan(one).waits:
        inside = [y for t, y in seen if wait.at_s + 0.6 < t < wait.end_s - 0.1]
        assert max(inside) - min(inside) <= 1, wait


def test_slower_over_figures() -> None:
    """Eight digits take three times as long as eight letters: the strip moves more slowly while they are said."""
    one = prepared("On the ridge tonight we counted 19283746 bright little stars above the dome of the hall.")
    words = {w.span.of(one.script.segments[0].paragraphs[0].text): w for w in one.timing.segments[0].blocks[0].words}
    speed = {
        text: (screen_plan(one).travel.y_px(w.end_s) - screen_plan(one).travel.y_px(w.start_s)) / (w.end_s - w.start_s)
        for text, w in words.items()
    }
    assert speed["19283746"] < 0.6 * speed["tonight"]


def test_page_and_plan_agree_on_the_travel(context: Any, write_page: Any) -> None:
    one = demo("sky.en")
    page = held(context, write_page, one)
    plan = screen_plan(one)
    for at_s in [0.0, 1.3, 7.77, 12.0, 25.5, 60.25, 101.1, one.timing.timing.mean_s]:
        sent_to(page, f"flip=none&at={at_s}&hold=1")
        page.evaluate("frame(16)")
        assert page.evaluate("shift()") == pytest.approx(plan.frame.lens_y_px - plan.travel.y_px(at_s), abs=1)


def test_hold_and_release_are_soft(context: Any, write_page: Any) -> None:
    page = held(context, write_page, prepared(hour(300)), "flip=none&at=5.2&hold=1")
    press(page, " ")
    going = [y for _, y in page.evaluate("play(3, 10)")]
    press(page, " ")
    stopping = [y for _, y in page.evaluate("play(1, 10)")]
    starts = [going[i] - going[i + 10] for i in range(0, 40, 10)]
    ends = [stopping[i] - stopping[i + 10] for i in range(0, 50, 10)]
    assert starts[0] < starts[-1], "it picks up speed"
    assert ends[0] > ends[3] >= ends[-1] >= 0, "it loses speed"
    assert stopping[-1] == stopping[-40], "and stands"


def test_pace_is_nudged_but_waits_are_not(context: Any, write_page: Any) -> None:
    one = demo("sky.en")
    wait = screen_plan(one).waits[0]
    page = held(context, write_page, one, f"flip=none&at={wait.at_s - 4}&hold=1")
    for _ in range(25):
        press(page, "ArrowUp")
    press(page, " ")
    seen = page.evaluate("play(40, 20)")
    still = [t for (t, y), (_, after) in pairwise(seen) if y == after]
    longest = max(sum(1 for t in still if t0 <= t < t0 + wait.end_s - wait.at_s) for t0 in still[:200:5])
    assert longest * 0.02 > 0.9 * (wait.end_s - wait.at_s), "a clip is as long as ever"


def test_sleep_holds_instead_of_jumping(context: Any, write_page: Any) -> None:
    page = held(context, write_page, prepared(hour(300)))
    press(page, " ")
    page.evaluate("play(5, 20)")
    before = page.evaluate("shift()")
    page.evaluate("frame(90000)")
    page.evaluate("play(1, 20)")
    assert abs(page.evaluate("shift()") - before) < 5
    assert "slept for 90 s" in page.locator("#notice").inner_text()
    press(page, " ")
    page.evaluate("play(2, 20)")
    assert page.evaluate("shift()") < before - 20


def test_a_slow_moment_is_paid_back_softly(context: Any, write_page: Any) -> None:
    page = held(context, write_page, prepared(hour(300)))
    press(page, " ")
    page.evaluate("play(5, 20)")
    before = page.evaluate("shift()")
    page.evaluate("frame(900)")
    assert before - page.evaluate("shift()") < 30, "not all at once"
    page.evaluate("play(4, 20)")
    late = page.evaluate("shift()")
    sent_to(page, "at=9.917")
    page.evaluate("frame(1)")
    assert page.evaluate("shift()") == pytest.approx(late, abs=12)


def test_page_by_page_shows_whole_screenfuls(context: Any, write_page: Any) -> None:
    one = demo("sky.en")
    page = held(context, write_page, one, "flip=none&at=0&hold=1&mode=pages")
    shown = []
    for screenful in screen_plan(one).screenfuls:
        page.evaluate("play(1, 100)")
        lines = page.evaluate(
            """[...document.querySelectorAll('[data-line]')].filter((e) => getComputedStyle(e).visibility === 'visible')
            .map((e) => { const r = e.getBoundingClientRect(); return [Number(e.dataset.line), r.top, r.bottom]; })"""
        )
        assert [n for n, _, _ in lines] == list(range(screenful.first, screenful.last + 1))
        assert all(top >= 0 and bottom <= HALL.height_px for _, top, bottom in lines)
        shown += [n for n, _, _ in lines]
        press(page, "PageDown")
    assert shown == list(range(len(one.broken.lines)))


def test_reduced_motion_means_pages(browser: Any, write_page: Any) -> None:
    context = browser.new_context(reduced_motion="reduce")
    page = context.new_page()
    page.goto(write_page("a.html", screen_html(demo("sky.en"), env(), fonts)) + "#at=0&hold=1")
    ready(page)
    assert page.evaluate("document.getElementById('strip').classList.contains('pages')")
    context.close()


def test_big_changes_follow_slowly_enough(context: Any, write_page: Any) -> None:
    """WCAG 2.3.1: no more than three flashes in a second, whatever is hammered on the keyboard."""
    page = context.new_page()
    page.goto(write_page("a.html", screen_html(demo("sky.en"), env(), fonts)) + "#at=0&hold=1")
    page.evaluate(
        """window.times = []; new MutationObserver(() => times.push(performance.now()))
        .observe(document.getElementById('chart'), { attributes: true, attributeFilter: ['hidden'] })"""
    )
    for _ in range(8):
        page.keyboard.press("c")
    until(page, lambda: page.evaluate("times.length") >= 5)
    times = page.evaluate("times")
    assert min(b - a for a, b in pairwise(times)) > 333


def test_segments_are_jumped_to_and_line_keys_step(context: Any, write_page: Any) -> None:
    one = demo("sky.en")
    page = held(context, write_page, one)
    starts = [segment.start_s for segment in one.timing.segments]
    first = [next(p for p in screen_plan(one).lines if p.line.segment == s) for s in range(len(starts))]
    for placed in first[1:3]:
        press(page, "ArrowRight")
        page.evaluate("play(2, 20)")
        middle = placed.top_px + one.broken.column.line_px / 2
        assert page.evaluate("shift()") == pytest.approx(HALL.height_px / 2 - middle, abs=2)
    press(page, "Home", "]", "]")
    page.evaluate("play(2, 20)")
    assert page.evaluate("lensOf(2)") == pytest.approx(HALL.height_px / 2, abs=2)
