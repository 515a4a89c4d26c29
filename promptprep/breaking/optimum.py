"""The best lines of one paragraph, by dynamic programming over the places where a line may end.

The whole paragraph is weighed at once (Knuth & Plass 1981, Software: Practice and Experience 11:1119-1184), with
costs for reading aloud in place of theirs for print: a cut inside a group of sense costs most, then a line more.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from promptprep.breaking.pieces import Piece

HARD = 1e4  # a place that is used only where nothing else fits
_LONG = 14  # lines
_SHORT_PRICE, _PRICE_GROWTH = 5.3, 0.6
_LEAST_PRICE, _HIGHEST_PRICE = 4.0, 36.0
_REACH = 48  # how many line starts are weighed for each line end: keeps the work linear in any column


SPARE = 0.047  # lines that sense may cost over the fewest there can be, as a part of these
_HALVINGS = 6


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


def balanced(parts: Sequence[Part], width_em: float) -> Weights:
    """Weights whose line costs so much that all parts together take few lines more than they must.

    A cut that is avoided mostly costs a line. In a long text the price of a line is raised until the lines are within
    `SPARE` of the fewest; in a short one, where one line is a large part, the price grows with the number of lines.
    """
    fewest = sum(len(fullest_ends(part.pieces, width_em)) for part in parts)
    if fewest < _LONG:
        return Weights(line=_SHORT_PRICE + _PRICE_GROWTH * fewest)
    allowed = math.floor(fewest * (1 + SPARE) + 0.5)
    low, high = _LEAST_PRICE, _HIGHEST_PRICE
    if _lines(parts, width_em, Weights(line=low)) <= allowed:
        return Weights(line=low)
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if _lines(parts, width_em, Weights(line=middle)) <= allowed:
            high = middle
        else:
            low = middle
    return Weights(line=high)


def _lines(parts: Sequence[Part], width_em: float, weights: Weights) -> int:
    return sum(len(best_ends(part.pieces, part.costs, width_em, weights)) for part in parts)


def best_ends(pieces: Sequence[Piece], costs: Sequence[float], width_em: float, weights: Weights) -> list[int]:
    """Indices of the pieces that end a line, the last one included.

    `costs[k]` is the cost of a line end after piece `k` (none counted for the last piece).
    """
    count = len(pieces)
    starts = _starts(pieces)
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
            cost = best[start] + weights.ragged * (1.0 - (right - starts[start]) / width_em) ** 2
            if start == end - 1:
                cost += _alone(pieces[start], costs[start], width_em, weights)
            if cost < least:
                least, chosen = cost, start
        best[end], back[end] = least + weights.line + costs[end - 1], chosen
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
