"""The fonts that are bundled: static instances in memory, and subsets of them to embed.

What is measured and what is embedded are cut from the same instance, so outlines and advances are the same.
The regular weight has strokes of about 1/8 of the capitals' height, inside the 1/7 to 1/8 that
DOD-HDBK-791 section 6-5.3.2.3 gives for light letters on dark ground.
"""

from __future__ import annotations

import io
from dataclasses import dataclass
from functools import lru_cache
from importlib import resources
from typing import Any

from promptprep.errors import MissingLanguageData, PromptprepError
from promptprep.store.languages import language_data

_FILES = {
    "noto-sans": ("fontpkg_noto_sans", "files/NotoSans[wdth,wght].ttf"),
    "noto-sans-arabic": ("fontpkg_noto_sans_arabic", "files/NotoSansArabic[wdth,wght].ttf"),
    "noto-sans-cjk-jp": ("noto_cjk_sans_jp_regular", "NotoSansCJKjp-Regular.otf"),
    "noto-sans-devanagari": ("fontpkg_noto_sans_devanagari", "files/NotoSansDevanagari[wdth,wght].ttf"),
}
ORDER = ("noto-sans", "noto-sans-arabic", "noto-sans-devanagari", "noto-sans-cjk-jp")
REGULAR, BOLD = 400, 700


@dataclass(frozen=True, slots=True)
class FontMetrics:
    """Heights of a language's first font in em: capital H and small x."""

    cap_em: float
    x_em: float


def font_order(language: str) -> tuple[str, ...]:
    """Names of the fonts for a language, first the one that is asked first; all bundled fonts are in it.

    Raises `PromptprepError` (unknown-font) where the language's data name a font that is not bundled.
    """
    try:
        first = tuple(language_data(language).get("fonts", "order"))
    except MissingLanguageData:
        first = ()
    for name in first:
        _check(name)
    return first + tuple(name for name in ORDER if name not in first)


@lru_cache(maxsize=16)
def font_data(name: str, bold: bool = False) -> bytes:
    """A static font file: the variable font at its regular or bold weight. The Japanese font has one weight only."""
    import uharfbuzz as hb

    face = hb.Face(hb.Blob(_source(name)))
    if not face.axis_infos:
        return _source(name)
    wanted = hb.SubsetInput()
    wanted.keep_everything()
    for axis in face.axis_infos:
        value = (BOLD if bold else REGULAR) if axis.tag == "wght" else axis.default_value
        wanted.pin_axis_location(face, axis.tag, value)
    return bytes(hb.subset(face, wanted).blob.data)


@lru_cache(maxsize=16)
def characters(name: str) -> frozenset[int]:
    """Code points for which a font has a glyph."""
    import uharfbuzz as hb

    return frozenset(hb.Face(hb.Blob(_source(name))).unicodes)


def subset_fonts(language: str, text: str, bold: bool = False) -> tuple[bytes, ...]:
    """WOFF2 files that together show `text`, in the order in which they must be asked.

    Each holds every character of the text that its font has, so that a browser falls back where the measure did.
    A font that no character needs is left out. The same text gives the same bytes.
    """
    letters = {ord(char) for char in text} | {0x20}
    files = []
    left = set(letters)
    for name in font_order(language):
        own = characters(name)
        if left & own:
            files.append(_woff2(name, bold, frozenset(letters & own)))
            left -= own
    return tuple(files)


def font_css(language: str, text: str, family: str = "copy", bold_text: str = "") -> str:
    """`@font-face` rules for `text`, and for `bold_text` in bold, with the files inside as data URLs.

    The families are called `family`-0, `family`-1 ... in the order for `font-family`.
    """
    from base64 import b64encode

    rules = []
    for weight, letters in ((REGULAR, text), (BOLD, bold_text)):
        for i, data in enumerate(subset_fonts(language, letters, weight == BOLD) if letters else ()):
            source = f"url(data:font/woff2;base64,{b64encode(data).decode('ascii')}) format('woff2')"
            rules.append(f"@font-face {{ font-family: '{family}-{i}'; font-weight: {weight}; src: {source}; }}")
    return "\n".join(rules)


@lru_cache(maxsize=32)
def font_metrics(language: str) -> FontMetrics:
    """Heights in em, read from the glyphs of the font that a language asks first."""
    import uharfbuzz as hb

    face = hb.Face(hb.Blob(font_data(font_order(language)[0])))
    font = hb.Font(face)
    return FontMetrics(cap_em=_height(font, "H") / face.upem, x_em=_height(font, "x") / face.upem)


def _height(font: Any, char: str) -> float:
    extents = font.get_glyph_extents(font.get_nominal_glyph(ord(char)))
    return float(extents.y_bearing)


def _check(name: str) -> None:
    if name not in _FILES:
        raise PromptprepError(
            "unknown-font", f"font {name!r} is not bundled", f"use one of {', '.join(sorted(_FILES))}"
        )


@lru_cache(maxsize=8)
def _source(name: str) -> bytes:
    _check(name)
    package, file = _FILES[name]
    return resources.files(package).joinpath(file).read_bytes()


@lru_cache(maxsize=256)
def _woff2(name: str, bold: bool, letters: frozenset[int]) -> bytes:
    import uharfbuzz as hb
    from fontTools.ttLib import TTFont

    wanted = hb.SubsetInput()
    wanted.unicode_set.update(sorted(letters))
    part = hb.subset(hb.Face(hb.Blob(font_data(name, bold))), wanted).blob.data
    font = TTFont(io.BytesIO(part), recalcTimestamp=False)
    font.flavor = "woff2"
    written = io.BytesIO()
    font.save(written)
    return written.getvalue()


class BundledFonts:
    """Answers `Fonts`."""

    def heights_em(self, language: str) -> tuple[float, float]:
        metrics = font_metrics(language)
        return metrics.cap_em, metrics.x_em

    def css(self, language: str, text: str, family: str = "copy", bold_text: str = "") -> str:
        return font_css(language, text, family, bold_text)

    def subsets(self, language: str, text: str, bold: bool) -> tuple[bytes, ...]:
        return subset_fonts(language, text, bold)
