"""`promptprep explain`: what a rule sees, why it trips a reader, and where that is known from."""

from __future__ import annotations

import difflib
from typing import Annotated

import typer

from promptprep.errors import BadCall

NAME = "explain"
EXAMPLE = "promptprep explain breathless-sentence"


def command(
    name: Annotated[str | None, typer.Argument(help="A finding's name.", show_default="list all")] = None,
) -> None:
    """Explain a finding: what it sees, why it trips a reader, its sources, an example."""
    from promptprep.checking.catalogue import RULES
    from promptprep.checking.explain import explain

    rules = {rule.name: rule for rule in RULES}
    if name is None:
        for rule in RULES:
            typer.echo(f"{rule.name:32} {rule.level:5} {rule.sees}")
        return
    if name not in rules:
        near = difflib.get_close_matches(name, rules, 1)
        hint = f"did you mean {near[0]!r}?" if near else "promptprep explain lists all"
        raise BadCall("unknown-finding", f"no finding is called {name!r}", hint)
    typer.echo(explain(rules[name]))
