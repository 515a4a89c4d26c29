"""False alarms on good copy: `python -m tests.bench.alarms [FILE ...]`.

The copy is public-domain: speeches that were broadcast (work of the United States government), an address, and
fables to be read aloud; each file names its source. Every finding is printed, to be read and judged.
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

from promptprep.checking.check import check_script
from promptprep.model.finding import LEVELS
from tests.checking.build import context_for

GOOD = Path(__file__).parent / "data" / "good"


def main() -> None:
    files = [Path(name) for name in sys.argv[1:]] or sorted(GOOD.glob("*.md"))
    levels: Counter[str] = Counter()
    words = 0
    for file in files:
        source = file.read_text("utf-8")
        context = context_for(source, file.name.split(".")[-2])
        words += sum(len(p.words) for p in context.passages)
        for finding in check_script(context):
            levels[finding.level] += 1
            excerpt = " ".join(source[finding.start : finding.end].split())[:70]
            print(f"{file.stem:24} {finding.level:5} {finding.name:20} {excerpt}")
    rates = ", ".join(f"{levels[level] * 1000 / words:.1f} {level}" for level in LEVELS)
    print(f"{words} words: {rates} per 1,000 words")


if __name__ == "__main__":
    main()
