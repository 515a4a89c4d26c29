"""Widths against the fonts' own tables read by another library (fontTools), and what is embedded against both."""

from __future__ import annotations

import io

import pdfplumber
import pytest
import weasyprint
from fontTools.ttLib import TTFont

from promptprep.engines import fonts
from promptprep.engines.fonts import font_css, font_data, font_metrics, font_order, subset_fonts
from promptprep.engines.shaping import HarfBuzzShaper
from promptprep.errors import PromptprepError
from promptprep.model.language import FIRST_CLASS, LanguageData

SHAPER = HarfBuzzShaper()


def advances_em(data: bytes, text: str) -> float:
    """Sum of the advances of a font's glyphs, without kerning."""
    font = TTFont(io.BytesIO(data))
    cmap = font.getBestCmap()
    return sum(font["hmtx"][cmap[ord(char)]][0] for char in text) / font["head"].unitsPerEm


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize(
    ("language", "text"),
    [("en", "noon"), ("ru", "нос"), ("ja", "今日は"), ("zh", "望远镜"), ("ko", "안녕"), ("ar", "123")],
)
def test_a_word_without_kerning_is_its_advances(language: str, text: str, bold: bool) -> None:
    width = SHAPER.widths_em([text], language, bold=bold)[0]
    assert width == pytest.approx(advances_em(font_data(font_order(language)[0], bold), text), abs=0.002)


def test_kerning_counts() -> None:
    kerned, plain = SHAPER.widths_em(["AVAVA"], "en")[0], advances_em(font_data("noto-sans"), "AVAVA")
    assert kerned < 0.98 * plain


def test_bold_is_wider_where_there_is_a_bold() -> None:
    assert SHAPER.widths_em(["meteors"], "en", bold=True)[0] > SHAPER.widths_em(["meteors"], "en")[0]
    assert SHAPER.widths_em(["流星"], "ja", bold=True) == SHAPER.widths_em(["流星"], "ja")


@pytest.mark.parametrize("language", FIRST_CLASS)
def test_what_is_embedded_has_the_measured_advances(language: str) -> None:
    text = {"ar": "123", "hi": "क", "zh": "望", "ja": "今", "ko": "안", "ru": "нос"}.get(language, "noon")
    for bold in (False, True):
        part = subset_fonts(language, text, bold)[0]
        assert SHAPER.widths_em([text], language, bold=bold)[0] == pytest.approx(advances_em(part, text), abs=0.002)


def test_subsets_are_small_and_the_same_each_time() -> None:
    first = subset_fonts("ja", "今日は新しい望遠鏡")
    fonts._woff2.cache_clear()
    assert subset_fonts("ja", "今日は新しい望遠鏡") == first
    assert len(first) == 1
    assert len(first[0]) < 20_000


def test_a_glyph_that_the_first_font_lacks_comes_from_the_next() -> None:
    assert SHAPER.missing("GPS 今日", "ar") == []
    assert len(subset_fonts("ar", "مرحبا 今")) == 2
    whole = SHAPER.widths_em(["今"], "en")[0]
    assert whole == pytest.approx(1.0), "an ideograph is one em wide"


def test_what_no_font_has_is_said_once_each() -> None:
    assert SHAPER.missing("🙂 🙂 א\x01\u200b\ufe0f", "en") == ["א", "🙂"]
    assert SHAPER.widths_em(["🙂"], "en")[0] >= 1.3


def test_what_is_not_shown_takes_no_room() -> None:
    assert SHAPER.widths_em(["a\u200bb\u00ad\x01", "ab"], "en")[0] == pytest.approx(SHAPER.widths_em(["ab"], "en")[0])


def test_heights_are_the_fonts_own() -> None:
    """Noto Sans: sCapHeight 714, sxHeight 536 of 1000 in its OS/2 table."""
    table = TTFont(io.BytesIO(font_data("noto-sans")))["OS/2"]
    assert font_metrics("en").cap_em == pytest.approx(table.sCapHeight / 1000)
    assert font_metrics("en").x_em == pytest.approx(table.sxHeight / 1000)


def test_a_font_that_is_not_bundled(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(fonts, "language_data", lambda tag: LanguageData(tag, {"fonts": {"order": ["no-such"]}}))
    with pytest.raises(PromptprepError, match="'no-such' is not bundled"):
        font_order("en")


@pytest.mark.parametrize(
    ("language", "text", "bold"),
    [
        ("en", "AVAVA To. “Yo”, fi", False),
        ("en", "AVAVA To. “Yo”, fi", True),
        ("ru", "ГАТТ, Россия: У", False),
        ("ja", "「今日は」、2026年GPS", False),
    ],
)
def test_the_page_renderer_sets_the_same_width(language: str, text: str, bold: bool) -> None:
    """In the PDF that WeasyPrint writes, from the first glyph's left to the last one's right (read by pdfplumber)."""
    css = font_css(language, text, bold_text=text)
    html = (
        f"<html lang='{language}'><style>{css} @page {{ size: 2000px 200px; margin: 0 }}"
        f"p {{ font: {700 if bold else 400} 50px copy-0; white-space: pre; margin: 0 }}</style><p>{text}</p></html>"
    )
    with pdfplumber.open(io.BytesIO(weasyprint.HTML(string=html).write_pdf())) as pdf:
        chars = pdf.pages[0].chars
        width_pt = max(char["x1"] for char in chars) - min(char["x0"] for char in chars)
    expected_pt = SHAPER.widths_em([text], language, bold=bold)[0] * 50 * 0.75
    assert width_pt == pytest.approx(expected_pt, rel=0.001)
