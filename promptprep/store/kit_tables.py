"""Reads the tables of a filled kit from what a word processor saved, through pandoc's document tree."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from promptprep.errors import UnreadableInput
from promptprep.store.files import read_bytes
from promptprep.store.pandoc import LineText, tree_of_file

FORMATS = {".docx": "docx", ".odt": "odt", ".html": "html", ".htm": "html"}
HINT = "give the kit as it came back: a .docx, .odt, .html or .xlf file"
_STARTS = {"docx": b"PK", "odt": b"PK"}
_LEFT_OUT = {"Strikeout": "struck-out copy", "Note": "a footnote", "Image": "a picture", "Math": "a formula",
             "Table": "a table inside the table"}  # fmt: skip


class Row(NamedTuple):
    """A row's cells as text, and what of them could not be carried over."""

    cells: list[str]
    losses: list[str]


def table_rows(path: Path) -> list[Row]:
    """The rows of all tables in a document, in order. Raises `UnreadableInput` for what is no document."""
    kind = FORMATS[path.suffix.lower()]
    if not read_bytes(path).startswith(_STARTS.get(kind, b"")):
        raise UnreadableInput("broken-kit", f"the kit cannot be read: it is no {path.suffix} file", HINT, str(path))
    try:
        tree = tree_of_file(path, kind)
    except ValueError as fault:
        raise UnreadableInput("broken-kit", f"the kit cannot be read: {fault}", HINT, str(path)) from None
    return [_row(cells) for table in _tables(tree["blocks"]) for cells in _rows(table)]


def _tables(blocks: Sequence[dict[str, Any]]) -> Iterator[Any]:
    for block in blocks:
        if block["t"] == "Table":
            yield block["c"]
        elif block["t"] in ("Div", "Figure"):
            yield from _tables(block["c"][-1])
        elif block["t"] == "BlockQuote":
            yield from _tables(block["c"])


def _rows(table: Any) -> Iterator[Any]:
    """Rows of pandoc's table: [attributes, caption, columns, head, bodies, foot]."""
    _, _, _, head, bodies, foot = table
    parts = [head[1], *(rows for body in bodies for rows in body[2:]), foot[1]]
    for rows in parts:
        for _, cells in rows:
            yield cells


def _row(cells: Any) -> Row:
    writer = _Writer()
    return Row(["\n\n".join(writer.blocks(cell[-1])) for cell in cells], writer.losses)


class _Writer(LineText):
    """Writes a cell as copy: emphasis as stars, a list's numbers as text, a new line where one was made."""

    def __init__(self) -> None:
        self.losses: list[str] = []

    def blocks(self, nodes: Sequence[dict[str, Any]]) -> list[str]:
        return [text for node in nodes for text in self._block(node) if text.strip()]

    def _block(self, node: dict[str, Any]) -> list[str]:
        kind: str = node["t"]
        content: Any = node.get("c")
        if kind in ("Para", "Plain"):
            return [self.inline(content).strip()]
        if kind == "Header":
            return [self.inline(content[2]).strip()]
        if kind == "LineBlock":
            return ["\n".join(self.inline(line) for line in content)]
        if kind == "BulletList":
            return [f"• {text}" for item in content for text in self.blocks(item)]
        if kind == "OrderedList":
            first = content[0][0]
            return [f"{n}. {text}" for n, item in enumerate(content[1], first) for text in self.blocks(item)]
        if kind == "BlockQuote":
            return self.blocks(content)
        if kind in ("Div", "Figure"):
            return self.blocks(content[-1])
        if kind == "CodeBlock":
            return [str(content[1])]
        self._lose(kind, content)
        return []

    def stressed(self, text: str) -> str:
        """A text in which the translator has put stars stays as it is."""
        return text if "*" in text else super().stressed(text)

    def rarer(self, kind: str, content: Any) -> str:
        if kind == "Span":
            return self.inline(content[1])
        if kind in ("Underline", "SmallCaps", "Superscript", "Subscript"):
            return self.inline(content)
        self._lose(kind, content)
        return ""

    def _lose(self, kind: str, content: Any) -> None:
        if kind in _LEFT_OUT:
            words = re.findall(r'"t": "Str", "c": "((?:[^"\\]|\\.)*)"', json.dumps(content, ensure_ascii=False))
            self.losses.append(f"{_LEFT_OUT[kind]} is left out" + (f": {' '.join(words)[:60]}" if words else ""))
