"""Pairing, planted differences and speed of versions, in figures. Run: python -m tests.bench.versions

Sentences are paired over whole texts without paragraphs: the demo's twelve versions, and the thirty articles of the
Universal Declaration of Human Rights in twelve languages (tests/outside/data/udhr.json). Merged and split sentences are
planted in both. Names and values are planted and rephrased in the demo (tests/versions/planted.py); the Declaration's
articles are a second text in which nothing differs.
"""

from __future__ import annotations

import random
import tempfile
import time
from pathlib import Path

from promptprep.faces import versions
from promptprep.model.versions import VersionFinding
from tests.outside.declaration import OTHERS, aligned, articles
from tests.versions.planted import PLANTED, REPHRASED
from tests.versions.test_planted import VALUES, found_in
from tests.versions.test_sentences import Links, f1, gold, merged, split

DEMO = Path(__file__).parents[2] / "scripts_demo"
REPEATS = 5
ROUNDS = 20


def main() -> None:
    pairing()
    differences()
    speed()


def pairing() -> None:
    """Prints F1 of the sentence links for each language, as the texts stand and with planted merges and splits."""
    print("sentence pairing, F1        demo  planted   Declaration  planted")
    rows = []
    for language in OTHERS:
        row = []
        for source, target, links, unsure in ((*gold(language), set()), aligned(language)):
            row.append(f1(source, target, links, language, unsure))
            row.append(_planted(source, target, links, unsure, language))
        rows.append(row)
        print(f"  {language:24}  {row[0]:.3f}    {row[1]:.3f}        {row[2]:.3f}    {row[3]:.3f}")
    means = [sum(column) / len(column) for column in zip(*rows, strict=True)]
    print(f"  {'mean':24}  {means[0]:.3f}    {means[1]:.3f}        {means[2]:.3f}    {means[3]:.3f}")


def _planted(source: list[str], target: list[str], links: Links, unsure: Links, language: str) -> float:
    """The mean F1 with two neighbours made one and one sentence cut in two for each twenty sentences."""
    draw, scores = random.Random(8), []
    for _ in range(ROUNDS):
        parts, moved, perhaps = target, links, unsure
        for _ in range(max(1, len(target) // 20)):
            at = draw.randrange(0, len(parts) - 1)
            _, perhaps = merged(parts, perhaps, at)
            parts, moved = merged(parts, moved, at)
            at = draw.randrange(0, len(parts))
            _, perhaps = split(parts, perhaps, at)
            parts, moved = split(parts, moved, at)
        scores.append(f1(source, parts, moved, language, perhaps - moved))
    return sum(scores) / len(scores)


def differences() -> None:
    """Prints the share of planted differences that is found, and the false alarms."""
    planted = [(language, *case) for language, cases in PLANTED.items() for case in cases]
    found = sum(bool(found_in(*case)) for case in planted)
    said = [(language, *case) for language, cases in REPHRASED.items() for case in cases]
    alarms = sum(bool(found_in(*case)) for case in said)
    print(f"planted differences found: {found} of {len(planted)} ({found / len(planted):.1%})")
    print(f"false alarms, said otherwise: {alarms} of {len(said)} ({alarms / len(said):.1%})")
    wrong = [f for language in OTHERS for f in alarms_in_the_declaration(language) if f.name in VALUES]
    total = len(OTHERS) * len(articles("en"))
    print(f"false alarms about values and names in the Declaration: {len(wrong)} of {total} articles")
    for finding in wrong:
        print(f"    {finding.language} {finding.segment}: {finding.message}")


def alarms_in_the_declaration(language: str) -> list[VersionFinding]:
    """What is found in the Declaration's articles as two versions of one script."""
    with tempfile.TemporaryDirectory() as folder:
        for tag in ("en", language):
            parts = [f"# {n} {{#a{n}}}\n\n" + "\n\n".join(text) for n, text in enumerate(articles(tag), 1)]
            (Path(folder) / f"a.{tag}.md").write_text("\n\n".join(parts) + "\n", "utf-8")
        return list(versions.compare_versions([Path(folder) / "a.en.md"]).others[0].findings)


def speed() -> None:
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
