"""Whatever is wrong with the input: one error with its place and a hint, exit status 2, and nothing half-written."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import pytest

from promptprep.__main__ import main

GOOD = '+++\ntitle = "Sky"\nlanguage = "en"\nslot = "0:30"\n+++\n\nGood evening. [pause 2]\n'


def run(
    args: Sequence[str], capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> tuple[int, str, str]:
    """(exit status, standard output, standard error) of one call in this process."""
    monkeypatch.setattr(sys, "argv", ["promptprep", *args])
    with pytest.raises(SystemExit) as left:
        main()
    captured = capsys.readouterr()
    return int(left.value.code or 0), captured.out, captured.err


BAD = {
    "empty": b"",
    "only front matter": b'+++\ntitle = "x"\n+++\n',
    "binary": bytes(range(256)),
    "utf-16": "Guten Abend".encode("utf-16"),
    "windows-1252": "schöner Abend".encode("cp1252"),
    "half-written": "Schöner Abend, gute Nächte".encode()[:-5],
    "front matter open": b"+++\ntitle = 'x'\n",
    "front matter broken": b"+++\ntitle = x\n+++\nHello.\n",
    "unknown key": b"+++\ntitel = 'x'\n+++\nHello.\n",
    "slot": b"+++\nslot = 'soon'\n+++\nHello.\n",
    "segment slot": b"# A {slot=x}\n\nHello.\n",
    "language": b"+++\nlanguage = 'klingonese'\n+++\nHello.\n",
    "no such language": b"+++\nlanguage = 'qq'\n+++\nHello.\n",
}


@pytest.mark.parametrize("call", [["time", "none.md"], ["check", "--no-such-option"], ["session", "none.toml"]])
def test_who_asked_for_json_gets_json(
    call: list[str], capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    status, printed, error = run([*call, "--json"], capsys, monkeypatch)
    told = json.loads(printed)
    assert status == 2
    assert error.strip()
    assert told["promptprep"] == 1
    assert told["error"] == told["errors"][0]
    assert all(told["error"][name] for name in ("code", "message", "hint"))


@pytest.mark.parametrize("name", BAD)
@pytest.mark.parametrize("command", ["time", "check", "prepare"])
def test_a_bad_file(
    name: str, command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "bad.md"
    file.write_bytes(BAD[name])
    out = tmp_path / "out"
    extra = ["--out", str(out)] if command == "prepare" else []
    status, printed, error = run([command, str(file), *extra], capsys, monkeypatch)
    assert status == 2
    assert not printed
    assert "bad.md" in error
    assert "hint:" in error
    assert not out.exists()


def test_two_bad_files_are_both_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "one.md").write_bytes(b"")
    (tmp_path / "two.md").write_bytes(b"\xff\xfe")
    (tmp_path / "good.md").write_text(GOOD, "utf-8")
    status, _, error = run(["time", str(tmp_path)], capsys, monkeypatch)
    assert status == 2
    assert "one.md" in error
    assert "two.md" in error


@pytest.mark.parametrize(
    ("args", "says"),
    [
        (["time", "none.md"], "no such file"),
        (["time", "."], "no script"),
        (["explain", "breathless-sentense"], "did you mean 'breathless-sentence'"),
        (["sightline", "."], "no studio file"),
        (["time", "good.md", "--studio", "none.toml"], "no such file"),
    ],
)
def test_a_bad_call(
    args: list[str], says: str, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = tmp_path / "empty"
    folder.mkdir()
    (tmp_path / "good.md").write_text(GOOD, "utf-8")
    monkeypatch.chdir(folder)
    args = [str(tmp_path / a) if a == "good.md" else a for a in args]
    status, _, error = run(args, capsys, monkeypatch)
    assert status == 2
    assert says in error


@pytest.mark.parametrize("kind", ["reader", "rig"])
def test_a_reader_or_rig_that_the_studio_lacks(
    kind: str, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    studio = """[rigs.hall]
diagonal = "24 in"
pixels = "1920x1080"
lies = "direct"
eye_to_screen = "2 m"
[readers.ines]
name = "Ines"
"""
    (tmp_path / "studio.toml").write_text(studio, "utf-8")
    (tmp_path / "sky.md").write_text(f'+++\ntitle = "x"\n{kind} = "nobody"\n+++\nHello.\n', "utf-8")
    status, _, error = run(["time", str(tmp_path)], capsys, monkeypatch)
    assert status == 2
    assert f"no {kind} 'nobody'" in error
    assert "sky.md:3:1" in error
    status, printed, _ = run(["check", str(tmp_path)], capsys, monkeypatch)
    assert status == 1  # `check` lists it among its findings instead
    assert "unknown-name" in printed


def test_an_output_folder_that_is_a_file(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "good.md").write_text(GOOD, "utf-8")
    (tmp_path / "out").write_text("mine", "utf-8")
    status, _, error = run(["prepare", str(tmp_path / "good.md"), "--out", str(tmp_path / "out")], capsys, monkeypatch)
    assert status == 2
    assert "cannot be written" in error
    assert (tmp_path / "out").read_text("utf-8") == "mine"


def test_no_traceback_from_the_shell(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "promptprep", "time", str(tmp_path / "none.md")],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 2
    assert "Traceback" not in done.stderr


def test_two_scripts_of_one_name_are_not_written_over_each_other(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "sky.en.md").write_text(GOOD, "utf-8")
    (tmp_path / "Sky.en.txt").write_text("Good night.", "utf-8")
    status, _, error = run(["prepare", str(tmp_path), "--out", str(tmp_path / "out")], capsys, monkeypatch)
    assert status == 2
    assert "same-name" in error
    assert "sky.en.md" in error
    assert "Sky.en.txt" in error
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("front", "hint"),
    [
        ("slot = “4:00”", "straight quotes"),
        ("date = 2026-13-45", "date = 2026-12-01"),
        ("date = 1 December", "date = 2026-12-01"),
        ('slot = "2.30"', "minutes and seconds"),
        ("slot = 2.5", "minutes and seconds"),
    ],
)
def test_a_common_slip_in_the_front_matter_is_told_what_to_write(
    front: str, hint: str, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "sky.en.md"
    file.write_text(f"+++\n{front}\n+++\n\nGood evening.\n", "utf-8")
    status, _, error = run(["time", str(file)], capsys, monkeypatch)
    assert status == 2
    assert f"{file}:2:" in error
    assert hint in error


@pytest.mark.parametrize("written", ['24"', '"24""', "'24''", "“24 in”"])
def test_inches_that_do_not_parse_are_told_how(
    written: str, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "studio.toml").write_text(f"[rigs.a]\ndiagonal = {written}  # of the screen\n", "utf-8")
    status, _, error = run(["sightline", str(tmp_path)], capsys, monkeypatch)
    assert status == 2
    assert "studio.toml:2:" in error
    assert '"24 in"' in error or "straight quotes" in error


def test_a_reader_whom_the_studio_lacks_is_told_where_to_put_them(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "studio.toml").write_text("[readers.me]\nname = 'My name'\n", "utf-8")
    (tmp_path / "sky.en.md").write_text('+++\nreader = "Dr Osei"\n+++\n\nGood evening.\n', "utf-8")
    status, _, error = run(["time", str(tmp_path)], capsys, monkeypatch)
    assert status == 2
    assert 'the studio has: me; or add [readers."Dr Osei"] to studio.toml' in error
