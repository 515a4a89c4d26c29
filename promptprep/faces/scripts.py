"""Faces that take scripts in files: reading, timing, checking, preparing."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from promptprep.errors import BadCall, UnreadableInput
from promptprep.faces.tools import as_path, as_paths, tools
from promptprep.model.finding import Finding
from promptprep.model.language import base_of
from promptprep.model.prepared import Prepared
from promptprep.model.rig import PAPER_VARIANTS, Studio
from promptprep.model.script import Script
from promptprep.model.timing import ScriptTiming
from promptprep.store.templates import shipped


@dataclass(frozen=True, slots=True)
class Report:
    """What `prepare` did: everything it knows, and the files it wrote (safe copies of the user's own come last)."""

    prepared: Prepared
    files: tuple[Path, ...]

    @property
    def fixes(self) -> int:
        """How many findings say `fix`."""
        return sum(f.level == "fix" for one in self.prepared.scripts for f in one.findings)


def read_script(path: str | Path) -> Script:
    """The script in a file (.md .txt .docx .odt .rtf). Raises `UnreadableInput` with place and hint."""
    from promptprep.store.scripts import read_script_file

    return read_script_file(as_path(path))


def studio_for(paths: Sequence[Path], studio_file: Path | None = None) -> Studio:
    """The studio file named, else the `studio.toml` nearest above the first path, with the pronunciations beside it."""
    from promptprep.store.files import folder_of
    from promptprep.store.lexicon import read_lexicons
    from promptprep.store.studio import find_studio, read_studio

    folder = folder_of(paths[0]) if paths else Path.cwd()
    file = studio_file or (find_studio(folder) if folder.is_dir() else None)
    studio = read_studio(file) if file else Studio()
    lexicon = {tag: dict(said) for tag, said in studio.lexicon.items()}
    for tag, said in read_lexicons(file.parent if file else folder).items():
        lexicon.setdefault(tag, {}).update(said)
    return replace(studio, lexicon=lexicon)


def load_scripts(paths: Sequence[Path], studio: Studio, *, strict: bool = True) -> list[Script]:
    """Scripts at the paths, pronunciations put in. With `strict` their readers and rigs must be the studio's."""
    from promptprep.store.scripts import read_scripts

    if not paths:
        raise BadCall("no-input", "no script is named", "name a script or a folder of scripts")
    return [in_studio(script, studio, strict=strict) for script in read_scripts(paths)]


def in_studio(script: Script, studio: Studio, *, strict: bool = True) -> Script:
    """A script with the studio's pronunciations put in. With `strict` its reader and rig must be the studio's."""
    from promptprep.parsing.lexicon import with_lexicon
    from promptprep.store.scripts import check_names

    if strict:
        check_names(script, studio)
    return with_lexicon(script, studio.lexicon.get(base_of(script.language), {}))


def time_scripts(paths: Sequence[Path], studio_file: Path | None = None) -> list[tuple[Script, ScriptTiming]]:
    """Each script at the paths with its running time."""
    from promptprep.pipeline.scripts import time_one

    studio = studio_for(paths, studio_file)
    return [(script, time_one(script, studio, tools())) for script in load_scripts(paths, studio)]


def check_scripts(paths: Sequence[Path], studio_file: Path | None = None) -> list[tuple[Script, list[Finding]]]:
    """Each script at the paths with its findings, in the order of its text."""
    from promptprep.pipeline.scripts import check_one

    studio = studio_for(paths, studio_file)
    scripts = load_scripts(paths, studio, strict=False)
    return [(script, check_one(script, studio, tools())) for script in scripts]


def suggestions(checked: Sequence[tuple[Script, Sequence[Finding]]]) -> str:
    """The safe rewordings of findings, as one patch in unified form."""
    from promptprep.checking.suggest import patch

    return "".join(patch(script, findings) for script, findings in checked)


def prepare(
    paths: Iterable[str | Path] | str | Path,
    out: str | Path,
    studio_file: str | Path | None = None,
    *,
    stills: bool = False,
    paper: Sequence[str] = (),
) -> Report:
    """Writes screen copy, paper copy, crew sheet and captions of every script, and the report, to `out`.

    `paper` names further printed copies beside those that the studio wants: "rehearsal", "cards", "low-ink".
    All files are written or none. The same input gives the same bytes. Raises `BadCall`, also for two scripts of one
    name and language, `UnreadableInput`, `OutputFault`. A running order in a folder at the paths tells the screen
    copies of its scripts where they stand in it.
    """
    from promptprep.faces.sessions import places_in
    from promptprep.pipeline.outputs import render_all
    from promptprep.pipeline.scripts import prepare_all
    from promptprep.store.files import write_outputs
    from promptprep.store.logo import logo_url

    where = as_paths(paths)
    file = as_path(studio_file) if studio_file else None
    studio = _printing(studio_for(where, file), paper)
    logo, folder = logo_url(studio), as_path(out)
    prepared = prepare_all(_apart(load_scripts(where, studio)), studio, tools())
    places = {digest: place for path in where for digest, place in places_in(path, file).items()}
    files = render_all(prepared, tools(), template_folders(studio), stills=stills, logo=logo, places=places)
    return Report(prepared, tuple(write_outputs(folder, files)))


def _apart(scripts: list[Script]) -> list[Script]:
    """The scripts. Raises `BadCall` where two would write the same files, also on a disk that knows no capitals."""
    seen: dict[str, Script] = {}
    for script in scripts:
        stem = f"{script.name}.{script.language}"
        other = seen.setdefault(unicodedata.normalize("NFC", stem).casefold(), script)
        if other is not script:
            message = f"{other.file} and {script.file} would both write {stem}.screen.html and its like"
            hint = "rename one of them, or prepare each with an --out of its own"
            twofold = (f for one in (other, script) for f in one.faults if f.name == "two-languages")
            raise BadCall("same-name", message, next((f"{f.message}; {f.hint}" for f in twofold), hint))
    return scripts


def _printing(studio: Studio, wanted: Sequence[str]) -> Studio:
    """The studio with further printed copies. Raises `BadCall` for one that does not exist."""
    for name in wanted:
        if name not in PAPER_VARIANTS:
            raise BadCall("unknown-copy", f"there is no printed copy {name!r}", "use " + ", ".join(PAPER_VARIANTS))
    variants = tuple(name for name in PAPER_VARIANTS if name in wanted or name in studio.paper.variants)
    return replace(studio, paper=replace(studio.paper, variants=variants))


def template_folders(studio: Studio) -> list[Path]:
    """The studio's own templates, where it has any, before the shipped ones. Raises `UnreadableInput` for a folder
    that does not exist."""
    if not (studio.file and studio.template_folder):
        return [shipped("templates")]
    own = Path(studio.file).parent / studio.template_folder
    if not own.is_dir():
        hint = 'check templates = "..." in studio.toml'
        raise UnreadableInput("no-template-folder", "there is no such folder of templates", hint, str(own))
    return [own, shipped("templates")]
