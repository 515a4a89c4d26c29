"""The articles of the Universal Declaration of Human Rights in twelve languages: public, aligned by paragraphs."""

from __future__ import annotations

import json
from functools import lru_cache
from pathlib import Path

from promptprep.faces import tools
from promptprep.versions.sentences import sentence_spans

FILE = Path(__file__).parent / "data" / "udhr.json"
OTHERS = ("ar", "de", "es", "fr", "hi", "ja", "ko", "pt", "ru", "sw", "zh")
Links = set[tuple[int, int]]


@lru_cache(maxsize=1)
def _all() -> dict[str, list[list[str]]]:
    held: dict[str, list[list[str]]] = json.loads(FILE.read_text("utf-8"))
    return held


def articles(language: str) -> list[list[str]]:
    """The paragraphs of each of the thirty articles."""
    return _all()[language]


def sentences(text: str, language: str) -> list[str]:
    ends = tools().engines.breaks.sentences
    return [span.of(text) for span in sentence_spans(text, lambda t: ends(t, language))]


def aligned(language: str) -> tuple[list[str], list[str], Links, Links]:
    """English sentences, the language's, which belong together, and which may.

    Where a paragraph has as many sentences in both they belong together in order; else nobody has set down which of
    the paragraph's do, and any of them may.
    """
    ours: list[str] = []
    theirs: list[str] = []
    links: Links = set()
    unsure: Links = set()
    for one, other in zip(articles("en"), articles(language), strict=True):
        for p, q in zip(one, other, strict=True):
            a, b = sentences(p, "en"), sentences(q, language)
            for i in range(len(a)):
                for j in range(len(b)):
                    known = links if len(a) == len(b) and i == j else unsure
                    if len(a) != len(b) or i == j:
                        known.add((len(ours) + i, len(theirs) + j))
            ours += a
            theirs += b
    return ours, theirs, links, unsure
