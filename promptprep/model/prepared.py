"""A script with everything known about it: what the renderings are made from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from promptprep.model.finding import Finding
from promptprep.model.lines import BrokenScript
from promptprep.model.rig import Reader, Rig, Studio
from promptprep.model.script import Script
from promptprep.model.sightline import Sightline
from promptprep.model.timing import ScriptTiming


@dataclass(frozen=True, slots=True)
class PreparedScript:
    """`digest` (12 hex digits) stands for the wording: screen copy and paper copy print the same one.

    `difficulty` holds one figure a paragraph, keyed by (segment, block).
    """

    script: Script
    timing: ScriptTiming
    findings: tuple[Finding, ...]
    broken: BrokenScript
    sightline: Sightline
    rig: Rig
    digest: str
    direction: str = "ltr"
    reader: Reader | None = None
    difficulty: Mapping[tuple[int, int], float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Prepared:
    """Everything of one call of `prepare`."""

    studio: Studio
    scripts: tuple[PreparedScript, ...]
    sightlines: tuple[Sightline, ...] = ()
