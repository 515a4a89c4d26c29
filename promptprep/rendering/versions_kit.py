"""A translator's kit as a page to read and to print."""

from __future__ import annotations

from jinja2 import Environment
from markupsafe import Markup

from promptprep.model.kit import Kit
from promptprep.rendering.environment import render
from promptprep.rendering.page_fonts import Faces, fonts_beyond_latin
from promptprep.rendering.versions_docx import segment_lines


def kit_html(kit: Kit, env: Environment, faces: Faces) -> str:
    """The page, its texts in other scripts than the Latin one in the bundled fonts."""
    texts = {
        kit.source_language: "".join(u.text for u in kit.units),
        kit.target_language: "".join(u.target for u in kit.units),
    }
    rules, families = fonts_beyond_latin(texts, faces, "side")
    segments = [{"title": s.title or s.id, "units": s.units, "lines": segment_lines(s)} for s in kit.segments]
    return render(env, "versions/kit.html", kit=kit, segments=segments, faces=Markup(rules), families=families)
