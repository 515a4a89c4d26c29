"""The page on the glass in real Chromium, measured: python -m tests.bench.screen

Prints one table: frames on time with an hour of text, open to first paint, sizes, one real minute against the plan,
and what an optical reader (tesseract, where installed) reads off upright and flipped pictures.
"""

from __future__ import annotations

import difflib
import io
import shutil
import subprocess
import sys
import tempfile
import time
from dataclasses import replace
from pathlib import Path
from statistics import median
from typing import Any

from promptprep.model.prepared import PreparedScript
from promptprep.rendering.screen import screen_html
from promptprep.rendering.screen_plan import screen_plan
from tests.browser.conftest import ARGUMENTS
from tests.rendering.screen_factory import HALL, demo, env, fonts, hour, prepared

FRAMES = """(seconds) => new Promise((done) => { const gaps = []; let last = null;
  const end = performance.now() + seconds * 1000;
  const step = (now) => { if (last !== null) gaps.push(now - last); last = now;
    if (now < end) requestAnimationFrame(step); else done(gaps); };
  requestAnimationFrame(step); })"""
PAINT = """() => new Promise((done) => { const read = () => {
  const paint = performance.getEntriesByName('first-contentful-paint')[0];
  paint ? done(paint.startTime) : setTimeout(read, 20); }; read(); })"""
PASSES = """(seconds) => new Promise((done) => { const passes = {}; const start = performance.now();
  const lines = [...document.querySelectorAll('[data-line]')].slice(0, 200); let from = null;
  const step = (now) => { from ??= now; const lens = innerHeight / 2;
    for (const line of lines) { const r = line.getBoundingClientRect(); const y = (r.top + r.bottom) / 2;
      if (Math.abs(y - lens) <= 2) (passes[line.dataset.line] ??= [now, now])[1] = now; }
    if (now - from < seconds * 1000) requestAnimationFrame(step); else done([from, passes]); };
  requestAnimationFrame(step); })"""


def main() -> None:
    from playwright.sync_api import sync_playwright

    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        path = shutil.which("chromium")
        chromium = playwright.chromium.launch(executable_path=path, args=ARGUMENTS)
        rows = [*_sizes(), *_opening(chromium, Path(folder)), *_frames(chromium, Path(folder))]
        rows += _minute(chromium, Path(folder))
        rows += _read_back(chromium, Path(folder))
        chromium.close()
    width = max(len(name) for name, _, _ in rows)
    for name, value, wanted in rows:
        print(f"{name:<{width}}  {value:>16}  {wanted}")


def _written(folder: Path, one: PreparedScript) -> str:
    file = folder / f"{one.script.language}-{len(one.broken.lines)}-{one.rig.flip}.html"
    file.write_text(screen_html(one, env(), fonts), "utf-8")
    return file.as_uri()


def _sizes() -> list[tuple[str, str, str]]:
    rows = []
    for language, words, limit in (("en", 9000, "< 3 MB"), ("ja", 3600, "< 8 MB")):
        one = prepared(hour(words, language), language)
        start = time.perf_counter()
        html = screen_html(one, env(), fonts)
        took = time.perf_counter() - start
        minutes = one.timing.timing.mean_s / 60
        rows.append((f"{language}: page of {minutes:.0f} min", f"{len(html.encode()) / 1e6:.2f} MB", limit))
        rows.append((f"{language}: made in", f"{took:.2f} s", ""))
    return rows


def _opening(chromium: Any, folder: Path) -> list[tuple[str, str, str]]:
    address = _written(folder, prepared(hour()))
    paints = []
    for _ in range(5):
        page = chromium.new_page(viewport={"width": 1920, "height": 1080})
        page.goto(address)
        paints.append(page.evaluate(PAINT))
        page.close()
    return [("an hour: open to first paint, middle of 5", f"{median(paints):.0f} ms", "< 1000 ms")]


