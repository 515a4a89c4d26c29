"""The paper copy as PDF: its words, its margins, its fonts, and that the same script gives the same bytes."""

from __future__ import annotations

import io
import os
import re
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from pathlib import Path
from typing import Any, cast

import pdfplumber
import pikepdf
import pytest
from hypothesis import HealthCheck, Phase, assume, given, settings
from hypothesis import strategies as st
from PIL import Image

from promptprep import faces
from promptprep.errors import BadCall, PromptprepError, UnreadableInput
from promptprep.model.language import FIRST_CLASS
from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import PAPER_VARIANTS, Paper, Reader, Studio
from promptprep.rendering.environment import environment
from promptprep.rendering.guest_cards import CARD_PT
from promptprep.rendering.paper import Variant, fill_pages, paper_html, paper_pdf
from promptprep.rendering.paper_items import Items
from promptprep.rendering.printing import PaperTools
from promptprep.rendering.sheets import font_pt_of, sheet_for
from promptprep.store.catalogues import FOLDER
from promptprep.store.logo import logo_url
from promptprep.store.templates import shipped
from promptprep.units import MM_PER_PT, clock_text
from tests.rendering.paper_factory import demo, papers, prepared, printing, script_texts
from tests.rendering.test_tagging import leaves

STUDIO = Studio(title="Quillhorn Observatory")
READABLE = tuple(tag for tag in FIRST_CLASS if tag not in ("ar", "hi"))  # text of these comes out of a PDF scrambled


@lru_cache(maxsize=32)
def printed(language: str, variant: Any = "paper", paper: Paper = STUDIO.paper) -> bytes:
    return paper_pdf(demo(language), replace(STUDIO, paper=paper), printing(language), variant)


def characters(pdf: bytes) -> list[list[dict[str, Any]]]:
    with pdfplumber.open(io.BytesIO(pdf)) as opened:
        return [page.chars for page in opened.pages]


def said(one: PreparedScript) -> str:
    """Titles of segments and the copy, without blanks."""
    parts = [text for s in one.script.segments for text in (s.title, *(p.text for p in s.paragraphs))]
    return "".join("".join(parts).split())


@pytest.mark.parametrize("language", READABLE)
def test_the_words_on_paper_are_the_script_s(language: str) -> None:
    font_pt = sheet_for(STUDIO.paper).font_pt
    letters = [c["text"] for page in characters(printed(language)) for c in page if abs(c["size"] - font_pt) < 0.05]
    assert "".join("".join(letters).split()) == said(demo(language))


@settings(
    max_examples=int(os.environ.get("PROMPTPREP_EXAMPLES", "8")),  # 300 and more by hand
    deadline=None,
    derandomize=True,
    suppress_health_check=list(HealthCheck),
    phases=(Phase.explicit, Phase.generate),
)
@given(made=script_texts(READABLE), paper=papers, variant=st.sampled_from(("paper", *PAPER_VARIANTS)))
def test_generated_scripts_as_pdf(made: tuple[str, str], paper: Paper, variant: Variant) -> None:
    """No text outside the sheet's margins, no glyph missing, and the words that the pages were filled with."""
    language, text = made
    one, cards = prepared(text, language), paper.cards if variant == "cards" else 1
    try:
        sheet = sheet_for(paper, cards=cards, numbered=variant == "rehearsal")
    except BadCall as fault:
        assume(fault.code != "type-too-large")
        raise
    pdf = paper_pdf(one, Studio(paper=paper), printing(language), variant)
    pages = characters(pdf)
    filled = fill_pages(Items(one, sheet, printing(language), variant, None))
    pieces = [piece for page in filled for piece in page.pieces if piece.item.kind in ("heading", "copy")]
    told = "".join("".join(p.item.lines) or p.item.text[p.start : p.end] for p in pieces)
    in_copy = [c for page in pages for c in page if abs(c["size"] - sheet.font_pt) < 0.05]
    if sheet.font_pt != CARD_PT:  # guest cards have that size
        assert "".join("".join(c["text"] for c in in_copy).split()) == "".join(told.split())
    edge = min(sheet.margin_mm, sheet.end_mm, sheet.end_mm - sheet.number_mm if variant == "rehearsal" else 99) - 0.3
    for page in pages:
        assert min(c["x0"] for c in page) * MM_PER_PT >= min(sheet.margin_mm, sheet.end_mm) - 0.3
        assert max(c["x1"] for c in page) * MM_PER_PT <= sheet.paper_width_mm - edge
        assert max(c["bottom"] for c in page) * MM_PER_PT <= sheet.paper_height_mm - 5
        assert min(c["top"] for c in page) * MM_PER_PT >= 5
        copy_end = (sheet.margin_mm + sheet.lane_mm + sheet.copy_mm) / MM_PER_PT
        beyond = [c for c in page if c["x1"] > copy_end + 2 and c["text"].isdigit() and c["tag"] != "Artifact"]
        assert variant != "rehearsal" or all(c["x0"] > copy_end - 1 for c in beyond), "line numbers stand in the copy"
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        assert not any(b"\0\0" in glyphs for page in opened.pages for glyphs in shown_glyphs(page))


