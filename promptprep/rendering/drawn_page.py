"""Drawings on a printed page: their lines as SVG, their texts as text of the page.

The page renderer sets a text inside an SVG letter by letter, so that Arabic and Devanagari come out unjoined; outside
it shapes as everywhere. Texts of the page are also read by what reads a tagged file aloud.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from xml.etree import ElementTree

from promptprep.rendering.direction import direction_of
from promptprep.rendering.sheets import MIDDLE_EM

NAMESPACE = ' xmlns="http://www.w3.org/2000/svg"'


@dataclass(frozen=True, slots=True)
class Label:
    """One text: `x_mm` from the drawing's left edge is its start, middle or end, as `anchor` says."""

    text: str
    x_mm: float
    top_mm: float
    size_mm: float
    bold: bool
    anchor: str
    direction: str


@dataclass(frozen=True, slots=True)
class PageDrawing:
    """A drawing without its texts, and its texts; sizes in millimetres."""

    svg: str
    width_mm: float
    height_mm: float
    labels: tuple[Label, ...]


def on_page(svg: str, width_mm: float, most_mm: float) -> PageDrawing:
    """A drawing as wide as `width_mm`, or as high as `most_mm` where that is less."""
    root = ElementTree.fromstring(svg.replace(NAMESPACE, "", 1))
    _, _, width, height = (float(part) for part in root.attrib["viewBox"].split())
    scale = min(width_mm / width, most_mm / height)
    labels = tuple(_labels(root, {}, scale))
    root.set("style", f"width:{width * scale:.2f}mm;height:{height * scale:.2f}mm")
    bare = ElementTree.tostring(root, encoding="unicode").replace("<svg", f"<svg{NAMESPACE}", 1)
    return PageDrawing(bare, width * scale, height * scale, labels)


def _labels(element: ElementTree.Element, around: dict[str, str], scale: float) -> Iterator[Label]:
    """Takes the texts below an element out of it; sizes and weights are inherited."""
    here = {**around, **element.attrib}
    for child in list(element):
        if child.tag != "text":
            yield from _labels(child, here, scale)
            continue
        element.remove(child)
        own = {**here, **child.attrib}
        if text := (child.text or "").strip():
            size = float(own["font-size"]) * scale
            x, y = (float(child.attrib[key]) * scale for key in ("x", "y"))
            bold, anchor = own.get("font-weight") == "700", child.attrib.get("text-anchor", "start")
            yield Label(text, x, y - MIDDLE_EM * size, size, bold, anchor, direction_of(text) or "ltr")
