"""What if: a rig with some values changed, and ranges of values tried one after another."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import product
from typing import Any

from promptprep.errors import BadCall
from promptprep.model.rig import Rig
from promptprep.sightline.build import rig_from
from promptprep.sightline.values import KEYS, NUMBER_RANGES, near_hint
from promptprep.units import MM_PER_UNIT

MOST_ROWS = 500
SIZES = ("diagonal", "width", "height", "active_width", "active_height")

_SWEEP = re.compile(r"(?P<low>[+-]?\d+(?:[.,]\d+)?)\s*\.\.\s*(?P<high>[+-]?\d+(?:[.,]\d+)?)\s*(?P<unit>[a-z\"'%]*)"
                    r"(?:\s*/\s*(?P<step>\d+(?:[.,]\d+)?)\s*(?P<step_unit>[a-z\"'%]*))?")  # fmt: skip


def changed(rig: Rig, overrides: Sequence[str]) -> Rig:
    """The rig with values like "font_px=52" or "eye_to_glass=1.9m" in place of its own; the keys of `studio.toml`.

    A new size of the screen replaces the old one; a new flip or way to lie replaces what contradicts it. Raises
    `BadCall` for what is no override and `BadGeometry` for what no room has.
    """
    values = values_of(rig)
    for text in overrides:
        key, value = parted(text)
        for rival in _rivals(key):
            values.pop(rival, None)
        values[key] = number_or_text(key, value)
    return rig_from(rig.id, values)


def swept(rig: Rig, sweeps: Sequence[str]) -> list[tuple[dict[str, str], Rig]]:
    """All combinations of ranges such as "font_px=40..90/5" or "eye_to_glass=1.2..3.0m/20cm" with their rigs.

    The range's ends are included; a single value is a range of one. Raises as `changed`, and `BadCall` for more
    than 500 rows.
    """
    axes = [(key, list(_range(value))) for key, value in map(parted, sweeps)]
    if math.prod(len(values) for _, values in axes) > MOST_ROWS:
        raise BadCall("too-many-rows", f"that would be more than {MOST_ROWS} rows", "take larger steps or fewer ranges")
    rows = []
    for row in product(*(values for _, values in axes)):
        setting = {key: value for (key, _), value in zip(axes, row, strict=True)}
        rows.append((setting, changed(rig, [f"{key}={value}" for key, value in setting.items()])))
    return rows


def parted(text: str) -> tuple[str, str]:
    """Key and value of "key=value". Raises `BadCall`."""
    key, equals, value = text.partition("=")
    key = key.strip().replace("-", "_")
    if not equals or not value.strip():
        raise BadCall("not-an-override", f"{text!r} is no change", "write key=value, such as font_px=52")
    if key not in KEYS:
        raise BadCall("unknown-key", f"a rig has no {key!r}", near_hint(key, KEYS))
    return key, value.strip()


def is_range(text: str) -> bool:
    return ".." in text.partition("=")[2]


def values_of(rig: Rig) -> dict[str, Any]:
    """The values that `rig_from` would build this very rig from."""
    values: dict[str, Any] = {
        "title": rig.title,
        "width": rig.picture_width_mm,
        "height": rig.picture_height_mm,
        "pixels": f"{rig.width_px}x{rig.height_px}",
        "lies": rig.lies,
        "top": rig.top,
        "lens_x": rig.lens_x,
        "lens_y": rig.lens_y,
        "ink": rig.ink,
        "ground": rig.ground,
        "style": rig.style,
        "eye_to_lens": rig.eye_to_lens_mm,
        "glass_thickness": rig.glass_mm,
        **{key: getattr(rig, key) for key in NUMBER_RANGES},
    }
    if rig.has_glass:
        values |= {"eye_to_glass": rig.eye_to_glass_mm, "glass_to_screen": rig.glass_to_screen_mm}
    else:
        values["eye_to_screen"] = rig.eye_to_glass_mm
    if rig.glass_passes is not None and rig.glass_reflects is not None:
        values["split"] = f"{rig.glass_passes * 100:g}/{rig.glass_reflects * 100:g}"
    return {key: value for key, value in values.items() if value is not None}


def number_or_text(key: str, value: str) -> Any:
    """A number where the key wants one, or a bare number for a length in millimetres or a place; else the text."""
    numeric = key in NUMBER_RANGES or key in ("lens_x", "lens_y")
    if numeric and re.fullmatch(r"[+-]?\d+(?:[.,]\d+)?(?:px|em)?", value):
        return float(re.sub(r"(px|em)$", "", value).replace(",", "."))
    return f"{value} mm" if re.fullmatch(r"[+-]?\d+(?:[.,]\d+)?", value) else value


def _rivals(key: str) -> tuple[str, ...]:
    rivals: Mapping[str, tuple[str, ...]] = {
        "diagonal": SIZES,
        "flip": ("top", "lies"),
        "lies": ("flip", "top"),
        "top": ("flip",),
        "eye_to_screen": ("eye_to_glass", "glass_to_screen"),
        "eye_to_glass": ("eye_to_screen", "eye_to_lens"),
        "pixels": ("height",),
        "width": SIZES,
        "height": SIZES,
    }
    return rivals.get(key, ())


def _range(text: str) -> Iterator[str]:
    """The values of a range as texts, each with its unit; the text itself where it is no range."""
    if ".." not in text:
        yield text
        return
    found = _SWEEP.fullmatch(text)
    if not found:
        hint = "write low..high/step, such as font_px=40..90/5 or eye_to_glass=1.2..3m/20cm"
        raise BadCall("not-a-range", f"{text!r} is no range", hint)
    low, high = _float(found["low"]), _float(found["high"])
    unit = found["unit"]
    step = _step(found, low, high)
    if not (low <= high and step > 0):
        raise BadCall("not-a-range", f"{text!r} runs from the larger to the smaller", "write low..high/step")
    count = math.floor((high - low) / step + 1e-9)
    if count >= MOST_ROWS:
        raise BadCall("too-many-rows", f"that would be more than {MOST_ROWS} rows", "take larger steps")
    for i in range(count + 1):
        yield f"{round(low + i * step, 6):g}{unit}"


def _step(found: re.Match[str], low: float, high: float) -> float:
    """The step in the range's own unit; a tenth of the range where none is given."""
    if found["step"] is None:
        return (high - low) / 10 or 1.0
    step, own, other = _float(found["step"]), found["unit"], found["step_unit"]
    if not other or other == own:
        return step
    if own not in MM_PER_UNIT or other not in MM_PER_UNIT:
        raise BadCall("not-a-range", f"a step in {other!r} does not fit a range in {own!r}", "use one unit for both")
    return step * MM_PER_UNIT[other] / MM_PER_UNIT[own]


def _float(text: str) -> float:
    return float(text.replace(",", "."))
