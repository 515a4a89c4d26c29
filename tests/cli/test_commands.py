"""The commands: their help, their JSON, their exit statuses."""

from __future__ import annotations

import html
import json
import re
import sys
from collections.abc import Sequence
from pathlib import Path

import pytest

from promptprep.__main__ import app, main
from promptprep.store.templates import shipped

COMMANDS = [c.name for c in app.registered_commands]
DEMO = shipped("scripts_demo")
FAULTY = """# A {slot=0:05}

[zoom in] Good evening. This sentence will not fit into its five seconds, however fast it is read.
"""


def run(args: Sequence[str], capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> tuple[int, str]:
    monkeypatch.setattr(sys, "argv", ["promptprep", *args])
    with pytest.raises(SystemExit) as left:
        main()
    return int(left.value.code or 0), capsys.readouterr().out


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_help_with_an_example(
    name: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    status, out = run([name, "--help"], capsys, monkeypatch)
    assert status == 0
    assert f"Example: promptprep {name}" in " ".join(out.split())


def test_every_command_stands_in_the_readme() -> None:
    readme = Path(__file__).parents[2] / "README.md"
    text = readme.read_text("utf-8")
    assert [name for name in COMMANDS if f"`promptprep {name}" not in text] == []


def test_time_json_adds_up(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    _, out = run(["time", str(DEMO / "sky.en.md"), "--json"], capsys, monkeypatch)
    (script,) = json.loads(out)["scripts"]
    assert script["mean_s"] == pytest.approx(sum(s["mean_s"] for s in script["segments"]), abs=0.01)
    starts = [s["start_s"] for s in script["segments"]]
    assert starts == sorted(starts)
    assert script["over_s"] == pytest.approx(script["mean_s"] - script["slot_s"], abs=0.002)
    assert script["low_s"] < script["mean_s"] < script["high_s"]


def test_check_json_points_at_its_places(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    status, out = run(["check", str(DEMO / "dome.en.md"), "--json"], capsys, monkeypatch)
    findings = json.loads(out)["findings"]
    assert status == 1
    lines = (DEMO / "dome.en.md").read_text("utf-8").splitlines()
    for finding in findings:
        assert finding["level"] in ("fix", "look", "note")
        assert 1 <= finding["line"] <= len(lines)
        assert "›" in finding["excerpt"]
    zoom = next(f for f in findings if f["name"] == "unknown-cue")
    assert lines[zoom["line"] - 1][zoom["column"] - 1 :].startswith("[zoom")


def test_status_one_says_that_there_is_something_to_fix(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "a.en.md"
    file.write_text(FAULTY, "utf-8")
    assert run(["check", str(file)], capsys, monkeypatch)[0] == 1
    assert run(["time", str(file)], capsys, monkeypatch)[0] == 1


def test_sightline_json_of_the_demo(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    status, out = run(["sightline", str(DEMO), "--json"], capsys, monkeypatch)
    rigs = {r["id"]: r for r in json.loads(out)["rigs"]}
    assert status == 1  # the field rig is too small for its mark: a real fault of the demo
    assert rigs["hall"]["flip"] == "vertical"
    assert rigs["hall"]["optical_path_mm"] == pytest.approx(2780)


def test_what_if_changes_one_value(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    args = ["sightline", str(DEMO), "--rig", "hall", "--what-if", "eye_to_glass=1.9m", "--json"]
    (rig,) = json.loads(run(args, capsys, monkeypatch)[1])["rigs"]
    assert rig["optical_path_mm"] == pytest.approx(2180)
    args = ["sightline", str(DEMO), "--rig", "hall", "--what-if", "font_px=60..80/10", "--json"]
    rigs = json.loads(run(args, capsys, monkeypatch)[1])["rigs"]
    assert [r["setting"]["font_px"] for r in rigs] == ["60", "70", "80"]


def test_start_makes_a_studio_that_works_and_overwrites_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = tmp_path / "mine"
    assert run(["start", str(folder)], capsys, monkeypatch)[0] == 0
    (folder / "first.en.md").write_text("My own words.", "utf-8")
    assert run(["start", str(folder)], capsys, monkeypatch)[0] == 0
    assert (folder / "first.en.md").read_text("utf-8") == "My own words."
    assert run(["time", str(folder)], capsys, monkeypatch)[0] == 0


@pytest.mark.parametrize("wanted", [False, True])
def test_sentences_start_lines_on_the_screen_where_the_studio_says_so(
    wanted: bool, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    run(["start", str(tmp_path / "new")], capsys, monkeypatch)
    studio, copy = tmp_path / "new" / "studio.toml", tmp_path / "new" / "first.en.md"
    assert "\n# sentence_starts_line = true " in studio.read_text("utf-8"), "the start file tells of it"
    studio.write_text(f"sentence_starts_line = {json.dumps(wanted)}\n{studio.read_text('utf-8')}", "utf-8")
    copy.write_text("One. Two! Three?\n", "utf-8")
    run(["prepare", str(copy), "--out", str(tmp_path / "out")], capsys, monkeypatch)
    page = (tmp_path / "out" / "first.en.screen.html").read_text("utf-8")
    rows = re.findall(r'<div class="line.*?data-line.*?>(.*?)</div>', page)
    lines = [html.unescape(re.sub(r"<.*?>", "", row)) for row in rows]
    assert " ".join(lines) == "One. Two! Three?"
    assert (len(lines) == 3) is wanted


def test_explain_lists_and_explains(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    assert "breathless-sentence" in run(["explain"], capsys, monkeypatch)[1]
    page = run(["explain", "breathless-sentence"], capsys, monkeypatch)[1]
    assert len(page.splitlines()) > 5
