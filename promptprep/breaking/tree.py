"""What a line end costs where the sentence's structure is known: arcs between words that it would cut."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence

from promptprep.model.ports import Word

# Cost of cutting an arc, by relation: universal dependencies and the older English scheme of the English pipeline.
# The order follows subtitling practice (articles, adjectives, names, auxiliaries, prepositions, negation never cut);
# the figures are common practice, no source.
ARC = {
    "acomp": 8.0, "advmod": 0.4, "amod": 10.0, "attr": 8.0, "aux": 10.0, "auxpass": 10.0, "case": 10.0, "cc": 2.0,
    "clf": 10.0, "compound": 10.0, "cop": 10.0, "dative": 0.6, "det": 10.0, "dobj": 0.6, "expl": 8.0, "fixed": 10.0,
    "flat": 10.0, "goeswith": 12.0, "iobj": 0.6, "mark": 2.0, "neg": 10.0, "nmod": 0.9, "npadvmod": 3.0, "nsubj": 0.6,
    "nsubjpass": 0.6, "nummod": 10.0, "obj": 0.6, "obl": 0.2, "pcomp": 5.0, "pobj": 10.0, "poss": 10.0, "preconj": 4.0,
    "predet": 10.0, "prep": 0.4, "prt": 10.0, "quantmod": 10.0, "xcomp": 1.0,
}  # fmt: skip
_INFINITIVE = 9.0  # "to see", "de voir"
_DOUBLE = 8.0  # "along with", "out of"
_CLITICS = ("PRON", "PART")  # a pronoun beside its verb is said in one breath with it
_CLITIC = 5.0
_POSSESSOR = 10.0  # "the studio | assistant assistant"; in other languages what stands before a noun in the genitive
_DEGREE = 8.0  # "very bright"
_NEGATION = 10.0
_SPAN = 12  # words: longer arcs count in the depth only
_DEPTH = 0.05  # for each further arc that is cut: the higher in the tree, the better


def tree_costs(words: Sequence[Word], gaps: Sequence[int], negations: frozenset[str], text: str) -> list[float]:
    """Cost for each gap (offset in the text): the tightest arc that it cuts, and a little for every arc."""
    starts = [word.start for word in words]
    after = [bisect_left(starts, gap) for gap in gaps]  # index of the first word behind each gap
    tight = [0.0] * len(gaps)
    crossing = [0] * (len(gaps) + 1)
    for i, word in enumerate(words):
        low, high = sorted((i, word.head))
        first, last = bisect_left(after, low + 1), bisect_left(after, high + 1)
        if first >= last or word.relation == "punct":
            continue
        crossing[first] += 1
        crossing[last] -= 1
        if high - low <= _SPAN:
            cost = _arc(word, words[word.head], i < word.head, word_text(word, text) in negations)
            for gap in range(first, last):
                tight[gap] = max(tight[gap], cost)
    return [cost + _DEPTH * depth for cost, depth in zip(tight, _running(crossing), strict=False)]


def word_text(word: Word, text: str) -> str:
    return text[word.start : word.end].casefold()


def _arc(word: Word, head: Word, before: bool, negation: bool) -> float:
    """The cost of parting a word from its head, which stands behind it where `before`."""
    relation = word.relation.split(":")[0]
    cost = ARC.get(relation, 0.0)
    if negation and relation in ("advmod", "neg", "dep"):
        return _NEGATION
    if relation == "advmod" and head.pos in ("ADJ", "ADV", "NUM", "DET"):
        return _DEGREE
    if relation == "prep" and head.pos == "ADP":
        return _DOUBLE
    if relation == "nmod" and before:
        return _POSSESSOR
    if relation == "mark" and word.pos in ("ADP", "PART"):
        return _INFINITIVE
    if word.pos in _CLITICS and before and relation in ("nsubj", "nsubjpass", "obj", "iobj", "expl", "dep"):
        return max(cost, _CLITIC)
    return cost


def _running(changes: Iterable[int]) -> list[int]:
    total, totals = 0, []
    for change in changes:
        total += change
        totals.append(total)
    return totals