@pytest.mark.parametrize("language", FIRST_CLASS)
def test_no_text_leaves_the_margins(language: str) -> None:
    sheet = sheet_for(STUDIO.paper)
    for page in characters(printed(language)):
        assert min(c["x0"] for c in page) * MM_PER_PT >= min(sheet.margin_mm, sheet.end_mm) - 0.3
        assert max(c["x1"] for c in page) * MM_PER_PT <= sheet.width_mm - min(sheet.margin_mm, sheet.end_mm) + 0.3
        assert min(c["top"] for c in page) * MM_PER_PT >= 5
        assert max(c["bottom"] for c in page) * MM_PER_PT <= sheet.height_mm - 5


@pytest.mark.parametrize("language", FIRST_CLASS)
def test_every_glyph_is_embedded(language: str) -> None:
    with pikepdf.open(io.BytesIO(printed(language))) as pdf:
        fonts = [font for page in pdf.pages for font in cast(Any, page).Resources.Font.values()]
        assert fonts
        for font in fonts:
            inside = font.DescendantFonts[0].FontDescriptor
            assert "/FontFile2" in inside or "/FontFile3" in inside
        assert not any(b"\0\0" in glyphs for page in pdf.pages for glyphs in shown_glyphs(page))


def shown_glyphs(page: pikepdf.Page) -> list[bytes]:
    """The strings of two-byte glyph numbers that a page shows; glyph 0 stands for what a font lacks."""
    found = []
    for step in pikepdf.parse_content_stream(page):
        if str(step.operator) in ("TJ", "Tj"):
            operands = cast(Any, step.operands)
            parts = operands[0] if str(step.operator) == "TJ" else operands
            texts = [bytes(part) for part in parts if isinstance(part, pikepdf.String)]
            found += [b"".join(t[at : at + 2] if t[at : at + 2] == b"\0\0" else b".." for at in range(0, len(t), 2))
                      for t in texts]  # fmt: skip
    return found


def test_the_same_script_gives_the_same_bytes() -> None:
    assert printed("en") == paper_pdf(demo("en"), STUDIO, printing("en"))


def test_pages_are_as_many_as_their_heads_say() -> None:
    for language in ("en", "ja"):
        for variant in ("paper", *PAPER_VARIANTS):
            pages = characters(printed(language, variant))
            html = paper_html(demo(language), STUDIO, printing(language), cast(Any, variant))
            assert len(pages) == html.count('<section class="sheet')


