"""What the reader's eye has against the rig."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule
from promptprep.model.finding import Level
from promptprep.model.sightline import Verdict
from promptprep.spans import Span

_LEVELS: dict[str, Level] = {"look": "look", "fix": "fix"}


def find(context: Context) -> Iterator[Hit]:
    """One for each limit of the rig that is not kept, at the start of the first copy: they hold for all of it."""
    if context.sightline is None or not context.passages:
        return
    first = context.passages[0]
    place = first.source(Span(0, min(1, len(first.text))))
    wrong = list({v.quantity: v for v in reversed(context.sightline.verdicts) if v.level in _LEVELS}.values())[::-1]
    if wrong:
        level: Level = "fix" if any(v.level == "fix" for v in wrong) else "look"
        message = f"on rig {context.sightline.rig.id!r}: " + "; ".join(_said(v) for v in wrong)
        yield Hit(place, message, "promptprep sightline shows what to change", level=level)


def _said(verdict: Verdict) -> str:
    bounds = (
        ("at least", verdict.low)
        if verdict.low is not None and verdict.value < verdict.low
        else ("at most", verdict.high)
    )
    limit = f", {bounds[0]} {bounds[1]:g}" if bounds[1] is not None else ""
    name = verdict.quantity.removesuffix(f"_{verdict.unit}").replace("_", " ")
    return f"{name} {verdict.value:.3g} {verdict.unit}{limit}"


RULE = Rule(
    name="poor-sightline",
    level="look",
    find=find,
    languages=EVERY,
    sees="Sizes, angles and eye travel of the script's rig that are outside their limits.",
    trips="The reader strains to see, or the viewer sees the reader's eyes move.",
    sources=("each limit with its source: promptprep sightline",),
    fires="",
    silent="Good evening.",
)
