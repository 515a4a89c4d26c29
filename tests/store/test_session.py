"""Session files: what they mean, and faults with their places."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from promptprep.errors import ManyFaults, PromptprepError
from promptprep.session.clock import offset_ms, plus
from promptprep.store.session import letters, parse_session

ITEM = '\n[[items]]\nbreak = "Tea"\nruns = "10:00"\n'


def test_a_whole_session() -> None:
    order = parse_session(
        'title = "T"\ndate = 2026-12-01\nzone = "Europe/Lisbon"\nstart = "18:30"\nend = 19:10:00\nchangeover = "0:40"\n'
        '[[items]]\nscript = "a.en.md"\nslot = "4:00"\nguests = ["Dr Osei"]\n'
        '[[items]]\nsetup = "Move"\nruns = "8:00 to 12:00"\n'
        '[[items]]\ncode = "X"\ninsert = "Film"\nruns = 30\nat = "18:45"\nchangeover = "0"\n'
    )
    a, move, film = order.items
    assert (a.code, a.kind, a.file, a.slot_ms, a.changeover_ms, a.guests) == (
        "A", "script", "a.en.md", 240_000, 40_000, ("Dr Osei",),
    )  # fmt: skip
    assert (move.code, move.runs_ms, move.changeover_ms) == ("B", 600_000, 0)
    assert move.runs_sd_ms == pytest.approx(120_000 / 1.2815515655)
    assert (film.code, film.runs_ms, film.changeover_ms) == ("X", 30_000, 0)
    assert order.start == datetime(2026, 12, 1, 18, 30, tzinfo=UTC)
    assert film.at == datetime(2026, 12, 1, 18, 45, tzinfo=UTC)


def test_an_end_after_midnight() -> None:
    order = parse_session('date = 2026-12-31\nzone = "Asia/Tokyo"\nstart = "22:00"\nend = "01:30"' + ITEM)
    assert order.start
    assert order.end
    assert offset_ms(order.start, order.end) == 3.5 * 3_600_000
    assert order.end.date().isoformat() == "2027-01-01"


@pytest.mark.parametrize(
    ("date", "hours"),
    [("2026-03-29", 2), ("2026-10-25", 4), ("2026-06-01", 3)],  # EU rule: last Sundays of March and October, 01:00 UTC
)
def test_days_on_which_the_clocks_change(date: str, hours: int) -> None:
    order = parse_session(f'date = {date}\nzone = "Europe/Paris"\nstart = "01:00"\nend = "04:00"' + ITEM)
    assert order.start
    assert order.end
    assert offset_ms(order.start, order.end) == hours * 3_600_000
    assert plus(order.start, hours * 3_600_000) == order.end


def test_an_offset_says_which_of_two_hours_is_meant() -> None:
    text = 'zone = "Europe/Paris"\nstart = 2026-10-25T02:30:00{}\n' + ITEM
    early, late = (parse_session(text.format(o)).start for o in ("+02:00", "+01:00"))
    assert early
    assert late
    assert offset_ms(early, late) == 3_600_000


FAULTS = {
    "unknown-zone": ('zone = "Europe/Pariss"\nstart = "10:00"' + ITEM, 1),
    "contradictory-clock": ('start = "14:00"\nend = "13:00"' + ITEM, 2),
    "negative-time": ('changeover = "-0:30"' + ITEM, 1),
    "not-a-clock-time": ('start = "25:00"' + ITEM, 1),
    "skipped-clock-time": ('date = 2026-03-29\nzone = "Europe/Paris"\nstart = "02:30"' + ITEM, 3),
    "not-a-day": ('date = 9999-12-31\nstart = "23:59"\nend = "01:00"' + ITEM, 2),
    "unknown-key": ('starts = "10:00"' + ITEM, 1),
    "unknown-rate": ('rate = "31"' + ITEM, 1),
    "session-broken": ("title = \n", 1),
    "not-a-time": ('[[items]]\nbreak = "a"\nruns = "1:00"\n\n[[items]]\nbreak = "b"\nruns = "soon"\n', 7),
}


@pytest.mark.parametrize("code", FAULTS)
def test_faults_have_their_line_and_a_hint(code: str) -> None:
    text, line = FAULTS[code]
    with pytest.raises(PromptprepError) as caught:
        parse_session(text, "session.toml")
    fault = caught.value
    assert (fault.code, fault.line, fault.file) == (code, line, "session.toml")
    assert fault.hint


@pytest.mark.parametrize(
    "text",
    ["", "items = 3", "items = [1]", "[items]\na = 1", '[[items]]\nscript = "a.md"\nbreak = "b"', "[[items]]\n",
     '[[items]]\nbreak = "a"', '[[items]]\nbreak = "a"\nruns = "2:00 to 1:00"',
     '[[items]]\nscript = "a.md"\nruns = "1:00"',
     '[[items]]\nscript = 3', 'date = "soon"' + ITEM, 'start = 3' + ITEM, '[[items]]\nbreak = "a"\nruns = 1e9',
     'start = 0001-01-01T00:00:00+14:00' + ITEM, 'date = 0001-01-01\nend = "00:00:01"' + ITEM,
     '[[items]]\nbreak = "a"\nruns = "1:00"\nat = "10:00"', '[[items]]\nbreak = "a"\nruns = true'],
)  # fmt: skip
def test_what_is_no_session_is_a_fault_and_no_crash(text: str) -> None:
    with pytest.raises(PromptprepError):
        parse_session(text, "s.toml")


def test_all_faults_are_told_at_once() -> None:
    with pytest.raises(ManyFaults) as caught:
        parse_session('zone = "Mars/Base"\nchangeover = "-1"\n' + ITEM)
    assert len(caught.value.faults) == 2


def test_codes_leave_out_what_looks_like_a_digit() -> None:
    names = [letters(n) for n in range(1, 700)]
    assert len(set(names)) == len(names)
    assert not any(c in "IO" for name in names for c in name)
