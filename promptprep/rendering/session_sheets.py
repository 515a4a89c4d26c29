"""All sheets of a session as HTML, PDF and CSV, by file name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from promptprep.model.rig import Studio
from promptprep.model.session import Session
from promptprep.rendering.call_sheet import CAUTIONS, HEAD, calls
from promptprep.rendering.crew_positions import (
    ALL,
    PositionRow,
    busy_positions,
    cells_of,
    columns_of,
    position_rows,
    positions_csv,
)
from promptprep.rendering.csv_text import csv_file, csv_text
from promptprep.rendering.direction import direction_of, isolated
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
from promptprep.rendering.session_rows import summary_lines
from promptprep.rendering.sheets import SHEETS_MM
from promptprep.rendering.wording import Wording
from promptprep.session.cue_words import CueWords
from promptprep.session.plan import clock_at
from promptprep.session.spare import RULE
from promptprep.units import clock_text


def session_files(
    session: Session, studio: Studio, tools: PaperTools, words: Mapping[str, CueWords]
) -> dict[str, bytes]:
    """Running order, crew sheets, lists and call sheet. `words` tells by item code what its cues' texts mean."""
    files: dict[str, bytes] = {}
    common = {"session": session, "page": page_mm(studio), **_common(session, studio, Wording(tools.words))}
    for name, template, values in _pages(session, words, Wording(tools.words)):
        html = rendered(tools, f"session/{template}", **common, **values)
        files[f"{name}.html"] = html.encode("utf-8")
        files[f"{name}.pdf"] = pdf_from_html(html, f"{session.order.title}.{name}")
    files |= {f"crew.{p}.csv": csv_file(positions_csv(session, p)) for p in (ALL, *busy_positions(session))}
    files["list.shots.csv"] = csv_file(list_csv(SHOT_HEAD, shot_list(session)))
    files["list.graphics.csv"] = csv_file(list_csv(GRAPHIC_HEAD, graphic_list(session, words)))
    files["list.clips.csv"] = csv_file(list_csv(CLIP_HEAD, clip_list(session)))
    files["list.sound.csv"] = csv_file(list_csv(SOUND_HEAD, sound_list(session)))
    files["call.csv"] = csv_file(csv_text(HEAD, [call.cells for call in calls(session)]))
    return files


def page_mm(studio: Studio) -> tuple[float, float]:
    """The studio's paper lying on its side: wide columns."""
    width, height = SHEETS_MM[studio.paper.size]
    return max(width, height), min(width, height)


def _common(session: Session, studio: Studio, say: Wording) -> dict[str, Any]:
    page = direction_of(say("running order")) or "ltr"
    return {
        "title": session.order.title or say("session"),
        "language": studio.language,
        "direction": page,
        "whole": lambda text: isolated(text, page),
        "spoken": {row.item.code: row.timed.language for row in session.items},
        "way": lambda text: direction_of(str(text)) or page,
        "say": say,
        "summary": list(summary_lines(session, say)),
        "clock": lambda ms: clock_at(session, ms),
        "length": lambda ms: clock_text(ms / 1000),
        "tenths": lambda ms: clock_text(ms / 1000, tenths=True),
    }


def _pages(session: Session, words: Mapping[str, CueWords], say: Wording) -> Iterator[tuple[str, str, dict[str, Any]]]:
    page = direction_of(say("running order")) or "ltr"
    yield "session", "running.html", {"sheet": say("running order"), "spare_rule": RULE}
    cautions = [say(text) for text in CAUTIONS]
    call = {"sheet": say("call sheet"), "head": _head(HEAD, say), "calls": calls(session, say), "cautions": cautions}
    yield "call", "call.html", call
    for position in (ALL, *busy_positions(session)):
        rows = position_rows(session, position)
        columns = columns_of(rows)
        heads = [" / ".join(say(kind) for kind in kinds) for kinds in columns.values()]
        shown = [(row, _running(row, say), cells_of(row, columns, say, page)) for row in rows]
        sheet = f"{say('crew sheet')}: {say(position)}"
        yield f"crew.{position}", "crew.html", {"sheet": sheet, "heads": heads, "rows": shown}
    tables = [
        (say("Shots by source"), _head(SHOT_HEAD, say), shot_list(session)),
        (say("Graphics to proof-read"), _head(GRAPHIC_HEAD, say), graphic_list(session, words)),
        (say("Clips"), _head(CLIP_HEAD, say), clip_list(session)),
        (say("Who hears whom"), _head(SOUND_HEAD, say), sound_list(session, say)),
    ]
    yield "lists", "lists.html", {"sheet": say("lists"), "tables": tables}


def _head(names: tuple[str, ...], say: Wording) -> list[str]:
    """A table's head: the names of its columns as people write them."""
    return [say((f"{name[:-2]} (s)" if name.endswith("_s") else name).replace("_", " ")) for name in names]


def _running(row: PositionRow, say: Wording) -> str:
    """The clip or live part after which a cue comes, where nothing has been said since."""
    kind, _, text = row.cue.after.partition(" ")
    return say("after the {what}", what=f"{say(kind)} {text}".strip()) if row.cue.after else ""
