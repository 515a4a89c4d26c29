"""The paper copy, measured from its PDF, beside published guidance on print that must be read at once.

UKAAF G003 (2019): clear print at least 12 points, ideally 14; large print at least 16, ideally 18; left-aligned;
    words not split; no italics or underlining.
RNIB clear print, as reported: line spacing 1.5 to 2.
WCAG 2.x SC 1.4.8: at most 80 characters a line, 40 in Chinese, Japanese and Korean; SC 1.4.6: contrast 7 : 1.
Bringhurst, as quoted: 45 to 75 characters a line.
ISO 9241-3, as quoted: capitals of 16 arcminutes at least, 20 to 22 preferred; height 2 * d * tan(angle / 2).
ISO 216 (from memory): A4 is 210 by 297 mm. US letter is 8.5 by 11 inches (from memory).
"Sentences are usually not broken across pages": http://www.pyrbred.org/tvr/t070n3.html.
"""

from __future__ import annotations

import io
import math
import statistics
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from typing import Any

import pdfplumber
import pypdfium2
import pytest

from promptprep.model.language import FIRST_CLASS
from promptprep.model.rig import Paper, Studio
from promptprep.rendering.paper import paper_pdf
from promptprep.rendering.sheets import font_pt_of
from promptprep.units import MM_PER_PT
from tests.rendering.paper_factory import demo, printing

PLAIN = Paper()
PREFERRED_ARCMIN, LEAST_ARCMIN = 20.0, 16.0


@lru_cache(maxsize=32)
def printed(language: str, paper: Paper = PLAIN) -> bytes:
    return paper_pdf(demo(language), replace(Studio(), paper=paper), printing(language))


@lru_cache(maxsize=32)
def copy_lines(language: str, paper: Paper = PLAIN) -> list[list[dict[str, Any]]]:
    """Characters of each printed line of copy, by page and base line."""
    size = font_pt_of(paper)
    lines: dict[tuple[int, float], list[dict[str, Any]]] = {}
    with pdfplumber.open(io.BytesIO(printed(language, paper))) as pdf:
        for number, page in enumerate(pdf.pages):
            for char in page.chars:
                if abs(char["size"] - size) < 0.05:
                    lines.setdefault((number, round(char["matrix"][5], 1)), []).append(char)
    return [lines[key] for key in sorted(lines, key=lambda key: (key[0], -key[1]))]


@pytest.mark.parametrize("language", FIRST_CLASS)
def test_copy_is_at_least_ideal_clear_print_and_black(language: str) -> None:
    with pdfplumber.open(io.BytesIO(printed(language))) as pdf:
        chars = [char for page in pdf.pages for char in page.chars]
    colours = {tuple(char["non_stroking_color"] or (0,)) for char in chars}
    assert {contrast_on_white(colour) for colour in colours} == {21.0}  # SC 1.4.6 asks for 7
    assert copy_lines(language)[0][0]["size"] >= 13.95
    assert min(char["size"] for char in chars) >= 11.95  # times, cues, pronunciations, heads: clear print throughout


def contrast_on_white(colour: tuple[float, ...]) -> float:
    """WCAG 2.x: (L1 + 0.05) / (L2 + 0.05), grey or RGB from 0 to 1."""
    red, green, blue = colour if len(colour) == 3 else (colour[0],) * 3
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in (red, green, blue)]
    return 1.05 / (0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2] + 0.05)


@pytest.mark.parametrize("language", ["en", "ru", "ja"])
def test_leading_is_one_and_a_half(language: str) -> None:
    lines = copy_lines(language)
    size = lines[0][0]["size"]
    steps = [a[0]["matrix"][5] - b[0]["matrix"][5] for a, b in pairwise(lines)]
    inside = [step for step in steps if 0 < step < 1.7 * size]
    assert len(inside) > 8
    assert min(inside) >= 1.5 * size - 0.05


