"""The report: what a person looks at first after `prepare`. One HTML file that needs no script and no network."""

from __future__ import annotations

import json
from bisect import bisect_right
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from jinja2 import Environment
from markupsafe import Markup

from promptprep.model.finding import LEVELS, Finding
from promptprep.model.prepared import Prepared, PreparedScript
from promptprep.model.script import CueLine, Note, Paragraph, Segment
from promptprep.model.sightline import Sightline, Verdict, quantity_name
from promptprep.model.timing import FIXED_PAUSES, BlockTiming, SegmentTiming
from promptprep.rendering.environment import render
from promptprep.rendering.findings import finding_objects, why
from promptprep.rendering.first import first_things
from promptprep.rendering.json_form import FORMAT
from promptprep.rendering.page_fonts import Faces, fonts_beyond_latin
from promptprep.rendering.sightline_json import sightline_object
from promptprep.rendering.sightline_rows import figure_rows
from promptprep.rendering.time_json import script_object
from promptprep.rendering.verdicts import slot_verdict
from promptprep.sightline.cautions import cautions
from promptprep.units import clock_text

RANK: dict[str, int] = {level: number for number, level in enumerate(LEVELS)}
OPEN_AT_MOST = 3  # with more scripts than this each is folded to one line


@dataclass(slots=True)
class Row:
    """One row of the copy as shown: a heading, a cue, a note or a planned line, with what was found in it."""

    kind: str
    text: str
    at: str = ""
    start: int = 0
    stressed: Markup | None = None
    hard: float | None = None
    findings: list[dict[str, Any]] = field(default_factory=list)


def report_html(prepared: Prepared, env: Environment, draw: Callable[[Sightline], Sequence[str]], faces: Faces) -> str:
    """The page. `draw` gives the drawings of one rig as SVG texts; the reader of a report may lack its fonts."""
    scripts = [_script_view(one) for one in prepared.scripts]
    rigs = [_rig_view(one, draw) for one in prepared.sightlines]
    styles, families = fonts_beyond_latin(_shown(prepared), faces, "report")
    return render(
        env,
        "report/report.html",
        studio=prepared.studio,
        scripts=scripts,
        folded=len(scripts) > OPEN_AT_MOST,
        rigs=rigs,
        first=first_things(prepared),
        faces=Markup(styles),
        families=families,
        name=quantity_name,
        all_cautions=list(dict.fromkeys(text for rig in rigs for text in rig["cautions"])),
    )


def _shown(prepared: Prepared) -> dict[str, str]:
    """What the report shows in each language: copy, and what was found in it."""
    texts: dict[str, str] = {}
    for one in prepared.scripts:
        told = "".join(f.message + f.hint for f in one.findings)
        texts[one.script.language] = texts.get(one.script.language, "") + one.script.source + one.script.title + told
    return texts


def report_json(prepared: Prepared) -> str:
    """The same facts for programs."""
    values = {
        "promptprep": FORMAT,
        "scripts": [
            {
                **script_object(one.script, one.timing),
                "digest": one.digest,
                "rig": one.rig.id,
                "lines": len(one.broken.lines),
            }
            for one in prepared.scripts
        ],
        "findings": [row for one in prepared.scripts for row in finding_objects(one)],
        "rigs": [sightline_object(one) for one in prepared.sightlines],
    }
    return json.dumps(values, ensure_ascii=False, indent=1) + "\n"


# -- one script ---------------------------------------------------------------------------------------------


def _script_view(one: PreparedScript) -> dict[str, Any]:
    timing = one.timing.timing
    scale = max(timing.high_s, one.timing.slot_s or 0.0) * 1.02 or 1.0
    worst = min(one.findings, key=lambda f: (RANK[f.level], f.start), default=None)
    return {
        "one": one,
        "script": one.script,
        "mean": clock_text(timing.mean_s),
        "low": clock_text(timing.low_s),
        "high": clock_text(timing.high_s),
        "verdict": slot_verdict(one.timing),
        "strip": _strip(one, scale),
        "ticks": _ticks(scale),
        "segments": [_segment_row(s) for s in one.timing.segments],
        "rows": _rows(one),
        "counts": {level: sum(f.level == level for f in one.findings) for level in LEVELS},
        "worst": worst,
        "pace": one.timing.pace.source,
    }


def _strip(one: PreparedScript, scale: float) -> dict[str, Any]:
    def percent(seconds: float) -> float:
        return round(100 * seconds / scale, 3)

    timing = one.timing.timing
    segments = []
    for number, s in enumerate(one.timing.segments):
        fixed = [
            {
                "kind": "pause" if pause.kind == "cue" else pause.kind,
                "left": percent(pause.start_s),
                "width": percent(pause.end_s - pause.start_s),
                "text": clock_text(pause.end_s - pause.start_s),
            }
            for block in s.blocks
            for pause in block.pauses
            if pause.kind in FIXED_PAUSES
        ]
        segments.append(
            {
                "title": s.title or s.id,
                "left": percent(s.start_s),
                "width": percent(s.timing.mean_s),
                "text": clock_text(s.timing.mean_s),
                "odd": number % 2,
                "fixed": fixed,
            }
        )
    slot = one.timing.slot_s
    return {
        "segments": segments,
        "low": percent(timing.low_s),
        "mean": percent(timing.mean_s),
        "high": percent(timing.high_s),
        "slot": None if slot is None else percent(slot),
        "slot_text": "" if slot is None else clock_text(slot),
        "hard": _hard(one, percent),
    }


