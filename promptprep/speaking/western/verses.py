"""Chapter and verse behind a book's name, and a book's own number: "Gen. 1:1", "1 Corinthians 13:4-8"."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar, leans_left
from promptprep.speaking.western.units import alternatives

_BOOK = re.compile(r"([123])[ \u00a0](?=[A-ZÀ-Ý])")
_LEFT = 32


class Verses:
    """`books.names` lists the books, `books.numbered` those with a number and the form of its ordinal,
    `books.short` those written short, `books.marks` what stands between chapter and verse."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        marks = re.escape(str(grammar.data.maybe("spoken", "books.marks", ":")))
        self._verse = re.compile(rf"(\d{{1,3}})[{marks}](\d{{1,3}})(?:[-–](\d{{1,3}}))?(?![\d:.,]\d|[:\w])")
        self._short: dict[str, str] = dict(grammar.data.maybe("spoken", "books.short", {}))
        names = alternatives({*grammar.wordset("books.names"), *self._short})
        self._left = re.compile(rf"(?<![\w.])({names})[ \u00a0]\Z")
        self._numbered: dict[str, str] = dict(grammar.table("books.numbered"))
        self._next = re.compile(rf"({alternatives(self._numbered)})(?!\w)\.?(?=[ \u00a0]\d)")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if leans_left(text, at, ".,:-–"):
            return None
        book = _BOOK.match(text, at)
        if book and (named := self._next.match(text, book.end())):
            said = self.g.ordinal(book[1], self._numbered[named[1]])
            whole = self._short.get(named[1])
            return Reading(Span(at, named.end() if whole else at + 1), f"{said} {whole}" if whole else said, "ordinal")
        found = self._verse.match(text, at)
        left = self._left.search(text, max(0, at - _LEFT), at) if found else None
        if not found or not left:
            return None
        short = self._short.get(left[1], "") if left.start() >= floor else ""
        start, name = (left.start(), f"{short} ") if short else (at, "")
        chapter, verse = self.g.cardinal(found[1]), self.g.cardinal(found[2])
        if found[3]:
            last = self.g.text("numbers.range").format(verse, self.g.cardinal(found[3]))
            return Reading(Span(start, found.end()), f"{name}{chapter}, {last}", "range")
        return Reading(Span(start, found.end()), f"{name}{chapter} {verse}", "range")
