"""A movie of the screen copy that moves at the planned pace: for playing as a clip where no computer is at hand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from jinja2 import Environment

from promptprep.errors import BadCall
from promptprep.model.prepared import PreparedScript
from promptprep.rendering.screen import strip_pdf
from promptprep.rendering.screen_faces import Fonts
from promptprep.rendering.screen_plan import ScreenPlan, screen_plan
from promptprep.rendering.screen_words import IN_ENGLISH, ScreenWords
from promptprep.rendering.stills import page_images

RATES: dict[str, Fraction] = {
    "25": Fraction(25),
    "29.97": Fraction(30000, 1001),
    "30": Fraction(30),
    "50": Fraction(50),
    "59.94": Fraction(60000, 1001),
    "60": Fraction(60),
}
"""Frames a second. 29.97 and 59.94 are 1000/1001 of 30 and 60 (SMPTE ST 12-1 as reported)."""
CODECS = ("libx264", "libopenh264", "libvpx-vp9")
OPTIONS = {
    "libx264": {"crf": "18", "preset": "veryfast", "tune": "animation"},
    "libopenh264": {"b": "8000000"},
    "libvpx-vp9": {"crf": "24", "b": "0", "deadline": "realtime", "cpu-used": "8", "row-mt": "1"},
}
BT709 = 1
LEAD_S = 3.0
"""Still picture before the text starts, and after it ends."""
FADE_S = 0.4


Planes = tuple[Any, Any, Any]
"""Light and two half-size colour planes (YUV 4:2:0, ITU-R BT.709), as arrays of bytes."""


@dataclass(frozen=True, slots=True)
class Pictures:
    """The copy as dots: slices of the strip, each one picture high, and the guest cards by their wait's number."""

    slices: tuple[Planes, ...]
    cards: dict[int, Planes]
    ground: tuple[int, int, int]


def movie(
    prepared: PreparedScript,
    path: Path,
    env: Environment,
    fonts: Fonts,
    *,
    words: ScreenWords = IN_ENGLISH,
    rate: str = "25",
    progress: Callable[[int, int], None] = lambda done, total: None,
) -> None:
    """Writes `path` (.mp4 or .webm) at the rig's resolution, flipped. `progress` is told (frames done, frames in all).

    Raises `BadCall` for a rate that is none of `RATES` and where no encoder is installed (the extra "movie").
    """
    if rate not in RATES:
        raise BadCall("no-such-rate", f"{rate!r} frames a second is not offered", f"use one of {', '.join(RATES)}")
    av = _encoder_library()
    plan = screen_plan(prepared)
    total = int((plan.end_s + 2 * LEAD_S) * RATES[rate])
    shown = _pictures(av, prepared, plan, env, fonts, words)
    container = av.open(str(path), "w")
    try:
        stream = _stream(av, container, path, RATES[rate], plan)
        for number in range(total):
            planes = _frame(plan, shown, float(number / RATES[rate]) - LEAD_S)
            container.mux(stream.encode(_as_frame(av, planes, prepared.rig.flip, number)))
            progress(number + 1, total)
        container.mux(stream.encode(None))
    finally:
        container.close()


def _encoder_library() -> Any:
    try:
        import av
    except ImportError as fault:
        raise BadCall(
            "no-encoder", "a movie needs the package PyAV", 'install it with: pip install "promptprep[movie]"'
        ) from fault
    return av


def _stream(av: Any, container: Any, path: Path, rate: Fraction, plan: ScreenPlan) -> Any:
    """A stream of the first codec that this build offers for the file's kind."""
    wanted = CODECS[2:] if path.suffix == ".webm" else CODECS[:2]
    codec = next((name for name in wanted if name in av.codecs_available), None)
    if codec is None:
        raise BadCall("no-encoder", f"PyAV here writes no {path.suffix} file", "try the other of .mp4 and .webm")
    stream = container.add_stream(codec, rate=rate)
    stream.width, stream.height = plan.frame.width_px // 2 * 2, plan.frame.height_px // 2 * 2
    stream.pix_fmt = "yuv420p"
    stream.options = OPTIONS[codec]
    stream.thread_type = "AUTO"
    context = stream.codec_context
    context.color_primaries = context.color_trc = context.colorspace = BT709
    return stream


