"""The whole run on the demo: every file is there, the same input gives the same bytes, one wording everywhere."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from promptprep import faces
from promptprep.model.language import FIRST_CLASS
from promptprep.store.templates import shipped

DEMO = shipped("scripts_demo")
KINDS = ("screen.html", "screen.pdf", "paper.pdf", "crew.pdf", "crew.csv", "vtt")


@pytest.fixture(scope="module")
def out(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("out")
    faces.prepare([DEMO], folder)
    return folder


@pytest.mark.parametrize("language", FIRST_CLASS)
def test_each_language_has_its_files(out: Path, language: str) -> None:
    for kind in KINDS:
        assert (out / f"sky.{language}.{kind}").stat().st_size > 300


def test_the_same_input_gives_the_same_bytes(out: Path, tmp_path: Path) -> None:
    scripts = [DEMO / "sky.ja.md", DEMO / "dome.en.md"]
    one, two = tmp_path / "one", tmp_path / "two"
    faces.prepare(scripts, one)
    faces.prepare(scripts, two)
    names = sorted(p.name for p in one.iterdir())
    assert names == sorted(p.name for p in two.iterdir())
    assert [n for n in names if (one / n).read_bytes() != (two / n).read_bytes()] == []


def test_one_wording_on_screen_paper_and_report(out: Path) -> None:
    report = json.loads((out / "report.json").read_text("utf-8"))
    for script in report["scripts"]:
        stem = Path(script["file"]).stem
        assert script["digest"] in (out / f"{stem}.screen.html").read_text("utf-8")
        assert script["digest"] in (out / f"{stem}.vtt").read_text("utf-8")
    assert len({s["digest"] for s in report["scripts"]}) == len(report["scripts"])


@pytest.mark.parametrize("language", FIRST_CLASS)
def test_the_screen_shows_every_word_of_the_copy(out: Path, language: str) -> None:
    script = faces.read_script(DEMO / f"sky.{language}.md")
    copy = "".join("".join(p.text.split()) for s in script.segments for p in s.paragraphs)
    prepared = faces.prepare([DEMO / f"sky.{language}.md"], out / "again").prepared
    lines = "".join("".join(line.text.split()) for line in prepared.scripts[0].broken.lines)
    assert lines == copy


def test_the_report_needs_nothing_from_outside(out: Path) -> None:
    page = (out / "report.html").read_text("utf-8")
    assert "<script" not in page
    assert not re.search(r"(?:src|href)\s*=\s*[\"'](?!#|data:)", page)
    assert not re.search(r"url\((?!['\"]?data:|#)", page)
    assert "What to do first" in page


def test_lines_stand_in_the_order_of_time(out: Path) -> None:
    page = (out / "sky.en.screen.html").read_text("utf-8")
    times = [float(t) for t in re.findall(r'data-at-s="([\d.]+)"', page)]
    numbers = [int(n) for n in re.findall(r'data-line="(\d+)"', page)]
    assert numbers == list(range(len(numbers)))
    assert times == sorted(times)
