"""What the reader's eye sees on a rig: sizes, travel, lines, light."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from promptprep.model.lines import Column
from promptprep.model.rig import Reader, Rig
from promptprep.model.sightline import Limit, Sightline, TypeFigures
from promptprep.sightline.advice import advise
from promptprep.sightline.angles import offset_deg, subtended_arcmin
from promptprep.sightline.contrast import contrast_in_glass, contrast_ratio, relative_luminance
from promptprep.sightline.figures import picture_figures
from promptprep.sightline.layout import Layout, layout
from promptprep.sightline.optics import ghost_mm, lens_loss_stops, seen_contrast
from promptprep.sightline.terms import checked
from promptprep.sightline.verdicts import contradictions, limits_for, small_type_verdict, verdicts


def sightline(
    rig: Rig, column: Column, reader: Reader | None, type_figures: TypeFigures, limits: Sequence[Limit]
) -> Sightline:
    """Figures, verdicts and advice for a rig with one column.

    Where the reader's pace is not known the seconds in view are 0, and no bound is held against them. Raises
    `BadGeometry`.
    """
    advance_em, per_word = checked(type_figures).advance_em, type_figures.characters_per_word
    characters = column.width_em / advance_em
    placed = layout(rig, column)
    sizes: dict[str, Any] = _sizes(rig, column, type_figures)
    places: dict[str, Any] = _places(rig, placed)
    light = _light(rig)
    counts: dict[str, Any] = {
        "characters_per_line": characters,
        "words_per_line": characters / per_word if per_word else None,
        "lines_visible": placed.lines,
        "seconds_visible": placed.lines * characters * type_figures.seconds_per_character,
    }
    own = limits_for(limits, reader, advance_em)
    figures = {**sizes, **places, **light, **counts, **picture_figures(rig, column)}
    figures["travel_deg"] = max(places["travel_left_deg"], places["travel_right_deg"])
    figures["seconds_visible"] = counts["seconds_visible"] if type_figures.seconds_per_character > 0 else None
    figures["reading_line_above_deg"] = max(0.0, places["reading_line_deg"])
    figures["reading_line_below_deg"] = max(0.0, -places["reading_line_deg"])
    return Sightline(
        rig=rig,
        column=column,
        optical_path_mm=rig.optical_path_mm,
        **sizes,
        **places,
        **light,
        **counts,
        verdicts=(*verdicts(figures, own), *small_type_verdict(figures)),
        contradictions=contradictions(figures, own),
        advice=advise(rig, reader, type_figures, limits, column=column).as_mapping(),
        type_figures=type_figures,
    )


def _sizes(rig: Rig, column: Column, type_figures: TypeFigures) -> dict[str, float]:
    """Heights in millimetres on the picture and in arcminutes at the optical path."""
    path = rig.optical_path_mm
    heights = {
        "cap_height": type_figures.cap_em * column.font_px * rig.py_mm,
        "x_height": type_figures.x_em * column.font_px * rig.py_mm,
        "line_height": column.line_px * rig.py_mm,
    }
    sizes = {f"{name}_mm": height for name, height in heights.items()}
    return sizes | {f"{name}_arcmin": subtended_arcmin(height, path) for name, height in heights.items()}


def _places(rig: Rig, placed: Layout) -> dict[str, float]:
    """Angles from the lens to the column's edges and to the centres of lines."""
    path = rig.optical_path_mm
    lens_x, lens_y = rig.lens_x * rig.width_px, rig.lens_y * rig.height_px
    return {
        "travel_left_deg": offset_deg((lens_x - placed.left_px) * rig.px_mm, path),
        "travel_right_deg": offset_deg((placed.right_px - lens_x) * rig.px_mm, path),
        "first_line_deg": offset_deg((lens_y - placed.first_px) * rig.py_mm, path),
        "last_line_deg": offset_deg((lens_y - placed.last_px) * rig.py_mm, path),
        "reading_line_deg": offset_deg((lens_y - placed.reading_px) * rig.py_mm, path),
    }


def _light(rig: Rig) -> dict[str, Any]:
    """Contrast of the two colours, the same as the eye gets it where the glass is known, and the lens's loss."""
    return {
        "contrast_ratio": contrast_ratio(rig.ink, rig.ground),
        "contrast_at_eye": contrast_at_eye(rig),
        "lens_loss_stops": None if rig.glass_passes is None else lens_loss_stops(rig.glass_passes),
        "ghost_mm": None if rig.glass_mm is None or not rig.has_glass else ghost_mm(rig.glass_mm),
    }


def contrast_at_eye(rig: Rig) -> float | None:
    """Contrast with what the glass takes: by luminances where they are given, else by WCAG's formula and its flare.

    None for a glass whose split is unknown.
    """
    reflects = rig.glass_reflects if rig.has_glass else 1.0
    if reflects is None:
        return None
    if rig.screen_cd_m2 is None:
        return contrast_in_glass(rig.ink, rig.ground, reflects)
    black = rig.black_cd_m2 or 0.0
    ink, ground = (black + (rig.screen_cd_m2 - black) * relative_luminance(c) for c in (rig.ink, rig.ground))
    return seen_contrast(max(ink, ground), min(ink, ground), reflects, rig.stray_cd_m2 or 0.0)
