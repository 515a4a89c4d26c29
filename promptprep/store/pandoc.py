"""Documents of word processors as pandoc's tree, and the text of a line in it."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

QUOTES = {"SingleQuote": "‘’", "DoubleQuote": "“”"}


def tree_of_file(path: Path, kind: str, options: Sequence[str] = ()) -> dict[str, Any]:
    """The tree of a document of pandoc's format `kind`. Raises `ValueError` with the reason where it is none."""
    import pypandoc

    try:
        return _tree(pypandoc.convert_file(str(path), "json", format=kind, extra_args=options))
    except RuntimeError as fault:
        raise ValueError(_reason(fault)) from None


def tree_of_text(text: str, kind: str) -> dict[str, Any]:
    """The same for a document that is in memory."""
    import pypandoc

    try:
        return _tree(pypandoc.convert_text(text, "json", format=kind))
    except RuntimeError as fault:
        raise ValueError(_reason(fault)) from None


def _tree(text: str) -> dict[str, Any]:
    tree: dict[str, Any] = json.loads(text)
    return tree


def _reason(fault: RuntimeError) -> str:
    """The last line that pandoc said."""
    return (str(fault).strip().splitlines() or ["pandoc gave up"])[-1]


class LineText:
    """Writes inline nodes as copy: stars around what is stressed, quotation marks as characters."""

    line_end = "\n"

    def inline(self, nodes: Sequence[dict[str, Any]]) -> str:
        return "".join(self._one(node["t"], node.get("c")) for node in nodes)

    def _one(self, kind: str, content: Any) -> str:
        if kind == "Str":
            return str(content)
        if kind in ("Space", "SoftBreak"):
            return " "
        if kind == "LineBreak":
            return self.line_end
        if kind in ("Emph", "Strong"):
            return self.stressed(self.inline(content))
        if kind == "Quoted":
            marks = QUOTES[content[0]["t"]]
            return marks[0] + self.inline(content[1]) + marks[1]
        if kind in ("Link", "Cite"):
            return self.inline(content[1])
        if kind == "Code":
            return str(content[1])
        return self.rarer(kind, content)

    def stressed(self, text: str) -> str:
        """The text in stars, blanks around it left outside; as it is where it begins with one already."""
        core = text.strip()
        if not core or core.startswith("*"):
            return text
        lead, tail = text[: len(text) - len(text.lstrip())], text[len(text.rstrip()) :]
        return f"{lead}*{core}*{tail}"

    def rarer(self, kind: str, content: Any) -> str:
        """What any other kind of node gives."""
        raise NotImplementedError
