"""A list with more items than can be held."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.words import Sentence
from promptprep.model.language import UNSPACED
from promptprep.spans import Span

_COMMA = re.compile(r"[,،、，;؛；]")
_CAPACITY = Parameter(6, "items", "Cowan 2001, Behav Brain Sci 24:87: about four chunks are held at once (from memory)")
_ITEM_WORDS = 4
_ITEM_CHARACTERS = 12  # of an item in a script without spaces


def find(context: Context) -> Iterator[Hit]:
    most = int(context.limit("long-list.items", _CAPACITY.value))
    unspaced = context.base in UNSPACED
    for passage, sentence in context.each_sentence():
        for span, count in _lists(sentence, unspaced, context.word_set("conjunctions")):
            if count >= most:
                message = f"a list of {count} things in one sentence"
                hint = "name the two or three that matter, or give each its own short sentence or graphic"
                yield Hit(passage.source(span), message, hint)


def _lists(sentence: Sentence, unspaced: bool, joining: frozenset[str]) -> Iterator[tuple[Span, int]]:
    """Runs of short items between commas, with the items counted; the last may bring "and" and what follows."""
    marks = [m.start() for m in _COMMA.finditer(sentence.text)]
    first = 0
    while first < len(marks):
        last = first
        while last + 1 < len(marks) and _short(sentence.text[marks[last] + 1 : marks[last + 1]], unspaced):
            last += 1
        if last > first:
            low, high = sentence.span.start + marks[first], sentence.span.start + marks[last]
            yield _widened(sentence, low, high), last - first + 2 + _joined(sentence, high, joining)
        first = last + 1


def _joined(sentence: Sentence, comma: int, joining: frozenset[str]) -> bool:
    """Whether what comes after the last comma is two items with "and" between."""
    after = [w.key for w in sentence.words if w.span.start >= comma][: _ITEM_WORDS + 1]
    return any(word in joining for word in after[1:])


def _short(item: str, unspaced: bool) -> bool:
    cleaned = item.strip()
    return bool(cleaned) and (len(cleaned) <= _ITEM_CHARACTERS if unspaced else len(cleaned.split()) <= _ITEM_WORDS)


def _widened(sentence: Sentence, low: int, high: int) -> Span:
    """The list with the word before its first comma and the one after its last."""
    before = next((w.span.start for w in reversed(sentence.words) if w.span.end <= low), sentence.span.start)
    after = next((w.span.end for w in sentence.words if w.span.start >= high), sentence.span.end)
    return Span(before, after)


RULE = Rule(
    name="long-list",
    level="look",
    find=find,
    sees="A row of six or more short items in one sentence.",
    trips="The reader falls into a sing-song, and a listener keeps no more than about four of the items.",
    sources=("Cowan 2001, Behavioral and Brain Sciences 24:87 (from memory)",),
    parameters={"items": _CAPACITY},
    fires="You can see Mars, Venus, Jupiter, Saturn, Vega, Altair and Deneb tonight.",
    silent="You can see Mars, Venus and Jupiter tonight.",
)
