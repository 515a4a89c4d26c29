"""Excuses: a remark in the script that lets a finding stand, with a reason.

`<!-- excuse: rule-name because the reason -->` before a paragraph, a cue or a heading covers that block; inside
a paragraph it covers the paragraph.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from promptprep.checking.context import Context
from promptprep.model.finding import Finding
from promptprep.model.script import Block, Remark, Script
from promptprep.spans import Span

STALE, REASONLESS = "stale-excuse", "reasonless-excuse"
_EXCUSE = re.compile(r"\s*excuse\s*:\s*(?P<names>[\w-]+(?:\s*,\s*[\w-]+)*)\s*(?:because\b(?P<reason>.*))?", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Excuse:
    """One rule excused over `covers`; `span` is the remark itself."""

    name: str
    reason: str
    span: Span
    covers: Span


def excuses(script: Script) -> tuple[Excuse, ...]:
    """All excuses of a script, in order. A remark inside a paragraph stands as a block before it."""
    found: list[Excuse] = []
    for segment in script.segments:
        for index, block in enumerate(segment.blocks):
            if isinstance(block, Remark):
                found.extend(_excuses(block.text, block.span, _next(segment.blocks, index, segment.span)))
    return tuple(found)


def _next(blocks: Sequence[Block], index: int, segment: Span) -> Span:
    after = next((b.span for b in blocks[index + 1 :] if not isinstance(b, Remark)), None)
    return after or Span(blocks[index].span.end, segment.end)


def _excuses(text: str, span: Span, covers: Span) -> Iterator[Excuse]:
    said = _EXCUSE.fullmatch(text.strip())
    for name in re.findall(r"[\w-]+", said["names"]) if said else ():
        yield Excuse(name, (said["reason"] or "").strip() if said else "", span, covers)


def excuse(findings: Sequence[Finding], context: Context) -> Iterator[Finding]:
    """The findings that no excuse covers, and a finding for each excuse that has no reason or excuses nothing."""
    given = excuses(context.script)
    by_name: dict[str, list[tuple[int, int]]] = {}
    for number, one in enumerate(given):
        by_name.setdefault(one.name, []).append((one.covers.start, number))
    used: set[int] = set()
    for finding in findings:
        by = _excused(finding, by_name.get(finding.name, []), given)
        if by is None:
            yield finding
        else:
            used.add(by)
    for number, one in enumerate(given):
        if number not in used:
            message = f"nothing here is a {one.name} any more"
            yield Finding(STALE, "look", one.span.start, one.span.end, message, "take the excuse out", "")
        elif not one.reason:
            message = f"this excuse for {one.name} gives no reason"
            hint = f"write why: <!-- excuse: {one.name} because ... -->"
            yield Finding(REASONLESS, "look", one.span.start, one.span.end, message, hint)


def _excused(finding: Finding, places: list[tuple[int, int]], given: Sequence[Excuse]) -> int | None:
    """The number of the excuse that covers a finding. Blocks do not overlap: the last one before it decides."""
    at = bisect_right(places, finding.start, key=lambda p: p[0]) - 1
    if at < 0:
        return None
    number = places[at][1]
    covers = given[number].covers
    return number if finding.start < max(covers.end, covers.start + 1) else None
