"""One script of one hour (about 9,000 words): how much slower than the bare libraries beneath? Ratios from one run.

    python tests/bench/speed.py

- `promptprep time`, cold from the shell, over `python -c "import spacy"` (goal: at most 1.5);
- `time_scripts` warm, in seconds (goal: under 0.2 s on an idle core);
- `prepare` over WeasyPrint alone on the same pages (goal: at most twice, plus one second).
"""

from __future__ import annotations

import re
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path
from statistics import median

from promptprep import faces
from promptprep.model.rig import Studio
from promptprep.parsing.parse import parse_script
from promptprep.pipeline.scripts import time_one

DEMO = Path(__file__).parents[2] / "scripts_demo"
WORDS = 9000


def hour_of_copy() -> str:
    """The English demo scripts over and over, the figures changed each time so that no sentence is met twice."""
    bodies = [
        re.sub(r"(?s)\A\+\+\+.*?\+\+\+\n", "", (DEMO / f"{n}.en.md").read_text("utf-8")) for n in ("sky", "children")
    ]
    texts: list[str] = []
    turn = 0
    while sum(len(t.split()) for t in texts) < WORDS:
        body = re.sub(r" ?\{[^}]*slot[^}]*\}", "", bodies[turn % 2])
        texts.append(re.sub(r"\b(\d{2,3})\b(?!:)", partial(_raised, by=turn), body).replace("Noor", f"Noor {turn}"))
        turn += 1
    return '+++\ntitle = "An hour"\nlanguage = "en"\n+++\n' + "\n".join(texts)


def _raised(figure: re.Match[str], by: int) -> str:
    return str(int(figure[1]) + by)


def wall(run: Callable[[], object], times: int = 3) -> float:
    found = []
    for _ in range(times):
        start = time.perf_counter()
        run()
        found.append(time.perf_counter() - start)
    return median(found)


def shell(*args: str) -> Callable[[], object]:
    return lambda: subprocess.run([sys.executable, *args], stdout=subprocess.DEVNULL, check=False)


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        script = Path(folder, "hour.en.md")
        script.write_text(hour_of_copy(), "utf-8")
        print(f"{len(script.read_text('utf-8').split())} words")
        cold, spacy = wall(shell("-m", "promptprep", "time", str(script))), wall(shell("-c", "import spacy"))
        print(f"time, cold: {cold:.2f} s; import spacy: {spacy:.2f} s; ratio {cold / spacy:.2f} (goal 1.5)")
        source, studio = script.read_text("utf-8"), Studio()
        parsed = parse_script(source, language="en")
        time_one(parsed, studio, faces.tools())
        warm = wall(lambda: time_one(parsed, studio, faces.tools()))
        whole = wall(lambda: time_one(parse_script(source, language="en"), studio, faces.tools()))
        print(f"time, warm: {warm:.3f} s; with parsing {whole:.3f} s (goal 0.2)")
        prepare_ratio(script, Path(folder, "out"))


def prepare_ratio(script: Path, out: Path) -> None:
    from promptprep.rendering import paper, screen

    pages: list[float] = []

    def counted(inner: Callable[..., bytes]) -> Callable[..., bytes]:
        def run(*args: object) -> bytes:
            start = time.perf_counter()
            try:
                return inner(*args)
            finally:
                pages.append(time.perf_counter() - start)

        return run

    paper_inner, screen_inner = paper.pdf_from_html, screen._written
    paper.pdf_from_html, screen._written = counted(paper_inner), counted(screen_inner)
    from promptprep.rendering import crew

    crew.pdf_from_html = paper.pdf_from_html
    start = time.perf_counter()
    faces.prepare([script], out)
    whole = time.perf_counter() - start
    bare = sum(pages)
    print(
        f"prepare: {whole:.1f} s, of it WeasyPrint alone {bare:.1f} s; "
        f"ratio {(whole - 1) / bare:.2f} after one second off (goal 2)"
    )


if __name__ == "__main__":
    main()
