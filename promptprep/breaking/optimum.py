"""The best lines of one paragraph, by dynamic programming over the places where a line may end.

The whole paragraph is weighed at once (Knuth & Plass 1981, Software: Practice and Experience 11:1119-1184), with
costs for reading aloud in place of theirs for print: a cut inside a group of sense costs most, then a line more.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from promptprep.breaking.pieces import Piece

HARD = 1e4  # a place that is used only where nothing else fits
_REACH = 48  # how many line starts are weighed for each line end: keeps the work linear in any column

# What one line more costs in a stretch of so many lines: `_PRICE` at ten lines, and `_GROWTH` more for each e-fold of
# them, both by the language. Set so that sentences alone and paragraphs of three, five and ten take about 1.047 times
# the fewest lines. A very long stretch finds its own price within `SPARE`.
_PRICE, _GROWTH, _TEN = 11.2, 4.35, math.log(10)
_LOWEST = 1.2
# By the square root of the column's width in em, as far as it was tried: a narrow column, where most cuts are, gets as
# large a part of lines more as a wide one.
_MIDDLE_EM, _NARROW_EM, _WIDE_EM = 17.0, 12.0, 25.0
_LONG = 60  # lines
SPARE = 0.047  # lines that sense may cost over the fewest there can be, as a part of these
_LEAST_PRICE, _HIGHEST_PRICE = 4.0, 36.0
_HALVINGS = 6
_LIMIT = 1.05  # the same for all stretches of a text together
_COUNTED = 200  # lines from which that is asked: fewer have no mean
_LEVELS = (1.0, 1.02, 1.04, 1.06, 1.08, 1.11, 1.15, 1.25, 1.45, 1.75, 2.1, 2.5)


@dataclass(frozen=True, slots=True)
class Weights:
    """Costs in one scale, where 10 is a line end between an article and its noun. Common practice, no source.

    `line` is what one line more costs, `ragged` what a line costs by the square of its empty part, `stub` what a
    last line costs that fills less than `stub_part` of the column; `alone` what a line costs that is but one piece,
    fills less than `alone_part` of the column and is bound to the next line by a cost of `bound` or more.
    """

    line: float = 5.0
    ragged: float = 1.5
    stub: float = 6.0
    stub_part: float = 0.2
    alone: float = 6.0
    alone_part: float = 0.3
    bound: float = 5.0


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch that is broken for itself: its pieces and the cost of a line end after each but the last."""

    pieces: Sequence[Piece]
    costs: Sequence[float]


def weights_for(parts: Sequence[Part], width_em: float, price: float = 1.0, growth: float = 1.0) -> list[Weights]:
    """For each part the weights under which it takes few lines more than it must.

    A cut that is avoided mostly costs a line, so the price of a line decides how many there are. Each part has its own
    price, whatever stands beside it: a change in one paragraph leaves the line ends of the others. Only a text whose
    parts together would take more than `_LIMIT` times the fewest lines has all its prices raised by one of few levels.
    `price` and `growth` are the language's factors of `_PRICE` and, within it, of `_GROWTH`.
    """
    fewest = [len(fullest_ends(part.pieces, width_em)) for part in parts]
    price *= _by_width(width_em)
    prices = [
        price * _usual(lines, growth) if lines < _LONG else _found(part, lines, width_em)
        for part, lines in zip(parts, fewest, strict=True)
    ]
    level = _level(parts, prices, sum(fewest), width_em)
    return [Weights(line=own * level) for own in prices]


def _usual(fewest: int, growth: float) -> float:
    return max(_LOWEST, _PRICE + growth * _GROWTH * (math.log(max(fewest, 1)) - _TEN))


def _by_width(width_em: float) -> float:
    return math.sqrt(min(max(width_em, _NARROW_EM), _WIDE_EM) / _MIDDLE_EM)


