"""A rig's sheet: lengths in both systems, a chart at its real size, a bar that shows a printer's scaling."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import pdfplumber
import pytest

from promptprep import faces
from promptprep.model.language import FIRST_CLASS
from promptprep.model.rig import Studio
from promptprep.model.sightline import Sightline
from promptprep.rendering.drawings import rig_drawings
from promptprep.rendering.drawn_page import on_page
from promptprep.rendering.rig_sheet import BAR_MM, chart_lines, rig_sheet_html, rig_sheet_pdf, tape_rows
from promptprep.rendering.sheets import CAP_EM
from promptprep.rendering.wording import ENGLISH, Wording
from promptprep.sightline.cautions import cautions
from promptprep.store.templates import shipped
from promptprep.units import MM_PER_PT
from tests.rendering.paper_factory import printing

STUDIO_FILE = Path(shipped("scripts_demo")) / "studio.toml"


@lru_cache(maxsize=4)
def sight(rig: str) -> Sightline:
    return faces.sightlines(STUDIO_FILE, rig=rig)[0][1]


@lru_cache(maxsize=4)
def printed(rig: str) -> bytes:
    return rig_sheet_pdf(sight(rig), faces.studio_for([STUDIO_FILE.parent]), printing("en"))


def test_lengths_are_those_of_the_studio_file() -> None:
    lengths = {row.name: row.metric for row in tape_rows(sight("hall"))}
    assert lengths["Eye to the glass"] == "2.50 m"
    assert lengths["Glass to the picture"] == "280 mm"
    assert lengths["Eye to text, by the glass"] == "2.78 m"
    assert lengths["Eye to the lens"] == "2.75 m"
    assert "Glass to the picture" not in {row.name for row in tape_rows(sight("desk"))}


@pytest.mark.parametrize(
    ("mm", "text"), [(2500, "8 ft 2.5 in"), (1828.8, "6 ft 0 in"), (280, "11.02 in"), (304.8, "1 ft 0 in")]
)
def test_feet_and_inches(mm: float, text: str) -> None:
    """1 in is 25.4 mm and 1 ft is 12 in, exactly (the international yard of 1959; from memory)."""
    assert ENGLISH.imperial(mm) == text


@pytest.mark.parametrize("rig", ["hall", "desk"])
def test_the_chart_has_its_angles_at_the_rig_s_distance(rig: str) -> None:
    """ISO 9241-3's angle by the small-angle rule of NUREG-0700 rev 2 section 1.3.1-4: H = 6.283 * D * MA / 21600."""
    lines = chart_lines(sight(rig), 180, printing("en").measure.width_pt)
    assert [line.arcmin for line in lines] == [31, 24, 22, 20, 16]
    for line in lines:
        assert line.cap_mm == pytest.approx(6.283 * sight(rig).optical_path_mm * line.arcmin / 21600, rel=2e-3)
        assert line.font_pt * CAP_EM * MM_PER_PT == pytest.approx(line.cap_mm)


def test_chart_and_bar_are_printed_at_their_size() -> None:
    with pdfplumber.open(io.BytesIO(printed("hall"))) as pdf:
        page = pdf.pages[-1]
        sizes = {char["size"] for char in page.chars}
        bars = [rect for rect in page.rects if abs(rect["width"] * MM_PER_PT - BAR_MM) < 0.3]
    wanted = chart_lines(sight("hall"), 180, printing("en").measure.width_pt)
    assert all(min(abs(size - line.font_pt) for size in sizes) < 0.02 for line in wanted)
    assert bars


def test_the_sheet_shows_cautions_and_settings() -> None:
    with pdfplumber.open(io.BytesIO(printed("hall"))) as pdf:
        text = " ".join((page.extract_text() or "").replace("\n", " ") for page in pdf.pages)
    assert "tempered or laminated" in text
    assert "Local codes" in text
    assert "flat below the glass" in text
    assert printed("hall") == rig_sheet_pdf(sight("hall"), faces.studio_for([STUDIO_FILE.parent]), printing("en"))


def in_language(language: str) -> Studio:
    return replace(faces.studio_for([STUDIO_FILE.parent]), language=language)


@pytest.mark.parametrize("language", FIRST_CLASS)
def test_the_sheet_speaks_the_studio_s_language(language: str) -> None:
    """Its table, cautions and drawings; the chart's words and the sources' names stay as they are, and say so."""
    html = rig_sheet_html(sight("hall"), in_language(language), printing(language))
    words = faces.tools().words(language)
    for text in (
        "Set with a tape",
        "Take care",
        "From the reader's eye",
        "Type size and column width",
        "towards the camera",
    ):
        shown = words(text).replace("'", "&#39;")
        assert shown in html
        assert language == "en" or text.replace("'", "&#39;") not in html
    local = next(text for text in cautions(sight("hall").rig) if text.startswith("Local codes"))
    assert words(local).replace("'", "&#39;") in html
    assert html.count("<li>") == len(cautions(sight("hall").rig)) + html.count('<li><span class="mark">')
    assert 'lang="en"' in html
    assert (words("1.5") == "1,5") == (language in ("de", "es", "fr", "pt", "ru"))  # CLDR's decimal signs


@pytest.mark.parametrize("language", FIRST_CLASS)
def test_four_pages_without_a_missing_glyph(language: str) -> None:
    with pdfplumber.open(io.BytesIO(rig_sheet_pdf(sight("hall"), in_language(language), printing(language)))) as pdf:
        assert len(pdf.pages) == 4
        for page in pdf.pages:
            assert min(char["x0"] for char in page.chars) * MM_PER_PT >= 14
            assert max(char["x1"] for char in page.chars) * MM_PER_PT <= 196.5
    html = rig_sheet_html(sight("hall"), in_language(language), printing(language))
    assert not faces.tools().engines.shaper.missing(
        re.sub(r"<style>.*?</style>|<[^>]+>", "", html, flags=re.S), language
    )


@pytest.mark.parametrize("language", FIRST_CLASS)
@pytest.mark.parametrize("rig", ["hall", "field", "desk"])
def test_texts_of_a_drawing_stay_on_it_and_apart(language: str, rig: str) -> None:
    measure, say = printing(language).measure, Wording(faces.tools().words(language))
    for svg in rig_drawings(sight(rig), printing(language).env, say):
        drawing, taken = on_page(svg, 180, 110), []
        assert "<text" not in drawing.svg
        for label in drawing.labels:
            wide = measure.width_pt(label.text, label.size_mm / MM_PER_PT, bold=label.bold) * MM_PER_PT
            left = label.x_mm - {"start": 0.0, "middle": wide / 2, "end": wide}[label.anchor]
            box = (left, left + wide, label.top_mm - 0.36 * label.size_mm, label.top_mm + 0.36 * label.size_mm)
            assert box[0] > -0.5
            assert box[1] < drawing.width_mm + 0.5
            hits = [text for text, other in taken if overlap(box, other)]
            assert not hits, (label.text, hits)
            taken.append((label.text, box))


def overlap(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    across, down = (min(one[n + 1], other[n + 1]) - max(one[n], other[n]) for n in (0, 2))
    return across > 0.3 and down > 0.3
