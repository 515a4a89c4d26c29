"""The name of who speaks, left at the start of a paragraph."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.labels import all_labels
from promptprep.checking.rule import EVERY, Hit, Rule


def find(context: Context) -> Iterator[Hit]:
    """One finding for each label, at its first place."""
    places: dict[str, list[Hit]] = {}
    for number, span in all_labels(context.passages, context.word_set("speakers"), _names(context)):
        passage = context.passages[number]
        name = span.of(passage.text)
        message = f"{name!r} looks like the label of a speaker: it would be read out"
        hint = "take it out of the copy; [note: ...] or a note with > can say who speaks"
        places.setdefault(name, []).append(Hit(passage.source(span), message, hint))
    for hits in places.values():
        count = f" ({len(hits)} times in this script)" if len(hits) > 1 else ""
        yield Hit(hits[0].span, hits[0].message + count, hits[0].hint)


def _names(context: Context) -> frozenset[str]:
    """First and whole names of the studio's readers, folded."""
    whole = [reader.name.casefold() for reader in context.studio.readers.values() if reader.name]
    return frozenset([*whole, *(name.split()[0] for name in whole if name.split())])


RULE = Rule(
    name="speaker-label",
    level="look",
    find=find,
    languages=EVERY,
    sees="One to three words with a colon where a line begins: in capitals (HOST:, GUEST 2:), a role (Host:), "
    "a reader's name, or a name that comes back among others.",
    trips="It is copy like all the rest: it stands on the screen, takes time, and is read out.",
    sources=("promptprep's script format",),
    fires="HOST: Good evening and welcome.",
    silent="Good evening and welcome, says the host.",
)
