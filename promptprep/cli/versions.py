"""`promptprep versions`: one show in many languages against one slot, and what differs between them."""

from __future__ import annotations

import textwrap
from pathlib import Path
from typing import Annotated

import typer

from promptprep.cli.common import AsJson, Paths, StudioFile, print_json, table
from promptprep.model.finding import LEVELS
from promptprep.model.versions import Version, Versions
from promptprep.units import clock_text

NAME = "versions"
WIDE = 80  # columns of a terminal
EXAMPLE = "promptprep versions sky.en.md --out versions"


def command(
    paths: Paths,
    studio: StudioFile = None,
    mark: Annotated[
        bool, typer.Option("--mark", help="Keep in each version which state of the source it was made from.")
    ] = False,
    kit: Annotated[
        str | None, typer.Option(help="Write a translator's kit for this language, such as fr.", show_default=False)
    ] = None,
    take_back: Annotated[
        Path | None, typer.Option("--take-back", help="Make a script of a filled kit.", show_default=False)
    ] = None,
    out: Annotated[
        Path | None, typer.Option(help="Write the side-by-side page and papers here; kits too.", show_default=False)
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Compare the language versions of a script: times against the shared slot, figures, names, cues, staleness.

    Name the source; its versions (sky.fr.md of sky.en.md) stand beside it. More files: the first is the source.
    """
    from promptprep.faces import versions as faces

    if take_back:
        _take_back(paths, take_back, out)
        return
    if kit:
        for file in faces.translator_kit(paths, kit, out or Path("kits"), studio):
            typer.echo(f"wrote {file}")
        return
    if mark:
        for file in faces.mark_versions(paths, studio):
            typer.echo(f"marked {file}; the old one is kept beside it", err=True)
    versions = faces.compare_versions(paths, studio)
    for version in versions.others if mark else ():
        if (file := Path(version.script.file or "")).suffix.lower() not in faces.MARKABLE:
            typer.echo(f"not marked: only a .md or a .txt file can hold a mark, not {file}", err=True)
    for file in faces.write_versions(versions, paths, out, studio) if out else []:
        typer.echo(f"wrote {file}", err=True)
    if as_json:
        from promptprep.rendering.versions_json import versions_object

        print_json(**versions_object(versions))
    else:
        _show(versions)
    if versions.unread or any(f.level == "fix" for v in versions.all for f in v.findings):
        raise typer.Exit(1)


def _take_back(paths: list[Path], kit: Path, out: Path | None) -> None:
    from promptprep.faces import versions as faces

    file, kept, losses = faces.take_back_kit(paths, kit, out)
    typer.echo(f"wrote {file}" + (f"; what stood there is kept as {kept}" if kept else ""))
    for loss in losses:
        typer.echo(f"  - {loss}")


def _show(versions: Versions) -> None:
    from promptprep.rendering.versions_first import first_lines
    from promptprep.rendering.versions_rows import EXPECTED_HEAD, HEAD, expected_row, version_row

    source = versions.source
    slot = "no slot" if source.slot_s is None else f"slot {clock_text(source.slot_s)}"
    counted = "1 version" if len(versions.others) == 1 else f"{len(versions.others)} versions"
    typer.echo(f"{source.script.title}: {source.script.file} and {counted}, {slot}")
    if first := first_lines(versions):
        typer.echo("\nfirst:")
        for number, line in enumerate(first, 1):
            typer.echo(textwrap.fill(line, WIDE, initial_indent=f" {number}. ", subsequent_indent="    "))
    typer.echo("\n" + table(HEAD, [version_row(v) for v in versions.all]))
    if versions.expected:
        typer.echo("\nexpected of languages that have no version yet:")
        typer.echo(table(EXPECTED_HEAD, [expected_row(e) for e in versions.expected]))
    for unread in versions.unread:
        typer.echo(
            f"{unread.file}:{unread.line}:{unread.column}: fix: cannot be read: {unread.message} [{unread.code}]"
        )
        typer.echo(f"    {unread.hint}")
    for version in versions.all:
        _show_findings(version)


def _show_findings(version: Version) -> None:
    from promptprep.rendering.versions_json import finding_objects

    if not version.findings:
        return
    typer.echo("")
    for f in finding_objects(version):
        typer.echo(f"{f['file']}:{f['line']}:{f['column']}: {f['level']}: {f['message']} [{f['name']}]")
        if f["hint"]:
            typer.echo(f"    {f['hint']}")
    counts = ", ".join(f"{sum(f.level == level for f in version.findings)} {level}" for level in LEVELS)
    typer.echo(f"{version.script.file} ({clock_text(version.timing.timing.mean_s)}): {counts}")
