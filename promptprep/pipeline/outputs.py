"""Everything that `prepare` writes, as bytes by file name."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial
from pathlib import Path

from jinja2 import Environment

from promptprep.breaking.paragraph import break_paragraph
from promptprep.model.language import FIRST_CLASS, base_of
from promptprep.model.ports import Tools
from promptprep.model.prepared import Prepared, PreparedScript
from promptprep.model.rig import Studio
from promptprep.model.session import PlannedItem, Session
from promptprep.rendering.caption_files import chapters, chapters_list, chapters_vtt, srt, ttml, vtt
from promptprep.rendering.captions import Retime, caption_limits, captions_of
from promptprep.rendering.crew import crew_csv, crew_pdf
from promptprep.rendering.csv_text import csv_file
from promptprep.rendering.drawings import rig_drawings
from promptprep.rendering.environment import environment
from promptprep.rendering.measure import Measure
from promptprep.rendering.paper import PaperTools, paper_pdf
from promptprep.rendering.report import report_html, report_json
from promptprep.rendering.screen import Place, screen_html, screen_pdf
from promptprep.rendering.screen_words import ScreenWords, screen_words
from promptprep.rendering.session_sheets import session_files
from promptprep.session.cue_words import CueWords
from promptprep.spans import Span


def render_all(
    prepared: Prepared,
    tools: Tools,
    folders: Sequence[Path],
    *,
    stills: bool = False,
    logo: str = "",
    places: Mapping[str, Place] | None = None,
) -> dict[str, bytes]:
    """The files of all scripts, then the report's. A script's files are called NAME.LANG.kind.

    `places` says by digest where scripts stand in their session.
    """
    env = environment(folders)
    files: dict[str, bytes] = {}
    for one in prepared.scripts:
        place = (places or {}).get(one.digest)
        files |= render_script(one, prepared.studio, tools, env, _beside(one, prepared), logo, place)
        if stills:
            files |= _stills(one, prepared.studio, tools, env)
    files["report.html"] = report_html(prepared, env, partial(rig_drawings, env=env), tools.fonts.css).encode("utf-8")
    files["report.json"] = report_json(prepared).encode("utf-8")
    return files


def render_script(
    one: PreparedScript,
    studio: Studio,
    tools: Tools,
    env: Environment,
    beside: PreparedScript | None = None,
    logo: str = "",
    place: Place | None = None,
) -> dict[str, bytes]:
    """The six files of one script, and the further printed copies that the studio wants.

    `beside` is its version in the studio's helper language, `logo` a picture as a data URL, `place`
    where it stands in its session.
    """
    stem = f"{one.script.name}.{one.script.language}"
    printed, said = paper_tools(one.script.language, tools, env, logo), words_on_screen(one, studio, tools)
    files = {
        f"{stem}.screen.html": screen_html(one, env, tools.fonts.subsets, place=place, words=said).encode("utf-8"),
        f"{stem}.screen.pdf": screen_pdf(one, env, tools.fonts.subsets, words=said),
        f"{stem}.paper.pdf": paper_pdf(one, studio, printed, beside=beside),
        f"{stem}.crew.pdf": crew_pdf(one, studio, printed),
        f"{stem}.crew.csv": csv_file(crew_csv(one)),
        f"{stem}.vtt": _vtt(one, printed, tools).encode("utf-8"),
    }
    for variant in studio.paper.variants:
        files[f"{stem}.{variant}.pdf"] = paper_pdf(one, studio, printed, variant, beside)
    return files


def words_on_screen(one: PreparedScript, studio: Studio, tools: Tools) -> ScreenWords:
    """The reader's words in the script's language; the operator's in the studio's, where it says which that is."""
    return screen_words(tools.words, one.script.language, studio.crew_language or one.script.language)


def _vtt(one: PreparedScript, printed: PaperTools, tools: Tools) -> str:
    limits = caption_limits(tools.language(one.script.language))
    return vtt(captions_of(one.script, one.timing, printed, limits), one.digest, general=limits.general)


def _beside(one: PreparedScript, prepared: Prepared) -> PreparedScript | None:
    """The version of a script in the studio's helper language, where it is among the scripts of this call."""
    helper = prepared.studio.paper.beside
    if helper is None or one.script.language == helper:
        return None
    named = (other for other in prepared.scripts if other.script.name == one.script.name)
    return next((other for other in named if other.script.language == helper), None)


def paper_tools(language: str, tools: Tools, env: Environment, logo: str = "") -> PaperTools:
    """What printing needs, for pages in one language."""
    data = tools.language(language)

    def breaker(text: str, width_em: float, stress: Sequence[Span] = ()) -> Sequence[Span]:
        return break_paragraph(text, width_em, data, tools.engines, stress=stress)

    def sentences(text: str) -> Sequence[int]:
        return tools.engines.breaks.sentences(text, language)

    def faces(text: str) -> str:
        return tools.fonts.css(language, text, bold_text=text)

    def widths_em(texts: Sequence[str], bold: bool) -> Sequence[float]:
        return tools.engines.shaper.widths_em(texts, language, bold=bold)

    measure = Measure(
        widths_em, lambda text: tools.engines.breaks.lines(text, language), tools.engines.breaks.graphemes
    )
    bold = bool(data.maybe("fonts", "bold", True))
    interface = "" if base_of(language) in FIRST_CLASS else "en"
    return PaperTools(tools.words(language), breaker, sentences, faces, env, measure, bold, logo, interface)


def _stills(one: PreparedScript, studio: Studio, tools: Tools, env: Environment) -> dict[str, bytes]:
    from promptprep.rendering.stills import stills

    return dict(stills(one, env, tools.fonts.subsets, words_on_screen(one, studio, tools)))


def render_session(
    session: Session,
    words: Mapping[str, CueWords],
    studio: Studio,
    tools: Tools,
    folders: Sequence[Path],
    takes: Mapping[str, Retime],
) -> dict[str, bytes]:
    """The sheets of a session, and the captions and chapters of its scripts. `words` tells by item code what its cues'
    texts mean, `takes` when a script's words were said, where a take is at hand."""
    env = environment(folders)
    files = session_files(session, studio, paper_tools(studio.language, tools, env), words)
    for row in session.items:
        files |= _caption_files(row, tools, env, takes.get(row.item.code))
    return files


def _caption_files(row: PlannedItem, tools: Tools, env: Environment, retime: Retime | None) -> dict[str, bytes]:
    script, plan = row.timed.script, row.timed.plan
    if script is None or plan is None:
        return {}
    limits = caption_limits(tools.language(script.language))
    found = captions_of(script, plan, paper_tools(script.language, tools, env), limits, retime)
    parts, stem = chapters(plan, retime), f"{row.item.code}.{script.name}.{script.language}"
    texts = {
        "vtt": vtt(found, row.timed.digest, "times of a take" if retime else "times predicted", general=limits.general),
        "srt": srt(found),
        "ttml": ttml(found, script.language, row.timed.direction, row.timed.title),
        "chapters.vtt": chapters_vtt(parts),
        "chapters.txt": chapters_list(parts),
    }
    return {f"{stem}.{kind}": text.encode("utf-8") for kind, text in texts.items()}
