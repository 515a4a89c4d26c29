"""Reads the limits that a sightline is held against, with a studio's own bounds in their place."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

from promptprep.model.rig import Studio
from promptprep.model.sightline import Limit

FOLDER = Path(__file__).parent.parent / "data"
ORDER = (
    "cap_height_arcmin", "x_height_arcmin", "travel_deg", "reading_line_below_deg", "reading_line_above_deg",
    "characters_per_line", "lines_visible", "seconds_visible", "line_spacing", "contrast_ratio", "contrast_at_eye",
    "path_over_diagonal", "glass_clearance",
)  # fmt: skip
SEEN = {"original": "", "reported": " (as reported)", "memory": " (from memory)", "none": ""}


@lru_cache(maxsize=1)
def default_limits() -> tuple[Limit, ...]:
    """All limits of `data/limits.toml`, their sources in words, the most telling quantities first."""
    sources = tomllib.loads((FOLDER / "sources.toml").read_text("utf-8"))
    entries = tomllib.loads((FOLDER / "limits.toml").read_text("utf-8"))
    limits = [
        Limit(
            id=name,
            quantity=entry["quantity"],
            unit=entry["unit"],
            low=entry.get("low"),
            high=entry.get("high"),
            level=entry["level"],
            source=sources[entry["source"]]["title"] + SEEN[sources[entry["source"]]["seen"]],
            for_acuity=entry.get("for_acuity", False),
            script=entry.get("script", ""),
        )
        for name, entry in entries.items()
    ]
    return tuple(sorted(limits, key=lambda limit: (ORDER.index(limit.quantity), limit.bound)))


def limits_of(studio: Studio) -> tuple[Limit, ...]:
    """The limits with the studio's own bounds (`[limits]` in studio.toml) in place of the published ones."""
    return tuple(_own(limit, studio.limits) for limit in default_limits())


def _own(limit: Limit, bounds: Mapping[str, float]) -> Limit:
    if limit.id not in bounds:
        return limit
    bound = float(bounds[limit.id])
    source = f"this studio's own limit, in place of {limit.bound:g} ({limit.source})"
    low, high = (bound, None) if limit.low is not None else (None, bound)
    return replace(limit, low=low, high=high, source=source)
