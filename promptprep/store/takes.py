"""Timed readings: take files that the screen page saves, and times typed by hand."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from promptprep.errors import BadCall, UnreadableInput
from promptprep.model.script import Sayings, Script, Segment, copy_of
from promptprep.rendering.json_form import FORMAT
from promptprep.spans import Span
from promptprep.store.files import read_text
from promptprep.store.scripts import read_script_file
from promptprep.units import clock_text, parse_duration

HINT = "save it from the screen page as a take file"
_TYPED = re.compile(r"(?P<file>.+?)(?:#(?P<id>[^=#]+))?=(?P<time>[^=]+)")


@dataclass(frozen=True, slots=True)
class Timed:
    """One reading: the copy that was said, in how many seconds, without holds, clips, pauses by cue and live parts.

    `said` holds the pronunciations that the copy gives, each with its place in `text`.
    """

    text: str
    seconds: float
    language: str
    reader: str | None
    where: str
    said: Sayings = ()


def read_take(path: Path) -> list[Timed]:
    """The whole segments of a take file. Raises `UnreadableInput` where it is none.

    A segment that was jumped into or out of says nothing about its pace and is passed over.
    """
    take = take_object(path)
    if take.get("promptprep") != FORMAT or not isinstance(take.get("segments"), list):
        raise UnreadableInput("broken-take", f"this is no take file of version {FORMAT}", HINT, str(path))
    return [timed for segment in take["segments"] if (timed := _segment(segment, take, path))]


def take_object(path: Path) -> Mapping[str, Any]:
    """What a take file holds. Raises `UnreadableInput` where it is no JSON object."""
    try:
        take = json.loads(read_text(path))
    except (ValueError, RecursionError):
        take = None
    if not isinstance(take, Mapping):
        raise UnreadableInput("broken-take", "this is no take file", HINT, str(path))
    return take


def _segment(segment: Any, take: Mapping[str, Any], path: Path) -> Timed | None:
    try:
        if not segment["whole"] or not str(segment["text"]).strip():
            return None
        length = float(segment["ended_s"]) - float(segment["started_s"])
        seconds = length - float(segment["held_s"]) - float(segment["fixed_s"]) - float(segment.get("rest_s") or 0)
        language = str(take["language"])
    except (KeyError, TypeError, ValueError, OverflowError):
        raise UnreadableInput("broken-take", "a segment of this take is incomplete", HINT, str(path)) from None
    if not math.isfinite(seconds) or seconds <= 0:
        return None
    reader = take.get("reader") if isinstance(take.get("reader"), str) else None
    where = f"{path}: {segment.get('id', '')}"
    return Timed(str(segment["text"]), seconds, language, reader, where, _sayings(segment))


def _sayings(segment: Mapping[str, Any]) -> Sayings:
    """The pronunciations of a take's segment; takes of older pages have none, and what is none is passed over."""
    length, found = len(str(segment["text"])), segment.get("said")
    rows = [row for row in found if isinstance(row, list) and len(row) == 3] if isinstance(found, list) else []
    return tuple(
        (Span(start, end), say)
        for start, end, say in rows
        if isinstance(start, int) and isinstance(end, int) and isinstance(say, str) and 0 <= start < end <= length
    )


def read_typed(text: str, completed: Callable[[Script], Script] = lambda script: script) -> Timed:
    """One time typed by hand: "sky.en.md=3:12" for a script, "sky.en.md#look=0:58" for a segment.

    `completed` puts the studio's pronunciations in. The length is that of the whole as it was read, its clips, live
    parts and pauses by cue included. Raises `BadCall`, `UnreadableInput`.
    """
    typed = _TYPED.fullmatch(text)
    if not typed:
        raise BadCall(
            "not-a-timing", f"{text!r} names no script and time", 'write "sky.en.md=3:12" or "sky.en.md#look=0:58"'
        )
    script = completed(read_script_file(Path(typed["file"])))
    segments = script.segments if typed["id"] is None else [_segment_of(script, typed["id"])]
    fixed_s = sum(segment.fixed_s for segment in segments)
    seconds = parse_duration(typed["time"]) - fixed_s
    if seconds <= 0:
        raise BadCall(
            "absurd-sample",
            f"{text!r}: clips, pauses and live parts alone take {fixed_s:g} s",
            f"time it with them, or add {clock_text(fixed_s)} to what you wrote down",
        )
    copy, said = copy_of(segments)
    return Timed(copy, seconds, script.language, script.reader, text, said)


def _segment_of(script: Script, name: str) -> Segment:
    for segment in script.segments:
        if segment.id == name:
            return segment
    known = ", ".join(segment.id for segment in script.segments)
    raise BadCall("unknown-segment", f"{script.file} has no segment {name!r}", f"it has: {known}", script.file)