def _frames(chromium: Any, folder: Path) -> list[tuple[str, str, str]]:
    """A frame is late where it comes more than half a frame after its turn. 20 s from the middle of the hour."""
    page = chromium.new_page(viewport={"width": 1920, "height": 1080})
    page.goto(f"{_written(folder, prepared(hour()))}#at=1800&flip=horizontal")
    page.wait_for_timeout(1500)
    gaps = page.evaluate(FRAMES, 20)
    page.close()
    idle = chromium.new_page(viewport={"width": 1920, "height": 1080})
    idle.goto("about:blank")
    idle.wait_for_timeout(500)
    empty = idle.evaluate(FRAMES, 10)
    idle.close()
    return [
        ("an hour: frames on time at 60 a second", f"{_on_time(gaps):.2f} %", ">= 99 %"),
        ("an empty page beside it, same machine", f"{_on_time(empty):.2f} %", ""),
    ]


def _on_time(gaps: list[float]) -> float:
    return 100 * sum(1 for gap in gaps if gap < 1.5 * 1000 / 60) / max(len(gaps), 1)


def _minute(chromium: Any, folder: Path) -> list[tuple[str, str, str]]:
    """One real minute: how far from its planned second each line stood at the lens."""
    one = replace(prepared(hour(400)), rig=replace(HALL, flip="none"))
    page = chromium.new_page(viewport={"width": 1920, "height": 1080})
    page.goto(f"{_written(folder, one)}#at=0&hold=1")
    page.wait_for_timeout(800)
    page.evaluate("location.hash = 'at=0'")
    start, passes = page.evaluate(PASSES, 62)
    page.close()
    late = []
    for line in one.broken.lines:
        if 1 < line.at_s < 60 and str(line.number) in passes:
            first, last = ((t - start) / 1000 for t in passes[str(line.number)])
            late.append(max(first - line.at_s, line.at_s - last, 0.0))
    seen = f"{max(late):.3f} s of {len(late)} lines"
    return [("one real minute: largest distance from plan", seen, "<= 0.1 s")]


def _read_back(chromium: Any, folder: Path) -> list[tuple[str, str, str]]:
    if not shutil.which("tesseract"):
        return [("read back", "no tesseract", "")]
    upright = demo("sky.en", replace(HALL, flip="none"))
    rows = []
    for flip in ("none", "horizontal", "vertical"):
        got, wanted = _pages_read(chromium, _written(folder, upright), upright, flip)
        share = 100 * difflib.SequenceMatcher(None, wanted, got, autojunk=False).ratio()
        rows.append(
            (f"read back by tesseract, flip {flip}", f"{share:.1f} %", ">= 99 %" if flip == "none" else "noise")
        )
    return rows


def _pages_read(chromium: Any, address: str, one: PreparedScript, flip: str) -> tuple[str, str]:
    page = chromium.new_page(viewport={"width": 1920, "height": 1080})
    page.goto(f"{address}#mode=pages&hold=1&at=0&flip={flip}")
    page.wait_for_timeout(500)
    page.evaluate("for (const id of ['mark', 'wait', 'guest']) document.getElementById(id).remove()")
    got, wanted = "", ""
    for screenful in screen_plan(one).screenfuls[:8]:
        page.evaluate(f"location.hash = 'mode=pages&hold=1&flip={flip}&at={screenful.at_s + 0.01}'")
        page.wait_for_timeout(150)
        got += _tesseract(page.screenshot())
        lines = one.broken.lines[screenful.first : screenful.last + 1]
        wanted += "".join("".join(line.text.split()) for line in lines)
    page.close()
    return got, wanted


def _tesseract(png: bytes) -> str:
    from PIL import Image, ImageOps

    dark = io.BytesIO()
    ImageOps.invert(Image.open(io.BytesIO(png)).convert("L")).resize((960, 540)).save(dark, "PNG")
    done = subprocess.run(["tesseract", "-", "-", "--psm", "6"], input=dark.getvalue(), capture_output=True, check=True)
    return "".join(done.stdout.decode("utf-8").split())


if __name__ == "__main__":
    sys.exit(main())
