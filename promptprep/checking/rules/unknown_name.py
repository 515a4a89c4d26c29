"""A reader or a rig that the studio does not have."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule


def find(context: Context) -> Iterator[Hit]:
    script, studio = context.script, context.studio
    for what, wanted, known in (("reader", script.reader, studio.readers), ("rig", script.rig, studio.rigs)):
        if wanted and known and wanted not in known:
            message = f"the studio has no {what} {wanted!r}"
            yield Hit(context.front_place(what), message, "the studio has: " + ", ".join(sorted(known)))


RULE = Rule(
    name="unknown-name",
    level="fix",
    find=find,
    languages=EVERY,
    sees="A reader or rig in the front matter that `studio.toml` does not have.",
    trips="Times and screen are made for somebody, and something, else.",
    sources=("promptprep's script format",),
    fires='+++\nreader = "inez"\n+++\n\nGood evening.',
    silent='+++\nreader = "ines"\n+++\n\nGood evening.',
)
