"""Prepared scripts for the screen's tests: real parsing and real fonts, with plain timing and plain line filling."""

from __future__ import annotations

import hashlib
import re
from itertools import pairwise
from pathlib import Path

from jinja2 import Environment

from promptprep.engines.fonts import subset_fonts
from promptprep.engines.shaping import HarfBuzzShaper
from promptprep.model.lines import BrokenScript, Column, Line, LineRun
from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import Rig
from promptprep.model.script import CueLine, Paragraph, Script, Segment
from promptprep.model.sightline import Sightline
from promptprep.model.timing import BlockTiming, Pace, ScriptTiming, SegmentTiming, TimedPause, TimedWord, Timing
from promptprep.parsing.parse import parse_script
from promptprep.rendering.environment import environment
from promptprep.spans import Span

ROOT = Path(__file__).parent.parent.parent
DEMO = ROOT / "scripts_demo"
HALL = Rig("hall", "Dome hall", 509.0, 286.0, 1920, 1080, "horizontal", 1500.0, 260.0, font_px=84, column_px=1180)
FIELD = Rig(
    "field", "Field rig", 170.0, 302.0, 1080, 1920, "vertical", 900.0, 120.0, lens_y=0.36, ink="#fff4d8",
    ground="#101010", font_px=76, column_px=900,
)  # fmt: skip
SMALL = Rig("small", "Small screen", 240.0, 150.0, 640, 400, "none", 700.0, 0.0, font_px=40, column_px=520)
RTL = ("ar", "he", "fa", "ur")
SECONDS_PER_LETTER = {"zh": 0.24, "ja": 0.17, "ko": 0.2}
_CJK = r"[\u3040-\u30ff\u3400-\u9fff\uac00-\ud7af]"
_WORD = re.compile(rf"{_CJK}[。、！？」）]*|[^\s\u3040-\u30ff\u3400-\u9fff\uac00-\ud7af]+")


def env() -> Environment:
    return environment([ROOT / "templates"])


def fonts(language: str, text: str, bold: bool) -> tuple[bytes, ...]:
    return subset_fonts(language, text, bold)


def demo(name: str, rig: Rig = HALL) -> PreparedScript:
    """A script of the demo, by its file's name without ".md" ("sky.ar")."""
    return prepared((DEMO / f"{name}.md").read_text("utf-8"), name.split(".")[-1], rig, name.split(".")[0])


def prepared(source: str, language: str = "en", rig: Rig = HALL, name: str = "test") -> PreparedScript:
    script = parse_script(source, name=name, language=language)
    timing = timed(script)
    broken = filled(script, timing, rig)
    digest = hashlib.sha256(source.encode()).hexdigest()[:12]
    return PreparedScript(script, timing, (), broken, seen(rig, broken.column), rig, digest, broken.direction)


def seen(rig: Rig, column: Column) -> Sightline:
    cap_mm = 0.714 * column.font_px * rig.px_mm
    arcmin = cap_mm / rig.optical_path_mm * 3437.75
    return Sightline(
        rig, column, rig.optical_path_mm, cap_mm, 0.75 * cap_mm, column.line_px * rig.px_mm, arcmin, 0.75 * arcmin,
        1.4 * arcmin, 3.0, 3.0, 2.0, -2.0, 25.0, 5.0, 7, 12.0, 21.0, None,
    )  # fmt: skip


# -- timing: each letter the same, marks give pauses --------------------------------------------------------------


def timed(script: Script) -> ScriptTiming:
    now = 0.0
    segments = []
    for segment in script.segments:
        start = now
        blocks = []
        for b, block in enumerate(segment.blocks):
            part = _block(block, b, now, script.language)
            if part is not None:
                blocks.append(part)
                now = part.end_s
        mean = now - start
        timing = Timing(mean, 0.08 * mean, 0.3 * mean**0.5, len(blocks) * 20, len(blocks) * 30, segment.fixed_s)
        segments.append(SegmentTiming(segment.id, segment.title, start, timing, tuple(blocks), segment.slot_s))
    pace = Pace(script.language, {}, 0.1, 0.3, "test")
    total = Timing.total(s.timing for s in segments)
    return ScriptTiming(script.language, total, tuple(segments), pace, script.slot_s)


