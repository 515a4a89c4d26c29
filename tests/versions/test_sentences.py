"""Sentences of the demo's versions, paired over whole scripts without paragraphs: F1 of the links at least 0.95.

What belongs together was set down by hand: sentence for sentence in the same order, but for Japanese and Korean, which
say some English sentences in two or three. Further merged and split sentences are planted.
"""

from __future__ import annotations

import random
from functools import lru_cache

import pytest

from promptprep.faces import known_language, tools
from promptprep.versions.figures import figure_reader, figures
from promptprep.versions.sentences import Values, sentence_beads, sentence_spans
from tests.versions.test_planted import demo

OTHERS = ("ar", "de", "es", "fr", "hi", "ja", "ko", "pt", "ru", "sw", "zh")
# language -> paragraph -> for each English sentence, how many of the version's say it.
BY_HAND = {
    "ja": {0: [2, 1], 3: [1, 1, 1, 2], 4: [1, 1, 1, 3], 5: [1, 1, 2], 8: [2]},
    "ko": {0: [2, 1], 3: [1, 1, 1, 2], 5: [1, 1, 2], 8: [2]},
}
Links = set[tuple[int, int]]


@lru_cache(maxsize=32)
def paragraphs(language: str) -> list[list[str]]:
    ends = tools().engines.breaks.sentences
    return [
        [span.of(p.text) for span in sentence_spans(p.text, lambda text: ends(text, language))]
        for segment in demo(language).segments
        for p in segment.paragraphs
    ]


def gold(language: str) -> tuple[list[str], list[str], Links]:
    ours: list[str] = []
    theirs: list[str] = []
    links: Links = set()
    for number, (a, b) in enumerate(zip(paragraphs("en"), paragraphs(language), strict=True)):
        counts = BY_HAND.get(language, {}).get(number, [1] * len(a))
        assert len(counts) == len(a), (language, number)
        assert sum(counts) == len(b), (language, number, b)
        at = len(theirs)
        for i, count in enumerate(counts):
            links |= {(len(ours) + i, at + k) for k in range(count)}
            at += count
        ours += a
        theirs += b
    return ours, theirs, links


def values_of(language: str) -> Values:
    reader = figure_reader(known_language(language), tools().engines.speller)
    return lambda text: frozenset(k for f in figures(text, reader) if f.firm for k in f.keys)


def f1(source: list[str], target: list[str], links: Links, language: str, unsure: Links | None = None) -> float:
    """F1 of the links that are found; `unsure` ones are neither right nor wrong."""
    ratio = sum(map(len, target)) / sum(map(len, source))
    beads = sentence_beads(source, target, ratio, (values_of("en"), values_of(language)))
    found = {(i, j) for b in beads for i in b.source for j in b.target} - (unsure or set())
    return 2 * len(found & links) / (len(found) + len(links))


def merged(target: list[str], links: Links, at: int) -> tuple[list[str], Links]:
    """The target with sentence `at` and the next made one."""
    joined = [*target[:at], target[at] + " " + target[at + 1], *target[at + 2 :]]
    return joined, {(i, j if j <= at else j - 1) for i, j in links}


def split(target: list[str], links: Links, at: int) -> tuple[list[str], Links]:
    """The target with sentence `at` cut in two."""
    half = len(target[at]) // 2
    parts = [*target[:at], target[at][:half], target[at][half:], *target[at + 1 :]]
    moved = {(i, j if j <= at else j + 1) for i, j in links}
    return parts, moved | {(i, at + 1) for i, j in links if j == at}


@pytest.mark.parametrize("language", OTHERS)
def test_sentences_of_whole_scripts_are_paired(language: str) -> None:
    source, target, links = gold(language)
    assert f1(source, target, links, language) >= 0.95


def test_merged_and_split_sentences_are_paired() -> None:
    """Two planted in each version, 20 times over; F1 over all."""
    draw, scores = random.Random(8), []
    for language in OTHERS:
        source, target, links = gold(language)
        for _ in range(20):
            parts, moved = merged(target, links, draw.randrange(0, 8))
            parts, moved = split(parts, moved, draw.randrange(12, 20))
            scores.append(f1(source, parts, moved, language))
    assert sum(scores) / len(scores) >= 0.95
