"""How the text travels: which height of the strip stands at the lens at which second.

Between planned points the travel is a monotone cubic (Fritsch & Carlson 1980, "Monotone piecewise cubic
interpolation", SIAM J. Numer. Anal. 17:238; slopes by Fritsch & Butland's harmonic mean): it never runs back, it
stands still where two points have the same height, and its speed has no step.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import median

from promptprep.model.lines import Line
from promptprep.model.timing import TimedWord

STILL_S = 0.3  # a shorter silence is not shown as a stop: the text would twitch
STEP_S = 0.45  # points closer than this inside a line are merged: a reader follows lines, not words
FASTEST = 1.6  # of the middle speed: a short last line uses the pause after it rather than dash


@dataclass(frozen=True, slots=True)
class Knot:
    """At `at_s` the height `y_px` of the strip stands at the lens and moves by `slope` pixels a second."""

    at_s: float
    y_px: float
    slope: float = 0.0


@dataclass(frozen=True, slots=True)
class Travel:
    """All knots, `at_s` strictly growing, `y_px` never falling."""

    knots: tuple[Knot, ...]

    def y_px(self, at_s: float) -> float:
        """Height of the strip at the lens at a second; outside the plan its ends."""
        i = bisect_right(self.knots, at_s, key=lambda k: k.at_s) - 1
        if i < 0 or i == len(self.knots) - 1:
            return self.knots[max(i, 0)].y_px if self.knots else 0.0
        a, b = self.knots[i], self.knots[i + 1]
        width = b.at_s - a.at_s
        u = (at_s - a.at_s) / width
        return (
            (1 + 2 * u) * (1 - u) ** 2 * a.y_px
            + u * (1 - u) ** 2 * width * a.slope
            + u * u * (3 - 2 * u) * b.y_px
            + u * u * (u - 1) * width * b.slope
        )


def travel(lines: Sequence[Line], centres_px: Sequence[float], words: Sequence[Sequence[TimedWord]]) -> Travel:
    """The travel over all lines. `words` holds the timed words of each line, their spans in the paragraph's text.

    Each line's centre stands at the lens at its `at_s`. While it is said the next one comes up; it is there when
    the line's last word has been said, and waits through the pause.
    """
    points: list[tuple[float, float]] = []
    usual = _usual_speed(lines, centres_px)
    for i, line in enumerate(lines):
        points.append((line.at_s, centres_px[i]))
        if i + 1 < len(lines):
            points.extend(_inside(line, words[i], centres_px[i], centres_px[i + 1], lines[i + 1].at_s, usual))
    return Travel(_sloped(_growing(points)))


def _usual_speed(lines: Sequence[Line], centres_px: Sequence[float]) -> float:
    speeds = [
        (centres_px[i + 1] - centres_px[i]) / (line.end_s - line.at_s)
        for i, line in enumerate(lines[:-1])
        if line.end_s > line.at_s
    ]
    return median(speeds) if speeds else 0.0


def _inside(
    line: Line, words: Sequence[TimedWord], y_px: float, next_px: float, next_s: float, usual: float
) -> list[tuple[float, float]]:
    """Points after the line's start and before the next line's, in order."""
    least_s = (next_px - y_px) / (FASTEST * usual) if usual > 0 else 0.0
    said_s = max(line.end_s - line.at_s, 0.0)
    stretch = max(1.0, min(next_s - line.at_s, least_s) / said_s) if said_s > 0 else 1.0
    there_s = line.at_s + said_s * stretch if next_s - line.end_s >= STILL_S else next_s
    points: list[tuple[float, float]] = []
    last_s = line.at_s
    for at_s, share, firm in _progress(line, words):
        moved_s = line.at_s + (at_s - line.at_s) * stretch
        if moved_s <= last_s or moved_s >= there_s - (0 if firm else STEP_S / 2):
            continue
        if firm or moved_s - last_s >= STEP_S:
            points.append((moved_s, y_px + share * (next_px - y_px)))
            last_s = moved_s
    if next_s - there_s >= STILL_S:
        points.append((there_s, next_px))
    return points


def _progress(line: Line, words: Sequence[TimedWord]) -> list[tuple[float, float, bool]]:
    """(second, share of the line that has been said, whether a stop begins or ends here), between words."""
    length = max(len(line.span), 1)
    found: list[tuple[float, float, bool]] = []
    for before, after in pairwise(words):
        share = min(max((after.span.start - line.span.start) / length, 0.0), 1.0)
        if after.start_s - before.end_s >= STILL_S:
            found += [(before.end_s, share, True), (after.start_s, share, True)]
        else:
            found.append((after.start_s, share, False))
    return found


def _growing(points: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Drops points that do not come later than the one before; heights never fall."""
    kept: list[tuple[float, float]] = []
    for at_s, y_px in points:
        if kept and at_s <= kept[-1][0]:
            continue
        kept.append((at_s, max(y_px, kept[-1][1]) if kept else y_px))
    return kept


def _sloped(points: Sequence[tuple[float, float]]) -> tuple[Knot, ...]:
    last = len(points) - 1
    return tuple(
        Knot(at_s, y_px, _slope(points[i - 1 : i + 2]) if 0 < i < last else 0.0)
        for i, (at_s, y_px) in enumerate(points)
    )


def _slope(three: Sequence[tuple[float, float]]) -> float:
    """Slope at the middle point: the weighted harmonic mean of its neighbours', 0 where either is flat."""
    (t0, y0), (t1, y1), (t2, y2) = three
    left_s, right_s = t1 - t0, t2 - t1
    left, right = (y1 - y0) / left_s, (y2 - y1) / right_s
    if left <= 0 or right <= 0:
        return 0.0
    w1, w2 = 2 * right_s + left_s, right_s + 2 * left_s
    return (w1 + w2) / (w1 / left + w2 / right)
