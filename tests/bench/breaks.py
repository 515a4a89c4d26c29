"""Measures line ends: how many cut a tight phrase, how many lines there are, how long it takes.

    python tests/bench/breaks.py             the table
    python tests/bench/breaks.py --parsed FILE LANGUAGE   the same on any text, with a trained pipeline's structure

The gold sentences are UD_English-PUD's and UD_French-PUD's (see `data/trees.*.txt`). A line end cuts a tight phrase
where it falls between a word and its article, adjective, number, preposition, auxiliary, copula, negation, or
inside a name or a compound: where an arc of one of these relations spans it.
"""

from __future__ import annotations

import re
import sys
import time
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from promptprep.breaking.lists import lists_of
from promptprep.breaking.optimum import fullest_ends
from promptprep.breaking.paragraph import break_paragraphs
from promptprep.breaking.pieces import Cutter, Measure, line_ends
from promptprep.engines.load import engines
from promptprep.model.ports import Engines, Word
from promptprep.spans import Span
from promptprep.store.languages import language_data

DATA = Path(__file__).parent / "data"
WIDTHS_EM = [12 + step / 2 for step in range(27)]
TIGHT = frozenset(
    (
        *("amod", "aux", "auxpass", "case", "clf", "compound", "cop", "det", "expl", "fixed", "flat", "goeswith"),
        *("neg", "nummod", "pobj", "poss", "predet", "prt", "quantmod"),
    )
)
TOKEN = re.compile(r"(~?)(.*)>(\d+)([a-z:]+)")


@dataclass(frozen=True)
class Gold:
    """A text and the spans of the arcs that hold a tight phrase together."""

    text: str
    bonds: tuple[tuple[int, int], ...]

    def is_cut(self, offset: int) -> bool:
        return any(start < offset <= end for start, end in self.bonds)


class NoStructure:
    def parse(self, texts: Sequence[str], language: str) -> None:
        return None


def gold(line: str, language: str) -> Gold:
    """One sentence of `data/trees.*.txt`."""
    text, words = "", []
    for token in line.split(" "):
        glued, form, head, relation = TOKEN.fullmatch(token).groups()  # type: ignore[union-attr]
        if text and not glued and form != "∅":
            text += " "
        start = len(text)
        text += "" if form == "∅" else form
        words.append((start, len(text), int(head) - 1, relation))
    bonds = [
        (min(s, words[h][0]), max(s, words[h][0]))
        for s, e, h, relation in words
        if h >= 0 and is_tight(text[s:e], relation, language)
    ]
    return Gold(text, tuple(bonds))


def is_tight(word: str, relation: str, language: str) -> bool:
    base = relation.split(":")[0]
    negation = word.casefold() in lists_of(language_data(language)).negations and base == "advmod"
    infinitive = base == "mark" and word.casefold() in ("to", "zu")
    return base in TIGHT or relation in ("nmod:poss", "compound:prt") or negation or infinitive


def joined(sentences: Iterable[Gold], each: int = 3) -> list[Gold]:
    """Paragraphs of `each` sentences."""
    items = list(sentences)
    paragraphs = []
    for at in range(0, len(items), each):
        text, bonds = "", []
        for one in items[at : at + each]:
            shift = len(text) + bool(text)
            text += (" " if text else "") + one.text
            bonds += [(start + shift, end + shift) for start, end in one.bonds]
        paragraphs.append(Gold(text, tuple(bonds)))
    return paragraphs


def parsed(path: Path, language: str) -> list[Gold]:
    """The paragraphs of a text file with the structure that a trained pipeline gives them."""
    texts = [" ".join(part.split()) for part in re.split(r"\n\s*\n", path.read_text("utf-8")) if len(part.split()) > 5]
    trees = engines().structure.parse(texts, language)
    assert trees is not None, f"no trained pipeline for {language} is installed"
    return [Gold(text, tuple(bonds_of(text, tree, language))) for text, tree in zip(texts, trees, strict=True)]


