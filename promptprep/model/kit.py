"""A translator's kit: what there is to translate, the room for it, and what comes back."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

UnitKind = Literal["script title", "title", "passage", "note", "cue"]


@dataclass(frozen=True, slots=True)
class KitUnit:
    """One text to translate. `code` names it ("look/3"); `target` is "" until it is translated.

    `text` is in the script's own marking, pronunciations left out: a language needs its own.
    """

    code: str
    kind: UnitKind
    text: str
    target: str = ""
    pronunciations: tuple[tuple[str, str], ...] = ()
    cues: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class KitSegment:
    """The texts of one segment. `room_s` is what its slot leaves for speech; the budgets are for the whole of it.

    None where there is no slot, or the language has no pace.
    """

    id: str
    title: str
    units: tuple[KitUnit, ...]
    room_s: float | None = None
    characters: int | None = None
    words: int | None = None
    cues: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Kit:
    """All texts of a script for one language. `basis` says where the budgets come from."""

    name: str
    source_language: str
    target_language: str
    title: KitUnit
    segments: tuple[KitSegment, ...]
    basis: str = ""
    direction: str = "ltr"
    source_direction: str = "ltr"

    @property
    def units(self) -> tuple[KitUnit, ...]:
        return (self.title, *(u for s in self.segments for u in s.units))


@dataclass(frozen=True, slots=True)
class Filled:
    """What was read from a filled kit: translations by unit code, and what the file had lost.

    `loose` holds (source text, translation) of rows whose code was gone, in their order.
    """

    target_language: str
    targets: dict[str, str] = field(default_factory=dict)
    loose: tuple[tuple[str, str], ...] = ()
    losses: tuple[str, ...] = ()
