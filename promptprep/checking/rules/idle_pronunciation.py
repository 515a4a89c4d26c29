"""A pronunciation that does nothing, or that another place contradicts."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule
from promptprep.model.script import Note
from promptprep.spans import Span

_SAY = re.compile(r"\{\s*say\s*=[^}\n]*\}")


def find(context: Context) -> Iterator[Hit]:
    yield from _useless(context)
    yield from _unread(context)


def _useless(context: Context) -> Iterator[Hit]:
    """The word itself as its pronunciation, or two pronunciations of one word."""
    first: dict[str, str] = {}
    for passage in context.passages:
        for span, said in passage.paragraph.said():
            word = span.of(passage.text)
            if said.strip() == word.strip():
                yield Hit(passage.source(span), f"{word!r} is said as it is written", "take the pronunciation out")
            elif first.setdefault(word.lower(), said) != said:
                message = f"{word!r} is said {said!r} here and {first[word.lower()]!r} above"
                yield Hit(passage.source(span), message, "use one of the two throughout")


def _unread(context: Context) -> Iterator[Hit]:
    """A pronunciation in a note, or braces that the format did not take as one: they stand in the copy."""
    for segment in context.script.segments:
        for block in segment.blocks:
            if isinstance(block, Note) and (found := _SAY.search(context.script.source, *block.span)):
                message = "a pronunciation in a note is never used"
                yield Hit(Span(*found.span()), message, "put it at the word in the copy, or in lexicon.toml")
    for passage in context.passages:
        for found in _SAY.finditer(passage.text):
            message = "this pronunciation belongs to no word, so it would be read out"
            yield Hit(passage.source(Span(*found.span())), message, 'write [word]{say="..."}', level="fix")


RULE = Rule(
    name="idle-pronunciation",
    level="look",
    find=find,
    languages=EVERY,
    sees="A pronunciation that is the word itself, stands in a note, belongs to no word, or is not like the first.",
    trips="The reader sees a mark above the line that tells nothing, or two that disagree.",
    sources=("promptprep's script format",),
    fires='Look at [Vega]{say="Vega"} tonight.',
    silent='Look at [Vega]{say="VEE-ga"} tonight.',
)
