"""Spoken forms by language, set and class, and how fast they are made: `python tests/bench/spoken.py`."""

from __future__ import annotations

import sys
import time
from collections import Counter
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from promptprep.engines.spelling import IcuSpeller  # noqa: E402
from promptprep.speaking.speak import speak  # noqa: E402
from promptprep.store.languages import language_data  # noqa: E402
from tests.outside.spoken import languages, sets, vectors  # noqa: E402

SPELLER = IcuSpeller()
REPEATS = 5


def table() -> None:
    """Met vectors of each set, by class."""
    total, met = Counter[tuple[str, str]](), Counter[tuple[str, str]]()
    for tag in sets():
        for vector in vectors(tag):
            said = speak(vector.text, language_data(vector.language), SPELLER).text
            for key in ((tag, vector.kind), (tag, "")):
                total[key] += 1
                met[key] += vector.met_by(said)
    for tag in languages():
        print_language([name for name in sets() if name.split("_")[0] == tag], met, total)


def print_language(names: Sequence[str], met: Counter[tuple[str, str]], total: Counter[tuple[str, str]]) -> None:
    """A language's classes in rows, its sets in columns."""
    kinds = sorted({kind for name, kind in total if kind and name in names})
    print(f"\n{names[0]:14}" + "".join(f"{name.partition('_')[2] or 'sources':>9}" for name in names))
    for kind in [*kinds, ""]:
        cells = (f"{met[name, kind]}/{total[name, kind]}" if total[name, kind] else "-" for name in names)
        print(f"{kind or 'all':14}" + "".join(f"{cell:>9}" for cell in cells))


def words_per_second(text: str, tag: str) -> float:
    """Best of a few runs, warm."""
    data = language_data(tag)
    speak(text, data, SPELLER)
    best = float("inf")
    for _ in range(REPEATS):
        begun = time.process_time()
        speak(text, data, SPELLER)
        best = min(best, time.process_time() - begun)
    return len(text.split()) / best


def speeds() -> None:
    """Words a second of processor time: the demo's copy without its figures, as written, and the vectors alone."""
    print(f"\n{'words/s':14}{'no figures':>12}{'demo copy':>12}{'vectors':>12}")
    for tag in languages():
        demo = ROOT / "scripts_demo" / f"sky.{tag}.md"
        prose = "\n".join(x for x in demo.read_text("utf-8").splitlines() if x[:1].isalpha()) if demo.is_file() else ""
        figures = "\n".join(v.text for v in vectors(tag))
        plain = " ".join(w for w in prose.split() if not any(c.isdigit() for c in w))
        cells = (f"{words_per_second(t * 20, tag):12,.0f}" if t else f"{'-':>12}" for t in (plain, prose, figures))
        print(f"{tag:14}" + "".join(cells))


if __name__ == "__main__":
    table()
    speeds()
