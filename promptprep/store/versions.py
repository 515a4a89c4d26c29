"""Finds the language versions of a script: files of one stem beside each other."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from promptprep.errors import BadCall
from promptprep.store.scripts import find_scripts, name_and_language

SOURCE = "en"


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
