"""A translator's kit as a document for a word processor: a table a segment, source beside an empty place."""

from __future__ import annotations

import io
import re
from typing import Any

from promptprep.model.kit import Kit, KitSegment
from promptprep.units import clock_text

_NO_XML = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]")
WIDTHS_MM = (22.0, 74.0, 74.0)


def kit_docx(kit: Kit) -> bytes:
    """The kit as DOCX. The first column holds each text's code: by it the translation finds its place again."""
    import docx
    from docx.shared import Mm, Pt

    document = docx.Document()
    section = document.sections[0]
    section.page_width, section.page_height = Mm(210), Mm(297)
    section.left_margin = section.right_margin = Mm(20)
    document.styles["Normal"].font.size = Pt(11)
    document.core_properties.title = _clean(kit.title.text)
    document.core_properties.language = kit.target_language
    document.core_properties.keywords = f"promptprep-kit {kit.name} {kit.source_language} {kit.target_language}"
    import datetime

    fixed = datetime.datetime(2000, 1, 1, tzinfo=datetime.UTC)
    document.core_properties.created = document.core_properties.modified = fixed
    document.add_heading(_clean(kit.title.text), 0)
    document.add_paragraph(f"{kit.source_language} → {kit.target_language}. Write into the right-hand column. "
                           "Leave the codes on the left and what stands in [brackets] as they are; "
                           "*stars* mark stress. "
                           'A pronunciation is written [word]{say="..."}.')  # fmt: skip
    if kit.basis:
        document.add_paragraph(_clean(kit.basis))
    _table(document, [("title", kit.title.text, kit.title.target)], kit)
    for segment in kit.segments:
        _segment(document, segment, kit)
    held = io.BytesIO()
    document.save(held)
    return _without_clock(held.getvalue())


def _segment(document: Any, segment: KitSegment, kit: Kit) -> None:
    document.add_heading(_clean(segment.title or segment.id), 1)
    for line in segment_lines(segment):
        document.add_paragraph(_clean(line))
    rows = [(u.code, u.text, u.target) for u in segment.units]
    if rows:
        _table(document, rows, kit)


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


def _table(document: Any, rows: list[tuple[str, str, str]], kit: Kit) -> None:
    from docx.shared import Mm

    table = document.add_table(rows=1, cols=3)
    table.style = "Table Grid"
    table.autofit = False
    for cell, text in zip(table.rows[0].cells, ("Code", kit.source_language, kit.target_language), strict=True):
        cell.text = text
    for code, source, target in rows:
        cells = table.add_row().cells
        for cell, text in zip(cells, (code, source, target), strict=True):
            cell.text = _clean(text)
        _direct(cells[2], kit.direction)
    for row in table.rows:
        for cell, width in zip(row.cells, WIDTHS_MM, strict=True):
            cell.width = Mm(width)


def _direct(cell: Any, direction: str) -> None:
    """A right-to-left language is written from the right from the first letter on."""
    if direction != "rtl":
        return
    from docx.oxml import OxmlElement

    for paragraph in cell.paragraphs:
        paragraph._p.get_or_add_pPr().append(OxmlElement("w:bidi"))


def _without_clock(data: bytes) -> bytes:
    """The same archive with the same time at every entry: the same kit gives the same bytes."""
    import zipfile

    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for name in sorted(old.namelist()):
            new.writestr(zipfile.ZipInfo(name, (2000, 1, 1, 0, 0, 0)), old.read(name))
    return out.getvalue()


def _clean(text: str) -> str:
    return _NO_XML.sub("\ufffd", text)
