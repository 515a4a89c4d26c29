"""A real browser's track element takes the caption files, cue by cue."""

from __future__ import annotations

import functools
import http.server
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from promptprep import faces
from promptprep.model.rig import Studio
from promptprep.parsing.parse import parse_script
from promptprep.pipeline.scripts import time_one
from promptprep.rendering.caption_files import chapters, chapters_vtt, vtt
from promptprep.store.templates import shipped
from tests.outside.test_webvtt import demo, valid_vtt

PAGE = """<!doctype html><video id="v"><track id="t" kind="{kind}" src="{name}" srclang="{lang}" default></video>"""
READ = """async () => { const t = document.getElementById('t'); t.track.mode = 'hidden';
  for (let i = 0; i < 100 && t.readyState < 2; i++) await new Promise(r => setTimeout(r, 50));
  return { state: t.readyState, cues: [...(t.track.cues ?? [])].map(c => [c.startTime, c.endTime, c.text]) }; }"""


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_: Any) -> None:
        pass


@pytest.fixture
def served(tmp_path: Path) -> Iterator[tuple[Path, str]]:
    """A folder and its address: a track is not read from a file address."""
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(_Quiet, directory=str(tmp_path)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield tmp_path, f"http://127.0.0.1:{server.server_port}"
    server.shutdown()


@pytest.mark.browser
@pytest.mark.parametrize("kind", ["captions", "chapters"])
@pytest.mark.parametrize("language", ["en", "ar", "ja"])
def test_chromium_reads_every_cue(context: Any, served: tuple[Path, str], language: str, kind: str) -> None:
    folder, address = served
    text = vtt(demo(language), "0123456789ab") if kind == "captions" else _chapters(language)
    (folder / "a.vtt").write_text(text, "utf-8")
    (folder / "index.html").write_text(PAGE.format(kind=kind, name="a.vtt", lang=language), "utf-8")
    page = context.new_page()
    page.goto(f"{address}/index.html")
    read = page.evaluate(READ)
    assert read["state"] == 2
    wanted = [[start / 1000, end / 1000, payload] for start, end, payload in valid_vtt(text)]
    assert read["cues"] == wanted


def _chapters(language: str) -> str:
    script = parse_script((shipped("scripts_demo") / f"sky.{language}.md").read_text("utf-8"), language=language)
    return chapters_vtt(chapters(time_one(script, Studio(), faces.tools())))
