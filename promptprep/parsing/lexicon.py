"""Puts a studio's pronunciations into a script, as if they had been written at the words."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

from promptprep.model.script import Block, Paragraph, Run, Script
from promptprep.parsing.inline import is_unspaced
from promptprep.spans import Span


def with_lexicon(script: Script, lexicon: Mapping[str, str]) -> Script:
    """The script with `say` set on each run that a lexicon entry names. What the copy itself says goes first.

    `lexicon` maps a word or phrase to how it is said. Whole words only (in scripts with spaces), capitals as
    written; the longest entry wins.
    """
    if not lexicon:
        return script
    longest_first = sorted(lexicon, key=len, reverse=True)
    pattern = re.compile("|".join(_whole(word) for word in longest_first if word))
    segments = tuple(
        replace(segment, blocks=tuple(_block(block, pattern, lexicon) for block in segment.blocks))
        for segment in script.segments
    )
    return replace(script, segments=segments)


def _whole(word: str) -> str:
    """The word's pattern: whole words only, where its script has spaces between words."""
    before = "" if is_unspaced(word[0]) else r"(?<!\w)"
    after = "" if is_unspaced(word[-1]) else r"(?!\w)"
    return before + re.escape(word) + after


def _block(block: Block, pattern: re.Pattern[str], lexicon: Mapping[str, str]) -> Block:
    if not isinstance(block, Paragraph):
        return block
    runs = tuple(piece for run in block.runs for piece in _pieces(run, pattern, lexicon))
    return replace(block, runs=runs)


def _pieces(run: Run, pattern: re.Pattern[str], lexicon: Mapping[str, str]) -> Iterator[Run]:
    if run.say is not None or len(run.text) != len(run.span):
        yield run
        return
    at = 0
    for found in pattern.finditer(run.text):
        if found.start() > at:
            yield _cut(run, at, found.start())
        yield replace(_cut(run, found.start(), found.end()), say=lexicon[found[0]])
        at = found.end()
    if at < len(run.text):
        yield _cut(run, at, len(run.text))


def _cut(run: Run, start: int, end: int) -> Run:
    return replace(run, text=run.text[start:end], span=Span(run.span.start + start, run.span.start + end))
