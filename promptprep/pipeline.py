"""The order of the work: the only place that names it."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from promptprep.breaking.script import break_script
from promptprep.checking.check import check_script
from promptprep.checking.context import Context
from promptprep.checking.difficulty import paragraph_difficulties
from promptprep.model.language import LanguageData
from promptprep.model.lines import BrokenScript, Column
from promptprep.model.ports import Engines
from promptprep.model.prepared import Prepared, PreparedScript
from promptprep.model.rig import Reader, Rig, Studio
from promptprep.model.script import Script
from promptprep.model.sightline import Sightline
from promptprep.model.spoken import Spoken
from promptprep.model.timing import Pace, ScriptTiming
from promptprep.parsing.lexicon import with_lexicon
from promptprep.sightline.column import column_for
from promptprep.sightline.sightline import sightline
from promptprep.spans import Span
from promptprep.speaking.speak import speak
from promptprep.timing.pace import default_pace, styled
from promptprep.timing.time import time_script

Speak = Callable[[str, Sequence[tuple[Span, str]]], Spoken]


@dataclass(frozen=True)
class Tools:
    """What the pipeline works with: native engines, the data of a language, folders of templates."""

    engines: Engines
    language: Callable[[str], LanguageData]
    templates: tuple[Path, ...] = ()


def speaker(language: str, tools: Tools) -> Speak:
    """The spoken form's function for one language."""
    data = tools.language(language)

    def said(text: str, pronunciations: Sequence[tuple[Span, str]] = ()) -> Spoken:
        return speak(text, data, tools.engines.speller, pronunciations)

    return said


def wording_digest(script: Script) -> str:
    """Twelve hex digits that stand for the words to be said, whatever the markup and line breaks around them."""
    words = "\n".join(" ".join(p.text.split()) for segment in script.segments for p in segment.paragraphs)
    return hashlib.sha256(words.encode("utf-8")).hexdigest()[:12]


def reader_of(script: Script, studio: Studio) -> Reader | None:
    return studio.readers.get(script.reader) if script.reader else None


def rig_of(script: Script, studio: Studio, fallback: Rig) -> Rig:
    """The script's rig, else its reader's, else the studio's first, else `fallback`."""
    reader = reader_of(script, studio)
    for wanted in (script.rig, reader.rig if reader else None):
        if wanted and wanted in studio.rigs:
            return studio.rigs[wanted]
    return next(iter(studio.rigs.values()), fallback)


def pace_of(script: Script, studio: Studio, data: LanguageData) -> Pace:
    """The reader's own pace where one was learned, else the language's default, in the reader's style."""
    reader = reader_of(script, studio)
    base = script.language.split("-")[0]
    known = None if reader is None else reader.paces.get(script.language) or reader.paces.get(base)
    style = script.front.get("style") or (reader.style if reader else None)
    return styled(known or default_pace(data), style, data) if style else known or default_pace(data)


def time_one(script: Script, studio: Studio, tools: Tools) -> ScriptTiming:
    """The running time of a script as the studio's reader would say it."""
    data = tools.language(script.language)
    return time_script(script, data, pace_of(script, studio, data), tools.engines, speaker(script.language, tools))
