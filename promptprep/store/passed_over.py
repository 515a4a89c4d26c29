"""What pandoc's readers pass over in a document without a word, found by its marks, so that it can be listed."""

from __future__ import annotations

import re
import zipfile
from collections.abc import Iterator
from pathlib import Path

from promptprep.store.files import read_bytes

MOST_BYTES = 20_000_000  # of one part of a packed document
_RTF = {
    rb"\\footnote\b": "a footnote, left out",
    rb"\\annotation\b": "a comment, left out",
    rb"\\revised\b": "the mark of a tracked insertion, whose words are copy",
    rb"\\(?:header|footer)[lrf]?\b": "a page's head or foot, left out",
}
_ODT = {
    rb"<office:annotation[ >]": "a comment, left out",
    rb"<text:deletion[ >]": "a tracked deletion, left out",
    rb"<text:insertion[ >]": "the mark of a tracked insertion, whose words are copy",
}
_WORDS = re.compile(rb"<w:t(?: [^>]*)?>([^<]*)</w:t>")
_HEAD = re.compile(r"word/(?:header|footer)\d*\.xml")


def passed_over(path: Path, suffix: str) -> list[str]:
    """What the copy lacks beside what pandoc tells of: comments, tracked changes, heads and feet of pages."""
    if suffix == ".rtf":
        return list(_marked(_RTF, read_bytes(path)))
    try:
        with zipfile.ZipFile(path) as packed:
            return list(_docx(packed) if suffix == ".docx" else _odt(packed))
    except (zipfile.BadZipFile, KeyError, OSError, RuntimeError, EOFError):
        return []  # pandoc has read what there is


def _marked(kinds: dict[bytes, str], data: bytes) -> Iterator[str]:
    for mark, what in kinds.items():
        for _ in re.finditer(mark, data):
            yield what


def _docx(packed: zipfile.ZipFile) -> Iterator[str]:
    found = {}
    for name in packed.namelist():
        if _HEAD.fullmatch(name):
            text = b"".join(_WORDS.findall(_part(packed, name))).decode("utf-8", "replace").strip()
            if text:
                found[text] = f"a page's head or foot, left out: {' '.join(text.split())[:80]}"
    yield from found.values()


def _odt(packed: zipfile.ZipFile) -> Iterator[str]:
    yield from _marked(_ODT, _part(packed, "content.xml"))


def _part(packed: zipfile.ZipFile, name: str) -> bytes:
    with packed.open(name) as stream:
        return stream.read(MOST_BYTES)
