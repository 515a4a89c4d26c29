"""The same word twice in a row."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Rule
from promptprep.checking.words import Token
from promptprep.spans import Span

_HINT = "take one of them out"


def find(context: Context) -> Iterator[Hit]:
    fine, never = context.word_set("doubled_fine"), context.word_set("never_doubled")
    for passage in context.passages:
        for one, two in pairwise(passage.words):
            if one.key == two.key and _slipped(passage, one, two, fine, never):
                yield _hit(passage, one, two)
        for one, two, three in zip(passage.words, passage.words[1:], passage.words[2:], strict=False):
            if one.key == two.key == three.key and one.key in fine and not _parted(passage, one, three):
                yield Hit(
                    passage.source(Span(one.span.start, three.span.end)), f"{one.text!r} stands three times", _HINT
                )


def _slipped(passage: Passage, one: Token, two: Token, fine: frozenset[str], never: frozenset[str]) -> bool:
    """Whether only space parts the two. Where a language doubles words on purpose, only `never` counts."""
    if _parted(passage, one, two) or one.key.isdigit() or (one.text[:1].isupper() and two.text[:1].isupper()):
        return False
    return (
        one.key in never
        if never
        else bool(passage.between(one, two)) and one.key not in fine and not one.key.endswith("'")
    )


def _parted(passage: Passage, one: Token, two: Token) -> bool:
    """Whether a mark stands between two words, or in those between them."""
    return any(not (c.isspace() or c.isalnum()) for c in passage.between(one, two))


def _hit(passage: Passage, one: Token, two: Token) -> Hit:
    whole = Span(one.span.start, two.span.end)
    instead = one.text if passage.plain(whole) else None
    return Hit(passage.source(whole), f"{one.text!r} stands twice", _HINT, instead)


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
