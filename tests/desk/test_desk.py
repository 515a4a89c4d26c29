"""The desk's answers: what a page may ask, what it may not, and that nothing of a person's is lost."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from starlette.testclient import TestClient

from promptprep import faces
from promptprep.desk.app import TOKEN, desk_app

DEMO = Path("scripts_demo")
SECRET = "only-the-page-knows"
Ask = Callable[..., Any]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name in ("studio.toml", "sky.en.md", "sky.ar.md", "dome.en.md", "lexicon.toml"):
        shutil.copy(DEMO / name, tmp_path / name)
    return tmp_path


@pytest.fixture
def client(folder: Path) -> TestClient:
    return TestClient(desk_app(folder, folder / "out", None, SECRET), base_url="http://127.0.0.1")


@pytest.fixture
def ask(client: TestClient) -> Ask:
    def asked(question: str, status: int = 200, **values: Any) -> Any:
        answer = client.post(f"/ask/{question}", json=values, headers={TOKEN: SECRET})
        assert answer.status_code == status, answer.text
        return answer.json() if status == 200 else answer.json()["error"]

    return asked


def test_the_list_gives_each_script_its_time_or_its_fault(ask: Ask, folder: Path) -> None:
    (folder / "broken.en.md").write_bytes(b"\xff\xfe\x00")
    found = {one["name"]: one for one in ask("list")["scripts"]}
    assert set(found) == {"sky.en.md", "sky.ar.md", "dome.en.md", "broken.en.md"}
    assert found["sky.en.md"]["show"] == "sky"
    assert found["sky.en.md"]["verdict"] in ("fits", "tight", "over")
    assert found["broken.en.md"]["error"]["hint"]


def test_the_list_follows_files_and_studio(ask: Ask, folder: Path) -> None:
    before = {one["name"]: one for one in ask("list")["scripts"]}
    script = folder / "dome.en.md"
    script.write_text(
        script.read_text("utf-8") + "\n\nAnd twenty words more, so that it takes longer than before.\n", "utf-8"
    )
    after = {one["name"]: one for one in ask("list")["scripts"]}
    assert after["dome.en.md"]["mean"] != before["dome.en.md"]["mean"]
    assert after["sky.en.md"] == before["sky.en.md"]


def test_a_look_says_what_the_commands_say(ask: Ask, folder: Path) -> None:
    text = (folder / "dome.en.md").read_text("utf-8")
    view = ask("look", name="dome.en.md", text=text)
    ((script, timing),) = faces.time_scripts([folder / "dome.en.md"])
    ((_, findings),) = faces.check_scripts([folder / "dome.en.md"])
    assert view["time"]["mean_s"] == round(timing.timing.mean_s, 3)
    assert [one["name"] for one in view["findings"]] == [one.name for one in findings]
    assert [text[one["start"] : one["end"]] for one in view["findings"]] == [
        script.source[one.start : one.end] for one in findings
    ]


def test_a_look_changes_no_file(ask: Ask, folder: Path) -> None:
    before = {p.name: p.read_bytes() for p in folder.iterdir()}
    ask("look", name="sky.en.md", text="Quite another text.")
    assert {p.name: p.read_bytes() for p in folder.iterdir()} == before


def test_places_are_counted_as_browsers_count(ask: Ask) -> None:
    """UTF-16: a character beyond U+FFFF is two units."""
    text = "🌙🌙 The lamp is [zoom now] on."
    (found,) = [one for one in ask("look", name="sky.en.md", text=text)["findings"] if one["name"] == "unknown-cue"]
    units = text.encode("utf-16-le")
    assert units[2 * found["start"] : 2 * found["end"]].decode("utf-16-le") == "[zoom now]"


def test_a_fault_in_the_text_names_its_line(ask: Ask) -> None:
    fault = ask("look", 422, name="sky.en.md", text='+++\ntitle = "x\n+++\n\nGood evening.')
    assert fault["line"] == 2
    assert fault["hint"]


def test_the_first_save_keeps_the_state_before_and_the_next_ones_do_not(ask: Ask, folder: Path) -> None:
    script = folder / "dome.en.md"
    old, opened = script.read_bytes(), ask("open", name="dome.en.md")
    first = ask("save", name="dome.en.md", text="One.", digest=opened["digest"])
    second = ask("save", name="dome.en.md", text="Two.", digest=first["digest"])
    assert script.read_text("utf-8") == "Two."
    assert second["kept"] is None
    assert (folder / first["kept"]).read_bytes() == old
    assert [p.name for p in folder.glob("*.kept-*")] == [first["kept"]]


def test_what_somebody_else_saved_is_not_overwritten(ask: Ask, folder: Path) -> None:
    opened = ask("open", name="dome.en.md")
    (folder / "dome.en.md").write_text("By another hand.", "utf-8")
    assert ask("save", 422, name="dome.en.md", text="Mine.", digest=opened["digest"])["code"] == "changed-elsewhere"
    assert (folder / "dome.en.md").read_text("utf-8") == "By another hand."


def test_line_ends_stay_as_the_file_has_them(ask: Ask, folder: Path) -> None:
    (folder / "win.en.txt").write_bytes(b"Good evening.\r\nThe sky is clear.\r\n")
    opened = ask("open", name="win.en.txt")
    ask("save", name="win.en.txt", text="Good night.\nThe sky is clear.\n", digest=opened["digest"])
    assert (folder / "win.en.txt").read_bytes() == b"Good night.\r\nThe sky is clear.\r\n"


def test_a_document_is_shown_and_kept_as_a_new_script_only(ask: Ask, folder: Path) -> None:
    from docx import Document

    document = Document()
    document.add_paragraph("Good evening from the ridge.")
    document.save(str(folder / "pasted.en.docx"))
    opened = ask("open", name="pasted.en.docx")
    assert "Good evening" in opened["text"]
    assert not opened["writable"]
    assert ask("save", 422, name="pasted.en.docx", text="x", digest=opened["digest"])["code"] == "not-writable"
    assert ask("new", title="pasted", language="en", text=opened["text"]) == {"promptprep": 1, "name": "pasted.en.md"}


@pytest.mark.parametrize(
    ("values", "code"),
    [
        ({"title": "../up", "language": "en"}, "wrong-name"),
        ({"title": "", "language": "en"}, "wrong-name"),
        ({"title": "dome", "language": "en"}, "name-taken"),
        ({"title": "moon", "language": "qqq"}, "unknown-language"),
        ({"title": 3, "language": "en"}, "bad-question"),
    ],
)
def test_a_new_script_needs_a_free_name_and_a_language(ask: Ask, values: dict[str, Any], code: str) -> None:
    assert ask("new", 422, **values)["code"] == code


def test_a_new_script_can_be_looked_at_once_it_has_copy(ask: Ask) -> None:
    name = ask("new", title="Moon night", language="sw")["name"]
    assert name == "Moon-night.sw.md"
    text = ask("open", name=name)["text"] + "Habari za jioni, na karibuni.\n"
    assert ask("look", name=name, text=text)["language"] == "sw"


def test_prepare_writes_and_serves_the_files(ask: Ask, client: TestClient, folder: Path) -> None:
    made = ask("prepare", names=["dome.en.md"])
    assert {"dome.en.screen.html", "dome.en.paper.pdf", "dome.en.crew.pdf", "report.html"} <= set(made["files"])
    assert made["first"]
    assert client.get("/out/dome.en.paper.pdf").content == (folder / "out" / "dome.en.paper.pdf").read_bytes()


@pytest.mark.parametrize(
    "name",
    ["studio.toml", "..%2Fstudio.toml", ".promptprep.json", "nothing.pdf", "x" * 5000],
    ids=lambda name: name[:20],
)
def test_only_prepared_files_are_served(ask: Ask, client: TestClient, name: str) -> None:
    ask("prepare", names=["dome.en.md"])
    assert client.get(f"/out/{name}").status_code == 404


@pytest.mark.parametrize("name", ["lexicon.toml", "../secret.md", "/etc/passwd", "none.en.md"])
def test_only_the_folders_scripts_can_be_named(ask: Ask, name: str) -> None:
    assert ask("open", 422, name=name)["code"] == "no-such-script"


def test_half_a_surrogate_pair_is_no_crash(ask: Ask, client: TestClient, folder: Path) -> None:
    values = {
        "name": "dome.en.md",
        "text": "Good evening \ud83d.\n",
        "digest": ask("open", name="dome.en.md")["digest"],
    }
    for question in ("look", "save"):
        body = json.dumps(values)  # the pair's half as an escape, as browsers send it
        assert client.post(f"/ask/{question}", content=body, headers={TOKEN: SECRET}).status_code == 200
    assert (folder / "dome.en.md").read_text("utf-8") == "Good evening \ufffd.\n"


@pytest.mark.parametrize("names", [5, [None], {"a": 1}, "sky.en.md"])
def test_what_is_no_list_of_names(ask: Ask, names: object) -> None:
    assert ask("prepare", 422, names=names)["code"] == "bad-question"


def test_other_pages_may_not_ask(client: TestClient) -> None:
    assert client.post("/ask/list", json={}).status_code == 403
    assert client.post("/ask/list", json={}, headers={TOKEN: "guess"}).status_code == 403
    assert client.get("/", headers={"host": "elsewhere.example"}).status_code == 400
    assert client.post("/ask/list", json={}, headers={TOKEN: SECRET, "host": "elsewhere.example"}).status_code == 400


@pytest.mark.parametrize("body", [b"", b"[1]", b"{", b"\xff", b"[" * 100_000], ids=lambda body: repr(body[:4]))
def test_a_question_that_is_no_object(client: TestClient, body: bytes) -> None:
    assert client.post("/ask/list", content=body, headers={TOKEN: SECRET}).status_code == 400


def test_a_question_that_nobody_answers(client: TestClient) -> None:
    assert client.post("/ask/shutdown", json={}, headers={TOKEN: SECRET}).status_code == 403


def test_a_broken_studio_file_is_said(ask: Ask, folder: Path) -> None:
    (folder / "studio.toml").write_text("[rigs\n", "utf-8")
    listed = ask("list")
    assert listed["error_in_studio"]["line"] == 1
    assert listed["studio"]["name"] == "studio.toml"


def test_the_studio_is_judged_as_it_is_written(ask: Ask, folder: Path) -> None:
    text = ask("open", name="studio.toml")["text"]
    rigs = {rig["id"]: rig for rig in ask("look", name="studio.toml", text=text)["rigs"]}
    sights = {sight.rig.id: sight for _, sight in faces.sightlines(folder)}
    assert set(rigs) == set(sights)
    for name, rig in rigs.items():
        assert {v["level"] for v in rig["verdicts"]} == {v.level for v in sights[name].verdicts}
        assert [drawing[:4] for drawing in rig["drawings"]] == ["<svg"] * 3
        assert rig["cautions"]


def test_a_fault_in_the_studio_names_its_line(ask: Ask) -> None:
    text = (
        '[rigs.hall]\ndiagonal = "24 in"\npixels = "1920x1080"\nlies = "below"\ntop = "camera"\neye_to_glass = "-2 m"\n'
    )
    assert ask("look", 422, name="studio.toml", text=text)["line"] == 6


def test_a_studio_file_is_made_once(ask: Ask, folder: Path) -> None:
    assert ask("new-studio", 422)["code"] == "name-taken"
    (folder / "studio.toml").unlink()
    assert ask("list")["studio"] is None
    assert ask("new-studio")["name"] == "studio.toml"
    assert ask("look", name="studio.toml", text=ask("open", name="studio.toml")["text"])["rigs"]


def test_an_empty_folder_has_an_empty_list(tmp_path: Path) -> None:
    client = TestClient(desk_app(tmp_path, tmp_path / "out", None, SECRET), base_url="http://localhost")
    assert client.post("/ask/list", json={}, headers={TOKEN: SECRET}).json()["scripts"] == []


def test_the_page_and_its_parts(client: TestClient) -> None:
    page = client.get("/")
    assert SECRET in page.text
    assert "default-src 'self'" in page.headers["content-security-policy"]
    for part in ("desk.css", "desk.js", "editor.js", "panels.js", "ask.js"):
        assert client.get(f"/desk/{part}").status_code == 200
    assert client.get("/desk/page.html").status_code == 404
    assert client.get("/font/latin").content[:4] == b"\x00\x01\x00\x00"
    assert client.get("/font/other").status_code == 404
