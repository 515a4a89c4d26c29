"""The public faces of a show's versions: files in, a comparison, marks and translators' kits out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from promptprep.errors import BadCall, PromptprepError
from promptprep.faces.scripts import load_scripts, read_script, studio_for, template_folders
from promptprep.faces.tools import known_language, tools
from promptprep.model.rig import Studio
from promptprep.model.script import Script
from promptprep.model.versions import Unread, Versions
from promptprep.store.scripts import PLAIN

MARKABLE = PLAIN


def _versions_at(paths: Sequence[Path], studio: Studio) -> tuple[Script, list[Script], tuple[Unread, ...]]:
    """The source, the other versions of its show, and those that cannot be read.

    A single file brings the versions that stand beside it; a folder must hold one show. Raises `BadCall` where two
    files hold one language, and whatever is wrong with the source.
    """
    from promptprep.store.versions import version_files

    source, *files = version_files(paths)
    scripts, unread = load_scripts([source], studio), []
    for file in files:
        try:
            scripts += load_scripts([file], studio)
        except PromptprepError as fault:
            unread.append(Unread(str(file), fault.code, fault.message, fault.hint, fault.line or 1, fault.column or 1))
    seen: dict[str, Script] = {}
    for script in scripts:
        if script.language in seen:
            hint = "name the one that you mean, or rename the other"
            both = f"{seen[script.language].file} and {script.file} are both in {script.language!r}"
            raise BadCall("language-twice", both, hint, script.file)
        seen[script.language] = script
    return scripts[0], scripts[1:], tuple(unread)


def compare_versions(paths: Sequence[Path], studio_file: Path | None = None) -> Versions:
    """The versions of one show beside their source: times against the shared slot, and everything that differs."""
    from promptprep.pipeline.versions import versions_of
    from promptprep.store.versions import marked_sentences

    studio = studio_for(paths, studio_file)
    source, others, unread = _versions_at(paths, studio)
    kept = marked_sentences(Path(source.file)) if source.file else None
    return replace(versions_of(source, others, studio, tools(), kept), unread=unread)


def mark_versions(paths: Sequence[Path], studio_file: Path | None = None) -> list[Path]:
    """Writes into each version which state of the source it was made from; each old file is kept beside it.

    Only `MARKABLE` files can hold a mark. The source's sentences of all marks go to a file beside the source; those
    that no version is marked with any more leave it, where all versions are at hand.
    """
    from promptprep.store.files import read_text, replace_text
    from promptprep.store.versions import keep_marked, marked_sentences
    from promptprep.versions.marks import sentences_of, state_of, with_mark

    def ends(text: str) -> Sequence[int]:
        return tools().engines.breaks.sentences(text, source.language)

    source, others, unread = _versions_at(paths, studio_for(paths, studio_file))
    state, now = state_of(source, ends), sentences_of(source, ends)
    written, unmarked = [], bool(unread) or len(paths) > 1
    for script in others:
        file = Path(script.file or "")
        if file.suffix.lower() not in MARKABLE:
            continue
        text = read_text(file)
        marked = with_mark(text, state)
        if marked != text:
            replace_text(file, marked)
            written.append(file)
    if others and source.file:
        earlier = marked_sentences(Path(source.file)) if unmarked else {}
        keep_marked(Path(source.file), {**now, **{d: t for d, t in earlier.items() if d not in now}})
    return written


def write_versions(versions: Versions, paths: Sequence[Path], out: Path, studio_file: Path | None = None) -> list[Path]:
    """Writes the side-by-side page and the papers in two languages to `out`. All files are written or none."""
    from promptprep.pipeline.version_outputs import render_versions
    from promptprep.store.files import write_outputs

    folders = template_folders(studio_for(paths, studio_file))
    return write_outputs(out, render_versions(versions, tools(), folders))


def translator_kit(paths: Sequence[Path], language: str, out: Path, studio_file: Path | None = None) -> list[Path]:
    """Writes a translator's kit for `language`: a page, a DOCX and an XLIFF file.

    What a version in that language already says stands in it. Raises `UnknownLanguage`, `BadCall`.
    """
    from promptprep.pipeline.version_outputs import render_kit
    from promptprep.pipeline.versions import translators_kit
    from promptprep.store.files import write_outputs

    studio = studio_for(paths, studio_file)
    source, others, _ = _versions_at(paths, studio)
    if language == source.language:
        raise BadCall("kit-of-source", f"the source is in {language!r} already", "name the translator's language")
    known_language(language)
    made = next((s for s in others if s.language == language), None)
    kit = translators_kit(source, language, made, studio, tools())
    return write_outputs(out, render_kit(kit, tools(), template_folders(studio)))


def take_back_kit(paths: Sequence[Path], kit: Path, out: Path | None = None) -> tuple[Path, Path | None, list[str]]:
    """Makes a script of a filled kit: (its file, the kept copy of what stood there, what was lost).

    It is written beside the source, or to `out`. Raises `UnreadableInput` where the file is no kit of this script.
    """
    from promptprep.store.files import replace_text
    from promptprep.store.kits import read_kit
    from promptprep.versions.kit import taken_back

    if not paths:
        raise BadCall("no-input", "no script is named", "name the source that the kit was made from")
    source = read_script(paths[0])
    filled = read_kit(kit)
    if filled.target_language == source.language:
        raise BadCall("kit-of-source", "the kit says that it is in the source's language", "name the right source")
    months = known_language(filled.target_language).maybe("versions", "months", {})
    folder = out or paths[0].parent
    folder.mkdir(parents=True, exist_ok=True)
    file = folder / f"{source.name}.{filled.target_language}.md"
    text, losses = taken_back(source, filled, [str(month).casefold() for month in months], _readable(file))
    kept = replace_text(file, text)
    return file, kept, losses


def _readable(file: Path) -> Script | None:
    """The script that stands there; None where there is none, or one that cannot be read."""
    try:
        return read_script(file) if file.exists() else None
    except PromptprepError:
        return None
