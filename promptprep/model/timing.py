"""Running times with their uncertainty, and the pace that gives them."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from promptprep.spans import Span

Z80 = 1.2815515655446004  # half-width of the central 80 % of a normal law, in standard deviations

SlotVerdict = Literal["fits", "tight", "over", "no slot"]
PauseKind = Literal[
    "list", "comma", "colon", "dash", "bracket", "sentence", "paragraph", "segment", "breath", "cue", "clip", "live"
]
FIXED_PAUSES: tuple[PauseKind, ...] = ("cue", "clip", "live")  # those that the script's cues ask for


@dataclass(frozen=True, slots=True)
class Timing:
    """A predicted time. `mean_s` holds spoken and fixed time together.

    Two errors are kept apart, because they add up differently over segments and scripts: `common_sd_s` comes
    from not knowing the reader's pace (the same sign everywhere: adds linearly), `own_sd_s` is this passage's
    own scatter (independent: adds in squares). `low_s` and `high_s` bound the central 80 %.
    """

    mean_s: float
    common_sd_s: float = 0.0
    own_sd_s: float = 0.0
    words: int = 0
    syllables: int = 0
    fixed_s: float = 0.0

    @property
    def spoken_s(self) -> float:
        return self.mean_s - self.fixed_s

    @property
    def sd_s(self) -> float:
        return math.hypot(self.common_sd_s, self.own_sd_s)

    @property
    def low_s(self) -> float:
        return self.fixed_s + self.spoken_s * math.exp(-Z80 * self._log_sd())

    @property
    def high_s(self) -> float:
        return self.fixed_s + self.spoken_s * math.exp(Z80 * self._log_sd())

    def verdict(self, slot_s: float | None) -> SlotVerdict:
        """Whether it fits a slot: "tight" where it may run over, "over" where it does in nine of ten takes."""
        if slot_s is None:
            return "no slot"
        if self.low_s > slot_s:
            return "over"
        return "tight" if self.high_s > slot_s else "fits"

    def _log_sd(self) -> float:
        return math.sqrt(math.log1p((self.sd_s / self.spoken_s) ** 2)) if self.spoken_s > 0 else 0.0

    @staticmethod
    def total(parts: Iterable[Timing]) -> Timing:
        """The time of parts said by one reader one after another."""
        items = list(parts)
        return Timing(
            mean_s=math.fsum(t.mean_s for t in items),
            common_sd_s=math.fsum(t.common_sd_s for t in items),
            own_sd_s=math.sqrt(math.fsum(t.own_sd_s**2 for t in items)),
            words=sum(t.words for t in items),
            syllables=sum(t.syllables for t in items),
            fixed_s=math.fsum(t.fixed_s for t in items),
        )


@dataclass(frozen=True, slots=True)
class Pace:
    """How fast a reader speaks one language.

    `coefficients` are seconds per unit of each feature named in `timing` ("phone_s", "word_s", "sentence_s"
    ...). `common_sd` is the uncertainty of the whole as a fraction (0.10: this reader may turn out 10 % slower
    or faster); `own_sd` scales a passage's own scatter: its standard deviation is `own_sd * sqrt(spoken_s)`
    seconds. `samples` and `sampled_s` say what the pace was learned from (0: the language's default), `takes` holds
    the digests of the takes among it.
    """

    language: str
    coefficients: Mapping[str, float]
    common_sd: float
    own_sd: float
    source: str
    reader: str | None = None
    samples: int = 0
    sampled_s: float = 0.0
    learned: str | None = None
    scale: float = 1.0
    fit: Mapping[str, float] = field(default_factory=dict)
    takes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class TimedWord:
    """A word's planned time from the start of its script; `span` is its place in its paragraph's text."""

    span: Span
    start_s: float
    end_s: float


@dataclass(frozen=True, slots=True)
class TimedPause:
    """Silence or fixed time: a pause at a mark, a cue's pause, a clip, a live part."""

    kind: PauseKind
    start_s: float
    end_s: float
    offset: int = 0


@dataclass(frozen=True, slots=True)
class BlockTiming:
    """The times inside one block of a segment (`block` is its index there). Remarks and notes have none."""

    block: int
    start_s: float
    end_s: float
    words: tuple[TimedWord, ...] = ()
    pauses: tuple[TimedPause, ...] = ()


@dataclass(frozen=True, slots=True)
class SegmentTiming:
    """One segment's time. `start_s` counts from the start of the script."""

    id: str
    title: str
    start_s: float
    timing: Timing
    blocks: tuple[BlockTiming, ...]
    slot_s: float | None = None


@dataclass(frozen=True, slots=True)
class ScriptTiming:
    """A script's time with its segments. `slot_s` is its slot, else the sum of its segments' where all have one."""

    language: str
    timing: Timing
    segments: tuple[SegmentTiming, ...]
    pace: Pace
    slot_s: float | None = None

    @property
    def over_s(self) -> float | None:
        """Seconds over the slot (negative: under); None without a slot."""
        return None if self.slot_s is None else self.timing.mean_s - self.slot_s
