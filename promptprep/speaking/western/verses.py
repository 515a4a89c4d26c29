"""Chapter and verse behind a book's name, and a book's own number: "Gen. 1:1", "1 Corinthians 13:4-8"."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar
from promptprep.speaking.western.units import alternatives

_VERSE = re.compile(r"(\d{1,3}):(\d{1,3})(?:[-–](\d{1,3}))?(?![\d:.,]\d|[:\w])")
_BOOK = re.compile(r"([123])[ \u00a0](?=[A-ZÀ-Ý])")
_LEFT = 32


class Verses:
    """`books.names` lists the books, `books.numbered` those with a number and the form of its ordinal."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._left = re.compile(rf"(?<![\w.])(?:{alternatives(grammar.wordset('books.names'))})[ \u00a0]\Z")
        self._numbered: dict[str, str] = dict(grammar.table("books.numbered"))
        self._next = re.compile(rf"({alternatives(self._numbered)})(?!\w)\.?(?=[ \u00a0]\d)")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if at and (text[at - 1].isalnum() or text[at - 1] in ".,:-–"):
            return None
        book = _BOOK.match(text, at)
        if book and (named := self._next.match(text, book.end())):
            said = self.g.ordinal(book[1], self._numbered[named[1]])
            return Reading(Span(at, at + 1), said, "ordinal")
        found = _VERSE.match(text, at)
        if not found or not self._left.search(text, max(0, at - _LEFT), at):
            return None
        chapter, verse = self.g.cardinal(found[1]), self.g.cardinal(found[2])
        if found[3]:
            last = self.g.text("numbers.range").format(verse, self.g.cardinal(found[3]))
            return Reading(Span(*found.span()), f"{chapter}, {last}", "range")
        return Reading(Span(*found.span()), f"{chapter} {verse}", "range")
