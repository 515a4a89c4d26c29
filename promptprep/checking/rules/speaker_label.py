"""The name of who speaks, left at the start of a paragraph."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.labels import labels
from promptprep.checking.rule import EVERY, Hit, Rule


def find(context: Context) -> Iterator[Hit]:
    """One finding for each label, at its first place."""
    places: dict[str, list[Hit]] = {}
    for passage in context.passages:
        for span in labels(passage):
            name = span.of(passage.text)
            message = f"{name!r} looks like the label of a speaker: it would be read out"
            hint = "take it out of the copy; [note: ...] or a note with > can say who speaks"
            places.setdefault(name, []).append(Hit(passage.source(span), message, hint))
    for hits in places.values():
        count = f" ({len(hits)} times in this script)" if len(hits) > 1 else ""
        yield Hit(hits[0].span, hits[0].message + count, hits[0].hint)


RULE = Rule(
    name="speaker-label",
    level="look",
    find=find,
    languages=EVERY,
    sees="One to three words in capitals with a colon where a paragraph or a sentence begins: HOST:, GUEST 2:.",
    trips="It is copy like all the rest: it stands on the screen, takes time, and is read out.",
    sources=("promptprep's script format",),
    fires="HOST: Good evening and welcome.",
    silent="Good evening and welcome, says the host.",
)
