"""The order of the work for scripts: timed, seen on their rig, broken into lines, checked."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Sequence

from promptprep.breaking.script import break_script
from promptprep.checking.check import check_script
from promptprep.checking.context import Context
from promptprep.checking.difficulty import difficulties, passage_difficulty
from promptprep.model.finding import Finding
from promptprep.model.language import UNSPACED, LanguageData
from promptprep.model.lines import BrokenScript
from promptprep.model.ports import Tools
from promptprep.model.prepared import Prepared, PreparedScript
from promptprep.model.rig import Reader, Rig, Studio
from promptprep.model.script import Paragraph, Script
from promptprep.model.sightline import Sightline, TypeFigures
from promptprep.model.spoken import Speak, Spoken
from promptprep.model.timing import Pace, ScriptTiming
from promptprep.parsing.parse import parse_script
from promptprep.sightline.build import rig_from
from promptprep.sightline.column import column_for
from promptprep.sightline.sightline import sightline
from promptprep.spans import Span
from promptprep.speaking.speak import speak
from promptprep.timing.pace import default_pace, styled
from promptprep.timing.time import time_script

_ADDRESS = re.compile(r"[/@]|\w\.\w")

# A desk for those who have not described their studio: 24-inch screen under the lens at 2 m (invented, and said so).
FALLBACK_RIG = rig_from(
    "unnamed",
    {"title": "No rig named: a 24-inch screen at 2 m", "diagonal": "24 in", "pixels": "1920x1080", "lies": "direct",
     "eye_to_screen": "2 m"},
)  # fmt: skip


def speaker(language: str, tools: Tools) -> Speak:
    """The spoken form's function for one language."""
    data = tools.language(language)

    def said(text: str, pronunciations: Sequence[tuple[Span, str]] = ()) -> Spoken:
        return speak(text, data, tools.engines.speller, pronunciations)

    return said


def wording_digest(script: Script) -> str:
    """Twelve hex digits that stand for the words to be said, whatever the markup and line breaks around them."""
    words = "\n".join(" ".join(paragraph.text.split()) for paragraph in script.paragraphs)
    return hashlib.sha256(words.encode("utf-8", "surrogatepass")).hexdigest()[:12]


# -- who reads, from what, how fast -------------------------------------------------------------------------


def reader_of(script: Script, studio: Studio) -> Reader | None:
    return studio.readers.get(script.reader) if script.reader else None


def rig_of(script: Script, studio: Studio) -> Rig:
    """The script's rig, else its reader's, else the studio's first, else a stated stand-in."""
    reader = reader_of(script, studio)
    for wanted in (script.rig, reader.rig if reader else None):
        if wanted and wanted in studio.rigs:
            return studio.rigs[wanted]
    return next(iter(studio.rigs.values()), FALLBACK_RIG)


def pace_of(script: Script, studio: Studio, data: LanguageData) -> Pace:
    """The reader's own pace where one was learned, else the language's default, in the style that is asked for."""
    reader = reader_of(script, studio)
    known = None if reader is None else reader.paces.get(script.language) or reader.paces.get(data.base)
    pace = known or default_pace(data)
    style = script.front.get("style") or (reader.style if reader else None)
    return styled(pace, style, data) if style else pace


# -- one script ---------------------------------------------------------------------------------------------


def time_one(script: Script, studio: Studio, tools: Tools) -> ScriptTiming:
    """The running time of a script as the studio's reader would say it."""
    data = tools.language(script.language)
    return time_script(script, data, pace_of(script, studio, data), tools.engines, speaker(script.language, tools))


def type_figures(script: Script, timing: ScriptTiming, tools: Tools) -> TypeFigures:
    """Measured on the script's own copy, or on the language's sample where there is none.

    Addresses are left out of the widest word: they are a finding, and no column should grow for them. Languages
    without spaces have none: any character may end their lines. Raises `MissingLanguageData` without a sample.
    """
    data = tools.language(script.language)
    copy = " ".join(paragraph.text for paragraph in script.paragraphs).strip()
    text = copy or str(data.get("fonts", "sample"))
    words = text.split()
    different = sorted(set(words))
    widths = dict(zip(different, tools.engines.shaper.widths_em(different, script.language), strict=True))
    space_em = tools.engines.shaper.widths_em([" "], script.language)[0]
    width = sum(widths[word] for word in words) + (len(words) - 1) * space_em
    spaced = data.base not in UNSPACED
    cap_em, x_em = tools.fonts.heights_em(script.language)
    return TypeFigures(
        cap_em=cap_em,
        x_em=x_em,
        advance_em=width / len(text),
        seconds_per_character=timing.timing.spoken_s / len(text),
        characters_per_word=(len(text) + 1) / len(words) if spaced else None,
        longest_word_em=max((w for word, w in widths.items() if spaced and not _ADDRESS.search(word)), default=0.0),
    )


