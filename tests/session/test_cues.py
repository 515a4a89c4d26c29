"""Cue numbers that stay, and faults that are seen in cues."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from promptprep import faces
from promptprep.model.rig import Studio
from promptprep.model.script import Paragraph, Script
from promptprep.model.session import Item, SessionFinding
from promptprep.parsing.parse import parse_script
from promptprep.pipeline.scripts import time_one
from promptprep.pipeline.sessions import numbered_script
from promptprep.session.cue_checks import CueCheck
from promptprep.session.cue_labels import between
from promptprep.session.cue_points import numbered_cues
from promptprep.session.cue_sheet import cue_sheet
from promptprep.session.cue_words import CueWords
from promptprep.store.session import cue_words

BLOCKS = st.lists(
    st.sampled_from(
        [
            "[vision: one]",
            "[sound: two]",
            "[pause 1]",
            "Good evening.",
            "It is [graphic: map] dark.",
            "# Head",
            "> note",
        ]
    ),
    max_size=14,
)


def script(source: str, language: str = "en") -> Script:
    return parse_script(source, language=language)


def labels(source: str) -> list[str]:
    read = script(source)
    return [cue.label for cue in numbered_cues(read, time_one(read, Studio(), faces.tools()))]


def said(source: str) -> list[str]:
    return [p.text for s in script(source).segments for p in s.blocks if isinstance(p, Paragraph) and p.text.strip()]


def found(
    source: str, *, assets: tuple[str, ...] = (), guests: tuple[str, ...] = (), language: str = "en"
) -> list[str]:
    return [f.name for f in findings(source, assets, guests, language)]


def findings(
    source: str, assets: tuple[str, ...] = (), guests: tuple[str, ...] = (), language: str = "en"
) -> list[SessionFinding]:
    read = script(source, language)
    cues = numbered_cues(read, time_one(read, Studio(), faces.tools()))
    item = Item("A", "script", guests=guests)
    return list(CueCheck(item, read, cues, CueWords(cue_words(), language), assets).findings())


# -- numbers --------------------------------------------------------------------------------------------------


@given(st.decimals(0, 999, places=3), st.decimals("0.001", 50, places=3), st.integers(1, 1200))
def test_new_numbers_lie_between_the_old_ones_and_are_never_whole(low: Decimal, gap: Decimal, count: int) -> None:
    got = between(low, low + gap, count)
    assert len(set(got)) == count
    assert got == sorted(got)
    assert low < got[0]
    assert got[-1] < low + gap
    assert all(n % 1 for n in got)


@given(BLOCKS)
def test_writing_the_numbers_changes_nothing_that_is_said_and_is_done_once(blocks: list[str]) -> None:
    source = "\n\n".join(blocks)
    written = numbered_script(script(source), faces.tools())
    assert labels(written) == labels(source)
    assert said(written) == said(source)
    assert numbered_script(script(written), faces.tools()) == written


def test_numbers_stay_when_cues_come_and_go() -> None:
    source = "[vision: a]\n\nOne.\n\n[vision: b]\n\nTwo.\n\n[vision: c]\n\nThree."
    written = numbered_script(script(source), faces.tools())
    assert labels(written) == ["1", "2", "3"]
    added = written.replace("Two.", "Two.\n\n[sound: new]\n\nAnd more.")
    assert labels(added) == ["1", "2", "2.5", "3"]
    kept = numbered_script(script(added), faces.tools())
    without = kept.replace("<!-- cue 2 -->\n[vision: b]\n\n", "")
    assert labels(without) == ["1", "2.5", "3"]
    assert labels(without + "\n\n[lights: d]") == ["1", "2.5", "3", "4"]


def test_a_number_out_of_place_spoils_no_other_and_is_found() -> None:
    source = "\n\n".join(f"<!-- cue {n} -->\n[vision: shot {n}]\n\nWords." for n in (9, 2, 3))
    first, *others = labels(source)
    assert others == ["2", "3"]
    assert Decimal(first) < 2
    assert "cue-number-out-of-order" in found(source)


def test_a_thousand_cues_at_one_point_are_one_number() -> None:
    source = "Hello.\n\n" + "\n".join(f"[sound: step {i}]" for i in range(1000)) + "\n\nBye."
    assert labels(source) == ["1"]
    assert found(source).count("two-at-once") == 1


def test_words_before_and_after_a_cue() -> None:
    read = script("One two three four five six seven.\n\n[clip 0:05 Rain]\n\n# B\n\n[vision: a]\n\nEight nine.")
    first, second = cue_sheet(read, numbered_cues(read, time_one(read, Studio(), faces.tools())))
    assert first.words == "three four five six seven."
    assert first.first_words == "Eight nine."
    assert second.after == "clip Rain"


# -- faults: each with a script that has it and one that has not -----------------------------------------------

PAIRS = {
    "two-at-once": ("[vision: wide]\n[vision: close]\n\nHello.", "[vision: wide]\n[sound: up]\n\nHello."),
    "reader-without-text": (
        "[prompter: guest camera]\n\nHello there.",
        "Hello there.\n\n[prompter: guest camera]\n[live 1:00 talk]\n[prompter: host copy]\n\nThanks.",
    ),
    "graphic-left-on": (
        "[graphic: map]\n\nHello.",
        "[graphic: map]\n\nHello.\n\n[graphic: map off]\n\nBye.",
    ),
    "clip-over-slot": ("# A {slot=0:10}\n\nHi.\n\n[clip 0:20 Rain]", "# A {slot=0:30}\n\nHi.\n\n[clip 0:20 Rain]"),
    "return-not-open": (
        "Hello.\n\n[prompter: guest camera]\n[live 1:00 talk]",
        "[sound: open return to guest]\n\nHello.\n\n[prompter: guest camera]\n[live 1:00 talk]",
    ),
}


@pytest.mark.parametrize("name", PAIRS)
def test_each_fault_is_seen_and_its_mended_script_is_silent(name: str) -> None:
    faulty, good = PAIRS[name]
    assert name in found(faulty)
    assert name not in found(good)


def test_assets_are_asked_for_only_where_a_list_is_kept() -> None:
    source = "[clip 0:05 Moonrise over the ridge]\n[graphic: name strap, Dr Osei]\n\nHi.\n\n[graphic: name strap off]"
    assert "unlisted-asset" not in found(source)
    assert found(source, assets=("Moonrise over the ridge.mp4", "name strap")).count("unlisted-asset") == 0
    assert found(source, assets=("name strap",)).count("unlisted-asset") == 1


def test_a_guest_named_in_the_session_needs_a_return() -> None:
    assert "return-not-open" in found("[vision: wide]\n\nHello.", guests=("Dr Osei",))
    assert "return-not-open" not in found("[vision: wide]\n\nHello.")


@pytest.mark.parametrize(
    ("language", "on", "off"),
    [("de", "[graphic: Karte]", "[graphic: Karte aus]"), ("ja", "[graphic: 地図]", "[graphic: 地図オフ]"),
     ("ru", "[graphic: карта]", "[graphic: убрать карту]"), ("fr", "[graphic: carte]", "[graphic: carte off]")],
)  # fmt: skip
def test_crews_write_in_their_own_language(language: str, on: str, off: str) -> None:
    assert "graphic-left-on" in found(f"{on}\n\nAbc.", language=language)
    assert "graphic-left-on" not in found(f"{on}\n\nAbc.\n\n{off}\n\nDef.", language=language)


def test_findings_point_at_their_place() -> None:
    (finding,) = findings("Hello.\n\n  \n[prompter: guest]\n\nGo on.", guests=())[:1]
    assert finding.line == 4
    assert finding.excerpt.startswith("[prompter")
