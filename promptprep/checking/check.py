"""All rules over one script."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import replace

from promptprep.checking.catalogue import RULES
from promptprep.checking.context import Context
from promptprep.checking.excuses import excuse
from promptprep.checking.rule import EVERY, Rule
from promptprep.checking.rules import pasted_markup
from promptprep.model.finding import LEVELS, Finding

_AMONG_TAGS = frozenset(("bare-symbol", "noun-stack", "unheard-quotes"))
_WORDED = _AMONG_TAGS | {"unknown-cue"} | {rule.name for rule in RULES if rule.languages != EVERY}


def check_script(context: Context, rules: Sequence[Rule] = RULES) -> list[Finding]:
    """The findings of a script, in the order of its text, levels as the studio wants them.

    A rule that does not claim the script's language stays silent. Excused findings are left out; excuses that
    excuse nothing are findings themselves. Work grows in a straight line with the length of the script.
    """
    found = [finding for rule in rules if rule.reads(context.base) for finding in _found(rule, context)]
    found = _without_pasted(found, context)
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


def _without_pasted(found: list[Finding], context: Context) -> list[Finding]:
    """Without what the rules on wording find inside code or a table, or the rules on signs among tags.

    There pasted-markup has said all there is to say. Switched off, it hides nothing.
    """
    told = [] if context.studio.levels.get(pasted_markup.RULE.name) == "off" else context.pasted
    if not told:
        return found
    starts = [one.span.start for one in told]
    kept = []
    for finding in found:
        at = bisect_right(starts, finding.start) - 1
        inside = at >= 0 and finding.start < told[at].span.end
        if not inside or finding.name not in (_AMONG_TAGS if told[at].kind == "markup" else _WORDED):
            kept.append(finding)
    return kept


def _levelled(finding: Finding, context: Context) -> Finding | None:
    wanted = context.studio.levels.get(finding.name)
    if wanted == "off":
        return None
    if wanted in LEVELS and wanted != finding.level:
        return replace(finding, level=wanted)
    return finding
