"""Writes the screen copy as a film, for playing as a clip: slow, so it is asked for by itself."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable
from pathlib import Path

from promptprep.errors import OutputFault
from promptprep.faces.scripts import template_folders
from promptprep.faces.tools import tools
from promptprep.model.prepared import Prepared
from promptprep.pipeline.outputs import words_on_screen
from promptprep.rendering.environment import environment
from promptprep.rendering.movie import movie


def write_movies(
    prepared: Prepared, out: Path, rate: str, suffix: str, progress: Callable[[str, int, int], None]
) -> list[Path]:
    """One `NAME.LANG.screen.mp4` (or .webm) a script, each put in its place when it is whole.

    `progress` is told (file name, frames done, frames in all). Raises `BadCall` for a rate that is not offered or
    where the extra "movie" is not installed, `OutputFault` where the folder cannot be written.
    """
    env = environment(template_folders(prepared.studio))
    made = []
    for one in prepared.scripts:
        target = out / f"{one.script.name}.{one.script.language}.screen{suffix}"
        try:
            with tempfile.TemporaryDirectory(dir=out, prefix=".promptprep-") as staging:
                staged = Path(staging) / target.name
                words = words_on_screen(one, prepared.studio, tools())
                told = _named(progress, target.name)
                movie(one, staged, env, tools().fonts.subsets, words=words, rate=rate, progress=told)
                os.replace(staged, target)
        except OSError as fault:
            hint = "check the disk's space and that the folder may be written"
            raise OutputFault("cannot-write", f"the film cannot be written: {fault}", hint, str(target)) from None
        made.append(target)
    return made


def _named(progress: Callable[[str, int, int], None], name: str) -> Callable[[int, int], None]:
    return lambda done, total: progress(name, done, total)
