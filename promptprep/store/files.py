"""Reads text files with care, and writes outputs whole or not at all."""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path

from promptprep.errors import OutputFault, UnreadableInput
from promptprep.spans import LineIndex

MAX_BYTES = 4_000_000  # about 40 hours of copy; what is larger is no script

MANIFEST = ".promptprep.json"

_BOMS = {b"\xff\xfe": "UTF-16", b"\xfe\xff": "UTF-16", b"\x00\x00\xfe\xff": "UTF-32"}


def folder_of(path: Path) -> Path:
    """A folder itself, or the one that a file is in."""
    return path if path.is_dir() else path.parent


def read_bytes(path: Path) -> bytes:
    """The bytes of a file of sensible size. Raises `UnreadableInput`."""
    try:
        size = path.stat().st_size
        if path.is_dir():
            raise UnreadableInput("not-a-file", "this is a folder, not a file", "name a script in it", str(path))
        if size > MAX_BYTES:
            hint = "split it, or check that it is the right file"
            raise UnreadableInput(
                "file-too-large", f"the file has {size / 1e6:.0f} MB, too much for a script", hint, str(path)
            )
        return path.read_bytes()
    except (FileNotFoundError, ValueError):  # no name holds a zero byte
        raise _no_such_file(path) from None
    except OSError as fault:
        hint = "check that you may read it"
        raise UnreadableInput(
            "unreadable-file", f"the file cannot be read: {fault.strerror}", hint, str(path)
        ) from None


def _no_such_file(path: Path) -> UnreadableInput:
    return UnreadableInput("no-such-file", "there is no such file", "check the name and the folder", str(path))


def read_text(path: Path) -> str:
    """A UTF-8 text file, its line ends kept. Raises `UnreadableInput` with line and column of the first bad byte."""
    data = read_bytes(path)
    save = "open it in an editor and save it as UTF-8"
    for bom, name in _BOMS.items():
        if data.startswith(bom):
            raise UnreadableInput("wrong-encoding", f"the file is {name}, not UTF-8", save, str(path), 1, 1)
    if b"\0" in data:
        line, column = LineIndex(data.decode("latin-1")).place(data.index(b"\0"))
        raise UnreadableInput("binary-file", "this is no text: it holds a zero byte", save, str(path), line, column)
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as fault:
        raise _bad_byte(path, data, fault) from None


def _bad_byte(path: Path, data: bytes, fault: UnicodeDecodeError) -> UnreadableInput:
    before = data[: fault.start].decode("utf-8")
    line, column = LineIndex(before).place(len(before))
    if fault.reason == "unexpected end of data":
        hint = "the file was cut off while it was written: fetch it again"
        return UnreadableInput("cut-off", "the file ends inside a character", hint, str(path), line, column)
    hint = "it looks like an older Windows or Mac encoding: open it in an editor and save it as UTF-8"
    message = f"byte 0x{data[fault.start]:02x} is not UTF-8"
    return UnreadableInput("wrong-encoding", message, hint, str(path), line, column)


def write_outputs(folder: Path, files: Mapping[str, bytes]) -> list[Path]:
    """Writes all files or none; returns their paths in the order given, safe copies last.

    A file of that name which we did not write, or which was changed since, is kept beside it as
    `NAME.kept-1`, `NAME.kept-2` ... Raises `OutputFault`; then nothing in the folder has changed.
    """
    hint = "check that the folder exists and may be written, or name another with --out"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(dir=folder, prefix=".promptprep-") as staging:
            for name, data in files.items():
                (Path(staging) / name).write_bytes(data)
            kept = _keep_others(folder, files)
            for name in files:
                os.replace(Path(staging) / name, folder / name)
        _remember(folder, files)
    except OSError as fault:
        reason = fault.strerror or str(fault)
        raise OutputFault("cannot-write", f"the output cannot be written: {reason}", hint, str(folder)) from None
    return [folder / name for name in files] + kept


def _keep_others(folder: Path, files: Mapping[str, bytes]) -> list[Path]:
    ours = _manifest(folder)
    kept = []
    for name, data in files.items():
        target = folder / name
        if not target.exists():
            continue
        digest = _digest(target.read_bytes())
        if digest not in (ours.get(name), _digest(data)):
            copy = _free_name(target)
            shutil.copy2(target, copy)
            kept.append(copy)
    return kept


def _free_name(target: Path) -> Path:
    number = 1
    while (copy := target.with_name(f"{target.name}.kept-{number}")).exists():
        number += 1
    return copy


def _manifest(folder: Path) -> dict[str, str]:
    try:
        known = json.loads((folder / MANIFEST).read_text("utf-8"))
        return {str(k): str(v) for k, v in known.items()}
    except (OSError, ValueError, AttributeError, RecursionError):
        return {}


def _remember(folder: Path, files: Mapping[str, bytes]) -> None:
    known = _manifest(folder) | {name: _digest(data) for name, data in files.items()}
    text = json.dumps(dict(sorted(known.items())), indent=0, ensure_ascii=False)
    staged = folder / (MANIFEST + ".new")
    staged.write_text(text + "\n", "utf-8")
    os.replace(staged, folder / MANIFEST)


def replace_text(path: Path, text: str, *, keep: bool = True) -> Path | None:
    """Rewrites a user's own file, its old state kept beside it as `NAME.kept-N`. Returns the copy's path."""
    try:
        copy = None
        if keep and path.exists():
            copy = _free_name(path)
            shutil.copy2(path, copy)
        staged = path.with_name(path.name + ".new")
        staged.write_bytes(text.encode("utf-8"))
        os.replace(staged, path)
        return copy
    except OSError as fault:
        hint = "check that the file may be written"
        raise OutputFault("cannot-write", f"the file cannot be written: {fault.strerror}", hint, str(path)) from None


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
