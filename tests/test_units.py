"""Times and lengths as people write them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from promptprep.errors import BadCall
from promptprep.spans import LineIndex
from promptprep.units import clock_text, parse_duration, parse_length


@pytest.mark.parametrize(
    ("text", "seconds"),
    [
        ("4:00", 240),
        ("0:25", 25),
        ("1:02:03", 3723),
        ("90:00", 5400),
        ("2", 2),
        ("2.5 s", 2.5),
        ("2 min", 120),
        ("0:01.5", 1.5),
    ],
)
def test_durations(text: str, seconds: float) -> None:
    assert parse_duration(text) == seconds


@pytest.mark.parametrize(
    "text",
    ["", "soon", "4:75", "-1", "1:2:3:4", "4:0", "nan", "1:75:00", "1000 h", "9" * 400, "9" * 400 + " min"],
    ids=lambda text: text[:12],
)
def test_what_is_no_duration(text: str) -> None:
    with pytest.raises(BadCall):
        parse_duration(text)


# The international yard and pound agreement of 1959: an inch is exactly 25.4 mm, a foot 12 inches.
@pytest.mark.parametrize(
    ("text", "mm"),
    [("1 in", 25.4), ("6 ft", 1828.8), ("6 ft 2 in", 1879.6), ("1.5 m", 1500), ("60 cm", 600), ("12 mm", 12), (7, 7)],
)
def test_lengths(text: str | float, mm: float) -> None:
    assert parse_length(text) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize(
    "text", ['24"', "24 inches", "24inch", "24″", "24”", "24''", "24 IN", "2 feet", "1 foot 12 inches"]
)
def test_lengths_as_people_write_them(text: str) -> None:
    assert parse_length(text) == pytest.approx(609.6)


def test_metric_lengths_in_words() -> None:
    assert [parse_length(t) for t in ("2 metres", "30 centimeters", "4 millimetres")] == [2000, 300, 4]


@pytest.mark.parametrize("text", ["", "12", "1 mile", "inf m", True, float("nan"), 10**400], ids=lambda x: f"{x!r:.9}")
def test_what_is_no_length(text: str | float) -> None:
    with pytest.raises(BadCall):
        parse_length(text)


@given(st.integers(0, 359_999))
def test_clock_text_reads_back(seconds: int) -> None:
    assert parse_duration(clock_text(seconds)) == seconds


@given(st.text(alphabet="a\r\n", max_size=30))
def test_line_index_agrees_with_splitlines(text: str) -> None:
    lines = text.splitlines(keepends=True)
    index = LineIndex(text)
    at = 0
    for number, line in enumerate(lines, 1):
        assert index.place(at) == (number, 1)
        assert index.place(at + len(line) - 1) == (number, len(line))
        at += len(line)
