"""Measures line ends: how many cut a tight phrase, how many lines there are, how long it takes.

    python tests/bench/breaks.py             the table, in all languages
    python tests/bench/breaks.py en fr       the same in some
    python tests/bench/breaks.py --widths    and by the column's width
    python tests/bench/breaks.py --held      on the sentences held back from tuning
    python tests/bench/breaks.py --parsed FILE LANGUAGE   on any text, with a trained pipeline's structure

The gold sentences come from Universal Dependencies (`data/trees.*.txt` and `data/held.*.txt` name treebank, commit and
licence). A line end cuts a tight phrase where an arc of one of these relations spans it:

    narrow   article, adjective, number, adposition, auxiliary, possessor, first and last name, negation
    usual    and copula, compound, fixed expression, expletive, particle, "to" before its verb
    broad    and the place right behind a conjunction that opens what follows
    beside   as usual, where one of the two words that are bound stands at the cut: not all that lies between a German
             auxiliary and its participle

In scripts without spaces a line end inside a word counts too: greedy filling cuts words, we do not.

"floor" is the fewest such cuts that the gold structure itself allows with 1.05 times the lines of greedy filling.
"""

from __future__ import annotations

import re
import sys
import time
from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from pathlib import Path

from promptprep.breaking.lists import lists_of
from promptprep.breaking.optimum import Weights, best_ends, fullest_ends
from promptprep.breaking.paragraph import break_paragraphs
from promptprep.breaking.pieces import Cutter, Measure, Piece, line_ends
from promptprep.engines.load import engines
from promptprep.model.language import FIRST_CLASS
from promptprep.model.ports import Engines, Word
from promptprep.spans import Span
from promptprep.store.languages import language_data

DATA = Path(__file__).parent / "data"
WIDTHS_EM = [12 + step / 2 for step in range(27)]
_UNSPACED = ("zh", "ja")
_UNSPACED_WIDTHS_EM = [9 + step / 2 for step in range(23)]  # half as many characters are as many words
_PIPELINES = ("en", "fr")
_LIMIT = 1.05
NARROW = frozenset(
    ("amod", "aux", "auxpass", "case", "clf", "det", "flat", "neg", "nummod", "pobj", "poss", "quantmod")
)
USUAL = NARROW | {"compound", "cop", "expl", "fixed", "goeswith", "predet", "prt"}
DEFINITIONS = ("narrow", "usual", "broad", "beside")
BLANK = re.compile(" ")
TOKEN = re.compile(r"(~?)(.+?)(?:>(\d+)([a-z:]+))?")


@dataclass(frozen=True)
class Gold:
    """A text and the spans of the arcs that hold a tight phrase together, by definition."""

    text: str
    arcs: tuple[tuple[tuple[int, int], ...], ...]

    def is_cut(self, offset: int, definition: str = "usual") -> bool:
        return any(start < offset <= end for start, end in self.arcs[DEFINITIONS.index(definition)])


class NoStructure:
    def parse(self, texts: Sequence[str], language: str) -> None:
        return None


@dataclass(frozen=True)
class Token:
    start: int
    end: int
    head: int
    relation: str


def gold(line: str, language: str) -> Gold:
    """One sentence of `data/trees.*.txt`."""
    text, tokens = "", []
    for written in line.split(" "):
        glued, form, head, relation = TOKEN.fullmatch(written).groups()  # type: ignore[union-attr]
        if text and not glued and form != "∅":
            text += " "
        start = len(text)
        text += "" if form == "∅" else form
        tokens.append(Token(start, len(text), int(head or 0) - 1, relation or ""))
    return _gold(text, tokens, language)


