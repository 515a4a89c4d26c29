"""A clause inside a clause inside a clause."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.structure import clauses_of
from promptprep.checking.words import Sentence
from promptprep.model.finding import Level
from promptprep.model.language import UNSPACED
from promptprep.spans import Span

_DEPTH = Parameter(3, "clauses deep", "common practice, no source")
_OPENED = Parameter(4, "clauses opened in a sentence, where there is no parser", "common practice, no source")


def find(context: Context) -> Iterator[Hit]:
    deep = int(context.limit("nested-clause.deep", _DEPTH.value))
    most = int(context.limit("nested-clause.opened", _OPENED.value))
    for passage, sentence in context.each_sentence():
        opened = _openings(context, passage, sentence)
        depth = max((c.depth for c in clauses_of(context, passage, sentence)), default=0)
        inner = _inside(context, passage, sentence)
        if inner is not None:
            hint = "say the inner one first, in a sentence of its own"
            yield Hit(passage.source(inner), "a clause opens before the one around it has said its verb", hint)
            continue
        if not (depth >= deep and len(opened) >= deep if context.parsed is not None else len(opened) >= most):
            continue
        if opened:
            span = Span(opened[0].start, sentence.span.end)
            message = f"{len(opened)} clauses hang inside one another"
            level: Level = "look" if context.parsed is None or depth > deep else "note"
            yield Hit(passage.source(span), message, "give each thought a sentence of its own", level=level)


def _openings(context: Context, passage: Passage, sentence: Sentence) -> list[Span]:
    """Words that open a clause. A relative that is also an article counts only after a comma (German "der")."""
    openers, relatives = context.word_set("subordinators"), context.word_set("relatives")
    found = []
    for at, word in enumerate(sentence.words):
        before = passage.text[max(sentence.span.start, word.span.start - 2) : word.span.start]
        after_comma = at > 0 and re.search(r"[,،]", before) is not None
        if word.key in openers or (word.key in relatives and after_comma):
            found.append(word.span)
    if context.base in UNSPACED and len(found) < 2:
        return [Span(m.start(), m.end()).shifted(sentence.span.start) for m in _LINKS.finditer(sentence.text)]
    return found


def _inside(context: Context, passage: Passage, sentence: Sentence) -> Span | None:
    """Two relatives with two or three words between, no mark: "the man whom the dog whom ..."."""
    relatives = context.word_set("relatives") & context.word_set("subordinators")
    at = [w for w in sentence.words if w.key in relatives]
    for one, two in pairwise(at):
        if 3 <= two.place - one.place <= 4 and ("," not in passage.between(one, two)):
            return Span(one.span.start, two.span.end)
    return None


_LINKS = re.compile(r"(?:ので|ため|けれど|けれども|ながら|のに|たら|ても)(?=[、,])")

RULE = Rule(
    name="nested-clause",
    level="look",
    find=find,
    sees="A sentence whose clauses hang three (`note`) or four deep, or, where there is no parser, that opens four.",
    trips="The reader has to keep several tunes open at once; the listener forgets which of them is still waiting.",
    sources=("Gibson 1998, Cognition 68:1 (from memory): open clauses cost memory",),
    parameters={"deep": _DEPTH, "opened": _OPENED},
    fires="We know that the man who built the lens which we use when the sky is clear because nothing else works has"
    " said that he will come.",
    silent="The man who built the lens is here.",
)
