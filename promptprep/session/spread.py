"""How uncertain times add up: scatter of passages in squares, a reader's pace error in a line, waits in between.

A reader who turns out slow is slow in every script: those errors have one sign and do not cancel. Different readers'
errors are taken as independent.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from promptprep.model.timing import Z80, Timing


def normal_below(z: float) -> float:
    """The standard normal law's distribution function."""
    return 0.5 * math.erfc(-z / math.sqrt(2))


@dataclass(slots=True)
class Spread:
    """A time as it adds up, in seconds: its mean, what of it is fixed, each reader's common error, own variance."""

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
        """Raises the time to at least `seconds`: moments of the larger of a constant and a normal variable (Clark
        1961); what is left of each error is the share of cases in which the wait is passed."""
        sd = self.sd_s
        if sd <= 0:
            self.fixed_s += max(0.0, seconds - self.mean_s)
            self.mean_s = max(self.mean_s, seconds)
            return
        a = (self.mean_s - seconds) / sd
        later, density = normal_below(a), math.exp(-a * a / 2) / math.sqrt(2 * math.pi)
        mean = self.mean_s * later + seconds * (1 - later) + sd * density
        square = (self.mean_s**2 + sd * sd) * later + seconds**2 * (1 - later) + (self.mean_s + seconds) * sd * density
        self.common_s = {reader: c * later for reader, c in self.common_s.items()}
        kept = math.fsum(c * c for c in self.common_s.values())
        self.own_var = max(0.0, square - mean * mean - kept)
        self.mean_s, self.fixed_s = mean, max(self.fixed_s, seconds)

    def _log_sd(self) -> float:
        spoken = self.mean_s - self.fixed_s
        return math.sqrt(math.log1p((self.sd_s / spoken) ** 2)) if spoken > 0 else 0.0

    def at(self, z: float) -> float:
        """The time that is not passed with the probability of `z` standard deviations: log-normal above what is
        fixed, as a script's own range is."""
        spoken, log_sd = self.mean_s - self.fixed_s, self._log_sd()
        return self.fixed_s + spoken * math.exp(z * log_sd) if log_sd else self.mean_s

    @property
    def low_s(self) -> float:
        return self.at(-Z80)

    @property
    def high_s(self) -> float:
        return self.at(Z80)

    def chance_by(self, seconds: float) -> float:
        """The chance that the time is at most `seconds`."""
        spoken, log_sd, left = self.mean_s - self.fixed_s, self._log_sd(), seconds - self.fixed_s
        if log_sd == 0:
            return 1.0 if self.mean_s <= seconds + 5e-4 else 0.0
        return normal_below(math.log(left / spoken) / log_sd) if left > 0 else 0.0
