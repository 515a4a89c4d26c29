"""The order of the work on the versions of one show."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from promptprep.breaking.script import direction_of
from promptprep.model.ports import Tools
from promptprep.model.rig import Studio
from promptprep.model.script import Script
from promptprep.model.versions import ReaderFit, Versions
from promptprep.pipeline import time_one
from promptprep.versions.compare import Timed, compared, source_version
from promptprep.versions.findings import Side
from promptprep.versions.fit import reader_fit


def timed_version(script: Script, slot_s: float | None, studio: Studio, tools: Tools) -> Timed:
    """A version with its time, and how each reader of the studio who reads its language would take it."""
    data = tools.language(script.language)
    timing = time_one(script, studio, tools)
    slot = slot_s if slot_s is not None else timing.slot_s
    readers: list[ReaderFit] = []
    for name, reader in studio.readers.items():
        own = bool({script.language, data.base} & set(reader.paces))
        if not (own or {script.language, data.base} & set(reader.languages)):
            continue
        theirs = timing if name == script.reader else time_one(replace(script, reader=name), studio, tools)
        readers.append(reader_fit(name, theirs, slot, own))
    direction = direction_of(script.source, data)
    return Timed(Side(script, data, tools.engines), timing, tuple(readers), direction)


def versions_of(source: Script, others: Sequence[Script], studio: Studio, tools: Tools) -> Versions:
    """All versions of one show beside their source."""
    first = timed_version(source, None, studio, tools)
    slot = first.timing.slot_s
    rest = [timed_version(script, slot, studio, tools) for script in others]
    return Versions(source_version(first), tuple(compared(first, one) for one in rest))
