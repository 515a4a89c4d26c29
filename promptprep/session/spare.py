"""Sentences that can go when a session is too long, by a rule that anyone can check by eye.

A sentence can go if it closes a paragraph of two or more sentences (what follows it begins anew), does not close its
segment, and has no cue, figure, stressed word, given pronunciation or question in it. From the end upwards: news copy
is cut from its end (common practice, no source). They are shown, never deleted.
"""

from __future__ import annotations

from promptprep.model.ports import Breaks
from promptprep.model.script import CueLine, Paragraph, Script, Segment
from promptprep.model.session import Spare
from promptprep.model.timing import BlockTiming, ScriptTiming
from promptprep.spans import Span

RULE = (
    "A sentence can go if it closes a paragraph of two or more sentences but not its segment, "
    "and has no cue, figure, stressed word, pronunciation or question in it."
)
_ASKS = ("?", "？", "؟")


def spare_sentences(script: Script, timing: ScriptTiming, breaks: Breaks) -> tuple[Spare, ...]:
    """The sentences of a script that can go, in the order of the text. Linear in its length."""
    found: list[Spare] = []
    for segment, timed in zip(script.segments, timing.segments, strict=True):
        times = {block.block: block for block in timed.blocks}
        for b in _inner_paragraphs(segment):
            block = segment.blocks[b]
            if isinstance(block, Paragraph) and b in times:
                spare = _spare(block, times[b], segment.title or segment.id, script, breaks)
                found += [spare] if spare else []
    return tuple(found)


def _inner_paragraphs(segment: Segment) -> list[int]:
    """Indices of the segment's paragraphs but the last, and but those that a cue follows: its words must stay."""
    places = [b for b, block in enumerate(segment.blocks) if isinstance(block, Paragraph) and block.text.strip()]
    blocks = segment.blocks
    return [b for b in places[:-1] if not (b + 1 < len(blocks) and isinstance(blocks[b + 1], CueLine))]


def _spare(block: Paragraph, timed: BlockTiming, title: str, script: Script, breaks: Breaks) -> Spare | None:
    ends = [end for end in breaks.sentences(block.text, script.language) if block.text[:end].strip()]
    if len(ends) < 2:
        return None
    span = Span(ends[-2], len(block.text))
    text = span.of(block.text).strip()
    if not text or not _plain(block, span, text):
        return None
    gives_s = _gives_s(timed, span)
    place = block.source_span(span)
    return Spare(text, title, place.start, place.end, round(gives_s * 1000)) if gives_s > 0 else None


def _plain(block: Paragraph, span: Span, text: str) -> bool:
    if any(c.isdigit() for c in text) or any(mark in text for mark in _ASKS):
        return False
    if any(span.start <= cue.offset <= span.end for cue in block.cues):
        return False
    return not any((run.stress or run.say is not None) and place.overlaps(span) for place, run in block.placed())


def _gives_s(timed: BlockTiming, span: Span) -> float:
    """From the end of the last word before the sentence to the end of its own last word: its pause goes with it."""
    before = [w.end_s for w in timed.words if w.span.start < span.start]
    inside = [w.end_s for w in timed.words if w.span.start >= span.start]
    return inside[-1] - before[-1] if before and inside else 0.0
