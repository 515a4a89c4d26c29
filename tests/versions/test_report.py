"""The side-by-side page, the papers in two languages, and the lengths expected."""

from __future__ import annotations

import shutil
from pathlib import Path

import pypdfium2
import pytest

from promptprep.faces import versions

DEMO = Path(__file__).parents[2] / "scripts_demo"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo with a wrong figure in its French version, English, French and Arabic only."""
    made = tmp_path_factory.mktemp("show")
    for name in ("sky.en.md", "sky.ar.md", "studio.toml"):
        shutil.copy(DEMO / name, made / name)
    french = (DEMO / "sky.fr.md").read_text("utf-8").replace("504 km", "540 km")
    (made / "sky.fr.md").write_text(french, "utf-8")
    return made


def test_the_page_marks_what_differs(folder: Path, tmp_path: Path) -> None:
    found = versions.compare_versions([folder / "sky.en.md"])
    files = versions.write_versions(found, [folder / "sky.en.md"], tmp_path)
    page = (tmp_path / "sky.versions.html").read_text("utf-8")
    assert "<mark>540</mark>" in page
    assert "the source says &#39;504&#39;, this version &#39;540&#39;" in page
    assert 'lang="ar" dir="rtl"' in page
    assert "http" not in page.replace("http-equiv", "")
    assert [p.name for p in files] == ["sky.versions.html", "sky.en-ar.paper.pdf", "sky.en-fr.paper.pdf"]
    text = pypdfium2.PdfDocument(tmp_path / "sky.en-fr.paper.pdf")[0].get_textpage().get_text_range()
    assert "Good evening" in text
    assert "Bonsoir" in text


def test_the_same_versions_give_the_same_bytes(folder: Path, tmp_path: Path) -> None:
    for name in ("one", "two"):
        found = versions.compare_versions([folder / "sky.en.md", folder / "sky.fr.md"])
        versions.write_versions(found, [folder / "sky.en.md"], tmp_path / name)
    for file in ("sky.versions.html", "sky.en-fr.paper.pdf"):
        assert (tmp_path / "one" / file).read_bytes() == (tmp_path / "two" / file).read_bytes()


def test_lengths_are_expected_only_of_languages_without_version(folder: Path) -> None:
    expected = versions.compare_versions([folder / "sky.en.md"]).expected
    assert {e.language for e in expected} == {"es", "de", "pt", "ru", "hi", "sw", "zh", "ja", "ko"}
    assert all(e.low_s < e.mean_s < e.high_s for e in expected)


def test_no_language_borrows_a_ratio_that_is_english(folder: Path) -> None:
    assert versions.compare_versions([folder / "sky.fr.md", folder / "sky.ar.md"]).expected == ()
