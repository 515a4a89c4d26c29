"""WebVTT captions from the planned times (W3C WebVTT: times as hh:mm:ss.ttt, end after start, starts in order)."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.model.lines import Line
from promptprep.model.prepared import PreparedScript

CAPTION_LINES = 2  # BBC subtitle guidance: at most two lines


def vtt(one: PreparedScript) -> str:
    """Captions of at most two planned lines, each shown while it is said. Text is escaped as the standard asks."""
    head = f"WEBVTT\n\nNOTE wording {one.digest}, times predicted\n"
    return head + "".join(f"\n{n}\n{cue}" for n, cue in enumerate(_cues(one), 1))


def _cues(one: PreparedScript) -> Iterator[str]:
    for lines in _pairs(one.broken.lines):
        start_ms = round(lines[0].at_s * 1000)
        end_ms = max(round(lines[-1].end_s * 1000), start_ms + 1)
        text = "\n".join(_escaped(line.text) for line in lines)
        yield f"{stamp(start_ms)} --> {stamp(end_ms)}\n{text}\n"


def _pairs(lines: tuple[Line, ...]) -> Iterator[list[Line]]:
    group: list[Line] = []
    for line in lines:
        if not line.text.strip():
            continue
        group.append(line)
        if len(group) == CAPTION_LINES or line.ends_paragraph:
            yield group
            group = []
    if group:
        yield group


def stamp(milliseconds: int) -> str:
    """A WebVTT time stamp with hours."""
    seconds, ms = divmod(milliseconds, 1000)
    minutes, s = divmod(seconds, 60)
    hours, m = divmod(minutes, 60)
    return f"{hours:02d}:{m:02d}:{s:02d}.{ms:03d}"


def _escaped(text: str) -> str:
    plain = text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    return re.sub(r"[\r\n]+", " ", plain).strip()
