"""A fault at a place in the script."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Level = Literal["fix", "look", "note"]
LEVELS: tuple[Level, ...] = ("fix", "look", "note")


@dataclass(frozen=True, slots=True)
class Finding:
    """`start` and `end` are character offsets in the source (in the text given, for `check_text`).

    `name` is the rule's name. `instead` is a ready rewording of that stretch where one is safe by rule.
    """

    name: str
    level: Level
    start: int
    end: int
    message: str
    hint: str
    instead: str | None = None
