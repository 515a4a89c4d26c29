"""Reads `.docx`, `.odt` and `.rtf` through pandoc's document tree.

Headings, paragraphs, bold, italics, lists, block quotes and the title carry over; tracked insertions are copy, tracked
deletions are not; everything else is listed.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from promptprep.errors import UnreadableInput
from promptprep.store.files import read_bytes
from promptprep.store.pandoc import LineText, tree_of_file, tree_of_text
from promptprep.store.passed_over import passed_over

FORMATS = {".docx": "docx", ".odt": "odt", ".rtf": "rtf"}

_STARTS = {".docx": b"PK", ".odt": b"PK", ".rtf": b"{\\rtf"}
_OPTIONS: dict[str, tuple[str, ...]] = {".docx": ("--track-changes=all",), ".odt": ()}
_HEADS = ("subtitle", "abstract", "author", "date")
_RTF_LIST = re.compile(r"\{\\(?:listtext|pntext|\*\\pn)\b[^{}]*\}|\\(?:ls|ilvl)\d+ ?")
_RTF_PLAIN_STAND_IN = re.compile(r"\\u(-?\d++) ?[^\\{}\r\n]")
_RTF_OTHER_STAND_INS = re.compile(r"\\uc[02-9]")
_TRACKED = {
    "insertion": ("the mark of a tracked insertion, whose words are copy", True),
    "deletion": ("a tracked deletion, left out", False),
    "comment-start": ("a comment, left out", False),
}
_BLANKS = re.compile(" {2,}")
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
    try:
        if suffix == ".rtf":
            tree = tree_of_text(_readable_rtf(read_bytes(path)), "rtf")
        else:
            tree = tree_of_file(path, FORMATS[suffix], _OPTIONS[suffix])
    except ValueError as fault:
        raise UnreadableInput("broken-document", f"the document cannot be read: {fault}", hint, str(path)) from None
    writer = _Writer()
    blocks = [text for block in tree["blocks"] for text in writer.block(block)]
    losses = writer.losses + passed_over(path, suffix)
    head = _front(tree["meta"] if suffix != ".rtf" else {}, losses)
    return (head + "\n\n".join(blocks) + "\n" if blocks else ""), losses


def _readable_rtf(data: bytes) -> str:
    """RTF as pandoc reads it whole.

    Its lists are plain paragraphs (pandoc puts those of some word processors before all other copy), and what stands in
    for a character outside the code page is written as a number (behind a plain one pandoc loses a letter).
    """
    text = _RTF_LIST.sub(" ", data.decode("latin-1"))
    return text if _RTF_OTHER_STAND_INS.search(text) else _RTF_PLAIN_STAND_IN.sub(r"\\u\1\\'3f", text)


def _front(meta: dict[str, Any], losses: list[str]) -> str:
    """The document's title as front matter; what else stands at its head is listed."""
    texts = {key: " ".join(_plain(value).split()) for key, value in meta.items()}
    losses += [f"the document's {key}: {texts[key][:80]}" for key in _HEADS if texts.get(key)]
    title = texts.get("title", "")
    return f"+++\ntitle = {json.dumps(title, ensure_ascii=False)}\n+++\n\n" if title else ""


class _Writer(LineText):
    line_end = "\\\n"

    def __init__(self) -> None:
        self.losses: list[str] = []

    def block(self, node: dict[str, Any]) -> Iterator[str]:
        kind: str = node["t"]
        content: Any = node.get("c")
        if kind == "Header":
            level, _, inlines = content
            yield "#" * level + " " + self.inline(inlines)
        elif kind in ("Para", "Plain"):
            if text := _BLANKS.sub(" ", self.inline(content)).strip():
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
        elif kind == "CodeBlock":
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

    def rarer(self, kind: str, content: Any) -> str:
        if kind == "Span":
            return self._span(content[0][1], content[1])
        if kind in ("Underline", "SmallCaps", "Superscript", "Subscript"):
            text = self.inline(content)
            self._lose(kind.lower(), text)
            return text
        if kind == "Strikeout":
            self._lose("struck-out copy, left out", _plain(content))
        elif kind == "Note":
            self._lose("a footnote, left out", _plain(content))
        else:
            self._lose(_DROPPED.get(kind, kind.lower()), _plain(content))
        return ""

    def _span(self, classes: Sequence[str], nodes: Sequence[dict[str, Any]]) -> str:
        for what, carried in (_TRACKED[name] for name in classes if name in _TRACKED):
            self._lose(what, _plain(list(nodes)))
            if not carried:
                return ""
        return self.inline(nodes)

    def _lose(self, what: str, text: str) -> None:
        if what:
            excerpt = " ".join(text.split())
            self.losses.append(f"{what}: {excerpt[:80]}" if excerpt else what)


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
