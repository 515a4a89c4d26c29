"""`promptprep learn`: a reader's pace, from takes and from times typed by hand."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from promptprep.cli.common import AsJson, print_json

NAME = "learn"
EXAMPLE = "promptprep learn --reader ines take-3.json sky.en.md=3:12"


def command(
    readings: Annotated[
        list[str],
        typer.Argument(help='Take files, and typed times: "sky.en.md=3:12", or "sky.en.md#look=0:58" for a segment.'),
    ],
    reader: Annotated[str | None, typer.Option(help="Whose pace it is.", show_default="as the scripts say")] = None,
    studio: Annotated[
        Path | None, typer.Option(help="The studio file that keeps it.", show_default="the nearest above the readings")
    ] = None,
    dry: Annotated[bool, typer.Option("--dry", help="Only show what would be kept.")] = False,
    as_json: AsJson = False,
) -> None:
    """Learn how fast a reader speaks, and keep it in the studio file; the old file stays beside it."""
    from promptprep import faces

    learned = faces.learn_reader(readings, studio, reader, dry=dry)
    for reading in learned.twice:
        typer.echo(f"{reading}: given before, counted once", err=True)
    if as_json:
        print_json(
            reader=learned.reader,
            kept=None if learned.kept is None else str(learned.kept),
            paces=[
                {"language": p.language, "samples": p.samples, "sampled_s": round(p.sampled_s, 3),
                 "scale": round(p.scale, 4), "common_sd": round(p.common_sd, 4), "fit": dict(p.fit)}
                for p in learned.paces
            ],
        )  # fmt: skip
        return
    for pace in learned.paces:
        slower = (pace.scale - 1) * 100
        says = f"{abs(slower):.0f} % {'slower' if slower > 0 else 'faster'} than the default"
        if round(slower) == 0:
            says = "as fast as the default"
        typer.echo(
            f"{learned.reader}, {pace.language}: {says}, from {pace.samples} readings, {pace.sampled_s:.0f} s in all; "
            f"still unsure by {pace.common_sd:.0%}"
        )
    if dry:
        typer.echo("nothing was written")
    elif learned.kept:
        typer.echo(f"kept in {learned.file}; the old file is {learned.kept}")
