"""Puts the versions of one show side by side."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from promptprep.model.finding import Level
from promptprep.model.script import Script
from promptprep.model.timing import ScriptTiming
from promptprep.model.versions import Bead, ReaderFit, SegmentPair, Version, VersionFinding, VersionSegment
from promptprep.units import clock_text
from promptprep.versions.findings import Side, pair_findings
from promptprep.versions.fit import change_of, probably_over, segment_fit
from promptprep.versions.marks import Stale, stale_segments
from promptprep.versions.names import names_of, people_of
from promptprep.versions.segments import length_ratio, paired_segments, paragraph_beads
from promptprep.versions.sentences import unshared
from promptprep.versions.sounds import plain_latin
from promptprep.versions.words import shown

MOST_SHOWN = 4  # changes that a message names


@dataclass(frozen=True, eq=False)
class Timed:
    """A script with its time, its language's side, and how the studio's readers would take it."""

    side: Side
    timing: ScriptTiming
    readers: tuple[ReaderFit, ...] = ()
    direction: str = "ltr"

    @property
    def script(self) -> Script:
        return self.side.script


def source_version(one: Timed) -> Version:
    """The source as a version of itself."""
    slot = one.timing.slot_s
    segments = tuple(segment_fit(t, t.slot_s, i) for i, t in enumerate(one.timing.segments))
    made = Version(
        one.script, one.timing, slot, change_of(one.timing.timing, slot), segments, one.readers,
        direction=one.direction,
    )  # fmt: skip
    return replace(made, findings=(*_slot_findings(made), *_id_findings(one)))


def compared(source: Timed, other: Timed, kept: Mapping[str, str] | None = None) -> Version:
    """A version beside its source: paired, timed against the shared slots, its differences found.

    `kept` are sentences of earlier states of the source by their digests.
    """
    values, others = _values(source), _values(other)
    named = _shared_names(source.side, other.side)
    own, theirs = (
        [names.union(*inside) for names, inside in zip(*side, strict=True)]
        for side in zip(named, (values, others), strict=True)
    )
    pairs = tuple(paired_segments(source.script, other.script, own, theirs))
    ratio = length_ratio(source.script, other.script)
    beads = {
        p.source: tuple(
            paragraph_beads(
                source.script.segments[p.source], other.script.segments[p.target], ratio,
                unshared(values[p.source], others[p.target]),
            )
        )
        for p in pairs
        if p.source is not None and p.target is not None
    }  # fmt: skip
    shared = {p.target: p.source for p in pairs if p.target is not None}
    slot = source.timing.slot_s if source.timing.slot_s is not None else other.timing.slot_s
    made = Version(
        script=other.script,
        timing=other.timing,
        slot_s=slot,
        change=change_of(other.timing.timing, slot),
        segments=_segments(source, other, shared),
        readers=other.readers,
        pairs=pairs,
        beads=beads,
        direction=other.direction,
    )
    return replace(made, findings=tuple(_findings(source, other, made, pairs, beads, kept)))


def _values(one: Timed) -> list[list[frozenset[str]]]:
    """The values written in figures in each paragraph of each segment."""
    return [
        [frozenset(k for f in one.side.figures(p) if f.firm for k in f.keys) for p in s.paragraphs]
        for s in one.script.segments
    ]


def _shared_names(source: Side, target: Side) -> tuple[list[frozenset[str]], list[frozenset[str]]]:
    """The names in each segment of the source and of the target that both scripts write alike, folded."""
    ours, theirs = [], []
    for segment in source.script.segments:
        people, engines = people_of(segment), source.engines
        found = (n for p in segment.paragraphs for n in names_of(p.text, source.data, engines.frequency, people))
        ours.append(frozenset(plain_latin(name.text) for name in found))
    for segment in target.script.segments:
        words = target.listener.words("\n".join(p.text for p in segment.paragraphs))
        theirs.append(frozenset(map(plain_latin, words)))
    both = frozenset().union(*ours) & frozenset().union(*theirs)
    return [names & both for names in ours], [names & both for names in theirs]


def _segments(source: Timed, other: Timed, shared: Mapping[int, int | None]) -> tuple[VersionSegment, ...]:
    found = []
    for j, timing in enumerate(other.timing.segments):
        i = shared.get(j)
        slot = source.timing.segments[i].slot_s if i is not None else None
        found.append(segment_fit(timing, slot, i))
    return tuple(found)


def _findings(
    source: Timed,
    other: Timed,
    made: Version,
    pairs: Sequence[SegmentPair],
    beads: Mapping[int, Sequence[Bead]],
    kept: Mapping[str, str] | None,
) -> list[VersionFinding]:
    return [
        *_slot_findings(made),
        *_id_findings(other),
        *_stale_findings(source, other, kept),
        *pair_findings(source.side, other.side, pairs, beads),
    ]


def _slot_findings(made: Version) -> list[VersionFinding]:
    """The whole against its slot; each segment that will surely run over."""
    tag, found = made.language, []
    kind = made.timing.timing.verdict(made.slot_s)
    if kind in ("over", "tight") and made.change is not None and made.slot_s is not None:
        likely = made.timing.timing.mean_s > made.slot_s
        probable = probably_over(made.timing.timing, made.slot_s)
        level: Level = "fix" if kind == "over" else "look" if likely else "note"
        word = "runs" if kind == "over" else "will probably run" if probable else "may run"
        expected = clock_text(made.timing.timing.mean_s)
        message = f"this version {word} over its slot of {clock_text(made.slot_s)}: expected {expected}"
        found.append(VersionFinding("version-over", level, tag, "", 0, 0, message, advice(made)))
    for index, segment in enumerate(made.segments):
        if segment.timing.verdict(segment.slot_s) == "over" and segment.change is not None:
            span = made.script.segments[index].heading_span or made.script.segments[index].span
            change, slot = segment.change, clock_text(segment.slot_s or 0)
            found.append(VersionFinding(
                "segment-over", "look", tag, segment.id, span.start, span.end,
                f"{segment.title or segment.id} runs {change.seconds:.0f} s over its slot of {slot}",
                f"cut about {change.words} words",
            ))  # fmt: skip
    return found


def advice(made: Version) -> str:
    """What would make a version fit, in words."""
    change = made.change
    if change is None or change.seconds <= 0:
        spare = -change.seconds if change else 0.0
        return f"{spare:.0f} s to spare on average" if change else ""
    faster = f", or read {change.faster_percent:.0f} % faster" if change.faster_percent is not None else ""
    return f"cut about {change.words} words ({change.seconds:.0f} s){faster}"


def _id_findings(one: Timed) -> list[VersionFinding]:
    """What the parser noticed about ids: segments pair by them."""
    return [
        VersionFinding(f.name, "fix", one.side.data.tag, "", f.span.start, f.span.end, f.message, f.hint)
        for f in one.script.faults
        if "id" in f.name.split("-")
    ]


def _stale_findings(source: Timed, other: Timed, kept: Mapping[str, str] | None) -> list[VersionFinding]:
    def sentences(text: str) -> Sequence[int]:
        return source.side.engines.breaks.sentences(text, source.script.language)

    where = {s.id: s for s in other.script.segments}
    found = []
    for stale in stale_segments(other.script.front.get("made_from"), source.script, sentences, kept):
        segment = where.get(stale.segment)
        span = (segment.heading_span or segment.span) if segment else None
        start, end = span if span is not None else (0, 0)
        found.append(VersionFinding(
            "segment-stale", "look", other.side.data.tag, stale.segment, start, end,
            _stale_message(stale), "look at it again, then mark the version with --mark", stale.changes,
        ))  # fmt: skip
    return found


def _stale_message(stale: Stale) -> str:
    if stale.new:
        return f"the source's segment {stale.segment!r} is new since this version was marked"
    parts = [shown(change) for change in stale.changes[:MOST_SHOWN]]
    if len(stale.changes) > MOST_SHOWN:
        parts.append(f"and {len(stale.changes) - MOST_SHOWN} more")
    if not stale.changes and stale.unknown:
        parts.append(f"{stale.unknown} sentences are gone")
    return "the source has changed since this version was marked: " + "; ".join(parts)
