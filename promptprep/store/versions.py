"""Finds the language versions of a script: files of one stem beside each other."""

from __future__ import annotations

import json
import os
from collections.abc import Mapping, Sequence
from pathlib import Path

from promptprep.errors import BadCall, OutputFault, UnreadableInput
from promptprep.parsing.toml_text import toml_values
from promptprep.store.files import read_text, replace_text
from promptprep.store.scripts import find_scripts, name_and_language

SOURCE = "en"
_HEAD = (
    "# What the marks in this show's versions stand for. Written by promptprep versions --mark; leave it as it is.\n"
)


def version_files(paths: Sequence[Path]) -> list[Path]:
    """The files of one show, the source first.

    One file brings its versions from its folder; several files are taken as they stand. In a folder the source is
    the English one, else the first. Raises `BadCall` where a folder holds several shows, or nothing to compare.
    """
    if not paths:
        raise BadCall("no-input", "no script is named", "name the source, such as sky.en.md")
    if len(paths) == 1 and not paths[0].is_dir():
        return _beside(paths[0])
    files = find_scripts(paths)
    if len(paths) == 1:
        files = _one_show(files, paths[0])
    return files


def _beside(source: Path) -> list[Path]:
    name, language = name_and_language(source)
    if not source.exists() or language is None:
        return [source]
    others = [p for p in find_scripts([source.parent]) if p != source and _is_version(p, name)]
    return [source, *others]


def _is_version(path: Path, name: str) -> bool:
    stem, language = name_and_language(path)
    return stem == name and language is not None


def _one_show(files: Sequence[Path], folder: Path) -> list[Path]:
    shows: dict[str, list[Path]] = {}
    for file in files:
        shows.setdefault(name_and_language(file)[0], []).append(file)
    several = {name: found for name, found in shows.items() if len(found) > 1}
    if len(several) != 1:
        hint = "name one script of it, such as " + files[0].name
        raise BadCall("which-show", f"this folder holds {len(shows)} shows", hint, str(folder))
    (found,) = several.values()
    first = next((f for f in found if name_and_language(f)[1] == SOURCE), found[0])
    return [first, *[f for f in found if f != first]]


def marked_file(source: Path) -> Path:
    """Where the sentences that the marks of a show's versions stand for are kept: beside the source."""
    return source.with_name(f"{name_and_language(source)[0]}.made-from.toml")


def marked_sentences(source: Path) -> dict[str, str]:
    """Digest -> sentence of the states that versions were marked with; empty where the file is gone or spoiled."""
    try:
        text = read_text(marked_file(source))
        table = toml_values(text, "marks-broken", "the file of marks", "mark the versions anew with --mark")
    except UnreadableInput:
        return {}
    return {digest: text for digest, text in table.items() if isinstance(text, str)}


def keep_marked(source: Path, sentences: Mapping[str, str]) -> Path:
    """Writes the sentences in the order given; a file of that name that is not ours is kept beside it."""
    file = marked_file(source)
    text = _HEAD + "".join(f'"{digest}" = {_quoted(text)}\n' for digest, text in sentences.items())
    if file.exists() and not file.read_bytes().startswith(_HEAD.encode("utf-8")):
        replace_text(file, text)
        return file
    staged = file.with_name(file.name + ".new")
    try:
        staged.write_bytes(text.encode("utf-8"))
        os.replace(staged, file)
    except OSError as fault:
        hint = "check that the folder may be written"
        raise OutputFault("cannot-write", f"the file cannot be written: {fault.strerror}", hint, str(file)) from None
    return file


def _quoted(text: str) -> str:
    """A basic string of TOML: JSON's escapes, and the one character more that TOML does not take."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
