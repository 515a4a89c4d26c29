"""What the reader's eye has against the rig."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule
from promptprep.model.finding import Level
from promptprep.model.sightline import Sightline, Verdict, quantity_name
from promptprep.spans import Span

_LEVELS: dict[str, Level] = {"fix": "fix", "look": "note"}
_OPENINGS = {"fix": "outside the limits", "note": "past limits that are advised"}
_NAMES = {"travel": "the eyes travel to each side by"}


def find(context: Context) -> Iterator[Hit]:
    """One finding, at the start of the first copy, for what holds for all of it.

    Limits that must be kept make it a `fix`. Where only stricter ones are passed it is a `note`: the rig's advice has
    weighed them already, and saying so on every script would be noise.
    """
    if context.sightline is None or not context.passages:
        return
    first = context.passages[0]
    place = first.source(Span(0, min(1, len(first.text))))
    for wanted, level in _LEVELS.items():
        wrong = {v.quantity: v for v in reversed(context.sightline.verdicts) if v.level == wanted}
        if wrong:
            what = "; ".join(_said(v) for v in reversed(wrong.values()))
            message = f"{_OPENINGS[level]} on rig {context.sightline.rig.id!r}: {what}"
            yield Hit(place, message, _advice(context.sightline, level), level=level)
            return


def _advice(sightline: Sightline, level: Level) -> str:
    """The rig's own advice where something must change, else that nothing must; and where all figures stand."""
    first = sightline.advice.get("sentence", "") if level == "fix" else "Every limit that must be kept is kept."
    return f"{first} Each figure with its limit and source: promptprep sightline".lstrip()


def _said(verdict: Verdict) -> str:
    bounds = (
        ("at least", verdict.low)
        if verdict.low is not None and verdict.value < verdict.low
        else ("at most", verdict.high)
    )
    limit = f", {bounds[0]} {bounds[1]:.3g}" if bounds[1] is not None else ""
    name = quantity_name(verdict.quantity)
    unit = verdict.unit.replace("deg", "degrees").replace("arcmin", "arcminutes")
    return f"{_NAMES.get(name, name)} {verdict.value:.3g} {unit}{limit}"


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
