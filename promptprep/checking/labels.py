"""Speakers' labels in pasted copy: "HOST:" and the like."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Passage
from promptprep.spans import Span

_LABEL = re.compile(
    r"(?:^|(?<=[.!?…\"”»])\s)(?P<label>[^\W\d_]{2,20}(?:[ .\-]{1,2}[^\W_]{1,20}){0,2}\.?\s?[:：])(?=\s|$)"
)


def labels(passage: Passage) -> Iterator[Span]:
    """Places of labels in capitals, colon included, where the passage or a sentence of it begins."""
    for found in _LABEL.finditer(passage.text):
        if found["label"].isupper():
            yield Span(*found.span("label"))
