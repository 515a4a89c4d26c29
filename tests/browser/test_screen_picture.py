"""The picture on the glass: flips are exact mirrors, lines are as planned, the lens is where the line is."""

from __future__ import annotations

import io
from typing import Any

import numpy as np
import pytest
from PIL import Image

from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import Rig
from promptprep.rendering.screen import screen_html
from promptprep.rendering.screen_plan import frame_of
from tests.rendering.screen_factory import FIELD, HALL, SMALL, demo, env, fonts

pytestmark = pytest.mark.browser
MIRROR = {
    "none": lambda picture: picture,
    "horizontal": lambda picture: picture[:, ::-1],
    "vertical": lambda picture: picture[::-1],
    "both": lambda picture: picture[::-1, ::-1],
}
LINE_BOXES = """() => [...document.querySelectorAll('[data-line]')].map((e) => {
  const range = document.createRange(); range.selectNodeContents(e);
  const rects = [...range.getClientRects()].filter((r) => r.width > 0);
  const own = e.getBoundingClientRect();
  return { text: e.textContent, boxes: new Set(rects.map((r) => Math.round(r.top))).size,
    left: Math.min(...rects.map((r) => r.left)), right: Math.max(...rects.map((r) => r.right)),
    own_left: own.left, own_right: own.right, height: own.height, y: (own.top + own.bottom) / 2 };
})"""


FRAMES = "new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(go))))"


def opened(context: Any, address: str, fragment: str, size: tuple[int, int] = (1920, 1080)) -> Any:
    page = context.new_page()
    page.set_viewport_size({"width": size[0], "height": size[1]})
    page.goto(f"{address}#{fragment}")
    page.evaluate(f"document.fonts.ready.then(() => {FRAMES})")
    return page


def picture(page: Any, **options: Any) -> np.ndarray:
    return np.asarray(Image.open(io.BytesIO(page.screenshot(**options))).convert("RGB")).astype(int)


def go(page: Any, fragment: str) -> None:
    page.evaluate(f"(f) => {{ location.hash = f; return {FRAMES}; }}", fragment)


@pytest.mark.parametrize("name", ["sky.en", "sky.ar", "sky.hi", "sky.ja", "sky.zh"])
@pytest.mark.parametrize(("rig", "size"), [(HALL, (1920, 1080)), (FIELD, (1014, 768))], ids=["hall", "field"])
def test_each_flip_is_the_mirror_dot_for_dot(context: Any, write_page: Any, name: str, rig: Rig, size: Any) -> None:
    address = write_page("a.html", screen_html(demo(name, rig), env(), fonts))
    page = opened(context, address, "flip=none&at=41.3&hold=1", size)
    upright = picture(page)
    assert (upright.max(axis=2) > 150).mean() > 0.004, "there must be copy to mirror"
    assert (abs(upright - upright[:, ::-1]).max(axis=2) > 60).mean() > 0.004, "and it must not be symmetric"
    for flip, mirrored in MIRROR.items():
        go(page, f"flip={flip}&at=41.3&hold=1")
        assert np.array_equal(picture(page), mirrored(upright)), flip


def test_cards_chart_and_help_mirror_too(context: Any, write_page: Any) -> None:
    prepared = demo("sky.en")
    live = next(p for s in prepared.timing.segments for b in s.blocks for p in b.pauses if p.kind == "live")
    page = opened(context, write_page("a.html", screen_html(prepared, env(), fonts)), "flip=none&hold=1")
    for state in (f"at={live.start_s + 20}", "at=20", "chart=1&at=0", "chart=0&help=1&at=3"):
        go(page, f"flip=none&hold=1&{state}")
        upright = picture(page)
        for flip in ("horizontal", "vertical", "both"):
            go(page, f"flip={flip}&hold=1&{state}")
            assert np.array_equal(picture(page), MIRROR[flip](upright)), (state, flip)