def _found(part: Part, fewest: int, width_em: float) -> float:
    """The least price with which a long stretch keeps within `SPARE`."""
    allowed = math.floor(fewest * (1 + SPARE) + 0.5)
    low, high = _LEAST_PRICE, _HIGHEST_PRICE
    if _lines(part, width_em, low) <= allowed:
        return low
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if _lines(part, width_em, middle) <= allowed:
            high = middle
        else:
            low = middle
    return high


def _level(parts: Sequence[Part], prices: Sequence[float], fewest: int, width_em: float) -> float:
    if fewest < _COUNTED:
        return 1.0

    def fits(level: float) -> bool:
        lines = (_lines(part, width_em, price * level) for part, price in zip(parts, prices, strict=True))
        return sum(lines) <= fewest * _LIMIT

    if fits(_LEVELS[0]):
        return _LEVELS[0]
    return _LEVELS[min(bisect_left(_LEVELS, True, lo=1, key=fits), len(_LEVELS) - 1)]


def _lines(part: Part, width_em: float, price: float) -> int:
    return len(best_ends(part.pieces, part.costs, width_em, Weights(line=price)))


def best_ends(pieces: Sequence[Piece], costs: Sequence[float], width_em: float, weights: Weights) -> list[int]:
    """Indices of the pieces that end a line, the last one included.

    `costs[k]` is the cost of a line end after piece `k` (none counted for the last piece).
    """
    count = len(pieces)
    starts = _starts(pieces)
    ragged, line, part_of = weights.ragged, weights.line, 1.0 / width_em  # the loop below is the hot one
    best = [0.0] + [math.inf] * count
    back = [0] * (count + 1)
    first = 0
    for end in range(1, count + 1):
        right = starts[end - 1] + pieces[end - 1].width_em
        while first < end - 1 and right - starts[first] > width_em:
            first += 1
        if end == count:
            best[end], back[end] = _last(best, starts, first, right, width_em, weights)
            continue
        least, chosen = math.inf, first
        for start in range(first, min(end, first + _REACH)):
            empty = 1.0 - (right - starts[start]) * part_of
            cost = best[start] + ragged * empty * empty
            if start == end - 1:
                cost += _alone(pieces[start], costs[start], width_em, weights)
            if cost < least:
                least, chosen = cost, start
        best[end], back[end] = least + line + costs[end - 1], chosen
    return _ends(back, count)


def _alone(piece: Piece, cost: float, width_em: float, weights: Weights) -> float:
    return weights.alone if cost >= weights.bound and piece.width_em < weights.alone_part * width_em else 0.0


def _last(
    best: Sequence[float], starts: Sequence[float], first: int, right: float, width_em: float, weights: Weights
) -> tuple[float, int]:
    """The cost of the best last line, which may be short but not a stub, and the piece that it starts with."""
    choices = []
    for start in range(first, min(len(best) - 1, first + _REACH)):
        stub = start and right - starts[start] < weights.stub_part * width_em
        choices.append((best[start] + (weights.stub if stub else 0.0), start))
    cost, start = min(choices)
    return cost + weights.line, start


def fullest_ends(pieces: Sequence[Piece], width_em: float) -> list[int]:
    """The line ends of filling each line as far as it goes: the fewest lines there are."""
    starts = _starts(pieces)
    ends = []
    first = 0
    for i in range(1, len(pieces)):
        if starts[i] + pieces[i].width_em - starts[first] > width_em:
            ends.append(i - 1)
            first = i
    return [*ends, len(pieces) - 1] if pieces else []


def _starts(pieces: Sequence[Piece]) -> list[float]:
    """Where each piece would start if the paragraph were one line, and where it would end."""
    starts = [0.0]
    for piece in pieces:
        starts.append(starts[-1] + piece.width_em + piece.blank_em)
    return starts


def _ends(back: Sequence[int], count: int) -> list[int]:
    ends = []
    while count:
        ends.append(count - 1)
        count = back[count]
    return ends[::-1]
