"""Finds and reads scripts: files and folders, script text and word-processor documents."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

from promptprep.engines.load import has_voice
from promptprep.errors import ManyFaults, PromptprepError, UnknownLanguage, UnreadableInput
from promptprep.model.language import FIRST_CLASS, base_of
from promptprep.model.rig import Studio
from promptprep.model.script import Script
from promptprep.parsing.front import key_place
from promptprep.parsing.parse import parse_script
from promptprep.store.documents import FORMATS, read_document
from promptprep.store.files import read_text
from promptprep.store.paces import toml_key

SURE = 0.95  # common practice, no source: one detected text in twenty may be wrong

PLAIN = (".md", ".txt")  # text as we write it: only such files can be written back
SUFFIXES = (*PLAIN, *FORMATS)

_TAGGED = re.compile(r"(.+)\.([a-z]{2,3}(?:-[A-Za-z]{4})?(?:-(?:[A-Z]{2}|\d{3}))?)")


def find_scripts(paths: Iterable[Path]) -> list[Path]:
    """The scripts that the paths name: a file as it is, a folder's scripts sorted by name (README aside).

    Raises `UnreadableInput` for a path that is not there and for a folder without scripts.
    """
    found: list[Path] = []
    for path in paths:
        if not path.is_dir():
            found.append(path)
            continue
        inside = sorted(p for p in path.iterdir() if _is_script(p))
        if not inside:
            hint = "scripts end in " + ", ".join(SUFFIXES)
            raise UnreadableInput("no-scripts", "there is no script in this folder", hint, str(path))
        found.extend(inside)
    return list(dict.fromkeys(found))


def _is_script(path: Path) -> bool:
    return (
        path.is_file()
        and path.suffix.lower() in SUFFIXES
        and path.name[0] not in ".~"
        and path.stem.lower() != "readme"
    )


def name_and_language(path: Path) -> tuple[str, str | None]:
    """("sky", "fr") of "sky.fr.md"; None where the file name holds no language tag."""
    tagged = _TAGGED.fullmatch(path.stem)
    return (tagged[1], tagged[2]) if tagged else (path.stem, None)


def read_script_file(path: Path) -> Script:
    """The script in a file. Raises `UnreadableInput` or `UnknownLanguage` with place and hint."""
    return script_of(*source_of(path), path)


def source_of(path: Path) -> tuple[str, Sequence[str]]:
    """A script's text, a word-processor document's in our own form, and what of it could not be carried over.

    Raises `UnreadableInput`.
    """
    suffix = path.suffix.lower()
    if suffix not in SUFFIXES and path.is_file():
        hint = "scripts end in " + ", ".join(SUFFIXES)
        raise UnreadableInput(
            "unknown-format", f"{suffix or 'a file without an ending'} is no kind of script", hint, str(path)
        )
    return read_document(path) if suffix in FORMATS else (read_text(path), ())


def script_of(source: str, losses: Sequence[str], path: Path) -> Script:
    """The script that a text makes as the file at `path`. Raises `UnreadableInput` or `UnknownLanguage`."""
    name, language = name_and_language(path)
    script = parse_script(source, name=name, file=str(path), language=language, detect=detect_language, losses=losses)
    if not any(segment.blocks for segment in script.segments):
        raise UnreadableInput(
            "empty-script", "there is no copy in this file", "write or paste the copy", str(path), 1, 1
        )
    return replace(script, language=_known(script))


def _known(script: Script) -> str:
    """The script's language, checked: a first-class one, or any that the phoneme engine speaks."""
    tag = script.language
    base = base_of(tag).lower()
    if re.fullmatch(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*", tag) and (base in FIRST_CLASS or has_voice(tag)):
        return tag
    near = difflib.get_close_matches(base, FIRST_CLASS, 1)
    hint = (f"did you mean {near[0]!r}? " if near else "") + 'write a BCP 47 tag such as language = "en"'
    line, column = key_place(script.source, "language") if script.language_origin == "front matter" else (None, None)
    raise UnknownLanguage("unknown-language", f"nobody here speaks {tag!r}", hint, script.file, line, column)


def check_names(script: Script, studio: Studio) -> None:
    """Raises `UnreadableInput` where the script wants a reader or rig that the studio file does not have."""
    for kind, wanted, known in (("reader", script.reader, studio.readers), ("rig", script.rig, studio.rigs)):
        if wanted is None or wanted in known:
            continue
        line, column = key_place(script.source, kind)
        message = f"the studio has no {kind} {wanted!r}"
        raise UnreadableInput(f"unknown-{kind}", message, _name_hint(wanted, known, kind), script.file, line, column)


def _name_hint(wanted: str, known: Mapping[str, object], kind: str) -> str:
    if not known:
        return f"describe the {kind} in studio.toml beside the script; promptprep start makes one to fill in"
    near = difflib.get_close_matches(wanted, known, 1)
    others = f"the studio has: {', '.join(known)}; or add [{kind}s.{toml_key(wanted)}] to studio.toml"
    return f"did you mean {near[0]!r}?" if near else others


def detect_language(text: str) -> str:
    """The most likely language of a text: any that is nearly certain, else the likeliest first-class one.

    "en" for a text without letters.
    """
    if not any(c.isalpha() for c in text):
        return "en"
    tag, sureness = _detector(True).classify(text[:5000])
    return str(tag if sureness > SURE else _detector(False).classify(text[:5000])[0])


@lru_cache(maxsize=2)
def _detector(every: bool) -> Any:
    from py3langid.langid import MODEL_FILE, LanguageIdentifier

    identifier = LanguageIdentifier.from_model_file(MODEL_FILE, norm_probs=True)
    if not every:
        identifier.set_languages(list(FIRST_CLASS))
    return identifier


def read_scripts(paths: Iterable[Path]) -> list[Script]:
    """All scripts at the paths. Raises what is wrong with them: one fault, or `ManyFaults`."""
    scripts: list[Script] = []
    faults: list[PromptprepError] = []
    for path in find_scripts(paths):
        try:
            scripts.append(read_script_file(path))
        except PromptprepError as fault:
            faults.append(fault)
    if len(faults) > 1:
        raise ManyFaults(faults)
    if faults:
        raise faults[0]
    return scripts
