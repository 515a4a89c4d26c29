"""The desk in a real browser: choose, write, see the time move, save, prepare."""

from __future__ import annotations

import shutil
import threading
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import uvicorn

from promptprep.desk.app import desk_app
from promptprep.store.templates import shipped

pytestmark = pytest.mark.browser
DEMO = shipped("scripts_demo")
WIDTHS = (1440, 900, 600)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name in ("studio.toml", "dome.en.md", "sky.ar.md", "sky.ja.md", "trailer.en.md"):
        shutil.copy(DEMO / name, tmp_path / name)
    return tmp_path


@pytest.fixture
def page(folder: Path, context: Any) -> Iterator[Any]:
    config = uvicorn.Config(desk_app(folder, folder / "out", None, "token"), port=0, log_level="warning")
    server = uvicorn.Server(config)
    running = threading.Thread(target=server.run)
    running.start()
    while not server.started:
        time.sleep(0.02)
    port = server.servers[0].sockets[0].getsockname()[1]
    opened = context.new_page()
    opened.set_default_timeout(30_000)
    opened.goto(f"http://127.0.0.1:{port}/")
    opened.wait_for_selector("#scripts button")
    yield opened
    opened.close()
    server.should_exit = True
    running.join()


def choose(page: Any, name: str) -> None:
    page.evaluate("name => { location.hash = name; location.reload(); }", name)
    page.wait_for_function("() => document.querySelector('#glass li')")


def test_copy_is_timed_checked_and_saved_as_it_is_written(page: Any, folder: Path) -> None:
    choose(page, "dome.en.md")
    before = page.text_content("#time .big")
    count = page.locator("#found li").count()
    page.focus("#text")
    page.keyboard.press("Control+End")
    page.keyboard.type("\n\n[fade slowly] And there is more to say about the dome.")
    page.wait_for_function("([b]) => document.querySelector('#time .big').textContent !== b", arg=[before])
    assert page.locator("#found li").count() > count
    assert page.locator("#under mark.fix", has_text="[fade slowly]").count() == 1
    assert "fade" not in (folder / "dome.en.md").read_text("utf-8")
    page.keyboard.press("Control+s")
    page.wait_for_function("() => document.getElementById('said').textContent.startsWith('Saved')")
    assert (folder / "dome.en.md").read_text("utf-8").endswith("more to say about the dome.")
    assert page.is_disabled("#save")


def test_a_finding_leads_to_its_place(page: Any) -> None:
    choose(page, "dome.en.md")
    page.locator("#found li button", has_text="no cue is called 'zoom'").click()
    field = "document.getElementById('text')"
    assert page.evaluate(f"{field}.value.slice({field}.selectionStart, {field}.selectionEnd)").startswith("[zoom")
    assert page.evaluate("document.activeElement.id") == "text"


@pytest.mark.parametrize("name", ["dome.en.md", "sky.ar.md", "sky.ja.md"])
def test_marks_lie_under_their_words(page: Any, name: str) -> None:
    """The field and the layer below wrap alike: the same height, whatever the width."""
    choose(page, name)
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        heights = page.evaluate("['text', 'under'].map((id) => document.getElementById(id).scrollHeight)")
        assert abs(heights[0] - heights[1]) < 8, (width, heights)
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_on_a_narrow_page_the_copy_begins_on_the_first_screen(page: Any) -> None:
    page.set_viewport_size({"width": 700, "height": 900})
    choose(page, "trailer.en.md")
    sheet = page.locator("#sheet").bounding_box()
    assert sheet["y"] < 600
    assert sheet["height"] > 500
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_a_fault_is_said_and_the_text_stays(page: Any) -> None:
    choose(page, "trailer.en.md")
    page.fill("#text", '+++\nslot = "soon"\n+++\n\nGood evening.')
    page.wait_for_selector("#said.bad")
    assert page.text_content("#said").startswith("Line 2")
    page.fill("#text", '+++\nslot = "0:20"\n+++\n\nGood evening.')
    page.wait_for_selector("#said:not(.bad)")


def test_a_script_saved_elsewhere_is_not_overwritten(page: Any, folder: Path) -> None:
    choose(page, "trailer.en.md")
    page.fill("#text", "Mine.")
    (folder / "trailer.en.md").write_text("Theirs.", "utf-8")
    page.click("#save")
    page.wait_for_selector("#said.bad")
    assert (folder / "trailer.en.md").read_text("utf-8") == "Theirs."
    assert page.input_value("#text") == "Mine."


def test_a_new_script_and_what_is_prepared_of_it(page: Any, folder: Path) -> None:
    page.fill("#new input", "moon night")
    page.select_option("#new select", "sw")
    page.click("#new button")
    page.wait_for_function("() => document.getElementById('text').value.includes('moon night')")
    page.fill("#text", "Habari za jioni, na karibuni kwenye mlima wetu. Mwezi umetoka.")
    page.wait_for_selector("#glass li")
    page.click("#prepare-one")
    page.wait_for_selector("#files a[href$='.screen.html']")
    assert (folder / "out" / "moon-night.sw.paper.pdf").read_bytes().startswith(b"%PDF")
    with page.expect_popup() as opened:
        page.click("#files a[href$='.screen.html']")
    assert opened.value.locator("[data-line]").count() >= 3


def test_the_drawing_follows_the_tape(page: Any, folder: Path) -> None:
    page.click("#studio button")
    page.wait_for_selector("#rigs article svg")
    assert page.is_hidden("#time")
    before = page.text_content("#rigs article svg")
    text = page.input_value("#text").replace('eye_to_glass = "2.5 m"', 'eye_to_glass = "3.5 m"')
    page.fill("#text", text.replace('eye_to_lens = "2.75 m"', 'eye_to_lens = "3.75 m"'))
    page.wait_for_function("b => document.querySelector('#rigs article svg').textContent !== b", arg=before)
    assert "3.50 m" in page.text_content("#rigs article svg")
    page.click("#save")
    page.wait_for_function("() => document.getElementById('said').textContent.startsWith('Saved')")
    assert 'eye_to_glass = "3.5 m"' in (folder / "studio.toml").read_text("utf-8")
