"""What the desk says to its page: lists and prepared files as JSON objects."""

from __future__ import annotations

from typing import Any

from promptprep.faces.drafts import TimedDraft
from promptprep.faces.scripts import Report
from promptprep.rendering.faults import fault_objects
from promptprep.rendering.first import first_things
from promptprep.rendering.verdicts import slot_verdict
from promptprep.units import clock_text


def listed_object(one: TimedDraft) -> dict[str, Any]:
    """A script of the list: what it is called, how long it runs, whether it fits."""
    if one.script is None or one.timing is None:
        return {"name": one.path.name, "error": fault_objects(one.fault)[0] if one.fault else None}
    verdict, sentence = slot_verdict(one.timing)
    return {
        "name": one.path.name,
        "show": one.script.name,
        "title": one.script.title,
        "language": one.script.language,
        "mean": clock_text(one.timing.timing.mean_s),
        "slot": None if one.timing.slot_s is None else clock_text(one.timing.slot_s),
        "verdict": verdict,
        "sentence": sentence,
    }


def prepared_object(report: Report) -> dict[str, Any]:
    """What was written, by script, and what to do first."""
    files = [path.name for path in report.files]
    return {
        "files": [name for name in files if ".kept-" not in name],
        "kept": [name for name in files if ".kept-" in name],
        "first": first_things(report.prepared),
        "fixes": report.fixes,
    }
