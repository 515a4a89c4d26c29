"""Widths by HarfBuzz with the very fonts that are embedded, falling back from font to font as a browser does."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import groupby
from typing import Any

from promptprep.engines.fonts import characters, font_data, font_order
from promptprep.engines.wellformed import whole

SHOWN_AS = (
    "font-kerning: normal; font-variant-ligatures: common-ligatures; font-synthesis: none; letter-spacing: 0; "
    "word-spacing: 0; text-rendering: geometricPrecision; text-spacing-trim: space-all; text-autospace: no-autospace; "
    "white-space: pre"
)
"""The style under which a page shows text as wide as it is measured here. Without the two rules for spacing, browsers
set Japanese and Chinese marks closer together than the font has them."""

_KEPT = 60  # longest text whose width is remembered
_CACHE = 200_000
_MISSING_EM = 1.4  # wider than what systems show for a character that no bundled font has (emoji: 1.17 to 1.37)
_SHARED = ("Zyyy", "Zinh", "Zzzz")
_RTL = ("Arab", "Hebr", "Syrc", "Thaa", "Nkoo", "Adlm")


@dataclass(slots=True)
class _Stack:
    """Fonts of one language and weight in their order, with the widths found so far."""

    fonts: list[tuple[Any, int]]
    language: str
    widths: dict[str, float] = field(default_factory=dict)


class HarfBuzzShaper:
    """Answers `Shaper`. Kerning and ligatures as by default in browsers; no letter or word spacing."""

    def widths_em(self, texts: Sequence[str], language: str, *, bold: bool = False) -> list[float]:
        """Advance widths in em. Control characters and those that are ignored by default take no width."""
        stack = _stack(language, bold)
        if len(stack.widths) > _CACHE:
            stack.widths.clear()
        return [_remembered(text, stack) for text in texts]

    def missing(self, text: str, language: str) -> list[str]:
        """Characters that no bundled font can show, sorted, each once."""
        letters = {ord(char) for char in set(whole(text))}
        for name in font_order(language):
            letters -= characters(name)
        return sorted(chr(letter) for letter in letters if not _is_silent(chr(letter)))


@lru_cache(maxsize=64)
def _stack(language: str, bold: bool) -> _Stack:
    import uharfbuzz as hb

    fonts = []
    for name in font_order(language):
        face = hb.Face(hb.Blob(font_data(name, bold)))
        fonts.append((hb.Font(face), face.upem))
    return _Stack(fonts, language)


def _remembered(text: str, stack: _Stack) -> float:
    width = stack.widths.get(text)
    if width is None:
        width = sum(_run_width(run, script, stack, 0) for run, script in _script_runs(whole(text)))
        if len(text) <= _KEPT:
            stack.widths[text] = width
    return width


def _script_runs(text: str) -> Iterator[tuple[str, str]]:
    """(stretch, script): characters that scripts share go with what stands before them, else with what follows."""
    if text.isascii():
        yield from [(text, "Latn")] if text else []
        return
    scripts = [_script(char) for char in text]
    known = next((s for s in scripts if s not in _SHARED), "Latn")
    for i, script in enumerate(scripts):
        known = scripts[i] = known if script in _SHARED else script
    at = 0
    for script, group in groupby(scripts):
        length = sum(1 for _ in group)
        yield text[at : at + length], script
        at += length


@lru_cache(maxsize=8192)
def _script(char: str) -> str:
    from fontTools import unicodedata as scripts

    return str(scripts.script(char))


def _run_width(text: str, script: str, stack: _Stack, level: int) -> float:
    """Width of one script's run from font `level` on. Clusters without a glyph are shaped anew in the next font."""
    if level == len(stack.fonts):
        return _MISSING_EM * sum(1 for char in text if not unicodedata.combining(char) and not _is_silent(char))
    import uharfbuzz as hb

    font, upem = stack.fonts[level]
    buffer = hb.Buffer()
    buffer.add_str(text)
    buffer.script = script
    buffer.direction = "rtl" if script in _RTL else "ltr"
    buffer.language = stack.language
    hb.shape(font, buffer, {})
    glyphs = list(zip(buffer.glyph_infos, buffer.glyph_positions, strict=True))
    gaps = {info.cluster for info, _ in glyphs if info.codepoint == 0}
    width = sum(position.x_advance for info, position in glyphs if info.cluster not in gaps) / upem
    if gaps:
        clusters = sorted({info.cluster for info, _ in glyphs})
        width += sum(_run_width(part, script, stack, level + 1) for part in _lacking(text, clusters, gaps))
    return float(width)


def _lacking(text: str, clusters: list[int], gaps: set[int]) -> Iterator[str]:
    """Longest stretches of the text whose clusters all lack a glyph."""
    ends = [*clusters[1:], len(text)]
    for lacks, group in groupby(zip(clusters, ends, strict=True), key=lambda pair: pair[0] in gaps):
        pairs = list(group)
        if lacks:
            stretch = text[pairs[0][0] : pairs[-1][1]]
            if any(not _is_silent(char) for char in stretch):
                yield stretch


@lru_cache(maxsize=8192)
def _is_silent(char: str) -> bool:
    """Control and format characters, selectors of variants: nothing is shown for them."""
    return unicodedata.category(char) in ("Cc", "Cf", "Zl", "Zp") or 0xFE00 <= ord(char) <= 0xFE0F
