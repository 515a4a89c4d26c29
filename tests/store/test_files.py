"""Reading and writing files: every way to be wrong has a place and a hint, and nothing is lost."""

from __future__ import annotations

from pathlib import Path

import pytest

from promptprep.errors import OutputFault, UnreadableInput
from promptprep.store.files import read_text, replace_text, write_outputs


@pytest.mark.parametrize(
    ("data", "code", "place"),
    [
        ("Guten Abend".encode("utf-16"), "wrong-encoding", (1, 1)),
        ("Zeile eins\nschöne Zeile".encode("cp1252"), "wrong-encoding", (2, 4)),
        (b"text\n\x00\x01\x02", "binary-file", (2, 1)),
        ("eins\nzw\u00f6".encode()[:-1], "cut-off", (2, 3)),
    ],
)
def test_bytes_that_are_no_text(tmp_path: Path, data: bytes, code: str, place: tuple[int, int]) -> None:
    file = tmp_path / "bad.md"
    file.write_bytes(data)
    with pytest.raises(UnreadableInput) as caught:
        read_text(file)
    assert (caught.value.code, caught.value.line, caught.value.column) == (code, *place)
    assert caught.value.hint


def test_a_huge_file_is_refused_unread(tmp_path: Path) -> None:
    file = tmp_path / "huge.md"
    with file.open("wb") as stream:
        stream.truncate(50_000_000)
    with pytest.raises(UnreadableInput, match="50 MB"):
        read_text(file)


def test_line_ends_and_byte_order_mark_are_kept(tmp_path: Path) -> None:
    file = tmp_path / "a.md"
    file.write_bytes("\ufeffone\r\ntwo\r".encode())
    assert read_text(file) == "\ufeffone\r\ntwo\r"


def test_outputs_are_written_and_rewritten(tmp_path: Path) -> None:
    out = tmp_path / "out"
    write_outputs(out, {"a.txt": b"one", "b.txt": b"two"})
    paths = write_outputs(out, {"a.txt": b"three", "b.txt": b"two"})
    assert [p.name for p in paths] == ["a.txt", "b.txt"]
    assert (out / "a.txt").read_bytes() == b"three"


def test_a_file_that_the_user_changed_is_kept(tmp_path: Path) -> None:
    out = tmp_path / "out"
    write_outputs(out, {"a.csv": b"ours"})
    (out / "a.csv").write_bytes(b"with the user's notes")
    paths = write_outputs(out, {"a.csv": b"new"})
    assert paths[-1].name == "a.csv.kept-1"
    assert paths[-1].read_bytes() == b"with the user's notes"
    assert (out / "a.csv").read_bytes() == b"new"


def test_an_output_folder_that_is_a_file(tmp_path: Path) -> None:
    (tmp_path / "out").write_text("mine")
    with pytest.raises(OutputFault):
        write_outputs(tmp_path / "out", {"a": b"x"})
    assert (tmp_path / "out").read_text() == "mine"


def test_nothing_is_written_where_one_file_cannot_be(tmp_path: Path) -> None:
    out = tmp_path / "out"
    out.mkdir()
    with pytest.raises(OutputFault):
        write_outputs(out, {"a.txt": b"x", "no/such/folder.txt": b"y"})
    assert list(out.iterdir()) == []


def test_replacing_a_user_file_keeps_its_old_state(tmp_path: Path) -> None:
    file = tmp_path / "studio.toml"
    file.write_text("old")
    copy = replace_text(file, "new")
    assert copy is not None
    assert (copy.read_text(), file.read_text()) == ("old", "new")
