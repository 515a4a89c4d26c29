"""Paces: a language's default, one in a style, and a reader's own, learned from timed readings."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from promptprep.errors import BadCall
from promptprep.model.language import LanguageData
from promptprep.model.ports import Engines
from promptprep.model.script import Sayings
from promptprep.model.spoken import Speak
from promptprep.model.timing import Pace
from promptprep.timing.learning import Belief, Learned, Reading, covariance_of, updated
from promptprep.timing.measure import measure
from promptprep.timing.tally import PAUSES, SOUND, seconds, tally, unit_key

FASTEST, SLOWEST = 0.25, 6.0  # times the default's; nobody reads aloud outside
CLIPPED_S, IDLE_S = 1.0, 20.0  # beyond that, for very short texts: cut too close, or a long wait before or after
LEAST = 0.1  # of the default's: no coefficient is learned below
_REMEMBERED = 100  # readings of a pace learned before that still weigh
_PRIOR_READINGS = 10.0  # how many readings the default's scatter counts for
Sample = tuple[str, float] | tuple[str, float, Sayings]


def default_pace(data: LanguageData) -> Pace:
    """The pace of a reader whom nobody has timed.

    Raises `MissingLanguageData` where the data hold no pace.
    """
    return Pace(
        language=data.tag,
        coefficients=dict(data.get("pace", "coefficients")),
        common_sd=math.hypot(data.get("pace", "spread.reader"), data.get("pace", "spread.day")),
        own_sd=data.get("pace", "spread.own_sd"),
        source=data.get("pace", "source"),
    )


def styled(pace: Pace, style: str, data: LanguageData) -> Pace:
    """`pace` as read in a style ("news", "conversational", "slow"): sounds and pauses stretched by its multipliers.

    Raises `BadCall` for a style that the language's data do not name.
    """
    styles = data.get("pace", "styles")
    if style not in styles:
        known = ", ".join(sorted(styles))
        raise BadCall("unknown-style", f"no style is called {style!r}", f"choose one of: {known}")
    sounds, pauses = styles[style]["sounds"], styles[style]["pauses"]
    stretched = {name: value * (pauses if name in PAUSES else sounds) for name, value in pace.coefficients.items()}
    return replace(pace, coefficients=stretched, source=f"{pace.source}; style: {style}")


def learn(
    samples: Iterable[Sample],
    data: LanguageData,
    engines: Engines,
    spoken: Speak,
    prior: Pace | None = None,
    reader: str | None = None,
    day: str | None = None,
) -> Pace:
    """A reader's pace from timed readings: (text as read, seconds), and where it has any its pronunciations.

    Starts from `prior` (a pace learned before), else from the language's default, and moves as far as the readings
    carry. A text without words says nothing and is passed over. Raises `BadCall` where none is left, or one has no
    positive finite length or one in which nobody reads.
    """
    default = default_pace(data)
    readings = _readings(samples, default, data, engines, spoken)
    before = _belief(default, data)
    if prior is not None and prior.samples:
        before = _remembered(before, prior, readings)
    learned = updated(before, readings)
    return _pace(learned, readings, default, prior, reader, day)


def _readings(
    samples: Iterable[Sample], default: Pace, data: LanguageData, engines: Engines, spoken: Speak
) -> list[Reading]:
    names = list(default.coefficients)
    unit = unit_key(data)
    found: list[Reading] = []
    for number, (text, length, *said) in enumerate(samples, 1):
        length_s = _checked_length(length, number)
        amounts = tally(measure(spoken(text, said[0] if said else ()), data, engines), unit)
        if amounts:
            _check_plausible(length_s, seconds(amounts, default.coefficients), number)
            found.append(Reading(tuple(amounts.get(name, 0.0) for name in names), length_s))
    if not found:
        raise BadCall("no-samples", "no timed reading has words", "give at least one text with its length in seconds")
    return found


def _checked_length(length: float, number: int) -> float:
    try:
        length_s = float(length)
    except (TypeError, ValueError, OverflowError):
        length_s = math.nan
    if not (math.isfinite(length_s) and length_s > 0):
        raise BadCall("bad-sample", f"timed reading {number} has the length {length!r}", "give seconds, more than zero")
    return length_s


def _check_plausible(length_s: float, usual_s: float, number: int) -> None:
    if not FASTEST * usual_s - CLIPPED_S <= length_s <= SLOWEST * usual_s + IDLE_S:
        raise BadCall(
            "absurd-sample",
            f"timed reading {number}: nobody takes {length_s:g} s for this text (usual: {usual_s:.1f} s)",
            "check its length in seconds, and that the text is the one that was read",
        )


def _belief(pace: Pace, data: LanguageData) -> Belief:
    """What is believed of a new reader: the pace with the spread between readers."""
    spread: Mapping[str, float] = data.get("pace", "spread")
    means = pace.coefficients
    sounds = {name: value for name, value in means.items() if name in SOUND}
    pauses = {name: value for name, value in means.items() if name in PAUSES}
    own = {name: value * spread["one_sound"] for name, value in sounds.items()}
    own |= {name: max(value, 0.1) * spread["one_pause"] for name, value in pauses.items()}
    own["end_s"] = spread["end_s"]
    groups = [(means, spread["reader"]), (sounds, spread["sounds"]), (pauses, spread["pauses"])]
    return Belief(tuple(means), tuple(means.values()), covariance_of(means, groups, own), pace.own_sd, spread["day"])


def _remembered(before: Belief, prior: Pace, readings: Sequence[Reading]) -> Belief:
    """The belief that goes with a pace learned before: its coefficients, and how sure its running times are.

    Only the number and length of the readings behind it were kept, so they are put back as that many readings of
    text like the new ones, each as long as the pace says.
    """
    means = tuple(prior.coefficients.get(name, value) for name, value in zip(before.names, before.means, strict=True))
    at_pace = replace(before, means=means)
    typical = _typical(readings)
    length_s = prior.sampled_s / prior.samples
    scale = length_s / max(at_pace.predicted_s(typical), 1e-9)
    known = Reading(tuple(a * scale for a in typical), length_s)
    return updated(at_pace, [known] * min(prior.samples, _REMEMBERED)).belief


def _typical(readings: Sequence[Reading]) -> tuple[float, ...]:
    return tuple(map(sum, zip(*(r.amounts for r in readings), strict=True)))


def _pace(
    learned: Learned,
    readings: Sequence[Reading],
    default: Pace,
    prior: Pace | None,
    reader: str | None,
    day: str | None,
) -> Pace:
    belief = learned.belief
    means = {n: max(m, LEAST * default.coefficients[n]) for n, m in zip(belief.names, belief.means, strict=True)}
    typical = _typical(readings)
    mean_s = sum(a * m for a, m in zip(typical, means.values(), strict=True))
    common_sd = math.hypot(math.sqrt(max(belief.variance(typical), 0.0)) / mean_s, belief.day_sd)
    before = prior.samples if prior else 0
    return Pace(
        language=default.language,
        coefficients=means,
        common_sd=common_sd,
        own_sd=_own_sd(learned, default),
        source=f"{before + len(readings)} timed readings, starting from: {default.source}",
        reader=reader if reader is not None or prior is None else prior.reader,
        samples=before + len(readings),
        sampled_s=math.fsum(r.seconds for r in readings) + (prior.sampled_s if prior else 0.0),
        learned=day,
        scale=mean_s / sum(a * c for a, c in zip(typical, default.coefficients.values(), strict=True)),
        fit=_fit(belief, readings),
    )


def _own_sd(learned: Learned, default: Pace) -> float:
    """A passage's scatter: the default's, moved by what the readings show, at least half of it."""
    squares = sum(w * z * z for w, z in zip(learned.weights, learned.left_out, strict=True))
    count = sum(learned.weights)
    ratio = (_PRIOR_READINGS + squares) / (_PRIOR_READINGS + count)
    return default.own_sd * max(0.5, math.sqrt(ratio))


def _fit(belief: Belief, readings: Sequence[Reading]) -> dict[str, float]:
    errors = [belief.predicted_s(r.amounts) / r.seconds - 1 for r in readings]
    return {
        "bias_percent": round(100 * math.fsum(errors) / len(errors), 2),
        "error_percent": round(100 * math.fsum(map(abs, errors)) / len(errors), 2),
    }
