"""Where the wording of a cue is cut: at the first comma, as each script writes it."""

from __future__ import annotations

import re

COMMA = re.compile("[,،、，]")


def after_comma(text: str) -> str:
    """What stands behind the first comma ("name strap, Dr ..."); nothing where none is."""
    parts = COMMA.split(text, maxsplit=1)
    return parts[1].strip() if len(parts) > 1 else ""