def test_panels_can_stay_upright(context: Any, write_page: Any) -> None:
    page = opened(
        context, write_page("a.html", screen_html(demo("sky.en"), env(), fonts)), "flip=none&at=0&hold=1&help=1"
    )
    box = page.locator("#help").bounding_box()
    clip = {key: box[key] for key in ("x", "y", "width", "height")}
    upright = picture(page, clip=clip)
    go(page, "flip=horizontal&at=0&hold=1&help=1&panels=plain")
    assert abs(picture(page, clip=clip) - upright).mean() < 1, "the same, but for the rounding of two flips"
    go(page, "flip=horizontal&at=0&hold=1&help=1&panels=turn")
    assert abs(picture(page, clip=clip) - upright).mean() > 5


LANGUAGES = ["sky.en", "sky.fr", "sky.ru", "sky.ar", "sky.hi", "sky.ja", "sky.zh", "sky.ko"]
PLACES = [(name, HALL) for name in LANGUAGES] + [
    (n, rig) for n in ("sky.en", "sky.ar", "sky.ja") for rig in (FIELD, SMALL)
]


@pytest.mark.parametrize(("name", "rig"), PLACES, ids=lambda p: getattr(p, "id", p))
def test_planned_lines_are_rendered_lines(context: Any, write_page: Any, name: str, rig: Rig) -> None:
    prepared = demo(name, rig)
    size = (rig.width_px, rig.height_px)
    page = opened(context, write_page("a.html", screen_html(prepared, env(), fonts)), "flip=none&at=0&hold=1", size)
    boxes = page.evaluate(LINE_BOXES)
    frame = frame_of(prepared)
    assert [box["text"].strip() for box in boxes] == [line.text.strip() for line in prepared.broken.lines]
    for box, line in zip(boxes, prepared.broken.lines, strict=True):
        assert box["boxes"] == 1, box
        assert box["left"] >= max(box["own_left"] - 0.5, 0), box
        assert box["right"] <= min(box["own_right"] + 0.5, rig.width_px), box
        assert box["own_left"] == pytest.approx(frame.left_px, abs=1), "the column stands where the frame says"
        assert box["own_right"] == pytest.approx(frame.left_px + frame.column_px, abs=1)
        if not any(run.stress for run in line.runs):
            width = line.width_em * prepared.broken.column.font_px
            assert box["right"] - box["left"] == pytest.approx(width, rel=0.002, abs=1), box


def lens_offsets(page: Any, prepared: PreparedScript) -> list[float]:
    """For each line: how far its middle is from the lens at its planned second, in lines."""
    at = [line.at_s for line in prepared.broken.lines]
    ys = page.evaluate(
        """async (times) => { const ys = []; for (const [i, t] of times.entries()) {
          location.hash = `flip=none&at=${t}&hold=1`;
          await new Promise((go) => addEventListener('hashchange', () => requestAnimationFrame(go), { once: true }));
          const r = document.querySelector(`[data-line="${i}"]`).getBoundingClientRect();
          ys.push((r.top + r.bottom) / 2); }
          return ys; }""",
        at,
    )
    scale = (
        page.evaluate("document.querySelector('[data-line]').getBoundingClientRect().height")
        / prepared.broken.column.line_px
    )
    lens = page.evaluate("innerHeight") / 2 + (prepared.rig.lens_y - 0.5) * prepared.rig.height_px * scale
    return [(y - lens) / (prepared.broken.column.line_px * scale) for y in ys]


@pytest.mark.parametrize(("rig", "size"), [(HALL, (1920, 1080)), (FIELD, (540, 960)), (HALL, (1280, 800))])
def test_each_line_is_at_the_lens_at_its_second(context: Any, write_page: Any, rig: Rig, size: Any) -> None:
    prepared = demo("sky.en", rig)
    page = opened(context, write_page("a.html", screen_html(prepared, env(), fonts)), "flip=none&at=0.001&hold=1", size)
    assert max(abs(o) for o in lens_offsets(page, prepared)) < 0.02


def test_letters_are_grey_not_coloured(context: Any, write_page: Any) -> None:
    """Coloured edges (for the dots of one panel) would be wrong on a flipped one."""
    page = opened(context, write_page("a.html", screen_html(demo("sky.en"), env(), fonts)), "flip=none&at=30&hold=1")
    shot = picture(page)
    assert shot.max() > 240
    assert (shot.max(axis=2) - shot.min(axis=2)).max() == 0
