"""What rules that are lists of patterns in a language's data have in common."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from promptprep.checking.context import Context, Passage
from promptprep.spans import Span


@lru_cache(maxsize=128)
def compiled(patterns: tuple[str, ...]) -> re.Pattern[str] | None:
    """One pattern that finds any of them, small and capital letters alike; None for none."""
    return re.compile("|".join(f"(?:{p})" for p in patterns), re.IGNORECASE) if patterns else None


@lru_cache(maxsize=128)
def phrases(words: tuple[str, ...], spaced: bool) -> re.Pattern[str] | None:
    """A pattern that finds any of the phrases, whole words only where words have spaces; the longest wins."""
    if not words:
        return None
    any_of = "|".join(re.escape(w) for w in sorted(words, key=len, reverse=True))
    return re.compile(rf"(?<!\w)(?:{any_of})(?!\w)" if spaced else any_of, re.IGNORECASE)


def matches(context: Context, pattern: re.Pattern[str] | None) -> Iterator[tuple[Passage, Span, str]]:
    """Each match in each sentence: passage, place in its text, what was matched."""
    if pattern is None:
        return
    for passage, sentence in context.each_sentence():
        for found in pattern.finditer(sentence.text):
            if found.end() > found.start():
                yield passage, Span(*found.span()).shifted(sentence.span.start), found[0]
