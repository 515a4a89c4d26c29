"""Voice rests, sentences that can go, repairs, and faults of the whole session."""

from __future__ import annotations

from dataclasses import replace
from zoneinfo import ZoneInfo

import pytest

from promptprep import faces
from promptprep.model.rig import Studio
from promptprep.model.session import Session, TimedItem
from promptprep.parsing.parse import parse_script
from promptprep.pipeline.scripts import time_one
from promptprep.session.clock import moment
from promptprep.session.findings import session_findings
from promptprep.session.plan import needed_ms, planned_session
from promptprep.session.repair import repairs
from promptprep.session.rests import rests_of
from promptprep.session.spare import spare_sentences
from promptprep.store.session import session_limits
from tests.session.make import START, item, order

LIMITS = session_limits()
NAMES = ("speak_most_s", "rest_least_s", "rest_per_hour_s")


def spare(source: str, language: str = "en") -> list[str]:
    script = parse_script(source, language=language)
    timing = time_one(script, Studio(), faces.tools())
    return [s.text for s in spare_sentences(script, timing, faces.tools().engines.breaks)]


def test_every_figure_has_a_source_and_a_range() -> None:
    assert (LIMITS.speak_most_s.value, LIMITS.rest_least_s.value, LIMITS.rest_per_hour_s.value) == (1800, 300, 600)
    assert all(getattr(LIMITS, name).source for name in NAMES)


# -- rests ----------------------------------------------------------------------------------------------------


def test_a_rest_is_due_before_half_an_hour_without_one() -> None:
    items = [item(f"X{i}", 700) for i in range(4)]
    (rest,) = rests_of(planned_session(order(items), items).items, LIMITS)
    assert rest.due_after == ("X1",)
    assert rest.spoken_ms == 2_800_000
    assert rest.rest_ms == pytest.approx(2800 / 3600 * 600_000, abs=1)


def test_a_gap_of_five_minutes_is_a_rest_and_a_shorter_one_is_not() -> None:
    for gap_ms, due in ((300_000, ()), (299_000, ("X0",))):
        items = [item("X0", 1000), item("X1", 1000, changeover_ms=gap_ms)]
        (rest,) = rests_of(planned_session(order(items), items).items, LIMITS)
        assert rest.due_after == due


def test_each_reader_rests_while_another_reads() -> None:
    items = [item(f"X{i}", 900, reader=("ines", "tomas")[i % 2]) for i in range(6)]
    rests = rests_of(planned_session(order(items), items).items, LIMITS)
    assert [(r.reader, r.due_after) for r in rests] == [("ines", ()), ("tomas", ())]


# -- sentences that can go --------------------------------------------------------------------------------------

LAST = "\n\nThis is the end of it."


@pytest.mark.parametrize(
    ("source", "wanted"),
    [
        ("The dome is open. It is cold up here." + LAST, ["It is cold up here."]),
        ("The dome is open." + LAST, []),
        ("The dome is open. It is 5 degrees." + LAST, []),
        ("The dome is open. Is it cold?" + LAST, []),
        ("The dome is open. It is *cold* up here." + LAST, []),
        ('The dome is open. Look at [Vega]{say="VEE-ga"} now.' + LAST, []),
        ("The dome is open. It is [graphic: map] cold." + LAST, []),
        ("The dome is open. It is cold.\n\n[clip 0:05 Snow]" + LAST, []),
        ("The dome is open. It is cold up here.", []),
    ],
)
def test_the_stated_rule(source: str, wanted: list[str]) -> None:
    assert spare(source) == wanted


def test_the_rule_in_other_languages() -> None:
    assert spare("ドームは開いています。ここは寒いです。\n\n終わりです。", "ja") == ["ここは寒いです。"]
    assert spare("القبة مفتوحة. الجو بارد هنا.\n\nهذه هي النهاية.", "ar") == ["الجو بارد هنا."]


# -- repairs ----------------------------------------------------------------------------------------------------


def mended(items: list[TimedItem], end_s: float) -> list[str]:
    session = planned_session(order(items, end_s), items)
    return [r.kind for r in repairs(session, LIMITS, needed_ms(session, 0.9))]


def test_slots_that_fit_each_others_scripts_are_swapped_and_others_are_not() -> None:
    fits = [item("A", 70, slot_ms=60_000), item("B", 50, slot_ms=80_000)]
    assert mended(fits, 600)[0] == "swap"
    assert "swap" not in mended([item("A", 70, slot_ms=60_000), item("B", 75, slot_ms=80_000)], 600)


def test_nothing_is_mended_in_a_session_that_holds() -> None:
    assert mended([item("A", 50, slot_ms=60_000)], 600) == []


def test_breaks_are_never_shorter_than_a_rest() -> None:
    tea = item("T", 600, fixed_s=600)
    tea = replace(tea, item=replace(tea.item, kind="break"))
    session = planned_session(order([item("A", 100), tea], 400), [item("A", 100), tea])
    rest = next(r for r in repairs(session, LIMITS, 500_000) if r.kind == "rest")
    assert rest.gives_ms == 300_000


# -- the clock ----------------------------------------------------------------------------------------------------


def night(hour: int, minute: int = 0) -> Session:
    """A session of three hours in the night on which the clocks go back in the EU (25 October 2026, 01:00 UTC)."""
    zone = ZoneInfo("Europe/Paris")
    when = moment(START.replace(month=10, day=25).date(), START.time().replace(hour=hour, minute=minute), zone)
    items = [item("A", 10_800)]
    return planned_session(replace(order(items, start=when), zone=zone), items)


def test_a_night_with_a_changed_clock_is_told() -> None:
    assert [f.name for f in session_findings(night(1), LIMITS)] == ["clock-changes"]
    assert [f.name for f in session_findings(night(2, 30), LIMITS)] == ["clock-time-twice", "clock-changes"]
    assert [f.name for f in session_findings(night(4), LIMITS)] == []
