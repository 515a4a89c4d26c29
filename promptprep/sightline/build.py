"""Builds a rig from what the studio wrote, and refuses what no room has."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from promptprep.model.rig import Flip, Rig
from promptprep.sightline.flip import TOPS, flip_for
from promptprep.sightline.values import NUMBER_RANGES, BadRig, near_hint, read_value
from promptprep.units import parse_length

SQUARE_WITHIN = 0.03  # a pixel's sides may differ by this before the sizes contradict each other


def rig_from(name: str, values: Mapping[str, Any]) -> Rig:
    """The rig that a table of `studio.toml` describes. Raises `BadRig` with the key at fault.

    Lengths are millimetres or texts with a unit. The picture is given by `diagonal` (with square pixels) or by
    `width` and `height`; `active_width` and `active_height` say how much of it is lit; `pixels` belong to the lit
    part. `split` is what the glass passes and reflects: "70/30".
    """
    given = {key: read_value(key, value) for key, value in values.items()}
    pixels = given.get("pixels")
    if pixels is None:
        raise BadRig("pixels", f"rig {name!r} has no pixels", 'write the resolution: pixels = "1920x1080"')
    width, height = _picture(name, given, pixels)
    lies, top, flip = _lie(given)
    eye, behind = _path(name, given, lies)
    _check_lens(given, eye)
    passes, reflects = given.get("split", (None, None))
    return Rig(
        id=name,
        title=given.get("title", ""),
        picture_width_mm=width,
        picture_height_mm=height,
        width_px=pixels[0],
        height_px=pixels[1],
        flip=flip,
        eye_to_glass_mm=eye,
        glass_to_screen_mm=behind,
        eye_to_lens_mm=given.get("eye_to_lens"),
        lens_x=_along(given.get("lens_x", 0.5), width),
        lens_y=_along(given.get("lens_y", 0.5), height),
        lies=lies,
        top=top,
        ink=given.get("ink", "#ffffff"),
        ground=given.get("ground", "#000000"),
        glass_reflects=reflects,
        glass_passes=passes,
        glass_mm=given.get("glass_thickness"),
        **_type(given, pixels[0]),
    )


def _type(given: Mapping[str, Any], width_px: int) -> dict[str, Any]:
    """The fields whose names are the keys themselves."""
    column = given.get("column_px")
    if column is not None and column > width_px:
        hint = f"the picture has {width_px} pixels across"
        raise BadRig("column_px", f"a column of {column:g} pixels does not fit the picture", hint)
    return {key: given[key] for key in (*NUMBER_RANGES, "style") if key in given}


def _along(place: float | str, size_mm: float) -> float:
    return parse_length(place) / size_mm if isinstance(place, str) else place


def _picture(name: str, given: Mapping[str, Any], pixels: tuple[int, int]) -> tuple[float, float]:
    """Width and height of the lit picture, in millimetres."""
    diagonal, width, height = given.get("diagonal"), given.get("width"), given.get("height")
    aspect = pixels[0] / pixels[1]
    if diagonal is None and width is None and height is None and "active_width" not in given:
        hint = 'write the diagonal of the lit picture: diagonal = "24 in", or its width and height'
        raise BadRig("diagonal", f"rig {name!r} has no screen size", hint)
    if width is not None and height is not None and diagonal is not None:
        _agree("diagonal", diagonal, math.hypot(width, height), "width and height")
    if width is None and height is None and diagonal is not None:
        height = diagonal / math.hypot(aspect, 1)
    width = given.get("active_width", width)
    height = given.get("active_height", height if "active_width" not in given else None)
    width = width if width is not None else height * aspect
    height = height if height is not None else width / aspect
    if abs(width / height / aspect - 1) > SQUARE_WITHIN:
        hint = "measure the lit picture; if only a part is lit, give active_width and active_height"
        message = f"a picture of {width:.0f} by {height:.0f} mm does not have {pixels[0]} by {pixels[1]} square pixels"
        raise BadRig("pixels", message, hint)
    return width, height


def _agree(key: str, one: float, other: float, what: str) -> None:
    if abs(one / other - 1) > SQUARE_WITHIN:
        hint = f"keep {key} or {what}, whichever you measured"
        raise BadRig(key, f"{key} is {one:.0f} mm, but {what} make it {other:.0f} mm", hint)


def _lie(given: Mapping[str, Any]) -> tuple[str, str, Flip]:
    """How the screen lies and the flip that follows. Where only the flip is told, it tells how the screen lies."""
    flip, lies, top = given.get("flip"), given.get("lies"), given.get("top")
    if lies is None:
        if "glass_to_screen" in given and flip is None:
            hint = 'write lies = "below" (or "above", "side") and top = "camera" (or "reader"), or flip = "vertical"'
            raise BadRig("glass_to_screen", "the flip is unknown: it depends on how the screen lies", hint)
        lies = "below" if "glass_to_screen" in given or flip in ("horizontal", "vertical") else "direct"
    if top is None:
        top = _top_by_flip(lies, flip)
    derived = flip_for(lies, _known_top(lies, top))
    if flip is not None and flip != derived:
        hint = "take flip out, or correct lies and top to how the screen really lies; check it with a word such as PART"
        message = f"a screen that lies {lies} with its top to {top} needs flip {derived!r}, not {flip!r}"
        raise BadRig("flip", message, hint)
    return lies, top, derived


def _known_top(lies: str, top: str) -> str:
    if top not in TOPS[lies]:
        raise BadRig("top", f"top cannot be {top!r} for a screen that lies {lies}", near_hint(top, tuple(TOPS[lies])))
    return top


def _top_by_flip(lies: str, flip: Flip | None) -> str:
    tops = list(TOPS[lies])
    if flip is None and lies in ("below", "above"):
        hint = 'write where the top of the picture points: top = "camera" or top = "reader"'
        raise BadRig("lies", f"the flip is unknown: which way does the top of the screen {lies} the glass point?", hint)
    return next((top for top in tops if flip_for(lies, top) == flip), tops[0])


def _path(name: str, given: Mapping[str, Any], lies: str) -> tuple[float, float]:
    """(eye to glass, glass to screen), the second 0 without a glass."""
    if lies == "direct":
        if "glass_to_screen" in given:
            hint = 'take glass_to_screen out, or say how the screen lies: lies = "below"'
            raise BadRig("glass_to_screen", "a screen that is looked at directly has no glass before it", hint)
        eye = given.get("eye_to_screen", given.get("eye_to_glass"))
        if eye is None:
            raise BadRig("eye_to_screen", f"rig {name!r} has no distance", 'write eye_to_screen = "2.5 m"')
        return eye, 0.0
    for key in ("eye_to_glass", "glass_to_screen"):
        if key not in given:
            raise BadRig(key, f"rig {name!r} has no {key}", f'measure it and write {key} = "..." with its unit')
    path = given["eye_to_glass"] + given["glass_to_screen"]
    if "eye_to_screen" in given:
        _agree("eye_to_screen", given["eye_to_screen"], path, "eye_to_glass and glass_to_screen")
    return given["eye_to_glass"], given["glass_to_screen"]


def _check_lens(given: Mapping[str, Any], eye_mm: float) -> None:
    lens = given.get("eye_to_lens")
    if lens is not None and "glass_to_screen" in given and lens <= eye_mm:
        hint = "the lens stands behind the glass: measure from the reader's eye to the front of the lens"
        raise BadRig("eye_to_lens", f"the lens at {lens:g} mm would be before the glass at {eye_mm:g} mm", hint)
