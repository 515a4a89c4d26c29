"""A translator's kit goes out and comes back: whole, and as word processors leave it."""

from __future__ import annotations

import io
from pathlib import Path

import docx
import pytest

from promptprep.errors import PromptprepError
from promptprep.faces import read_script, versions
from promptprep.model.kit import Filled, Kit, KitUnit
from promptprep.parsing.parse import parse_script
from promptprep.rendering.versions_docx import kit_docx
from promptprep.rendering.versions_xliff import kit_xliff
from promptprep.store.kits import read_kit
from promptprep.versions.kit import kit_of, mended, taken_back, units_of

DEMO = Path(__file__).parents[2] / "scripts_demo"
DATA = Path(__file__).parent / "data"
SOURCE = """+++
title = "Ridge"
slot = "1:00"
+++

# Opening {#opening slot=0:40}

[vision: wide]

Look at [Vega]{say="VEE-ga"}, *now*. [pause 2] It is 25 light-years away.

> Smile.

- First the dome.

# Close {slot=0:20}

Good night.
"""


def kit(language: str = "fr", made: dict[str, str] | None = None) -> Kit:
    script = parse_script(SOURCE, name="ridge", language="en")
    return kit_of(script, language, [(2.0, 40.0), (0.0, 20.0)], None, made)


def fill(data: bytes, texts: dict[str, str]) -> docx.document.Document:
    document = docx.Document(io.BytesIO(data))
    for table in document.tables:
        for row in table.rows:
            code = row.cells[0].paragraphs[0].text
            if code in texts:
                row.cells[2].text = texts[code]
    return document


FRENCH = {
    "title": "La crête",
    "opening/0": "Ouverture",
    "opening/2": "Regardez [Véga]{say=“VÉ-ga”}, *maintenant*. [pause 2] Elle est à 25 années-lumière.",
    "opening/3": "Sourire.",
    "opening/4": "D’abord, la coupole.",
    "close/0": "Clôture",
    "close/1": "Bonne nuit.",
}


def test_a_filled_document_comes_back_as_a_script(tmp_path: Path) -> None:
    path = tmp_path / "ridge.fr.kit.docx"
    fill(kit_docx(kit()), FRENCH).save(str(path))
    source = parse_script(SOURCE, name="ridge", language="en")
    text, losses = taken_back(source, read_kit(path))
    made = parse_script(text, name="ridge", language="fr")
    assert (made.language, made.title, made.slot_s) == ("fr", "La crête", 60.0)
    assert [(s.id, s.title, s.slot_s) for s in made.segments] == [
        ("opening", "Ouverture", 40.0),
        ("close", "Clôture", 20.0),
    ]
    assert [c.kind for s in made.segments for c in s.cues] == ["vision", "pause"]
    assert [say for s in made.segments for p in s.paragraphs for _, say in p.said()] == ["VÉ-ga"]
    assert [p.role for p in made.segments[0].paragraphs] == ["body", "item"]
    assert "Sourire." in text
    assert len(losses) == 1  # the curly quotes of the pronunciation
    assert "pronunciation" in losses[0]


def test_what_a_word_processor_spoils_is_put_right_and_told() -> None:
    unit = KitUnit("look/2", "passage", "Wait. [pause 1] Go.", cues=("[pause 1]",))
    losses: list[str] = []
    assert mended("Attendez. Allez.", unit, losses) == "Attendez. Allez. [pause 1]"
    assert len(losses) == 1
    losses = []
    assert mended("Attendez. ［pausa 1］ Allez.", unit, losses) == "Attendez. [pause 1] Allez."
    assert len(losses) == 1
    losses = []
    assert (
        mended("Ici [Véga] {Say = «\u00a0VÉ-ga\u00a0»}. [pause 1]", unit, losses)
        == 'Ici [Véga]{say="VÉ-ga"}. [pause 1]'
    )
    assert len(losses) == 1
    losses = []
    assert mended("# Attendez. [pause 1]", unit, losses) == "\\# Attendez. [pause 1]"


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("1. Gute Nacht.", "Gute Nacht."),
        ("• Gute Nacht.", "Gute Nacht."),
        ("3) Gute Nacht.", "Gute Nacht."),
        ("1. Dezember: gute Nacht.", "1. Dezember: gute Nacht."),
        ("25. heißt das Schild.", "25. heißt das Schild."),
    ],
)
def test_a_list_s_number_goes_and_a_date_s_stays(typed: str, kept: str) -> None:
    source = parse_script("# Close {#close}\n\nGood night, 25.\n", name="ridge", language="en")
    text, losses = taken_back(source, Filled("de", {"close/0": "Ende", "close/1": typed, "title": "T"}), ["dezember"])
    assert text.endswith(f"\n\n{kept}\n")
    assert len(losses) == (typed != kept)


