"""The plan as plain values for the page's own code."""

from __future__ import annotations

from typing import Any

from promptprep.model.prepared import PreparedScript
from promptprep.model.script import Segment, copy_of
from promptprep.model.session import NumberedCue
from promptprep.model.timing import FIXED_PAUSES, ScriptTiming, SegmentTiming
from promptprep.rendering.json_form import FORMAT
from promptprep.rendering.screen_plan import Frame, ScreenPlan, Wait, page_shift_px


def plan_object(prepared: PreparedScript, plan: ScreenPlan) -> dict[str, Any]:
    """Keys with their units; times in seconds from the start of the script, heights in pixels of the strip."""
    script, timing = prepared.script, prepared.timing
    return {
        "promptprep": FORMAT,
        "script": script.name,
        "title": script.title or script.name,
        "language": script.language,
        "direction": prepared.broken.direction,
        "reader": prepared.reader.id if prepared.reader else script.reader,
        "reader_name": prepared.reader.name if prepared.reader else script.reader,
        "digest": prepared.digest,
        "rig": prepared.rig.id,
        "flip": prepared.rig.flip,
        "style": _style(prepared),
        "ink": prepared.rig.ink,
        "ground": prepared.rig.ground,
        "frame": _frame(plan.frame),
        "knots": [[_s(k.at_s), round(k.y_px, 2), round(k.slope, 4)] for k in plan.travel.knots],
        "lines": [[_s(p.line.at_s), _s(p.line.end_s), p.line.segment, p.top_px] for p in plan.lines],
        "screenfuls": _screenfuls(plan),
        "segments": [
            _segment(segment, timed, rest_s)
            for segment, timed, rest_s in zip(script.segments, timing.segments, rests_s(timing), strict=True)
        ],
        "waits": [_wait(wait) for wait in plan.waits],
        "cues": [_cue(cue) for cue in plan.cues],
        "end_s": _s(plan.end_s),
        "low_s": _s(timing.timing.low_s),
        "high_s": _s(timing.timing.high_s),
        "slot_s": timing.slot_s,
    }


def rests_s(timing: ScriptTiming) -> list[float]:
    """For each segment by how many seconds the silence after its last word is longer than at the script's own end.

    A reading of the segment's text alone ends as a script does: who learns from a take leaves the rest out.
    """
    tails = [_tail_s(segment) for segment in timing.segments]
    return [max(tail - tails[-1], 0.0) for tail in tails]


def _tail_s(segment: SegmentTiming) -> float:
    last = max((block.words[-1].end_s for block in segment.blocks if block.words), default=None)
    if last is None:
        return 0.0
    after = [p for block in segment.blocks for p in block.pauses if p.start_s >= last and p.kind not in FIXED_PAUSES]
    return sum(pause.end_s - pause.start_s for pause in after)


def _s(seconds: float) -> float:
    return round(seconds, 3)


def _style(prepared: PreparedScript) -> str:
    """Pages or flowing text: the reader's wish where it says either (it may name a way of speaking), else the rig's."""
    wish = prepared.reader.style if prepared.reader else None
    style = wish if wish in ("pages", "flowing") else prepared.rig.style
    return "pages" if style == "pages" else "flowing"


def _frame(frame: Frame) -> dict[str, float]:
    return {
        "width_px": frame.width_px,
        "height_px": frame.height_px,
        "left_px": frame.left_px,
        "column_px": frame.column_px,
        "line_px": frame.line_px,
        "lens_y_px": frame.lens_y_px,
    }


def _screenfuls(plan: ScreenPlan) -> list[list[float]]:
    """[first line, last line, shown from, what to add to heights of the strip]."""
    tops = [placed.top_px for placed in plan.lines]
    return [[p.first, p.last, _s(p.at_s), page_shift_px(plan.frame, p, tops)] for p in plan.screenfuls]


def _segment(segment: Segment, timed: SegmentTiming, rest_s: float) -> dict[str, Any]:
    text, said = copy_of([segment])
    return {
        "id": segment.id,
        "title": segment.title,
        "at_s": _s(timed.start_s),
        "mean_s": _s(timed.timing.mean_s),
        "fixed_s": _s(timed.timing.fixed_s),
        "rest_s": _s(rest_s),
        "common_sd_s": round(timed.timing.common_sd_s, 4),
        "own_sd_s": round(timed.timing.own_sd_s, 4),
        "slot_s": timed.slot_s,
        "text": text,
        "said": [[place.start, place.end, say] for place, say in said],
    }


def _wait(wait: Wait) -> dict[str, Any]:
    return {
        "kind": wait.kind,
        "at_s": _s(wait.at_s),
        "end_s": _s(wait.end_s),
        "text": wait.text,
        "names": list(wait.names),
        "sayings": [list(pair) for pair in wait.sayings],
        "notes": list(wait.notes),
    }


def _cue(cue: NumberedCue) -> dict[str, Any]:
    actions = [[action.kind, action.text, action.duration_s] for action in cue.actions]
    return {"number": cue.label or str(cue.number), "at_s": _s(cue.at_s), "actions": actions}