@pytest.mark.parametrize("distance_mm", [500.0, 600.0, 800.0])
def test_capitals_subtend_the_preferred_angle_at_reading_distance(distance_mm: float) -> None:
    """The ink of printed capitals, measured by a second library."""
    paper = Paper(reading_distance_mm=distance_mm)
    heights = [ink_height_mm(char, paper) for char in ("T", "F", "B")]
    arcmin = [math.degrees(2 * math.atan(height / (2 * distance_mm))) * 60 for height in heights]
    assert min(arcmin) >= PREFERRED_ARCMIN - 0.2
    assert min(arcmin) >= LEAST_ARCMIN


def ink_height_mm(wanted: str, paper: Paper) -> float:
    """Height of the first such letter of the copy."""
    size = font_pt_of(paper)
    document = pypdfium2.PdfDocument(printed("en", paper))
    for page in document:
        text = page.get_textpage()
        for index in range(text.count_chars()):
            left, bottom, right, top = text.get_charbox(index, loose=False)
            if text.get_text_range(index, 1) == wanted and 0.6 * size < top - bottom < 0.85 * size:
                assert right > left
                return float(top - bottom) * MM_PER_PT
    raise AssertionError(f"no {wanted} in the copy")


@pytest.mark.parametrize(("language", "low", "high"), [("en", 45, 75), ("de", 45, 75), ("es", 45, 75)])
def test_a_full_line_has_the_advised_number_of_characters(language: str, low: int, high: int) -> None:
    counts = sorted(len(line) for line in copy_lines(language))
    assert low <= counts[-1] <= high
    assert counts[-1] <= 80


@pytest.mark.parametrize("language", ["ja", "zh", "ko"])
def test_square_characters_run_at_most_forty_a_line(language: str) -> None:
    assert max(len(line) for line in copy_lines(language)) <= 40


@pytest.mark.parametrize("language", ["en", "fr", "ja"])
def test_lines_start_together_and_end_ragged(language: str) -> None:
    starts = [line[0]["x0"] for line in copy_lines(language)]
    assert max(starts) - min(starts) < 0.35 * font_pt_of(PLAIN)  # side bearings, a bracket
    assert statistics.pstdev([line[-1]["x1"] for line in copy_lines(language)]) > 10


def test_no_word_is_split_and_nothing_leans() -> None:
    for language in ("en", "de", "fr"):
        words = {w for s in demo(language).script.segments for p in s.paragraphs for w in p.text.split()}
        words |= {w for s in demo(language).script.segments for w in s.title.split()}
        for line in copy_lines(language):
            assert set("".join(char["text"] for char in line).split()) <= words
            assert all(char["upright"] and abs(char["matrix"][2]) < 1e-6 for char in line)


@pytest.mark.parametrize(
    ("paper", "size_mm"),
    [
        (Paper(), (210.0, 297.0)),
        (Paper(orientation="landscape"), (297.0, 210.0)),
        (Paper(size="letter"), (215.9, 279.4)),
        (Paper(size="A5"), (148.0, 210.0)),
    ],
)
def test_sheets_have_their_published_size(paper: Paper, size_mm: tuple[float, float]) -> None:
    with pdfplumber.open(io.BytesIO(printed("en", paper))) as pdf:
        for page in pdf.pages:
            assert page.width * MM_PER_PT == pytest.approx(size_mm[0], abs=0.1)
            assert page.height * MM_PER_PT == pytest.approx(size_mm[1], abs=0.1)


def test_a_punched_margin_is_clear_of_the_holes() -> None:
    """Holes centre 12 mm from the edge and are 6 mm wide (ISO 838; from memory)."""
    with pdfplumber.open(io.BytesIO(printed("en", Paper(punched=True)))) as pdf:
        assert min(char["x0"] for page in pdf.pages for char in page.chars) * MM_PER_PT >= 15 + 5


@pytest.mark.parametrize("language", ["en", "es", "fr", "de", "pt", "sw"])
def test_no_page_ends_inside_a_sentence(language: str) -> None:
    pages: dict[int, str] = {}
    size = font_pt_of(PLAIN)
    with pdfplumber.open(io.BytesIO(printed(language))) as pdf:
        for number, page in enumerate(pdf.pages):
            pages[number] = "".join(c["text"] for c in page.chars if abs(c["size"] - size) < 0.05).strip()
    assert all(text[-1] in ".!?”»" for text in pages.values() if text)
