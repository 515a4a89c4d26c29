"""Pairs the sentences of passages that say the same."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from promptprep.model.versions import Bead
from promptprep.spans import Span
from promptprep.versions.lengths import Extra, paired

UNSHARED = 2.0  # nats for each value that stands in only one of two sentences matched: as rare as a 2-1 match
Values = Callable[[str], frozenset[str]]
Ends = Callable[[str], Sequence[int]]


def sentence_spans(text: str, ends: Ends) -> list[Span]:
    """The sentences of a text, without the blanks around them."""
    found, at = [], 0
    for end in ends(text):
        piece = text[at:end]
        lead = len(piece) - len(piece.lstrip())
        if piece.strip():
            found.append(Span(at + lead, at + len(piece.rstrip())))
        at = end
    return found


def sentence_beads(
    source: Sequence[str], target: Sequence[str], ratio: float, values: tuple[Values, Values] | None = None
) -> list[Bead]:
    """Which sentences of a passage say the same: by length, and by the values in them where `values` finds them."""
    if values is None:
        return paired([len(s) for s in source], [len(t) for t in target], ratio)
    ours, theirs = [values[0](s) for s in source], [values[1](t) for t in target]

    return paired([len(s) for s in source], [len(t) for t in target], ratio, unshared(ours, theirs))


def unshared(ours: Sequence[frozenset[str]], theirs: Sequence[frozenset[str]]) -> Extra:
    """What values that stand on one side only speak against a match of passages, in nats."""

    def cost(i: Sequence[int], j: Sequence[int]) -> float:
        a = {value for k in i for value in ours[k]}
        b = {value for k in j for value in theirs[k]}
        return UNSHARED * len(a ^ b)

    return cost
