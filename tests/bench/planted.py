"""Faults planted into good copy, and how many are found: `python -m tests.bench.planted`.

The copy is the demo's script in twelve languages (scripts_demo/sky.*.md). Into a sentence of its first long
paragraph goes one fault at a time: faults of form are made from the copy itself, faults of wording come from
tests/bench/data/planted.toml. A fault counts as found where a finding of the wanted name overlaps it.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from pathlib import Path

from promptprep.model.language import FIRST_CLASS
from promptprep.spans import Span
from tests.checking.build import ROOT, found

WORDED = Path(__file__).parent / "data" / "planted.toml"
UNSPACED = ("ja", "zh")
TWINS = {"a": "\u0430", "e": "\u0435", "o": "\u043e", "а": "a", "е": "e", "о": "o"}


def made(copy: str, language: str) -> Iterator[tuple[str, str, Span]]:
    """(rule, source, place) of each fault made from the copy."""
    at = copy.index("\n\n", copy.index("\n# ", copy.index("+++", 3))) + 2
    paragraphs = [p for p in _paragraphs(copy, at) if len(p) > 40]
    for n, (rule, fault) in enumerate(FAULTS.items()):
        for place in paragraphs[n % len(paragraphs)], paragraphs[(n + 1) % len(paragraphs)]:
            start = place.end
            if rule == "doubled-word" and language in UNSPACED:
                continue
            yield rule, copy[:start] + fault + copy[start:], Span(start, start + len(fault))
    yield from _twins(copy, paragraphs)


FAULTS = {
    "invisible-character": "\u200b",
    "spoken-url": " www.quillhorn.example/dome",
    "overexact-figure": " 384,403.",
    "crowded-figures": " 12, 17, 25, 31, 48.",
    "bare-symbol": " &",
    "unfinished-copy": " TODO.",
    "unknown-cue": " [zoom in]",
    "cue-without-time": " [clip Moonrise]",
}


def _paragraphs(copy: str, at: int) -> Iterator[Span]:
    """The lines of copy after an offset: no headings, cues, notes or remarks."""
    for line in copy[at:].splitlines(keepends=True):
        if line.strip() and line[0] not in "#[>+<":
            yield Span(at, at + len(line.rstrip()))
        at += len(line)


def _twins(copy: str, paragraphs: list[Span]) -> Iterator[tuple[str, str, Span]]:
    for place in paragraphs[:1]:
        for at in range(place.start + 1, place.end - 1):
            twin = TWINS.get(copy[at])
            if twin and copy[at - 1].isalpha() and copy[at + 1].isalpha():
                yield "look-alike-letter", copy[:at] + twin + copy[at + 1 :], Span(at, at + 1)
                return


def worded(copy: str, language: str) -> Iterator[tuple[str, str, Span]]:
    """(rule, source, place) of each fault of wording, as a paragraph or a segment of its own at the end."""
    for rule, faults in tomllib.loads(WORDED.read_text("utf-8")).get(language, {}).items():
        for fault in faults:
            before = copy.rstrip() + ("\n\n# 9\n\n" if rule == "dangling-pronoun" else "\n\n")
            yield rule, before + fault + "\n", Span(len(before), len(before) + len(fault))


def main() -> None:
    planted = missed = 0
    for language in FIRST_CLASS:
        copy = (ROOT / "scripts_demo" / f"sky.{language}.md").read_text("utf-8")
        rows = [*made(copy, language), *worded(copy, language)]
        lost = [r for r, source, place in rows if not _is_found(source, language, r, place)]
        planted, missed = planted + len(rows), missed + len(lost)
        print(
            f"{language}: {len(rows) - len(lost)} of {len(rows)} found"
            + (f"; missed: {', '.join(lost)}" if lost else "")
        )
    print(f"all: {planted - missed} of {planted} found, {1 - missed / planted:.1%}")


def _is_found(source: str, language: str, rule: str, place: Span) -> bool:
    return any(
        f.name == rule and Span(f.start, max(f.end, f.start + 1)).overlaps(place) for f in found(source, language)
    )


if __name__ == "__main__":
    main()
