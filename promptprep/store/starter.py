"""A new studio's first files."""

from __future__ import annotations

from pathlib import Path

from promptprep.errors import OutputFault
from promptprep.store.templates import shipped

FILES = ("studio.toml", "first.en.md")


def start(folder: Path) -> list[Path]:
    """Writes the starter files that are not there yet. Raises `OutputFault`."""
    made = []
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name in FILES:
            target = folder / name
            if not target.exists():
                target.write_bytes((shipped("templates") / "start" / name).read_bytes())
                made.append(target)
    except OSError as fault:
        hint = "name a folder that may be written"
        raise OutputFault("cannot-write", f"the folder cannot be made: {fault.strerror}", hint, str(folder)) from None
    return made
