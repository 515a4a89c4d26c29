"""What a studio file says about its rigs while it is being written, for a page that shows it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from promptprep.model.rig import Studio
from promptprep.model.sightline import Sightline, Verdict, quantity_name
from promptprep.rendering.sightline_rows import figure_rows
from promptprep.sightline.cautions import cautions

GRAVEST = ("fix", "look", "unknown", "good")
Draw = Callable[[Sightline], Sequence[str]]


def studio_view(studio: Studio, sights: Sequence[Sightline], draw: Draw) -> dict[str, Any]:
    """Each rig's figures and verdicts, the gravest first, its advice, cautions and drawings (SVG texts)."""
    return {
        "title": studio.title,
        "rigs": [_rig(sight, draw) for sight in sights],
        "readers": [
            {"id": reader.id, "name": reader.name, "paces": sorted(reader.paces)} for reader in studio.readers.values()
        ],
    }


def _rig(sight: Sightline, draw: Draw) -> dict[str, Any]:
    return {
        "id": sight.rig.id,
        "title": sight.rig.title or sight.rig.id,
        "type": f"{sight.column.font_px:.0f} px type in a column of {sight.column.width_px:.0f} px",
        "flip": sight.rig.flip,
        "verdicts": [_verdict(v) for v in sorted(sight.verdicts, key=lambda v: GRAVEST.index(v.level))],
        "figures": figure_rows(sight),
        "advice": sight.advice.get("sentence"),
        "cautions": cautions(sight.rig),
        "drawings": list(draw(sight)),
    }


def _verdict(verdict: Verdict) -> dict[str, str]:
    low, high = (None if x is None else f"{x:.4g}" for x in (verdict.low, verdict.high))
    bounds = f"{low} to {high}" if low and high else f"at least {low}" if low else f"at most {high}" if high else ""
    return {
        "level": verdict.level,
        "name": quantity_name(verdict.quantity),
        "value": f"{verdict.value:.4g} {verdict.unit}".strip(),
        "bounds": bounds,
        "source": verdict.source,
    }