def _as_frame(av: Any, planes: Planes, flip: str, number: int) -> Any:
    import numpy

    rows = numpy.concatenate([_flipped(plane, flip).reshape(-1) for plane in planes])
    frame = av.VideoFrame.from_ndarray(rows.reshape(-1, planes[0].shape[1]), format="yuv420p")
    frame.pts = number
    return frame


def _flipped(plane: Any, flip: str) -> Any:
    rows = plane[::-1] if flip in ("vertical", "both") else plane
    return rows[:, ::-1] if flip in ("horizontal", "both") else rows


def _pictures(
    av: Any, prepared: PreparedScript, plan: ScreenPlan, env: Environment, fonts: Fonts, words: ScreenWords
) -> Pictures:
    """Draws the strip in slices of one picture's height, then the guest cards, all upright."""
    pages = [_planes(av, image) for image in page_images(strip_pdf(prepared, env, fonts, words))]
    live = [i for i, wait in enumerate(plan.waits) if wait.kind == "live"]
    slices = pages[: len(pages) - len(live)]
    light, blue, red = (int(plane[0, 0]) for plane in pages[0])
    return Pictures(tuple(slices), dict(zip(live, pages[len(slices) :], strict=True)), (light, blue, red))


def _planes(av: Any, image: Any) -> Planes:
    """An RGB image as planes, cut to an even size."""
    import numpy

    width, height = image.width // 2 * 2, image.height // 2 * 2
    frame = av.VideoFrame.from_ndarray(numpy.asarray(image)[:height, :width].copy(), format="rgb24")
    rows = frame.reformat(format="yuv420p", dst_colorspace="ITU709").to_ndarray()
    colour = rows[height:].reshape(2, height // 2, width // 2)
    return rows[:height], colour[0], colour[1]


def _frame(plan: ScreenPlan, shown: Pictures, at_s: float) -> Planes:
    """The upright picture at a second of the plan."""
    top = round(plan.travel.y_px(at_s)) - plan.frame.lens_y_px
    text = tuple(_window(shown, plane, top if plane == 0 else top // 2) for plane in range(3))
    card = _card(plan, at_s)
    if card is not None:
        number, light = card
        text = tuple(_mixed(a, b, light) for a, b in zip(text, shown.cards[number], strict=True))
    return text[0], text[1], text[2]


def _window(shown: Pictures, plane: int, top: int) -> Any:
    """One plane of the strip from row `top`, one picture high; above and below the strip is ground."""
    import numpy

    height, width = shown.slices[0][plane].shape
    parts = []
    row = top
    while row < top + height:
        index, inside = divmod(row, height)
        count = min(height - inside, top + height - row)
        if 0 <= index < len(shown.slices):
            parts.append(shown.slices[index][plane][inside : inside + count])
        else:
            parts.append(numpy.full((count, width), shown.ground[plane], dtype=numpy.uint8))
        row += count
    return numpy.concatenate(parts) if len(parts) > 1 else parts[0]


def _card(plan: ScreenPlan, at_s: float) -> tuple[int, float] | None:
    """(number of the wait, how much of its card is shown) in a live part."""
    for number, wait in enumerate(plan.waits):
        if wait.kind == "live" and wait.at_s < at_s < wait.end_s:
            return number, min(at_s - wait.at_s, wait.end_s - at_s, FADE_S) / FADE_S
    return None


def _mixed(text: Any, card: Any, light: float) -> Any:
    import numpy

    return card if light >= 1 else (text * (1 - light) + card * light).round().astype(numpy.uint8)