def _hard(one: PreparedScript, percent: Callable[[float], float]) -> list[dict[str, Any]]:
    bars = []
    for s, segment in enumerate(one.timing.segments):
        for block in segment.blocks:
            figure = one.difficulty.get((s, block.block))
            if figure is not None and block.words:
                start, end = block.words[0].start_s, block.words[-1].end_s
                bars.append({"left": percent(start), "width": percent(end - start), "height": round(figure, 1)})
    return bars


def _ticks(scale: float) -> list[dict[str, Any]]:
    step = next((s for s in (5, 10, 15, 30, 60, 120, 300, 600, 1800) if scale / s <= 12), 3600)
    return [{"left": round(100 * t / scale, 3), "text": clock_text(t)} for t in range(0, int(scale) + 1, step)]


def _segment_row(s: SegmentTiming) -> dict[str, str]:
    return {
        "title": s.title or s.id,
        "start": clock_text(s.start_s),
        "mean": clock_text(s.timing.mean_s),
        "range": f"{clock_text(s.timing.low_s)} – {clock_text(s.timing.high_s)}",
        "fixed": clock_text(s.timing.fixed_s) if s.timing.fixed_s else "",
        "slot": "" if s.slot_s is None else clock_text(s.slot_s),
        "over": "" if s.slot_s is None else _signed(s.timing.mean_s - s.slot_s),
        "words": str(s.timing.words),
    }


def _signed(seconds: float) -> str:
    return ("+" if seconds >= 0.5 else "−" if seconds <= -0.5 else "±") + clock_text(abs(seconds))


def _rows(one: PreparedScript) -> list[Row]:
    """The copy as planned lines among its headings, cues and notes; each finding beside the row it is in."""
    lines: dict[tuple[int, int], list[Row]] = {}
    for line in one.broken.lines:
        block = one.script.segments[line.segment].blocks[line.block]
        start = block.source_span(line.span).start if isinstance(block, Paragraph) else block.span.start
        marked = Markup("").join(Markup("<em>{}</em>").format(r.text) if r.stress else r.text for r in line.runs)
        row = Row("line", line.text, clock_text(line.at_s), start, marked)
        lines.setdefault((line.segment, line.block), []).append(row)
    rows: list[Row] = []
    for number, segment in enumerate(one.script.segments):
        rows.extend(_segment_rows(number, segment, one, lines))
    rows.sort(key=lambda row: row.start)
    _place_findings(rows, one.findings)
    return rows


def _segment_rows(
    number: int, segment: Segment, one: PreparedScript, lines: Mapping[tuple[int, int], Sequence[Row]]
) -> Iterator[Row]:
    start = one.timing.segments[number].start_s
    if segment.heading_span:
        yield Row("heading", segment.title, clock_text(start), segment.heading_span.start)
    times: dict[int, BlockTiming] = {b.block: b for b in one.timing.segments[number].blocks}
    for index, block in enumerate(segment.blocks):
        at = clock_text(times[index].start_s) if index in times else ""
        if isinstance(block, CueLine):
            yield Row("cue", _cue_text(block.cue.kind, block.cue.duration_s, block.cue.text), at, block.span.start)
        elif isinstance(block, Note):
            yield Row("note", block.text, "", block.span.start)
        elif isinstance(block, Paragraph):
            own = lines.get((number, index), [])
            if own:
                own[-1].hard = one.difficulty.get((number, index))
            yield from own
            for inline in block.cues:
                cue = inline.cue
                yield Row("cue", _cue_text(cue.kind, cue.duration_s, cue.text), "", cue.span.start)


def _cue_text(kind: str, duration_s: float | None, text: str) -> str:
    time = f" {clock_text(duration_s)}" if duration_s is not None else ""
    return f"{kind}{time}: {text}" if text else f"{kind}{time}"


def _place_findings(rows: list[Row], findings: Sequence[Finding]) -> None:
    if not rows:
        return
    starts = [row.start for row in rows]
    for finding in sorted(findings, key=lambda f: (RANK[f.level], f.start)):
        row = rows[max(bisect_right(starts, finding.start) - 1, 0)]
        shown = {"level": finding.level, "name": finding.name, "message": finding.message, "why": why(finding.name)}
        row.findings.append({**shown, "hint": finding.hint.rstrip("."), "instead": finding.instead})


# -- one rig ------------------------------------------------------------------------------------------------


def _rig_view(sight: Sightline, draw: Callable[[Sightline], Sequence[str]]) -> dict[str, Any]:
    return {
        "sight": sight,
        "rig": sight.rig,
        "drawings": [Markup(svg) for svg in draw(sight)],
        "figures": figure_rows(sight),
        "worst": _worst_verdicts(sight),
        "cautions": cautions(sight.rig),
    }


def _worst_verdicts(sight: Sightline) -> list[Verdict]:
    """One verdict a quantity: that of the limit which it keeps worst."""
    found: dict[str, Verdict] = {}
    for verdict in sight.verdicts:
        known = found.get(verdict.quantity)
        if known is None or RANK.get(verdict.level, len(RANK)) < RANK.get(known.level, len(RANK)):
            found[verdict.quantity] = verdict
    return list(found.values())
