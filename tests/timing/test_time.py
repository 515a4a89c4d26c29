"""Running times: how they add up, where words and pauses fall, and that any text gets one."""

from __future__ import annotations

import time
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from promptprep.engines.load import engines
from promptprep.model.language import FIRST_CLASS
from promptprep.model.timing import ScriptTiming
from promptprep.parsing.parse import parse_script
from promptprep.store.languages import language_data
from promptprep.timing.pace import default_pace
from promptprep.timing.time import time_script
from tests.timing.stand import EN, measured, speaker, timed

SCRIPT = """\
# Opening {slot=0:20}

Good evening, everyone. [pause 2] I'm standing under [Betelgeuse]{say="BEE-tel-jooz"}, and it is *not* about to explode.

[clip 0:25 Moonrise]

Two more things: the dome, and the dust.

# Middle {slot=0:40}

[live 2:30 interview]

# Close {slot=0:10}

Clear skies.
"""


def script_timing(source: str = SCRIPT, tag: str = "en") -> ScriptTiming:
    data = language_data(tag)
    script = parse_script(source, language=tag)
    return time_script(script, data, default_pace(data), engines(), speaker(data))


def test_segments_stand_one_after_another() -> None:
    found = script_timing()
    at_s = 0.0
    for segment in found.segments:
        assert segment.start_s == pytest.approx(at_s, abs=1e-9)
        at_s += segment.timing.mean_s
    assert found.timing.mean_s == pytest.approx(at_s)


def test_fixed_time_is_what_the_cues_say() -> None:
    found = script_timing()
    assert [s.timing.fixed_s for s in found.segments] == pytest.approx([27, 150, 0])
    assert found.timing.fixed_s == pytest.approx(177)
    assert found.segments[1].timing.mean_s == pytest.approx(150)


def test_a_cue_adds_its_seconds_and_nothing_else() -> None:
    without = script_timing(SCRIPT.replace("[pause 2] ", ""))
    assert script_timing().timing.mean_s - without.timing.mean_s == pytest.approx(2)


def test_fixed_time_has_no_scatter() -> None:
    found = script_timing().segments[1].timing
    assert found.low_s == found.mean_s == found.high_s


def test_slots_of_segments_make_the_script_s() -> None:
    assert script_timing().slot_s == pytest.approx(70)
    assert script_timing(SCRIPT.replace(" {slot=0:10}", "")).slot_s is None


def test_words_and_pauses_fill_each_block_in_order() -> None:
    for segment in script_timing().segments:
        for block in segment.blocks:
            events = sorted([*block.words, *block.pauses], key=lambda e: (e.start_s, e.end_s))
            assert events[0].start_s == pytest.approx(block.start_s)
            assert events[-1].end_s == pytest.approx(block.end_s)
            assert all(a.end_s == pytest.approx(b.start_s) for a, b in pairwise(events))


def test_the_kinds_of_pauses() -> None:
    kinds = [p.kind for s in script_timing().segments for b in s.blocks for p in b.pauses]
    assert kinds == [
        "comma", "sentence", "cue", "comma", "sentence", "paragraph",
        "clip",
        "colon", "comma", "sentence", "segment",
        "live",
        "breath",
    ]  # fmt: skip


def test_stress_and_a_pronounced_name_take_longer() -> None:
    plain = script_timing("The moon is not there under Betelgeuse.")
    stressed = script_timing("The moon is *not* there under Betelgeuse.")
    named = script_timing('The moon is not there under [Betelgeuse]{say="Betelgeuse"}.')
    pace = plain.pace.coefficients
    assert stressed.timing.mean_s - plain.timing.mean_s == pytest.approx(pace["stress_s"])
    assert named.timing.mean_s - plain.timing.mean_s == pytest.approx(pace["name_s"])


@pytest.mark.parametrize(
    "text", ["Good evening. Tonight the moon rises, slowly, at 9:40.", 'He said: "Look up!"', "So,"]
)
def test_a_script_of_one_paragraph_takes_the_time_of_its_text(text: str) -> None:
    assert script_timing(text).timing.mean_s == pytest.approx(timed(text).mean_s)


@pytest.mark.parametrize("text", ["", "   ", "\n\n", "—", "🌙 ✨", "..."])
def test_an_empty_text_takes_no_time(text: str) -> None:
    found = timed(text)
    assert (found.mean_s, found.low_s, found.high_s, found.words) == (0, 0, 0, 0)


def test_more_text_and_a_slower_pace_take_longer() -> None:
    one, two = timed("The moon rises."), timed("The moon rises. The sun sets.")
    assert one.mean_s < two.mean_s
    pace = default_pace(EN)
    slow = replace(pace, coefficients={n: 1.2 * v for n, v in pace.coefficients.items()})
    assert timed("The moon rises.", pace=slow).mean_s == pytest.approx(1.2 * one.mean_s)


@pytest.mark.parametrize("tag", FIRST_CLASS)
def test_what_is_written_in_figures_takes_as_long_as_its_words(tag: str) -> None:
    """0 to 9 are said by name in every language: never left out, never read as nothing."""
    assert timed("7", tag).mean_s > timed("", tag).mean_s + 0.2


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=200), st.sampled_from(FIRST_CLASS))
def test_any_text_gets_a_time(text: str, tag: str) -> None:
    found = timed(text, tag)
    assert 0 <= found.low_s <= found.mean_s <= found.high_s < 3600


@pytest.mark.parametrize("tag", ["en", "zh", "ja", "ar"])
def test_work_grows_in_a_straight_line(tag: str) -> None:
    """Four times the text may take four times as long, with room for a busy machine, not sixteen times."""
    text = {
        "en": "The moon rises over the dome, and we wait. ",
        "zh": "月亮升起，我们等待。",
        "ja": "月が昇り、私たちは待ちます。",
        "ar": "يطلع القمر، ونحن ننتظر. ",
    }[tag]
    measured(text, tag)
    once, four = (min(_taken_s(text * n, tag) for _ in range(3)) for n in (250, 1000))
    assert four < 12 * once + 0.02  # sixteen times the work were it quadratic


def _taken_s(text: str, tag: str) -> float:
    start = time.process_time()
    measured(text, tag)
    return time.process_time() - start


def test_a_word_of_many_letters_and_many_figures_end() -> None:
    assert timed("a" * 100_000).mean_s > 0
    assert timed("7" * 10_000).mean_s > 1000
