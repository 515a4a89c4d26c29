"""Speakers' labels in pasted copy: "HOST:", "Host:", "Maria:" and the like."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence

from promptprep.checking.context import Passage
from promptprep.spans import Span

_NAME = r"[^\W\d_]{2,20}(?:[ .\-]{1,2}[^\W_]{1,20}){0,2}\.?\s?[:：]"
_LABEL = re.compile(rf"(?:^|(?<=[.!?…\"”»])\s)(?P<label>{_NAME})(?=\s|$)")
_START = re.compile(
    r"(?:^|(?<=[.!?…\"”»。！？।؟])\s?)[ \t]*(?P<label>[^\W\d_][\w\u0900-\u097f'’.\- ]{0,40}?\s?(?::(?=\s|$)|：))",
    re.MULTILINE,
)
_NUMBER = re.compile(r"\s*\d+$")
MOST_WORDS = 3
TWICE = 2  # a label that comes back: common practice, no source


def labels(passage: Passage) -> Iterator[Span]:
    """Places of labels in capitals, colon included, where the passage or a sentence of it begins."""
    for found in _LABEL.finditer(passage.text):
        if found["label"].isupper():
            yield Span(*found.span("label"))


def all_labels(
    passages: Sequence[Passage], roles: Collection[str], names: Collection[str]
) -> Iterator[tuple[int, Span]]:
    """(number of the passage, place) of labels in capitals, and of those in small letters where a line begins with a
    role ("Host:"), with one of `names`, or with what comes back as label among others. `roles` and `names` are folded.
    """
    starts = {number: list(_starts(passage)) for number, passage in enumerate(passages)}
    known = _known(starts, passages, roles, names)
    for number, passage in enumerate(passages):
        found = set(labels(passage)) | {span for span in starts[number] if _folded(span.of(passage.text)) in known}
        yield from ((number, span) for span in sorted(found, key=lambda span: span.start))


def _starts(passage: Passage) -> Iterator[Span]:
    for found in _START.finditer(passage.text):
        if len(found["label"].split()) <= MOST_WORDS and not found["label"][0].islower():
            yield Span(*found.span("label"))


def _known(
    starts: Mapping[int, Sequence[Span]], passages: Sequence[Passage], roles: Collection[str], names: Collection[str]
) -> set[str]:
    """Which beginnings are labels: roles and names; what comes back, where there are two such or a role beside it."""
    counts = Counter(_folded(span.of(passages[number].text)) for number, spans in starts.items() for span in spans)
    sure = {label for label in counts if label in names or label in roles or _NUMBER.sub("", label) in roles}
    again = {label for label, count in counts.items() if count >= TWICE} | sure
    return again if len(again) >= TWICE else sure


def _folded(label: str) -> str:
    return label.rstrip(":： ").casefold()
