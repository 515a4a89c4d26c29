"""Reads a filled translator's kit: a document as a word processor leaves it, or XLIFF 2."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

from promptprep.errors import UnreadableInput
from promptprep.model.kit import Filled
from promptprep.store.files import read_bytes
from promptprep.store.kit_tables import FORMATS, HINT, Row, table_rows

_NAMED = re.compile(r"\.([a-z]{2,3}(?:-[A-Za-z0-9]{2,8})*)\.kit$")
_CODE = re.compile(r"^(title|\S+/\d+)$")
_XLIFF = "{urn:oasis:names:tc:xliff:document:2.0}"
_TAG = re.compile(r"[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8})*")
_NUMBER = re.compile(r"^\d+[.)]\s*")


def read_kit(path: Path) -> Filled:
    """The translations in a filled kit. Raises `UnreadableInput` where the file is no kit."""
    suffix = path.suffix.lower()
    if suffix in FORMATS:
        return _document(path)
    if suffix in (".xlf", ".xliff"):
        return _xliff(path)
    raise UnreadableInput("not-a-kit", f"a kit is no {path.suffix or 'such'} file", HINT, str(path))


def _fault(path: Path, why: str) -> UnreadableInput:
    return UnreadableInput("broken-kit", f"the kit cannot be read: {why}", HINT, str(path))


def _document(path: Path) -> Filled:
    rows = table_rows(path)
    if not rows:
        raise _fault(path, "it has no table of texts")
    language = ""
    targets: dict[str, str] = {}
    loose: list[tuple[str, str]] = []
    losses: list[str] = []
    for row in rows:
        if len(row.cells) < 3:
            continue
        if row.cells[0].casefold() == "code":
            language = language or row.cells[2].strip()
        else:
            _take_row(row, targets, loose, losses)
    return Filled(_language(path, language), targets, tuple(loose), tuple(losses))


def _take_row(row: Row, targets: dict[str, str], loose: list[tuple[str, str]], losses: list[str]) -> None:
    """A row's translation by its code: the first word of its first cell, without a number put before it."""
    bare = _NUMBER.sub("", row.cells[0].strip()).replace("\u2044", "/")
    code = bare.split()[0] if bare else ""
    if not _CODE.match(code):
        loose.append((row.cells[1], row.cells[2]))
        code = "a row without code"
    elif code in targets:
        losses.append(f"{code}: stands twice in the kit; the first is taken")
    else:
        targets[code] = row.cells[2]
    losses += [f"{code}: {loss}" for loss in row.losses]


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
    """The language that the table's head says, else the file's name."""
    named = _NAMED.search(path.stem if path.stem.endswith(".kit") else path.stem + ".kit")
    for tag in (said, named[1] if named else ""):
        if _TAG.fullmatch(tag):
            base, *rest = tag.split("-")
            return "-".join([base.lower(), *rest])
    hint = "call the file by its language: sky.fr.kit.docx"
    raise UnreadableInput("kit-without-language", "the kit does not say its language", hint, str(path))
