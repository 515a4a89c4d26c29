"""Forty printed pages of one script: seconds warm, and how many times the page renderer alone takes on them.

    python tests/bench/paper.py

Goals: under 3 s for 40 pages on an idle core; at most 1.5 times the renderer alone on the same page text.
"""

from __future__ import annotations

import re
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median

from promptprep import faces
from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import Studio
from promptprep.parsing.parse import parse_script
from promptprep.pipeline.outputs import paper_tools
from promptprep.pipeline.scripts import prepare_one
from promptprep.rendering.environment import environment
from promptprep.rendering.paper import paper_html, paper_pdf
from promptprep.rendering.printing import pdf_from_html
from promptprep.store.templates import shipped

PAGES = 40


def long_script(turns: int) -> PreparedScript:
    """The English demo over and over, its own slots and ids taken off."""
    source = (shipped("scripts_demo") / "sky.en.md").read_text("utf-8")
    body = re.sub(r" \{#[^}]*\}", "", source.split("+++\n", 2)[2])
    script = parse_script(body * turns, language="en", name="long")
    return prepare_one(script, Studio(), faces.tools())


def seconds(work: Callable[[], object], times: int = 5) -> float:
    """Median processor time: other work on the machine does not count."""
    found = []
    for _ in range(times):
        began = time.process_time()
        work()
        found.append(time.process_time() - began)
    return median(found)


def main() -> None:
    tools = paper_tools("en", faces.tools(), environment([Path(shipped("templates"))]))
    one = long_script(13)
    html = paper_html(one, Studio(), tools)
    pages = html.count('<section class="sheet')
    whole = seconds(lambda: paper_pdf(one, Studio(), tools))
    alone = seconds(lambda: pdf_from_html(html, "bench"))
    print(f"{pages} pages: {whole:.2f} s, {whole * PAGES / pages:.2f} s for {PAGES} (goal: under 3)")
    print(f"over the page renderer alone ({alone:.2f} s): {whole / alone:.2f} times (goal: at most 1.5)")


if __name__ == "__main__":
    main()
