"""The order of the work on the versions of one show."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from promptprep.breaking.script import direction_of
from promptprep.errors import MissingLanguageData
from promptprep.model.kit import Kit
from promptprep.model.language import FIRST_CLASS, UNSPACED, base_of
from promptprep.model.ports import Tools
from promptprep.model.rig import Studio
from promptprep.model.script import Script
from promptprep.model.timing import Z80
from promptprep.model.versions import Expected, ReaderFit, Versions
from promptprep.parsing.parse import parse_script
from promptprep.pipeline.scripts import time_one
from promptprep.timing.pace import default_pace
from promptprep.versions.compare import Timed, compared, source_version
from promptprep.versions.findings import Side
from promptprep.versions.fit import reader_fit
from promptprep.versions.kit import Room, kit_of, units_of


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


def versions_of(
    source: Script, others: Sequence[Script], studio: Studio, tools: Tools, kept: Mapping[str, str] | None = None
) -> Versions:
    """All versions of one show beside their source. `kept` are earlier sentences of the source by their digests."""
    first = timed_version(source, None, studio, tools)
    slot = first.timing.slot_s
    rest = [timed_version(script, slot, studio, tools) for script in others]
    there = {base_of(script.language) for script in (source, *others)}
    wanted = [tag for tag in FIRST_CLASS if tag not in there]
    expected = [e for tag in wanted if (e := expected_of(source, first, tag, studio, tools)) is not None]
    return Versions(source_version(first), tuple(compared(first, one, kept) for one in rest), tuple(expected))


def expected_of(source: Script, timed: Timed, language: str, studio: Studio, tools: Tools) -> Expected | None:
    """How long a version may run that there is not yet; None where nobody has published or measured a ratio.

    Characters by the ratio's range, seconds by how fast the language's sample runs in its default pace, the pace's own
    uncertainty added. Fixed times (clips, pauses by cue) stay.
    """
    data = tools.language(language)
    ratio = data.maybe("versions", "from_english")
    room = rate_of(language, None, studio, tools)
    if base_of(source.language) != "en" or ratio is None or room is None:
        return None
    characters = sum(len(paragraph.text) for paragraph in source.paragraphs)
    fixed = timed.timing.timing.fixed_s
    spread = math.exp(Z80 * default_pace(data).common_sd)
    mean, low, high = (characters * ratio[key] / room.characters_per_s for key in ("value", "low", "high"))
    low, high = min(low, mean / spread), max(high, mean * spread)
    return Expected(
        language, fixed + mean, fixed + low, fixed + high, timed.timing.slot_s, f"characters: {ratio['source']}"
    )


def rate_of(language: str, made: Script | None, studio: Studio, tools: Tools) -> Room | None:
    """How fast a language runs: in the version that there is, else in the language's sample; None without either."""
    script, basis = made, "measured on the version that there is"
    if script is None:
        try:
            sample = str(tools.language(language).get("fonts", "sample"))
        except MissingLanguageData:
            return None
        script, basis = parse_script(sample, language=language), "measured on a sample in the default pace"
    timing = time_one(script, studio, tools).timing
    characters = sum(len(paragraph.text) for paragraph in script.paragraphs)
    if timing.spoken_s <= 0:
        return None
    per_s = characters / timing.spoken_s
    words = None if tools.language(language).base in UNSPACED else timing.words / timing.spoken_s
    text = f"Budgets: {per_s:.1f} characters a second, {basis}; a reader may be a fifth faster or slower."
    return Room(per_s, words, text)


def translators_kit(source: Script, language: str, made: Script | None, studio: Studio, tools: Tools) -> Kit:
    """The kit of a script for one language, filled with what its version already says."""
    timing = time_one(source, studio, tools)
    room = rate_of(language, made, studio, tools)
    slots = [(s.timing.fixed_s, s.slot_s) for s in timing.segments]
    sample = made.source if made else str(tools.language(language).maybe("fonts", "sample", ""))
    direction = direction_of(sample, tools.language(language))
    kit = kit_of(source, language, slots, room, units_of(made) if made else None, direction)
    return replace(kit, source_direction=direction_of(source.source, tools.language(source.language)))