def bonds_of(text: str, tree: Sequence[Word], language: str) -> list[tuple[int, int]]:
    return [
        (min(w.start, tree[w.head].start), max(w.start, tree[w.head].start))
        for w in tree
        if is_tight(text[w.start : w.end], w.relation, language)
    ]


def greedy(text: str, width_em: float, language: str, own: Engines) -> list[int]:
    """Offsets at which greedy filling starts a new line."""
    measure = Measure(own.shaper, language, True)
    pieces, _ = Cutter(text, width_em, measure, own.breaks).pieces(
        Span(0, len(text)), line_ends(text, language, own.breaks)
    )
    return [pieces[end + 1].span.start for end in fullest_ends(pieces, width_em)[:-1]]


def compare(
    paragraphs: Sequence[Gold], language: str, own: Engines, widths: Sequence[float], alone: bool = False
) -> tuple[int, ...]:
    """(cuts of greedy filling, its lines, our cuts, our lines) over all widths; paragraphs broken together or alone."""
    sums = [0, 0, 0, 0]
    data = language_data(language)
    for width in widths:
        texts = [p.text for p in paragraphs]
        broken = (
            [break_paragraphs([text], width, data, own)[0] for text in texts]
            if alone
            else break_paragraphs(texts, width, data, own)
        )
        for paragraph, result in zip(paragraphs, broken, strict=True):
            plain = greedy(paragraph.text, width, language, own)
            ours = [span.start for span in result.lines[1:]]
            sums[0] += sum(map(paragraph.is_cut, plain))
            sums[1] += len(plain) + 1
            sums[2] += sum(map(paragraph.is_cut, ours))
            sums[3] += len(ours) + 1
    return tuple(sums)


def row(name: str, sums: Sequence[int]) -> str:
    plain, plain_lines, ours, lines = sums
    ratios = f"{ours / max(plain, 1):>8.3f}{lines / plain_lines:>8.3f}"
    return f"{name:<34}{plain:>7}/{plain_lines:<7}{ours:>7}/{lines:<7}{ratios}"


def table(name: str, paragraphs: Sequence[Gold], language: str) -> None:
    own = engines()
    for structure, label in ((own.structure, "pipeline"), (NoStructure(), "word lists")):
        tools = replace(own, structure=structure)
        print(row(f"{name} {language} {label}", compare(paragraphs, language, tools, WIDTHS_EM)))
        if "--widths" in sys.argv:
            for low, high in ((12, 14), (14.5, 17), (17.5, 20), (20.5, 25)):
                some = [w for w in WIDTHS_EM if low <= w <= high]
                print(row(f"    {low}-{high} em", compare(paragraphs, language, tools, some)))


def speed() -> None:
    text = "Good evening. The very bright star in the southern sky has not exploded, and it will not do so tonight. "
    paragraphs = [text * 5] * 90
    tools = replace(engines(), structure=NoStructure())
    for _ in range(2):
        start = time.perf_counter()
        break_paragraphs(paragraphs, 18, language_data("en"), tools)
    words = sum(len(p.split()) for p in paragraphs)
    print(f"{words} words by word lists, warm: {time.perf_counter() - start:.3f} s")


def main() -> None:
    print(f"{'':<34}{'greedy':>7}{'':8}{'ours':>7}{'':8}{'cuts':>8}{'lines':>8}")
    if "--parsed" in sys.argv:
        at = sys.argv.index("--parsed")
        path, language = Path(sys.argv[at + 1]), sys.argv[at + 2]
        table(path.stem[:12], parsed(path, language), language)
        return
    for language in ("en", "fr"):
        lines = (DATA / f"trees.{language}.txt").read_text("utf-8").splitlines()
        sentences = [gold(line, language) for line in lines if line and not line.startswith("#")]
        table("one sentence", sentences, language)
        table("three sentences", joined(sentences), language)
        table("ten sentences", joined(sentences, 10), language)
    speed()


if __name__ == "__main__":
    main()
