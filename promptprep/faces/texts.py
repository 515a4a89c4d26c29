"""Faces that take a text: what is said, how long it takes, its lines, its faults, its difficulty."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from promptprep.engines.load import engines
from promptprep.errors import BadCall
from promptprep.faces.tools import check_texts, known_language, tools
from promptprep.model.finding import Finding
from promptprep.model.timing import Pace, Timing
from promptprep.pipeline.scripts import speaker


def spoken_form(text: str, language: str) -> str:
    """What is said: "$3.5m" -> "three point five million dollars".

    `language` is a BCP 47 tag. What is not understood passes through. Raises `UnknownLanguage`.
    """
    check_texts(text, language)
    return speaker(language, tools())(text, ()).text


def time_text(text: str, language: str, pace: Pace | None = None) -> Timing:
    """Predicted seconds to read `text` aloud: `.mean_s`, and `.low_s` to `.high_s` holding 80 % of readings.

    Without `pace` a reader whom nobody has timed. An empty text takes 0 s. Raises `UnknownLanguage`, `BadCall`.
    """
    check_texts(text, language)
    if not isinstance(pace, Pace | None):
        raise BadCall("not-a-pace", f"{pace!r} is no pace", "give what learn_pace has learned")
    from promptprep.timing.pace import default_pace
    from promptprep.timing.time import time_text as timed

    data = known_language(language)
    return timed(text, data, pace or default_pace(data), engines(), speaker(language, tools()))


def learn_pace(samples: Iterable[tuple[str, float]], language: str) -> Pace:
    """A reader's pace from timed readings: pairs of (text as read, seconds from first to last word).

    Few samples move the default only a little. Raises `BadCall` for a length that nobody reads in.
    """
    from promptprep.timing.pace import learn

    check_texts(language)
    return learn(_pairs(samples), known_language(language), engines(), speaker(language, tools()))


def _pairs(samples: object) -> list[tuple[str, float]]:
    """Samples that are pairs of a text and something else. Raises `BadCall`."""
    hint = "give pairs of a text as it was read and its seconds"
    if not isinstance(samples, Iterable):
        raise BadCall("bad-sample", f"{samples!r} holds no timed readings", hint)
    pairs = list(samples)
    for number, pair in enumerate(pairs, 1):
        if not (isinstance(pair, Sequence) and len(pair) == 2 and isinstance(pair[0], str)):
            raise BadCall("bad-sample", f"timed reading {number} is no pair of a text and seconds", hint)
    return pairs


def break_text(text: str, language: str, width_em: float) -> list[str]:
    """Lines no wider than `width_em` (ems of the bundled font), broken at sense groups.

    Joined without white space they are the text. An empty line parts paragraphs; a single line feed is a blank.
    A word wider than the column is cut. Raises `BadGeometry` unless the width is positive and finite.
    """
    check_texts(text, language)
    from promptprep.breaking.text import break_plain_text

    return break_plain_text(text, width_em, known_language(language), engines())


def check_text(text: str, language: str) -> list[Finding]:
    """Findings in a script's text; `start` and `end` are offsets in `text`. Raises `UnknownLanguage`."""
    check_texts(text, language)
    from promptprep.parsing.parse import parse_script
    from promptprep.pipeline.scripts import check_copy

    return check_copy(parse_script(text, language=language), tools())


def difficulty(text: str, language: str) -> float:
    """How hard a passage is to read aloud, 0 easy to 100 hard. An empty text is 0. Raises `UnknownLanguage`."""
    check_texts(text, language)
    from promptprep.pipeline.scripts import difficulty_of

    return difficulty_of(text, language, tools())
