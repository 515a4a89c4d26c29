"""The order of the work for a session: scripts timed one by one, laid end to end, checked and mended together."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from itertools import pairwise

from promptprep.breaking.script import direction_of
from promptprep.model.ports import Tools
from promptprep.model.rig import Studio
from promptprep.model.script import Script
from promptprep.model.session import Item, RunningOrder, Session, SessionFinding, SessionLimits, TimedItem, TimedSegment
from promptprep.model.timing import Timing
from promptprep.pipeline.scripts import reader_of, rig_of, time_one, wording_digest
from promptprep.rendering.screen import Place
from promptprep.session.cue_checks import CueCheck
from promptprep.session.cue_labels import numbered_source
from promptprep.session.cue_points import numbered_cues
from promptprep.session.cue_sheet import cue_sheet
from promptprep.session.cue_words import CueWords, Words
from promptprep.session.feeds import returns_of
from promptprep.session.findings import session_findings
from promptprep.session.plan import needed_ms, planned_session
from promptprep.session.repair import repairs
from promptprep.session.rests import rests_of
from promptprep.session.spare import spare_sentences


@dataclass(frozen=True, slots=True)
class Sitting:
    """What planning a session asks for beside its running order: its scripts by item code, and figures and words.

    `faults` says by item code why a script could not be read.
    """

    scripts: Mapping[str, Script]
    faults: Mapping[str, str]
    limits: SessionLimits
    words: Words


def timed_script(item: Item, script: Script, studio: Studio, tools: Tools) -> TimedItem:
    """A script at its place in the running order."""
    timing = time_one(script, studio, tools)
    reader, rig = reader_of(script, studio), rig_of(script, studio)
    slot_ms = item.slot_ms if item.slot_ms is not None or timing.slot_s is None else round(timing.slot_s * 1000)
    points = numbered_cues(script, timing)
    starts = [round(s.start_s * 1000) for s in timing.segments] + [round(timing.timing.mean_s * 1000)]
    return TimedItem(
        item=replace(item, slot_ms=slot_ms),
        timing=timing.timing,
        title=item.title or script.title or script.name,
        language=script.language,
        reader=script.reader or "",
        reader_name=reader.name if reader else script.reader,
        rig=rig.title or rig.id,
        segments=tuple(
            TimedSegment(s.id, s.title, start, after - start, None if s.slot_s is None else round(s.slot_s * 1000))
            for s, (start, after) in zip(timing.segments, pairwise(starts), strict=True)
        ),
        cues=cue_sheet(script, points),
        spare=spare_sentences(script, timing, tools.engines.breaks),
        direction=direction_of(script.source, tools.language(script.language)),
        points=points,
        script=script,
        plan=timing,
        digest=wording_digest(script),
    )


def timed_items(order: RunningOrder, sitting: Sitting, studio: Studio, tools: Tools) -> list[TimedItem]:
    """Every item with its time; a script that could not be read takes its slot's."""
    found = []
    for item in order.items:
        if item.code in sitting.scripts:
            found.append(timed_script(item, sitting.scripts[item.code], studio, tools))
            continue
        fault = sitting.faults.get(item.code)
        length_s = (item.runs_ms if item.kind != "script" else item.slot_ms or 0) / 1000
        timing = Timing(length_s, own_sd_s=item.runs_sd_ms / 1000, fixed_s=0.0 if item.runs_sd_ms else length_s)
        found.append(TimedItem(item, timing, title=item.title or item.file or item.kind, fault=fault))
    return found


def session_of(
    order: RunningOrder, sitting: Sitting, studio: Studio, tools: Tools, now: datetime | None = None,
    first: str | None = None,
) -> Session:  # fmt: skip
    """The planned session with its findings, repairs, rests and returns."""
    timed = timed_items(order, sitting, studio, tools)
    codes = [item.code for item in order.items]
    session = planned_session(order, timed, now, codes.index(first) if first in codes else None)
    words = {row.item.code: CueWords(sitting.words, row.timed.language) for row in session.items}
    cue_faults = _cue_findings(session, sitting, studio, words)
    return replace(
        session,
        findings=(*session_findings(session, sitting.limits), *cue_faults),
        repairs=repairs(session, sitting.limits, needed_ms(session, sitting.limits.chance_wanted.value)),
        rests=rests_of(session.items, sitting.limits),
        returns=tuple(found for row in session.items for found in returns_of(row, words[row.item.code])),
    )


def places_of(session: Session) -> dict[str, Place]:
    """Where each script of a session first stands in it, by the script's digest."""
    rows = [row for row in session.items if row.timed.script is not None]
    places: dict[str, Place] = {}
    for number, row in enumerate(rows, 1):
        until_s = None if row.back_ms is None else (row.back_ms + row.timed.runs_ms) / 1000
        place = Place(session.order.title, number, len(rows), row.start_ms / 1000, until_s)
        places.setdefault(row.timed.digest, place)
    return places


def _cue_findings(
    session: Session, sitting: Sitting, studio: Studio, words: Mapping[str, CueWords]
) -> list[SessionFinding]:
    found: list[SessionFinding] = []
    for row in session.items:
        script = sitting.scripts.get(row.item.code)
        if script is not None:
            found += CueCheck(row.item, script, row.timed.points, words[row.item.code], studio.assets).findings()
    return found


def numbered_script(script: Script, tools: Tools) -> str:
    """The script's source with its cues' numbers kept in remarks."""
    points = numbered_cues(script, time_one(script, Studio(), tools))
    return numbered_source(script, [point.actions[0] for point in points])
