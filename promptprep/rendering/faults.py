"""Faults as JSON objects, for whoever reads JSON: programs at the command line, the desk's page."""

from __future__ import annotations

from typing import Any

from promptprep.errors import ManyFaults, PromptprepError


def fault_objects(fault: PromptprepError) -> list[dict[str, Any]]:
    """A fault, or the several of a call, each with its place as far as it is known."""
    faults = fault.faults if isinstance(fault, ManyFaults) else [fault]
    keys = ("code", "message", "hint", "file", "line", "column")
    return [{key: getattr(one, key) for key in keys} for one in faults]
