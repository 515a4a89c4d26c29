"""The versions of a show as one object; the keys are a contract."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from promptprep.model.versions import Change, Unread, Version, VersionFinding, Versions
from promptprep.rendering.findings import excerpt
from promptprep.spans import LineIndex


def versions_object(versions: Versions) -> dict[str, Any]:
    """`versions` with their times, `pairs` of segments with their passages, `findings` with their places."""
    return {
        "versions": [version_object(v) for v in versions.all],
        "pairs": [p for v in versions.others for p in _pair_objects(versions.source, v)],
        "expected": [
            {"language": e.language, "mean_s": round(e.mean_s, 1), "low_s": round(e.low_s, 1),
             "high_s": round(e.high_s, 1), "slot_s": e.slot_s, "basis": e.basis}
            for e in versions.expected
        ],
        "findings": [*map(unread_object, versions.unread), *(f for v in versions.all for f in finding_objects(v))],
    }  # fmt: skip


def version_object(version: Version) -> dict[str, Any]:
    whole = version.timing.timing
    return {
        "file": version.script.file,
        "language": version.language,
        "reader": version.script.reader,
        "mean_s": round(whole.mean_s, 2),
        "low_s": round(whole.low_s, 2),
        "high_s": round(whole.high_s, 2),
        "slot_s": version.slot_s,
        "verdict": whole.verdict(version.slot_s),
        **_change_object(version.change),
        "segments": [
            {
                "id": s.id, "title": s.title, "mean_s": round(s.timing.mean_s, 2), "low_s": round(s.timing.low_s, 2),
                "high_s": round(s.timing.high_s, 2), "slot_s": s.slot_s, "verdict": s.timing.verdict(s.slot_s),
                **_change_object(s.change),
            }
            for s in version.segments
        ],
        "readers": [
            {"reader": r.reader, "mean_s": round(r.mean_s, 2), "low_s": round(r.low_s, 2),
             "high_s": round(r.high_s, 2), "fits": r.fits, "own_pace": r.own}
            for r in version.readers
        ],
    }  # fmt: skip


def _change_object(change: Change | None) -> dict[str, Any]:
    """Over the slot: positive seconds and words to cut; under it: negative ones, room to fill."""
    if change is None:
        return {"over_s": None, "cut_words": None, "faster_percent": None}
    percent = change.faster_percent
    return {
        "over_s": round(change.seconds, 2),
        "cut_words": change.words,
        "faster_percent": None if percent is None else round(percent, 1),
    }


def _pair_objects(source: Version, version: Version) -> list[dict[str, Any]]:
    ours, theirs = source.script.segments, version.script.segments
    return [
        {
            "language": version.language,
            "source": None if p.source is None else ours[p.source].id,
            "target": None if p.target is None else theirs[p.target].id,
            "by": p.by,
            "passages": [
                {"source": list(b.source), "target": list(b.target)}
                for b in (version.beads or {}).get(-1 if p.source is None else p.source, ())
            ],
        }
        for p in version.pairs
    ]


def unread_object(unread: Unread) -> dict[str, Any]:
    """A version that cannot be read, as a finding."""
    return {
        "file": unread.file,
        "language": None,
        "segment": "",
        "line": unread.line,
        "column": unread.column,
        "name": unread.code,
        "level": "fix",
        "excerpt": "",
        "message": f"this version cannot be read: {unread.message}",
        "hint": unread.hint,
    }


def finding_objects(version: Version) -> list[dict[str, Any]]:
    index = LineIndex(version.script.source)
    return [finding_object(f, version, index) for f in version.findings]


def finding_object(finding: VersionFinding, version: Version, index: LineIndex) -> dict[str, Any]:
    line, column = index.place(finding.start)
    return {
        "file": version.script.file,
        "language": finding.language,
        "segment": finding.segment,
        "line": line,
        "column": column,
        "name": finding.name,
        "level": finding.level,
        "excerpt": excerpt(version.script.source, finding.start, finding.end),
        "message": finding.message,
        "hint": finding.hint,
        **({"changes": [asdict(change) for change in finding.changes]} if finding.changes else {}),
    }
