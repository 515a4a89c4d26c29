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
        typer.echo(_verdict(timing))
    typer.echo(f"pace: {timing.pace.source}")
    typer.echo("")


def _verdict(timing: ScriptTiming) -> str:
    slot, whole = timing.slot_s or 0.0, timing.timing
    over, verdict = whole.mean_s - slot, whole.verdict(timing.slot_s)
    if verdict == "over":
        return f"does not fit its slot of {clock_text(slot)}: {clock_text(over)} over"
    if verdict == "tight":
        usual = f"{clock_text(abs(over))} {'over' if over > 0 else 'to spare'} as planned"
        other = f"a slow take {clock_text(whole.high_s - slot)} over"
        if over > 0:
            other = f"a fast take {clock_text(slot - whole.low_s)} to spare"
        return f"tight in its slot of {clock_text(slot)}: {usual}, {other}"
    return f"fits its slot of {clock_text(slot)}: {clock_text(-over)} to spare"
