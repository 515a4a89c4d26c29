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
