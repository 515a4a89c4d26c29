"""What is said: the written text with its numbers, signs and abbreviations put into words."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from promptprep.spans import Span


@dataclass(frozen=True, slots=True)
class Reading:
    """A stretch of written text that is said otherwise than it is spelled.

    `said` is "" where it is silent (emoji). `kind` names its class: cardinal ordinal decimal fraction year
    date clock money percent measure range score roman telephone serial abbreviation initialism url email
    hashtag symbol emoji say. `otherwise` holds other sayings that are nearly as likely: `checking` tells
    the user when it is not empty.
    """

    span: Span
    said: str
    kind: str
    otherwise: tuple[str, ...] = ()


class SpokenWord(NamedTuple):
    """One written word (or one reading) with what is said for it. `span` is its place in the written text."""

    span: Span
    said: str
    kind: str = "word"


@dataclass(frozen=True, slots=True)
class Spoken:
    """A text's spoken form. `text` is what is said in one piece; `words` keep the place of each in `written`."""

    written: str
    text: str
    language: str
    words: tuple[SpokenWord, ...]
    readings: tuple[Reading, ...] = ()


Speak = Callable[[str, Sequence[tuple[Span, str]]], Spoken]
"""Gives a text's spoken form; the pairs are places in it with their pronunciations, in order."""
