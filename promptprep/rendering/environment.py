"""The one Jinja environment of all pages: autoescape on, a missing name is an error."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import jinja2


def environment(folders: Sequence[Path]) -> jinja2.Environment:
    """An environment over template `folders`; a file in an earlier folder wins over a later one's."""
    return jinja2.Environment(
        loader=jinja2.FileSystemLoader([str(folder) for folder in folders]),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
