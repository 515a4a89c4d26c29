"""A long run-up before the subject of a sentence."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.structure import clauses_of, words_of
from promptprep.checking.words import Sentence
from promptprep.spans import Span

_COMMA = re.compile(r"[,،，]")
_RUN_UP = Parameter(5.5, "s", "longer than a breath group in reading, 3.06 s (SD 0.62; JAKO200804748556267)")


def find(context: Context) -> Iterator[Hit]:
    limit_s = context.limit("late-subject.run_up_s", _RUN_UP.value)
    openers = context.listed("run_up_openers")
    for passage, sentence in context.each_sentence():
        span = _run_up(context, passage, sentence, openers)
        seconds = passage.seconds(span) if span else None
        if span is not None and seconds is not None and seconds > limit_s:
            message = f"{seconds:.1f} seconds before the sentence says what it is about"
            yield Hit(
                passage.source(span), message, "begin with who or what; put the rest after it, or in a sentence before"
            )


def _run_up(context: Context, passage: Passage, sentence: Sentence, openers: tuple[str, ...]) -> Span | None:
    """From the sentence's start to its subject (from its structure), else to the comma after an opening word."""
    if not sentence.words:
        return None
    start = sentence.words[0].span.start
    if context.parsed is not None:
        if not (_opens(context, sentence, openers) or _opens_with_verb(context, passage, sentence)):
            return None
        subject = next((c.subject for c in clauses_of(context, passage, sentence) if c.main and c.subject), None)
        return Span(start, subject.start) if subject and subject.start > start else None
    if not _opens(context, sentence, openers):
        return None
    comma = _COMMA.search(sentence.text)
    return Span(start, sentence.span.start + comma.start()) if comma else None


def _opens_with_verb(context: Context, passage: Passage, sentence: Sentence) -> bool:
    """Whether the first word is a verb of a clause that hangs on the main one ("Compared with ...")."""
    _, words = words_of(context, passage, sentence)
    return bool(words) and words[0].pos == "VERB" and words[0].relation in ("advcl", "acl", "prep", "csubj")


def _opens(context: Context, sentence: Sentence, openers: tuple[str, ...]) -> bool:
    if context.base == "zh":
        return sentence.text.startswith(openers)
    return sentence.words[0].key.rstrip("'") in openers or sentence.words[0].key in openers


RULE = Rule(
    name="late-subject",
    level="look",
    find=find,
    languages=("ar", "de", "en", "es", "fr", "hi", "pt", "ru", "sw", "zh"),
    sees="A sentence whose subject comes only after a long opening clause or phrase.",
    trips="The reader cannot stress what matters before it has come, and the listener stores words without a place.",
    sources=("subject first for the ear: common practice, no source",),
    parameters={"run_up_s": _RUN_UP},
    fires="After the long and very cold winter that followed the great storm on the northern coast of the island, the"
    " dome opened.",
    silent="After the winter, the dome opened.",
)
