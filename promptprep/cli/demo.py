"""`promptprep demo`: the whole job on the observatory's scripts."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from promptprep.cli.common import called
from promptprep.cli.prepare import show

NAME = "demo"
EXAMPLE = "promptprep demo --out promptprep-demo"


def command(
    out: Annotated[Path, typer.Option(help="The folder to write to.")] = Path("promptprep-demo"),
) -> None:
    """Prepare the demo: an observatory's monthly sky briefing in twelve languages, with real faults to find."""
    from promptprep import faces
    from promptprep.store.templates import shipped

    show(faces.prepare([shipped("scripts_demo")], out))
    typer.echo("The demo's own faults are meant to be found. Your turn:")
    typer.echo(f"  {called()} start my-studio")
