"""Words whose sounds get in each other's way."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import Hit, Rule
from promptprep.checking.sounds import Kind, tangles
from promptprep.model.finding import Level
from promptprep.spans import Span

_MESSAGES: dict[Kind, str] = {
    "onsets": "these words begin with sounds that swap places easily",
    "hiss": "hissing sounds of two kinds crowd together",
    "cluster": "a knot of consonants where two words meet",
    "alike": "four words in a row are built of the same sounds",
    "near-repeat": "two words that are almost the same to the tongue",
}
_LEVELS: dict[Kind, Level] = {
    "onsets": "look",
    "hiss": "look",
    "cluster": "note",
    "near-repeat": "note",
    "alike": "look",
}


def find(context: Context) -> Iterator[Hit]:
    for passage, sentence in context.each_sentence():
        for tangle in tangles(context, sentence.words):
            span = Span(sentence.words[tangle.first].span.start, sentence.words[tangle.last].span.end)
            hint = "say it aloud three times; if it trips, change one of the words"
            yield Hit(passage.source(span), _MESSAGES[tangle.kind], hint, level=_LEVELS[tangle.kind])


RULE = Rule(
    name="tangled-sounds",
    level="look",
    find=find,
    sees="Neighbouring words with alternating onsets, crowded hisses, a knot of consonants or nearly the same sounds.",
    trips="The tongue prepares the next sound while it makes this one; when two are close it makes the wrong one.",
    sources=(
        "Wilshire 1999, Language and Speech 42:57: alternating similar onsets make tongue-twisters (from memory)",
        "phonemes: eSpeak NG",
    ),
    fires="She sees six shiny sea shells, as she should.",
    silent="She finds a few old shells.",
)
