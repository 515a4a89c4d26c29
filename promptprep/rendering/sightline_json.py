"""A rig's sightline as a JSON object; the keys are a contract."""

from __future__ import annotations

import math
from typing import Any

from promptprep.model.sightline import Sightline, Verdict

DIGITS = 6


def sightline_object(sight: Sightline) -> dict[str, Any]:
    """Figures of one rig with their units in the names, verdicts, contradictions and advice. Unknown ones are null.

    `optical_path_mm` is eye to glass plus glass to screen. Heights: `font.cap_em` (the very font's) * `font_px` * the
    height of a pixel (`py_mm`); at the eye 2*atan(height / 2 / path). Places are angles from the lens,
    atan(offset / path):
    `travel_left_deg`, `travel_right_deg` to the column's edges (positive towards their side), `first_line_deg`,
    `last_line_deg`, `reading_line_deg` to the centres of lines (positive above the lens, negative below). The column's
    middle stands on the lens and the line that is read at its height, both moved in to the margins. `lines_visible`
    counts whole lines between the margins; `seconds_visible` is what they hold at the reader's pace.
    `contrast_ratio` is WCAG's of the two colours, `contrast_at_eye` with what the glass takes.
    """
    rig, column = sight.rig, sight.column
    values = {
        "id": rig.id,
        "title": rig.title,
        "optical_path_mm": sight.optical_path_mm,
        "picture_width_mm": rig.picture_width_mm,
        "picture_height_mm": rig.picture_height_mm,
        "width_px": rig.width_px,
        "height_px": rig.height_px,
        "px_mm": rig.px_mm,
        "py_mm": rig.py_mm,
        "font_px": column.font_px,
        "column_px": column.width_px,
        "line_px": column.line_px,
        "cap_height_mm": sight.cap_height_mm,
        "x_height_mm": sight.x_height_mm,
        "line_height_mm": sight.line_height_mm,
        "cap_height_arcmin": sight.cap_height_arcmin,
        "x_height_arcmin": sight.x_height_arcmin,
        "line_height_arcmin": sight.line_height_arcmin,
        "travel_left_deg": sight.travel_left_deg,
        "travel_right_deg": sight.travel_right_deg,
        "first_line_deg": sight.first_line_deg,
        "last_line_deg": sight.last_line_deg,
        "reading_line_deg": sight.reading_line_deg,
        "characters_per_line": sight.characters_per_line,
        "words_per_line": sight.words_per_line,
        "lines_visible": sight.lines_visible,
        "seconds_visible": sight.seconds_visible,
        "contrast_ratio": sight.contrast_ratio,
        "contrast_at_eye": sight.contrast_at_eye,
        "lens_loss_stops": sight.lens_loss_stops,
        "ghost_mm": sight.ghost_mm,
        "flip": rig.flip,
        "lies": rig.lies,
        "top": rig.top,
        "font": _font(sight),
        "verdicts": [_verdict(verdict) for verdict in sight.verdicts],
        "contradictions": list(sight.contradictions),
        "advice": sight.advice,
    }
    return {key: _plain(value) for key, value in values.items()}


def _font(sight: Sightline) -> dict[str, float] | None:
    figures = sight.type_figures
    if figures is None:
        return None
    return {"cap_em": figures.cap_em, "x_em": figures.x_em, "advance_em": figures.advance_em}


def _verdict(verdict: Verdict) -> dict[str, Any]:
    return {
        "quantity": verdict.quantity,
        "value": verdict.value,
        "unit": verdict.unit,
        "low": verdict.low,
        "high": verdict.high,
        "level": verdict.level,
        "source": verdict.source,
    }


def _plain(value: Any) -> Any:
    """Values as JSON has them: no infinities, six decimals, lists and dictionaries throughout."""
    if isinstance(value, float):
        return round(value, DIGITS) if math.isfinite(value) else None
    if isinstance(value, dict):
        return {key: _plain(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(inner) for inner in value]
    return value