def test_head_and_foot_say_where_the_reader_is() -> None:
    with pdfplumber.open(io.BytesIO(printed("en"))) as pdf:
        texts = [page.extract_text() for page in pdf.pages]
    digest = demo("en").digest
    for number, text in enumerate(texts, 1):
        assert f"page {number} of {len(texts)}" in text
        assert f"wording {digest}" in text
        assert "The sky this month: December · en" in text
        assert "&#" not in text
        assert "counter(" not in text
    assert re.search(r"Opening · 0:\d\d · 2026-12-01", texts[0])
    assert "goes on" in texts[0]
    assert "guest card" in texts[-1]


@pytest.mark.parametrize(
    "paper", [Paper(), Paper(size="A5"), Paper(cards=2), Paper(cards=4)], ids=("A4", "A5", "2", "4")
)
@pytest.mark.parametrize("language", ["en", "ru", "ja"])
def test_heads_are_whole_and_do_not_run_into_each_other(language: str, paper: Paper) -> None:
    """A head names language, reader, date, segment's time, page and wording, however narrow the page."""
    one = replace(demo(language), reader=Reader("t", "Tomas Okoro-Lindqvist"))
    variant: Variant = "cards" if paper.size == "A4" and paper.cards != 2 else "paper"
    pdf = paper_pdf(one, replace(STUDIO, paper=paper), printing(language), variant)
    sheet = sheet_for(paper, cards=paper.cards if variant == "cards" else 1)
    with pdfplumber.open(io.BytesIO(pdf)) as opened:
        page = opened.pages[0]
        head = page.crop((0, 0, sheet.width_mm / MM_PER_PT - 0.1, sheet.head_mm / MM_PER_PT))
        text, letters = head.extract_text(), [c for c in head.chars if c["text"].strip()]
    for part in (f"· {language}", "Tomas Okoro-Lindqvist", "2026-12-01", one.digest):
        assert part in text, text
    assert re.search(r"· \d:\d\d", text)
    for line in {round(c["top"]) for c in letters}:
        row = sorted((c for c in letters if round(c["top"]) == line), key=lambda c: c["x0"])
        assert all(b["x0"] > a["x1"] - 0.15 * sheet.margins_pt for a, b in pairwise(row)), text


def test_a_word_that_no_line_holds_is_cut_with_a_hyphen_where_the_alphabet_has_one() -> None:
    measure = printing("de").measure
    lines = measure.wrapped("Planetengeologin", 34, 12)
    assert lines[0].endswith("-")
    assert "".join(lines).replace("-", "") == "Planetengeologin"
    assert len(lines[-1]) >= 3
    assert all(measure.width_pt(line, 12) * MM_PER_PT <= 34 for line in lines)
    assert "-" not in "".join(measure.wrapped("1234567890" * 4, 34, 12))
    assert "-" not in "".join(printing("ja").measure.wrapped("惑星地質学者" * 4, 34, 12))


def test_the_foot_names_what_comes_on_the_next_page() -> None:
    one = prepared("# Talk\n\n" + "Good evening to you all. " * 60 + "\n\n[clip 0:20 Moonrise]\n\n> Ask.", "en")
    with pdfplumber.open(io.BytesIO(paper_pdf(one, replace(STUDIO, paper=Paper(size="A5")), printing("en")))) as pdf:
        texts = [page.extract_text() for page in pdf.pages]
    assert all("Good evening to you" in text.splitlines()[-1] for text in texts[:-2])
    last = next(n for n, text in enumerate(texts) if "clip 0:20: Moonrise" in text.replace("\n", " "))
    if "Good evening" not in texts[last]:
        assert "1 clip 0:20: Moonrise" in texts[last - 1]


def test_small_type_grows_with_very_large_copy() -> None:
    assert [sheet_for(Paper(font_pt=size)).small_pt for size in (14, 18, 20, 24, 30)] == [12, 12, 12, 14.5, 18]


