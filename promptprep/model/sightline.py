"""What the reader's eye sees on the rig."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from promptprep.model.lines import Column
from promptprep.model.rig import Rig

VerdictLevel = Literal["good", "look", "fix", "unknown"]


@dataclass(frozen=True, slots=True)
class Verdict:
    """A figure beside its limits. `low` or `high` is None where the source gives no such bound."""

    quantity: str
    value: float
    unit: str
    low: float | None
    high: float | None
    level: VerdictLevel
    source: str


@dataclass(frozen=True, slots=True)
class Sightline:
    """Figures of one rig with one column. Angles in degrees or arcminutes as the names say."""

    rig: Rig
    column: Column
    optical_path_mm: float
    cap_height_mm: float
    x_height_mm: float
    line_height_mm: float
    cap_height_arcmin: float
    x_height_arcmin: float
    line_height_arcmin: float
    travel_left_deg: float
    travel_right_deg: float
    first_line_deg: float
    last_line_deg: float
    characters_per_line: float
    words_per_line: float
    lines_visible: int
    seconds_visible: float
    contrast_ratio: float
    lens_loss_stops: float | None
    verdicts: tuple[Verdict, ...] = ()
    contradictions: tuple[str, ...] = ()
    advice: Mapping[str, Any] = field(default_factory=dict)
