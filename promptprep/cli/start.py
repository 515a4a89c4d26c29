"""`promptprep start`: a folder to begin with."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from promptprep.cli.common import called

NAME = "start"
EXAMPLE = "promptprep start my-studio"


def command(
    folder: Annotated[Path, typer.Argument(help="The new folder.")] = Path("my-studio"),
) -> None:
    """Make a folder with a studio file to fill in and a first script; what is there already stays."""
    from promptprep.store.starter import start

    made = start(folder)
    for path in made:
        typer.echo(f"wrote {path}")
    typer.echo(f"On a page: {called()} desk {folder}")
    typer.echo("Or with any editor:")
    typer.echo(f"  1. Put your distances into {folder / 'studio.toml'} (a tape measure will do).")
    typer.echo(f"  2. Write or paste your copy into {folder / 'first.en.md'}.")
    typer.echo(f"  3. {called()} prepare {folder} --out {folder / 'out'}")
