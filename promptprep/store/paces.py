"""A reader's pace in `studio.toml`: read from it, and written to it in a form that a person can read."""

from __future__ import annotations

import difflib
import json
import math
import re
from collections.abc import Mapping
from typing import Any

from promptprep.engines.load import has_voice
from promptprep.errors import UnknownLanguage, UnreadableInput
from promptprep.model.language import FIRST_CLASS
from promptprep.model.timing import Pace
from promptprep.store.languages import language_data

KEYS = ("learned", "samples", "sampled_s", "source", "scale", "common_sd", "own_sd", "seconds", "fit", "takes")
_BARE = re.compile(r"[A-Za-z0-9_-]+")


def pace_from(language: str, values: Any, reader: str) -> Pace:
    """The pace of `[readers.NAME.pace.LANGUAGE]`. Raises `UnreadableInput` or `UnknownLanguage` without a place.

    `seconds` holds the coefficients, in seconds per unit of each feature.
    """
    if not is_language(language):
        raise UnreadableInput("unknown-language", f"nobody here speaks {language!r}", language_hint(language))
    if not isinstance(values, Mapping):
        raise UnreadableInput("wrong-value", f"the pace of {reader} is no table", "let promptprep learn write it")
    for key in values:
        if key not in KEYS:
            raise UnreadableInput("unknown-key", f"a pace has no {key!r}", "known keys: " + ", ".join(KEYS))
    seconds = values.get("seconds")
    if not isinstance(seconds, Mapping) or not seconds:
        raise UnreadableInput("wrong-value", f"the pace of {reader} has no seconds", "let promptprep learn write it")
    return Pace(
        language=language,
        coefficients={key: _number(key, value, 0, 60) for key, value in seconds.items()},
        common_sd=_number("common_sd", values.get("common_sd", 0.1), 0, 2),
        own_sd=_number("own_sd", values.get("own_sd", 0.3), 0, 20),
        source=str(values.get("source", f"learned from {reader}")),
        reader=reader,
        samples=int(_number("samples", values.get("samples", 0), 0, 1e9)),
        sampled_s=_number("sampled_s", values.get("sampled_s", 0), 0, 1e9),
        learned=None if values.get("learned") is None else str(values["learned"]),
        scale=_number("scale", values.get("scale", 1), 0.1, 10),
        fit={key: _number(key, value, -1e12, 1e12) for key, value in dict(values.get("fit", {})).items()},
        takes=_takes(values.get("takes", [])),
    )


def _takes(value: Any) -> tuple[str, ...]:
    if not isinstance(value, list) or not all(isinstance(one, str) for one in value):
        hint = "it is a list of texts; let promptprep learn write it"
        raise UnreadableInput("wrong-value", f"takes of a pace cannot be {value!r}", hint)
    return tuple(value)


def _number(key: str, value: Any, low: float, high: float) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float) or not low <= value <= high:
        hint = f"it is a number from {low:g} to {high:g}; let promptprep learn write it"
        raise UnreadableInput("wrong-value", f"{key} of a pace cannot be {value!r}", hint)
    return float(value)


def pace_toml(pace: Pace, reader: str) -> str:
    """The tables that `pace_from` reads, with a remark beside each figure that a person may want to understand."""
    table = f"readers.{toml_key(reader)}.pace.{toml_key(pace.language)}"
    lines = [f"[{table}]"]
    if pace.learned is not None:
        lines.append(f"learned = {_quoted(pace.learned)}")
    lines += [
        f"samples = {pace.samples}  # passages that it was learned from",
        f"sampled_s = {_figure(pace.sampled_s)}  # their length in seconds",
        *([f"takes = [{', '.join(map(_quoted, pace.takes))}]  # marks of the takes among them"] if pace.takes else []),
        f"source = {_quoted(pace.source)}",
        f"scale = {_figure(pace.scale)}  # 1.1: ten per cent slower than the language's default pace",
        f"common_sd = {_figure(pace.common_sd)}  # how far the whole may be off, as a part of it",
        f"own_sd = {_figure(pace.own_sd)}  # scatter of a passage: this times the root of its seconds",
        "",
        f"[{table}.seconds]",
        *(f"{toml_key(key)} = {_figure(value)}" for key, value in sorted(pace.coefficients.items())),
    ]
    if pace.fit:
        lines += ["", f"[{table}.fit]", *(f"{toml_key(k)} = {_figure(v)}" for k, v in sorted(pace.fit.items()))]
    return "\n".join(lines) + "\n"


def toml_key(name: str) -> str:
    return name if _BARE.fullmatch(name) else _quoted(name)


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def _figure(value: float) -> str:
    if not math.isfinite(value):
        raise UnreadableInput("wrong-value", f"a pace cannot hold {value!r}", "learn it again from longer samples")
    text = f"{value:.8g}"
    return text if set(text) & set(".e") else text + ".0"


def is_language(tag: str) -> bool:
    """Whether `tag` is a language with data of its own, or one that the phoneme engine speaks."""
    try:
        if language_data(tag).base in FIRST_CLASS:
            return True
    except UnknownLanguage:
        return False
    return has_voice(tag)


def language_hint(tag: str) -> str:
    near = difflib.get_close_matches(tag.lower(), FIRST_CLASS, 1)
    return (
        (f"did you mean {near[0]!r}? " if near else "")
        + "write a BCP 47 tag; first class are "
        + ", ".join(FIRST_CLASS)
    )
