"""Nouns piled on one another."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.spans import Span

_NOUNS = Parameter(4, "nouns in a row", "common practice, no source")
_LETTERS = Parameter(24, "letters in one German word", "common practice, no source")
_KANJI = re.compile(r"[\u4e00-\u9fff々]{9,}")
_RUSSIAN = re.compile(
    r"\b(?:\w{3,}(?:ени[яюей]|ани[яюей]|ени[ия]|ци[ияюей]|ост[иья]|ств[аоу]|ици[ия]|ировани[яюе])\s+){3,}\w+",
    re.IGNORECASE,
)


def find(context: Context) -> Iterator[Hit]:
    for passage in context.passages:
        for span in _stacks(context, passage):
            message = "a stack of nouns with nothing to hold it together"
            hint = "take it apart: say what does what, with a verb or a small word between"
            yield Hit(passage.source(span), message, hint)


def _stacks(context: Context, passage: Passage) -> Iterator[Span]:
    if context.base == "en":
        yield from _rows(context, passage)
    elif context.base == "de":
        letters = int(context.limit("noun-stack.letters", _LETTERS.value))
        yield from (w.span for w in passage.words if len(w.text) >= letters)
    else:
        pattern = _RUSSIAN if context.base == "ru" else _KANJI
        yield from (Span(*m.span()) for m in pattern.finditer(passage.text))


def _rows(context: Context, passage: Passage) -> Iterator[Span]:
    """Rows of English common nouns that lean on the next one, from the parse."""
    most = int(context.limit("noun-stack.nouns", _NOUNS.value))
    row: list[Span] = []
    for word in context.parsed_words(passage):
        noun = word.pos == "NOUN" or (
            word.relation in ("compound", "amod") and passage.text[: word.end].endswith("ing")
        )
        if noun and (not row or passage.text[row[-1].end : word.start].isspace()):
            row.append(Span(word.start, word.end))
            continue
        yield from _long(row, most)
        row = [Span(word.start, word.end)] if noun else []
    yield from _long(row, most)


def _long(row: list[Span], most: int) -> Iterator[Span]:
    if len(row) >= most:
        yield Span(row[0].start, row[-1].end)


RULE = Rule(
    name="noun-stack",
    level="look",
    find=find,
    languages=("de", "en", "ja", "ru"),
    sees="A row of four nouns (English), of nine kanji (Japanese), of abstract genitives (Russian); a German word of 24"
    " letters.",
    trips="Only the last noun tells what the others were for: the reader cannot group or stress what is not yet known.",
    sources=("common practice, no source",),
    parameters={"nouns": _NOUNS, "letters": _LETTERS},
    fires="The telescope mirror coating team repair schedule is ready.",
    silent="The team has a schedule for repairing the mirror's coating.",
)