def test_paper_and_screen_print_one_digest_over_one_text() -> None:
    """The screen copy's own lines, read back from its page, say what the paper's copy says."""
    studio = faces.studio_for([shipped("scripts_demo")])
    from promptprep.pipeline.scripts import prepare_one
    from promptprep.rendering.screen import screen_html

    script = faces.load_scripts([shipped("scripts_demo") / "children.en.md"], studio)[0]
    one = prepare_one(script, studio, faces.tools())
    lines = "".join(line.text for line in one.broken.lines)
    font_pt = sheet_for(studio.paper, acuity=one.reader.acuity if one.reader else None).font_pt
    pdf = paper_pdf(one, studio, printing("en"))
    titles = "".join(segment.title for segment in script.segments)
    letters = "".join(c["text"] for page in characters(pdf) for c in page if abs(c["size"] - font_pt) < 0.05)
    assert sorted("".join(letters.split())) == sorted("".join((titles + lines).split()))
    assert one.digest in screen_html(one, environment([shipped("templates")]), faces.tools().fonts.subsets)
    assert one.digest in paper_html(one, studio, printing("en"))


def test_the_page_is_tagged_titled_and_bookmarked() -> None:
    with pikepdf.open(io.BytesIO(printed("fr"))) as pdf:
        root = cast(Any, pdf.Root)
        assert str(root.Lang) == "fr"
        assert bool(root.MarkInfo.Marked)
        assert str(pdf.docinfo["/Title"]).startswith("Le ciel du mois")
        with pdf.open_outline() as outline:
            assert [item.title for item in outline.root[0].children][:2] == ["Ouverture", "Trois choses à chercher"]
        kinds = {str(part) for part in structure(root.StructTreeRoot)}
    assert {"/H1", "/H2", "/P"} <= kinds


def structure(node: Any) -> list[Any]:
    found = [node.S] if "/S" in node else []
    kids = node.get("/K", [])
    for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, pikepdf.Dictionary) and "/K" in kid:
            found += structure(kid)
    return found


def test_rehearsal_numbers_every_line_and_has_boxes() -> None:
    html = paper_html(demo("en"), STUDIO, printing("en"), "rehearsal")
    plain = paper_html(demo("en"), STUDIO, printing("en"))
    lines = plain.count('class="row said"')
    assert html.count('class="number"') == lines
    assert f">{lines}</span>" in html
    assert html.count('class="box"') == len(demo("en").script.segments) + 1
    assert html.count('class="long"') > 10
    assert html.count('class="short"') > 5
    assert 'class="number"' not in plain
    assert 'class="long"' not in plain


@pytest.mark.parametrize("language", ["en", "ar", "ja"])
def test_a_rehearsal_copy_says_how_its_times_are_typed(language: str) -> None:
    """Beside each box stands what `promptprep learn` takes, and what the time holds besides words."""
    one = demo(language)
    html = re.sub(r"[\u2066-\u2069]", "", paper_html(one, STUDIO, printing(language), "rehearsal"))
    for segment in one.script.segments:
        assert f"· #{segment.id} =" in html
    assert f"· made.{language}.md =" in html
    assert f"promptprep learn made.{language}.md#{one.script.segments[0].id}=0:42" in html
    assert clock_text(one.script.fixed_s) in html
    plain = paper_html(prepared("Good evening.", "en"), STUDIO, printing("en"), "rehearsal")
    assert plain.count('class="box"') == 1


@pytest.mark.parametrize(("cards", "size_mm"), [(1, (210, 297)), (2, (210, 148.5)), (4, (105, 148.5))])
def test_cards(cards: int, size_mm: tuple[float, float]) -> None:
    paper = Paper(cards=cards)
    sheet = sheet_for(paper, cards=cards)
    assert (sheet.width_mm, sheet.height_mm) == size_mm
    html = paper_html(demo("en"), replace(STUDIO, paper=paper), printing("en"), "cards")
    assert html.count('class="crop"') == {1: 0, 2: 3, 4: 6}[cards] * html.count('<section class="sheet')


