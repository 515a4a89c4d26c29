"""Single values of a rig as the studio writes them: units, ranges, words."""

from __future__ import annotations

import difflib
import re
from collections.abc import Callable, Mapping
from typing import Any

from promptprep.errors import BadCall, BadGeometry, PromptprepError
from promptprep.model.rig import FLIPS
from promptprep.sightline.contrast import relative_luminance
from promptprep.sightline.flip import TOPS
from promptprep.units import as_float, parse_length

LENGTH_RANGES_MM: Mapping[str, tuple[float, float]] = {
    "diagonal": (60, 4000),
    "width": (40, 3600),
    "height": (30, 3600),
    "active_width": (40, 3600),
    "active_height": (30, 3600),
    "eye_to_glass": (150, 30_000),
    "eye_to_screen": (150, 30_000),
    "eye_to_lens": (150, 60_000),
    "glass_to_screen": (10, 3000),
    "glass_thickness": (0.5, 30),
}
NUMBER_RANGES: Mapping[str, tuple[float, float]] = {
    "screen_cd_m2": (1, 10_000),
    "black_cd_m2": (0, 1000),
    "stray_cd_m2": (0, 10_000),
    "font_px": (4, 4000),
    "column_px": (8, 20_000),
    "leading": (1, 4),
    "margin": (0, 0.45),
}
STYLES = ("flowing", "pages")
WORDS: Mapping[str, tuple[str, ...]] = {"lies": tuple(TOPS), "flip": FLIPS, "style": STYLES}
KEYS = (
    "title", *LENGTH_RANGES_MM, *NUMBER_RANGES, *WORDS, "top", "pixels", "lens_x", "lens_y", "ink", "ground", "split",
)  # fmt: skip


class BadRig(BadGeometry):
    """A fault in one value of a rig: `key` names it."""

    def __init__(self, key: str, message: str, hint: str, code: str = "bad-geometry") -> None:
        super().__init__(code, message, hint)
        self.key = key


def read_value(key: str, value: Any) -> Any:
    """A rig's value in our units. Raises `BadRig` for a key that no rig has and a value that no room has."""
    try:
        return _reader(key)(key, value)
    except BadRig:
        raise
    except PromptprepError as fault:
        raise BadRig(key, f"{key}: {fault.message}", fault.hint, fault.code) from None


def _reader(key: str) -> Callable[[str, Any], Any]:
    if key in LENGTH_RANGES_MM:
        return _length
    if key in NUMBER_RANGES:
        return _number
    if key in WORDS:
        return _word
    if key in READERS:
        return READERS[key]
    raise BadRig(key, f"a rig has no {key!r}", near_hint(key, KEYS), "unknown-key")


def near_hint(word: str, known: tuple[str, ...]) -> str:
    """What the word may have been meant to be, else everything that it may be."""
    near = difflib.get_close_matches(word, known, 1)
    return f"did you mean {near[0]!r}?" if near else "use one of: " + ", ".join(known)


def _length(key: str, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise BadCall("not-a-length", f"{value!r} is no length", 'write a number and its unit, such as "1.5 m"')
    low, high = LENGTH_RANGES_MM[key]
    return _between(key, parse_length(value), low, high, " mm")


def _number(key: str, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise BadCall("not-a-number", f"{value!r} is no number", f"write it without quotes: {key} = 1.5")
    low, high = NUMBER_RANGES[key]
    return _between(key, as_float(value), low, high, "")


def _between(key: str, value: float, low: float, high: float, unit: str) -> float:
    if not low <= value <= high:  # also false for nan
        hint = f"it must be from {low:g}{unit} to {high:g}{unit}: check the number and its unit"
        raise BadRig(key, f"{key} of {value:g}{unit} is not possible", hint)
    return value


def _word(key: str, value: Any) -> str:
    if value not in WORDS[key]:
        raise BadRig(key, f"{key} cannot be {value!r}", near_hint(str(value), WORDS[key]))
    return str(value)


def _text(key: str, value: Any) -> str:
    if not isinstance(value, str):
        raise BadRig(key, f"{key} must be text, not {value!r}", f'write it in quotes: {key} = "..."')
    return value


def _pixels(key: str, value: Any) -> tuple[int, int]:
    found = re.fullmatch(r"\s*(\d{2,5})\s*[x×X]\s*(\d{2,5})\s*", str(value))
    if not found:
        raise BadRig(key, f"{value!r} is no resolution", 'write columns by rows: pixels = "1920x1080"')
    width, height = int(found[1]), int(found[2])
    for count in (width, height):
        _between(key, count, 100, 20_000, "")
    return width, height


def _place(key: str, value: Any) -> float | str:
    """A fraction of the picture, or a length in text that is turned into one later."""
    if isinstance(value, str) and value.strip().endswith("%"):
        number = re.fullmatch(r"([+-]?\d+(?:[.,]\d+)?)\s*%", value.strip())
        value = float(number[1].replace(",", ".")) / 100 if number else value
    if isinstance(value, str):
        parse_length(value)
        return value
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise BadCall("not-a-place", f"{value!r} is no place", f'write a fraction: {key} = 0.5, or a length: "12 cm"')
    return _between(key, as_float(value), -3, 4, "")


def _colour(key: str, value: Any) -> str:
    text = _text(key, value)
    if short := re.fullmatch(r"#([0-9a-fA-F])([0-9a-fA-F])([0-9a-fA-F])", text):
        text = "#" + "".join(digit * 2 for digit in short.groups())
    relative_luminance(text)
    return text.lower()


def _split(key: str, value: Any) -> tuple[float, float]:
    """(passes, reflects) as fractions of the light."""
    found = re.fullmatch(r"\s*(\d{1,3}(?:\.\d+)?)\s*/\s*(\d{1,3}(?:\.\d+)?)\s*", str(value))
    passes, reflects = (float(part) / 100 for part in found.groups()) if found else (0.0, 0.0)
    if not (passes > 0 and reflects > 0 and passes + reflects <= 1 + 1e-9):
        hint = 'write what the glass passes and reflects, in percent: split = "70/30"; together at most 100'
        raise BadRig(key, f"a glass cannot split light as {value!r}", hint)
    return passes, reflects


READERS: Mapping[str, Callable[[str, Any], Any]] = {
    "title": _text,
    "top": _text,
    "pixels": _pixels,
    "lens_x": _place,
    "lens_y": _place,
    "ink": _colour,
    "ground": _colour,
    "split": _split,
}
