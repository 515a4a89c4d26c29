"""Lines, broken once: what screen copy, stills and report all show."""

from __future__ import annotations

from dataclasses import dataclass

from promptprep.spans import Span


@dataclass(frozen=True, slots=True)
class Column:
    """The measure: a width in pixels of the rig's picture for type of `font_px`, leading `line_px`."""

    width_px: float
    font_px: float
    line_px: float

    @property
    def width_em(self) -> float:
        return self.width_px / self.font_px


@dataclass(frozen=True, slots=True)
class LineRun:
    """A stretch of one line with one look. `say` is shown above it. `language` differs only for foreign runs."""

    text: str
    stress: bool = False
    say: str | None = None


@dataclass(frozen=True, slots=True)
class Line:
    """One planned line. `segment` and `block` index into the script; `span` is its place in the paragraph's text.

    `at_s` is when its first word stands at the lens, `end_s` when its last word has been said. `ends_sentence`
    and `ends_paragraph` say what the line's end is.
    """

    number: int
    segment: int
    block: int
    span: Span
    runs: tuple[LineRun, ...]
    width_em: float
    at_s: float
    end_s: float
    ends_sentence: bool = False
    ends_paragraph: bool = False

    @property
    def text(self) -> str:
        return "".join(run.text for run in self.runs)


@dataclass(frozen=True, slots=True)
class TooWide:
    """A word that is wider than the column: it had to be cut. `span` is its place in its paragraph's text.

    `width_em` is what it needs; type of `column_em / width_em` times the size would hold it in one line.
    """

    segment: int
    block: int
    span: Span
    text: str
    width_em: float
    column_em: float


@dataclass(frozen=True, slots=True)
class BrokenScript:
    """All lines of a script in one column.

    `missing` lists characters that no bundled font has, `too_wide` the words that the column cuts.
    """

    language: str
    direction: str
    column: Column
    lines: tuple[Line, ...]
    missing: tuple[str, ...] = ()
    too_wide: tuple[TooWide, ...] = ()
