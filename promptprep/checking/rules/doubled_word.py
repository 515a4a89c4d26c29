"""The same word twice in a row."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Rule
from promptprep.checking.words import Token
from promptprep.spans import Span


def find(context: Context) -> Iterator[Hit]:
    fine, never = context.word_set("doubled_fine"), context.word_set("never_doubled")
    for passage in context.passages:
        for one, two in pairwise(passage.words):
            if one.key == two.key and _slipped(passage, one, two, fine, never):
                yield _hit(passage, one, two)


def _slipped(passage: Passage, one: Token, two: Token, fine: frozenset[str], never: frozenset[str]) -> bool:
    """Whether only space parts the two. Where a language doubles words on purpose, only `never` counts."""
    between = passage.text[one.span.end : two.span.start]
    if between.strip() or one.key.isdigit() or (one.text[:1].isupper() and two.text[:1].isupper()):
        return False
    return one.key in never if never else bool(between) and one.key not in fine and not one.key.endswith("'")


def _hit(passage: Passage, one: Token, two: Token) -> Hit:
    whole = Span(one.span.start, two.span.end)
    instead = one.text if passage.plain(whole) else None
    return Hit(passage.source(whole), f"{one.text!r} stands twice", "take one of them out", instead)


RULE = Rule(
    name="doubled-word",
    level="look",
    find=find,
    sees="A word that stands twice with nothing in between, where the language does not double words on purpose.",
    trips="On paper the eye jumps over it; on a prompter the reader says both, or stops to see which was meant.",
    sources=("common practice, no source",),
    fires="The moon rises in the the east.",
    silent="That was a long, long night.",
)
