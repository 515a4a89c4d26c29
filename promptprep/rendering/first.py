"""What to do first: plain sentences for a person, the most pressing first."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.model.finding import Finding
from promptprep.model.prepared import Prepared, PreparedScript
from promptprep.model.sightline import quantity_name
from promptprep.rendering.direction import isolated
from promptprep.rendering.verdicts import slot_task
from promptprep.spans import LineIndex


def first_things(prepared: Prepared) -> list[str]:
    """Plain sentences, the most pressing first."""
    things = [text for one in prepared.scripts if (text := slot_task(_name(one), one.timing))]
    for one in prepared.scripts:
        things.extend(_fix_sentences(one))
    used = {one.rig.id for one in prepared.scripts}
    for sight in prepared.sightlines:
        if sight.rig.id not in used:
            continue
        bad = [v for v in sight.verdicts if v.level == "fix"]
        if bad:
            nearest = sight.advice.get("sentence") or "See the rig below."
            what = ", ".join(dict.fromkeys(quantity_name(v.quantity) for v in bad))
            things.append(f"Rig {sight.rig.title or sight.rig.id}: out of range: {what}. {nearest}")
    return things


def _fix_sentences(one: PreparedScript) -> Iterator[str]:
    """One sentence for each kind of fault that must be mended, with its lines."""
    index = LineIndex(one.script.source)
    by_name: dict[str, list[Finding]] = {}
    for finding in one.findings:
        if finding.level == "fix" and finding.name != "poor-sightline":  # said once for each rig
            by_name.setdefault(finding.name, []).append(finding)
    for found in by_name.values():
        lines = sorted({index.place(f.start)[0] for f in found})
        where = ("line " if len(lines) == 1 else "lines ") + ", ".join(map(str, lines[:4]))
        more = f" and {len(lines) - 4} more" if len(lines) > 4 else ""
        yield f"{_name(one)}, {where}{more}: {found[0].message}."


def _name(one: PreparedScript) -> str:
    return f"{isolated(one.script.title, 'ltr')} ({one.script.language})"
