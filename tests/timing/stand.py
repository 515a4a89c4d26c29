"""What the tests of timing stand on: real engines, real data, the real spoken form."""

from __future__ import annotations

from collections.abc import Sequence

from promptprep.engines.load import engines
from promptprep.model.language import LanguageData
from promptprep.model.spoken import Speak, Spoken
from promptprep.model.timing import Pace, Timing
from promptprep.spans import Span
from promptprep.speaking.speak import speak
from promptprep.store.languages import language_data
from promptprep.timing.measure import Measured, measure
from promptprep.timing.pace import default_pace
from promptprep.timing.time import time_text

EN = language_data("en")


def speaker(data: LanguageData) -> Speak:
    def said(text: str, pronunciations: Sequence[tuple[Span, str]] = ()) -> Spoken:
        return speak(text, data, engines().speller, pronunciations)

    return said


def timed(text: str, tag: str = "en", pace: Pace | None = None) -> Timing:
    data = language_data(tag)
    return time_text(text, data, pace or default_pace(data), engines(), speaker(data))


def measured(text: str, tag: str = "en") -> Measured:
    data = language_data(tag)
    return measure(speaker(data)(text, ()), data, engines())
