"""The studio: rigs, readers, paper and limits, in millimetres, pixels and degrees."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from promptprep.model.timing import Pace

Flip = Literal["none", "horizontal", "vertical", "both"]
PaperVariant = Literal["rehearsal", "cards", "low-ink"]
PAPER_VARIANTS: tuple[PaperVariant, ...] = ("rehearsal", "cards", "low-ink")
FLIPS: tuple[Flip, ...] = ("none", "horizontal", "vertical", "both")


@dataclass(frozen=True, slots=True)
class Rig:
    """Screen, glass, lens and the reader's mark.

    `picture_width_mm` by `picture_height_mm` is the lit picture of `width_px` by `height_px`. The optical path
    is `eye_to_glass_mm + glass_to_screen_mm` (the second is 0 and the first the distance to the screen where
    there is no glass). `lens_x`, `lens_y` say where the lens axis meets the picture as the reader sees it, as
    fractions from the left and from the top. `glass_reflects` and `glass_passes` are fractions of light, None
    where unknown. `font_px` and `column_px` are the type the studio wants; None lets the advice choose.
    `lies` says where the screen is ("below", "above", "side" of a glass at 45 degrees, or "direct") and `top` which
    way the top edge of its picture points ("camera", "reader", "up", "down"). `leading` is line height over type
    size. `glass_mm` is the glass's thickness; luminances in cd/m2: white, black, and the stray light that the
    reader sees through the glass. None where unknown.
    """

    id: str
    title: str
    picture_width_mm: float
    picture_height_mm: float
    width_px: int
    height_px: int
    flip: Flip
    eye_to_glass_mm: float
    glass_to_screen_mm: float = 0.0
    eye_to_lens_mm: float | None = None
    lens_x: float = 0.5
    lens_y: float = 0.5
    lies: str = "direct"
    top: str = "up"
    ink: str = "#ffffff"
    ground: str = "#000000"
    glass_reflects: float | None = None
    glass_passes: float | None = None
    font_px: float | None = None
    column_px: float | None = None
    margin: float = 0.05
    style: str = "flowing"
    leading: float = 1.5
    glass_mm: float | None = None
    screen_cd_m2: float | None = None
    black_cd_m2: float | None = None
    stray_cd_m2: float | None = None

    @property
    def optical_path_mm(self) -> float:
        return self.eye_to_glass_mm + self.glass_to_screen_mm

    @property
    def px_mm(self) -> float:
        """Millimetres a pixel, across."""
        return self.picture_width_mm / self.width_px

    @property
    def py_mm(self) -> float:
        """Millimetres a pixel, downwards."""
        return self.picture_height_mm / self.height_px

    @property
    def has_glass(self) -> bool:
        return self.lies != "direct"


@dataclass(frozen=True, slots=True)
class Reader:
    """A person who reads to camera. `acuity` is decimal (1.0 normal) with what they wear for the take; `glasses`
    says in their words what that is. None if they do not wish to say.
    """

    id: str
    name: str
    paces: Mapping[str, Pace] = field(default_factory=dict)
    acuity: float | None = None
    rig: str | None = None
    languages: tuple[str, ...] = ()
    style: str | None = None
    glasses: str | None = None


@dataclass(frozen=True, slots=True)
class Paper:
    """How the studio prints: a named size ("A4", "letter", "A5"), type in points, punched-hole margin.

    `font_pt` None: as large as `reading_distance_mm` asks for. `cards` (2 or 4) a sheet, for the copy on cards.
    `beside` names a language whose version of the script stands in small type below each paragraph. `variants` are
    the further copies to print: "rehearsal", "cards", "low-ink".
    """

    size: str = "A4"
    orientation: Literal["portrait", "landscape"] = "portrait"
    font_pt: float | None = None
    punched: bool = False
    low_ink: bool = False
    reading_distance_mm: float = 600.0
    cards: int = 2
    beside: str | None = None
    variants: tuple[PaperVariant, ...] = ()


@dataclass(frozen=True, slots=True)
class Studio:
    """What `studio.toml` says. `levels` overrides findings' levels by rule name ("off" silences one).

    `language` is that of the pages which belong to no script: rig sheets, sheets of a session. A script's own pages
    are in the script's language. `crew_language` is `language` where the file says it, else None: the operator's words
    beside a script are in that, or in the script's own. `sentence_starts_line`: on the screen every sentence begins a
    line of its own.
    """

    title: str = ""
    language: str = "en"
    crew_language: str | None = None
    file: str | None = None
    rigs: Mapping[str, Rig] = field(default_factory=dict)
    readers: Mapping[str, Reader] = field(default_factory=dict)
    paper: Paper = field(default_factory=Paper)
    levels: Mapping[str, str] = field(default_factory=dict)
    limits: Mapping[str, float] = field(default_factory=dict)
    lexicon: Mapping[str, Mapping[str, str]] = field(default_factory=dict)  # language -> word -> how it is said
    assets: tuple[str, ...] = ()
    logo: str | None = None
    template_folder: str | None = None
    sentence_starts_line: bool = False
    extra: Mapping[str, Any] = field(default_factory=dict)
