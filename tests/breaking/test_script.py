"""A whole script's lines: their places, looks and planned seconds."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from promptprep.breaking.script import break_script, direction_of, line_times
from promptprep.engines.load import engines
from promptprep.errors import PromptprepError
from promptprep.model.lines import BrokenScript, Column
from promptprep.model.ports import Engines
from promptprep.model.script import Paragraph, Script
from promptprep.model.timing import BlockTiming, TimedWord
from promptprep.parsing.parse import parse_script
from promptprep.spans import Span
from promptprep.store.languages import language_data
from tests.rendering.screen_factory import timed

COLUMN = Column(width_px=900, font_px=60, line_px=84)
SOURCE = """# Opening

Good evening. I'm standing under [Betelgeuse]{say="BEE-tel-jooz"}, and it is *not about* to explode tonight.

[clip 0:25 Moonrise over the ridge]

> Ask about the dust.

First line.\\
Second line, forced.

# Second

Nothing but a word: Donaudampfschifffahrtselektrizitätenhauptbetriebswerk.
"""


class NoStructure:
    def parse(self, texts: object, language: str) -> None:
        return None


def tools() -> Engines:
    return replace(engines(), structure=NoStructure())


def broken(source: str = SOURCE, language: str = "en", column: Column = COLUMN) -> tuple[Script, BrokenScript]:
    script = parse_script(source, name="test", language=language)
    return script, break_script(script, timed(script), column, language_data(language), tools())


def test_lines_are_numbered_and_know_their_place() -> None:
    script, result = broken()
    assert [line.number for line in result.lines] == list(range(len(result.lines)))
    for line in result.lines:
        paragraph = script.segments[line.segment].blocks[line.block]
        assert isinstance(paragraph, Paragraph)
        assert line.text == " ".join(line.span.of(paragraph.text).split())
        assert line.width_em <= COLUMN.width_em


def test_no_word_is_lost_and_only_copy_is_shown() -> None:
    script, result = broken()
    copy = "".join(p.text for segment in script.segments for p in segment.paragraphs)
    assert "".join("".join(line.text for line in result.lines).split()) == "".join(copy.split())


def test_stress_and_pronunciation_stand_on_their_line() -> None:
    _, result = broken()
    runs = [run for line in result.lines for run in line.runs]
    assert [run.text for run in runs if run.say] == ["Betelgeuse"]
    assert "".join(run.text for run in runs if run.stress).replace(" ", "") == "notabout"


def test_a_forced_line_end_stays() -> None:
    _, result = broken()
    texts = [line.text for line in result.lines]
    assert "First line." in texts
    assert texts[texts.index("First line.") + 1].startswith("Second line")


def test_seconds_run_on() -> None:
    _, result = broken()
    for line in result.lines:
        assert line.at_s <= line.end_s
    for before, after in pairwise(result.lines):
        assert before.at_s < after.at_s
        assert before.end_s <= after.at_s
    first, *_, last = [line for line in result.lines if line.segment == 0]
    assert first.at_s == 0
    assert last.at_s > 25, "the clip lies between"


def test_a_sentence_per_line() -> None:
    script = parse_script("One star. Two stars! Three?", name="test", language="en")
    result = break_script(script, timed(script), COLUMN, language_data("en"), tools(), sentence_per_line=True)
    assert [line.text for line in result.lines] == ["One star.", "Two stars!", "Three?"]
    assert [line.ends_sentence for line in result.lines] == [True, True, True]
    assert [line.ends_paragraph for line in result.lines] == [False, False, True]


def test_a_word_too_wide_is_named_with_what_it_needs() -> None:
    script, result = broken()
    (wide,) = result.too_wide
    paragraph = script.segments[wide.segment].blocks[wide.block]
    assert isinstance(paragraph, Paragraph)
    assert wide.span.of(paragraph.text) == wide.text
    assert wide.text.startswith("Donau")
    assert wide.width_em > wide.column_em == COLUMN.width_em


def test_characters_without_a_glyph_are_listed() -> None:
    assert broken("A comet 🙂 tonight.")[1].missing == ("🙂",)


@pytest.mark.parametrize("width", [0.0, -5.0, float("inf"), float("nan")])
def test_a_column_that_cannot_be(width: float) -> None:
    with pytest.raises(PromptprepError):
        broken(column=Column(width, 60, 84))


def test_times_of_lines_that_share_a_word_or_have_none() -> None:
    words = (TimedWord(Span(0, 4), 1.0, 2.0), TimedWord(Span(5, 9), 2.5, 4.0))
    timing = BlockTiming(0, 1.0, 4.5, words)
    assert line_times([Span(0, 4), Span(5, 9)], timing, 0.0) == [(1.0, 2.0), (2.5, 4.0)]
    assert line_times([Span(0, 7), Span(7, 9), Span(9, 10)], timing, 0.0) == [(1.0, 4.0), (4.0, 4.0), (4.0, 4.0)]
    assert line_times([Span(0, 1)], None, 7.0) == [(7.0, 7.0)]


def test_direction_is_the_datas_else_the_first_strong_characters() -> None:
    """UAX 9, rules P2 and P3."""
    assert direction_of("GPS", language_data("ar")) == "rtl"
    assert direction_of("123 שלום", language_data("he")) == "rtl"
    assert direction_of("123 ciao שלום", language_data("it")) == "ltr"