def test_rows_without_their_code_are_known_by_their_source(tmp_path: Path) -> None:
    document = fill(kit_docx(kit()), FRENCH)
    for table in document.tables:
        for row in table.rows:
            if row.cells[0].text == "close/1":
                row.cells[0].text = ""
    path = tmp_path / "ridge.fr.kit.docx"
    document.save(str(path))
    text, losses = taken_back(parse_script(SOURCE, name="ridge", language="en"), read_kit(path))
    assert "Bonne nuit." in text
    assert any("close/1" in loss for loss in losses)


def test_what_is_not_translated_says_so() -> None:
    text, losses = taken_back(
        parse_script(SOURCE, name="ridge", language="en"), Filled("fr", {"close/1": "Bonne nuit."})
    )
    assert "TODO Good" not in text
    assert "TODO Look at Vega" in text
    assert any(loss.startswith("opening/2: not translated") for loss in losses)


def test_xliff_comes_back_with_its_cues(tmp_path: Path) -> None:
    path = tmp_path / "ridge.fr.kit.xlf"
    path.write_bytes(kit_xliff(kit(made=FRENCH)))
    filled = read_kit(path)
    assert filled.targets == FRENCH
    assert filled.target_language == "fr"


def test_a_unit_that_was_cut_into_segments_is_made_whole(tmp_path: Path) -> None:
    """XLIFF 2.1, 4.2.2.5 and 4.7: a program may cut a unit; `ignorable` holds what stands between; `order` is the
    target's order."""
    whole = kit_xliff(kit(made=FRENCH)).decode()
    start = whole.index("<segment", whole.index('name="close/1"'))
    end = whole.index("</segment>", start) + len("</segment>")
    cut = (
        '<segment id="a"><source>Good</source><target order="3">nuit.</target></segment>'
        "<ignorable><source> </source></ignorable>"
        '<segment id="b"><source>night.</source><target order="1">Bonne</target></segment>'
    )
    path = tmp_path / "ridge.fr.kit.xlf"
    path.write_text(whole[:start] + cut + whole[end:], "utf-8")
    filled = read_kit(path)
    assert (filled.targets["close/1"], filled.losses) == ("Bonne nuit.", ())
    path.write_text(path.read_text("utf-8").replace('<target order="1">Bonne</target>', ""), "utf-8")
    assert read_kit(path).losses == ("close/1: a part of it is not translated",)


@pytest.mark.parametrize("language", ["fr", "ar", "ja", "ru", "hi"])
@pytest.mark.parametrize("suffix", ["docx", "xlf"])
def test_the_demo_goes_out_and_comes_back_the_same(language: str, suffix: str, tmp_path: Path) -> None:
    before = read_script(DEMO / f"sky.{language}.md")
    versions.translator_kit([DEMO / "sky.en.md"], language, tmp_path)
    file, _, losses = versions.take_back_kit([DEMO / "sky.en.md"], tmp_path / f"sky.{language}.kit.{suffix}", tmp_path)
    after = read_script(file)
    assert units_of(after) == units_of(before)
    assert [s.id for s in after.segments] == [s.id for s in before.segments]
    assert [(c.kind, c.text, c.duration_s) for s in after.segments for c in s.cues] == [
        (c.kind, c.text, c.duration_s) for s in before.segments for c in s.cues
    ]
    assert [loss for loss in losses if "no pronunciation" not in loss] == []


