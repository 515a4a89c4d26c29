"""Safe rewordings as a patch in unified form. It is printed, never applied."""

from __future__ import annotations

import difflib
import re
from collections.abc import Sequence

from promptprep.model.finding import Finding
from promptprep.model.script import Script

_LINE = re.compile(r"[^\n]*\n|[^\n]+")


def reworded(source: str, findings: Sequence[Finding]) -> str:
    """The source with each `instead` in its place. Of rewordings that overlap, the first in the text counts."""
    pieces, at = [], 0
    for finding in sorted((f for f in findings if f.instead is not None), key=lambda f: (f.start, f.end)):
        if finding.start >= at and finding.end > finding.start:
            pieces += [source[at : finding.start], finding.instead or ""]
            at = finding.end
    return "".join([*pieces, source[at:]])


def patch(script: Script, findings: Sequence[Finding]) -> str:
    """A unified diff from the script's source to the reworded one; "" where nothing is offered."""
    name = script.file or f"{script.name}.{script.language}.md"
    after = reworded(script.source, findings)
    lines = difflib.unified_diff(_LINE.findall(script.source), _LINE.findall(after), f"a/{name}", f"b/{name}")
    return "".join(line if line.endswith("\n") else f"{line}\n\\ No newline at end of file\n" for line in lines)
