"""All rules over one script."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from promptprep.checking.catalogue import RULES
from promptprep.checking.context import Context
from promptprep.checking.excuses import excuse
from promptprep.checking.rule import Rule
from promptprep.model.finding import LEVELS, Finding


def check_script(context: Context, rules: Sequence[Rule] = RULES) -> list[Finding]:
    """The findings of a script, in the order of its text, levels as the studio wants them.

    A rule that does not claim the script's language stays silent. Excused findings are left out; excuses that
    excuse nothing are findings themselves. Work grows in a straight line with the length of the script.
    """
    found = [finding for rule in rules if rule.reads(context.base) for finding in _found(rule, context)]
    kept = [_levelled(finding, context) for finding in excuse(found, context)]
    return sorted((f for f in kept if f is not None), key=lambda f: (f.start, f.end, LEVELS.index(f.level), f.name))


def _found(rule: Rule, context: Context) -> Iterator[Finding]:
    if context.studio.levels.get(rule.name) == "off":
        return
    seen = set()
    for hit in rule.find(context):
        if hit.span not in seen:
            seen.add(hit.span)
            yield rule.finding(hit)


def _levelled(finding: Finding, context: Context) -> Finding | None:
    wanted = context.studio.levels.get(finding.name)
    if wanted == "off":
        return None
    if wanted in LEVELS and wanted != finding.level:
        return Finding(finding.name, wanted, finding.start, finding.end, finding.message, finding.hint, finding.instead)
    return finding
