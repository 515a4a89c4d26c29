"""Figures and names that differ are found; what is only said otherwise is not.

The share to reach: at least 95 % of planted differences, at most 2 % false alarms.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path

from promptprep.faces import known_language, load_scripts, studio_for, tools
from promptprep.model.script import Script
from promptprep.model.versions import VersionFinding
from promptprep.parsing.parse import parse_script
from promptprep.pipeline.scripts import time_one
from promptprep.versions.compare import Timed, compared
from promptprep.versions.findings import Side
from tests.versions.planted import PLANTED, REPHRASED

DEMO = Path(__file__).parents[2] / "scripts_demo"
VALUES = ("value-differs", "value-missing", "value-added", "unit-differs", "name-missing")


@lru_cache(maxsize=32)
def demo(language: str) -> Script:
    path = DEMO / f"sky.{language}.md"
    return load_scripts([path], studio_for([path]))[0]


def timed(script: Script) -> Timed:
    return Timed(Side(script, known_language(script.language), tools().engines), _timing(script.language))


@lru_cache(maxsize=32)
def _timing(language: str):  # type: ignore[no-untyped-def]
    return time_one(demo(language), studio_for([DEMO]), tools())


def found_in(language: str, before: str, after: str) -> list[VersionFinding]:
    """What is found about values and names when `before` becomes `after` in a version of the demo."""
    script = demo(language)
    assert script.source.count(before) >= 1, (language, before)
    changed = parse_script(script.source.replace(before, after, 1), name="sky", language=language)
    made = compared(timed(demo("en")), replace(timed(script), side=replace(timed(script).side, script=changed)))
    return [f for f in made.findings if f.name in VALUES]


def test_at_least_95_of_100_planted_differences_are_found() -> None:
    cases = [(language, *case) for language, planted in PLANTED.items() for case in planted]
    assert len(cases) >= 100
    missed = [case for case in cases if not found_in(*case)]
    assert len(missed) <= 0.05 * len(cases), missed


def test_what_is_only_said_otherwise_is_no_difference() -> None:
    cases = [(language, *case) for language, said in REPHRASED.items() for case in said]
    alarms = {case: [f.message for f in found] for case in cases if (found := found_in(*case))}
    assert len(alarms) <= 0.02 * len(cases), alarms


def test_the_demo_as_it_stands_has_no_differences() -> None:
    for language in PLANTED:
        script = demo(language)
        assert found_in(language, script.source[:20], script.source[:20]) == []
