"""A translator's kit as a document for a word processor: a table a segment, source beside an empty place."""

from __future__ import annotations

import io
import re
from collections.abc import Sequence
from typing import Any

from promptprep.model.kit import Kit, KitSegment, KitUnit
from promptprep.rendering.xml_text import xml_text
from promptprep.units import clock_text

WIDTHS_MM = (24.0, 73.0, 73.0)
KINDS = {"note": "note, not spoken", "cue": "shown, not spoken"}


def kit_docx(kit: Kit) -> bytes:
    """The kit as DOCX. The first column holds each text's code: by it the translation finds its place again."""
    import datetime

    import docx
    from docx.shared import Mm, Pt

    document = docx.Document()
    section = document.sections[0]
    section.page_width, section.page_height = Mm(210), Mm(297)
    section.left_margin = section.right_margin = Mm(20)
    document.styles["Normal"].font.size = Pt(11)
    document.core_properties.title = xml_text(kit.title.text)
    document.core_properties.language = kit.target_language
    document.core_properties.keywords = f"promptprep-kit {kit.name} {kit.source_language} {kit.target_language}"
    document.core_properties.author = "promptprep"
    document.core_properties.comments = ""
    _styles(document, kit)
    fixed = datetime.datetime(2000, 1, 1, tzinfo=datetime.UTC)
    document.core_properties.created = document.core_properties.modified = fixed
    document.add_heading(xml_text(kit.title.text), 0)
    document.add_paragraph(f"{kit.source_language} → {kit.target_language}. Write into the right-hand column. "
                           "Leave the codes on the left and what stands in [brackets] as they are; "
                           "*stars* mark stress. "
                           'A pronunciation is written [word]{say="..."}.')  # fmt: skip
    if kit.basis:
        document.add_paragraph(xml_text(kit.basis))
    _table(document, [kit.title], kit)
    for segment in kit.segments:
        _segment(document, segment, kit)
    held = io.BytesIO()
    document.save(held)
    return _without_clock(held.getvalue())


def _segment(document: Any, segment: KitSegment, kit: Kit) -> None:
    document.add_heading(xml_text(segment.title or segment.id), 1)
    for line in segment_lines(segment):
        document.add_paragraph(xml_text(line))
    if segment.units:
        _table(document, segment.units, kit)


def segment_lines(segment: KitSegment) -> list[str]:
    """What a translator should know before a segment."""
    lines = []
    if segment.room_s is not None:
        room = f"Room for speech: {clock_text(segment.room_s)}"
        if segment.characters is not None:
            room += f", about {segment.characters} characters"
        if segment.words is not None:
            room += f" ({segment.words} words)"
        lines.append(room + ".")
    said = [f"{word}: {say}" for u in segment.units for word, say in u.pronunciations]
    if said:
        lines.append("Said: " + "; ".join(said) + ".")
    notes = sum(u.kind == "note" for u in segment.units)
    if notes:
        lines.append("The reader's notes are not spoken; they take no time.")
    if segment.cues:
        lines.append("Cues, kept by the script: " + "; ".join(segment.cues) + ".")
    return lines


def _styles(document: Any, kit: Kit) -> None:
    """Styles for the columns: the copy is checked in its own language and written from its own side."""
    from docx.enum.style import WD_STYLE_TYPE
    from docx.shared import Pt

    columns = (
        ("Code", "", "ltr"),
        ("Source", kit.source_language, kit.source_direction),
        ("Translation", kit.target_language, kit.direction),
    )
    for name, language, direction in columns:
        style = document.styles.add_style(name, WD_STYLE_TYPE.PARAGRAPH)
        style.base_style = document.styles["Normal"]
        style.font.size = Pt(9 if name == "Code" else 11)
        style.paragraph_format.space_after = Pt(3)
        marks = style.element.get_or_add_rPr()
        if direction == "rtl":
            style.element.get_or_add_pPr().append(_mark("bidi"))
            marks.append(_mark("rtl"))
        marks.append(_mark("lang", val=language, eastAsia=language, bidi=language) if language else _mark("noProof"))


def _mark(name: str, **values: str) -> Any:
    """An element of WordprocessingML with attributes of its own namespace."""
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn

    element = OxmlElement(f"w:{name}")
    for key, value in values.items():
        element.set(qn(f"w:{key}"), value)
    return element


def _table(document: Any, units: Sequence[KitUnit], kit: Kit) -> None:
    from docx.shared import Mm

    table = document.add_table(rows=1, cols=3)
    table.style = "Table Grid"
    table.autofit = False
    for column, width in zip(table.columns, WIDTHS_MM, strict=True):
        column.width = Mm(width)
    _fill(table.rows[0], ("Code", kit.source_language, kit.target_language))
    table.rows[0]._tr.get_or_add_trPr().append(_mark("tblHeader"))
    for unit in units:
        row = table.add_row()
        _fill(row, (unit.code, unit.text, unit.target))
        row._tr.get_or_add_trPr().append(_mark("cantSplit"))
        if kind := KINDS.get(unit.kind):
            row.cells[0].add_paragraph(kind, "Code")


def _fill(row: Any, texts: tuple[str, str, str]) -> None:
    from docx.shared import Mm

    for cell, text, style, width in zip(row.cells, texts, ("Code", "Source", "Translation"), WIDTHS_MM, strict=True):
        cell.width = Mm(width)
        first, *more = re.split(r"\n{2,}", xml_text(text))
        cell.paragraphs[0].text = first
        cell.paragraphs[0].style = style
        for part in more:
            cell.add_paragraph(part, style)


def _without_clock(data: bytes) -> bytes:
    """The same archive with the same time at every entry: the same kit gives the same bytes."""
    import zipfile

    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for name in sorted(old.namelist()):
            entry = zipfile.ZipInfo(name, (2000, 1, 1, 0, 0, 0))
            entry.compress_type = zipfile.ZIP_DEFLATED
            new.writestr(entry, old.read(name))
    return out.getvalue()
