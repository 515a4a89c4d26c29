"""Bayesian learning of coefficients from timed readings, one reading after another.

A reader's coefficients are normal around the language's default, with the spread that readers show; a reading of t
seconds scatters with variance `own_sd**2 * t + (day_sd * t)**2`: by itself, and with the reader's day. Each reading
moves the estimate by a Kalman step, so no matrix is inverted and work is linear in the number of readings. A reading
that the others and the default make implausible gets the weight of a Student's t law, so that one wrong stopwatch
does not carry the pace away.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

Matrix = list[list[float]]

DEGREES = 5.0  # of Student's t: about one reading in 50 lies beyond three standard deviations
_PASSES = 5


@dataclass(frozen=True, slots=True)
class Reading:
    """A timed reading: the amount of each coefficient's thing, in the prior's order, and the seconds it took."""

    amounts: tuple[float, ...]
    seconds: float


@dataclass(frozen=True, slots=True)
class Belief:
    """Coefficients with their covariance, in the order of `names`.

    `own_sd` is in seconds per root second, `day_sd` a fraction of the time.
    """

    names: tuple[str, ...]
    means: tuple[float, ...]
    covariance: tuple[tuple[float, ...], ...]
    own_sd: float
    day_sd: float

    def noise(self, seconds: float) -> float:
        """Variance, in square seconds, of a reading by a reader whose pace is known."""
        return self.own_sd**2 * max(seconds, 1.0) + (self.day_sd * seconds) ** 2

    def predicted_s(self, amounts: Sequence[float]) -> float:
        return _dot(self.means, amounts)

    def variance(self, amounts: Sequence[float]) -> float:
        """Variance, in square seconds, of the predicted time for not knowing the coefficients."""
        return _dot(amounts, [_dot(row, amounts) for row in self.covariance])


@dataclass(frozen=True, slots=True)
class Learned:
    """The belief after the readings, the weight that each was given, and how far it lay from what the others say."""

    belief: Belief
    weights: tuple[float, ...]
    left_out: tuple[float, ...]


def updated(prior: Belief, readings: Sequence[Reading]) -> Learned:
    """What to believe after the readings. `left_out` holds each one's error, in standard deviations, when the
    estimate is made without it."""
    noises = [prior.noise(r.seconds) for r in readings]
    weights = [1.0] * len(readings)
    scores = [0.0] * len(readings)
    belief = prior
    for _ in range(_PASSES):
        belief = _filtered(prior, readings, [n / w for n, w in zip(noises, weights, strict=True)])
        scores = [_score(belief, r, n, w) for r, n, w in zip(readings, noises, weights, strict=True)]
        weights = [min(1.0, (DEGREES + 1) / (DEGREES + z * z)) for z in scores]
    return Learned(belief, tuple(weights), tuple(scores))


def _filtered(prior: Belief, readings: Sequence[Reading], noises: Sequence[float]) -> Belief:
    means = list(prior.means)
    covariance = [list(row) for row in prior.covariance]
    for reading, noise in zip(readings, noises, strict=True):
        _step(means, covariance, reading, noise)
    return replace(prior, means=tuple(means), covariance=tuple(map(tuple, covariance)))


def _step(means: list[float], covariance: Matrix, reading: Reading, noise: float) -> None:
    """One Kalman step: the mean moves along the gain, the covariance shrinks."""
    x = reading.amounts
    along = [_dot(row, x) for row in covariance]
    total = _dot(x, along) + noise
    error = reading.seconds - _dot(means, x)
    for i, a in enumerate(along):
        if a:
            gain = a / total
            means[i] += gain * error
            row = covariance[i]
            for j, b in enumerate(along):
                row[j] -= gain * b


def _score(belief: Belief, reading: Reading, noise: float, weight: float) -> float:
    """How many standard deviations a reading lies from the estimate made without it."""
    variance = belief.variance(reading.amounts)
    leverage = min(variance * weight / noise, 1 - 1e-9)
    error = (reading.seconds - belief.predicted_s(reading.amounts)) / (1 - leverage)
    return error / math.sqrt(variance / (1 - leverage) + noise)


def _dot(left: Sequence[float], right: Sequence[float]) -> float:
    return sum(a * b for a, b in zip(left, right, strict=True))


def covariance_of(
    means: Mapping[str, float], groups: Sequence[tuple[Mapping[str, float], float]], own: Mapping[str, float]
) -> tuple[tuple[float, ...], ...]:
    """Covariance of readers' coefficients, in the order of `means`.

    `groups` are directions in which coefficients differ together, each with its standard deviation as a fraction;
    `own` is the standard deviation, in seconds, of each coefficient by itself.
    """
    names = list(means)
    matrix = [[0.0] * len(names) for _ in names]
    for direction, sd in groups:
        moves = [direction.get(name, 0.0) * sd for name in names]
        for i, a in enumerate(moves):
            for j, b in enumerate(moves):
                matrix[i][j] += a * b
    for i, name in enumerate(names):
        matrix[i][i] += own.get(name, 0.0) ** 2
    return tuple(map(tuple, matrix))
