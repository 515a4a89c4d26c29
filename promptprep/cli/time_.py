"""`promptprep time`: how long the copy runs."""

from __future__ import annotations

import typer

from promptprep.cli.common import AsJson, Paths, StudioFile, heading, print_json, show_losses, table
from promptprep.model.script import Script
from promptprep.model.timing import ScriptTiming
from promptprep.units import clock_text

NAME = "time"
EXAMPLE = "promptprep time sky.en.md"


def command(paths: Paths, studio: StudioFile = None, as_json: AsJson = False) -> None:
    """Predict the running time of each script and segment, with its 80 % range, against its slot."""
    from promptprep import faces
    from promptprep.rendering.time_json import script_object

    timed = faces.time_scripts(paths, studio)
    if as_json:
        print_json(scripts=[script_object(script, timing) for script, timing in timed])
    else:
        for script, timing in timed:
            _show(script, timing)
    if any(timing.timing.verdict(timing.slot_s) == "over" for _, timing in timed):
        raise typer.Exit(1)


def _show(script: Script, timing: ScriptTiming) -> None:
    from promptprep.rendering.verdicts import slot_verdict

    whole = timing.timing
    rows = [
        (
            s.title or s.id,
            clock_text(s.start_s),
            clock_text(s.timing.mean_s),
            f"{clock_text(s.timing.low_s)} to {clock_text(s.timing.high_s)}",
            clock_text(s.timing.fixed_s) if s.timing.fixed_s else "",
            clock_text(s.slot_s) if s.slot_s is not None else "",
            str(s.timing.words),
        )
        for s in timing.segments
    ]
    typer.echo(heading(script))
    show_losses(script)
    typer.echo(table(("segment", ">starts", ">runs", ">80 % range", ">fixed", ">slot", ">words"), rows))
    typer.echo(
        f"whole: {clock_text(whole.mean_s)}, in 8 of 10 takes {clock_text(whole.low_s)} to {clock_text(whole.high_s)}"
    )
    if timing.slot_s is not None:
        typer.echo(slot_verdict(timing)[1])
    typer.echo(f"pace: {timing.pace.source}")
    typer.echo("")