def _gold(text: str, tokens: Sequence[Token], language: str) -> Gold:
    sets: list[list[tuple[int, int]]] = [[], [], [], []]
    ends = [] if language in _UNSPACED else [found.end() for found in BLANK.finditer(text)]
    for token in tokens:
        if language in _UNSPACED and token.end - token.start > 1:
            for own in sets:
                own.append((token.start, token.end - 1))
        if token.head < 0:
            continue
        word, base = text[token.start : token.end].casefold(), token.relation.split(":")[0]
        span = (min(token.start, tokens[token.head].start), max(token.start, tokens[token.head].start))
        first = _tightness(word, token.relation, language)
        if base in ("cc", "mark") and first == 2 and span[0] == token.start:
            span = (span[0], min(span[1], token.end + 1))
        for own in sets[first:3]:
            own.append(span)
        if first < 2:
            sets[3] += _beside(span, ends or [other.start for other in tokens])
    return Gold(text, tuple(map(tuple, sets)))


def _beside(span: tuple[int, int], places: Sequence[int]) -> list[tuple[int, int]]:
    """The first and the last of the places where a line could end inside an arc."""
    inside = places[bisect_right(places, span[0]) : bisect_right(places, span[1])]
    return [(place - 1, place) for place in {*inside[:1], *inside[-1:]}]


def _tightness(word: str, relation: str, language: str) -> int:
    """The first definition, by its place, to which an arc belongs; 3 for none."""
    base = relation.split(":")[0]
    negation = word in lists_of(language_data(language)).negations and base == "advmod"
    if base in NARROW or relation == "nmod:poss" or negation:
        return 0
    if base in USUAL or (base == "mark" and word in ("to", "zu")):
        return 1
    return 2 if base in ("cc", "mark") else 3


def sentences(language: str, name: str = "trees") -> list[Gold]:
    lines = (DATA / f"{name}.{language}.txt").read_text("utf-8").splitlines()
    return [gold(line, language) for line in lines if line and not line.startswith("#")]


def joined(items: Sequence[Gold], each: int, blank: str = " ") -> list[Gold]:
    """Paragraphs of `each` sentences."""
    paragraphs = []
    for at in range(0, len(items), each):
        text, sets = "", ([], [], [], [])  # type: tuple[str, tuple[list[tuple[int, int]], ...]]
        for one in items[at : at + each]:
            text += blank if text else ""
            for own, arcs in zip(sets, one.arcs, strict=True):
                own += [(start + len(text), end + len(text)) for start, end in arcs]
            text += one.text
        paragraphs.append(Gold(text, tuple(map(tuple, sets))))
    return paragraphs


def parsed(path: Path, language: str) -> list[Gold]:
    """The paragraphs of a text file with the structure that a trained pipeline gives them."""
    texts = [" ".join(part.split()) for part in re.split(r"\n\s*\n", path.read_text("utf-8")) if len(part.split()) > 5]
    trees = engines().structure.parse(texts, language)
    assert trees is not None, f"no trained pipeline for {language} is installed"
    return [_gold(text, list(map(_token, tree)), language) for text, tree in zip(texts, trees, strict=True)]


def _token(word: Word) -> Token:
    return Token(word.start, word.end, word.head, word.relation)


def pieces_of(text: str, width_em: float, language: str, own: Engines) -> list[Piece]:
    measure = Measure(own.shaper, language, True)
    cutter = Cutter(text, width_em, measure, own.breaks)
    return cutter.pieces(Span(0, len(text)), line_ends(text, language, own.breaks))[0]


def offsets(pieces: Sequence[Piece], ends: Sequence[int]) -> list[int]:
    """Where the lines but the first begin."""
    return [pieces[end + 1].span.start for end in ends[:-1]]


def compare(
    paragraphs: Sequence[Gold],
    language: str,
    own: Engines,
    widths: Sequence[float],
    definition: str = "usual",
    alone: bool = False,
) -> tuple[int, ...]:
    """(cuts of greedy filling, its lines, our cuts, our lines) over all widths; paragraphs broken together or alone."""
    sums = [0, 0, 0, 0]
    data = language_data(language)
    texts = [p.text for p in paragraphs]
    for width in widths:
        calls = [[text] for text in texts] if alone else [texts]
        broken = [result for call in calls for result in break_paragraphs(call, width, data, own)]
        for paragraph, result in zip(paragraphs, broken, strict=True):
            pieces = pieces_of(paragraph.text, width, language, own)
            plain = offsets(pieces, fullest_ends(pieces, width))
            ours = [span.start for span in result.lines[1:]]
            sums[0] += sum(paragraph.is_cut(offset, definition) for offset in plain)
            sums[1] += len(plain) + 1
            sums[2] += sum(paragraph.is_cut(offset, definition) for offset in ours)
            sums[3] += len(ours) + 1
    return tuple(sums)


