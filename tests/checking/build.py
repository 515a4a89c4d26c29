"""Contexts for the rules' tests: real parsing, real spoken forms, real timing, this machine's engines."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

from promptprep.checking.check import check_script
from promptprep.checking.context import Context
from promptprep.engines.load import engines
from promptprep.model.finding import Finding
from promptprep.model.rig import Studio
from promptprep.model.script import Paragraph, Script
from promptprep.model.timing import ScriptTiming
from promptprep.parsing.parse import parse_script
from promptprep.speaking.speak import speak
from promptprep.store.languages import language_data
from promptprep.timing.pace import default_pace
from promptprep.timing.time import time_script

ROOT = Path(__file__).parent.parent.parent


def context_for(source: str, language: str, studio: Studio | None = None, **more: Any) -> Context:
    """The context of a script's source, as the pipeline would make it without a rig."""
    script = parse_script(source, language=language)
    return context_of(script, studio or Studio(), **more)


def context_of(script: Script, studio: Studio, **more: Any) -> Context:
    data, tools = language_data(script.language), engines()
    spoken = {
        (s, b): speak(block.text, data, tools.speller, list(block.said()))
        for s, segment in enumerate(script.segments)
        for b, block in enumerate(segment.blocks)
        if isinstance(block, Paragraph)
    }
    return replace(Context(script, data, tools, spoken, timed(script), studio), **more)


def timed(script: Script) -> ScriptTiming:
    data, tools = language_data(script.language), engines()

    def said(text: str, pronunciations: Any = ()) -> Any:
        return speak(text, data, tools.speller, pronunciations)

    return time_script(script, data, default_pace(data), tools, said)


def found(source: str, language: str, studio: Studio | None = None, **more: Any) -> list[Finding]:
    return check_script(context_for(source, language, studio, **more))


@lru_cache(maxsize=4096)
def names(source: str, language: str) -> frozenset[str]:
    """Names of the rules that fire on a source."""
    return frozenset(finding.name for finding in found(source, language))
