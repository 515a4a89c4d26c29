"""Real times from a take file: when the words of a plan were said, for captions of what was recorded."""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from promptprep.errors import UnreadableInput
from promptprep.store.takes import HINT, take_object


@dataclass(frozen=True, slots=True)
class TakeTimes:
    """Which script a take is of, and pairs of planned and real seconds, both rising.

    Real seconds count from the clap where there was one, else from the take's start.
    """

    script: str
    language: str
    digest: str
    pairs: tuple[tuple[float, float], ...]

    def __call__(self, planned_s: float) -> float:
        """Real seconds of a planned moment: between known ones in proportion, outside them at the plan's pace."""
        planned = [p for p, _ in self.pairs]
        i = bisect_right(planned, planned_s)
        if i == 0 or i == len(self.pairs):
            p, real = self.pairs[0 if i == 0 else -1]
            return max(0.0, real + planned_s - p)
        (p0, r0), (p1, r1) = self.pairs[i - 1], self.pairs[i]
        return r0 + (r1 - r0) * (planned_s - p0) / (p1 - p0)


def read_take_times(path: Path) -> TakeTimes:
    """The line times of a take file. Of what was read twice the last reading counts. Raises `UnreadableInput`."""
    take = take_object(path)
    try:
        lines = [(float(line["planned_s"]), float(line["at_s"])) for line in take["lines"]]
        clap_s = float(take.get("clap_s") or 0.0)
        script, language, digest = (str(take.get(key) or "") for key in ("script", "language", "digest"))
    except (ValueError, KeyError, TypeError, OverflowError):
        raise UnreadableInput("broken-take", "this is no take file with times of its lines", HINT, str(path)) from None
    pairs = _rising([(p, at - clap_s) for p, at in lines if math.isfinite(p) and math.isfinite(at)])
    if not pairs:
        raise UnreadableInput("empty-take", "no line was read in this take", HINT, str(path))
    return TakeTimes(script, language, digest, pairs)


def _rising(lines: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    kept: list[tuple[float, float]] = []
    for planned, real in lines:
        while kept and kept[-1][0] >= planned:
            kept.pop()
        if not kept or real > kept[-1][1]:
            kept.append((planned, real))
    return tuple(kept)


def takes_by_item(takes: Sequence[TakeTimes], items: Mapping[str, tuple[str, str, str]]) -> dict[str, Any]:
    """For each item code (script, language, digest) the last take of that wording, else none."""
    return {
        code: take
        for code, (script, language, digest) in items.items()
        for take in takes
        if (take.digest == digest if take.digest else take.script == script) and take.language == language
    }