def floor(
    paragraphs: Sequence[Gold], language: str, own: Engines, widths: Sequence[float], lines: int, definition: str
) -> float:
    """The fewest cuts with `_LIMIT` times `lines`: between the points of a price of a line, in a straight line."""
    parts = []
    for width in widths:
        for paragraph in paragraphs:
            pieces = pieces_of(paragraph.text, width, language, own)
            starts = [piece.span.start for piece in pieces[1:]]
            parts.append((pieces, [float(paragraph.is_cut(start, definition)) for start in starts], width))
    points = sorted(
        {_least(parts, price) for price in (0.01, 0.15, 0.3, 0.4, 0.45, 0.55, 0.7, 0.9, 1.1, 1.6, 2.2, 4.2)}
    )
    allowed = _LIMIT * lines
    for (fewer, more_cuts), (more, fewer_cuts) in pairwise(points):
        if fewer <= allowed < more:
            return more_cuts + (fewer_cuts - more_cuts) * (allowed - fewer) / (more - fewer)
    return min(cuts for count, cuts in points if count <= allowed)


def _least(parts: Iterable[tuple[Sequence[Piece], Sequence[float], float]], price: float) -> tuple[int, float]:
    weights = Weights(line=price, ragged=1e-6, stub=0, alone=0)
    count, cuts = 0, 0.0
    for pieces, costs, width in parts:
        ends = best_ends(pieces, costs, width, weights)
        count += len(ends)
        cuts += sum(costs[end] for end in ends[:-1])
    return count, cuts


def rows(name: str, paragraphs: Sequence[Gold], language: str, widths: Sequence[float]) -> None:
    own = engines()
    word_lists = replace(own, structure=NoStructure())
    for label, tools in (("pipeline", own), ("lists", word_lists)):
        if label == "pipeline" and language not in _PIPELINES:
            continue
        ratios = ""
        for definition in DEFINITIONS:
            cuts, plain_lines, ours, lines = compare(paragraphs, language, tools, widths, definition)
            least = floor(paragraphs, language, own, widths, plain_lines, definition)
            ratios += f"{ours / max(cuts, 1):>9.3f} ({least / max(cuts, 1):.3f})"
        print(f"{language}  {name:<22}{label:<10}{ratios}{lines / plain_lines:>9.3f}", flush=True)


def table(language: str) -> None:
    name = "held" if "--held" in sys.argv else "trees"
    if not (DATA / f"{name}.{language}.txt").exists():
        return
    items = sentences(language, name)
    blank = "" if language in _UNSPACED else " "
    widths = (_UNSPACED_WIDTHS_EM if language in _UNSPACED else WIDTHS_EM)[::2]
    for each, name in ((1, "1 sentence"), (3, "3 sentences"), (10, "10 sentences")):
        rows(name, joined(items, each, blank), language, widths)
        if "--widths" in sys.argv:
            for at in range(0, len(widths), 3):
                some = widths[at : at + 3]
                rows(f"    {some[0]:g}-{some[-1]:g} em", joined(items, each, blank), language, some)


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
    print(f"    {'cuts of greedy (floor)':<32}" + "".join(f"{name:>17}" for name in DEFINITIONS) + f"{'lines':>9}")
    if "--parsed" in sys.argv:
        at = sys.argv.index("--parsed")
        path, language = Path(sys.argv[at + 1]), sys.argv[at + 2]
        rows(path.stem[:12], parsed(path, language), language, WIDTHS_EM[::2])
        return
    wanted = [arg for arg in sys.argv[1:] if not arg.startswith("-")]
    for language in wanted or FIRST_CLASS:
        table(language)
    speed()


if __name__ == "__main__":
    main()
