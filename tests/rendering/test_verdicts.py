"""The sentences that say whether a script fits its slot."""

from __future__ import annotations

import pytest

from promptprep.model.timing import Pace, ScriptTiming, Timing
from promptprep.rendering.verdicts import slot_task, slot_verdict


def timed(slot_s: float | None) -> ScriptTiming:
    """A minute that 100 words take; eight takes of ten last from 54.5 to 66 seconds."""
    timing = Timing(60.0, common_sd_s=4.0, own_sd_s=2.0, words=100)
    return ScriptTiming("en", timing, (), Pace("en", {}, 0.1, 0.3, "test"), slot_s)


@pytest.mark.parametrize(
    ("slot_s", "verdict", "said"),
    [
        (None, "no slot", "No slot is set"),
        (75, "fits", "Fits its slot of 1:15: 0:15 to spare."),
        (62, "tight", "Tight in its slot of 1:02: 0:02 to spare as planned, a slow take 0:04 over."),
        (58, "tight", "Tight in its slot of 0:58: 0:02 over as planned, a fast take 0:03 to spare."),
        (40, "over", "Does not fit its slot of 0:40: 0:20 over."),
    ],
)
def test_a_sentence_for_each_verdict(slot_s: float | None, verdict: str, said: str) -> None:
    word, sentence = slot_verdict(timed(slot_s))
    assert word == verdict
    assert sentence.startswith(said)


def test_what_to_do_about_a_slot() -> None:
    assert slot_task("Sky", timed(None)) is None
    assert slot_task("Sky", timed(59.5)) is None, "a reader's scatter"
    assert slot_task("Sky", timed(58)) == "Sky is likely to run 0:02 over its slot of 0:58."
    told = slot_task("Sky", timed(40)) or ""
    assert told.startswith("Sky does not fit its slot of 0:40: it runs 1:00. Cut about 33 words, or give it 1:06.")