def test_low_ink_has_no_bold_titles_and_thin_rules() -> None:
    fonts = {c["fontname"] for page in characters(printed("de", "low-ink")) for c in page if abs(c["size"] - 20) < 0.05}
    assert fonts
    assert not any("Bold" in name for name in fonts)


def test_a_version_beside_the_copy() -> None:
    html = paper_html(demo("fr"), STUDIO, printing("fr"), beside=demo("en"))
    assert html.count('lang="en"') >= len([p for s in demo("en").script.segments for p in s.paragraphs])
    assert "There are three things to look for this month." in html
    across = paper_pdf(demo("ar"), STUDIO, printing("ar"), beside=demo("en"))
    sheet = sheet_for(STUDIO.paper)
    lane = (sheet.width_mm - sheet.margin_mm - sheet.lane_mm) / MM_PER_PT
    with pdfplumber.open(io.BytesIO(across)) as pdf:
        for page in pdf.pages:
            english = {mcid for mcid, language, _ in leaves(page.structure_tree, "ar") if language == "en"}
            assert all(c["x1"] <= lane + 0.5 for c in page.chars if c["mcid"] in english)


def test_pronunciations_stand_above_their_word_once_a_segment() -> None:
    source = '# One\n\n[Osei]{say="oh-SAY"} and [Osei]{say="oh-SAY"}.\n\n# Two\n\n[Osei]{say="oh-SAY"}.'
    html = paper_html(prepared(source, "en"), STUDIO, printing("en"))
    assert html.count("oh-SAY") == 2


def test_pronunciations_keep_clear_of_their_line_and_of_each_other() -> None:
    words = " ".join(f'[Io{n}]{{say="a-very-long-way-to-say-{n}"}}' for n in range(4))
    pdf = paper_pdf(prepared(f"{words} seen.", "en"), STUDIO, printing("en"))
    chars = characters(pdf)[0]
    sheet = sheet_for(STUDIO.paper)
    copy = [c for c in chars if abs(c["size"] - sheet.font_pt) < 0.05]
    below_title, lane = sheet.head_mm / MM_PER_PT + 44, (sheet.margin_mm + sheet.lane_mm) / MM_PER_PT
    above = [c for c in chars if below_title < c["top"] < copy[0]["top"] and c["x0"] > lane - 1]
    says = [c for c in above if abs(c["size"] - sheet.small_pt) < 0.05]
    assert says
    baselines = sorted({round(c["bottom"], 1) for c in says})
    assert len(baselines) >= 2
    assert max(c["bottom"] - 0.24 * sheet.small_pt for c in says) <= min(c["top"] + 0.3 * c["size"] for c in copy)


# -- input that is at fault -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "source",
    [
        "",
        "# Only a title",
        "word " * 3000 + ".",
        "W" * 400 + " and on.",
        "# " + "Long title " * 60 + "\n\nCopy.",
        "Copy " + "[vision: camera 1] " * 80 + "ends.",
        "[clip 0:20 " + "very long words " * 200 + "]\n\nCopy.",
        "> " + "a note " * 900 + "\n\nCopy.",
        "# A\n\n[live 1:00 talk]\n\n> " + "ask " * 900,
        "Quotes ' \" \\ </style> & {{ x }} {% y %}.",
    ],
    ids=("nothing", "title", "long-sentence", "wide-word", "long-title", "cues", "long-cue", "note", "card", "marks"),
)
def test_odd_scripts_print(source: str) -> None:
    one = prepared(source, "en")
    paper = Paper(size="A5")
    pages = characters(paper_pdf(one, replace(STUDIO, paper=paper), printing("en")))
    sheet = sheet_for(paper)
    for page in pages:
        assert max(c["x1"] for c in page) * MM_PER_PT <= sheet.width_mm - 5
        assert max(c["bottom"] for c in page) * MM_PER_PT <= sheet.height_mm - 3
    letters = [c["text"] for page in pages for c in page if abs(c["size"] - sheet.font_pt) < 0.05]
    copy = "".join("".join(p.text for s in one.script.segments for p in s.paragraphs).split())
    assert copy in "".join("".join(letters).split())


