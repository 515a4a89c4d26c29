"""Any text in any of the three languages: nothing lost, nothing doubled, no figure left, work in a straight line."""

from __future__ import annotations

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.speaking.cjk import readings, said

TAGS = ("ja", "zh", "ko")
COPY = st.text(
    st.sampled_from(
        "0123456789０１,.:：/-–〜~+±−%℃° $¥€ABIVXmk.#@№½Ⅲ①²年月日時分人個万億点号第时명개번대분의월일원만억元两年前"
        "()（）\ufffc\u200f٣😀\0"
    ),
    max_size=40,
)


@given(st.sampled_from(TAGS), COPY)
def test_readings_are_disjoint_in_order_and_leave_no_figure(tag: str, text: str) -> None:
    last = 0
    for reading in readings(text, tag):
        assert last <= reading.span.start < reading.span.end <= len(text)
        last = reading.span.end
    assert not any(c.isdecimal() for c in said(text, tag))


@given(
    st.sampled_from(TAGS),
    st.text(st.characters(blacklist_categories=("Nd", "Nl", "No", "Sc", "Sm", "So")), max_size=60),
)
def test_what_lies_outside_the_readings_passes(tag: str, text: str) -> None:
    spans = [r.span for r in readings(text, tag)]
    kept = "".join(c for i, c in enumerate(text) if not any(s.start <= i < s.end for s in spans))
    spoken = iter(said(text, tag))
    assert all(c in spoken for c in kept)


@pytest.mark.parametrize("tag", TAGS)
@pytest.mark.parametrize(
    "unit", ["1", "1-", "1,234,", "$1-", "12:34~", "1--1", "A1", "3万", "Ⅳ", "1/2", "(03) ", "a.b"]
)
def test_work_grows_in_a_straight_line(tag: str, unit: str) -> None:
    def seconds(text: str) -> float:
        begun = time.process_time()
        said(text, tag)
        return time.process_time() - begun

    short = min(seconds(unit * 1500) for _ in range(3))
    long = min(seconds(unit * 12000) for _ in range(3))  # eight times the text: 64 times the work were it quadratic
    assert long < 28 * short + 0.05


@pytest.mark.parametrize("tag", TAGS)
def test_ten_thousand_digits_in_a_row_are_read_one_by_one(tag: str) -> None:
    (reading,) = readings("7" * 10_000, tag)
    assert (len(reading.span), len(reading.said), reading.kind) == (10_000, 10_000, "serial")
