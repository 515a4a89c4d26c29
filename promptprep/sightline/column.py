"""The column that copy is broken to: what the studio has set, else the advice's."""

from __future__ import annotations

from collections.abc import Sequence

from promptprep.model.lines import Column
from promptprep.model.rig import Reader, Rig
from promptprep.model.sightline import Limit, TypeFigures
from promptprep.sightline.optimum import best_column
from promptprep.sightline.terms import Weighing, bounds_for, checked, column_of


def column_for(rig: Rig, reader: Reader | None, type_figures: TypeFigures, limits: Sequence[Limit]) -> Column:
    """The rig's own `font_px` and `column_px`; where one or both are left open, the best ones for this reader.

    The best column holds the copy's longest word too, if any legible type can. Raises `BadGeometry`.
    """
    if rig.font_px is not None and rig.column_px is not None:
        return column_of(rig, rig.font_px, rig.column_px)
    weighing = Weighing(rig, checked(type_figures), bounds_for(limits, reader, type_figures.advance_em))
    return best_column(weighing, rig.font_px, rig.column_px)
