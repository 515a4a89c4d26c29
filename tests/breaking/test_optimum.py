"""The optimum against all ways to break, tried one by one."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from promptprep.breaking.optimum import HARD, Part, Weights, best_ends, fullest_ends, weights_for
from promptprep.breaking.pieces import Piece
from promptprep.spans import Span

WIDTH = 10.0


def pieces_of(widths: list[float]) -> list[Piece]:
    return [Piece(Span(i, i + 1), width, 0.5) for i, width in enumerate(widths)]


def cost_of(widths: list[float], costs: list[float], ends: tuple[int, ...], weights: Weights) -> float:
    """The cost of one way to break, as the weights are described; infinite where a line is too wide."""
    total, start = 0.0, 0
    for end in ends:
        line = sum(widths[start : end + 1]) + 0.5 * (end - start)
        if line > WIDTH + 1e-9:
            return float("inf")
        total += weights.line
        if end < len(widths) - 1:
            total += costs[end] + weights.ragged * (1 - line / WIDTH) ** 2
            lone = start == end and line < weights.alone_part * WIDTH and costs[end] >= weights.bound
            total += weights.alone if lone else 0.0
        elif start and line < weights.stub_part * WIDTH:
            total += weights.stub
        start = end + 1
    return total


@given(
    st.lists(st.tuples(st.floats(0.5, 9.5), st.floats(0, 20)), min_size=1, max_size=9),
    st.floats(0, 15),
)
def test_no_other_way_costs_less(drawn: list[tuple[float, float]], line: float) -> None:
    widths, costs = [d[0] for d in drawn], [d[1] for d in drawn][:-1]
    weights = Weights(line=line)
    last = len(widths) - 1
    ways = [(*inner, last) for n in range(len(widths)) for inner in combinations(range(last), n)]
    found = tuple(best_ends(pieces_of(widths), costs, WIDTH, weights))
    least = min(cost_of(widths, costs, way, weights) for way in ways)
    assert cost_of(widths, costs, found, weights) == pytest.approx(least)


def test_filling_takes_the_fewest_lines() -> None:
    assert fullest_ends(pieces_of([4, 4, 4, 4, 4]), WIDTH) == [1, 3, 4]
    assert fullest_ends([], WIDTH) == []
    assert best_ends([], [], WIDTH, Weights()) == []


def test_a_place_that_must_not_end_a_line_is_used_only_where_nothing_else_fits() -> None:
    assert best_ends(pieces_of([4, 4, 4]), [0, HARD], WIDTH, Weights()) == [0, 2]
    assert best_ends(pieces_of([8, 8]), [HARD], WIDTH, Weights()) == [0, 1]


def test_a_long_text_takes_few_lines_more_than_it_must() -> None:
    widths = [0.4 + 0.11 * (i * 7 % 11) for i in range(900)]
    part = Part(pieces_of(widths), [10.0 if i * 5 % 8 < 4 else 0.0 for i in range(899)])
    fewest = len(fullest_ends(part.pieces, WIDTH))
    (weights,) = weights_for([part], WIDTH)
    assert fewest < len(best_ends(part.pieces, part.costs, WIDTH, weights)) <= 1.05 * fewest
    assert len(best_ends(part.pieces, part.costs, WIDTH, Weights(line=0.1))) > 1.05 * fewest


def test_a_long_text_does_so_whatever_its_language_says() -> None:
    widths = [0.4 + 0.11 * (i * 7 % 11) for i in range(900)]
    part = Part(pieces_of(widths), [10.0 if i * 5 % 8 < 4 else 0.0 for i in range(899)])
    assert weights_for([part], WIDTH, price=0.5, growth=2.0) == weights_for([part], WIDTH)


def test_a_price_grows_with_the_lines_as_its_language_says() -> None:
    few, many = (Part(pieces_of([4.0] * count), [0.0] * (count - 1)) for count in (6, 60))
    usual, steep = (weights_for([few, many], WIDTH, growth=growth) for growth in (1.0, 1.5))
    assert 0 < steep[0].line < usual[0].line < usual[1].line < steep[1].line


def test_a_line_costs_less_in_a_narrow_column() -> None:
    """Most cuts are there: it gets as large a part of lines more as a wide one. Not beyond the columns tried."""
    part = Part(pieces_of([2.0] * 20), [0.0] * 19)
    flat = [weights_for([part], width, growth=0.0)[0].line for width in (8, 12, 17, 25, 40)]
    assert flat[0] == flat[1] < flat[2] < flat[3] == flat[4]


def test_each_stretch_has_its_own_price() -> None:
    """A change in one paragraph leaves the price, and so the line ends, of another."""
    costs = [10.0 if i * 5 % 8 < 4 else 0.0 for i in range(59)]
    one, other, third = (
        Part(pieces_of([0.4 + 0.11 * (i * step % 11) for i in range(60)]), costs) for step in (7, 3, 5)
    )
    assert weights_for([one, other], WIDTH)[0] == weights_for([one, third], WIDTH)[0] == weights_for([one], WIDTH)[0]


def test_a_text_of_many_stretches_keeps_its_lines() -> None:
    """Where all together would take too many lines, a line costs more in each."""
    parts = [
        Part(pieces_of([3.1 + (i * step % 7) * 0.4 for i in range(24)]), [20.0 if i % 2 else 0.0 for i in range(23)])
        for step in range(1, 41)
    ]
    fewest = sum(len(fullest_ends(part.pieces, WIDTH)) for part in parts)
    lines = [
        len(best_ends(part.pieces, part.costs, WIDTH, own))
        for part, own in zip(parts, weights_for(parts, WIDTH), strict=True)
    ]
    alone = [len(best_ends(part.pieces, part.costs, WIDTH, *weights_for([part], WIDTH))) for part in parts]
    assert sum(lines) <= 1.05 * fewest < sum(alone)
