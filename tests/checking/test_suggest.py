"""Safe rewordings and the patch made of them; the pages of `explain`."""

from __future__ import annotations

import subprocess
from dataclasses import replace
from pathlib import Path

import pytest

from promptprep.checking.catalogue import RULES
from promptprep.checking.explain import explain
from promptprep.checking.figures import rounded
from promptprep.checking.rule import Rule
from promptprep.checking.suggest import patch, reworded
from promptprep.parsing.parse import parse_script
from tests.checking.build import found

SOURCE = "# Opening\n\nThe moon rises in the the east.\n\nIt costs $384,403 & is c\u043eld.\n"


def test_the_patch_applies_and_gives_the_reworded_script(tmp_path: Path) -> None:
    script = replace(parse_script(SOURCE, language="en"), file="sky.en.md")
    findings = found(SOURCE, "en")
    (tmp_path / "sky.en.md").write_text(SOURCE, "utf-8")
    run = ["patch", "-p1", "--quiet"]
    subprocess.run(run, cwd=tmp_path, input=patch(script, findings).encode(), check=True)
    assert (tmp_path / "sky.en.md").read_text("utf-8") == reworded(SOURCE, findings)


@pytest.mark.parametrize("file", ["sky.en.md", "two words.en.md", "scripts/sky.en.md"])
def test_the_patch_s_first_line_says_how_to_apply_it(file: str, tmp_path: Path) -> None:
    first, source = _applied(file, tmp_path, tmp_path)
    assert first.startswith("# ")
    assert first.endswith("in the folder where promptprep ran: patch -p1 < FILE")
    assert source == reworded(SOURCE, found(SOURCE, "en"))


def test_a_patch_for_a_file_above_or_at_a_full_path(tmp_path: Path) -> None:
    (tmp_path / "work").mkdir()
    for file in "../sky.en.md", str(tmp_path / "sky.en.md"):
        _, source = _applied(file, tmp_path / "work", tmp_path)
        assert source == reworded(SOURCE, found(SOURCE, "en"))


def _applied(file: str, folder: Path, inside: Path) -> tuple[str, str]:
    """The patch's first line, and the file after its command was run in a folder."""
    place = (folder / file).resolve()
    assert place.is_relative_to(inside)
    place.parent.mkdir(parents=True, exist_ok=True)
    place.write_text(SOURCE, "utf-8")
    script = replace(parse_script(SOURCE, language="en"), file=file)
    text = patch(script, found(SOURCE, "en"))
    (inside / "suggested").write_text(text, "utf-8")
    first = text.splitlines()[0]
    command = first[first.index("patch") :].replace("FILE", str(inside / "suggested"))
    subprocess.run(command, shell=True, cwd=folder, check=True, capture_output=True)
    return first, place.read_text("utf-8")


@pytest.mark.parametrize("file", ["sky.en.docx", "sky.en.ODT", "sky.en.rtf"])
def test_a_document_gets_a_list(file: str) -> None:
    script = replace(parse_script(SOURCE, language="en"), file=file)
    lines = patch(script, found(SOURCE, "en")).splitlines()
    assert all(line.startswith("# ") for line in lines)
    assert file in lines[0]
    assert "#   '$384,403' -> 'about $380,000'" in lines
    assert patch(script, []) == ""


def test_the_rewordings_are_these() -> None:
    assert reworded(SOURCE, found(SOURCE, "en")) == (
        "# Opening\n\nThe moon rises in the east.\n\nIt costs about $380,000 and is cold.\n"
    )


def test_a_script_without_rewordings_has_no_patch() -> None:
    script = parse_script("Good evening.", language="en")
    assert patch(script, found("Good evening.", "en")) == ""


def test_a_source_without_a_last_line_end() -> None:
    source = "The moon rises in the the east."
    text = patch(parse_script(source, language="en"), found(source, "en"))
    assert text.count("\\ No newline at end of file") == 2


@pytest.mark.parametrize(
    ("figure", "short"),
    [
        ("384,403", "380,000"),
        ("384.403", "380.000"),
        ("1,234,567", "1,200,000"),
        ("12,34,567", "12,00,000"),
        ("9,999", "10,000"),
        ("3.14159", "3.1"),
        ("183,462.75", "180,000"),
        ("0.0123", "0.012"),
        ("17982", "18000"),
    ],
)
def test_figures_are_rounded_to_two_digits_in_their_own_separators(figure: str, short: str) -> None:
    assert rounded(figure) == short


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.name)
def test_every_rule_has_a_page(rule: Rule) -> None:
    page = explain(rule)
    assert page.startswith(f"{rule.name} ({rule.level})")
    assert all(len(line) <= 110 for line in page.splitlines())
    assert all(p.unit in " ".join(page.split()) for p in rule.parameters.values())
