"""Stretches of a script that were pasted from elsewhere and are no copy: code, marked-up pages, tables."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import Literal

from promptprep.model.script import Paragraph, Script, Segment
from promptprep.spans import Span

Kind = Literal["code", "markup", "table"]

_TAG = re.compile(
    r"</[a-z][\w:-]{0,30}\s?>|<[a-z][\w:-]{0,30}(?:\s[\w:-]{1,40}=(?:\"[^\"<>]{0,300}\"|'[^'<>]{0,300}'))+\s?/?>"
    r"|<(?:!doctype [^<>]{1,80}|a|b|br|code|div|em|h[1-6]|hr|i|img|li|ol|p|pre|script|span|strong|style|table|td|th|tr"
    r"|u|ul)\s?/?>",
    re.IGNORECASE,
)
_CODE = re.compile(
    r"[\w\])]\([^\n]{0,80}?\)\s?[;{]|[)}\w\"'\]];\s*\}|=>|[=!]==?(?!=)\s|&&|\|\||::|\b\w{2,40}\.\w{2,40}\("
    r"|\b(?:var|let|const|int|float|auto)\s\w{1,40}\s?=|\bfunction\s?\w{0,40}\(|\bdef\s\w{1,40}\(|#include\b"
    r"|\"[\w-]{1,40}\":\s|\bSELECT\s[^\n]{1,80}\sFROM\b|\bWHERE\s\w{1,40}\s?[<=>]"
    r"|\b(?:if|while|for)\s?\([^()\n]{1,80}\)\s?\{|\breturn\s[^.\n]{0,80};|[\w-]{2,40}:\s?[^:;{}\n]{1,60};\s?[\w}]"
)
_SCRIPTED = re.compile(r"<(?P<tag>script|style)\b[^<>]{0,300}>.*?(?:</(?P=tag)\s?>|\Z)", re.IGNORECASE | re.DOTALL)
_RULED = re.compile(r"\|?\s*:?-{2,}:?\s*(?:\|\s*:?-{2,}:?\s*)+\|?|\|\s*:?-{2,}:?\s*\|")
_CELLS, _ROWS, _MARKS = 2, 2, 2  # bars or tabs in a row; rows in a table; marks of code: common practice, no source


@dataclass(frozen=True, slots=True)
class Pasted:
    """One stretch of the source, and what it looks like. In `markup` the words between the tags may be copy."""

    kind: Kind
    span: Span


def pasted(script: Script) -> tuple[Pasted, ...]:
    """All such stretches in order; those of neighbouring paragraphs are one."""
    return tuple(one for segment in script.segments for one in _joined(_of_segment(script.source, segment)))


def _of_segment(source: str, segment: Segment) -> Iterator[Pasted | None]:
    scripted, before = 0, False
    for block in segment.blocks:
        if not isinstance(block, Paragraph):
            continue
        found = _looked_at(source, block.span, 1 if before else _MARKS)
        if block.span.start < scripted:
            yield Pasted("code", block.span)
            continue
        before = found is not None and found.kind == "code"
        if before:
            whole = _SCRIPTED.search(source, block.span.start, segment.span.end)
            scripted = whole.end() if whole is not None and whole.start() < block.span.end else 0
        yield found


def _looked_at(source: str, span: Span, marks: int) -> Pasted | None:
    text = span.of(source)
    if _is_table(text):
        return Pasted("table", span)
    tags = [Span(*m.span()) for m in _TAG.finditer(text)]
    code = [Span(*m.span()) for m in _CODE.finditer(text)]
    scripted = re.search(r"<(?:script|style)\b", text, re.IGNORECASE)
    if len(code) >= marks or scripted:
        return Pasted("code", span)
    if tags:
        return Pasted("markup", Span(tags[0].start, tags[-1].end).shifted(span.start))
    return None


def _is_table(text: str) -> bool:
    """Whether it has rows with the same number of bars or tabs one under another, or a ruled row of dashes."""
    lines = [line.strip(" >") for line in text.splitlines()]
    if any(_RULED.fullmatch(line) for line in lines if len(line) < 1000 and "--" in line):
        return any("|" in line and not _RULED.fullmatch(line) for line in lines)
    counted: tuple[Callable[[str], int], ...] = (lambda line: line.count("|"), lambda line: line.count("\t"))
    return any(
        number >= _CELLS and len(list(rows)) >= _ROWS
        for count in counted
        for number, rows in groupby(map(count, lines))
    )


def _joined(found: Iterator[Pasted | None]) -> Iterator[Pasted]:
    last: Pasted | None = None
    for one in found:
        if last is not None and one is not None and one.kind == last.kind:
            last = Pasted(last.kind, Span(last.span.start, one.span.end))
            continue
        if last is not None:
            yield last
        last = one
    if last is not None:
        yield last
