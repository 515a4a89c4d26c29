"""A stretch of a sentence that is longer than one breath."""

from __future__ import annotations

import re
from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.words import Sentence
from promptprep.model.finding import Level
from promptprep.spans import Span

_MARK = re.compile(r"[,;:،؛，、；：—–…()（）「」“”\"]|\s-\s|\n")
_STRETCH = Parameter(
    7.0,
    "s",
    "breath groups in reading last 3.06 s (SD 0.62; JAKO200804748556267): more than twice that is out of reach of most",
)

_NOTED = 0.85  # share of the limit from which a stretch is noted


def find(context: Context) -> Iterator[Hit]:
    limit_s = context.limit("breathless-sentence.stretch_s", _STRETCH.value)
    breathing = context.word_set("conjunctions") | context.word_set("subordinators")
    for passage, sentence in context.each_sentence():
        for stretch in _stretches(passage, sentence, breathing):
            seconds = passage.seconds(stretch)
            if seconds is not None and seconds > _NOTED * limit_s and _wordy(passage, stretch):
                message = f"{seconds:.1f} seconds with no place to breathe"
                hint = "end the sentence sooner, or put a comma where the sense allows a breath"
                level: Level = "look" if seconds > limit_s else "note"
                yield Hit(passage.source(stretch), message, hint, level=level)


def _wordy(passage: Passage, stretch: Span) -> bool:
    """Whether it is words that take the time: a long figure or an address is another rule's."""
    readings = passage.readings_in(stretch)
    return max((len(r.said) for r in readings), default=0) < len(stretch) / 2


def _stretches(passage: Passage, sentence: Sentence, breathing: frozenset[str]) -> Iterator[Span]:
    """Pieces of a sentence between marks, or words, at which a reader may breathe."""
    words = sentence.words
    start = 0
    for at in range(1, len(words) + 1):
        between = passage.between(words[at - 1], words[at]) if at < len(words) else "."
        if at == len(words) or _MARK.search(between) or (words[at].key in breathing and at - start > 2):
            yield Span(words[start].span.start, words[at - 1].span.end)
            start = at


RULE = Rule(
    name="breathless-sentence",
    level="look",
    find=find,
    sees="A stretch without a comma, a stop or a joining word that takes this reader longer than a breath lasts.",
    trips="The reader runs out of air, breathes in the middle of a phrase, and the listener hears two broken halves.",
    sources=(
        "Winkworth et al. 1994, JSHR 37:535: in reading, breaths fall almost only at ends of clauses and phrases",
        "Breath groups in reading: 3.06 s (SD 0.62), 17.95 syllables; koreascience.kr JAKO200804748556267",
    ),
    parameters={"stretch_s": _STRETCH},
    fires="The observatory on the northern ridge above the old harbour town will open its newly restored great"
    " western dome to visitors from every school in the whole district next Friday evening.",
    silent="The observatory will open its dome to visitors next Friday, and every school in the district may come.",
)
