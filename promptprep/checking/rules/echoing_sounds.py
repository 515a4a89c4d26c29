"""A rhyme or an alliteration that sounds unmeant."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator, Sequence

from promptprep.checking.context import Context, Passage
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.checking.sounds import Shape, shape
from promptprep.checking.words import Sentence, Token
from promptprep.spans import Span

_ROW = Parameter(4, "words in a row with the same first sound", "common practice, no source")
_END = re.compile(r"[,;:.!?…،؛؟。、，！？]")
_RHYMING = ("de", "en", "fr", "ru")  # where endings of words are many: a rhyme elsewhere is an accident of grammar
_PHRASE_WORDS = 9


def find(context: Context) -> Iterator[Hit]:
    row = int(context.limit("echoing-sounds.row", _ROW.value))
    weak = 1 if context.base == "zh" else 2  # a Chinese syllable of two sounds is a word
    for passage, sentence in context.each_sentence():
        shapes = [shape(context.phones.get(word.key, ())) for word in sentence.words]
        for span in _alliterations(sentence.words, shapes, row, weak):
            message = f"{row} words and more begin with the same sound"
            yield Hit(passage.source(span), message, "if it is not meant, change one of them")
        if context.base in _RHYMING:
            for span in _rhymes(passage, sentence, shapes):
                yield Hit(
                    passage.source(span), "two phrases end on a rhyme", "if it is not meant, change one of the ends"
                )


def _alliterations(words: Sequence[Token], shapes: Sequence[Shape], most: int, weak: int) -> Iterator[Span]:
    """Rows of words with the same first consonant; short words without one are passed over."""
    run: list[int] = []
    for i, one in enumerate(shapes):
        if len(one.phones) <= weak:
            continue
        if run and one.onset[:1] != shapes[run[-1]].onset[:1]:
            yield from _row(words, run, most)
            run = []
        if one.onset:
            run.append(i)
    yield from _row(words, run, most)


def _row(words: Sequence[Token], run: Sequence[int], most: int) -> Iterator[Span]:
    if len({words[i].key for i in run}) >= most and run[-1] - run[0] <= 2 * most:
        yield Span(words[run[0]].span.start, words[run[-1]].span.end)


def _rhymes(passage: Passage, sentence: Sentence, shapes: Sequence[Shape]) -> Iterator[Span]:
    ends = [i for i in range(len(sentence.words)) if _ends_phrase(passage, sentence, i)]
    for one, two in itertools.pairwise(ends):
        a, b = sentence.words[one], sentence.words[two]
        if 3 <= two - one <= _PHRASE_WORDS and a.key != b.key and _rhyme(shapes[one], shapes[two]):
            yield Span(a.span.start, b.span.end)


def _ends_phrase(passage: Passage, sentence: Sentence, at: int) -> bool:
    if at + 1 == len(sentence.words):
        return True
    return _END.search(passage.between(sentence.words[at], sentence.words[at + 1])) is not None


def _rhyme(one: Shape, two: Shape) -> bool:
    """The same from the last vowel on, at least a vowel and a consonant, with other sounds before it."""
    tail = len(one.coda) + 1
    if not one.coda or len(one.phones) <= tail or len(two.phones) <= tail:
        return False
    return one.phones[-tail:] == two.phones[-tail:] and one.phones[-tail - 1] != two.phones[-tail - 1]


RULE = Rule(
    name="echoing-sounds",
    level="note",
    find=find,
    sees="Four words in a row with the same first sound, or two short phrases that end on a rhyme.",
    trips="An echo that nobody meant makes a listener hear the sound instead of the sense.",
    sources=("common practice, no source", "phonemes: eSpeak NG"),
    parameters={"row": _ROW},
    fires="The probe came down without a sound, and came to rest upon the ground.",
    silent="The probe came down without a sound, and rested on the dust.",
)
