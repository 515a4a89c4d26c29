"""Printed pages are the browser's picture of them: for scripts whose text comes out of a PDF scrambled.

The PDF is drawn by one library's bidirectional text and shaping, the page by Chromium's; ink must lie in the same
places. A page that is mirrored, or shows another page's words, must not pass.
"""

from __future__ import annotations

import io
from collections.abc import Callable
from typing import Any

import numpy as np
import pypdfium2
import pytest
from numpy.typing import NDArray
from PIL import Image

from promptprep.model.rig import Studio
from promptprep.rendering.paper import paper_html
from promptprep.rendering.printing import pdf_from_html
from promptprep.rendering.sheets import Sheet, sheet_for
from tests.rendering.paper_factory import demo, printing

pytestmark = pytest.mark.browser
DPI = 144
BLOCK = 6  # dots that are taken together: half a millimetre of play
Picture = NDArray[np.float64]


def browser_picture(context: Any, address: str, sheet: Sheet) -> Picture:
    page = context.new_page()
    width = sheet.width_mm - sheet.margin_mm - min(sheet.margin_mm, sheet.end_mm)
    page.set_viewport_size({"width": round(width / 25.4 * 96), "height": round(sheet.body_pt / 0.75)})
    page.goto(address)
    page.evaluate("document.fonts.ready")
    shot = page.screenshot(clip={"x": 0, "y": 0, "width": round(width / 25.4 * 96), "height": sheet.body_pt / 0.75})
    page.close()
    picture = Image.open(io.BytesIO(shot)).convert("L")
    return ink(picture.resize((round(width / 25.4 * DPI), round(sheet.body_pt / 72 * DPI)), Image.Resampling.BOX))


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


@pytest.mark.parametrize("language", ["ar", "hi", "en", "ja"])
def test_a_printed_page_is_the_browser_s_picture(
    context: Any, write_page: Callable[[str, str], str], language: str
) -> None:
    one = demo(language)
    html = paper_html(one, Studio(), printing(language))
    sheet = sheet_for(Studio().paper)
    pdf = pdf_from_html(html, "picture")
    shown = browser_picture(context, write_page("paper.html", html), sheet)
    assert shown.sum() > 50, "the browser shows nothing"
    drawn = pdf_picture(pdf, 0, sheet, one.direction)
    assert likeness(shown, drawn) > 0.9
    assert likeness(shown, drawn[:, ::-1]) < 0.6
    assert likeness(shown, pdf_picture(pdf, 1, sheet, one.direction)) < 0.6
