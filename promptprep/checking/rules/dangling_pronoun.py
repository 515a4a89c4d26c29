"""A pronoun at a segment's start with nothing to point at."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Rule
from promptprep.model.language import UNSPACED
from promptprep.spans import Span


def find(context: Context) -> Iterator[Hit]:
    """Every segment may be taken alone, repaired alone, or follow a clip: its first words must stand alone."""
    seen: set[int] = set()
    for passage in context.passages:
        if passage.segment in seen or not passage.sentences:
            continue
        seen.add(passage.segment)
        span = _pronoun(context, passage)
        if span is not None:
            message = f"the segment begins with {span.of(passage.text)!r}, and nothing before it in this segment"
            yield Hit(passage.source(span), message, "name who or what is meant")


def _pronoun(context: Context, passage: Passage) -> Span | None:
    text = passage.sentences[0].text
    start = passage.sentences[0].span.start
    lowered = text.lower().replace("’", "'").lstrip("\"'“«„¿¡「『")
    skipped = len(text) - len(lowered)
    if lowered.startswith(context.listed("pronoun_fine")):
        return None
    for pronoun in sorted(context.listed("pronouns"), key=len, reverse=True):
        after = lowered[len(pronoun) : len(pronoun) + 1]
        whole = context.base in UNSPACED or not (after.isalnum() or after in ("'", "-"))
        if lowered.startswith(pronoun) and whole:
            return Span(start + skipped, start + skipped + len(pronoun))
    return None


RULE = Rule(
    name="dangling-pronoun",
    level="look",
    find=find,
    sees="A segment whose first sentence begins with a pronoun that points back out of the segment.",
    trips="Segments are taken one by one and follow clips: the listener does not know who is meant.",
    sources=("common practice, no source",),
    fires="# The probe\n\nThey landed in May.",
    silent="# The probe\n\nThe two probes landed in May. They are well.",
)
