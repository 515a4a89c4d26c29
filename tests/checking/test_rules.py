"""Every rule fires on its cases and stays silent on the others, in every language that it claims."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from promptprep.checking.catalogue import BY_NAME, RULES
from promptprep.checking.rule import EVERY, Rule
from promptprep.engines.load import engines
from promptprep.model.finding import LEVELS
from tests.checking.build import names

CASES = Path(__file__).parent / "cases"
LANGUAGE_RULES = [rule for rule in RULES if rule.languages != EVERY and rule.name != "hard-passage"]
SHOWN = [rule for rule in RULES if rule.fires and rule.name != "unknown-name"]


def cases(rule: Rule) -> dict[str, dict[str, list[str]]]:
    return tomllib.loads((CASES / f"{rule.name}.toml").read_text("utf-8"))


def each(kind: str) -> list[tuple[str, str, str]]:
    """(rule, language, copy), language by language: the engines keep few trained pipelines at a time."""
    rows = [
        (rule.name, language, copy)
        for rule in LANGUAGE_RULES
        for language, lines in cases(rule).items()
        for copy in lines[kind]
    ]
    return sorted(rows, key=lambda row: row[1])


@pytest.mark.parametrize(("name", "language", "copy"), each("fires"))
def test_fires(name: str, language: str, copy: str) -> None:
    if name == "parted-verb" and engines().structure.parse([copy], language) is None:
        pytest.skip("needs a trained parser")
    assert name in names(copy, language)


@pytest.mark.parametrize(("name", "language", "copy"), each("silent"))
def test_is_silent(name: str, language: str, copy: str) -> None:
    assert name not in names(copy, language)


@pytest.mark.parametrize("rule", LANGUAGE_RULES, ids=lambda r: r.name)
def test_has_cases_in_each_language_it_claims(rule: Rule) -> None:
    assert sorted(cases(rule)) == sorted(rule.languages)


@pytest.mark.parametrize("rule", SHOWN, ids=lambda r: r.name)
def test_what_explain_shows_is_so(rule: Rule) -> None:
    assert rule.name in names(rule.fires, rule.shown_in)
    assert rule.name not in names(rule.silent, rule.shown_in)


def test_every_rule_is_a_file_of_its_name() -> None:
    folder = Path(__file__).parents[2] / "promptprep" / "checking" / "rules"
    files = {p.stem.replace("_", "-") for p in folder.glob("*.py")} - {"--init--", "patterned"}
    grouped = {"parser-faults", "excused"}
    own = {rule.name for rule in RULES if rule.find.__module__.rsplit(".", 1)[1].replace("_", "-") not in grouped}
    assert own == files - grouped


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.name)
def test_says_what_and_why(rule: Rule) -> None:
    assert rule.level in LEVELS
    assert rule.name == rule.name.lower()
    assert rule.sees.endswith(".")
    assert rule.trips.endswith(".")
    assert rule.sources
    assert all(p.source and p.unit for p in rule.parameters.values())


def test_names_are_unique() -> None:
    assert len(BY_NAME) == len(RULES)
