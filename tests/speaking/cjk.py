"""What the tests of Japanese, Chinese and Korean share."""

from __future__ import annotations

from promptprep.engines.spelling import IcuSpeller
from promptprep.model.spoken import Reading
from promptprep.speaking.speak import speak
from promptprep.store.languages import language_data

SPELLER = IcuSpeller()


def said(text: str, tag: str) -> str:
    return speak(text, language_data(tag), SPELLER).text


def readings(text: str, tag: str) -> tuple[Reading, ...]:
    return speak(text, language_data(tag), SPELLER).readings
