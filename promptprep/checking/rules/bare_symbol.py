"""A sign that nobody says."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import EVERY, Hit, Rule
from promptprep.spans import Span

_SIGN = re.compile(
    r"<(?!!--)|(?<!--)>|[&@#*+=|~^_\\§¶†‡•◦©®™→←↑↓↔⇒✓✔✗✘★☆≈≠≤≥±×÷√∞∑∂µ¬¦°№¹²³]|(?<=\w)/(?=[^\W\d])|\b(?:and/or)\b|[\U0001f300-\U0001faff\u2600-\u27bf]"
)
# Readings that say their sign; an emoji is told by itself.
_FINE = frozenset((
    "cardinal", "decimal", "email", "emoji", "fraction", "hashtag", "measure", "money", "ordinal", "percent", "say",
    "score", "serial", "telephone", "url",
))  # fmt: skip


def find(context: Context) -> Iterator[Hit]:
    for passage in context.passages:
        yield from _emoji(context, passage)
        covered = -1
        for found in _SIGN.finditer(passage.text):
            reading = passage.reading_at(found.start())
            if found.start() < covered or (reading is not None and reading.kind in _FINE):
                continue
            covered = found.end()
            yield _hit(passage, Span(*found.span()))


def _emoji(context: Context, passage: Passage) -> Iterator[Hit]:
    """Rows of emoji and pictures, each once. Whether they are shown is known where lines have been set."""
    for span in _pictures(passage):
        shown = context.broken is not None and not set(span.of(passage.text)) & set(context.broken.missing)
        fate = "said" if shown else "shown or said"
        yield Hit(
            passage.source(span), f"{span.of(passage.text)!r} will not be {fate}", "say it in words, or take it out"
        )


def _pictures(passage: Passage) -> Iterator[Span]:
    row: Span | None = None
    for reading in passage.spoken.readings:
        if reading.kind != "emoji":
            continue
        written = reading.span.of(passage.text)
        start = reading.span.end - len(written.lstrip())
        if row is not None and start <= row.end:
            row = Span(row.start, reading.span.end)
            continue
        if row is not None:
            yield row
        row = Span(start, reading.span.end)
    if row is not None:
        yield row


def _hit(passage: Passage, span: Span) -> Hit:
    reading = passage.reading_at(span.start)
    said = reading.said if reading is not None and reading.span == span else None
    instead = said if said and passage.plain(span) else None
    message = f"{span.of(passage.text)!r} is a sign, not a word"
    hint = f"write what is said: {said!r}" if said else "write what is said, or take it out"
    return Hit(passage.source(span), message, hint, instead)


RULE = Rule(
    name="bare-symbol",
    level="look",
    find=find,
    languages=EVERY,
    sees="A sign such as &, +, =, /, an arrow, a footnote mark that belongs to no figure; an emoji.",
    trips="Each reader says it differently or not at all, and must decide at sight.",
    sources=("Broadcast style: words for signs (timcurran.com 2011/06/07)",),
    fires="Dust & ice = a comet.",
    silent="Dust and ice make a comet.",
)
