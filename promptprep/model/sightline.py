"""What the reader's eye sees on the rig."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from promptprep.model.lines import Column
from promptprep.model.rig import Rig

VerdictLevel = Literal["good", "look", "fix", "unknown"]


def quantity_name(quantity: str) -> str:
    """A figure's name in words: its unit stands beside the value."""
    return re.sub(r"_(arcmin|deg|mm|stops|s)$", "", quantity).replace("_", " ").replace("cap height", "capital height")


@dataclass(frozen=True, slots=True)
class Limit:
    """A bound for a quantity: `low` or `high`, never both. `level` is what a value outside it deserves.

    `for_acuity`: a low bound that grows as 0.7 / acuity for a reader who sees less than 0.7. `script` is "wide"
    for limits of square characters (Chinese, Japanese, Korean), "narrow" for the rest, "" for all.
    """

    id: str
    quantity: str
    unit: str
    low: float | None
    high: float | None
    level: VerdictLevel
    source: str
    for_acuity: bool = False
    script: str = ""

    @property
    def bound(self) -> float:
        return self.low if self.low is not None else self.high if self.high is not None else float("nan")


@dataclass(frozen=True, slots=True)
class TypeFigures:
    """What the pure steps need to know of a font and a language: heights and mean advance in em, spaces included.

    `seconds_per_character` comes from the reader's pace, 0 where it is not known. `characters_per_word` holds the
    space; None where the language has no words between spaces. `longest_word_em` is the widest word of the copy, 0
    where not known.
    """

    cap_em: float
    x_em: float
    advance_em: float
    seconds_per_character: float
    characters_per_word: float | None = None
    longest_word_em: float = 0.0


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
    """Figures of one rig with one column. Angles in degrees or arcminutes as the names say.

    Heights subtend 2*atan(h / 2d), d the optical path. Places are angles from the lens, atan(offset / d), the eye
    on the lens axis: `travel_left_deg` and `travel_right_deg` are positive for a column that reaches to that side;
    `first_line_deg`, `last_line_deg` and `reading_line_deg` (centres of lines) are positive above the lens and
    negative below it. `words_per_line` is None where the language has no words between spaces.
    """

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
    words_per_line: float | None
    lines_visible: int
    seconds_visible: float
    contrast_ratio: float
    lens_loss_stops: float | None
    verdicts: tuple[Verdict, ...] = ()
    contradictions: tuple[str, ...] = ()
    advice: Mapping[str, Any] = field(default_factory=dict)
    reading_line_deg: float = 0.0
    contrast_at_eye: float | None = None
    ghost_mm: float | None = None
    type_figures: TypeFigures | None = None
