"""A verb that stands far from its subject."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.structure import Clause, clauses_of
from promptprep.checking.words import Sentence
from promptprep.spans import Span

_APART = Parameter(5.0, "s", "longer than a breath group in reading, 3.06 s (SD 0.62; JAKO200804748556267)")

_HINT = "bring the verb to its subject; say the rest before or after"


def find(context: Context) -> Iterator[Hit]:
    if context.parsed is None:
        return
    limit_s = context.limit("parted-verb.apart_s", _APART.value)
    for passage, sentence in context.each_sentence():
        clauses = clauses_of(context, passage, sentence)
        lost = next((c for c in clauses if c.main and c.noun), None)
        if lost is not None:
            yield from _lost(passage, sentence, lost, limit_s)
        for clause in clauses:
            if clause.subject_head is None or clause.subject_head.end >= clause.verb.start:
                continue
            between = Span(clause.subject_head.end, clause.verb.start)
            seconds = passage.seconds(between)
            if seconds is not None and seconds > limit_s:
                subject, verb = clause.subject_head.of(passage.text), clause.verb.of(passage.text)
                message = f"{seconds:.1f} seconds between {subject!r} and its verb {verb!r}"
                whole = Span(clause.subject_head.start, clause.verb.end)
                yield Hit(passage.source(whole), message, _HINT)


def _lost(passage: Passage, sentence: Sentence, clause: Clause, limit_s: float) -> Iterator[Hit]:
    """A sentence whose main word, for the parser, is a noun with a relative clause: even the parser lost the verb."""
    after = Span(clause.verb.end, sentence.span.end)
    seconds = passage.seconds(after)
    if seconds is not None and seconds > 2 * limit_s:
        message = f"the verb of {clause.verb.of(passage.text)!r} is lost in the {seconds:.0f} seconds after it"
        yield Hit(passage.source(Span(clause.verb.start, sentence.span.end)), message, _HINT)


RULE = Rule(
    name="parted-verb",
    level="look",
    find=find,
    languages=("en", "fr"),
    sees="A subject and its verb with more than a breath of words between them (where a trained parser is installed).",
    trips="By the time the verb comes, the listener has lost who it belongs to, and the reader has lost the tune.",
    sources=("Gibson 1998, Cognition 68:1: cost grows with the distance of a verb from its subject (from memory)",),
    parameters={"apart_s": _APART},
    fires="The telescope that stood for more than forty years on the hill above the town near the old stone bridge"
    " fell.",
    silent="The telescope fell. It had stood for forty years on the hill above the town.",
)