def test_a_sheet_that_does_not_exist() -> None:
    with pytest.raises(BadCall, match="A7"):
        sheet_for(Paper(size="A7"))
    with pytest.raises(BadCall, match="3 cards"):
        sheet_for(Paper(), cards=3)
    with pytest.raises(BadCall, match="too large"):
        sheet_for(Paper(size="A5", font_pt=18), cards=4)


@pytest.mark.parametrize(
    ("template", "line", "lacks"),
    [
        ("<p>\n{{ nobody_knows }}</p>", 2, "nobody_knows"),
        ("<p>\n\n{% for x in %}</p>", 3, "Expected an expression"),
        ("{{ one.script.nothing }}", 1, "nothing"),
        ('<p>\n{% include "gone.html" %}', None, "gone.html"),
        ("<p>\n{{ 1 / 0 }}", 2, "division by zero"),
        ("{{ one.digest + 1 }}", 1, "str"),
    ],
)
def test_a_template_at_fault_is_named_with_its_line(
    tmp_path: Path, template: str, line: int | None, lacks: str
) -> None:
    (tmp_path / "paper").mkdir()
    (tmp_path / "paper" / "script.html").write_text(template, "utf-8")
    tools = with_folder(printing("en"), tmp_path)
    with pytest.raises(UnreadableInput) as caught:
        paper_html(demo("en"), STUDIO, tools)
    assert caught.value.code == "broken-template"
    assert lacks in caught.value.message
    if line is not None:
        assert caught.value.file == str(tmp_path / "paper" / "script.html")
        assert caught.value.line == line


OTHER_TEMPLATES = ("report/report.html", "screen/page.html.j2", "screen/copy.css.j2", "screen/plan.js",
                   "drawings/side.svg")  # fmt: skip


@pytest.mark.parametrize("name", OTHER_TEMPLATES)
def test_every_page_names_its_template_at_fault(tmp_path: Path, name: str) -> None:
    (tmp_path / "studio.toml").write_text('templates = "ours"\n', "utf-8")
    (tmp_path / "sky.en.md").write_text("Good evening.\n", "utf-8")
    own = tmp_path / "ours" / name
    own.parent.mkdir(parents=True)
    for spoilt in (b"\xff",) if name.endswith(".js") else (b"{{ nobody_knows }}", b"{% if %}", b"\xff"):
        own.write_bytes(spoilt)
        with pytest.raises(UnreadableInput) as caught:
            faces.prepare([tmp_path / "sky.en.md"], tmp_path / "out")
        assert caught.value.code == "broken-template"
        assert name in str(caught.value.file)
    assert not (tmp_path / "out").exists()


def with_folder(tools: PaperTools, folder: Path) -> PaperTools:
    return replace(tools, env=environment([folder, shipped("templates")]))


def test_a_studio_s_own_style_goes_before_the_shipped_one(tmp_path: Path) -> None:
    (tmp_path / "paper").mkdir()
    (tmp_path / "paper" / "card.html").write_text("<h1>Our own card</h1>", "utf-8")
    assert "Our own card" in paper_html(demo("en"), STUDIO, with_folder(printing("en"), tmp_path))


def test_a_studio_s_own_style_is_added_to_every_printed_page(tmp_path: Path) -> None:
    (tmp_path / "base").mkdir()
    (tmp_path / "base" / "own.css").write_text(".rule{border-bottom-width:7pt}", "utf-8")
    tools = with_folder(printing("en"), tmp_path)
    with pdfplumber.open(io.BytesIO(paper_pdf(demo("en"), STUDIO, tools))) as pdf:
        heights = [float(r["height"]) for r in pdf.pages[0].rects]
    assert any(abs(height - 7) < 0.2 for height in heights)
    for template in ("paper/script.html", "crew/sheet.html", "rig/sheet.html"):
        assert '{% include "base/own.css" %}' in (shipped("templates") / template).read_text("utf-8")


