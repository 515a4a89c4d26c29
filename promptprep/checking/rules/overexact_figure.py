"""A figure with more digits than can be heard."""

from __future__ import annotations

import unicodedata
from bisect import bisect_left
from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.figures import Figure, figures, may_be_year, rounded
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.model.finding import Level
from promptprep.spans import Span

_DIGITS = Parameter(5, "significant digits", "round figures for the ear: common practice, no source")

_SIGNS = ("Sc", "Sm")  # currency and mathematical signs


def find(context: Context) -> Iterator[Hit]:
    most = int(context.limit("overexact-figure.digits", _DIGITS.value))
    about = context.language.maybe("faults", "about", "")
    for passage in context.passages:
        for figure in figures(passage):
            level = _level(figure, most)
            if level is not None and (not may_be_year(passage, figure) or _counts(context, passage, figure)):
                yield _hit(passage, figure, about, level)


def _level(figure: Figure, most: int) -> Level | None:
    if figure.kind not in ("count", "decimal"):
        return None
    if len(figure.digits) >= most:
        return "look"
    return "note" if len(figure.digits) == most - 1 else None


def _counts(context: Context, passage: Passage, figure: Figure) -> bool:
    """Whether the parse, where there is one, ties a bare figure to the noun that follows it ("1997 stars")."""
    if figure.kind == "year" or not figure.text.isdigit() or passage.text[figure.span.end : figure.span.end + 1] != " ":
        return False
    words = context.parsed_words(passage)
    at = bisect_left(words, figure.span.start, key=lambda w: w.start)
    if not 0 <= at < len(words) - 1 or words[at].relation != "nummod":
        return False
    after = words[at + 1]
    return words[at].head == at + 1 and after.pos == "NOUN"


def _hit(passage: Passage, figure: Figure, about: str, level: Level) -> Hit:
    whole = _with_sign(passage, figure)
    sign = passage.text[whole.start : figure.span.start]
    gap = "" if about in ("约", "約") else " "
    safe = about and passage.plain(whole) and figure.text.isascii()
    instead = f"{about}{gap}{sign}{rounded(figure.text)}" if safe else None
    message = f"{figure.text} has more digits than a listener keeps"
    return Hit(passage.source(whole), message, "round it, and say that it is rounded", instead, level)


def _with_sign(passage: Passage, figure: Figure) -> Span:
    """The figure with what is written against it on its left ("$", "US$", "-")."""
    start = figure.span.start
    while start > 0 and (unicodedata.category(passage.text[start - 1]) in _SIGNS or passage.text[start - 1] == "-"):
        start -= 1
    return Span(start, figure.span.end)


RULE = Rule(
    name="overexact-figure",
    level="look",
    find=find,
    sees="A number with four (`note`) or more (`look`) significant digits that is no year, date, time or code.",
    trips="It takes seconds to say, invites a slip, and nobody who hears it keeps more than its size.",
    sources=("Rounding for the ear: common practice, no source",),
    parameters={"digits": _DIGITS},
    fires="The Moon is 384,403 kilometres away.",
    silent="The Moon is about 380,000 kilometres away.",
)
