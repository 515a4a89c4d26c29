"""Finding and reading scripts: names, languages, folders."""

from __future__ import annotations

from pathlib import Path

import pytest

from promptprep.errors import UnreadableInput
from promptprep.model.language import FIRST_CLASS
from promptprep.store.scripts import detect_language, find_scripts, name_and_language, read_script_file
from promptprep.store.templates import shipped

DEMO = shipped("scripts_demo")


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("sky.en.md", ("sky", "en")),
        ("sky.pt-BR.docx", ("sky", "pt-BR")),
        ("sky.zh-Hant.txt", ("sky", "zh-Hant")),
        ("the.sky.fr.md", ("the.sky", "fr")),
        ("sky.md", ("sky", None)),
        ("v2.final.md", ("v2.final", None)),
    ],
)
def test_language_of_a_file_name(name: str, expected: tuple[str, str | None]) -> None:
    assert name_and_language(Path(name)) == expected


@pytest.mark.parametrize("language", FIRST_CLASS)
def test_a_first_class_language_is_detected(language: str) -> None:
    script = read_script_file(DEMO / f"sky.{language}.md")
    copy = " ".join(p.text for segment in script.segments for p in segment.paragraphs)
    assert detect_language(copy) == language


def test_another_language_is_not_taken_for_one_of_ours() -> None:
    polish = "Dobry wieczór. Dziś wieczorem księżyc wschodzi nad grzbietem, a jasna gwiazda stoi obok niego do północy."
    assert detect_language(polish) == "pl"


def test_what_says_the_language_is_kept(tmp_path: Path) -> None:
    for name, text, origin in (
        ("a.fr.md", "Bonsoir.", "file name"),
        ("b.md", "Bonsoir, ce soir la lune se lève sur la crête.", "detected"),
        ("c.en.md", '+++\nlanguage = "fr"\n+++\nBonsoir.', "front matter"),
    ):
        (tmp_path / name).write_text(text, "utf-8")
        script = read_script_file(tmp_path / name)
        assert (script.language, script.language_origin) == ("fr", origin)


def test_a_folder_gives_its_scripts_and_nothing_else(tmp_path: Path) -> None:
    for name in ("b.md", "a.txt", "README.md", ".hidden.md", "~lock.docx", "studio.toml", "picture.png"):
        (tmp_path / name).write_text("x", "utf-8")
    assert [p.name for p in find_scripts([tmp_path])] == ["a.txt", "b.md"]
    (tmp_path / "empty").mkdir()
    with pytest.raises(UnreadableInput):
        find_scripts([tmp_path / "empty"])


def test_what_is_no_kind_of_script(tmp_path: Path) -> None:
    (tmp_path / "a.pdf").write_text("Hello.", "utf-8")
    with pytest.raises(UnreadableInput, match="no kind of script"):
        read_script_file(tmp_path / "a.pdf")