def picture(path: Path, size: tuple[int, int]) -> Path:
    Image.new("RGB", size, "black").save(path)
    return path


def test_a_logo_stands_in_every_head(tmp_path: Path) -> None:
    studio = replace(STUDIO, file=str(tmp_path / "studio.toml"), logo=picture(tmp_path / "logo.png", (900, 300)).name)
    tools = replace(printing("en"), logo=logo_url(studio))
    with pdfplumber.open(io.BytesIO(paper_pdf(demo("en"), studio, tools))) as pdf:
        for page in pdf.pages:
            assert len(page.images) == 1
            assert page.images[0]["height"] * MM_PER_PT == pytest.approx(6, abs=0.1)


@pytest.mark.parametrize("size", [(60, 20), (3000, 300), (40, 400)], ids=("small", "wide", "high"))
def test_a_logo_has_its_size_and_leaves_the_head_whole(tmp_path: Path, size: tuple[int, int]) -> None:
    studio = replace(STUDIO, file=str(tmp_path / "studio.toml"), logo=picture(tmp_path / "logo.png", size).name)
    tools = replace(printing("en"), logo=logo_url(studio))
    for variant, paper in (("paper", Paper()), ("cards", Paper(cards=2)), ("cards", Paper(cards=4))):
        with pdfplumber.open(
            io.BytesIO(paper_pdf(demo("en"), replace(studio, paper=paper), tools, cast(Any, variant)))
        ) as pdf:
            image = pdf.pages[0].images[0]
            assert image["height"] * MM_PER_PT <= 6.05
            assert image["width"] * MM_PER_PT <= 30.05
            assert max(image["height"] * MM_PER_PT / 6, image["width"] * MM_PER_PT / 30) == pytest.approx(1, abs=0.02)
            line = [c for c in pdf.pages[0].chars if abs(c["bottom"] - image["bottom"]) < 12 and c["text"].strip()]
            beside = [c for c in line if c["top"] < image["bottom"] - 2 and c["x0"] < image["x1"] - 0.5]
            assert not [c for c in beside if c["bottom"] <= image["bottom"] + 4]
            row = sorted((c for c in line if abs(c["top"] - line[0]["top"]) < 1), key=lambda c: c["x0"])
            assert all(b["x0"] > a["x1"] - 2 for a, b in pairwise(row))


@pytest.mark.parametrize("made", ["missing", "broken", "huge"])
def test_a_logo_at_fault(tmp_path: Path, made: str) -> None:
    file = tmp_path / "logo.png"
    if made == "broken":
        file.write_bytes(b"\x89PNG\r\n\x1a\n no picture")
    elif made == "huge":
        Image.new("1", (12_000, 9_000)).save(file)
    studio = replace(STUDIO, file=str(tmp_path / "studio.toml"), logo="logo.png")
    with pytest.raises(PromptprepError) as caught:
        logo_url(studio)
    assert caught.value.file == str(file)
    assert caught.value.code == {"missing": "logo-missing", "broken": "logo-broken", "huge": "logo-too-large"}[made]


def test_type_grows_with_distance_and_for_eyes_that_see_less() -> None:
    assert font_pt_of(Paper(reading_distance_mm=600)) == 14.0
    assert font_pt_of(Paper(reading_distance_mm=900)) == pytest.approx(21.0, abs=0.5)
    assert font_pt_of(Paper(), acuity=0.5) == pytest.approx(14 * 1.4, abs=0.5)
    assert font_pt_of(Paper(font_pt=17), acuity=0.5) == 17
    tired = replace(demo("en"), reader=Reader("t", "Tomas", acuity=0.5))
    sizes = {c["size"] for c in characters(paper_pdf(tired, STUDIO, printing("en")))[0]}
    assert any(abs(size - font_pt_of(Paper(), acuity=0.5)) < 0.05 for size in sizes)


