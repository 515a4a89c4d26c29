"""Cuts the lines into screenfuls: the pages of the page-by-page way, of the stills and of the printed screen copy."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from promptprep.model.lines import Line

LOOK_AHEAD_S = 0.5  # the eye runs about half a second before the voice (from memory: Laubrock & Kliegl 2015)
PAGE_COST = 0.6
END_COST = {"segment": 0.0, "paragraph": 0.15, "sentence": 0.4, "line": 2.0}


@dataclass(frozen=True, slots=True)
class Screenful:
    """Lines `first` up to and with `last`, shown from `at_s` until `end_s`; `centre_px` of the strip is its middle."""

    number: int
    first: int
    last: int
    at_s: float
    end_s: float
    centre_px: float


def screenfuls(
    lines: Sequence[Line], tops_px: Sequence[int], line_px: int, height_px: float, parts_end_s: Sequence[float] = ()
) -> tuple[Screenful, ...]:
    """Screenfuls of at most `height_px`, ending where a sentence ends if they can: the cheapest cut of all.

    A cut inside a sentence costs most; each page costs something, and one that is far from full a little more.
    `parts_end_s` are the ends of guest parts, growing: no page comes while the guest card is up. Work grows with the
    number of lines times the lines that a page holds.
    """
    if not lines:
        return ()
    best = [0.0] + [float("inf")] * len(lines)
    start = [0] * (len(lines) + 1)
    for end in range(1, len(lines) + 1):
        cut = _cut_cost(lines, end)
        for first in range(end - 1, -1, -1):
            used = tops_px[end - 1] + line_px - tops_px[first]
            if used > height_px and first < end - 1:
                break
            room = 1 - min(used / height_px, 1)
            cost = best[first] + cut + room * room + PAGE_COST
            if cost < best[end]:
                best[end], start[end] = cost, first
    cuts = [len(lines)]
    while cuts[-1] > 0:
        cuts.append(start[cuts[-1]])
    cuts.reverse()
    return tuple(_screenful(n, lines, tops_px, line_px, a, b, parts_end_s) for n, (a, b) in enumerate(pairwise(cuts)))


def _cut_cost(lines: Sequence[Line], end: int) -> float:
    """Cost of ending a page before line `end`."""
    if end == len(lines) or lines[end].segment != lines[end - 1].segment:
        return END_COST["segment"]
    before = lines[end - 1]
    return END_COST["paragraph" if before.ends_paragraph else "sentence" if before.ends_sentence else "line"]


def _screenful(
    n: int,
    lines: Sequence[Line],
    tops_px: Sequence[int],
    line_px: int,
    first: int,
    end: int,
    parts_end_s: Sequence[float],
) -> Screenful:
    centre = (tops_px[first] + tops_px[end - 1] + line_px) / 2
    until_s = _turn_s(lines, end, parts_end_s) if end < len(lines) else lines[end - 1].end_s
    return Screenful(n, first, end - 1, _turn_s(lines, first, parts_end_s) if first else 0.0, until_s, centre)


def _turn_s(lines: Sequence[Line], first: int, parts_end_s: Sequence[float]) -> float:
    """When the page that begins with line `first` comes: after the last word, soon enough to look ahead."""
    said_s, at_s = lines[first - 1].end_s, lines[first].at_s
    last_part = bisect_right(parts_end_s, at_s) - 1
    if last_part >= 0 and parts_end_s[last_part] > said_s:
        return parts_end_s[last_part]
    return said_s + min(max(at_s - said_s, 0.0) / 2, LOOK_AHEAD_S)
