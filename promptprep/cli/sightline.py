"""`promptprep sightline`: what the reader's eye sees on the rig, and the nearest better setting."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from promptprep.cli.common import AsJson, StudioFile, print_json, table
from promptprep.model.sightline import Sightline, Verdict, quantity_name

NAME = "sightline"
EXAMPLE = 'promptprep sightline studio.toml --what-if "eye_to_glass=1.9m"'


def command(
    path: Annotated[Path, typer.Argument(help="A studio file, or the folder it is in.")] = Path("."),
    studio: StudioFile = None,
    rig: Annotated[str | None, typer.Option(help="Only this rig.", show_default="all")] = None,
    reader: Annotated[str | None, typer.Option(help="For this reader's sight.", show_default="normal sight")] = None,
    language: Annotated[str, typer.Option(help="For copy in this language.")] = "en",
    what_if: Annotated[
        list[str] | None, typer.Option("--what-if", help='Change a value: "font_px=52"; a range: "font_px=40..90/5".')
    ] = None,
    drawing: Annotated[
        Path | None, typer.Option(help="Write drawings (SVG) and the sheet of each rig (PDF) to this folder.")
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Compare type, eye travel and light at the real distances with their limits, and advise."""
    from promptprep import faces

    rows = faces.sightlines(path, studio, rig=rig, reader=reader, language=language, changes=what_if or [])
    sights = [sight for _, sight in rows]
    if as_json:
        from promptprep.rendering.sightline_json import sightline_object

        print_json(rigs=[{**sightline_object(sight), **({"setting": s} if s else {})} for s, sight in rows])
    elif any(setting for setting, _ in rows):
        _show_sweep(rows)
    else:
        for sight in sights:
            _show(sight)
    if drawing:
        described = faces.studio_for([path], studio or (path if path.suffix == ".toml" else None))
        for file in faces.write_drawings(sights, drawing, described):
            typer.echo(f"wrote {file}", err=True)
    if any(v.level == "fix" for sight in sights for v in sight.verdicts):
        raise typer.Exit(1)


def _show(sight: Sightline) -> None:
    from promptprep.rendering.sightline_rows import figure_rows
    from promptprep.sightline.cautions import cautions

    rig, column = sight.rig, sight.column
    typer.echo(f"{rig.id}: {rig.title}".rstrip(": "))
    typer.echo(f"type {column.font_px:.0f} px in a column of {column.width_px:.0f} px; flip {rig.flip}")
    typer.echo(table(("figure", "value"), figure_rows(sight)))
    typer.echo("")
    rows = [
        (quantity_name(v.quantity), f"{v.value:.4g} {v.unit}", _bounds(v), v.level, v.source) for v in sight.verdicts
    ]
    typer.echo(table(("quantity", ">value", ">limits", "verdict", "source"), rows))
    if sentence := sight.advice.get("sentence"):
        typer.echo(f"advice: {sentence}")
    for text in sight.contradictions:
        typer.echo(f"the sources disagree: {text}")
    for text in cautions(rig):
        typer.echo(f"take care: {text}")
    typer.echo("")


def _bounds(verdict: Verdict) -> str:
    if verdict.low is not None and verdict.high is not None:
        return f"{verdict.low:.4g} to {verdict.high:.4g}"
    if verdict.low is not None:
        return f"{verdict.low:.4g} or more"
    return f"up to {verdict.high:.4g}" if verdict.high is not None else ""


def _show_sweep(rows: list[tuple[dict[str, str], Sightline]]) -> None:
    cells = [
        (
            s.rig.id,
            " ".join(f"{k}={v}" for k, v in setting.items()),
            f"{s.cap_height_arcmin:.1f}",
            f"{max(s.travel_left_deg, s.travel_right_deg):.2f}",
            f"{s.characters_per_line:.1f}",
            str(s.lines_visible),
            f"{s.seconds_visible:.1f}",
            ", ".join(sorted({quantity_name(v.quantity) for v in s.verdicts if v.level == "fix"})) or "none",
        )
        for setting, s in rows
    ]
    head = ("rig", "setting", ">capitals arcmin", ">travel deg", ">characters", ">lines", ">seconds", "to fix")
    typer.echo(table(head, cells))
