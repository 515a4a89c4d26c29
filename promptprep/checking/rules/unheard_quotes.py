"""Quotation marks that nobody hears."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.words import Sentence
from promptprep.model.language import UNSPACED
from promptprep.spans import Span

_QUOTED = re.compile(
    r"\"([^\"\n]{1,300})\"|“([^“”\n]{1,300})”|«\s?([^«»\n]{1,300})\s?»|„([^“”„\n]{1,300})[“”]|‘([^‘’\n]{2,300})’(?!\w)"
    r"|「([^「」\n]{1,300})」|『([^『』\n]{1,300})』"
)
_LONGEST = Parameter(4, "words between the marks", "longer ones are speech, which a reader can play; common practice")
_CHARACTERS = 8  # in a script without spaces


def find(context: Context) -> Iterator[Hit]:
    most = int(context.limit("unheard-quotes.words", _LONGEST.value))
    told = context.listed("quote_verbs")
    for passage, sentence in context.each_sentence():
        for found in _QUOTED.finditer(sentence.text):
            inner = next(g for g in found.groups() if g)
            if _short(context, inner, most) and not _told(context, sentence, found.start(), told):
                span = Span(*found.span()).shifted(sentence.span.start)
                yield _hit(passage, span, inner)


def _short(context: Context, inner: str, most: int) -> bool:
    if inner.rstrip().endswith((".", "!", "?", ",", "。", "！", "？", "，", "।", "؟")):
        return False
    return len(inner) <= _CHARACTERS if context.base in UNSPACED else len(inner.split()) <= most


def _told(context: Context, sentence: Sentence, at: int, told: tuple[str, ...]) -> bool:
    """Whether a word in the sentence says that something is quoted, called or named."""
    if context.base in (*UNSPACED, "ko"):
        return any(word in sentence.text for word in told)
    return any(word.key in told for word in sentence.words)


def _hit(passage: Passage, span: Span, inner: str) -> Hit:
    hint = "say that it is a quotation or a name (as they call it), or drop the marks"
    return Hit(passage.source(span), f"nobody hears the marks around {inner.strip()!r}", hint)


RULE = Rule(
    name="unheard-quotes",
    level="look",
    find=find,
    sees="A few words between quotation marks in a sentence that does not say that they are somebody's.",
    trips="The doubt or the quotation is in the marks alone: what is heard is a plain statement.",
    sources=("common practice, no source",),
    parameters={"words": _LONGEST},
    fires='The "experts" were wrong again.',
    silent="The so-called experts were wrong again.",
)
