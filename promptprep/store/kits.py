"""Reads a filled translator's kit: DOCX as a word processor leaves it, or XLIFF 2."""

from __future__ import annotations

import io
import re
from pathlib import Path
from typing import Any

from promptprep.errors import UnreadableInput
from promptprep.model.kit import Filled
from promptprep.store.files import read_bytes

_NAMED = re.compile(r"\.([a-z]{2,3}(?:-[A-Za-z0-9]{2,8})*)\.kit$")
_CODE = re.compile(r"^(title|\S+/\d+)$")
_XLIFF = "{urn:oasis:names:tc:xliff:document:2.0}"
HINT = "give the kit as it came back: a .docx or an .xlf file"


def read_kit(path: Path) -> Filled:
    """The translations in a filled kit. Raises `UnreadableInput` where the file is no kit."""
    readers = {".docx": _docx, ".xlf": _xliff, ".xliff": _xliff}
    reader = readers.get(path.suffix.lower())
    if reader is None:
        raise UnreadableInput("not-a-kit", f"a kit is no {path.suffix or 'such'} file", HINT, str(path))
    return reader(path)


def _fault(path: Path, why: str) -> UnreadableInput:
    return UnreadableInput("broken-kit", f"the kit cannot be read: {why}", HINT, str(path))


def _docx(path: Path) -> Filled:
    import zipfile

    import docx

    data = read_bytes(path)
    try:
        document = docx.Document(io.BytesIO(data))
    except (zipfile.BadZipFile, KeyError, ValueError, OSError) as fault:
        raise _fault(path, str(fault) or "it is no DOCX document") from None
    words = str(document.core_properties.keywords or "").split()
    language = words[3] if len(words) > 3 and words[0] == "promptprep-kit" else ""
    targets: dict[str, str] = {}
    loose: list[tuple[str, str]] = []
    losses: list[str] = []
    rows = [row for table in document.tables for row in table.rows]
    if not rows:
        raise _fault(path, "it has no table of texts")
    for row in rows:
        cells = [_cell_text(cell) for cell in row.cells]
        if not language and len(cells) >= 3 and cells[0].casefold() == "code":
            language = cells[2]
        _take_row(cells, targets, loose, losses)
    return Filled(_language(path, language), targets, tuple(loose), tuple(losses))


def _take_row(cells: list[str], targets: dict[str, str], loose: list[tuple[str, str]], losses: list[str]) -> None:
    if len(cells) < 3 or cells[0].casefold() == "code":
        return
    code = re.sub(r"^\d+[.)]\s*", "", cells[0].strip()).replace("\u2044", "/")
    if not _CODE.match(code):
        loose.append((cells[1], cells[2]))
    elif code in targets:
        losses.append(f"{code}: stands twice in the kit; the first is taken")
    else:
        targets[code] = cells[2]


def _cell_text(cell: Any) -> str:
    """The text of a cell as it stands: accepted changes in, deleted text out, numbering of lists not in the text."""
    return "\n\n".join(t for p in cell.paragraphs if (t := _paragraph_text(p).strip()))


def _paragraph_text(paragraph: Any) -> str:
    word = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
    parts = []
    for node in paragraph._p.iter():
        if node.tag == f"{word}t":
            parts.append(node.text or "")
        elif node.tag in (f"{word}br", f"{word}cr"):
            parts.append("\n")
        elif node.tag == f"{word}tab":
            parts.append(" ")
        elif node.tag == f"{word}noBreakHyphen":
            parts.append("-")
    return "".join(parts)


def _xliff(path: Path) -> Filled:
    from xml.etree import ElementTree

    data = read_bytes(path)
    if b"<!DOCTYPE" in data or b"<!ENTITY" in data:
        raise _fault(path, "it declares a document type, which XLIFF has not")
    try:
        root = ElementTree.fromstring(data)
    except ElementTree.ParseError as fault:
        raise _fault(path, str(fault)) from None
    if root.tag != f"{_XLIFF}xliff":
        raise _fault(path, "it is no XLIFF 2 document")
    targets: dict[str, str] = {}
    losses: list[str] = []
    for unit in root.iter(f"{_XLIFF}unit"):
        code = unit.get("name") or ""
        text, whole = _unit_target(unit)
        if not whole and text.strip():
            losses.append(f"{code}: a part of it is not translated")
        if _CODE.match(code):
            targets[code] = text.strip()
        elif text.strip():
            losses.append(f"unit {unit.get('id')}: its name was lost; left out: {text[:50]}")
    return Filled(_language(path, root.get("trgLang") or ""), targets, (), tuple(losses))


def _unit_target(unit: Any) -> tuple[str, bool]:
    """The target of a unit, in whatever segments a program has cut it, and whether all of them are translated."""
    data_of = {d.get("id"): d.text or "" for d in unit.iter(f"{_XLIFF}data")}
    parts: list[tuple[int, str]] = []
    gaps = 0
    for place, part in enumerate((e for e in unit if e.tag in (f"{_XLIFF}segment", f"{_XLIFF}ignorable")), 1):
        target = part.find(f"{_XLIFF}target")
        if target is None and part.tag.endswith("ignorable"):
            target = part.find(f"{_XLIFF}source")
        gaps += target is None
        if target is not None:
            order = target.get("order", "")
            parts.append((int(order) if order.isdecimal() else place, _flat(target, data_of)))
    return "".join(text for _, text in sorted(parts, key=lambda p: p[0])), not (parts and gaps)


def _flat(element: Any, data_of: dict[str | None, str]) -> str:
    """The text of a target with the placeholders' own text in it."""
    parts = [element.text or ""]
    for child in element:
        name = str(child.tag).removeprefix(_XLIFF)
        if name == "ph":
            parts.append(data_of.get(child.get("dataRef"), child.get("disp") or ""))
        elif name == "pc":
            inner = _flat(child, data_of)
            parts.append(data_of.get(child.get("dataRefStart"), "") + inner + data_of.get(child.get("dataRefEnd"), ""))
        elif name == "cp":
            parts.append("")
        else:
            parts.append(_flat(child, data_of))
        parts.append(child.tail or "")
    return "".join(parts)


def _language(path: Path, said: str) -> str:
    named = _NAMED.search(path.stem if path.stem.endswith(".kit") else path.stem + ".kit")
    language = said or (named[1] if named else "")
    if not re.fullmatch(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*", language):
        hint = "call the file by its language: sky.fr.kit.docx"
        raise UnreadableInput("kit-without-language", "the kit does not say its language", hint, str(path))
    return language
