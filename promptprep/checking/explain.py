"""The page of one rule, for `promptprep explain`."""

from __future__ import annotations

import textwrap

from promptprep.checking.rule import EVERY, Rule


def explain(rule: Rule) -> str:
    """What the rule sees, why it trips a reader, on what grounds, with its figures and a line that shows it."""
    claimed = "any: it reads no language" if rule.languages == EVERY else " ".join(rule.languages)
    parts = [
        f"{rule.name} ({rule.level})",
        _labelled("sees", rule.sees),
        _labelled("trips", rule.trips),
        _labelled("languages", claimed),
        *(
            _labelled("setting", f"{rule.name}.{key} = {p.value:g} {p.unit}. {p.source}")
            for key, p in rule.parameters.items()
        ),
        *(_labelled("source", source) for source in rule.sources),
        _shown("fires on", rule.fires),
        _shown("silent on", rule.silent),
        _labelled("excuse", f"<!-- excuse: {rule.name} because ... --> before the paragraph lets it stand"),
        _labelled("switch off", f'in studio.toml, under [levels]: {rule.name} = "off" (or "note", "look", "fix")'),
    ]
    return "\n".join(part for part in parts if part)


def _labelled(label: str, text: str) -> str:
    return textwrap.fill(text, 100, initial_indent=f"  {label:<11}", subsequent_indent=" " * 13)


def _shown(label: str, copy: str) -> str:
    return "\n".join(
        _labelled(label if first == 0 else "", line) for first, line in enumerate(copy.splitlines()) if line
    )
