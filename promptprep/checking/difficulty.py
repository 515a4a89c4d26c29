"""How hard copy is to read aloud: one number, 0 easy to 100 hard.

Every sentence has a load, in points:

- words: for each word that is said (figures and abbreviations by their words), how far it is rarer than the
  everyday ones: 6.5 minus its Zipf value, at least 0, at most 4.5. A long sentence of rare words is heavy, a long
  one of small words light.
- structure: 1 for each word that opens a clause, 0.5 for each mark inside the sentence, 2 for each passive.
- breath: 0.1 for each syllable beyond the 27th between two places to breathe (one-breath sentences reach 27
  syllables on average: Whalen and Kinsella-Shaw 1997).
- sounds: 1.5 for each place where neighbouring words tangle.

A passage's load is the quadratic mean of its sentences' (the hard ones count for more, and more copy is not harder
copy). Difficulty is 100 * (1 - exp(-load / 45)).

The weights were reasoned, then tried on 119 pairs of one news story in an advanced and an elementary version
(tests/bench/data/graded_en.tsv: OneStopEnglish, Vajjala and Lucic 2018): 87 % of the pairs in the right order, where
the Flesch-Kincaid grade has 79 %. With the words' load alone, any bend from 5.5 to 6.75 gives 85 to 87 %; nothing was
tuned finer than that. `python -m tests.bench.difficulty` shows it.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.rules.patterned import compiled
from promptprep.checking.sounds import tangles
from promptprep.checking.words import Sentence
from promptprep.model.language import LanguageData
from promptprep.model.ports import Engines
from promptprep.model.script import Paragraph, Run, Script, Segment
from promptprep.model.spoken import Spoken
from promptprep.spans import Span

EVERYDAY_ZIPF = 6.5
MOST_A_WORD = 4.5
CLAUSE, MARK, PASSIVE, TANGLE, SYLLABLE_OVER = 1.0, 0.5, 2.0, 1.5, 0.1
BREATH_SYLLABLES = 27
SCALE = 45.0
_MARK = re.compile(r"[,;:()–—…\"“”«»،؛、；：（）]|\s-\s")
_WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*")
_STEM = 2  # letters of an unlisted word that may be an ending (Korean particles, Swahili has no list at all)


def passage_difficulty(text: str, spoken: Spoken, language: LanguageData, engines: Engines) -> float:
    """Difficulty of a text by itself; an empty one has 0. Raises `UnknownLanguage` where nothing can say it."""
    run = Run(text, Span(0, len(text)))
    segment = Segment("text", "", (Paragraph((run,), Span(0, len(text))),), Span(0, len(text)))
    script = Script("text", language.tag, text, (), (segment,))
    found = difficulties(Context(script, language, engines, {(0, 0): spoken}))
    return found.get((0, 0), 0.0)


def difficulties(context: Context) -> dict[tuple[int, int], float]:
    """Difficulty of each paragraph that is said, by (segment, block)."""
    return {(p.segment, p.block): _difficulty(context, p) for p in context.passages}


def _difficulty(context: Context, passage: Passage) -> float:
    loads = [_load(context, passage, sentence) for sentence in passage.sentences if sentence.words]
    if not loads:
        return 0.0
    load = math.sqrt(math.fsum(x * x for x in loads) / len(loads))
    return 100.0 * (1.0 - math.exp(-load / SCALE))


def _load(context: Context, passage: Passage, sentence: Sentence) -> float:
    clauses = sum(word.key in context.word_set("subordinators") for word in sentence.words)
    passives = compiled(context.listed("passive_forms"))
    return math.fsum(
        (
            math.fsum(_word_load(context, word) for word in _said(passage, sentence)),
            CLAUSE * clauses,
            MARK * len(_MARK.findall(sentence.text)),
            PASSIVE * (len(passives.findall(sentence.text)) if passives else 0),
            TANGLE * sum(1 for _ in tangles(context, sentence.words)),
            SYLLABLE_OVER * _over_breath(context, passage, sentence),
        )
    )


def _said(passage: Passage, sentence: Sentence) -> Iterator[str]:
    """The words that are said: those of a reading in place of what it reads, once."""
    done = None
    for word in sentence.words:
        reading = passage.reading_at(word.span.start)
        if reading is None:
            yield word.key
        elif reading is not done:
            done = reading
            yield from (m[0].lower() for m in _WORD.finditer(reading.said))


def _word_load(context: Context, word: str) -> float:
    zipf = context.zipf(word)
    if zipf is None:
        zipf = _by_length(context, word)
    elif zipf == 0 and len(word) > _STEM:
        zipf = max(context.zipf(word[:-cut]) or 0.0 for cut in range(1, _STEM + 1) if len(word) > cut)
    return min(max(EVERYDAY_ZIPF - zipf, 0.0), MOST_A_WORD)


def _by_length(context: Context, word: str) -> float:
    """A stand-in where a language has no word list (Swahili): common words are short.

    In running English, Spanish, Russian and Portuguese copy the Zipf value falls by 0.38 to 0.47 a phoneme from 7.4
    to 7.9 (r = -0.68 to -0.80; measured on tests/bench/data/good and the demo).
    """
    ((phones, _),) = context.engines.phonemes.counts([word], context.language.tag)
    return 7.6 - 0.45 * phones


def _over_breath(context: Context, passage: Passage, sentence: Sentence) -> int:
    counts = context.engines.phonemes.counts([word.key for word in sentence.words], context.language.tag)
    over = run = 0
    for at, (_, syllables) in enumerate(counts):
        run += syllables
        if at + 1 == len(counts) or _MARK.search(passage.between(sentence.words[at], sentence.words[at + 1])):
            over += max(run - BREATH_SYLLABLES, 0)
            run = 0
    return over
