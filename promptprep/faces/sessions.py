"""The public faces of a session: a file in, a planned session and its sheets out."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta
from pathlib import Path
from typing import TYPE_CHECKING

from promptprep.errors import BadCall, PromptprepError
from promptprep.faces.scripts import load_scripts, read_script, studio_for, template_folders
from promptprep.faces.tools import tools
from promptprep.model.rig import Studio
from promptprep.model.script import Script
from promptprep.model.session import RunningOrder, Session

if TYPE_CHECKING:
    from promptprep.pipeline.sessions import Sitting
    from promptprep.rendering.screen import Place


def plan_session(
    path: Path, studio_file: Path | None = None, *, at: str | None = None, first: str | None = None,
    rate: str | None = None,
) -> Session:  # fmt: skip
    """The session in a file, planned; `at` times the rest again from that clock time, beginning with item `first`.

    A script that cannot be read leaves a hole: the rest is timed. Raises `UnreadableInput`, `BadCall`.
    """
    from promptprep.pipeline.sessions import session_of
    from promptprep.session.clock import next_at
    from promptprep.store.session import parse_clock, read_session, with_rate

    order = read_session(path)
    order = with_rate(order, rate) if rate else order
    if at and not (begins := order.start or order.end):
        raise BadCall("no-clock", "this session has no clock to time it by", "give it a start in its file")
    now = next_at(parse_clock(at), order.start or begins - timedelta(days=1)) if at and begins else None
    if first is not None and not at:
        raise BadCall("no-moment", f"--from {first} says no time", 'say from when: --at "14:07:30"')
    if first is not None:
        _check_item(order, first)
    studio = studio_for([path], studio_file)
    return session_of(order, _sitting(order, path, studio), studio, tools(), now, first)


def places_in(folder: Path, studio_file: Path | None = None) -> dict[str, Place]:
    """Where scripts stand in the running order of their folder, by digest; nothing where it has none.

    The faults of a running order are told where it is planned: scripts can be prepared all the same.
    """
    from promptprep.pipeline.sessions import places_of
    from promptprep.store.session import FILE

    if not (folder / FILE).is_file():
        return {}
    try:
        return places_of(plan_session(folder / FILE, studio_file))
    except PromptprepError:
        return {}


def _check_item(order: RunningOrder, code: str) -> None:
    codes = [item.code for item in order.items]
    if code not in codes:
        raise BadCall("unknown-item", f"the session has no item {code!r}", "it has: " + ", ".join(codes))


def _sitting(order: RunningOrder, path: Path, studio: Studio) -> Sitting:
    """The scripts of a running order, their pronunciations put in, and why some cannot be read."""
    from promptprep.pipeline.sessions import Sitting
    from promptprep.store.files import folder_of
    from promptprep.store.session import cue_words, session_limits

    scripts: dict[str, Script] = {}
    faults: dict[str, str] = {}
    for item in order.items:
        if item.file is not None:
            try:
                scripts[item.code] = load_scripts([folder_of(path) / item.file], studio)[0]
            except PromptprepError as fault:
                faults[item.code] = fault.message
    return Sitting(scripts, faults, session_limits(), cue_words())


def keep_cue_numbers(path: Path, studio_file: Path | None = None) -> list[Path]:
    """Writes the cue numbers of a session's scripts into them, as remarks; each old file is kept beside it.

    Only plain-text scripts can keep numbers; others are passed over. Nothing that is read or said changes.
    """
    from promptprep.pipeline.sessions import numbered_script
    from promptprep.store.files import folder_of, read_text, replace_text
    from promptprep.store.scripts import PLAIN
    from promptprep.store.session import read_session

    changed = []
    for name in dict.fromkeys(item.file for item in read_session(path).items if item.file):
        file = folder_of(path) / name
        if file.suffix.lower() not in PLAIN or not file.is_file():
            continue
        text = numbered_script(read_script(file), tools())
        if text != read_text(file):
            replace_text(file, text)
            changed.append(file)
    return changed


def write_session(
    session: Session, path: Path, out: Path, studio_file: Path | None = None, takes: Sequence[Path] = ()
) -> list[Path]:
    """Writes crew sheets, lists, call sheet, captions and chapters of a session to `out`: all files or none.

    Captions of scripts of which `takes` holds a take file have its times. Raises `UnreadableInput`, `OutputFault`.
    """
    from promptprep.pipeline.outputs import render_session
    from promptprep.session.cue_words import CueWords
    from promptprep.store.files import write_outputs
    from promptprep.store.session import cue_words
    from promptprep.store.take_times import read_take_times, takes_by_item

    studio = studio_for([path], studio_file)
    words = {row.item.code: CueWords(cue_words(), row.timed.language) for row in session.items}
    named = {
        row.item.code: (row.timed.script.name, row.timed.script.language, row.timed.digest)
        for row in session.items
        if row.timed.script is not None
    }
    times = takes_by_item([read_take_times(take) for take in takes], named)
    return write_outputs(out, render_session(session, words, studio, tools(), template_folders(studio), times))
