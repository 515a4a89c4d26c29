"""Everything that `versions` writes, as bytes by file name."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from promptprep.model.kit import Kit
from promptprep.model.ports import Tools
from promptprep.model.versions import Versions
from promptprep.rendering.environment import environment
from promptprep.rendering.versions_docx import kit_docx
from promptprep.rendering.versions_kit import kit_html
from promptprep.rendering.versions_paper import bilingual_pdf
from promptprep.rendering.versions_report import versions_html
from promptprep.rendering.versions_xliff import kit_xliff


def render_versions(versions: Versions, tools: Tools, folders: Sequence[Path]) -> dict[str, bytes]:
    """NAME.versions.html, and for each version NAME.SOURCE-LANGUAGE.paper.pdf with both side by side."""
    env = environment(folders)
    name = versions.source.script.name

    def printed(language: str, text: str, family: str) -> str:
        return tools.fonts.css(language, text, family, bold_text=text)

    files = {f"{name}.versions.html": versions_html(versions, env, tools.fonts.css).encode("utf-8")}
    for version in versions.others:
        key = f"{name}.{versions.source.language}-{version.language}.paper.pdf"
        files[key] = bilingual_pdf(versions.source, version, env, printed)
    return files


def render_kit(kit: Kit, tools: Tools, folders: Sequence[Path]) -> dict[str, bytes]:
    """The kit as a page to read, a document to write in, and an XLIFF file."""
    stem = f"{kit.name}.{kit.target_language}.kit"
    return {
        f"{stem}.html": kit_html(kit, environment(folders), tools.fonts.css).encode("utf-8"),
        f"{stem}.docx": kit_docx(kit),
        f"{stem}.xlf": kit_xliff(kit),
    }
