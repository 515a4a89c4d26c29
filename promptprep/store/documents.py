"""Reads `.docx`, `.odt` and `.rtf` through pandoc's document tree.

Headings, paragraphs, bold, italics, lists and block quotes carry over; everything else is listed.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from promptprep.errors import UnreadableInput
from promptprep.store.files import read_bytes

FORMATS = {".docx": "docx", ".odt": "odt", ".rtf": "rtf"}

_STARTS = {".docx": b"PK", ".odt": b"PK", ".rtf": b"{\\rtf"}
_DROPPED = {
    "Image": "a picture",
    "Math": "a formula",
    "RawInline": "a field",
    "RawBlock": "a field",
    "HorizontalRule": "",
}


def read_document(path: Path) -> tuple[str, list[str]]:
    """(script source, what could not be carried over). Raises `UnreadableInput` for a broken file."""
    suffix = path.suffix.lower()
    hint = "open it in a word processor, save it again, or paste the copy into a .txt file"
    if not read_bytes(path).startswith(_STARTS[suffix]):
        raise UnreadableInput("broken-document", f"this is no {suffix} document", hint, str(path))
    import pypandoc

    try:
        tree = json.loads(pypandoc.convert_file(str(path), "json", format=FORMATS[suffix]))
    except (RuntimeError, ValueError) as fault:
        reason = str(fault).strip().splitlines()[-1] if str(fault).strip() else "pandoc gave up"
        raise UnreadableInput("broken-document", f"the document cannot be read: {reason}", hint, str(path)) from None
    writer = _Writer()
    blocks = [text for block in tree["blocks"] for text in writer.block(block)]
    if suffix == ".rtf":
        writer.losses += _rtf_losses(read_bytes(path))
    return "\n\n".join(blocks) + "\n" if blocks else "", writer.losses


def _rtf_losses(data: bytes) -> list[str]:
    """What pandoc's RTF reader passes over without a word."""
    kinds = {rb"\\footnote\b": "a footnote, left out", rb"\\annotation\b": "a comment, left out"}
    return [what for mark, what in kinds.items() for _ in re.finditer(mark, data)]


class _Writer:
    def __init__(self) -> None:
        self.losses: list[str] = []

    def block(self, node: dict[str, Any]) -> Iterator[str]:
        kind: str = node["t"]
        content: Any = node.get("c")
        if kind == "Header":
            level, _, inlines = content
            yield "#" * level + " " + self.inline(inlines)
        elif kind in ("Para", "Plain"):
            if text := self.inline(content).strip():
                yield text
        elif kind == "BlockQuote":
            yield "\n>\n".join("> " + t.replace("\n", "\n> ") for b in content for t in self.block(b))
        elif kind in ("BulletList", "OrderedList"):
            yield from self._items(kind, content)
        elif kind in ("Div", "Figure"):
            for child in content[-1]:
                yield from self.block(child)
        elif kind == "LineBlock":
            yield "\\\n".join(self.inline(line) for line in content)
        elif kind == "Table":
            self._lose("a table", _plain(content))
        elif kind in ("CodeBlock",):
            yield content[1]
        else:
            self._lose(_DROPPED.get(kind, kind.lower()), _plain(content))

    def _items(self, kind: str, content: Any) -> Iterator[str]:
        items = content if kind == "BulletList" else content[1]
        first = 1 if kind == "BulletList" else content[0][0]
        for number, item in enumerate(items, first):
            mark = "- " if kind == "BulletList" else f"{number}. "
            texts = [t for child in item for t in self.block(child)]
            yield mark + ("\n\n" + " " * len(mark)).join(texts)

    def inline(self, nodes: Sequence[dict[str, Any]]) -> str:
        return "".join(self._one(node) for node in nodes)

    def _one(self, node: dict[str, Any]) -> str:
        kind: str = node["t"]
        content: Any = node.get("c")
        if kind == "Str":
            return str(content)
        if kind in ("Space", "SoftBreak"):
            return " "
        if kind == "LineBreak":
            return "\\\n"
        if kind in ("Emph", "Strong"):
            return _stressed(self.inline(content))
        if kind == "Quoted":
            marks = "‘’" if content[0]["t"] == "SingleQuote" else "“”"
            return marks[0] + self.inline(content[1]) + marks[1]
        return self._rarer(kind, content)

    def _rarer(self, kind: str, content: Any) -> str:
        if kind in ("Span", "Link", "Cite"):
            return self.inline(content[1])
        if kind in ("Underline", "SmallCaps", "Superscript", "Subscript"):
            text = self.inline(content)
            self._lose(kind.lower(), text)
            return text
        if kind == "Code":
            return str(content[1])
        if kind == "Strikeout":
            self._lose("struck-out copy, left out", _plain(content))
        elif kind == "Note":
            self._lose("a footnote, left out", _plain(content))
        else:
            self._lose(_DROPPED.get(kind, kind.lower()), _plain(content))
        return ""

    def _lose(self, what: str, text: str) -> None:
        if what:
            excerpt = " ".join(text.split())
            self.losses.append(f"{what}: {excerpt[:80]}" if excerpt else what)


def _stressed(text: str) -> str:
    core = text.strip()
    if not core or core.startswith("*"):
        return text
    lead, tail = text[: len(text) - len(text.lstrip())], text[len(text.rstrip()) :]
    return f"{lead}*{core}*{tail}"


def _plain(node: Any) -> str:
    if isinstance(node, dict):
        if node.get("t") == "Str":
            return str(node["c"])
        if node.get("t") in ("Space", "SoftBreak", "LineBreak"):
            return " "
        return _plain(node.get("c", ""))
    if isinstance(node, list):
        parts = [_plain(child) for child in node if isinstance(child, dict | list)]
        blocks = any(isinstance(child, dict) and child.get("t") in ("Para", "Plain") for child in node)
        return "".join(parts) + (" " if blocks else "")
    return ""
