"""What to do first: an hour before the take, the page and the table say it in their first lines."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from promptprep.cli.app import app
from promptprep.faces import versions
from promptprep.rendering.versions_first import MOST, first_lines

DEMO = Path(__file__).parents[2] / "scripts_demo"
MORE = (
    "Avant de partir, un mot sur le temps qu’il fera cette semaine, et sur le chemin qui monte jusqu’ici en hiver. " * 7
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo an hour before the take: the French copy too long, a figure mistyped, the English changed since."""
    made = tmp_path_factory.mktemp("show")
    for tag in ("en", "fr", "de", "ja"):
        shutil.copy(DEMO / f"sky.{tag}.md", made)
    for name in ("studio.toml", "lexicon.toml"):
        shutil.copy(DEMO / name, made)
    versions.mark_versions([made / "sky.en.md"])
    edits = {"en": ("21:40", "22:10"), "fr": ("504 km", "540 km")}
    for tag, (before, after) in edits.items():
        file = made / f"sky.{tag}.md"
        file.write_text(file.read_text("utf-8").replace(before, after), "utf-8")
    french = made / "sky.fr.md"
    french.write_text(french.read_text("utf-8").replace("> Demander", f"{MORE}\n\n> Demander", 1), "utf-8")
    return made


def test_length_figure_and_change_come_first(folder: Path) -> None:
    lines = first_lines(versions.compare_versions([folder / "sky.en.md"]))
    assert lines[0].startswith("fr: this version ")
    assert "over its slot of 4:00" in lines[0]
    assert lines[1].startswith("fr, line ")
    assert "'504', this version '540'" in lines[1]
    assert lines[2].startswith("de, fr, ja, look: the source has changed")
    assert "[21:40 → 22:10]" in lines[2]
    assert lines[3] == "de, fr, ja, look: the source says '22:10', these versions do not."


def test_the_first_fifteen_lines_of_the_table_say_so(folder: Path) -> None:
    shown = CliRunner().invoke(app, ["versions", str(folder / "sky.en.md")])
    assert shown.exit_code == 1
    top = "\n".join(shown.output.splitlines()[:15])
    for said in ("over its slot", "'540'", "21:40 → 22:10"):
        assert said in top
    until = shown.output.index("expected of languages")
    assert max(map(len, shown.output[:until].splitlines()[1:])) <= 80


def test_the_page_shows_the_changed_words(folder: Path, tmp_path: Path) -> None:
    found = versions.compare_versions([folder / "sky.en.md", folder / "sky.de.md"])
    versions.write_versions(found, [folder / "sky.en.md"], tmp_path)
    assert "sets at <del>21:40</del> <ins>22:10</ins>, so" in (tmp_path / "sky.versions.html").read_text("utf-8")


def test_what_is_too_much_is_counted(tmp_path: Path) -> None:
    (tmp_path / "a.en.md").write_text("# One {#one}\n\nThere are 40 of us here tonight, friends.\n", "utf-8")
    for tag in ("fr", "de", "es", "pt", "sw"):
        (tmp_path / f"a.{tag}.md").write_text(
            "# Un {#one}\n\nTODO 41 TODO\n\n[clip 0:03 x]\n\n# More {#more}\n", "utf-8"
        )
    lines = first_lines(versions.compare_versions([tmp_path / "a.en.md"]))
    assert len(lines) == MOST
    assert lines[-1].startswith("… and ")
