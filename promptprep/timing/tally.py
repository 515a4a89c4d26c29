"""A text as one row of numbers: how much of each thing that takes time is in it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.timing.measure import Measured

UNITS = {unit: f"{unit}_s" for unit in ("phone", "mora", "character", "syllable", "letter")}
SOUND = (*UNITS.values(), "word_s", "rare_s", "name_s", "stress_s")
_MARKS = ("list", "comma", "colon", "dash", "bracket", "sentence")
_AFTER = {kind: f"{kind}_s" for kind in _MARKS}
PAUSES = (*_AFTER.values(), "paragraph_s", "segment_s", "breath_s", "end_s")


def unit_key(data: LanguageData) -> str:
    """The coefficient of the language's unit of sound: "phone_s", "mora_s" ..."""
    return UNITS[data.maybe("pace", "unit", "phone")]


def tally(measured: Measured, unit: str) -> dict[str, float]:
    """Amount of each coefficient's thing in a text read by itself, its trailing breath ("end_s") included.

    Keys are names of coefficients; the time of the text is the sum of amount times coefficient.
    """
    loads = measured.loads
    if not loads:
        return {}
    amounts = {
        unit: sum(load.units for load in loads),
        "word_s": sum(load.words for load in loads),
        "rare_s": sum(load.rarity for load in loads),
        "name_s": float(sum(word.kind == "say" for word in measured.words)),
        "breath_s": sum(measured.breaths.values()),
        "end_s": measured.end,
    }
    for kind, count in Counter(measured.pauses).items():
        if kind == "paragraph":
            amounts["paragraph_s"] = float(count)
            amounts["sentence_s"] = amounts.get("sentence_s", 0.0) + count
        elif kind is not None:
            amounts[_AFTER[kind]] = amounts.get(_AFTER[kind], 0.0) + count
    return amounts


def seconds(amounts: Mapping[str, float], coefficients: Mapping[str, float]) -> float:
    """The time of a tally: the sum of amount times coefficient. What a pace has no coefficient for takes none."""
    get = coefficients.get
    return sum(amount * get(name, 0.0) for name, amount in amounts.items())
