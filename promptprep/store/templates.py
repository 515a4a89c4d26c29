"""Where the templates and the demo lie: in the wheel beside the code, in a checkout beside the package."""

from __future__ import annotations

from pathlib import Path

PACKAGE = Path(__file__).parent.parent


def shipped(name: str) -> Path:
    """The folder `name` ("templates", "scripts_demo") of an installed package or of a checkout."""
    inside = PACKAGE / name
    return inside if inside.is_dir() else PACKAGE.parent / name
