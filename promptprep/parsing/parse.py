"""From source text to a `Script`. Any text is a script; nothing of it is lost."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from promptprep.model.language import base_of
from promptprep.model.script import (
    CueLine,
    Fault,
    LanguageOrigin,
    Note,
    Paragraph,
    Part,
    PartKind,
    Remark,
    Script,
    Segment,
)
from promptprep.parsing.blocks import BlockReader, segments
from promptprep.parsing.front import key_place, read_slot, split_front
from promptprep.parsing.markup import markdown
from promptprep.spans import Span


def parse_script(
    source: str,
    *,
    name: str = "script",
    file: str | None = None,
    language: str | None = None,
    detect: Callable[[str], str] | None = None,
    losses: Sequence[str] = (),
) -> Script:
    """The script that `source` holds.

    `language` is what the file's name says; the front matter goes before it. Where neither says, `detect` is
    asked with the copy ("und" without it). Raises `UnreadableInput` with file, line, column and hint for front
    matter that does not parse, an unknown key, or a slot that is no time.
    """
    front, begin = split_front(source, file)
    reader = BlockReader(source, begin, file)
    reader.read(markdown().parse(source[begin:]))
    done, id_faults = segments(reader.drafts, source, begin)
    slot, found = front.get("slot"), [*reader.faults, *id_faults]
    tag, origin = _language(front.get("language"), language, detect, source[begin:])
    return Script(
        name=name,
        language=tag,
        source=source,
        parts=tuple(_parts(source, begin if front or begin > 1 else 0, done)),
        segments=tuple(done),
        title=front.get("title") or _first_title(done) or name,
        language_origin=origin,
        file=file,
        reader=front.get("reader"),
        rig=front.get("rig"),
        slot_s=None if slot is None else read_slot(slot, file, *key_place(source[:begin], "slot")),
        front=front,
        faults=(*_two_languages(front.get("language"), language, source[:begin]), *sorted(found, key=lambda f: f.span)),
        losses=tuple(losses),
    )


def _language(
    front: str | None, named: str | None, detect: Callable[[str], str] | None, copy: str
) -> tuple[str, LanguageOrigin]:
    if front:
        return front, "front matter"
    if named:
        return named, "file name"
    return (detect(copy), "detected") if detect else ("und", "given")


def _two_languages(front: str | None, named: str | None, head: str) -> list[Fault]:
    """A version that was made by copying the file: its name says one language, its front matter still another."""
    if not front or not named or base_of(front).lower() == base_of(named).lower():
        return []
    line = re.search(r"^\s*language\b[^\r\n]*", head, re.MULTILINE)
    message = f"the file's name says {named!r}, the front matter {front!r}: it is timed and checked as {front!r}"
    hint = f'write language = "{named}", take the line out, or rename the file'
    return [Fault("two-languages", Span(*line.span()) if line else Span(0, len(head)), message, hint)]


def _first_title(done: Sequence[Segment]) -> str:
    return next((s.title for s in done if s.title), "") if len(done) == 1 else ""


_KINDS: dict[type, PartKind] = {Paragraph: "copy", CueLine: "cue", Note: "note", Remark: "remark"}


def _parts(source: str, front_end: int, done: Sequence[Segment]) -> list[Part]:
    """All of the source in order, gaps included: joined, the parts are the source."""
    marks: list[tuple[Span, PartKind]] = [(Span(0, front_end), "front-matter")] if front_end else []
    for segment in done:
        if segment.heading_span:
            marks.append((segment.heading_span, "heading"))
        marks.extend((block.span, _KINDS[type(block)]) for block in segment.blocks)
    parts: list[Part] = []
    at = 0
    for span, kind in sorted(marks):
        start = max(span.start, at)
        if span.end <= start:
            continue
        parts.extend(_gap(source, at, start))
        parts.append(Part(kind, Span(start, span.end)))
        at = span.end
    parts.extend(_gap(source, at, len(source)))
    return parts


def _gap(source: str, start: int, end: int) -> list[Part]:
    if start >= end:
        return []
    return [Part("markup" if source[start:end].strip() else "blank", Span(start, end))]
