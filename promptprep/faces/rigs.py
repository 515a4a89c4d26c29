"""Faces of rigs: sightlines, what if, drawings."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from promptprep.errors import BadCall
from promptprep.faces.scripts import studio_for, template_folders
from promptprep.faces.tools import named, tools
from promptprep.model.rig import Studio
from promptprep.model.sightline import Sightline


def sightlines(
    path: Path,
    studio_file: Path | None = None,
    *,
    rig: str | None = None,
    reader: str | None = None,
    language: str = "en",
    changes: Sequence[str] = (),
) -> list[tuple[dict[str, str], Sightline]]:
    """Each rig's sightline with the setting it was tried at (empty without ranges). Raises `BadCall`, `BadGeometry`."""
    from promptprep.pipeline.scripts import sightline_alone
    from promptprep.sightline.whatif import changed, is_range, swept

    studio = studio_for([path], studio_file or (path if path.suffix == ".toml" else None))
    who = named(studio.readers, reader, "reader") if reader else None
    rigs = [named(studio.rigs, rig, "rig")] if rig else list(studio.rigs.values())
    if not rigs:
        raise BadCall("no-rig", "no studio file describes a rig here", "promptprep start makes one", str(path))
    fixed = [c for c in changes if not is_range(c)]
    ranges = [c for c in changes if is_range(c)]
    tried = [pair for one in rigs for pair in swept(changed(one, fixed) if fixed else one, ranges)]
    return [(setting, sightline_alone(one, who, language, studio, tools())) for setting, one in tried]


def write_drawings(sights: Sequence[Sightline], folder: Path, studio: Studio | None = None) -> list[Path]:
    """Writes three drawings of each rig as SVG files, and its sheet to print, in the studio's language."""
    from promptprep.pipeline.outputs import paper_tools
    from promptprep.rendering.drawings import rig_drawings
    from promptprep.rendering.environment import environment
    from promptprep.rendering.rig_sheet import rig_sheet_pdf
    from promptprep.rendering.wording import Wording
    from promptprep.store.files import write_outputs
    from promptprep.store.logo import logo_url

    studio = studio or Studio()
    env = environment(template_folders(studio))
    printed = paper_tools(studio.language, tools(), env, logo_url(studio))
    say = Wording(tools().words(studio.language))
    files = {
        f"{sight.rig.id}.{name}.svg": svg.encode("utf-8")
        for sight in sights
        for name, svg in zip(("side", "reader", "region"), rig_drawings(sight, env, say), strict=True)
    }
    files |= {f"{sight.rig.id}.sheet.pdf": rig_sheet_pdf(sight, studio, printed) for sight in sights}
    return write_outputs(folder, files)
