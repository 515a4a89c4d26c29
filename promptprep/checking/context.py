"""What the rules look at: a script with all that the steps before have found out about it."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from itertools import accumulate

from promptprep.checking.pasted import Pasted, pasted
from promptprep.checking.words import Sentence, Token, sentences, tokens
from promptprep.model.language import LanguageData
from promptprep.model.lines import BrokenScript, Line
from promptprep.model.ports import Engines, Word
from promptprep.model.rig import Reader, Studio
from promptprep.model.script import Paragraph, Script
from promptprep.model.sightline import Sightline
from promptprep.model.spoken import Reading, Spoken
from promptprep.model.timing import BlockTiming, ScriptTiming
from promptprep.spans import Span


@dataclass(frozen=True)
class Passage:
    """A paragraph of copy with its spoken form and its place: `segment` and `block` index into the script."""

    segment: int
    block: int
    paragraph: Paragraph
    text: str
    spoken: Spoken
    words: tuple[Token, ...]
    sentences: tuple[Sentence, ...]
    timing: BlockTiming | None = None

    def source(self, span: Span) -> Span:
        """The place in the source of a stretch of the passage's text."""
        runs = self.paragraph.runs
        if not runs or span.end > len(self.text):
            return self.paragraph.source_span(span)
        first = self._source_offset(span.start)
        if span.end <= span.start:
            return Span(first, first)
        at = bisect_left(self._run_ends, span.end)
        run, begin = runs[at], self._run_ends[at] - len(runs[at].text)
        whole = len(run.text) != len(run.span)
        return Span(first, run.span.end if whole else run.span.start + span.end - begin)

    def between(self, one: Token, two: Token) -> str:
        """What stands between two words of the text."""
        return self.text[one.span.end : two.span.start]

    def plain(self, span: Span) -> bool:
        """Whether the stretch stands in the source letter for letter, so that it may be replaced there."""
        return len(self.source(span)) == len(span)

    def reading_at(self, offset: int) -> Reading | None:
        """The reading (number, sign, abbreviation, pronunciation) that covers a character of the text."""
        at = bisect_right(self._reading_starts, offset) - 1
        reading = self.spoken.readings[at] if at >= 0 else None
        return reading if reading is not None and offset < reading.span.end else None

    def readings_in(self, span: Span) -> tuple[Reading, ...]:
        """The readings that begin in a stretch of the text."""
        starts = self._reading_starts
        return self.spoken.readings[bisect_left(starts, span.start) : bisect_left(starts, span.end)]

    def has_say(self, span: Span) -> bool:
        """Whether the copy gives a pronunciation for part of the stretch."""
        at = bisect_left(self._said_ends, span.start + 1)
        return at < len(self._said) and self._said[at].overlaps(span)

    def seconds(self, span: Span) -> float | None:
        """How long the reader speaks and pauses from the first to the last word of the stretch."""
        timed = self.timing.words if self.timing else ()
        first = bisect_left(self._word_ends, span.start + 1)
        last = bisect_left(self._word_starts, span.end) - 1
        return timed[last].end_s - timed[first].start_s if 0 <= first <= last < len(timed) else None

    def _source_offset(self, offset: int) -> int:
        at = bisect_right(self._run_ends, offset)
        if at == len(self._run_ends):
            return self.paragraph.runs[-1].span.end
        run, begin = self.paragraph.runs[at], self._run_ends[at] - len(self.paragraph.runs[at].text)
        return run.span.start + (offset - begin if len(run.text) == len(run.span) else 0)

    @cached_property
    def _run_ends(self) -> list[int]:
        """Where each run ends in the text: a paragraph of many runs is asked for many places."""
        return list(accumulate(len(run.text) for run in self.paragraph.runs))

    @cached_property
    def _reading_starts(self) -> list[int]:
        return [reading.span.start for reading in self.spoken.readings]

    @cached_property
    def _said(self) -> list[Span]:
        return [span for span, _ in self.paragraph.said()]

    @cached_property
    def _said_ends(self) -> list[int]:
        return [span.end for span in self._said]

    @cached_property
    def _word_starts(self) -> list[int]:
        return [word.span.start for word in self.timing.words] if self.timing else []

    @cached_property
    def _word_ends(self) -> list[int]:
        return [word.span.end for word in self.timing.words] if self.timing else []


