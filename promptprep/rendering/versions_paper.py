"""Paper for two languages: source and version side by side, each in its own direction of writing."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any

from jinja2 import Environment
from markupsafe import Markup, escape

from promptprep.model.script import CueLine, Note, Paragraph, Remark, Script, Segment
from promptprep.model.versions import Bead, SegmentPair, Version
from promptprep.rendering.environment import render
from promptprep.rendering.page_fonts import Faces, family_list
from promptprep.rendering.printing import pdf_from_html
from promptprep.units import clock_text

_FIGURE_GAP = re.compile(r"(?<=\d) (?=[^\W\d_]{1,4}\b|[^\w\s]|\d)|(?<=\bh) (?=\d)")
_PAGE_WORDS = "0123456789:page of/–[]"


def bilingual_pdf(source: Version, version: Version, env: Environment, faces: Faces) -> bytes:
    """Source and version side by side, segment by segment, with cues and notes where they fall."""
    sides = (source.script, version.script)
    texts = [s.source + s.title + s.language for s in sides]
    letters = "".join(sorted({c for c in "".join(texts) + _PAGE_WORDS if c.isprintable()}))
    rules = faces(version.language, letters, "copy")
    html = render(
        env, "versions/bilingual.html",
        source=source, version=version, faces=Markup(rules),
        segments=[segment_rows(source, version, pair) for pair in version.pairs],
        families=family_list(rules, "copy"),
    )  # fmt: skip
    return pdf_from_html(html, f"{version.script.name} {source.language} {version.language}")


def segment_rows(source: Version, version: Version, pair: SegmentPair) -> dict[str, Any]:
    """`titles` and `times` of a pair of segments, and its `rows`: `kind` (copy, cue, note), `ours` and `theirs`."""
    sides = ((source, pair.source), (version, pair.target))
    ours, theirs = (None if i is None else v.script.segments[i] for v, i in sides)
    beads = (version.beads or {}).get(-1 if pair.source is None else pair.source, ())
    return {
        "titles": tuple(s.title if s else "–" for s in (ours, theirs)),
        "times": tuple("" if i is None else clock_text(v.timing.segments[i].timing.mean_s) for v, i in sides),
        "rows": list(_rows(_Side(ours, source.script), _Side(theirs, version.script), beads)),
    }


class _Side:
    """One segment, read from top to bottom: `until` gives what stands before a paragraph, each thing once."""

    def __init__(self, segment: Segment | None, script: Script) -> None:
        self.script = script
        self.blocks = [b for b in segment.blocks if not isinstance(b, Remark)] if segment else []
        self.places = [n for n, b in enumerate(self.blocks) if isinstance(b, Paragraph)]
        self.at = 0

    def until(self, paragraph: int) -> dict[str, Markup]:
        """Cues and notes that have not been shown, up to a paragraph; `len(places)` asks for the rest."""
        stop = self.places[paragraph] if paragraph < len(self.places) else len(self.blocks)
        passed = self.blocks[self.at : stop]
        self.at = max(self.at, stop)
        cues = [Markup("<bdi>%s</bdi>") % b.cue.span.of(self.script.source) for b in passed if isinstance(b, CueLine)]
        notes = [escape(b.text) for b in passed if isinstance(b, Note)]
        return {"cue": Markup("<br>").join(cues), "note": Markup("<br>").join(notes)}

    def copy(self, paragraphs: Sequence[int]) -> Markup:
        blocks = (self.blocks[self.places[i]] for i in paragraphs)
        return Markup("<br>").join(marked_up(b, self.script) for b in blocks if isinstance(b, Paragraph))


def _rows(ours: _Side, theirs: _Side, beads: Sequence[Bead]) -> Iterator[dict[str, Any]]:
    if not beads:  # a segment without partner: its own paragraphs, one by one
        beads = [Bead((i,), ()) for i in range(len(ours.places))] + [Bead((), (j,)) for j in range(len(theirs.places))]
    for bead in beads:
        before = [side.until(max(own)) if own else {} for side, own in ((ours, bead.source), (theirs, bead.target))]
        yield from _between(*before)
        yield {"kind": "copy", "ours": ours.copy(bead.source), "theirs": theirs.copy(bead.target)}
    yield from _between(ours.until(len(ours.places)), theirs.until(len(theirs.places)))


def _between(ours: dict[str, Markup], theirs: dict[str, Markup]) -> Iterator[dict[str, Any]]:
    for kind in ("cue", "note"):
        a, b = ours.get(kind, Markup("")), theirs.get(kind, Markup(""))
        if a or b:
            yield {"kind": kind, "ours": a, "theirs": b}


def marked_up(paragraph: Paragraph, script: Script) -> Markup:
    """Copy with its stress, its pronunciations and its inline cues."""
    out, at = Markup(""), 0
    waiting = sorted(paragraph.cues, key=lambda c: c.offset)
    for run in paragraph.runs:
        piece, begin = Markup(""), at
        while waiting and waiting[0].offset < at + len(run.text):
            inline = waiting.pop(0)
            piece += _text(run.text[begin - at : inline.offset - at]) + _cue(inline.cue.span.of(script.source))
            begin = inline.offset
        piece += _text(run.text[begin - at :])
        piece = Markup("<b>%s</b>") % piece if run.stress else piece
        out += piece + (escape(f" ({run.say})") if run.say else "")
        at += len(run.text)
    return out + Markup("").join(_cue(c.cue.span.of(script.source)) for c in waiting)


def _cue(source: str) -> Markup:
    return Markup(' <bdi class="cue">%s</bdi> ') % source


def _text(text: str) -> Markup:
    """Text whose figures stay with their units, line feeds kept."""
    return Markup("<br>").join(escape(part) for part in _FIGURE_GAP.sub("\u00a0", text).split("\n"))
