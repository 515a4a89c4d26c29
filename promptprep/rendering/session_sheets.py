"""All sheets of a session as HTML, PDF and CSV, by file name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from promptprep.model.rig import Studio
from promptprep.model.session import Session
from promptprep.rendering.call_sheet import CAUTIONS, HEAD, calls
from promptprep.rendering.crew_positions import (
    ALL,
    busy_positions,
    cells_of,
    columns_of,
    csv_text,
    position_rows,
    positions_csv,
)
from promptprep.rendering.lists import (
    CLIP_HEAD,
    GRAPHIC_HEAD,
    SHOT_HEAD,
    SOUND_HEAD,
    clip_list,
    graphic_list,
    list_csv,
    shot_list,
    sound_list,
)
from promptprep.rendering.printing import PaperTools, pdf_from_html, rendered
from promptprep.rendering.session_rows import chance_text, summary_lines
from promptprep.rendering.sheets import SHEETS_MM
from promptprep.session.cue_words import CueWords
from promptprep.session.plan import clock_at
from promptprep.units import clock_text


def session_files(
    session: Session, studio: Studio, tools: PaperTools, words: Mapping[str, CueWords]
) -> dict[str, bytes]:
    """Running order, crew sheets, lists and call sheet. `words` tells by item code what its cues' texts mean."""
    files: dict[str, bytes] = {}
    for name, template, values in _pages(session, words):
        html = rendered(
            tools, f"session/{template}", session=session, page=page_mm(studio), **_common(session), **values
        )
        files[f"{name}.html"] = html.encode("utf-8")
        files[f"{name}.pdf"] = pdf_from_html(html, f"{session.order.title}.{name}")
    files |= {f"crew.{p}.csv": _csv(positions_csv(session, p)) for p in (ALL, *busy_positions(session))}
    files["list.shots.csv"] = _csv(list_csv(SHOT_HEAD, shot_list(session)))
    files["list.graphics.csv"] = _csv(list_csv(GRAPHIC_HEAD, graphic_list(session, words)))
    files["list.clips.csv"] = _csv(list_csv(CLIP_HEAD, clip_list(session)))
    files["list.sound.csv"] = _csv(list_csv(SOUND_HEAD, sound_list(session)))
    files["call.csv"] = _csv(csv_text(HEAD, [call.cells for call in calls(session)]))
    return files


def _csv(text: str) -> bytes:
    return text.encode("utf-8-sig")  # so that spreadsheets know the encoding


def page_mm(studio: Studio) -> tuple[float, float]:
    """The studio's paper lying on its side: wide columns."""
    width, height = SHEETS_MM[studio.paper.size]
    return max(width, height), min(width, height)


def _common(session: Session) -> dict[str, Any]:
    return {
        "title": session.order.title or "Session",
        "summary": list(summary_lines(session)),
        "clock": lambda ms: clock_at(session, ms),
        "length": lambda ms: clock_text(ms / 1000),
        "tenths": lambda ms: clock_text(ms / 1000, tenths=True),
        "chance": None if session.chance is None else chance_text(session.chance),
    }


def _pages(session: Session, words: Mapping[str, CueWords]) -> Iterator[tuple[str, str, dict[str, Any]]]:
    yield "session", "running.html", {"sheet": "running order"}
    yield "call", "call.html", {"sheet": "call sheet", "calls": calls(session), "cautions": CAUTIONS}
    for position in (ALL, *busy_positions(session)):
        rows = position_rows(session, position)
        columns = columns_of(rows)
        shown = [(row, cells_of(row, columns)) for row in rows]
        yield f"crew.{position}", "crew.html", {"sheet": f"crew sheet, {position}", "columns": columns, "rows": shown}
    tables = [
        ("Shots by source", SHOT_HEAD, shot_list(session)),
        ("Graphics to proof-read", GRAPHIC_HEAD, graphic_list(session, words)),
        ("Clips", CLIP_HEAD, clip_list(session)),
        ("Who hears whom", SOUND_HEAD, sound_list(session)),
    ]
    yield "lists", "lists.html", {"sheet": "lists", "tables": tables}
