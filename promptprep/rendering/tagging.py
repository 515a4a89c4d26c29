"""Finishes a PDF's structure: changes of language marked, heads and feet made artifacts, empty elements left out.

ISO 32000-1 (PDF 1.7): 14.9.2 (`Lang` on a structure element), 14.8.2.2 (artifacts), 14.7.4.4 (the parent tree).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

DROPPED_EMPTY = frozenset(("/Div", "/Figure", "/P", "/Span", "/NonStruct"))  # a table keeps its empty cells


@dataclass(slots=True)
class Leaf:
    """A piece of a page's content, an int in its element's `K`."""

    element: Any
    mcid: int
    language: str = ""


@dataclass(frozen=True, slots=True)
class Shown:
    """What the page's layout says of a piece: its language, and whether it belongs to head or foot."""

    language: str
    hidden: bool


@dataclass(slots=True)
class Tree:
    """The structure elements of one file by number, and the pieces of content by page, in the tree's order."""

    objects: list[Any]
    pages: dict[bytes, list[Leaf]] = field(default_factory=dict)

    def kids(self, element: Any) -> Iterator[Any]:
        """The structure elements right below; links' annotations are none."""
        below = (self.objects[_number(kid)] for kid in element["K"] if isinstance(kid, bytes))
        yield from (kid for kid in below if "K" in kid)

    def gather(self, element: Any) -> None:
        for kid in element["K"]:
            if isinstance(kid, int):
                self.pages.setdefault(element["Pg"], []).append(Leaf(element, kid))
            elif "K" in (below := self.objects[_number(kid)]):
                self.gather(below)


def finish_tags(document: Any, pdf: Any) -> None:
    """A finisher for `weasyprint.HTML.write_pdf`: mends the structure of `pdf` before it is written.

    Content of elements with `aria-hidden="true"` and of page margins becomes an artifact. Each element whose content
    is all in one language, other than what surrounds it, says so. A page whose pieces cannot be told apart (its
    template does something unforeseen) keeps the structure that it has.
    """
    root = pdf.objects[_number(pdf.catalog["StructTreeRoot"])]
    top = pdf.objects[_number(root["K"][0])]
    tree = Tree(pdf.objects)
    tree.gather(top)
    for page, reference in zip(document.pages, pdf.page_references, strict=True):
        leaves, shown = tree.pages.get(reference, []), list(_shown(page._page_box, False))
        if len(leaves) == len(shown):
            for leaf, what in zip(leaves, shown, strict=True):
                leaf.language = what.language
                if what.hidden:
                    leaf.element["K"].remove(leaf.mcid)
    languages = {id(leaf.element): leaf.language for leaves in tree.pages.values() for leaf in leaves}
    _prune(tree, top)
    spoken: dict[int, frozenset[str]] = {}
    _spoken(tree, top, languages, spoken)
    _mark(tree, top, spoken, document.metadata.lang or "")
    _make_artifacts(tree, pdf, root, top)


def _number(reference: bytes) -> int:
    return int(reference.split()[0])


def _shown(box: Any, hidden: bool) -> Iterator[Shown]:
    """The pieces of a page in the order of its boxes, without those in its margins."""
    from weasyprint.formatting_structure import boxes

    box = getattr(box, "_box", box)
    if isinstance(box, boxes.MarginBox):
        return
    if box.element is not None and box.element.get("aria-hidden") == "true":
        hidden = True
    if isinstance(box, boxes.TextBox | boxes.ReplacedBox):
        yield Shown(box.style["lang"] or "", hidden)
    else:
        for child in box.children:
            yield from _shown(child, hidden)


def _prune(tree: Tree, element: Any) -> None:
    """Takes out elements without content: marks that are drawn, and what held a head or foot."""
    kept = []
    for kid in element["K"]:
        if isinstance(kid, bytes) and "K" in (below := tree.objects[_number(kid)]):
            _prune(tree, below)
            if not below["K"] and below["S"] in DROPPED_EMPTY:
                below.clear()
                continue
        kept.append(kid)
    element["K"][:] = kept


def _mark(tree: Tree, element: Any, spoken: dict[int, frozenset[str]], around: str) -> None:
    """Writes `Lang` on the highest elements that are in one language throughout."""
    found = spoken[id(element)]
    if len(found) == 1 and (language := next(iter(found))) and language != around:
        import pydyf  # type: ignore[import-untyped]  # it has no types

        element["Lang"] = pydyf.String(language)
        around = language
    if found - {around, ""}:
        for kid in tree.kids(element):
            _mark(tree, kid, spoken, around)


def _spoken(tree: Tree, element: Any, own: dict[int, str], found: dict[int, frozenset[str]]) -> frozenset[str]:
    """The languages of an element's content, for it and all below it into `found`."""
    parts = [_spoken(tree, kid, own, found) for kid in tree.kids(element)]
    found[id(element)] = frozenset((own[id(element)],) if id(element) in own else ()).union(*parts)
    return found[id(element)]


def _make_artifacts(tree: Tree, pdf: Any, root: Any, top: Any) -> None:
    """Content that no element of the tree holds is marked as a page's furniture, and its parents are let go."""
    held = {(leaf.element["Pg"], leaf.mcid) for leaf in _held(tree, top)}
    nums = pdf.objects[_number(root["ParentTree"])]["Nums"]
    for reference, parents in zip(pdf.page_references, nums[1::2], strict=False):
        loose = {n for n in range(len(parents)) if (reference, n) not in held}
        for n in loose:
            pdf.objects[_number(parents[n])].clear()
            parents[n] = b"null"
        page = pdf.objects[_number(reference)]
        _as_furniture(pdf.objects[_number(page["Contents"])].stream, loose)


def _held(tree: Tree, top: Any) -> Iterator[Leaf]:
    after = Tree(tree.objects)
    after.gather(top)
    for leaves in after.pages.values():
        yield from leaves


def _as_furniture(stream: list[Any], loose: set[int]) -> None:
    for at, part in enumerate(stream):
        if isinstance(part, dict) and part.get("MCID") in loose:
            stream[at - 1] = "/Artifact"
            part.clear()
            part["Type"] = "/Pagination"
