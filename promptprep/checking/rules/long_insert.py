"""Something put in between brackets, dashes or commas that is too long to hold the sentence open."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.words import Sentence
from promptprep.spans import Span

_BRACKET = re.compile(r"\(([^()]{1,600})\)|（([^（）]{1,600})）")
_DASHED = re.compile(r"(?:\s[–—-]\s|—|——)([^–—.!?。！？]{1,600}?)(?:\s[–—-]\s|——?)(?=\s*[^\s.!?。！？])")
_INSERT = Parameter(4.0, "s", "a breath group in reading lasts 3.06 s (SD 0.62; JAKO200804748556267): longer than one")


def find(context: Context) -> Iterator[Hit]:
    limit_s = context.limit("long-insert.insert_s", _INSERT.value)
    relative = _relative(context.listed("relatives"))
    for passage, sentence in context.each_sentence():
        for span in _inserts(sentence, relative):
            seconds = passage.seconds(span)
            if seconds is not None and seconds > limit_s:
                yield _hit(passage, span, seconds)


def _hit(passage: Passage, span: Span, seconds: float) -> Hit:
    message = f"{seconds:.1f} seconds put into the middle of a sentence"
    return Hit(passage.source(span), message, "finish the sentence first, then say this in one of its own")


@lru_cache(maxsize=16)
def _relative(words: tuple[str, ...]) -> re.Pattern[str] | None:
    """A clause between commas that one of the words opens, with the sentence going on after it."""
    if not words:
        return None
    any_of = "|".join(map(re.escape, words))
    return re.compile(rf"[,،]\s+(?:\w+\s+)?(?:{any_of})\s([^,،.!?;:()؟।]{{1,400}})[,،](?=\s*\w)", re.IGNORECASE)


def _inserts(sentence: Sentence, relative: re.Pattern[str] | None) -> Iterator[Span]:
    for pattern in (_BRACKET, _DASHED, relative):
        for found in pattern.finditer(sentence.text) if pattern else ():
            group = next(i for i in range(1, len(found.groups()) + 1) if found[i] is not None)
            yield Span(*found.span(group)).shifted(sentence.span.start)


RULE = Rule(
    name="long-insert",
    level="look",
    find=find,
    sees="A bracket, a pair of dashes or a clause between commas that holds a sentence open longer than a breath.",
    trips="The reader must drop the voice, carry the open sentence across the insert and pick up its tune again.",
    sources=(
        "Breath groups in reading: koreascience.kr JAKO200804748556267",
        "one thought a sentence: common practice",
    ),
    parameters={"insert_s": _INSERT},
    fires="The comet (a ball of ice and dust that was found by two amateurs from a village on the coast last spring)"
    " will be back.",
    silent="The comet (a ball of ice) will be back.",
)
