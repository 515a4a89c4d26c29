"""Advice for a rig and its reader: the best type and column, what is possible, the nearest change where nothing is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from promptprep.model.lines import Column
from promptprep.model.rig import Reader, Rig
from promptprep.model.sightline import Limit, TypeFigures
from promptprep.sightline.angles import offset_deg, subtended_arcmin
from promptprep.sightline.changes import (
    Change,
    colour_change,
    distance_text,
    keeps_bounds,
    rig_changes,
    set_type_changes,
)
from promptprep.sightline.optimum import best_column, region
from promptprep.sightline.terms import Bounds, Weighing, bound_of, bounds_for, column_of


@dataclass(frozen=True, slots=True)
class Advice:
    """`column` is the best of all. `terms` are ratios to the bounds at it (1: at the bound, less: inside).

    `region` holds (font_px, least column_px, most column_px) where every bound is kept, empty where `possible` is
    False. `edges` are the bounds as sizes on this rig: least and most type, wanted type, widest column, and the least
    column for each pixel of type. `changes` come nearest first; empty where nothing need change.
    """

    column: Column
    possible: bool
    bounds: Bounds
    terms: dict[str, float]
    figures: dict[str, float]
    edges: dict[str, float]
    region: tuple[tuple[float, float, float], ...]
    changes: tuple[Change, ...]
    sentence: str

    def as_mapping(self) -> dict[str, Any]:
        """The advice in plain values."""
        return {
            "sentence": self.sentence,
            "possible": self.possible,
            "font_px": self.column.font_px,
            "column_px": self.column.width_px,
            "line_px": self.column.line_px,
            **self.figures,
            "terms": dict(self.terms),
            "bounds": {field: getattr(self.bounds, field) for field in self.bounds.__slots__},
            "edges": dict(self.edges),
            "region": [list(row) for row in self.region],
            "changes": [_change(change) for change in self.changes],
        }


def _change(change: Change) -> dict[str, Any]:
    then = change.then
    return {
        "kind": change.kind,
        "text": change.text,
        "before": change.before,
        "after": change.after,
        "unit": change.unit,
        "then": None if then is None else {"font_px": then.font_px, "column_px": then.width_px},
    }


def advise(
    rig: Rig,
    reader: Reader | None,
    type_figures: TypeFigures,
    limits: Sequence[Limit],
    *,
    column: Column | None = None,
) -> Advice:
    """The best column for a rig and reader, and what to change for `column` (None: the best) to keep the bounds.

    The best is the least sum of squared ratios: wanted capital height over height, travel over gaze cone, wanted
    characters over characters a line, wanted seconds over seconds in view. Each ratio is 1 at its bound, so all
    four weigh alike there; a passed bound outweighs every gain.
    """
    weighing = Weighing(rig, type_figures, bounds_for(limits, reader, type_figures.advance_em))
    best = best_column(weighing)
    used = column or best
    possible = weighing.possible()
    lines = weighing.lines(best.font_px)
    changes = _changes(weighing, used, best, possible)
    colour = colour_change(rig, bound_of("contrast_least", limits))
    return Advice(
        column=best,
        possible=possible,
        bounds=weighing.bounds,
        terms=weighing.terms(best.font_px, best.width_px, lines),
        figures=_figures(weighing, best, lines),
        edges=weighing.edges(),
        region=region(weighing),
        changes=(*changes, colour) if colour else changes,
        sentence=_colour_sentence(colour) + _sentence(weighing, used, best, possible, changes),
    )


def _changes(weighing: Weighing, used: Column, best: Column, possible: bool) -> tuple[Change, ...]:
    if not possible:
        return rig_changes(weighing)
    return () if keeps_bounds(weighing, used) else set_type_changes(weighing, used, best)


def _figures(weighing: Weighing, column: Column, lines: int) -> dict[str, float]:
    rig, figures = weighing.rig, weighing.type_figures
    characters = column.width_em / figures.advance_em
    cap_mm = figures.cap_em * column.font_px * rig.py_mm
    return {
        "cap_height_arcmin": subtended_arcmin(cap_mm, rig.optical_path_mm),
        "travel_deg": offset_deg(weighing.travel_mm(column.width_px), rig.optical_path_mm),
        "characters_per_line": characters,
        "lines_visible": lines,
        "seconds_visible": lines * characters * figures.seconds_per_character,
    }


def _sentence(weighing: Weighing, used: Column, best: Column, possible: bool, changes: Sequence[Change]) -> str:
    options = _options([change.text for change in changes[:3]])
    if not possible:
        then = f"; with the first of these use {_type_text(changes[0].then)}" if changes and changes[0].then else ""
        return f"{_hindrance(weighing)}: {options or 'use another rig'}{then}."
    if changes:
        return f"{worst_fault(weighing, used)}: {options}."
    if (used.font_px, used.width_px) == (best.font_px, best.width_px):
        return f"Use {_type_text(best)}: it keeps every bound."
    return f"The type as set keeps every bound; {_type_text(best)} balances them best."


def _colour_sentence(colour: Change | None) -> str:
    return f"The two colours differ too little, {colour.before:.1f} : 1: {colour.text}. " if colour else ""


def _type_text(column: Column) -> str:
    return f"{column.font_px:.0f} px type in a column of {column.width_px:.0f} px"


def _hindrance(weighing: Weighing) -> str:
    """Why no type and column keep the bounds, by the smallest legible type in the widest column."""
    bounds, smallest = weighing.bounds, weighing.least_px
    if weighing.travel_mm(0.0) > 0.5 * weighing.reach_mm:
        away = offset_deg(weighing.travel_mm(0.0), weighing.rig.optical_path_mm)
        return f"The lens is {away:.1f} degrees beside the nearest place for the text"
    if weighing.reading_ratio(smallest) > 1:
        return _said("reading", weighing, column_of(weighing.rig, smallest, weighing.widest_px))
    path = distance_text(weighing.rig.optical_path_mm)
    column = column_of(weighing.rig, smallest, weighing.widest_px)
    few = weighing.lines(smallest) < bounds.lines
    fault = _said("lines", weighing, column) if few else worst_fault(weighing, column)
    return f"At {path} legible type ({bounds.cap_least:.3g} arcminutes) is too large for this picture. {fault}"


def worst_fault(weighing: Weighing, column: Column) -> str:
    """The bound that a column passes most, in words with both figures."""
    bounds, figures = weighing.bounds, _figures(weighing, column, weighing.lines(column.font_px))
    terms = weighing.terms(column.font_px, column.width_px, int(figures["lines_visible"]))
    terms["type"] = bounds.cap_least / figures["cap_height_arcmin"]
    terms["reading"] = weighing.reading_ratio(column.font_px)
    return _said(max(terms, key=lambda name: terms[name]), weighing, column)


def _said(term: str, weighing: Weighing, column: Column) -> str:
    bounds, figures = weighing.bounds, _figures(weighing, column, weighing.lines(column.font_px))
    angle = weighing.reading_deg(column.font_px)
    side, most = ("above", bounds.reading_above_deg) if angle > 0 else ("below", bounds.reading_below_deg)
    return {
        "type": f"Type too small: {figures['cap_height_arcmin']:.1f} arcminutes, at least {bounds.cap_least:.3g}",
        "travel": f"The eyes travel {figures['travel_deg']:.1f} degrees, at most {bounds.travel_deg:g}",
        "line": _line_said(weighing, column, figures["characters_per_line"]),
        "view": f"Only {figures['seconds_visible']:.1f} s of speech are in view, at least {bounds.seconds:g}",
        "lines": f"Lines in view: {figures['lines_visible']:.0f}, at least {bounds.lines:g}",
        "reading": f"The line that is read stands {abs(angle):.1f} degrees {side} the lens, at most {most:g}",
    }[term]


def _line_said(weighing: Weighing, column: Column, characters: float) -> str:
    if characters < weighing.bounds.characters:
        return f"A line holds {characters:.1f} characters, at least {weighing.bounds.characters:g}"
    return f"The longest word is {weighing.least_em:.1f} em wide, the column {column.width_em:.1f} em"


def _options(texts: Sequence[str]) -> str:
    return texts[0] if len(texts) == 1 else ", ".join(texts[:-1]) + (" or " if texts else "") + (texts or [""])[-1]
