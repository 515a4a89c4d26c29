"""Stills: a PNG of each screenful at the rig's resolution, flipped, for a media store; with a list."""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import Any

from jinja2 import Environment

from promptprep.model.prepared import PreparedScript
from promptprep.rendering.csv_text import csv_file, csv_text
from promptprep.rendering.screen import screen_pages, screen_pdf
from promptprep.rendering.screen_faces import Fonts
from promptprep.rendering.screen_plan import screen_plan
from promptprep.rendering.screen_words import IN_ENGLISH, ScreenWords
from promptprep.units import clock_text

DOTS_PER_POINT = 96 / 72
HEAD = ("file", "at_s", "at", "until_s", "kind", "text", "flip", "wording")


def stills(
    prepared: PreparedScript, env: Environment, fonts: Fonts, words: ScreenWords = IN_ENGLISH
) -> list[tuple[str, bytes]]:
    """(file name, content): the list `NAME.LANG.stills.csv`, then `NAME.LANG.screen-001.png` and so on.

    The pictures are the pages of the screen copy's PDF, mirrored dot for dot as the rig needs; the last is the chart.
    """
    stem = f"{prepared.script.name}.{prepared.script.language}"
    pictures = [
        _png(_flipped(image, prepared.rig.flip))
        for image in page_images(screen_pdf(prepared, env, fonts, "none", words))
    ]
    names = [f"{stem}.screen-{number:03d}.png" for number in range(1, len(pictures))] + [f"{stem}.screen-chart.png"]
    listed = _listed(prepared, names)
    return [(f"{stem}.stills.csv", listed), *zip(names, pictures, strict=True)]


def page_images(pdf: bytes) -> Iterator[Any]:
    """Each page as an RGB image (Pillow), one dot to a CSS pixel."""
    import pypdfium2

    document = pypdfium2.PdfDocument(pdf)
    try:
        for page in document:
            yield page.render(scale=DOTS_PER_POINT).to_pil().convert("RGB")
    finally:
        document.close()


def _flipped(image: Any, flip: str) -> Any:
    from PIL import ImageOps

    image = ImageOps.mirror(image) if flip in ("horizontal", "both") else image
    return ImageOps.flip(image) if flip in ("vertical", "both") else image


def _png(image: Any) -> bytes:
    written = io.BytesIO()
    image.save(written, "PNG", compress_level=6)
    return written.getvalue()


def _listed(prepared: PreparedScript, names: list[str]) -> bytes:
    """CSV of the stills: file, when it comes, for how long, its first words."""
    pages = screen_pages(screen_plan(prepared))
    ends = [page["at_s"] for page in pages[1:]] + [prepared.timing.timing.mean_s]
    fixed = [prepared.rig.flip, prepared.digest]
    rows = [
        (name, f"{page['at_s']:.2f}", clock_text(page["at_s"]), f"{end:.2f}", page["kind"], _text(page), *fixed)
        for name, page, end in zip(names, pages, ends, strict=False)
    ]
    return csv_file(csv_text(HEAD, [*rows, (names[-1], "", "", "", "chart", "", *fixed)]))


def _text(page: dict[str, Any]) -> str:
    if page["kind"] == "copy":
        return " ".join(placed.line.text.strip() for placed, _ in page["lines"])[:60]
    return str(page["wait"].text)