@dataclass(frozen=True)
class Context:
    """One script to be checked. `spoken` is keyed by (segment, block); what is shared by rules is made once.

    `timing` may be None (a text alone): rules that need a pace then find nothing. So may `broken` and
    `sightline` (no rig).
    """

    script: Script
    language: LanguageData
    engines: Engines
    spoken: Mapping[tuple[int, int], Spoken]
    timing: ScriptTiming | None = None
    studio: Studio = field(default_factory=Studio)
    reader: Reader | None = None
    broken: BrokenScript | None = None
    sightline: Sightline | None = None

    @property
    def base(self) -> str:
        return self.language.base

    @cached_property
    def passages(self) -> tuple[Passage, ...]:
        """Every paragraph that is said, in order."""
        return tuple(self._passages())

    def _passages(self) -> Iterator[Passage]:
        for number, segment in enumerate(self.script.segments):
            for index, block in enumerate(segment.blocks):
                if isinstance(block, Paragraph) and block.text.strip():
                    yield self._passage(number, index, block)

    def _passage(self, number: int, index: int, paragraph: Paragraph) -> Passage:
        text, tag, breaks = paragraph.text, self.language.tag, self.engines.breaks
        spoken = self.spoken.get((number, index)) or Spoken(text, text, tag, ())
        words = tokens(text, tag, breaks)
        return Passage(
            number, index, paragraph, text, spoken, words,
            sentences(text, tag, breaks, words), self._block_timings.get((number, index)),
        )  # fmt: skip

    @cached_property
    def _block_timings(self) -> dict[tuple[int, int], BlockTiming]:
        timed = self.timing.segments if self.timing else ()
        return {(number, block.block): block for number, segment in enumerate(timed) for block in segment.blocks}

    def each_sentence(self) -> Iterator[tuple[Passage, Sentence]]:
        for passage in self.passages:
            for sentence in passage.sentences:
                yield passage, sentence

    @cached_property
    def phones(self) -> Mapping[str, tuple[str, ...]]:
        """Phonemes of each different word of the copy, by its folded form."""
        return self.phones_of(sorted({word.key for passage in self.passages for word in passage.words}))

    def phones_of(self, words: list[str]) -> Mapping[str, tuple[str, ...]]:
        """Phonemes by word. Japanese goes by its readings in kana: spelling does not tell its sounds."""
        said = [self._kana(word) for word in words] if self.base == "ja" else words
        return dict(zip(words, self.engines.phonemes.phones(said, self.language.tag), strict=True))

    def _kana(self, word: str) -> str:
        return "".join(kana or surface for surface, kana, _ in self.engines.kana.kana(word))

    @cached_property
    def pasted(self) -> tuple[Pasted, ...]:
        """Code, tags and tables in the copy."""
        return pasted(self.script)

    @cached_property
    def parsed(self) -> Mapping[tuple[int, int], tuple[Word, ...]] | None:
        """Sentence structure of each passage by (segment, block), where a trained pipeline is at hand."""
        parses = self.engines.structure.parse([p.text for p in self.passages], self.language.tag)
        if parses is None:
            return None
        return {(p.segment, p.block): words for p, words in zip(self.passages, parses, strict=True)}

    def parsed_words(self, passage: Passage) -> tuple[Word, ...]:
        """The parsed words of one passage; none without a pipeline."""
        return (self.parsed or {}).get((passage.segment, passage.block), ())

    def passage_of(self, line: Line) -> Passage | None:
        """The passage that a planned line is of."""
        return self._by_place.get((line.segment, line.block))

    @cached_property
    def _by_place(self) -> dict[tuple[int, int], Passage]:
        return {(passage.segment, passage.block): passage for passage in self.passages}

    def front_place(self, key: str) -> Span:
        """Where a key of the front matter stands in the source; the first character where it stands nowhere."""
        source = self.script.source
        end = self.script.segments[0].span.start if self.script.segments else len(source)
        found = re.compile(rf"^{key}\s*=.*$", re.MULTILINE).search(source, 0, end)
        return Span(*found.span()) if found else Span(0, min(1, len(source)))

    def zipf(self, word: str) -> float | None:
        return self.engines.frequency.zipf(word, self.language.tag)

    def limit(self, name: str, default: float) -> float:
        """A figure of a rule: the studio's own where `studio.toml` sets one, else the rule's."""
        return float(self.studio.limits.get(name, default))

    def listed(self, key: str) -> tuple[str, ...]:
        """A word list of the language's faults table; empty where the language has no such thing."""
        return tuple(self.language.maybe("faults", key, ()))

    @cached_property
    def _sets(self) -> dict[str, frozenset[str]]:
        return {}

    def word_set(self, key: str) -> frozenset[str]:
        """The same, to be asked about single words."""
        if key not in self._sets:
            self._sets[key] = frozenset(self.listed(key))
        return self._sets[key]
