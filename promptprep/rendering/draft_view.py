"""What a text says while it is being written, for a page that shows it: times, findings, lines, each with its place."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterator
from typing import Any

from promptprep.model.prepared import PreparedScript
from promptprep.model.script import CueLine, Paragraph
from promptprep.rendering.findings import finding_object
from promptprep.rendering.verdicts import slot_verdict
from promptprep.spans import LineIndex
from promptprep.units import clock_text

Place = Callable[[int], int]


def draft_view(one: PreparedScript) -> dict[str, Any]:
    """Times as text, and places as offsets in UTF-16 code units, as browsers count them."""
    place = _utf16_places(one.script.source)
    timing = one.timing.timing
    verdict, sentence = slot_verdict(one.timing)
    return {
        "title": one.script.title,
        "language": one.script.language,
        "language_origin": one.script.language_origin,
        "direction": one.direction,
        "reader": one.reader.name if one.reader else None,
        "rig": one.rig.title or one.rig.id,
        "digest": one.digest,
        "time": {
            "mean": clock_text(timing.mean_s),
            "low": clock_text(timing.low_s),
            "high": clock_text(timing.high_s),
            "mean_s": round(timing.mean_s, 3),
            "low_s": round(timing.low_s, 3),
            "high_s": round(timing.high_s, 3),
            "slot_s": one.timing.slot_s,
            "slot": None if one.timing.slot_s is None else clock_text(one.timing.slot_s),
            "words": timing.words,
            "verdict": verdict,
            "sentence": sentence,
            "pace": one.timing.pace.source,
        },
        "segments": list(_segments(one, place)),
        "findings": _findings(one, place),
        "rows": list(_rows(one, place)),
        "view": {
            "lines": one.sightline.lines_visible,
            "characters": round(one.sightline.characters_per_line, 1),
        },
    }


def _utf16_places(source: str) -> Place:
    """From an offset in code points to one in UTF-16 units."""
    if source.isascii() or max(source) <= "\uffff":
        return lambda offset: offset
    wide = [i for i, c in enumerate(source) if c > "\uffff"]

    return lambda offset: offset + bisect_left(wide, offset)


def _segments(one: PreparedScript, place: Place) -> Iterator[dict[str, Any]]:
    for segment, timed in zip(one.script.segments, one.timing.segments, strict=True):
        slot_s, mean_s = timed.slot_s, timed.timing.mean_s
        yield {
            "title": segment.title or segment.id,
            "at": place((segment.heading_span or segment.span).start),
            "start": clock_text(timed.start_s),
            "mean": clock_text(mean_s),
            "mean_s": round(mean_s, 3),
            "slot": None if slot_s is None else clock_text(slot_s),
            "over_s": None if slot_s is None else round(mean_s - slot_s, 3),
            "words": timed.timing.words,
        }


def _findings(one: PreparedScript, place: Place) -> list[dict[str, Any]]:
    index = LineIndex(one.script.source)
    return [
        finding_object(found, one.script.source, one.script.file, index)
        | {"start": place(found.start), "end": place(found.end)}
        for found in one.findings
    ]


def _rows(one: PreparedScript, place: Place) -> Iterator[dict[str, Any]]:
    """The planned lines of the screen, and between them headings and cues, in the order of the copy."""
    rows = [*_lines(one), *_between_lines(one)]
    for at, row in sorted(rows, key=lambda pair: pair[0]):
        yield row | {"at": place(at)}


def _lines(one: PreparedScript) -> Iterator[tuple[int, dict[str, str]]]:
    for line in one.broken.lines:
        block = one.script.segments[line.segment].blocks[line.block]
        at = block.source_span(line.span).start if isinstance(block, Paragraph) else block.span.start
        yield at, {"kind": "line", "text": line.text, "time": clock_text(line.at_s)}


def _between_lines(one: PreparedScript) -> Iterator[tuple[int, dict[str, str]]]:
    for segment in one.script.segments:
        if segment.heading_span and segment.title:
            yield segment.heading_span.start, {"kind": "heading", "text": segment.title}
        for block in segment.blocks:
            if isinstance(block, CueLine):
                yield block.span.start, {"kind": "cue", "text": f"{block.cue.kind} {block.cue.text}".strip()}
