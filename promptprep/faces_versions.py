"""The public faces of a show's versions: files in, a comparison, marks and translators' kits out."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from promptprep.errors import BadCall
from promptprep.faces import load_scripts, studio_for, tools
from promptprep.model.rig import Studio
from promptprep.model.script import Script
from promptprep.model.versions import Versions


def _versions_at(paths: Sequence[Path], studio: Studio) -> tuple[Script, list[Script]]:
    """The source and the other versions of its show. Raises `BadCall` where two files hold one language.

    A single file brings the versions that stand beside it; a folder must hold one show.
    """
    from promptprep.store.versions import version_files

    scripts = load_scripts(version_files(paths), studio)
    seen: dict[str, Script] = {}
    for script in scripts:
        if script.language in seen:
            hint = "name the one that you mean, or rename the other"
            both = f"{seen[script.language].file} and {script.file} are both in {script.language!r}"
            raise BadCall("language-twice", both, hint, script.file)
        seen[script.language] = script
    return scripts[0], scripts[1:]


def compare_versions(paths: Sequence[Path], studio_file: Path | None = None) -> Versions:
    """The versions of one show beside their source: times against the shared slot, and everything that differs."""
    from promptprep.pipeline_versions import versions_of

    studio = studio_for(paths, studio_file)
    source, others = _versions_at(paths, studio)
    return versions_of(source, others, studio, tools())


def mark_versions(paths: Sequence[Path], studio_file: Path | None = None) -> list[Path]:
    """Writes into each version which state of the source it was made from; each old file is kept beside it."""
    from promptprep.store.files import read_text, replace_text
    from promptprep.versions.marks import state_of, with_mark

    source, others = _versions_at(paths, studio_for(paths, studio_file))
    state = state_of(source, lambda text: tools().engines.breaks.sentences(text, source.language))
    changed = []
    for script in others:
        file = Path(script.file or "")
        if file.suffix.lower() not in (".md", ".txt"):
            continue
        text = read_text(file)
        marked = with_mark(text, state)
        if marked != text:
            replace_text(file, marked)
            changed.append(file)
    return changed
