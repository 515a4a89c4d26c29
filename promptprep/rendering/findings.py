"""Findings as rows: with file, line, column and the place itself."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from promptprep.checking.catalogue import RULES
from promptprep.model.finding import Finding
from promptprep.model.prepared import PreparedScript
from promptprep.spans import LineIndex


def finding_objects(one: PreparedScript) -> list[dict[str, Any]]:
    """Findings with file, line and column; the keys are a contract."""
    index = LineIndex(one.script.source)
    return [finding_object(finding, one.script.source, one.script.file, index) for finding in one.findings]


def finding_object(finding: Finding, source: str, file: str | None, index: LineIndex) -> dict[str, Any]:
    line, column = index.place(finding.start)
    return {
        "file": file,
        "line": line,
        "column": column,
        "name": finding.name,
        "level": finding.level,
        "excerpt": excerpt(source, finding.start, finding.end),
        "message": finding.message,
        "why": why(finding.name),
        "hint": finding.hint,
        "instead": finding.instead,
    }


@lru_cache(maxsize=1)
def _reasons() -> dict[str, str]:
    return {rule.name: rule.trips for rule in RULES}


def why(name: str) -> str:
    """Why a finding of that name trips a reader, in a sentence."""
    return _reasons().get(name, "")


def excerpt(source: str, start: int, end: int, around: int = 24) -> str:
    """The place with a little of what surrounds it, marked by guillemets of our own: …the ›place‹ in…"""
    low, high = max(0, start - around), min(len(source), max(end, start) + around)
    low = max(low, source.rfind("\n", 0, start) + 1)
    stop = source.find("\n", end)
    high = min(high, stop) if stop >= 0 else high
    middle = " ".join(source[start:end].split())
    if len(middle) > 120:
        middle = middle[:70] + " … " + middle[-40:]
    return f"{'…' if low and source[low - 1] != chr(10) else ''}{source[low:start]}›{middle}‹{source[end:high]}"