# -- the interface's texts --------------------------------------------------------------------------------------


def test_every_text_of_the_printed_pages_is_in_every_catalogue() -> None:
    from babel.messages.pofile import read_po

    from promptprep.model.script import CUE_KINDS
    from promptprep.model.sightline import quantity_name
    from promptprep.sightline.cautions import ABOVE, ALWAYS, CLOSE, GLASS, GLASSES
    from promptprep.store.limits import default_limits

    said = re.compile(r'(?:\b_|words|say|self)\(\s*"([^"]+)"')
    folders = ("paper", "crew", "rig", "drawings")
    sources = [file for folder in folders for file in shipped("templates").glob(f"{folder}/*")]
    modules = ("paper_items", "paper", "crew", "guest_cards", "rig_sheet", "wording")
    rendering = Path(faces.__file__).parent.parent / "rendering"
    sources += [*(rendering / f"{name}.py" for name in modules), *rendering.glob("drawn_*.py")]
    texts = {m[1] for file in sources for m in said.finditer(file.read_text("utf-8"))}
    assert len(texts) > 100
    texts |= {*CUE_KINDS, "unknown", *ABOVE, *ALWAYS, *CLOSE, *GLASS, *GLASSES}
    texts |= {quantity_name(limit.quantity) for limit in default_limits()} | {quantity_name("modulation_at_eye")}
    for language in FIRST_CLASS:
        if language == "en":
            continue
        with (FOLDER / language / "LC_MESSAGES" / "promptprep.po").open("rb") as stream:
            known = {str(m.id): str(m.string) for m in read_po(stream, locale=language) if m.id}
        assert texts <= set(known), language
        for text in sorted(texts):
            fields = set(re.findall(r"\{\w+\}", text))
            assert known[text].strip()
            assert set(re.findall(r"\{\w+\}", known[text])) == fields, (language, text)
            assert not faces.tools().engines.shaper.missing(known[text], language)


# -- from the outside -------------------------------------------------------------------------------------------


def test_prepare_prints_the_copies_that_are_asked_for(tmp_path: Path) -> None:
    report = faces.prepare([shipped("scripts_demo") / "children.en.md"], tmp_path, paper=["rehearsal", "cards"])
    names = {path.name for path in report.files}
    assert {"children.en.paper.pdf", "children.en.rehearsal.pdf", "children.en.cards.pdf"} <= names
    with pytest.raises(BadCall, match="leaflet"):
        faces.prepare([shipped("scripts_demo") / "children.en.md"], tmp_path, paper=["leaflet"])


def test_a_studio_names_its_copies_and_its_helper_language(tmp_path: Path) -> None:
    file = tmp_path / "studio.toml"
    file.write_text('[paper]\nvariants = ["rehearsal"]\ncards = 4\nbeside = "en"\n', "utf-8")
    paper = faces.studio_for([tmp_path]).paper
    assert (paper.variants, paper.cards, paper.beside) == (("rehearsal",), 4, "en")
    file.write_text('[paper]\nvariants = ["leaflet"]\ncards = 3\nbeside = "zz-nowhere"\n', "utf-8")
    with pytest.raises(PromptprepError) as caught:
        faces.studio_for([tmp_path])
    assert [fault.line for fault in getattr(caught.value, "faults", [])] == [2, 3, 4]


def test_a_template_folder_that_is_not_there(tmp_path: Path) -> None:
    studio = replace(STUDIO, file=str(tmp_path / "studio.toml"), template_folder="ours")
    with pytest.raises(UnreadableInput, match="no such folder"):
        faces.template_folders(studio)
