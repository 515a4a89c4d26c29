"""Printed pages are the browser's picture of them: for scripts whose text comes out of a PDF scrambled.

The PDF is drawn by one library's bidirectional text and shaping, the page by Chromium's; ink must lie in the same
places. A page that is mirrored, or shows another page's words, must not pass.
"""

from __future__ import annotations

import io
import os
from collections.abc import Callable
from typing import Any

import numpy as np
import pypdfium2
import pytest
from hypothesis import HealthCheck, Phase, given, settings
from numpy.typing import NDArray
from PIL import Image

from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import Studio
from promptprep.rendering.paper import paper_html
from promptprep.rendering.printing import pdf_from_html
from promptprep.rendering.sheets import Sheet, sheet_for
from tests.rendering.paper_factory import demo, prepared, printing, script_texts

pytestmark = pytest.mark.browser
DPI = 144
BLOCK = 6  # dots that are taken together: half a millimetre of play
LIKE = 0.85  # the same page; what is missing is half a dot up or down, by which the two round lines
Picture = NDArray[np.float64]


def browser_pictures(context: Any, address: str, sheet: Sheet, count: int) -> list[Picture]:
    """What the browser shows of each page's body: one below the other, since a window has no pages."""
    page = context.new_page()
    width = round((sheet.width_mm - sheet.margin_mm - min(sheet.margin_mm, sheet.end_mm)) / 25.4 * 96)
    height = sheet.body_pt / 0.75
    page.set_viewport_size({"width": width, "height": round(height)})
    page.goto(address)
    page.evaluate("document.fonts.ready")
    size = round(width / 96 * DPI), round(sheet.body_pt / 72 * DPI)
    shots = []
    for number in range(count):
        clip = {"x": 0, "y": number * height, "width": width, "height": height}
        shot = Image.open(io.BytesIO(page.screenshot(clip=clip, full_page=True))).convert("L")
        shots.append(ink(shot.resize(size, Image.Resampling.BOX)))
    page.close()
    return shots


def pdf_picture(pdf: bytes, number: int, sheet: Sheet, direction: str) -> Picture:
    drawn = pypdfium2.PdfDocument(pdf)[number].render(scale=DPI / 72).to_pil().convert("L")
    outer = min(sheet.margin_mm, sheet.end_mm)
    left = (outer if direction == "rtl" else sheet.margin_mm) / 25.4 * DPI
    top = sheet.head_mm / 25.4 * DPI
    width = (sheet.width_mm - sheet.margin_mm - outer) / 25.4 * DPI
    box = (round(left), round(top), round(left) + round(width), round(top) + round(sheet.body_pt / 72 * DPI))
    return ink(drawn.crop(box))


def ink(picture: Image.Image) -> Picture:
    """Share of ink in each block."""
    dark = 1 - np.asarray(picture, dtype=np.float64) / 255
    rows, columns = (side // BLOCK * BLOCK for side in dark.shape)
    blocks = dark[:rows, :columns].reshape(rows // BLOCK, BLOCK, columns // BLOCK, BLOCK)
    return np.asarray(blocks.mean(axis=(1, 3)))


def likeness(one: Picture, other: Picture) -> float:
    rows, columns = (min(a, b) for a, b in zip(one.shape, other.shape, strict=True))
    return float(np.corrcoef(one[:rows, :columns].ravel(), other[:rows, :columns].ravel())[0, 1])


def pictures(
    context: Any, write_page: Callable[[str, str], str], one: PreparedScript, style: str = ""
) -> list[tuple[Picture, Picture]]:
    """For each page what the browser shows, with a further style, and what the PDF does."""
    language = one.script.language
    html = paper_html(one, Studio(), printing(language))
    sheet, pdf = sheet_for(Studio().paper), pdf_from_html(html, "picture")
    count = len(pypdfium2.PdfDocument(pdf))
    shown = browser_pictures(
        context, write_page("paper.html", html.replace("</style>", style + "</style>")), sheet, count
    )
    return [(shown[n], pdf_picture(pdf, n, sheet, one.direction)) for n in range(count)]


@pytest.mark.parametrize("language", ["ar", "hi", "en", "ja"])
def test_a_printed_page_is_the_browser_s_picture(
    context: Any, write_page: Callable[[str, str], str], language: str
) -> None:
    found = pictures(context, write_page, demo(language))
    for number, (shown, drawn) in enumerate(found):
        assert shown.sum() > 30, "the browser shows nothing"
        assert likeness(shown, drawn) > LIKE
        assert likeness(shown, drawn[:, ::-1]) < 0.6
        others = [likeness(shown, other) for n, (_, other) in enumerate(found) if n != number]
        assert max(others) < 0.7


def test_letters_that_do_not_join_are_another_picture(context: Any, write_page: Callable[[str, str], str]) -> None:
    """What the comparison is for: Arabic set letter by letter must not pass."""
    apart = '*{font-feature-settings:"init" 0,"medi" 0,"fina" 0,"rlig" 0}'
    assert all(likeness(*page) < LIKE - 0.1 for page in pictures(context, write_page, demo("ar"), apart)[:2])


@settings(
    max_examples=int(os.environ.get("PROMPTPREP_EXAMPLES", "4")),  # 100 by hand
    deadline=None,
    derandomize=True,
    suppress_health_check=list(HealthCheck),
    phases=(Phase.explicit, Phase.generate),
)
@given(made=script_texts(("ar", "hi")))
def test_generated_scripts_are_the_browser_s_picture(
    context: Any, write_page: Callable[[str, str], str], made: tuple[str, str]
) -> None:
    """Every page of scripts whose text comes out of a PDF scrambled."""
    language, text = made
    for shown, drawn in pictures(context, write_page, prepared(text, language)):
        if shown.sum() > 5:
            assert likeness(shown, drawn) > LIKE
