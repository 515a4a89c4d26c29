"""A script as it was written: lossless parts, and the segments and blocks read from them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from promptprep.spans import Span

TIMED_KINDS = ("pause", "clip", "live")
POSITION_KINDS = ("vision", "graphic", "screen", "prompter", "sound", "lights", "record", "note")
CUE_KINDS = TIMED_KINDS + POSITION_KINDS

Sayings = tuple[tuple[Span, str], ...]  # place in a text, pronunciation

PartKind = Literal["front-matter", "heading", "copy", "cue", "note", "remark", "markup", "blank"]
LanguageOrigin = Literal["front matter", "file name", "detected", "given"]


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of the source. Joined in order the parts give the source back byte for byte."""

    kind: PartKind
    span: Span


@dataclass(frozen=True, slots=True)
class Cue:
    """What the crew does at a point of the text.

    `kind` is lower case, one of `CUE_KINDS`, or any other first word (then `known` is False: it takes
    no time and is never read out). `duration_s` is None where the copy gives none. `text` is the rest.
    `span` is the whole bracket in the source.
    """

    kind: str
    text: str
    span: Span
    duration_s: float | None = None
    known: bool = True

    @property
    def fixed_s(self) -> float:
        """Seconds that this cue takes of the running time."""
        return self.duration_s or 0.0 if self.kind in TIMED_KINDS else 0.0


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of copy with one look. `text` is what the reader sees; `span` is its place in the source.

    When `len(text) == len(span)` each character has its own place in the source; otherwise the run is
    one indivisible place (an entity, an escape, a line end of two bytes).
    """

    text: str
    span: Span
    stress: bool = False
    say: str | None = None


@dataclass(frozen=True, slots=True)
class InlineCue:
    """A cue inside a sentence, before character `offset` of the paragraph's text."""

    offset: int
    cue: Cue


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Copy that is said. Its `text` joins the runs; a hard line break stands as a line feed in it."""

    runs: tuple[Run, ...]
    span: Span
    cues: tuple[InlineCue, ...] = ()
    role: Literal["body", "item"] = "body"

    @property
    def text(self) -> str:
        return "".join(run.text for run in self.runs)

    def source_offset(self, offset: int) -> int:
        """Place in the source of character `offset` of the text (its end for the end of the text)."""
        at = 0
        for run in self.runs:
            if offset < at + len(run.text):
                inside = offset - at if len(run.text) == len(run.span) else 0
                return run.span.start + inside
            at += len(run.text)
        return self.runs[-1].span.end if self.runs else self.span.end

    def source_span(self, span: Span) -> Span:
        """Place in the source of a span of the text."""
        if span.end <= span.start:
            return Span(self.source_offset(span.start), self.source_offset(span.start))
        at = 0
        end = self.span.end
        for run in self.runs:
            if span.end <= at + len(run.text):
                end = run.span.start + span.end - at if len(run.text) == len(run.span) else run.span.end
                break
            at += len(run.text)
        return Span(self.source_offset(span.start), end)

    def said(self) -> Iterator[tuple[Span, str]]:
        """(place in the text, pronunciation) of each run that has one."""
        for span, run in self.placed():
            if run.say is not None:
                yield span, run.say

    def placed(self) -> Iterator[tuple[Span, Run]]:
        """Each run with its place in the text."""
        at = 0
        for run in self.runs:
            yield Span(at, at + len(run.text)), run
            at += len(run.text)


@dataclass(frozen=True, slots=True)
class CueLine:
    """A cue on a line of its own."""

    cue: Cue
    span: Span


@dataclass(frozen=True, slots=True)
class Note:
    """The reader's own note: on paper and guest card, never spoken."""

    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class Remark:
    """A comment in the source. Shown nowhere."""

    text: str
    span: Span


Block = Paragraph | CueLine | Note | Remark


@dataclass(frozen=True, slots=True)
class Segment:
    """A headed part of a script: the unit of timing. The text before any heading is a segment without title."""

    id: str
    title: str
    blocks: tuple[Block, ...]
    span: Span
    slot_s: float | None = None
    heading_span: Span | None = None
    level: int = 1

    @property
    def paragraphs(self) -> tuple[Paragraph, ...]:
        return tuple(b for b in self.blocks if isinstance(b, Paragraph))

    @property
    def cues(self) -> tuple[Cue, ...]:
        """All cues in the order of the text."""
        found: list[Cue] = []
        for block in self.blocks:
            if isinstance(block, CueLine):
                found.append(block.cue)
            elif isinstance(block, Paragraph):
                found.extend(inline.cue for inline in block.cues)
        return tuple(found)

    @property
    def fixed_s(self) -> float:
        return sum(cue.fixed_s for cue in self.cues)


@dataclass(frozen=True, slots=True)
class Fault:
    """Something that the parser noticed and read past; `checking` turns it into a finding of that `name`."""

    name: str
    span: Span
    message: str
    hint: str = ""


@dataclass(frozen=True, slots=True)
class Script:
    """One text in one language, read by one reader.

    `name` is the stem shared by all versions ("sky" of "sky.en.md"); `file` the path as the user gave it.
    `losses` lists what a foreign format had that a script cannot carry.
    """

    name: str
    language: str
    source: str
    parts: tuple[Part, ...]
    segments: tuple[Segment, ...]
    title: str = ""
    language_origin: LanguageOrigin = "given"
    file: str | None = None
    reader: str | None = None
    rig: str | None = None
    slot_s: float | None = None
    front: Mapping[str, Any] = field(default_factory=dict)
    faults: tuple[Fault, ...] = ()
    losses: tuple[str, ...] = ()

    @property
    def paragraphs(self) -> tuple[Paragraph, ...]:
        """All that is said, in order."""
        return tuple(paragraph for segment in self.segments for paragraph in segment.paragraphs)

    @property
    def fixed_s(self) -> float:
        return sum(segment.fixed_s for segment in self.segments)


def copy_of(segments: Iterable[Segment]) -> tuple[str, Sayings]:
    """The copy of segments, a blank line between paragraphs, and the pronunciations in it at their places."""
    texts: list[str] = []
    said: list[tuple[Span, str]] = []
    at = 0
    for paragraph in (p for segment in segments for p in segment.paragraphs):
        said += [(Span(at + place.start, at + place.end), say) for place, say in paragraph.said()]
        texts.append(paragraph.text)
        at += len(paragraph.text) + 2
    return "\n\n".join(texts), tuple(said)
