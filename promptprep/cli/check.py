"""`promptprep check`: what will trip the reader, and what to do about it."""

from __future__ import annotations

from typing import Annotated

import typer

from promptprep.cli.common import AsJson, Paths, StudioFile, print_json, show_losses
from promptprep.model.finding import LEVELS, Finding
from promptprep.model.script import Script
from promptprep.spans import LineIndex

NAME = "check"
EXAMPLE = "promptprep check sky.en.md --suggest"


def command(
    paths: Paths,
    studio: StudioFile = None,
    suggest: Annotated[bool, typer.Option("--suggest", help="Print the safe rewordings as a patch.")] = False,
    as_json: AsJson = False,
) -> None:
    """List the places that will trip the reader, with what to do about each."""
    from promptprep import faces
    from promptprep.rendering.findings import finding_object

    checked = faces.check_scripts(paths, studio)
    if suggest:
        typer.echo(faces.suggestions(checked), nl=False)
    elif as_json:
        rows = []
        for script, findings in checked:
            index = LineIndex(script.source)
            rows += [finding_object(f, script.source, script.file, index) for f in findings]
        print_json(findings=rows)
    else:
        for script, findings in checked:
            show_losses(script)
            _show(script, findings)
    if any(f.level == "fix" for _, findings in checked for f in findings):
        raise typer.Exit(1)


def _show(script: Script, findings: list[Finding]) -> None:
    from promptprep.rendering.findings import excerpt, why

    index = LineIndex(script.source)
    for f in findings:
        line, column = index.place(f.start)
        typer.echo(f"{script.file}:{line}:{column}: {f.level}: {f.message} [{f.name}]")
        typer.echo(f"    {excerpt(script.source, f.start, f.end)}")
        typer.echo(f"    why: {why(f.name)}")
        if f.hint:
            typer.echo(f"    do: {f.hint}")
        if f.instead is not None:
            typer.echo(f"    instead: {f.instead}")
    counts = ", ".join(f"{sum(f.level == level for f in findings)} {level}" for level in LEVELS)
    typer.echo(f"{script.file}: {counts}\n")
