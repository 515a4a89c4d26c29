"""Figures beside their limits, and what the limits' sources contradict."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from promptprep.model.rig import Reader
from promptprep.model.sightline import Limit, Verdict, VerdictLevel

SMALL_TYPE = "NUREG-0700 rev 3 (after MIL-STD-1472G): more contrast for type of 10 to 17 arcminutes"
FULL_ACUITY = 0.7  # DIN 1450 counts on this much; below it sizes grow as 0.7 / acuity
WIDE_EM = 0.8  # a mean advance from here on is that of square characters


def limits_for(limits: Sequence[Limit], reader: Reader | None, advance_em: float) -> tuple[Limit, ...]:
    """The limits that apply to this reader and kind of script, low bounds of height grown for a weaker eye."""
    script = "wide" if advance_em >= WIDE_EM else "narrow"
    factor = acuity_factor(reader.acuity if reader else None)
    return tuple(_grown(limit, factor) for limit in limits if limit.script in ("", script))


def acuity_factor(acuity: float | None) -> float:
    """How much larger the type must be: 1 from an acuity of 0.7 on, 1.4 at 0.5, 1.75 at 0.4 (DIN 1450).

    1 where a reader does not wish to say.
    """
    return max(1.0, FULL_ACUITY / acuity) if acuity else 1.0


def _grown(limit: Limit, factor: float) -> Limit:
    if factor == 1.0 or not limit.for_acuity or limit.low is None:
        return limit
    source = f"{limit.source}; times {factor:.2f} for the reader's acuity (DIN 1450)"
    return replace(limit, low=limit.low * factor, source=source)


def verdicts(figures: Mapping[str, float | None], limits: Sequence[Limit]) -> tuple[Verdict, ...]:
    """One verdict for each limit whose quantity is known, in the limits' order."""
    found = []
    for limit in limits:
        value = figures.get(limit.quantity)
        if value is not None:
            found.append(Verdict(limit.quantity, value, limit.unit, limit.low, limit.high, level_of(value, limit),
                                 limit.source))  # fmt: skip
    return tuple(found)


def level_of(value: float, limit: Limit) -> VerdictLevel:
    """ "good" inside the bound (it included, up to rounding), else the limit's own level."""
    slack = 1e-9 * max(1.0, abs(limit.bound))
    low = limit.low is not None and value < limit.low - slack
    high = limit.high is not None and value > limit.high + slack
    return limit.level if low or high else "good"


def small_type_verdict(figures: Mapping[str, float | None]) -> tuple[Verdict, ...]:
    """Type of 10 to 17 arcminutes needs more contrast: modulation of 0.3 + 0.07 * (20 - height), NUREG-0700 rev 3.

    Modulation is (white - black) / (white + black) as the eye gets it. Nothing for other type or an unknown glass.
    """
    height, contrast = figures.get("cap_height_arcmin"), figures.get("contrast_at_eye")
    if height is None or contrast is None or not 10 <= height <= 17:
        return ()
    modulation = 1.0 if contrast == math.inf else (contrast - 1) / (contrast + 1)
    least = 0.3 + 0.07 * (20 - height)
    level: VerdictLevel = "good" if modulation >= least else "look"
    return (Verdict("modulation_at_eye", modulation, "ratio", least, None, level, SMALL_TYPE),)


def contradictions(figures: Mapping[str, float | None], limits: Sequence[Limit]) -> tuple[str, ...]:
    """Where sources disagree about a figure of this rig, in sentences."""
    said = []
    for quantity in dict.fromkeys(limit.quantity for limit in limits):
        value = figures.get(quantity)
        own = [limit for limit in limits if limit.quantity == quantity]
        if value is not None and len({level_of(value, limit) == "good" for limit in own}) == 2:
            said.append(_disagreement(quantity, value, own))
    return (*said, *STANDING)


def _disagreement(quantity: str, value: float, own: Sequence[Limit]) -> str:
    against = [limit for limit in own if level_of(value, limit) != "good"]
    content = [limit for limit in own if limit not in against]
    name, _, unit = quantity.rpartition("_")
    name, unit = (name, f" {unit}") if unit in ("arcmin", "deg", "mm", "stops", "s") else (quantity, "")
    name = name.replace("_", " ").capitalize()
    return f"{name} of {value:.2f}{unit}: {_names(content)} would accept it, {_names(against)} would not."


def _names(limits: Sequence[Limit]) -> str:
    bounds = [(f"at least {x.low:g}" if x.low is not None else f"at most {x.high:g}") for x in limits]
    return " and ".join(f"{x.source.split(':')[0]} ({bound})" for x, bound in zip(limits, bounds, strict=True))


STANDING = (
    (
        "Height: the office rule ASR A6 wants 22 to 31 arcminutes, ISO 9241-3 and NUREG-0700 prefer 20 to 22 and "
        "let 16 pass. The rule of thumb distance / 200 gives 17.2 arcminutes, less than its own guide prefers."
    ),
    (
        "Height: the upper limits of 24 and 31 arcminutes are for desk reading; print stays fluent up to an x-height "
        "of 2 degrees (Legge & Bigelow 2011), so they are not held against a prompter."
    ),
    (
        "Gaze: eye contact is said to hold to 1.2 degrees (van Eijk), to 2.6 (Horstmann & Linke), to between 2 and 4.5 "
        "in other studies. Thirteen characters of 20-arcminute capitals already reach 1.55 degrees to each side, so "
        "the strictest figure cannot be kept together with a line that reads well."
    ),
    (
        "Gaze: one study puts the best point about 2 degrees below the lens, another slightly above it; here the line "
        "that is read stands at the lens."
    ),
)
