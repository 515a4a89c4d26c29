"""Excuses: they cover their block, must give a reason, and must not outlive the fault."""

from __future__ import annotations

from tests.checking.build import found

COPY = "The moon rises in the the east."
EXCUSE = "<!-- excuse: doubled-word because it is a quotation -->"


def names(source: str) -> list[str]:
    return [f.name for f in found(source, "en")]


def test_an_excuse_before_the_paragraph_covers_it() -> None:
    assert names(f"{EXCUSE}\n\n{COPY}") == []


def test_an_excuse_inside_the_paragraph_covers_it() -> None:
    assert names(f"{COPY} {EXCUSE}") == []
    assert names(f"The moon {EXCUSE} rises in the the east.") == []


def test_it_covers_that_block_only() -> None:
    assert names(f"{EXCUSE}\n\n{COPY}\n\n{COPY}") == ["doubled-word"]


def test_it_covers_that_rule_only() -> None:
    assert names(f"{EXCUSE}\n\n{COPY} You must NEVER LOOK up.") == ["shouted-word"]


def test_two_rules_in_one_remark() -> None:
    both = "<!-- excuse: doubled-word, shouted-word because it is how the poster has it -->"
    assert names(f"{both}\n\n{COPY} You must NEVER LOOK up.") == []


def test_a_stale_excuse_is_found_and_can_be_taken_out() -> None:
    source = f"{EXCUSE}\n\nThe moon rises in the east."
    (one,) = found(source, "en")
    assert (one.name, source[one.start : one.end], one.instead) == ("stale-excuse", EXCUSE, "")


def test_an_excuse_without_a_reason_works_and_is_found() -> None:
    assert names(f"<!-- excuse: doubled-word -->\n\n{COPY}") == ["reasonless-excuse"]
    assert names(f"<!-- excuse: doubled-word because -->\n\n{COPY}") == ["reasonless-excuse"]


def test_a_name_that_no_rule_has_is_stale() -> None:
    assert names("<!-- excuse: double-word because it is so -->\n\nThe moon is up.") == ["stale-excuse"]


def test_other_remarks_are_left_alone() -> None:
    assert names("<!-- the excuse for this is the weather -->\n\nThe moon is up.") == []


def test_many_excuses_take_no_longer_each() -> None:
    source = f"{EXCUSE}\n\n{COPY}\n\n" * 400
    assert names(source) == []