def sightline_of(
    rig: Rig, reader: Reader | None, script: Script, timing: ScriptTiming, studio: Studio, tools: Tools
) -> Sightline:
    """A rig's sightline for a script's copy: in the rig's own column, or in the advised one."""
    figures, limits = type_figures(script, timing, tools), tools.limits(studio)
    return sightline(rig, column_for(rig, reader, figures, limits), reader, figures, limits)


def spoken_forms(script: Script, tools: Tools) -> dict[tuple[int, int], Spoken]:
    """The spoken form of every paragraph, keyed by (segment, block)."""
    said = speaker(script.language, tools)
    return {
        (s, b): said(block.text, list(block.said()))
        for s, segment in enumerate(script.segments)
        for b, block in enumerate(segment.blocks)
        if isinstance(block, Paragraph)
    }


def context_of(
    script: Script, studio: Studio, tools: Tools, timing: ScriptTiming, broken: BrokenScript, sight: Sightline
) -> Context:
    """What the rules look at."""
    return Context(
        script=script,
        language=tools.language(script.language),
        engines=tools.engines,
        spoken=spoken_forms(script, tools),
        timing=timing,
        studio=studio,
        reader=reader_of(script, studio),
        broken=broken,
        sightline=sight,
    )


def prepare_one(script: Script, studio: Studio, tools: Tools) -> PreparedScript:
    """Everything about one script, step by step."""
    data = tools.language(script.language)
    timing = time_one(script, studio, tools)
    rig, reader = rig_of(script, studio), reader_of(script, studio)
    sight = sightline_of(rig, reader, script, timing, studio, tools)
    broken = break_script(
        script, timing, sight.column, data, tools.engines, sentence_per_line=studio.sentence_starts_line
    )
    context = context_of(script, studio, tools, timing, broken, sight)
    return PreparedScript(
        script=script,
        timing=timing,
        findings=tuple(check_script(context)),
        broken=broken,
        sightline=sight,
        rig=rig,
        digest=wording_digest(script),
        direction=broken.direction,
        reader=reader,
        difficulty=difficulties(context),
    )


def prepare_all(scripts: Sequence[Script], studio: Studio, tools: Tools) -> Prepared:
    """All scripts of a call, and the sightline of each rig they use."""
    done = tuple(prepare_one(script, studio, tools) for script in scripts)
    sights: dict[str, Sightline] = {}
    for one in done:
        sights.setdefault(one.rig.id, one.sightline)
    for name, rig in studio.rigs.items():
        if name not in sights:
            sights[name] = sightline_alone(rig, None, "en", studio, tools)
    return Prepared(studio, done, tuple(sights.values()))


def sightline_alone(rig: Rig, reader: Reader | None, language: str, studio: Studio, tools: Tools) -> Sightline:
    """A rig's sightline where no script is read from it: on the language's sample. Raises `MissingLanguageData`."""
    sample = str(tools.language(language).get("fonts", "sample"))
    script = parse_script(sample, language=language)
    return sightline_of(rig, reader, script, time_one(script, studio, tools), studio, tools)


def check_one(script: Script, studio: Studio, tools: Tools) -> list[Finding]:
    """The findings of one script, lines and screen included."""
    return list(prepare_one(script, studio, tools).findings)


def check_copy(script: Script, tools: Tools) -> list[Finding]:
    """The findings of a text alone: no reader, no rig, the language's default pace."""
    data = tools.language(script.language)
    timing = time_one(script, Studio(), tools)
    return check_script(Context(script, data, tools.engines, spoken_forms(script, tools), timing=timing))


def difficulty_of(text: str, language: str, tools: Tools) -> float:
    """How hard a passage is to read aloud, 0 to 100."""
    return passage_difficulty(text, speaker(language, tools)(text, ()), tools.language(language), tools.engines)
