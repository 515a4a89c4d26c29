"""Keeps a learned pace in `studio.toml`, in a form that a person can read and undo."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from promptprep.model.timing import Pace
from promptprep.store.files import read_text, replace_text
from promptprep.store.paces import pace_toml, toml_key
from promptprep.store.studio import parse_studio


def keep_paces(file: Path, paces: Sequence[Pace], reader: str) -> Path | None:
    """Puts a reader's paces in place of the old ones; everything else in the file stays as it is.

    Returns where the old file is kept. Raises what `parse_studio` raises, before anything is written.
    """
    text = read_text(file)
    for pace in paces:
        text = with_pace(text, pace, reader)
    parse_studio(text, str(file))
    return replace_text(file, text)


def with_pace(text: str, pace: Pace, reader: str) -> str:
    """The studio file's text with this pace's tables at the end and older ones of the same language gone."""
    table = f"readers.{toml_key(reader)}.pace.{toml_key(pace.language)}"
    kept: list[str] = []
    dropping = False
    for line in text.splitlines(keepends=True):
        if line.lstrip().startswith("["):
            name = line.strip().split("]")[0].lstrip("[").strip()
            dropping = name == table or name.startswith(table + ".")
        if not dropping:
            kept.append(line)
    body = "".join(kept).rstrip("\r\n")
    return body + "\n\n" + pace_toml(pace, reader)
