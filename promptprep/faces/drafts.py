"""Faces for a person at work on a folder of scripts: what a text says before it is saved, and saving it safely."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from promptprep.errors import BadCall, PromptprepError
from promptprep.faces.scripts import in_studio, studio_for, time_scripts
from promptprep.faces.tools import known_language, tools
from promptprep.model.prepared import Prepared
from promptprep.model.rig import Studio
from promptprep.model.script import Script
from promptprep.model.sightline import Sightline
from promptprep.model.timing import ScriptTiming
from promptprep.store.scripts import PLAIN
from promptprep.store.studio import FILE as STUDIO_FILE

WRITABLE = (*PLAIN, ".toml")
_NAME = re.compile(r"\w[\w -]{0,60}")
_FIRST_TEXT = '+++\ntitle = "{title}"\n+++\n\n# Opening\n\n'


@dataclass(frozen=True, slots=True)
class Draft:
    """A script's text as a person edits it. `digest` stands for the file as it was read; `losses` is what a
    word processor's document had that a script cannot carry. Only `writable` ones are saved under their own name."""

    path: Path
    text: str
    digest: str
    losses: tuple[str, ...] = ()

    @property
    def writable(self) -> bool:
        return self.path.suffix.lower() in WRITABLE


@dataclass(frozen=True, slots=True)
class TimedDraft:
    """A script of a folder with its running time, or with the fault that keeps it from being read."""

    path: Path
    script: Script | None = None
    timing: ScriptTiming | None = None
    fault: PromptprepError | None = None


# -- what is there ------------------------------------------------------------------------------------------


def script_files(folder: Path) -> list[Path]:
    """The scripts of a folder, unread; an empty folder has none."""
    from promptprep.store.scripts import find_scripts

    try:
        return find_scripts([folder])
    except PromptprepError as fault:
        if fault.code == "no-scripts":
            return []
        raise


def named_files(folder: Path, names: Sequence[str]) -> list[Path]:
    """The scripts of a folder with these file names. Raises `BadCall` for a name that is none of them."""
    known = {path.name: path for path in script_files(folder)}
    for name in names:
        if name not in known:
            raise BadCall("no-such-script", f"the folder has no script {name!r}", "it has: " + ", ".join(known))
    return [known[name] for name in names]


def timed_draft(path: Path, studio_file: Path | None = None) -> TimedDraft:
    """A script with its running time, or with the fault that keeps it from being read."""
    try:
        ((script, timing),) = time_scripts([path], studio_file)
    except PromptprepError as fault:
        return TimedDraft(path, fault=fault)
    return TimedDraft(path, script, timing)


def studio_digest(folder: Path, studio_file: Path | None = None) -> str:
    """Stands for all that a studio says about its scripts; with another digest their times may be other ones.

    Raises `UnreadableInput` for a studio file or lexicon that cannot be read.
    """
    return hashlib.sha256(repr(studio_for([folder], studio_file)).encode("utf-8", "backslashreplace")).hexdigest()


def file_digest(path: Path) -> str:
    """Stands for the bytes of a file. Raises `UnreadableInput`."""
    from promptprep.store.files import read_bytes

    return hashlib.sha256(read_bytes(path)).hexdigest()


# -- one text -----------------------------------------------------------------------------------------------


def open_draft(path: Path) -> Draft:
    """The text of a script or of a studio file. Raises `UnreadableInput`."""
    from promptprep.store.files import read_text
    from promptprep.store.scripts import source_of

    text, losses = (read_text(path), ()) if path.suffix.lower() == ".toml" else source_of(path)
    return Draft(path, text, file_digest(path), tuple(losses))


def look_at(text: str, path: Path, studio_file: Path | None = None) -> Prepared:
    """Everything about a text that is not saved yet, as if it stood in the file at `path`. Writes nothing.

    Raises `UnreadableInput` or `UnknownLanguage` with the line.
    """
    from promptprep.pipeline.scripts import prepare_one
    from promptprep.store.scripts import script_of

    studio = studio_for([path], studio_file)
    one = prepare_one(in_studio(script_of(text, (), path), studio), studio, tools())
    return Prepared(studio, (one,), (one.sightline,))


def look_at_studio(text: str, path: Path) -> tuple[Studio, list[Sightline]]:
    """What a studio file would say, and the sightline of each of its rigs. Writes nothing.

    Raises `UnreadableInput`, `BadGeometry` or `ManyFaults` with the lines.
    """
    from promptprep.pipeline.scripts import sightline_alone
    from promptprep.store.studio import parse_studio

    studio = parse_studio(text, str(path))
    return studio, [sightline_alone(rig, None, "en", studio, tools()) for rig in studio.rigs.values()]


def save_draft(path: Path, text: str, seen: str, *, keep: bool = True) -> tuple[Draft, Path | None]:
    """Writes a script's text. Returns the draft as saved, and the path of the copy that was kept of the state before.

    `seen` is the digest of the file as the person last saw it; without `keep` that state was the person's own, a
    moment ago, and no copy is made. Raises `BadCall` where the file has changed since, or is no text file, and
    `OutputFault`.
    """
    from promptprep.store.files import replace_text

    if path.suffix.lower() not in WRITABLE:
        raise BadCall("not-writable", f"{path.name} is a word processor's document", "keep the copy as a new .md file")
    if file_digest(path) != seen:
        hint = "somebody saved it meanwhile: take a copy of your text, open the script again, and put it in"
        raise BadCall("changed-elsewhere", f"{path.name} has changed since you opened it", hint)
    copy = replace_text(path, _with_line_ends_of(path, text), keep=keep)
    return Draft(path, text, file_digest(path)), copy


def _with_line_ends_of(path: Path, text: str) -> str:
    """The text with the line ends that the file has: a page knows line feeds alone."""
    plain = text.replace("\r\n", "\n")
    return plain.replace("\n", "\r\n") if b"\r\n" in path.read_bytes() else plain


def new_draft(folder: Path, name: str, language: str, text: str | None = None) -> Path:
    """Makes NAME.LANG.md, with the text given or an empty opening. Raises `BadCall` where there is such a file."""
    from promptprep.store.files import replace_text

    if not _NAME.fullmatch(name):
        raise BadCall("wrong-name", f"{name!r} cannot name a script", "use letters, digits, blanks and hyphens")
    path = folder / f"{name.strip().replace(' ', '-')}.{known_language(language).tag}.md"
    if path.exists():
        raise BadCall("name-taken", f"there is a script {path.name} already", "choose another name")
    replace_text(path, _FIRST_TEXT.format(title=name) if text is None else text)
    return path


def new_studio(folder: Path) -> Path:
    """Makes a studio file to fill in. Raises `BadCall` where there is one."""
    from promptprep.store.files import replace_text
    from promptprep.store.templates import shipped

    path = folder / STUDIO_FILE
    if path.exists():
        raise BadCall("name-taken", "the folder has a studio file already", "open it")
    replace_text(path, (shipped("templates") / "start" / STUDIO_FILE).read_text("utf-8"))
    return path
