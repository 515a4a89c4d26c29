"""What the commands share: their options, tables of text, and JSON in our one form."""

from __future__ import annotations

import json
import shutil
import sys
import unicodedata
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Annotated, Any

import typer

from promptprep.model.script import Script
from promptprep.rendering.json_form import FORMAT

Paths = Annotated[
    list[Path], typer.Argument(help="Scripts, or folders of scripts.", metavar="PATHS", show_default=False)
]
StudioFile = Annotated[
    Path | None,
    typer.Option("--studio", help="The studio file; else studio.toml beside the scripts.", show_default=False),
]
AsJson = Annotated[bool, typer.Option("--json", help="Print one JSON object.")]


def print_json(**values: Any) -> None:
    """One object with the version of its form first."""
    typer.echo(json.dumps({"promptprep": FORMAT, **values}, ensure_ascii=False, indent=1))


def called() -> str:
    """The command as it was called here, so that what we print can be typed again."""
    program = Path(sys.argv[0])
    if program.stem != "promptprep" or shutil.which("promptprep") == str(program):
        return "promptprep"
    here = Path.cwd()
    return str(program.relative_to(here) if program.is_relative_to(here) else program)


def table(head: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    """Columns side by side; a column whose heads begin with ">" is set to the right."""
    cells = [[h.lstrip(">") for h in head], *[list(row) for row in rows]]
    widths = [max(columns_wide(row[i]) for row in cells) for i in range(len(head))]
    lines = []
    for row in cells:
        parts = [_padded(text, width, h.startswith(">")) for text, width, h in zip(row, widths, head, strict=True)]
        lines.append("  ".join(parts).rstrip())
    lines.insert(1, "  ".join("-" * width for width in widths))
    return "\n".join(lines)


def columns_wide(text: str) -> int:
    """Columns of a terminal that a text takes."""
    wide = sum(unicodedata.east_asian_width(c) in "WF" for c in text)
    return len(text) + wide - sum(bool(unicodedata.combining(c)) for c in text)


def _padded(text: str, width: int, right: bool) -> str:
    gap = " " * (width - columns_wide(text))
    return gap + text if right else text + gap


def rounded(values: Mapping[str, Any], digits: int = 4) -> dict[str, Any]:
    """Figures short enough to read, in a form that stays the same from run to run."""
    return {k: round(v, digits) if isinstance(v, float) else v for k, v in values.items()}


def heading(script: Script) -> str:
    """A script's file, title and language; a language that was only guessed says so."""
    guessed = ", guessed from the copy" if script.language_origin == "detected" else ""
    return f"{script.file or script.name}: {script.title} ({script.language}{guessed})"


def show_losses(script: Script) -> None:
    """What a foreign format had that a script cannot carry."""
    for loss in script.losses:
        typer.echo(f"not carried over: {loss}")
