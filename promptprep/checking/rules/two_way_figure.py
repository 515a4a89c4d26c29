"""A figure, date, sum or abbreviation that can be said in two ways."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Rule
from promptprep.model.finding import Level
from promptprep.model.spoken import Reading
from promptprep.spans import Span

_DATE = re.compile(r"(?<![\d./-])(\d{1,2})([./-])(\d{1,2})\2(?:\d{4}|\d{2})(?![\d/-])")
_SHORT = re.compile(r"(?<![\d./-])(\d{1,2})/(\d{1,2})(?![\d/.-]|\.\d)")  # a day and month, or a fraction
_FRACTIONS = frozenset((
    "1/2", "1/3", "2/3", "1/4", "3/4", "1/5", "2/5", "3/5", "4/5", "1/6", "1/8", "3/8", "5/8", "7/8", "1/10", "24/7",
))  # fmt: skip
_HUNDREDS = re.compile(
    r"(?<![\d.,])([1-9][1-9]00)(?![\d.,]\d|\d|s\b)"
)  # English: fifteen hundred, one thousand five hundred
_QUIET = ("year", "cardinal", "say", "emoji", "initialism", "url", "email", "hashtag")


def find(context: Context) -> Iterator[Hit]:
    for passage in context.passages:
        claimed: set[int] = set()
        for found in _DATE.finditer(passage.text):
            one, two = int(found[1]), int(found[3])
            if 1 <= one <= 12 and 1 <= two <= 12 and one != two:
                claimed.add(found.start())
                yield _date(passage, Span(*found.span()))
        for hit in _shorter(context, passage):
            if hit.span.start not in claimed:
                yield hit
        for reading in passage.spoken.readings:
            if reading.otherwise and reading.span.start not in claimed:
                yield _reading(passage, reading)


def _date(passage: Passage, span: Span) -> Hit:
    reading = passage.reading_at(span.start)
    said = reading.said if reading is not None and reading.span == span and passage.plain(span) else None
    message = f"{span.of(passage.text)} is read as day and month by some, as month and day by others"
    return Hit(passage.source(span), message, "write the month as a word", said)


def _shorter(context: Context, passage: Passage) -> Iterator[Hit]:
    """A day and month that may be a fraction; round hundreds that may be a year."""
    for found in _SHORT.finditer(passage.text):
        if found[0] not in _FRACTIONS and 1 <= int(found[1]) <= 31 and 1 <= int(found[2]) <= 31:
            message = f"{found[0]} is a date to some and a fraction to others"
            yield Hit(passage.source(Span(*found.span())), message, "write it in words")
    for found in _HUNDREDS.finditer(passage.text) if context.base == "en" else ():
        message = f"{found[0]} can be said in hundreds, in thousands, or as a year"
        yield Hit(passage.source(Span(*found.span())), message, "write it as it is to be said", level="note")


def _reading(passage: Passage, reading: Reading) -> Hit:
    written = reading.span.of(passage.text)
    other = ", ".join(repr(o) for o in reading.otherwise[:2])
    message = f"{written!r} can be said as {reading.said!r} or as {other}"
    instead = reading.said if passage.plain(reading.span) and reading.said else None
    level: Level | None = "note" if reading.kind in _QUIET else None
    return Hit(passage.source(reading.span), message, "write it out as it is to be said", instead, level)


RULE = Rule(
    name="two-way-figure",
    level="look",
    find=find,
    sees="A number, date, sum or abbreviation with two readings that are about as likely.",
    trips="The reader decides at sight, and may decide otherwise than the graphic or the other language versions.",
    sources=("W3C Note SSML 1.0 say-as (2005): date formats mdy, dmy, ymd exist side by side",),
    fires="It was found on 03/04/2026.",
    silent="It was found on 3 April 2026.",
)
