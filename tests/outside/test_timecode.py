"""Timecode against worked values and the drop rule.

Rule: W3C TTML2, `ttp:dropMode`, whose example is 01:08:59:28, :29, 01:09:00:02, :03. Base standard: SMPTE ST 12-1 (from
memory). Frame counts were worked out from the rule.
"""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from promptprep.errors import BadCall
from promptprep.rendering.timecode import RATES, code_of, frame_at, frame_of, rate_named

DROP = RATES["29.97-drop"]
WORKED = {
    0: "00:00:00;00", 1799: "00:00:59;29", 1800: "00:01:00;02", 3597: "00:01:59;29", 3598: "00:02:00;02",
    16184: "00:09:00;02", 17981: "00:09:59;29", 17982: "00:10:00;00", 19782: "00:11:00;02", 107891: "00:59:59;29",
    107892: "01:00:00;00", 124075: "01:08:59;29", 124076: "01:09:00;02", 2589407: "23:59:59;29",
}  # fmt: skip


@pytest.mark.parametrize(("frame", "code"), WORKED.items())
def test_worked_drop_codes(frame: int, code: str) -> None:
    assert code_of(frame, DROP) == code
    assert frame_of(code, DROP) == frame


def test_the_example_of_ttml2() -> None:
    assert [code_of(f, DROP) for f in range(124074, 124078)] == [
        "01:08:59;28", "01:08:59;29", "01:09:00;02", "01:09:00;03",
    ]  # fmt: skip


def test_a_day_of_drop_codes_there_and_back() -> None:
    """Codes repeat every ten minutes: each frame of the first ten, and those around every minute's edge of 24 hours."""
    edges = (1800 * minute - 2 * (minute - minute // 10) for minute in range(24 * 60 + 1))
    frames = {f for edge in edges for f in range(edge - 5, edge + 6) if 0 <= f < 2589408} | set(range(17983))
    codes = [code_of(frame, DROP) for frame in sorted(frames)]
    assert [frame_of(code, DROP) for code in codes] == sorted(frames)
    assert codes == sorted(set(codes))
    assert DROP.day_frames == 2589408
    assert code_of(2589408, DROP) == "00:00:00;00"


@pytest.mark.parametrize("code", ["00:01:00;00", "00:01:00;01", "23:59:00;00", "10:19:00;01"])
def test_skipped_codes_are_refused(code: str) -> None:
    with pytest.raises(BadCall):
        frame_of(code, DROP)


@pytest.mark.parametrize("code", ["", "1:00:00:00", "24:00:00:00", "00:60:00:00", "00:00:00:30", "00:00:00"])
def test_what_is_no_code(code: str) -> None:
    with pytest.raises(BadCall):
        frame_of(code, RATES["30"])


def test_drift_of_drop_and_nondrop_in_real_time() -> None:
    """17982 frames last 599.9994 s; a counted hour without drops lasts 3603.6 s (worked from 30000/1001)."""
    assert Fraction(17982 * 1001, 30000) == Fraction("599.9994")
    hour = frame_of("01:00:00:00", RATES["29.97-nondrop"])
    assert Fraction(hour * 1001, 30000) == Fraction("3603.6")
    assert code_of(frame_at(3_600_000, DROP), DROP) == "01:00:00;00"


@pytest.mark.parametrize("name", RATES)
@given(data=st.data())
def test_round_trips_at_every_rate(name: str, data: st.DataObject) -> None:
    rate = RATES[name]
    frame = data.draw(st.integers(0, rate.day_frames - 1))
    assert frame_of(code_of(frame, rate), rate) == frame
    first_ms = math.ceil(Fraction(frame * 1000 * rate.per_s, rate.frames))  # the first whole millisecond it is on
    assert frame_at(first_ms, rate) == frame
    assert frame_at(first_ms - 1, rate) == frame - 1


@given(st.lists(st.integers(0, 3_600_000), max_size=30), st.sampled_from(sorted(RATES)))
def test_lengths_in_frames_add_up(parts: list[int], name: str) -> None:
    """Frames of neighbours share their edge: the frames of the parts are those of the whole."""
    rate, at, frames = RATES[name], 0, 0
    for part in parts:
        frames += frame_at(at + part, rate) - frame_at(at, rate)
        at += part
    assert frames == frame_at(at, rate)


def test_names_of_rates() -> None:
    assert rate_named("29.97").dropped == 2
    assert rate_named("59.94").dropped == 4
    assert rate_named("25 fps").name == "25"
    with pytest.raises(BadCall):
        rate_named("31")
