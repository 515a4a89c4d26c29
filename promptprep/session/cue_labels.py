"""What the crew calls a cue: the number that a remark before it keeps, or a new one between the kept ones.

`<!-- cue 12.5 -->` straight before a cue keeps its number. A new cue between 12 and 13 becomes 12.5: whole numbers
between kept ones are not given out again, because a cue that was taken out may have had them.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from promptprep.errors import BadCall
from promptprep.model.script import Cue, Script
from promptprep.spans import Span

_REMARK = re.compile(r"<!--\s*cue\s+(\d{1,5}(?:\.\d{1,6})?)\s*-->[^\S\r\n]*(?:\r\n|\r|\n)?[^\S\r\n]*\Z")
_BEFORE = 200  # characters of the source in which a cue's remark can begin


@dataclass(frozen=True, slots=True)
class CueLabels:
    """A label a cue, in order. `kept` are those that remarks gave; `broken` the cues whose remark is out of order."""

    labels: tuple[str, ...]
    kept: tuple[bool, ...]
    broken: tuple[int, ...]


def cue_labels(script: Script, cues: Sequence[Cue]) -> CueLabels:
    """Labels of numbered cues, of each of which `cues` holds the first action. Linear but for a logarithm."""
    found = [_kept_number(script.source, cue) for cue in cues]
    good = _rising(found)
    numbers = [number if i in good else None for i, number in enumerate(found)]
    broken = tuple(i for i, number in enumerate(found) if number is not None and i not in good)
    filled = _filled(numbers)
    return CueLabels(tuple(_plain(n) for n in filled), tuple(n is not None for n in numbers), broken)


def _kept_number(source: str, cue: Cue) -> Decimal | None:
    found = _REMARK.search(source[max(0, cue.span.start - _BEFORE) : cue.span.start])
    return Decimal(found[1]) if found else None


def _rising(numbers: Sequence[Decimal | None]) -> set[int]:
    """Indices of the longest strictly rising run of the kept numbers: one that is out of place spoils no other."""
    tails: list[Decimal] = []
    ends: list[int] = []
    before: dict[int, int] = {}
    for i, number in enumerate(numbers):
        if number is None:
            continue
        place = bisect_left(tails, number)
        tails[place : place + 1] = [number]
        ends[place : place + 1] = [i]
        if place:
            before[i] = ends[place - 1]
    chain: set[int] = set()
    at = ends[-1] if ends else None
    while at is not None:
        chain.add(at)
        at = before.get(at)
    return chain


def _filled(numbers: Sequence[Decimal | None]) -> list[Decimal]:
    filled: list[Decimal] = []
    waiting = 0
    last: Decimal | None = None
    for number in numbers:
        if number is None:
            waiting += 1
            continue
        filled += between(last if last is not None else Decimal(0), number, waiting) if waiting else []
        filled.append(number)
        waiting, last = 0, number
    first_free = int(last or 0) + 1
    return filled + [Decimal(first_free + i) for i in range(waiting)]


def between(low: Decimal, high: Decimal, count: int) -> list[Decimal]:
    """`count` rising numbers strictly between two, evenly spread, none of them whole, with as few digits as can be."""
    top = min(high, Decimal(int(low) + 1))
    for digits in range(1, 12):
        scale = 10**digits
        first, last = int(low * scale) + 1, int(top * scale)
        last -= last == top * scale
        free = last - first + 1
        if free >= count:
            return [Decimal(first - 1 + (i + 1) * (free + 1) // (count + 1)) / scale for i in range(count)]
    raise BadCall("no-cue-number", f"no room for {count} cues between {low} and {high}", "number the cues anew")


def _plain(number: Decimal) -> str:
    text = f"{number:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def numbered_source(script: Script, cues: Sequence[Cue]) -> str:
    """The script's source with a remark before each cue that has none yet: nothing else changes."""
    labelled = cue_labels(script, cues)
    pieces: list[str] = []
    at = 0
    for cue, label, kept in zip(cues, labelled.labels, labelled.kept, strict=True):
        if kept:
            continue
        span = _old_remark(script.source, cue)
        pieces += [script.source[at : span.start], f"<!-- cue {label} -->", _gap(script.source, cue)]
        at = cue.span.start
    return "".join(pieces) + script.source[at:]


def _old_remark(source: str, cue: Cue) -> Span:
    """The remark before a cue that is out of order, and is written anew; empty where there is none."""
    low = max(0, cue.span.start - _BEFORE)
    found = _REMARK.search(source[low : cue.span.start])
    return Span(low + found.start(), cue.span.start) if found else Span(cue.span.start, cue.span.start)


def _gap(source: str, cue: Cue) -> str:
    """A line end where the cue stands on a line of its own."""
    line_start = max(source.rfind("\n", 0, cue.span.start), source.rfind("\r", 0, cue.span.start)) + 1
    ends = source[cue.span.end : cue.span.end + 1] in ("", "\n", "\r")
    alone = ends and not source[line_start : cue.span.start].strip()
    return ("\r\n" if "\r\n" in source else "\n") if alone else ""
