"""Pairs the segments of two versions: by id, else by order and shape."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from promptprep.model.script import Script, Segment
from promptprep.model.versions import Bead, SegmentPair
from promptprep.versions.lengths import Extra, match_cost, paired

CUE_COST = 3.0  # what a pair of different cues adds, in nats: about the odds against a 2-1 match
_BAND = 60  # segments that the pairing may run off the diagonal; keeps long scripts in a straight line
SKIP = 12.0  # what it costs to leave a segment without partner


def length_of(segment: Segment) -> int:
    return sum(len(p.text) for p in segment.paragraphs)


def length_ratio(source: Script, target: Script) -> float:
    """Characters of the target for one of the source, over the whole scripts; 1 where either is empty."""
    a, b = (sum(length_of(s) for s in script.segments) for script in (source, target))
    return b / a if a and b else 1.0


def paired_segments(
    source: Script, target: Script, figures: Sequence[frozenset[str]], others: Sequence[frozenset[str]]
) -> list[SegmentPair]:
    """Pairs in the source's order; segments without partner stand where they belong.

    `figures` and `others` hold the values and the names in each segment of the source and of the target.
    """
    a, b = source.segments, target.segments
    own, theirs = Counter(s.id for s in a), Counter(s.id for s in b)
    ids = {s.id: j for j, s in enumerate(b) if theirs[s.id] == 1 and own[s.id] == 1}
    named = {i: ids[s.id] for i, s in enumerate(a) if s.id in ids}
    free_a = [i for i in range(len(a)) if i not in named]
    free_b = [j for j in range(len(b)) if j not in set(named.values())]
    ratio = length_ratio(source, target)
    left = [(a[i], figures[i]) for i in free_a]
    right = [(b[j], others[j]) for j in free_b]
    by_order = _by_shape(left, right, ratio)
    found = [SegmentPair(i, j, "id") for i, j in named.items()]
    for i, j in by_order:
        found.append(SegmentPair(None if i is None else free_a[i], None if j is None else free_b[j],
                                 "nothing" if i is None or j is None else "order"))  # fmt: skip
    return sorted(found, key=lambda p: (p.source if p.source is not None else (p.target or 0), p.source is None))


Valued = tuple[Segment, frozenset[str]]


def _by_shape(a: Sequence[Valued], b: Sequence[Valued], ratio: float) -> list[tuple[int | None, int | None]]:
    """The cheapest one-to-one pairing in order; cost by length, cues and shared values."""
    n, m = len(a), len(b)
    band = _BAND + abs(n - m)
    far = float("inf")
    cost: dict[tuple[int, int], float] = {(0, 0): 0.0}
    for i in range(n + 1):
        for j in range(max(0, i - band), min(m, i + band) + 1):
            if i or j:
                both = cost.get((i - 1, j - 1), far)
                cost[i, j] = min(
                    cost.get((i - 1, j), far) + SKIP,
                    cost.get((i, j - 1), far) + SKIP,
                    both + _apart(a[i - 1], b[j - 1], ratio) if both < far else far,
                )
    return _walked(cost, n, m)


def _walked(cost: Mapping[tuple[int, int], float], i: int, j: int) -> list[tuple[int | None, int | None]]:
    far = float("inf")
    found: list[tuple[int | None, int | None]] = []
    while i or j:
        if i and cost[i, j] == cost.get((i - 1, j), far) + SKIP:
            found.append((i := i - 1, None))
        elif j and cost[i, j] == cost.get((i, j - 1), far) + SKIP:
            found.append((None, j := j - 1))
        else:
            i, j = i - 1, j - 1
            found.append((i, j))
    return found[::-1]


def _apart(one: Valued, other: Valued, ratio: float) -> float:
    (a, figures), (b, others) = one, other
    lengths = min(match_cost(length_of(a), length_of(b), (1, 1), ratio), 2 * SKIP)
    kinds, theirs = Counter(c.kind for c in a.cues), Counter(c.kind for c in b.cues)
    cues = sum((kinds - theirs).values()) + sum((theirs - kinds).values())
    shared, different = len(figures & others), len(figures ^ others)
    return max(0.0, lengths + min(cues, 6) * CUE_COST / 2 + min(different, 6) - 2 * min(shared, 6))


def paragraph_beads(source: Segment, target: Segment, ratio: float, unshared: Extra | None = None) -> list[Bead]:
    """Which paragraphs say the same; `unshared` adds what speaks against a match beside their lengths."""
    return paired([len(p.text) for p in source.paragraphs], [len(p.text) for p in target.paragraphs], ratio, unshared)