def _block(block: object, number: int, now: float, language: str) -> BlockTiming | None:
    if isinstance(block, CueLine):
        pauses = ()
        if block.cue.fixed_s:
            kind = "cue" if block.cue.kind == "pause" else block.cue.kind
            pauses = (TimedPause(kind, now, now + block.cue.fixed_s),)
        return BlockTiming(number, now, now + block.cue.fixed_s, (), pauses)
    if not isinstance(block, Paragraph):
        return None
    return _paragraph(block, number, now, SECONDS_PER_LETTER.get(language.split("-")[0], 0.066))


def _paragraph(block: Paragraph, number: int, now: float, letter_s: float) -> BlockTiming:
    words, pauses = [], []
    start = now
    cues = [(c.offset, c.cue) for c in block.cues if c.cue.fixed_s]
    for match in _WORD.finditer(block.text):
        while cues and cues[0][0] <= match.start():
            offset, cue = cues.pop(0)
            pauses.append(TimedPause("cue", now, now + cue.fixed_s, offset))
            now += cue.fixed_s
        length = letter_s * (len(match.group()) + 0.8) * (3 if match.group()[0].isdigit() else 1)
        words.append(TimedWord(Span(*match.span()), now, now + length))
        now += length
        pause = {".": 0.55, "?": 0.55, "。": 0.55, "।": 0.55, ",": 0.18, "、": 0.18, "،": 0.18}.get(
            match.group()[-1], 0
        )
        if pause:
            pauses.append(TimedPause("sentence" if pause > 0.5 else "comma", now, now + pause, match.end()))
            now += pause
    now += sum(cue.fixed_s for _, cue in cues)
    now += 0.5
    return BlockTiming(number, start, now, tuple(words), tuple(pauses))


# -- lines: filled greedily with the real widths ------------------------------------------------------------------


def filled(script: Script, timing: ScriptTiming, rig: Rig) -> BrokenScript:
    font_px = rig.font_px or 80.0
    column = Column(rig.column_px or 0.6 * rig.width_px, font_px, round(font_px * 1.4))
    lines: list[Line] = []
    for s, segment in enumerate(script.segments):
        _segment_lines(lines, s, segment, timing, column, script.language)
    direction = "rtl" if script.language.split("-")[0] in RTL else "ltr"
    return BrokenScript(script.language, direction, column, tuple(lines))


def _segment_lines(
    lines: list[Line], s: int, segment: Segment, timing: ScriptTiming, column: Column, language: str
) -> None:
    shaper = HarfBuzzShaper()
    times = {block.block: block for block in timing.segments[s].blocks}
    for b, block in enumerate(segment.blocks):
        if not isinstance(block, Paragraph) or not times[b].words:
            continue
        words = times[b].words
        starts = [words[0].span.start]
        for before, word in pairwise(words):
            wide = shaper.widths_em([block.text[starts[-1] : word.span.end]], language, bold=True)[0]
            if wide > column.width_em or "\n" in block.text[before.span.end : word.span.start]:
                starts.append(word.span.start)
        for i, start in enumerate(starts):
            end = starts[i + 1] if i + 1 < len(starts) else len(block.text)
            on = [w for w in words if start <= w.span.start < end]
            text = block.text[start:end].rstrip()
            span = Span(start, start + len(text))
            width = shaper.widths_em([text], language)[0]
            last = i + 1 == len(starts)
            lines.append(
                Line(
                    len(lines),
                    s,
                    b,
                    span,
                    tuple(_runs(block, span)),
                    width,
                    on[0].start_s,
                    on[-1].end_s,
                    ends_sentence=text[-1:] in ".?!。।؟",
                    ends_paragraph=last,
                )
            )


def _runs(block: Paragraph, span: Span) -> list[LineRun]:
    runs, at = [], 0
    for run in block.runs:
        start, end = max(at, span.start), min(at + len(run.text), span.end)
        if start < end:
            runs.append(LineRun(block.text[start:end], run.stress, run.say))
        at += len(run.text)
    return runs


def hour(words: int = 9000, language: str = "en") -> str:
    """A long script: numbered sentences, so that no two lines are alike."""
    sentence = "On night {n} the air was dry above the ridge, and star {m} stood clear of the western dome until dawn."
    if language == "ja":
        sentence = "第{n}夜、空気は乾いていて、星{m}番は夜明けまで西のドームの上にはっきりと見えていました。"
    per = 20
    parts = []
    for n in range(words // per):
        if n % 45 == 0:
            parts.append(f"# Part {n // 45 + 1}")
        parts.append(sentence.format(n=n + 1, m=(n * 37) % 9973))
        if n % 3 == 2:
            parts.append("")
    return "\n".join(p if not p.startswith("#") else f"\n{p}\n" for p in parts)
