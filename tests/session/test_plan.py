"""Sums of a session: exact to the millisecond, and a chance that comes true."""

from __future__ import annotations

from datetime import timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from promptprep.model.session import TimedItem
from promptprep.session.plan import needed_ms, planned_session
from promptprep.session.spread import Spread
from tests.session.make import START, item, order

LENGTHS = st.lists(
    st.tuples(st.integers(0, 3_600_000), st.integers(0, 60_000), st.sampled_from(["ines", "tomas"])),
    min_size=1,
    max_size=40,
)


def timed(parts: list[tuple[int, int, str]]) -> list[TimedItem]:
    return [
        item(f"X{i}", ms / 1000, ms / 1e4, ms / 2e4, reader=reader, changeover_ms=gap)
        for i, (ms, gap, reader) in enumerate(parts)
    ]


@given(LENGTHS, st.integers(1, 36_000_000))
def test_total_is_the_sum_of_its_parts_and_back_times_hold_the_end(
    parts: list[tuple[int, int, str]], end_ms: int
) -> None:
    items = timed(parts)
    session = planned_session(order(items, end_ms / 1000), items)
    runs, gaps = [t.runs_ms for t in items], [t.item.changeover_ms for t in items[1:]]
    assert session.end_ms == sum(runs) + sum(gaps)
    assert session.over_ms == session.end_ms - end_ms
    for i, row in enumerate(session.items):
        assert row.back_ms is not None
        assert row.back_ms + sum(runs[i:]) + sum(gaps[i:]) == end_ms
        assert row.start_low_ms <= row.start_ms <= row.start_high_ms


@given(LENGTHS)
def test_with_only_an_end_the_start_is_the_first_back_time(parts: list[tuple[int, int, str]]) -> None:
    items = timed(parts)
    session = planned_session(order(items, 7200, start=None), items)
    assert session.over_ms == 0
    assert session.items[0].back_ms == 0


def test_one_script_has_the_range_of_its_own_timing() -> None:
    one = item("A", 240, 18, 6, fixed_s=40)
    session = planned_session(order([one], 250), [one])
    assert session.end_low_ms == pytest.approx(one.timing.low_s * 1000, abs=1)
    assert session.end_high_ms == pytest.approx(one.timing.high_s * 1000, abs=1)


def test_one_readers_error_does_not_cancel_and_two_readers_do() -> None:
    def sd(readers: list[str]) -> float:
        spread = Spread()
        for i, reader in enumerate(readers):
            spread.add(item(f"X{i}", 100, 10).timing, reader)
        return spread.sd_s

    assert sd(["a"] * 4) == pytest.approx(40)
    assert sd(["a", "b", "c", "d"]) == pytest.approx(20)


def test_own_scatter_adds_in_squares() -> None:
    spread = Spread()
    for _ in range(9):
        spread.add(item("X", 100, 0, 5).timing, "a")
    assert spread.sd_s == pytest.approx(15)


def drawn_ends(items: list[TimedItem], rng: np.random.Generator, ats: dict[str, float], law: str) -> np.ndarray:
    """Ends of simulated sessions: each reader's error drawn once a session, each passage's own every time."""
    count = 20_000
    readers = {one.reader: rng.standard_normal(count) for one in items}
    now = np.zeros(count)
    for i, one in enumerate(items):
        t = one.timing
        now += one.item.changeover_ms / 1000 if i else 0.0
        if one.item.code in ats:
            now = np.maximum(now, ats[one.item.code])
        spoken = t.spoken_s
        if law == "normal":
            now += t.fixed_s + spoken + t.common_sd_s * readers[one.reader] + t.own_sd_s * rng.standard_normal(count)
        else:
            common = np.exp(t.common_sd_s / spoken * readers[one.reader])
            now += t.fixed_s + spoken * common + t.own_sd_s * rng.standard_normal(count)
    return now


@pytest.mark.parametrize("law", ["normal", "lognormal"])
@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("waits", [False, True])
def test_the_stated_chance_comes_true_within_three_points(law: str, seed: int, waits: bool) -> None:
    rng = np.random.default_rng(seed)
    items: list[TimedItem] = []
    total = 0.0
    ats: dict[str, float] = {}
    for i in range(int(rng.integers(2, 30))):
        mean = float(rng.uniform(30, 900))
        at = None
        if waits and i and rng.random() < 0.15:
            ats[f"X{i}"] = round(total * float(rng.uniform(0.97, 1.06)), 3)
            at = START + timedelta(seconds=ats[f"X{i}"])
            total = max(total, ats[f"X{i}"])
        reader = str(rng.choice(["a", "b", "c"]))
        fixed = mean * float(rng.uniform(0, 0.5))
        items.append(
            item(f"X{i}", mean, 0.09 * (mean - fixed), 0.3 * (mean - fixed) ** 0.5, reader=reader, fixed_s=fixed, at=at)
        )
        total += mean
    ends = drawn_ends(items, rng, ats, law)
    for quantile in (0.1, 0.3, 0.5, 0.7, 0.9):
        end_s = round(float(np.quantile(ends, quantile)), 3)
        session = planned_session(order(items, end_s), items)
        assert session.chance == pytest.approx(quantile, abs=0.03)


def test_what_is_needed_gives_the_wanted_chance() -> None:
    items = [item(f"X{i}", 300, 25, 5) for i in range(6)]
    session = planned_session(order(items, 1850), items)
    needed = needed_ms(session, 0.9)
    later = planned_session(order(items, 1850 + needed / 1000), items)
    assert session.chance is not None
    assert session.chance < 0.9
    assert later.chance == pytest.approx(0.9, abs=0.001)
    assert needed_ms(later, 0.89) == 0


def test_timing_the_rest_again() -> None:
    items = [item(f"X{i}", 300) for i in range(4)]
    session = planned_session(order(items, 1200), items, START + timedelta(seconds=650))
    assert [row.done for row in session.items] == [True, True, False, False]
    assert session.end_ms == 650_000 + 600_000
    named = planned_session(order(items, 1200), items, START + timedelta(seconds=650), 3)
    assert named.end_ms == 650_000 + 300_000


def test_an_item_with_a_clock_time_waits_and_bounds_those_before_it() -> None:
    items = [item("A", 100), item("B", 100, at=START + timedelta(seconds=150), changeover_ms=10_000)]
    session = planned_session(order(items, 400), items)
    assert [row.start_ms for row in session.items] == [0, 150_000]
    assert session.items[1].wait_ms == 40_000
    assert [row.back_ms for row in session.items] == [40_000, 300_000]


def test_when_nothing_is_left_the_plan_stands() -> None:
    items = [item("A", 100, 10, 5)]
    session = planned_session(order(items, 400), items, START + timedelta(seconds=300))
    assert session.items[0].done
    assert (session.end_low_ms, session.end_ms, session.end_high_ms, session.chance) == (100_000, 100_000, 100_000, 1.0)
