"""The structure of printed pages, read back by a second library: languages, artifacts, nothing left over."""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import Any

import pdfplumber
import pikepdf
import pytest

from promptprep.model.rig import Paper, Studio
from promptprep.rendering.crew import crew_pdf
from promptprep.rendering.paper import paper_pdf
from promptprep.rendering.printing import pdf_from_html
from tests.rendering.paper_factory import demo, prepared, printing

PAGE = """<!doctype html><html lang="{}"><head><title>Pages</title><style>
@page{{margin:20mm;@top-left{{content:"running head"}}}}</style></head><body>{}</body></html>"""


def leaves(elements: list[dict[str, Any]], language: str, path: tuple[str, ...] = ()) -> Iterator[tuple[int, str, str]]:
    """(marked content, language, path of elements) below some elements of one page."""
    for element in elements:
        own, below = element.get("lang") or language, (*path, element["type"])
        yield from ((mcid, own, "/".join(below)) for mcid in element.get("mcids", ()))
        yield from leaves(element.get("children", []), own, below)


def told(pdf: bytes) -> dict[str, str]:
    """All text of a file's structure by language, without blanks; head and feet under "artifact"."""
    found: dict[str, list[str]] = {}
    with pdfplumber.open(io.BytesIO(pdf)) as opened:
        language = opened.doc.catalog["Lang"].decode()
        for page in opened.pages:
            of = {mcid: own for mcid, own, _ in leaves(page.structure_tree, language)}
            for char in page.chars:
                at = "artifact" if char["tag"] == "Artifact" else of[char["mcid"]]
                found.setdefault(at, []).append(char["text"])
    return {language: "".join("".join(text).split()) for language, text in found.items()}


def copy_of(language: str) -> list[str]:
    return ["".join(p.text.split()) for s in demo(language).script.segments for p in s.paragraphs]


def test_a_version_beside_the_copy_is_marked_in_its_language() -> None:
    text = told(paper_pdf(demo("fr"), Studio(), printing("fr"), beside=demo("en")))
    assert set(text) == {"fr", "en", "artifact"}
    assert text["en"] == "".join(copy_of("en"))
    assert not any(paragraph in text["fr"] for paragraph in copy_of("en"))


@pytest.mark.parametrize(("language", "beside"), [("ar", "en"), ("en", "ja"), ("de", "zh")])
def test_no_word_of_one_language_is_under_the_other(language: str, beside: str) -> None:
    """Arabic comes out of a PDF in the order of its glyphs, so letters are counted there."""
    text = told(paper_pdf(demo(language), Studio(), printing(language), beside=demo(beside)))
    assert sorted(text[beside]) == sorted("".join(copy_of(beside)))


def test_texts_of_the_interface_are_marked_where_they_are_not_in_the_copy_s_language() -> None:
    """No catalogue is in Italian: what we say is in English, and says so; titles, copy and cues are the script's."""
    text = told(paper_pdf(prepared("# Uno\n\nBuona sera a tutti.", "it"), Studio(), printing("it")))
    assert "togo" in text["en"]
    assert "about" in text["en"]
    assert "Buonaseraatutti." in text["it"]
    assert "Uno" in text["it"]


def test_copy_in_one_language_has_no_marks() -> None:
    assert set(told(paper_pdf(demo("ru"), Studio(), printing("ru")))) == {"ru", "artifact"}


@pytest.mark.parametrize("cards", [1, 2, 4])
def test_heads_and_feet_are_artifacts(cards: int) -> None:
    pdf = paper_pdf(demo("en"), Studio(paper=Paper(cards=cards)), printing("en"), "cards")
    text = told(pdf)
    assert "page1of" in text["artifact"]
    assert f"wording{demo('en').digest}" in text["artifact"]
    assert "goeson" in text["artifact"]
    assert not any(part in text["en"] for part in ("page1of", "wording", "goeson"))


def test_every_piece_of_content_is_in_the_tree_or_an_artifact() -> None:
    for pdf in (
        paper_pdf(demo("hi"), Studio(), printing("hi"), "rehearsal", demo("en")),
        paper_pdf(demo("en"), Studio(paper=Paper(cards=4)), printing("en"), "cards"),
        crew_pdf(demo("de"), Studio(), printing("de")),
    ):
        with pikepdf.open(io.BytesIO(pdf)) as opened:
            assert not opened.check_pdf_syntax()
            tree: Any = opened.Root.StructTreeRoot
            nums = list(tree.ParentTree.Nums)
            for number, page in enumerate(opened.pages):
                marked = {int(mcid) for mcid in marks(page)}
                parents = nums[2 * number + 1]
                held = {n for n, parent in enumerate(parents) if isinstance(parent, pikepdf.Dictionary)}
                assert marked == held
                assert all(parents[n].S and parents[n].P for n in held)


