"""What every printed page is made with: texts of the interface, measures, fonts, templates, and the PDF writer."""

from __future__ import annotations

from base64 import b64decode
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Protocol

from jinja2 import Environment
from markupsafe import Markup

from promptprep.rendering.environment import render
from promptprep.rendering.measure import Measure
from promptprep.rendering.page_fonts import family_list
from promptprep.rendering.tagging import finish_tags
from promptprep.spans import Span
from promptprep.units import MM_PER_PT

LOGO_MM = (30.0, 6.0)  # at most
Words = Callable[[str], str]  # a text of the interface in the script's language


class Breaker(Protocol):
    """Lines of a paragraph no wider than `width_em`, broken at groups of sense; `stress` is set in bold."""

    def __call__(self, text: str, width_em: float, stress: Sequence[Span] = ()) -> Sequence[Span]: ...


@dataclass(frozen=True, slots=True)
class PaperTools:
    """What a printed page needs from outside, for one language.

    `sentences(text)` gives the ends of its sentences. `faces(text)` gives the `@font-face` rules that show a text, in
    families "copy-0", "copy-1" ... `bold` says whether the language's first font has a bold weight; where it has
    none, a line under the words shows stress. `logo` is an image as a data URL, "" where the studio has none.
    `interface` is the language of `words` where it is not the page's own.
    """

    words: Words
    breaker: Breaker
    sentences: Callable[[str], Sequence[int]]
    faces: Callable[[str], str]
    env: Environment
    measure: Measure
    bold: bool = True
    logo: str = ""
    interface: str = ""

    @property
    def logo_mm(self) -> tuple[float, float]:
        """Width and height of the logo in a page's head; nothing where there is none."""
        if not self.logo:
            return 0.0, 0.0
        wide, high = _png_px(self.logo)
        height = min(LOGO_MM[1], LOGO_MM[0] * high / wide)
        return wide / high * height, height

    def sense_lines(self, text: str, width_mm: float, font_pt: float) -> list[str]:
        """A note in lines that end at groups of sense; one empty line where there is no text."""
        spans = self.breaker(text, width_mm / MM_PER_PT / font_pt)
        return [" ".join(text[span.start : span.end].split()) for span in spans] or [""]


def rendered(tools: PaperTools, template: str, **values: Any) -> str:
    """A printed page's HTML with the faces of all characters on it embedded. Raises `UnreadableInput` for a fault in
    a template, with its file and line."""
    wide, high = tools.logo_mm
    dpi = _png_px(tools.logo)[1] / high * 25.4 if tools.logo else 600.0
    given = {
        **values,
        "_": tools.words,
        "bold": tools.bold,
        "logo": tools.logo,
        "interface": tools.interface,
        "logo_mm": (wide, high),
        "logo_dpi": dpi,
    }
    bare = render(tools.env, template, **given, faces="", families="")
    faces = tools.faces("".join(sorted({c for c in bare if c.isprintable()})))
    families = family_list(faces, "copy") or Markup("copy-0")
    return render(tools.env, template, **given, faces=Markup(faces), families=families)


def _png_px(url: str) -> tuple[int, int]:
    """Width and height of a PNG in a data URL: the first two numbers of its first chunk (ISO/IEC 15948, 11.2.2)."""
    head = b64decode(url.partition(",")[2][:44])
    return int.from_bytes(head[16:20]), int.from_bytes(head[20:24])


def pdf_from_html(html: str, identity: str) -> bytes:
    """PDF bytes of a page text, with structure tags; `identity` makes the file's identifier.

    Only data URLs are read: a page never fetches anything from disk or net.
    """
    from weasyprint import HTML
    from weasyprint.urls import URLFetcher

    written = HTML(string=html, url_fetcher=URLFetcher(allowed_protocols=("data",))).write_pdf(
        finisher=finish_tags,
        pdf_variant="pdf/ua-1",
        pdf_tags=True,
        pdf_identifier=identity.encode("utf-8"),
        full_fonts=False,
    )
    assert isinstance(written, bytes)
    return written
