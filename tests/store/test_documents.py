"""Word-processor documents: what carries over does, and what cannot is listed."""

from __future__ import annotations

from pathlib import Path

import pypandoc
import pytest

from promptprep.errors import UnreadableInput
from promptprep.model.script import CueLine, Paragraph
from promptprep.parsing.parse import parse_script
from promptprep.store.documents import read_document

COPY = """# Opening

Good **evening**. I am *under* the ridge.

[clip 0:25 Moonrise]

- one
- two

A note[^1].

[^1]: foot text

| a | b |
|---|---|
| 1 | 2 |
"""


@pytest.mark.parametrize("suffix", ["docx", "odt", "rtf"])
def test_a_document_becomes_a_script(tmp_path: Path, suffix: str) -> None:
    file = tmp_path / f"copy.{suffix}"
    pypandoc.convert_text(COPY, suffix, "markdown", outputfile=str(file), extra_args=["--standalone"])
    source, losses = read_document(file)
    (opening,) = parse_script(source).segments
    assert opening.title == "Opening"
    assert any(isinstance(b, CueLine) and b.cue.duration_s == 25 for b in opening.blocks)
    first = next(b for b in opening.blocks if isinstance(b, Paragraph))
    assert first.text == "Good evening. I am under the ridge."
    assert [r.text for r in first.runs if r.stress] == ["evening", "under"]
    assert any("table" in loss for loss in losses)
    assert any("footnote" in loss for loss in losses)


@pytest.mark.parametrize("suffix", ["docx", "odt", "rtf"])
def test_a_broken_document_is_an_error(tmp_path: Path, suffix: str) -> None:
    file = tmp_path / f"broken.{suffix}"
    file.write_bytes(b"PK\x03\x04 cut off" if suffix != "rtf" else b"not rtf at all")
    with pytest.raises(UnreadableInput) as caught:
        read_document(file)
    assert caught.value.code == "broken-document"
    assert caught.value.hint


INSERTED = '<w:ins w:id="90" w:author="M" w:date="2026-11-01T10:00:00Z"><w:r><w:t>three</w:t></w:r></w:ins>'
DELETED = '<w:del w:id="91" w:author="M" w:date="2026-11-01T10:00:00Z"><w:r><w:delText>four</w:delText></w:r></w:del>'


def test_tracked_changes_comments_title_and_heads_are_told(tmp_path: Path) -> None:
    """A document as it comes back from colleagues: nothing of it goes in silence."""
    from docx import Document
    from docx.oxml import parse_xml
    from docx.oxml.ns import nsdecls

    document = Document()
    document.add_heading('The "winter" sky', 0)
    copy = document.add_paragraph("We look at ")
    for change in (INSERTED, DELETED):
        copy._p.append(parse_xml(change.replace(" w:id", f" {nsdecls('w')} w:id", 1)))
    run = copy.add_run(" things.")
    document.add_comment(runs=[run], text="Which things?", author="M")
    document.sections[0].header.paragraphs[0].text = "Draft 3, not for air"
    document.save(str(tmp_path / "copy.docx"))
    source, losses = read_document(tmp_path / "copy.docx")
    script = parse_script(source)
    assert script.title == 'The "winter" sky'
    assert script.segments[0].paragraphs[0].text == "We look at three things."
    told = " | ".join(losses)
    for part in (
        "insertion, whose words are copy: three",
        "deletion, left out: four",
        "comment, left out: Which things?",
    ):
        assert part in told
    assert "head or foot, left out: Draft 3, not for air" in told


def test_rtf_lists_stay_where_they_are(tmp_path: Path) -> None:
    file = tmp_path / "copy.rtf"
    item = rb"{\pard\ls1\ilvl0{\listtext\tab }One\par}{\pard\ls1\ilvl0{\listtext\tab }Two\par}"
    file.write_bytes(rb"{\rtf1\ansi First {\revised new }copy.\par " + item + rb"\pard Last copy.\par}")
    source, losses = read_document(file)
    assert source.split("\n\n") == ["First new copy.", "One", "Two", "Last copy.\n"]
    assert losses == ["the mark of a tracked insertion, whose words are copy"]


def test_rtf_loses_no_letter_behind_a_character_outside_its_code_page(tmp_path: Path) -> None:
    file = tmp_path / "copy.rtf"
    said = rb'\u8220"Good evening,\u8221" she said. It\u8217\'92s late \u8212-and cold: \u322?\u243?d\u378 ?.'
    file.write_bytes(rb"{\rtf1\ansi\ansicpg1252\uc1 " + said + rb"\par}")
    assert read_document(file)[0].strip() == "“Good evening,” she said. It’s late —and cold: łódź."


def test_quotes_that_a_word_processor_turned_still_hold_a_pronunciation(tmp_path: Path) -> None:
    for said in ("”BEE-tel-jooz”", "“BEE-tel-jooz”", "„BEE-tel-jooz“", "« BEE-tel-jooz »"):
        (segment,) = parse_script(f"Look at [Betelgeuse]{{say={said}}} now.").segments
        (paragraph,) = segment.paragraphs
        assert paragraph.text == "Look at Betelgeuse now."
        assert [say for _, say in paragraph.said()] == ["BEE-tel-jooz"]
