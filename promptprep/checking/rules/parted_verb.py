"""A verb that stands far from its subject."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.structure import clauses_of
from promptprep.spans import Span

_APART = Parameter(5.0, "s", "longer than a breath group in reading, 3.06 s (SD 0.62; JAKO200804748556267)")


def find(context: Context) -> Iterator[Hit]:
    if context.parsed is None:
        return
    limit_s = context.limit("parted-verb.apart_s", _APART.value)
    for passage, sentence in context.each_sentence():
        for clause in clauses_of(context, passage, sentence):
            if clause.subject_head is None or clause.subject_head.end >= clause.verb.start:
                continue
            between = Span(clause.subject_head.end, clause.verb.start)
            seconds = passage.seconds(between)
            if seconds is not None and seconds > limit_s:
                subject, verb = clause.subject_head.of(passage.text), clause.verb.of(passage.text)
                message = f"{seconds:.1f} seconds between {subject!r} and its verb {verb!r}"
                whole = Span(clause.subject_head.start, clause.verb.end)
                yield Hit(passage.source(whole), message, "bring the verb to its subject; say the rest before or after")


RULE = Rule(
    name="parted-verb",
    level="look",
    find=find,
    languages=("en", "fr"),
    sees="A subject and its verb with more than a breath of words between them (where a trained parser is installed).",
    trips="By the time the verb comes, the listener has lost who it belongs to, and the reader has lost the tune.",
    sources=("Gibson 1998, Cognition 68:1: cost grows with the distance of a verb from its subject (from memory)",),
    parameters={"apart_s": _APART},
    fires="The telescope that stood for forty years on the hill above the town near the old stone bridge fell.",
    silent="The telescope fell. It had stood for forty years on the hill above the town.",
)
