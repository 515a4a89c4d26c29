"""A translator's kit as XLIFF 2.1 (OASIS Standard, 13 February 2018): core elements only.

Section 4.2 of the standard: a file holds groups (segments of the script), a group units, a unit one segment with its
source and target. Inline cues are placeholders whose text stands in the unit's original data.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from xml.etree import ElementTree

from promptprep.model.kit import Kit, KitSegment, KitUnit
from promptprep.rendering.xml_text import xml_text

NAMESPACE = "urn:oasis:names:tc:xliff:document:2.0"  # 2.1 keeps the namespace of 2.0
_BRACKET = re.compile(r"\[[^\[\]\n]*\](?!\{)")
_NO_TOKEN = re.compile(r"[^A-Za-z0-9._-]")


def kit_xliff(kit: Kit) -> bytes:
    """The kit as an XLIFF 2.1 document in UTF-8."""
    ElementTree.register_namespace("", NAMESPACE)
    root = ElementTree.Element(_tag("xliff"))
    root.set("version", "2.1")
    root.set("srcLang", kit.source_language)
    root.set("trgLang", kit.target_language)
    file = ElementTree.SubElement(root, _tag("file"), id="f1", original=xml_text(kit.name))
    file.set("srcDir", kit.source_direction)
    file.set("trgDir", kit.direction)
    if kit.basis:
        _notes(file, [("general", kit.basis)])
    _unit(file, "title", kit.title)
    for number, segment in enumerate(kit.segments, 1):
        _group(file, f"s{number}", segment)
    return bytes(ElementTree.tostring(root, encoding="UTF-8", xml_declaration=True))


def _group(file: ElementTree.Element, number: str, segment: KitSegment) -> None:
    group = ElementTree.SubElement(file, _tag("group"), id=number, name=xml_text(segment.id))
    _notes(group, list(_segment_notes(segment)))
    for unit in segment.units:
        _unit(group, f"{number}.{unit.code.rsplit('/', 1)[-1]}", unit)


def _segment_notes(segment: KitSegment) -> Iterator[tuple[str, str]]:
    if segment.room_s is not None:
        room = f"room for speech: {segment.room_s:.0f} s"
        if segment.characters is not None:
            room += f", about {segment.characters} characters in all"
        if segment.words is not None:
            room += f", {segment.words} words"
        yield "room", room
    if segment.cues:
        yield "cues", "cues kept by the script: " + "; ".join(segment.cues)


def _unit(parent: ElementTree.Element, number: str, unit: KitUnit) -> None:
    made = ElementTree.SubElement(parent, _tag("unit"), id=_NO_TOKEN.sub("-", number), name=xml_text(unit.code))
    notes: list[tuple[str, str]] = [("kind", unit.kind)]
    notes += [("pronunciation", f"{word}: {say}") for word, say in unit.pronunciations]
    _notes(made, notes)
    cues = list(dict.fromkeys(unit.cues))
    if cues:
        data = ElementTree.SubElement(made, _tag("originalData"))
        for n, cue in enumerate(cues, 1):
            ElementTree.SubElement(data, _tag("data"), id=f"d{n}").text = xml_text(cue)
    segment = ElementTree.SubElement(made, _tag("segment"), state="translated" if unit.target else "initial")
    _inline(ElementTree.SubElement(segment, _tag("source")), unit.text, cues, unit.cues)
    if unit.target:
        _inline(ElementTree.SubElement(segment, _tag("target")), unit.target, cues, unit.cues)


def _inline(element: ElementTree.Element, text: str, cues: Sequence[str], own: Sequence[str]) -> None:
    """Text with its cues as placeholders. `own` are the source's cues in order: a cue's id is its place among them,
    so that a target's placeholder is the twin of its source's wherever it stands; one too many gets a new id."""
    free = {cue: [n for n, c in enumerate(own, 1) if c == cue] for cue in cues}
    more = len(own)
    last: ElementTree.Element | None = None
    at = 0
    for found in _BRACKET.finditer(text):
        cue = found[0]
        if cue not in free:
            continue
        _append(element, last, text[at : found.start()])
        more += not free[cue]
        number = free[cue].pop(0) if free[cue] else more
        last = ElementTree.SubElement(
            element, _tag("ph"), id=str(number), dataRef=f"d{cues.index(cue) + 1}", disp=xml_text(cue)
        )
        at = found.end()
    _append(element, last, text[at:])


def _append(element: ElementTree.Element, last: ElementTree.Element | None, text: str) -> None:
    if last is None:
        element.text = xml_text(text)
    else:
        last.tail = xml_text(text)


def _notes(element: ElementTree.Element, notes: Sequence[tuple[str, str]]) -> None:
    if not notes:
        return
    holder = ElementTree.SubElement(element, _tag("notes"))
    for category, text in notes:
        ElementTree.SubElement(holder, _tag("note"), category=category).text = xml_text(text)


def _tag(name: str) -> str:
    return f"{{{NAMESPACE}}}{name}"