def marks(page: pikepdf.Page) -> Iterator[Any]:
    for step in pikepdf.parse_content_stream(page):
        operands: Any = step.operands
        if str(step.operator) == "BDC" and "/MCID" in operands[1]:
            yield operands[1].MCID


def test_no_element_is_empty_but_cells() -> None:
    def empty(node: Any) -> Iterator[str]:
        kids = node.get("/K", pikepdf.Array())
        kids = list(kids) if isinstance(kids, pikepdf.Array) else [kids]
        if not kids:
            yield str(node.S)
        for kid in kids:
            if isinstance(kid, pikepdf.Dictionary):
                yield from empty(kid)

    for pdf in (
        paper_pdf(demo("en"), Studio(), printing("en"), "rehearsal"),
        crew_pdf(demo("en"), Studio(), printing("en")),
    ):
        with pikepdf.open(io.BytesIO(pdf)) as opened:
            assert set(empty(opened.Root.StructTreeRoot)) <= {"/TD", "/TH"}


def test_a_file_says_what_it_is() -> None:
    """PDF/UA-1 (ISO 14289-1:2014), as the references report it: marked, titled, language set, identified in XMP."""
    with pikepdf.open(io.BytesIO(paper_pdf(demo("es"), Studio(), printing("es")))) as opened:
        root: Any = opened.Root
        assert bool(root.MarkInfo.Marked)
        assert bool(root.ViewerPreferences.DisplayDocTitle)
        assert all(str(page.obj.Tabs) == "/S" for page in opened.pages)
        with opened.open_metadata() as metadata:
            assert metadata["pdfuaid:part"] == "1"
            assert str(metadata["dc:title"]).startswith(demo("es").script.title)


@pytest.mark.parametrize(
    ("body", "wanted"),
    [
        ("<p>Plain.</p>", {"en": "Plain."}),
        ('<p>Say <span lang="fr">bonsoir</span> now.</p>', {"en": "Saynow.", "fr": "bonsoir"}),
        ('<p lang="fr">Le <i lang="en">moon</i> est là.</p>', {"fr": "Leestlà.", "en": "moon"}),
        ('<p lang="fr">Un.</p><p lang="fr">Deux.</p>', {"fr": "Un.Deux."}),
        ('<ul><li>One<ul><li lang="de">Zwei</li></ul></li><li>Three</li></ul>', {"en": "••OneThree", "de": "◦Zwei"}),
        ('<table><caption lang="es">Luna</caption><tr><th>A</th><td lang="fr">B</td></tr></table>',
         {"es": "Luna", "en": "A", "fr": "B"}),
        ('<p>Up <span style="position:absolute;top:9mm" lang="sw">juu</span></p>', {"en": "Up", "sw": "juu"}),
        ('<p aria-hidden="true">Furniture</p><p>Copy</p>', {"en": "Copy", "artifact": "Furniturerunninghead"}),
    ],
    ids=("plain", "span", "nested", "paragraphs", "lists", "table", "placed", "hidden"),
)  # fmt: skip
def test_any_page_is_marked(body: str, wanted: dict[str, str]) -> None:
    text = told(pdf_from_html(PAGE.format("en", body), "page"))
    assert text.pop("artifact") == wanted.pop("artifact", "runninghead")
    assert {k: "".join(sorted(v)) for k, v in text.items()} == {k: "".join(sorted(v)) for k, v in wanted.items()}


def test_a_page_without_text_prints() -> None:
    assert pdf_from_html(PAGE.format("en", ""), "page").startswith(b"%PDF")


def test_a_language_is_written_once_as_high_as_it_holds() -> None:
    pdf = pdf_from_html(PAGE.format("en", '<section lang="fr"><p>Un.</p><p>Deux.</p></section><p>Three.</p>'), "page")
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        tree: Any = opened.Root.StructTreeRoot
        assert [str(kid.get("/Lang", "")) for kid in tree.K[0].K] == ["fr", ""]
        assert all("/Lang" not in kid for kid in tree.K[0].K[0].K)
