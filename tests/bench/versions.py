"""How long twelve versions of a four-minute script take to compare, warm. Run: python -m tests.bench.versions"""

from __future__ import annotations

import time
from pathlib import Path

from promptprep.faces import versions

DEMO = Path(__file__).parents[2] / "scripts_demo"
REPEATS = 5


def main() -> None:
    """Prints the first comparison's seconds and the median of the next ones'."""
    source = [DEMO / "sky.en.md"]
    taken = []
    for _ in range(REPEATS + 1):
        begin = time.perf_counter()
        found = versions.compare_versions(source)
        taken.append(time.perf_counter() - begin)
    print(f"{len(found.all)} versions: first {taken[0]:.2f} s, then {sorted(taken[1:])[REPEATS // 2]:.2f} s")


if __name__ == "__main__":
    main()
