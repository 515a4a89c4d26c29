"""The report of many scripts: folded to a line each, opened by a click or a link, whole on paper."""

from __future__ import annotations

import io
from functools import partial
from pathlib import Path
from typing import Any

import pdfplumber
import pytest

from promptprep.faces.scripts import load_scripts, studio_for, template_folders
from promptprep.faces.tools import tools
from promptprep.model.prepared import Prepared
from promptprep.pipeline.scripts import prepare_all
from promptprep.rendering.drawings import rig_drawings
from promptprep.rendering.environment import environment
from promptprep.rendering.report import OPEN_AT_MOST, report_html
from promptprep.store.templates import shipped

pytestmark = pytest.mark.browser
COPY = "+++\ntitle = 'Night {n}'\nrig = 'hall'\nslot = '0:30'\n+++\n\n# A\n\nThe dome opens on night {n}. [zoom: in]\n"


def prepared(folder: Path, count: int) -> Prepared:
    (folder / "studio.toml").write_bytes((shipped("scripts_demo") / "studio.toml").read_bytes())
    for n in range(count):
        (folder / f"night{n}.en.md").write_text(COPY.format(n=n), "utf-8")
    studio = studio_for([folder], None)
    return prepare_all(load_scripts([folder], studio), studio, tools())


def page_of(prepared: Prepared) -> str:
    env = environment(template_folders(prepared.studio))
    return report_html(prepared, env, partial(rig_drawings, env=env), lambda *_: "")


def test_many_scripts_are_folded_to_a_line_that_says_the_worst(context: Any, write_page: Any, tmp_path: Path) -> None:
    address = write_page("report.html", page_of(prepared(tmp_path, OPEN_AT_MOST + 1)))
    page = context.new_page()
    page.goto(address)
    lines = page.locator("section.script > details > summary")
    assert lines.count() == OPEN_AT_MOST + 1
    said = lines.nth(1).inner_text()
    for part in ("Night 1", "fits", "0:0", "fix", "zoom"):
        assert part in said
    times = page.locator("section.script .strip").nth(1)
    assert not times.is_visible()
    lines.nth(1).click()
    assert times.is_visible()
    page.locator("table.overview a").nth(2).click()
    assert page.locator("section.script .strip").nth(2).is_visible(), "a link opens what it leads to"
    with pdfplumber.open(io.BytesIO(page.pdf())) as document:
        printed = " ".join(sheet.extract_text() for sheet in document.pages)
    for n in range(OPEN_AT_MOST + 1):
        assert f"night {n}." in printed, "the copy's own last words, whatever line they are in"


def test_few_scripts_stand_open_and_a_quantity_has_one_row(context: Any, write_page: Any, tmp_path: Path) -> None:
    page = context.new_page()
    page.goto(write_page("report.html", page_of(prepared(tmp_path, 1))))
    assert page.locator("section.script .strip").is_visible()
    rig = page.locator("article").first
    names = rig.locator("xpath=details/table/tbody/tr/td[1]").all_inner_texts()
    assert len(names) == len(set(names)) >= 10
    every = rig.locator("details details table tbody tr td:first-child")
    assert every.count() > len(names), "all limits are still there"


def test_a_language_s_letters_have_a_font_in_every_text_of_the_page(
    context: Any, write_page: Any, tmp_path: Path
) -> None:
    """What a finding quotes, and a cue's wording, stand in English text: there too a machine may have no such font."""
    (tmp_path / "sky.ja.md").write_text(
        '# A\n\n[アルデバラン]{say="アルデバラン"}は明るい。\n\n[graphic: 東の地平線]\n', "utf-8"
    )
    studio = studio_for([tmp_path], None)
    env = environment(template_folders(studio))
    made = prepare_all(load_scripts([tmp_path], studio), studio, tools())
    page = context.new_page()
    page.goto(write_page("report.html", report_html(made, env, partial(rig_drawings, env=env), tools().fonts.css)))
    page.wait_for_function("document.fonts.status === 'loaded'")
    for place in (".says b", ".row.cue .text"):
        family = page.locator(place).first.evaluate("e => getComputedStyle(e).fontFamily")
        assert "report0-" in family, place
