"""Clauses of a sentence, from its parse, where a trained pipeline is at hand."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from promptprep.checking.context import Context, Passage
from promptprep.checking.words import Sentence
from promptprep.model.ports import Word
from promptprep.spans import Span

_SUBJECTS = frozenset(("nsubj", "nsubjpass", "nsubj:pass", "csubj", "csubjpass", "csubj:pass", "expl", "expl:subj"))
_CLAUSES = frozenset(("relcl", "acl:relcl", "advcl", "ccomp", "csubj", "csubjpass", "csubj:pass"))


@dataclass(frozen=True, slots=True)
class Clause:
    """A verb with its subject. `depth` counts the clauses it stands in; places are in the passage's text.

    `noun` marks a main word that is no verb but a noun with a relative clause.
    """

    verb: Span
    subject: Span | None
    subject_head: Span | None
    depth: int
    main: bool
    noun: bool = False


def words_of(context: Context, passage: Passage, sentence: Sentence) -> tuple[int, Sequence[Word]]:
    """(index of the first, the parsed words) of a sentence; none without a pipeline."""
    parsed = context.parsed_words(passage)
    first = bisect_left(parsed, sentence.span.start, key=lambda w: w.start)
    last = bisect_left(parsed, sentence.span.end, key=lambda w: w.start)
    return first, parsed[first:last]


def clauses_of(context: Context, passage: Passage, sentence: Sentence) -> list[Clause]:
    """The clauses of a sentence in the order of their verbs."""
    first, words = words_of(context, passage, sentence)
    starts = _leftmost(words, first)
    subjects: dict[int, int] = {}
    for i, word in enumerate(words):
        if word.relation in _SUBJECTS:
            subjects.setdefault(word.head - first, i)
    related = {w.head - first for w in words if w.relation in ("relcl", "acl:relcl")}
    found = []
    for i, word in enumerate(words):
        if i in subjects or word.relation == "root":
            at = subjects.get(i)
            head = None if at is None else Span(words[at].start, words[at].end)
            whole = None if at is None or head is None else Span(starts[at], head.end)
            main = word.relation == "root"
            noun = main and word.pos in ("NOUN", "PROPN") and i in related
            found.append(Clause(Span(word.start, word.end), whole, head, _depth(words, first, i), main, noun))
    return found


def _leftmost(words: Sequence[Word], first: int) -> list[int]:
    """Where the phrase of each word begins. Heads outside the sentence are left alone."""
    starts = [word.start for word in words]
    for i, word in enumerate(words):
        at, steps = i, 0
        while words[at].relation != "root" and 0 <= words[at].head - first < len(words) and steps < 64:
            at, steps = words[at].head - first, steps + 1
            if starts[at] <= word.start:
                break
            starts[at] = word.start
    return starts


def _depth(words: Sequence[Word], first: int, at: int) -> int:
    depth = steps = 0
    while steps < 64:
        depth += words[at].relation in _CLAUSES
        head = words[at].head - first
        if words[at].relation == "root" or head == at or not 0 <= head < len(words):
            break
        at, steps = head, steps + 1
    return depth
