"""Whole words in capitals."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from promptprep.checking.context import Context, Passage
from promptprep.checking.labels import labels
from promptprep.checking.rule import Hit, Rule
from promptprep.checking.words import Token
from promptprep.spans import Span

_EVERYDAY = 4.5  # Zipf value of a word that is hardly ever initials


def find(context: Context) -> Iterator[Hit]:
    for passage in context.passages:
        if passage.text == passage.text.lower():
            continue
        labelled = {at for label in labels(passage) for at in range(label.start, label.end)}
        for row in _rows(passage):
            if row[0].span.start in labelled:
                continue  # speaker-label has it
            if len(row) > 1 or _everyday(context, passage, row[0]):
                span = Span(row[0].span.start, row[-1].span.end)
                instead = _calmed(passage, span)
                message = f"{span.of(passage.text)!r} is set in capitals"
                hint = "use small letters, and *stress* for what is to be stressed"
                yield Hit(passage.source(span), message, hint, instead, None if len(row) > 1 else "note")


def _rows(passage: Passage) -> Iterator[list[Token]]:
    """Rows of neighbouring words in capitals; two or more words, or one long one."""
    row: list[Token] = []
    for word in passage.words:
        if _capital(passage, word):
            if row and passage.between(row[-1], word).strip(" \n'’-"):
                yield from _worth(passage, row)
                row = []
            row.append(word)
            continue
        yield from _worth(passage, row)
        row = []
    yield from _worth(passage, row)


def _worth(passage: Passage, row: Sequence[Token]) -> Iterator[list[Token]]:
    """The row, where it holds a word: initials alone are none."""
    words = [w for w in row if passage.reading_at(w.span.start) is None and len(w.text) >= 4]
    if words and (len(row) > 1 or len(row[0].text) >= 5):
        yield list(row)


def _capital(passage: Passage, word: Token) -> bool:
    letters = [c for c in word.text if c.isalpha()]
    reading = passage.reading_at(word.span.start)
    return len(letters) > 1 and all(c.isupper() for c in letters) and (reading is None or reading.kind == "initialism")


def _everyday(context: Context, passage: Passage, word: Token) -> bool:
    zipf = context.zipf(word.key)
    return (len(word.text) >= 6) if zipf is None else zipf >= _EVERYDAY


def _calmed(passage: Passage, span: Span) -> str | None:
    if not passage.plain(span):
        return None
    words = span.of(passage.text).lower()
    first = not passage.text[: span.start].strip() or passage.text[: span.start].rstrip().endswith((".", "!", "?"))
    return words[:1].upper() + words[1:] if first else words


RULE = Rule(
    name="shouted-word",
    level="look",
    find=find,
    languages=("de", "en", "es", "fr", "pt", "ru", "sw"),
    sees="Two or more neighbouring words in capitals (`look`), or one everyday word (`note`). Initials are no words.",
    trips="Words in capitals lose their shapes and need more room; reading slows, and the reader shouts.",
    sources=("Tinker 1963, Legibility of Print, p. 65, as quoted: capitals are slower and a third wider",),
    fires="You must NEVER LOOK at the Sun.",
    silent="You must *never* look at the Sun with a NASA lens.",
)
