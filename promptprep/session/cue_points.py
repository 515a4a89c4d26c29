"""Numbers the cues: cues at the same point of the text are one numbered cue with several actions."""

from __future__ import annotations

from dataclasses import dataclass

from promptprep.model.script import Cue, CueLine, Note, Paragraph, Script, Segment
from promptprep.model.session import NumberedCue
from promptprep.model.timing import FIXED_PAUSES, BlockTiming, ScriptTiming, SegmentTiming
from promptprep.session.cue_labels import cue_labels


@dataclass(frozen=True, slots=True)
class _Placed:
    """A cue before numbering. `point` is equal for cues with nothing said and no note between them."""

    point: int
    segment: int
    block: int
    offset: int | None
    at_s: float
    cue: Cue


def numbered_cues(script: Script, timing: ScriptTiming) -> tuple[NumberedCue, ...]:
    """All cues of the script, those at one point together, in the order of the text."""
    groups: list[list[_Placed]] = []
    point = 0
    for s, (segment, timed) in enumerate(zip(script.segments, timing.segments, strict=True)):
        placed, point = _of_segment(s, segment, timed, point + 1)
        for cue in placed:
            if groups and groups[-1][0].point == cue.point:
                groups[-1].append(cue)
            else:
                groups.append([cue])
    labels = cue_labels(script, [group[0].cue for group in groups]).labels
    return tuple(
        NumberedCue(i, g[0].segment, g[0].block, g[0].offset, g[0].at_s, tuple(p.cue for p in g), label)
        for i, (g, label) in enumerate(zip(groups, labels, strict=True), 1)
    )


def _of_segment(s: int, segment: Segment, timed: SegmentTiming, point: int) -> tuple[list[_Placed], int]:
    times = {block.block: block for block in timed.blocks}
    found: list[_Placed] = []
    now = timed.start_s
    for b, block in enumerate(segment.blocks):
        known = times.get(b)
        if isinstance(block, CueLine):
            found.append(_Placed(point, s, b, None, known.start_s if known else now, block.cue))
        elif isinstance(block, Paragraph):
            said = 0
            for inline in block.cues:
                point += said < inline.offset
                said = inline.offset
                found.append(_Placed(point, s, b, said, _offset_s(known, said, now), inline.cue))
            point += said < len(block.text)
        elif isinstance(block, Note):
            point += 1
        now = known.end_s if known else now
    return found, point


def _offset_s(timed: BlockTiming | None, offset: int, default_s: float) -> float:
    """When the text's `offset` is reached: a pause that begins there, else the next word, else the block's end."""
    if timed is None:
        return default_s
    fixed = (p.start_s for p in timed.pauses if p.offset == offset and p.kind in FIXED_PAUSES)
    words = (w.start_s for w in timed.words if w.span.start >= offset)
    return next(fixed, next(words, timed.end_s))