@pytest.mark.parametrize("suffix", ["docx", "odt", "html"])
def test_what_a_word_processor_saved_comes_back(suffix: str, tmp_path: Path) -> None:
    """The demo's French kit, filled and saved in a word processor of today: stars became bold, a number and lists came
    before copy, quotes and a cue's first letter were changed, and (not in HTML, which forgets it) a change is tracked.
    """
    wanted = (DEMO / "sky.fr.md").read_text("utf-8").replace('reader = "ines"\n', "")
    if suffix != "html":
        wanted = wanted.replace("Ce mois-ci, il y a", "En décembre, il y a")
    file, _, losses = versions.take_back_kit([DEMO / "sky.en.md"], DATA / f"sky.fr.kit.{suffix}", tmp_path)
    assert file.read_text("utf-8") == wanted
    assert sorted(loss.split(":")[0] for loss in losses) == [
        "close/3", "look/5", "look/5", "look/6", "opening/3", "opening/4",
    ]  # fmt: skip


def test_the_version_s_own_front_matter_stays(tmp_path: Path) -> None:
    for name in ("sky.en.md", "sky.fr.md", "studio.toml"):
        (tmp_path / name).write_bytes((DEMO / name).read_bytes())
    before = (tmp_path / "sky.fr.md").read_text("utf-8")
    versions.translator_kit([tmp_path / "sky.en.md"], "fr", tmp_path / "kits")
    kit_file = tmp_path / "kits" / "sky.fr.kit.xlf"
    kit_file.write_text(kit_file.read_text("utf-8").replace("Le ciel du mois", "Le ciel de décembre"), "utf-8")
    file, kept, _ = versions.take_back_kit([tmp_path / "sky.en.md"], kit_file)
    assert file.read_text("utf-8") == before.replace("Le ciel du mois", "Le ciel de décembre")
    assert kept is not None
    assert kept.read_text("utf-8") == before


def test_what_a_cell_cannot_carry_is_told(tmp_path: Path) -> None:
    page = """<table><tr><th>code</th><th>en</th><th>Fr</th></tr><tr><td><p>1. Close/1</p></td><td>Good night.</td>
    <td><p>Bonne <b>nuit</b><del>, adieu</del>.<img src="x.png" alt="moon"></p></td></tr></table>"""
    (tmp_path / "ridge.html").write_text(page, "utf-8")
    filled = read_kit(tmp_path / "ridge.html")
    assert filled.target_language == "fr"
    assert filled.targets == {"Close/1": "Bonne *nuit*."}
    assert [loss.split(":")[1].strip() for loss in filled.losses] == [
        "struck-out copy is left out", "a picture is left out",
    ]  # fmt: skip
    text, _ = taken_back(parse_script(SOURCE, name="ridge", language="en"), filled)
    assert "Bonne *nuit*." in text


def test_a_kit_of_another_script_is_refused(tmp_path: Path) -> None:
    kit_file = DATA / "sky.fr.kit.docx"
    with pytest.raises(PromptprepError, match="no text of this kit"):
        versions.take_back_kit([DEMO / "trailer.en.md"], kit_file, tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_nothing_is_overwritten(tmp_path: Path) -> None:
    (tmp_path / "ridge.en.md").write_text(SOURCE, "utf-8")
    (tmp_path / "ridge.fr.md").write_text("Mine.\n", "utf-8")
    path = tmp_path / "ridge.fr.kit.docx"
    fill(kit_docx(kit()), FRENCH).save(str(path))
    _, kept, _ = versions.take_back_kit([tmp_path / "ridge.en.md"], path)
    assert kept is not None
    assert kept.read_text("utf-8") == "Mine.\n"


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("a.fr.kit.docx", b"no zip"),
        ("a.fr.kit.xlf", b"<xliff"),
        ("a.fr.kit.xlf", b"<!DOCTYPE x><x/>"),
        ("a.pdf", b"%PDF"),
    ],
)
def test_what_is_no_kit_is_refused(name: str, data: bytes, tmp_path: Path) -> None:
    (tmp_path / name).write_bytes(data)
    with pytest.raises(PromptprepError):
        read_kit(tmp_path / name)


def test_the_same_kit_gives_the_same_bytes() -> None:
    assert kit_docx(kit()) == kit_docx(kit())
    assert kit_xliff(kit()) == kit_xliff(kit())
