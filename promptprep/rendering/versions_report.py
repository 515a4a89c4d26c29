"""The versions of a show drawn side by side, as one page."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any

from jinja2 import Environment
from markupsafe import Markup, escape

from promptprep.model.script import Segment
from promptprep.model.versions import SegmentPair, Version, Versions
from promptprep.rendering.environment import render
from promptprep.rendering.page_fonts import Faces, fonts_beyond_latin
from promptprep.rendering.versions_first import first_lines
from promptprep.rendering.versions_json import finding_objects
from promptprep.rendering.versions_rows import change_text, readers_text
from promptprep.units import clock_text

ABOUT_WORDS = ("value-differs", "unit-differs", "value-missing", "name-missing")


def versions_html(versions: Versions, env: Environment, faces: Faces) -> str:
    """The page: all versions against the slot, then each beside its source with what was found."""
    scale = max([v.timing.timing.high_s for v in versions.all] + [v.slot_s or 0.0 for v in versions.all]) * 1.02 or 1.0
    slot = versions.source.slot_s
    texts = {v.language: v.script.source + v.script.title for v in versions.all}
    rules, families = fonts_beyond_latin(texts, faces, "side")
    return render(
        env, "versions/report.html",
        source=versions.source,
        views=[_view(versions.source, v, scale) for v in versions.all],
        slot=None if slot is None else clock_text(slot),
        first=first_lines(versions),
        expected=[
            {"language": e.language, "runs": clock_text(e.mean_s), "basis": e.basis,
             "range": f"{clock_text(e.low_s)} to {clock_text(e.high_s)}"}
            for e in versions.expected
        ],
        faces=Markup(rules),
        families=families,
    )  # fmt: skip


def _view(source: Version, version: Version, scale: float) -> dict[str, Any]:
    whole = version.timing.timing
    kind = whole.verdict(version.slot_s)
    objects = finding_objects(version)
    known = {p.target for p in version.pairs}
    return {
        "language": version.language,
        "title": version.script.title,
        "file": version.script.file or version.script.name,
        "direction": version.direction,
        "runs": clock_text(whole.mean_s),
        "range": f"{clock_text(whole.low_s)} to {clock_text(whole.high_s)}",
        "verdict": kind,
        "css": kind.replace(" ", "-"),
        "mean": round(100 * whole.mean_s / scale, 2),
        "low": round(100 * whole.low_s / scale, 2),
        "width": round(100 * (whole.high_s - whole.low_s) / scale, 2),
        "slot": None if version.slot_s is None else round(100 * version.slot_s / scale, 2),
        "change": change_text(version.change),
        "readers": readers_text(version),
        "fixes": sum(f.level == "fix" for f in version.findings),
        "open": any(f.level == "fix" for f in version.findings),
        "general": [o for o in objects if not o["segment"] or not known],
        "segments": [_segment_view(source, version, pair, objects) for pair in version.pairs],
    }


def _segment_view(
    source: Version, version: Version, pair: SegmentPair, objects: Sequence[dict[str, Any]]
) -> dict[str, Any]:
    ours = None if pair.source is None else source.script.segments[pair.source]
    theirs = None if pair.target is None else version.script.segments[pair.target]
    name = theirs.id if theirs else ours.id if ours else ""
    return {
        "ours": "" if ours is None else ours.title or ours.id,
        "theirs": "" if theirs is None else theirs.title or theirs.id,
        "times": _times(source, version, pair),
        "findings": [o for o in objects if o["segment"] == name],
        "passages": list(_passages(ours, theirs, version, pair)),
    }


def _times(source: Version, version: Version, pair: SegmentPair) -> str:
    parts = []
    for one, index in ((source, pair.source), (version, pair.target)):
        if index is not None:
            timing = one.timing.segments[index].timing
            span = f"{clock_text(timing.low_s)} to {clock_text(timing.high_s)}"
            parts.append(f"{one.language} {clock_text(timing.mean_s)} ({span})")
    slot = version.segments[pair.target].slot_s if pair.target is not None else None
    if slot is not None and pair.target is not None:
        parts.append(f"slot {clock_text(slot)}: {change_text(version.segments[pair.target].change)}")
    return " · ".join(parts)


def _passages(
    ours: Segment | None, theirs: Segment | None, version: Version, pair: SegmentPair
) -> Iterator[dict[str, Markup]]:
    if ours is None or theirs is None:
        for one, side in ((ours, "ours"), (theirs, "theirs")):
            for p in one.paragraphs if one else ():
                yield {"ours": Markup(""), "theirs": Markup(""), side: escape(p.text)}
        return
    marks = [(f.start, f.end) for f in version.findings if f.level == "fix" and f.end > f.start]
    abouts = [f.about for f in version.findings if f.segment == theirs.id and f.name in ABOUT_WORDS]
    for bead in (version.beads or {}).get(pair.source if pair.source is not None else -1, ()):
        yield {
            "ours": Markup("<br>").join(_with_words_marked(ours.paragraphs[i].text, abouts) for i in bead.source),
            "theirs": Markup("<br>").join(_marked(theirs, j, marks) for j in bead.target),
        }


def _with_words_marked(text: str, words: Sequence[str]) -> Markup:
    """A text of the source with the figures and names marked that the version lacks."""
    if not words:
        return escape(text)
    known = "|".join(re.escape(word) for word in sorted(set(words), key=lambda w: (-len(w), w)))
    out, at = Markup(""), 0
    for m in re.finditer(rf"(?<![\w.,:])(?:{known})(?![\w]|[.,:]\d)", text):
        out += escape(text[at : m.start()]) + Markup("<mark>%s</mark>") % m[0]
        at = m.end()
    return out + escape(text[at:])


def _marked(segment: Segment, index: int, marks: Sequence[tuple[int, int]]) -> Markup:
    """A paragraph with the places of its findings marked."""
    paragraph = segment.paragraphs[index]
    inside = [(a, b) for a, b in marks if paragraph.span.start < a and b < paragraph.span.end]
    out = Markup("")
    for run in paragraph.runs:
        hit = next((m for m in inside if run.span.start <= m[0] and m[1] <= run.span.end), None)
        if hit is None or len(run.text) != len(run.span):
            out += escape(run.text)
        else:
            a, b = hit[0] - run.span.start, hit[1] - run.span.start
            out += escape(run.text[:a]) + Markup("<mark>%s</mark>") % run.text[a:b] + escape(run.text[b:])
    return out
