"""`promptprep prepare`: everything for the take, written to one folder."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from promptprep.cli.common import AsJson, Paths, StudioFile, print_json

if TYPE_CHECKING:
    from promptprep.faces import Report

NAME = "prepare"
EXAMPLE = "promptprep prepare scripts/ --out out"


def command(
    paths: Paths,
    out: Annotated[Path, typer.Option(help="The folder to write to.")] = Path("out"),
    studio: StudioFile = None,
    stills: Annotated[bool, typer.Option("--stills", help="Also write a PNG of each screenful.")] = False,
    paper: Annotated[
        list[str] | None,
        typer.Option("--paper", help="Also print: rehearsal, cards, low-ink. May be given again.", show_default=False),
    ] = None,
    movie: Annotated[bool, typer.Option("--movie", help="Also write the screen copy as a film to play.")] = False,
    rate: Annotated[str, typer.Option(help="The film's frames a second: 25, 29.97, 30, 50, 59.94 or 60.")] = "25",
    webm: Annotated[bool, typer.Option("--webm", help="VP9 in WebM instead of H.264 in MP4.")] = False,
    as_json: AsJson = False,
) -> None:
    """Write screen copy, paper copy, crew sheet and captions of each script, and one report."""
    from promptprep import faces

    report = faces.prepare(paths, out, studio, stills=stills, paper=paper or ())
    if movie:
        _films(report, out, rate, ".webm" if webm else ".mp4")
    if as_json:
        print_json(files=[str(p) for p in report.files], fixes=report.fixes)
    else:
        show(report)
    if report.fixes:
        raise typer.Exit(1)


def _films(report: Report, out: Path, rate: str, suffix: str) -> None:
    from promptprep.faces.movies import write_movies

    def progress(name: str, done: int, total: int) -> None:
        if done % 100 == 0 or done == total:
            typer.echo(f"\r{name}: {done / total:4.0%}", nl=done == total, err=True)

    write_movies(report.prepared, out, rate, suffix, progress)


def show(report: Report) -> None:
    """What to look at, in a few lines."""
    from promptprep.rendering.first import first_things

    things = first_things(report.prepared)
    count = len(report.prepared.scripts)
    typer.echo(f"{count} script{'' if count == 1 else 's'} prepared, {len(report.files)} files written.")
    if things:
        typer.echo("What to do first:")
        for text in things:
            typer.echo(f"  - {text}")
    kept = [p for p in report.files if ".kept-" in p.name]
    for copy in kept:
        typer.echo(f"A file that was not ours, or that you had changed, is kept as {copy}")
    page = next((p for p in report.files if p.name == "report.html"), None)
    if page:
        typer.echo(f"Look at {page.resolve()}")
