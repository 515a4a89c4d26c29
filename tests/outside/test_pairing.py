"""Sentence pairing on a public aligned text: the Universal Declaration of Human Rights, thirty articles in one."""

from __future__ import annotations

import random

import pytest

from tests.outside.declaration import OTHERS, aligned, articles
from tests.versions.test_sentences import f1, merged, split


@pytest.mark.parametrize("language", OTHERS)
def test_the_declaration_s_sentences_are_paired(language: str) -> None:
    """F1 of the links over all thirty articles, no borders of articles or paragraphs given."""
    assert len(articles(language)) == 30
    source, target, links, unsure = aligned(language)
    assert f1(source, target, links, language, unsure) >= 0.95


def test_merged_and_split_sentences_of_the_declaration_are_paired() -> None:
    draw, scores = random.Random(8), []
    for language in OTHERS:
        for _ in range(4):
            source, parts, moved, perhaps = aligned(language)
            for _ in range(3):
                at = draw.randrange(0, len(parts) - 1)
                (_, perhaps), (parts, moved) = merged(parts, perhaps, at), merged(parts, moved, at)
                at = draw.randrange(0, len(parts))
                (_, perhaps), (parts, moved) = split(parts, perhaps, at), split(parts, moved, at)
            scores.append(f1(source, parts, moved, language, perhaps - moved))
    assert sum(scores) / len(scores) >= 0.95
