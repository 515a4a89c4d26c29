"""How uncertain times add up: scatter of passages in squares, a reader's pace error in a line.

A reader who turns out slow is slow in every script: those errors have one sign and do not cancel. Different readers'
errors are taken as independent.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from statistics import NormalDist
from typing import Protocol

from promptprep.model.timing import Timing


def normal_below(z: float) -> float:
    """The standard normal law's distribution function."""
    return 0.5 * math.erfc(-z / math.sqrt(2))


class Clockwork(Protocol):
    """A time that adds up item by item and stays uncertain."""

    def add(self, timing: Timing, reader: str) -> None: ...

    def add_fixed(self, seconds: float, sd_s: float = 0.0) -> None: ...

    def wait_until(self, seconds: float) -> None: ...

    def at(self, z: float) -> float:
        """The time that is not passed with the probability of `z` standard deviations."""
        ...

    def chance_by(self, seconds: float) -> float:
        """The chance that the time is at most `seconds`."""
        ...


@dataclass(slots=True)
class Spread:
    """The sum without waits, in closed form: mean, what of it is fixed, each reader's common error, own variance."""

    mean_s: float = 0.0
    fixed_s: float = 0.0
    common_s: dict[str, float] = field(default_factory=dict)
    own_var: float = 0.0

    @property
    def sd_s(self) -> float:
        return math.sqrt(max(0.0, math.fsum(c * c for c in self.common_s.values()) + self.own_var))

    def add(self, timing: Timing, reader: str) -> None:
        self.mean_s += timing.mean_s
        self.fixed_s += timing.fixed_s
        self.own_var += timing.own_sd_s**2
        if timing.common_sd_s:
            self.common_s[reader] = self.common_s.get(reader, 0.0) + timing.common_sd_s

    def add_fixed(self, seconds: float, sd_s: float = 0.0) -> None:
        self.mean_s += seconds
        self.fixed_s += 0.0 if sd_s else seconds
        self.own_var += sd_s**2

    def wait_until(self, seconds: float) -> None:
        raise NotImplementedError("a wait has no closed form: use Draws")

    def _log_sd(self) -> float:
        spoken = self.mean_s - self.fixed_s
        return math.sqrt(math.log1p((self.sd_s / spoken) ** 2)) if spoken > 0 else 0.0

    def at(self, z: float) -> float:
        """The time that is not passed with the probability of `z` standard deviations: log-normal above what is
        fixed, as a script's own range is."""
        spoken, log_sd = self.mean_s - self.fixed_s, self._log_sd()
        return self.fixed_s + spoken * math.exp(z * log_sd) if log_sd else self.mean_s

    def chance_by(self, seconds: float) -> float:
        """The chance that the time is at most `seconds`."""
        spoken, log_sd, left = self.mean_s - self.fixed_s, self._log_sd(), seconds - self.fixed_s
        if log_sd == 0:
            return 1.0 if self.mean_s <= seconds + 5e-4 else 0.0
        return normal_below(math.log(left / spoken) / log_sd) if left > 0 else 0.0


@lru_cache(maxsize=2)
def _strata(count: int) -> tuple[float, ...]:
    """The middles of `count` equal parts of the standard normal law."""
    law = NormalDist()
    return tuple(law.inv_cdf((i + 0.5) / count) for i in range(count))


class Draws:
    """The sum with waits, by drawing: Latin hypercube samples from a fixed seed, so that the same input gives the same
    chance. Each reader's error is drawn once a session, each passage's own scatter every time. A pace's figure may be
    the mean or the median of what a reader takes: the factor stands halfway between the two.
    """

    COUNT = 4000

    def __init__(self) -> None:
        self.times = [0.0] * self.COUNT
        self._readers: dict[str, Sequence[float]] = {}
        self._random = random.Random(1)

    def _normal(self) -> Sequence[float]:
        values = list(_strata(self.COUNT))
        self._random.shuffle(values)
        return values

    def add(self, timing: Timing, reader: str) -> None:
        spoken, fixed, own = timing.spoken_s, timing.fixed_s, timing.own_sd_s
        if spoken <= 0:
            self.add_fixed(timing.mean_s)
            return
        if reader not in self._readers:
            self._readers[reader] = self._normal()
        share = timing.common_sd_s / spoken
        pairs = zip(self.times, self._readers[reader], self._normal(), strict=True)
        self.times = [
            t + fixed + spoken * math.exp(share * common - share * share / 4) + own * z for t, common, z in pairs
        ]

    def add_fixed(self, seconds: float, sd_s: float = 0.0) -> None:
        if sd_s:
            self.times = [t + max(0.0, seconds + sd_s * z) for t, z in zip(self.times, self._normal(), strict=True)]
        else:
            self.times = [t + seconds for t in self.times]

    def wait_until(self, seconds: float) -> None:
        self.times = [max(t, seconds) for t in self.times]

    def at(self, z: float) -> float:
        place = normal_below(z) * self.COUNT
        return sorted(self.times)[min(self.COUNT - 1, int(place))]

    def chance_by(self, seconds: float) -> float:
        return sum(t <= seconds + 5e-4 for t in self.times) / self.COUNT
