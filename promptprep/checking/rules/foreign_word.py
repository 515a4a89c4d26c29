"""A word in letters that the language does not have."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Rule
from promptprep.checking.words import Token
from promptprep.spans import Span

_LATIN = re.compile(r"(?<![A-Za-z0-9_@.#/À-ɏ])[A-Za-zÀ-ɏ]{2,}(?:[ '’-][A-Za-zÀ-ɏ]{2,})*(?![A-Za-z0-9_@À-ɏ])")
_KNOWN = 3.0  # Zipf value from which the language has made the word its own ("café")


def find(context: Context) -> Iterator[Hit]:
    alphabet = frozenset(context.language.maybe("faults", "alphabet", ""))
    for passage in context.passages:
        if not alphabet or "а" in alphabet:
            yield from _other_script(context, passage)
        if alphabet:
            yield from (_hit(passage, w.span) for w in passage.words if _strange(context, w, alphabet, passage))


def _other_script(context: Context, passage: Passage) -> Iterator[Hit]:
    """Latin words in a script without Latin letters; initials and unit signs are read letter by letter."""
    for found in _LATIN.finditer(passage.text):
        span = Span(*found.span())
        reading = passage.reading_at(span.start)
        initials = found[0].isupper() and len(found[0]) <= 5
        if reading is None and not initials and not passage.has_say(span):
            yield _hit(passage, span)


def _strange(context: Context, word: Token, alphabet: frozenset[str], passage: Passage) -> bool:
    letters = {c for c in word.key if c.isalpha()}
    if letters <= alphabet or not letters or passage.has_say(word.span) or (word.text.isascii() and "а" in alphabet):
        return False
    if context.base == "sw" and word.text[:1].isupper():
        return False
    return passage.reading_at(word.span.start) is None and (context.zipf(word.key) or 0.0) < _KNOWN


def _hit(passage: Passage, span: Span) -> Hit:
    word = span.of(passage.text)
    hint = f'say how: [{word}]{{say="..."}}, or use a word of the language'
    return Hit(passage.source(span), f"{word!r} is not spelled in this language's letters", hint)


RULE = Rule(
    name="foreign-word",
    level="look",
    find=find,
    sees="A word with letters that the copy's language does not have, and that its word list does not know.",
    trips="Its spelling does not tell the reader its sounds.",
    sources=("alphabets: from memory, in the faults table", "Speer 2022, wordfreq 3"),
    fires="We call it the Hôjöstjärna.",
    silent="We went to a café.",
)
