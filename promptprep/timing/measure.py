"""What of a text takes time: sounds, syllables, words, rare words, pauses. Counts only, no seconds."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from promptprep.model.language import LanguageData
from promptprep.model.ports import Engines
from promptprep.model.spoken import Spoken
from promptprep.model.timing import PauseKind
from promptprep.timing.marks import last_breath, pause_kind, with_lists
from promptprep.timing.pieces import Piece, pieces_of
from promptprep.timing.sounds import Load, weighed

BREATH_SYLLABLES = 16  # a breath group of reading holds about 18 syllables (18 Korean readers, JAKO200804748556267)
_ENDS_SENTENCE = frozenset(("clock", "date", "measure", "money", "percent", "url", "email", "initialism"))


@dataclass(frozen=True, slots=True)
class Measured:
    """A text's words with what each weighs, and the pause after each (None: none; the last word has none here).

    `breaths[i]` is the part of a breath that falls after word i in a long stretch without a mark. `end` says how much
    of a last breath the text's end asks for: 1 at the end of a sentence, less at a comma, 0 after a title ("Mr.").
    """

    words: tuple[Piece, ...]
    loads: tuple[Load, ...]
    pauses: tuple[PauseKind | None, ...]
    breaths: Mapping[int, float]
    end: float = 1.0

    @property
    def syllables(self) -> int:
        return round(sum(load.syllables for load in self.loads))


def measure(spoken: Spoken, data: LanguageData, engines: Engines) -> Measured:
    """Weighs a spoken form. Linear in its length. Raises `UnknownLanguage`."""
    pieces = pieces_of(spoken, single_characters=data.maybe("pace", "unit") == "character")
    both = weighed(pieces, spoken.written, data, engines)
    words = tuple(piece for piece, _ in both)
    loads = tuple(load for _, load in both)
    pauses = with_lists(_pauses(spoken.written, words))
    breaths = _breaths(words, loads, pauses, _openers(data))
    return Measured(words, loads, tuple(pauses), breaths, _end(spoken.written, words[-1]) if words else 0.0)


def _end(written: str, last: Piece) -> float:
    """How much of a last breath the end of a text asks for."""
    if last.kind == "abbreviation" and written[last.span.end - 1] == "." and not _stop_inside(written, last, False):
        return 0.0
    return last_breath(written[last.span.end :])


def _pauses(written: str, words: Sequence[Piece]) -> list[PauseKind | None]:
    """The pause after each word but the last, which gets None."""
    found: list[PauseKind | None] = []
    for word, following in pairwise(words):
        gap = written[word.span.end : following.span.start]
        if gap == " " and word.kind == "word":
            found.append(None)
            continue
        lower = written[following.span.start].islower()
        kind = pause_kind(gap, lower_next=lower)
        if kind == "sentence" and _is_initial(word.said, gap):
            kind = None
        if kind is None and word.kind != "word" and _stop_inside(written, word, lower):
            kind = "sentence"
        found.append(kind)
    return [*found, None] if words else []


def _is_initial(said: str, gap: str) -> bool:
    """Whether a stop belongs to a name's initial ("J. Osei")."""
    return len(said) == 1 and said.isupper() and said != "I" and gap.strip() == "."


def _stop_inside(written: str, word: Piece, lower_next: bool) -> bool:
    """Whether a reading took the full stop that also ends its sentence ("at 9 p.m. We ...")."""
    if lower_next or written[word.span.end - 1] != ".":
        return False
    return word.kind in _ENDS_SENTENCE or (word.kind == "abbreviation" and written[word.span.start].islower())


def _openers(data: LanguageData) -> frozenset[str]:
    """Words before which a reader takes breath rather than elsewhere; none where the language has no list."""
    return _openers_of(
        tuple(data.maybe("phrases", "conjunctions", ())), tuple(data.maybe("phrases", "prepositions", ()))
    )


@lru_cache(maxsize=64)
def _openers_of(conjunctions: tuple[str, ...], prepositions: tuple[str, ...]) -> frozenset[str]:
    return frozenset(conjunctions + prepositions)


def _breaths(
    words: Sequence[Piece], loads: Sequence[Load], pauses: Sequence[PauseKind | None], openers: frozenset[str]
) -> dict[int, float]:
    """Parts of a breath in each stretch without a mark that is longer than one breath holds, by word."""
    found: dict[int, float] = {}
    first, syllables = 0, 0.0
    for at, load in enumerate(loads):
        syllables += load.syllables
        if pauses[at] is not None or at == len(loads) - 1:
            if syllables > BREATH_SYLLABLES:
                excess = (syllables - BREATH_SYLLABLES) / BREATH_SYLLABLES
                places = _places(loads, first, at, syllables, int(excess) + 1)
                for place in places:
                    near = _near_opener(words, place, first, at, openers)
                    found[near] = found.get(near, 0.0) + excess / len(places)
            first, syllables = at + 1, 0.0
    return found


def _places(loads: Sequence[Load], first: int, last: int, syllables: float, breaths: int) -> list[int]:
    """Words of a stretch after which its breaths would be even. A breath needs a word after it: at least one place
    is given where there are two words, none in a stretch of one."""
    step = syllables / (breaths + 1)
    passed, due = 0.0, step
    found: list[int] = []
    for at in range(first, last):
        passed += loads[at].syllables
        if passed >= due:
            found.append(at)
            due += step
    return found


def _near_opener(words: Sequence[Piece], place: int, first: int, last: int, openers: frozenset[str]) -> int:
    """The nearest word to `place` that stands before an opener, within three words; else `place` itself."""
    for away in (0, -1, 1, -2, 2, -3, 3):
        at = place + away
        if first <= at < last and words[at + 1].said.lower() in openers and words[at].said.lower() not in openers:
            return at
    return place
