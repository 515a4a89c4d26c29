"""Everything that `prepare` writes, as bytes by file name."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from pathlib import Path

from jinja2 import Environment

from promptprep.breaking.paragraph import break_paragraph
from promptprep.model.ports import Tools
from promptprep.model.prepared import Prepared, PreparedScript
from promptprep.model.rig import Studio
from promptprep.rendering.captions import vtt
from promptprep.rendering.crew import crew_csv, crew_pdf
from promptprep.rendering.drawings import rig_drawings
from promptprep.rendering.environment import environment
from promptprep.rendering.paper import PaperTools, paper_pdf
from promptprep.rendering.report import report_html, report_json
from promptprep.rendering.screen import screen_html, screen_pdf
from promptprep.spans import Span


def render_all(prepared: Prepared, tools: Tools, folders: Sequence[Path], *, stills: bool = False) -> dict[str, bytes]:
    """The files of all scripts, then the report's. A script's files are called NAME.LANG.kind."""
    env = environment(folders)
    files: dict[str, bytes] = {}
    for one in prepared.scripts:
        files |= render_script(one, prepared.studio, tools, env)
        if stills:
            files |= _stills(one, tools, env)

    def report_faces(language: str, text: str, family: str) -> str:
        return tools.fonts.css(language, text, family=family)

    files["report.html"] = report_html(prepared, env, partial(rig_drawings, env=env), report_faces).encode("utf-8")
    files["report.json"] = report_json(prepared).encode("utf-8")
    return files


def render_script(one: PreparedScript, studio: Studio, tools: Tools, env: Environment) -> dict[str, bytes]:
    """The six files of one script."""
    stem = f"{one.script.name}.{one.script.language}"
    printed = paper_tools(one, tools, env)
    return {
        f"{stem}.screen.html": screen_html(one, env, tools.fonts.subsets).encode("utf-8"),
        f"{stem}.screen.pdf": screen_pdf(one, env, tools.fonts.subsets),
        f"{stem}.paper.pdf": paper_pdf(one, studio, printed),
        f"{stem}.crew.pdf": crew_pdf(one, studio, printed),
        f"{stem}.crew.csv": crew_csv(one).encode("utf-8-sig"),
        f"{stem}.vtt": vtt(one).encode("utf-8"),
    }


def paper_tools(one: PreparedScript, tools: Tools, env: Environment) -> PaperTools:
    """What printing needs, for the script's language."""
    language = one.script.language
    data = tools.language(language)

    def breaker(text: str, width_em: float) -> Sequence[Span]:
        return break_paragraph(text, width_em, data, tools.engines)

    def sentences(text: str) -> Sequence[int]:
        return tools.engines.breaks.sentences(text, language)

    def faces(text: str) -> str:
        return tools.fonts.css(language, text, bold_text=text)

    return PaperTools(tools.words(language), breaker, sentences, faces, env)


def _stills(one: PreparedScript, tools: Tools, env: Environment) -> dict[str, bytes]:
    from promptprep.rendering.stills import stills

    return dict(stills(one, env, tools.fonts.subsets))
