"""Safe rewordings as a patch in unified form. It is printed, never applied."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterator, Sequence

from promptprep.model.finding import Finding
from promptprep.model.script import Script

DOCUMENTS = (".docx", ".odt", ".rtf")
_LINE = re.compile(r"[^\n]*\n|[^\n]+")


def reworded(source: str, findings: Sequence[Finding]) -> str:
    """The source with each `instead` in its place. Of rewordings that overlap, the first in the text counts."""
    pieces, at = [], 0
    for start, end, instead in _chosen(findings):
        pieces += [source[at:start], instead]
        at = end
    return "".join([*pieces, source[at:]])


def _chosen(findings: Sequence[Finding]) -> Iterator[tuple[int, int, str]]:
    at = 0
    for finding in sorted((f for f in findings if f.instead is not None), key=lambda f: (f.start, f.end)):
        if finding.start >= at and finding.end > finding.start:
            yield finding.start, finding.end, finding.instead or ""
            at = finding.end


def patch(script: Script, findings: Sequence[Finding]) -> str:
    """A unified diff from the script's source to the reworded one, how to apply it said first; "" for none.

    A document (`DOCUMENTS`) is no text that a diff could change: its rewordings are listed as comment lines.
    """
    name = script.file or f"{script.name}.{script.language}.md"
    if name.lower().endswith(DOCUMENTS):
        return _listed(name, script.source, findings)
    after = reworded(script.source, findings)
    path = name.lstrip("/") + ("\t" if " " in name else "")  # a tab ends a name that has spaces in it
    lines = difflib.unified_diff(_LINE.findall(script.source), _LINE.findall(after), f"a/{path}", f"b/{path}")
    text = "".join(line if line.endswith("\n") else f"{line}\n\\ No newline at end of file\n" for line in lines)
    return f"# {_how(name)}\n{text}" if text else ""


def _how(name: str) -> str:
    if ".." in name.split("/"):
        return f"save this as FILE; then, in the folder where promptprep ran: patch '{name}' < FILE"
    if name.startswith("/"):
        return "save this as FILE; then: patch -p1 -d / < FILE"
    return "save this as FILE; then, in the folder where promptprep ran: patch -p1 < FILE"


def _listed(name: str, source: str, findings: Sequence[Finding]) -> str:
    """What to change by hand, in the order of the text."""
    rows = [
        f"#   {_one_line(source[start:end])!r} -> {_one_line(instead)!r}\n" for start, end, instead in _chosen(findings)
    ]
    return "".join([f"# {name}: change these by hand, no patch can change a document\n", *rows]) if rows else ""


def _one_line(text: str) -> str:
    return " ".join(text.split())
