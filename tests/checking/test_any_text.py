"""Any text in any language gives findings inside the text; work grows in a straight line."""

from __future__ import annotations

import time
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from promptprep.checking.catalogue import RULES
from promptprep.checking.check import check_script
from promptprep.checking.suggest import reworded
from promptprep.engines.load import engines
from promptprep.model.finding import LEVELS
from promptprep.model.language import FIRST_CLASS
from tests.checking.build import context_for


class NoParser:
    def parse(self, texts: object, language: str) -> None:
        return None


UNPARSED = replace(engines(), structure=NoParser())
PIECES = st.sampled_from(
    [
        "the the", "384,403", "3.14", "03/04/2026", " (", ")", " — ", "«", "»", '"', "{say=", '[a]{say="b"}', "[clip]",
        "[x y]", "<!-- excuse: doubled-word -->", "<!-- excuse:", "# A {slot=0:01}\n\n", "> note\n\n", "\n\n", ",",
        "、", "。", ".", "?", "\u200b", "\u202e", "c\u043emet", "的的", "がが", "не нельзя", "that which who when", "@",
        "#a",
        "http://a.b", "<script>", "</b>", "\n| a | b |\n|--|--|\n", "HOST: ", "<!--",
        "f(x);", "1,1,1", "2023年",
        "\U0001f600", "\U00020000", "İ", "ß", "\u0301", "١٢٣", "१२३", "²", "½", "'", "’s", "NEVER LOOK",
    ]
)  # fmt: skip
TEXTS = st.lists(st.one_of(PIECES, st.text(max_size=12)), max_size=14).map(" ".join)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(text=TEXTS, language=st.sampled_from((*FIRST_CLASS, "is")))
def test_any_text_gives_findings_inside_it(text: str, language: str) -> None:
    context = replace(context_for(text, language), engines=UNPARSED)
    findings = check_script(context)
    assert all(0 <= f.start <= f.end <= len(text) for f in findings)
    assert all(f.level in LEVELS and f.message and f.hint for f in findings)
    assert [f.start for f in findings] == sorted(f.start for f in findings)
    assert isinstance(reworded(text, findings), str)


@pytest.mark.parametrize(
    "piece",
    [
        "the ", "the, ", "a (b ", "that ", "1,234 ", "\u200b", "“a ", "of the end ", "A. ", "not ", "NEVER ", "(",
        "— a ",        "<!-- excuse: long-list because x --> ", "的", "a\u043e", "HOST: ", "<b> ", "<script> ",
        "f(x) { ", "1,", "| ", "\n\nf(x); g(y);", "\U0001f319 ",
    ],
)  # fmt: skip
def test_work_grows_in_a_straight_line(piece: str) -> None:
    """Four times the text may take at most ten times as long (a square would take sixteen)."""
    small, large = (_seconds(piece * n) for n in (1000, 4000))
    assert large < 10 * max(small, 0.02)


def _seconds(text: str) -> float:
    context = replace(context_for(text, "en"), engines=UNPARSED)
    best = float("inf")
    for _ in range(3):
        start = time.process_time()
        check_script(replace(context), RULES)
        best = min(best, time.process_time() - start)
    return best
