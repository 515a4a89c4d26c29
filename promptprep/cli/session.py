"""`promptprep session`: a running order with start and back times, the chance of ending in time, and its cues."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from promptprep.cli.common import AsJson, StudioFile, print_json, table
from promptprep.model.session import Session

NAME = "session"
EXAMPLE = "promptprep session session.toml --out sheets"


def command(
    path: Annotated[Path, typer.Argument(help="A session file, or the folder it is in.")] = Path("."),
    at: Annotated[str | None, typer.Option(help='Time the rest again from this clock time: "14:07:30".')] = None,
    first: Annotated[
        str | None, typer.Option("--from", help="The item that starts then.", show_default="the one due")
    ] = None,
    rate: Annotated[str | None, typer.Option(help='Timecode rate: "25", "29.97-drop" ...')] = None,
    out: Annotated[Path | None, typer.Option(help="Write crew sheets, lists and captions to this folder.")] = None,
    take: Annotated[
        list[Path] | None, typer.Option(help="A take file that gives captions their real times.", show_default=False)
    ] = None,
    keep_numbers: Annotated[
        bool, typer.Option("--keep-numbers", help="Write cue numbers into the scripts, as remarks.")
    ] = False,
    studio: StudioFile = None,
    as_json: AsJson = False,
) -> None:
    """Plan a session: when each item starts, must start, and ends; what to do when it is too long; all cues."""
    from promptprep.faces import sessions

    if keep_numbers:
        for file in sessions.keep_cue_numbers(path, studio):
            typer.echo(f"numbers written to {file}; the old one is kept beside it", err=True)
    session = sessions.plan_session(path, studio, at=at, first=first, rate=rate)
    written = sessions.write_session(session, path, out, studio, take or ()) if out else []
    if as_json:
        from promptprep.rendering.session_json import session_object

        print_json(**session_object(session))
    else:
        _show(session)
    for file in written:
        typer.echo(f"wrote {file}", err=True)
    if any(f.level == "fix" for f in session.findings):
        raise typer.Exit(1)


def _show(session: Session) -> None:
    from promptprep.rendering.session_rows import HEAD, findings_lines, item_rows, repair_lines, summary_lines

    for line in summary_lines(session):
        typer.echo(line)
    typer.echo(table(HEAD, item_rows(session)))
    for line in (*repair_lines(session), *findings_lines(session)):
        typer.echo(line)
