"""`promptprep session`: its JSON, its statuses, its files, its holes."""

from __future__ import annotations

import csv
import io
import json
import re
import shutil
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from promptprep import faces
from promptprep.errors import BadCall
from promptprep.faces import sessions
from promptprep.rendering.crew_positions import POSITIONS, position_rows, positions_csv
from promptprep.store.templates import shipped
from tests.cli.test_commands import run


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    shutil.copytree(shipped("scripts_demo"), tmp_path / "demo")
    return tmp_path / "demo" / "session.toml"


def read(args: list[str], capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> dict[str, Any]:
    return dict(json.loads(run(["session", *args, "--json"], capsys, monkeypatch)[1]))


def test_json_of_the_demo_adds_up(
    demo: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    values = read([str(demo)], capsys, monkeypatch)
    assert list(values) == ["promptprep", "session", "items", "cues", "findings"]
    items, session = values["items"], values["session"]
    assert session["mean_s"] == items[-1]["end_s"]
    for before, after in pairwise(items):
        assert after["start_s"] == pytest.approx(before["end_s"] + after["changeover_s"] + after["wait_s"], abs=1e-9)
    assert items[-1]["back_s"] + items[-1]["mean_s"] == pytest.approx(session["mean_s"] - session["over_s"], abs=1e-9)
    assert 0 < session["chance_in_time"] < 1
    assert [cue["at_s"] for cue in values["cues"]] == sorted(cue["at_s"] for cue in values["cues"])
    assert len({cue["cue"] for cue in values["cues"]}) == len(values["cues"])
    assert {f["name"] for f in values["findings"]} >= {"late-session", "graphic-left-on"}


def test_segments_fill_their_item(
    demo: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    for item in read([str(demo)], capsys, monkeypatch)["items"]:
        if item["segments"]:
            assert sum(s["mean_s"] for s in item["segments"]) == pytest.approx(item["mean_s"], abs=1e-9)


def test_the_rest_timed_from_now(
    demo: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    values = read([str(demo), "--at", "18:50:30", "--from", "G"], capsys, monkeypatch)
    first = next(item for item in values["items"] if not item["done"])
    assert first["code"] == "G"
    assert first["start"].startswith("2026-12-01T18:50:30")
    with pytest.raises(BadCall):
        sessions.plan_session(demo, at="18:50", first="Q")


@pytest.mark.parametrize("spoil", ["missing", "bytes", "front"])
def test_a_script_that_cannot_be_read_leaves_a_hole(demo: Path, spoil: str) -> None:
    script = demo.parent / "sky.en.md"
    if spoil == "missing":
        script.unlink()
    else:
        script.write_bytes(b"\xff\xfe\x00" if spoil == "bytes" else b"+++\nreader = \n+++\nHello.")
    session = sessions.plan_session(demo)
    hole = next(row for row in session.items if row.item.file == "sky.en.md")
    assert hole.timed.fault
    assert next(f.name for f in session.findings if f.item == hole.item.code) == "missing-script"
    assert sum(row.timed.timing.words > 0 for row in session.items) == 4


def test_every_action_is_on_the_sheet_of_its_position(demo: Path) -> None:
    session = sessions.plan_session(demo)
    for position, kinds in POSITIONS.items():
        rows = list(csv.DictReader(io.StringIO(positions_csv(session, position))))
        wanted = [a for row in session.items for cue in row.timed.cues for a in cue.actions if a.kind in kinds]
        assert [r["action"] for r in rows if r["kind"] in kinds] == [a.text for a in wanted]
    whole = position_rows(session)
    assert all(a.at_ms <= b.at_ms for a, b in pairwise(whole))


def test_nobody_hears_themselves(demo: Path) -> None:
    returns = sessions.plan_session(demo).returns
    people = {found.person for found in returns}
    assert people == {"Ines Varga", "Dr Amina Osei"}
    for found in returns:
        assert found.person not in found.feeds
        assert people - {found.person} <= set(found.feeds)


def test_repairs_come_in_order_of_harm_and_quote_sentences_of_the_copy(demo: Path) -> None:
    demo.write_text(demo.read_text("utf-8").replace('end = "19:07"', 'end = "18:55"'), "utf-8")
    session = sessions.plan_session(demo)
    whole = [r for r in session.repairs if "alone" not in r.text]
    kinds = [r.kind for r in whole]
    assert kinds == [*["swap"] * (len(kinds) - 3), "pace", "sentences", "rest"]
    quoted = [(code, spare) for r in session.repairs for code, spare in r.spare]
    assert quoted
    for code, spare in quoted:
        script = next(row.timed.script for row in session.items if row.item.code == code)
        assert script
        assert script.source[spare.start : spare.end].strip() == spare.text
        assert not any(c.isdigit() for c in spare.text)


def test_a_pace_change_is_never_more_than_five_per_cent(demo: Path) -> None:
    demo.write_text(demo.read_text("utf-8").replace('end = "19:07"', 'end = "18:55"'), "utf-8")
    session = sessions.plan_session(demo)
    pace = next(r for r in session.repairs if r.kind == "pace" and "alone" not in r.text)
    spoken_s = sum(row.timed.timing.spoken_s for row in session.items if row.item.kind == "script")
    assert pace.gives_ms / 1000 == pytest.approx(spoken_s - spoken_s / 1.05, abs=0.01)


def test_numbers_are_kept_in_the_scripts(demo: Path) -> None:
    before = {row.item.code: row.timed for row in sessions.plan_session(demo).items}
    files = sessions.keep_cue_numbers(demo)
    assert {f.name for f in files} == {"trailer.en.md", "sky.en.md", "sky.es.md", "children.en.md", "dome.en.md"}
    assert (demo.parent / "sky.en.md.kept-1").read_bytes() == (shipped("scripts_demo") / "sky.en.md").read_bytes()
    after = sessions.plan_session(demo)
    for row in after.items:
        assert row.timed.runs_ms == before[row.item.code].runs_ms
        assert [c.label for c in row.timed.cues] == [c.label for c in before[row.item.code].cues]
    assert sessions.keep_cue_numbers(demo) == []


@pytest.fixture
def short(demo: Path) -> Path:
    """A session of one script with everything in it."""
    demo.write_text('title = "Short"\nstart = "18:30"\n\n[[items]]\nscript = "sky.en.md"\ncode = "C"\n', "utf-8")
    return demo


def test_all_files_are_written_and_the_same_again(short: Path, tmp_path: Path) -> None:
    session = sessions.plan_session(short)
    first = {p.name: p.read_bytes() for p in sessions.write_session(session, short, tmp_path / "a")}
    again = {p.name: p.read_bytes() for p in sessions.write_session(session, short, tmp_path / "b")}
    assert first == again
    assert {"session.pdf", "call.html", "crew.all.csv", "crew.sound.pdf", "lists.html", "C.sky.en.vtt", "C.sky.en.ttml",
            "C.sky.en.chapters.txt", "list.graphics.csv"} <= set(first)  # fmt: skip
    assert b"planetary geologist" in first["list.graphics.csv"]


def test_captions_take_the_times_of_a_take(short: Path, tmp_path: Path) -> None:
    session = sessions.plan_session(short)
    timed = next(row.timed for row in session.items if row.item.code == "C")
    lines = [{"line": n, "planned_s": float(n), "at_s": 5.0 + 1.5 * n} for n in range(300)]
    take = tmp_path / "take.json"
    take.write_text(json.dumps({"promptprep": 1, "script": "sky", "language": "en", "digest": timed.digest,
                                "clap_s": 2.0, "segments": [], "lines": lines}), "utf-8")  # fmt: skip
    out = tmp_path / "out"
    sessions.write_session(session, short, out, takes=[take])
    text = (out / "C.sky.en.vtt").read_text("utf-8")
    assert "times of a take" in text
    assert "00:00:03.000 -->" in text
    sessions.write_session(session, short, out)
    assert "times predicted" in (out / "C.sky.en.vtt").read_text("utf-8")


def test_the_screen_copies_of_a_prepared_folder_know_their_place(tmp_path: Path) -> None:
    """Two minutes of setting up, then the first script; the second must be over when the session ends."""
    (tmp_path / "one.en.md").write_text("Good evening from the hill.\n", "utf-8")
    (tmp_path / "two.en.md").write_text("Look up: the moon has risen.\n", "utf-8")
    (tmp_path / "three.en.md").write_text("Nobody runs this one tonight.\n", "utf-8")
    order = 'title = "Evening"\nstart = "18:30"\nend = "18:40"\n[[items]]\nsetup = "Light"\nruns = "2:00"\n'
    order += '[[items]]\nscript = "one.en.md"\n[[items]]\nscript = "two.en.md"\n'
    (tmp_path / "session.toml").write_text(order, "utf-8")
    one, two, three = (_place(tmp_path, name) for name in ("one", "two", "three"))
    assert (one["title"], one["number"], one["scripts"], one["start_s"]) == ("Evening", 1, 2, 120)
    assert (two["number"], two["slot_s"]) == (2, 600)
    assert one["slot_s"] < 600, "the second still has to be said"
    assert three is None
    (tmp_path / "session.toml").write_text("items = 3", "utf-8")
    assert _place(tmp_path, "one") is None, "a running order that cannot be read stops no script"


def _place(folder: Path, name: str) -> Any:
    page = next(p for p in faces.prepare(folder, folder / "out").files if p.name == f"{name}.en.screen.html")
    found = re.search(r'"place":(null|\{.*?\})', page.read_text("utf-8"))
    assert found
    return json.loads(found[1])
