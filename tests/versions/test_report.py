"""The side-by-side page, the papers in two languages, and the lengths expected."""

from __future__ import annotations

import shutil
from pathlib import Path

import pypdfium2
import pytest
from markupsafe import escape

from promptprep.faces import versions
from promptprep.rendering.versions_paper import segment_rows

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
    assert "<mark>504</mark>" in page
    assert "the source says &#39;504&#39;, this version &#39;540&#39;" in page
    assert 'lang="ar" dir="rtl"' in page
    assert "http" not in page.replace("http-equiv", "")
    assert [p.name for p in files] == ["sky.versions.html", "sky.en-ar.paper.pdf", "sky.en-fr.paper.pdf"]
    text = pypdfium2.PdfDocument(tmp_path / "sky.en-fr.paper.pdf")[0].get_textpage().get_text_range()
    assert "Good evening" in text
    assert "Bonsoir" in text
    assert "[clip 0:20 Moonrise over the ridge]" in text


def test_the_same_versions_give_the_same_bytes(folder: Path, tmp_path: Path) -> None:
    for name in ("one", "two"):
        found = versions.compare_versions([folder / "sky.en.md", folder / "sky.fr.md"])
        versions.write_versions(found, [folder / "sky.en.md"], tmp_path / name)
    for file in ("sky.versions.html", "sky.en-fr.paper.pdf"):
        assert (tmp_path / "one" / file).read_bytes() == (tmp_path / "two" / file).read_bytes()


def test_the_paper_has_cues_notes_stress_and_pronunciations_where_they_fall(folder: Path) -> None:
    found = versions.compare_versions([folder / "sky.en.md", folder / "sky.ar.md"])
    for pair in found.others[0].pairs:
        segment = found.source.script.segments[pair.source or 0]
        rows = segment_rows(found.source, found.others[0], pair)["rows"]
        shown = " ".join(str(row["ours"]) for row in rows)
        for cue in segment.cues:
            assert shown.count(str(escape(cue.span.of(found.source.script.source)))) == 1
    first, *_, last = (segment_rows(found.source, found.others[0], p)["rows"] for p in found.others[0].pairs)
    assert [row["kind"] for row in first] == ["cue", "copy", "copy", "cue"]
    assert "Betelgeuse (BEE-tel-jooz)" in first[2]["ours"]
    assert "it is <b>not</b> about" in first[2]["ours"]
    assert "18\u00a0December" not in last[1]["ours"]
    assert "7\u00a0p.m." in last[1]["ours"]


def test_a_segment_without_partner_is_on_the_paper_too(tmp_path: Path) -> None:
    extra = "# Two {#two}\n\nHello all.\n\n[pause 2]\n\nBye.\n"
    (tmp_path / "a.en.md").write_text(f"# One {{#one}}\n\nGood evening.\n\n{extra}", "utf-8")
    (tmp_path / "a.fr.md").write_text("# Un {#one}\n\nBonsoir.\n", "utf-8")
    found = versions.compare_versions([tmp_path / "a.en.md"])
    one, two = (segment_rows(found.source, found.others[0], pair) for pair in found.others[0].pairs)
    assert [(r["ours"], r["theirs"]) for r in one["rows"]] == [("Good evening.", "Bonsoir.")]
    assert two["titles"] == ("Two", "–")
    assert [r["ours"] for r in two["rows"]] == ["Hello all.", "<bdi>[pause 2]</bdi>", "Bye."]


def test_lengths_are_expected_only_of_languages_without_version(folder: Path) -> None:
    expected = versions.compare_versions([folder / "sky.en.md"]).expected
    assert {e.language for e in expected} == {"es", "de", "pt", "ru", "hi", "sw", "zh", "ja", "ko"}
    assert all(e.low_s < e.mean_s < e.high_s for e in expected)


def test_no_language_borrows_a_ratio_that_is_english(folder: Path) -> None:
    assert versions.compare_versions([folder / "sky.fr.md", folder / "sky.ar.md"]).expected == ()
