"""Russian prepositions of one letter, whose form hangs on the sound of the number behind them."""

from __future__ import annotations

import re
from dataclasses import replace

from promptprep.model.spoken import Reading
from promptprep.spans import Span

# Preposition -> what it grows by, and how the words begin before which it does (Русская грамматика, 1980; from memory).
_GROWN = {"в": ("о", ("втор",)), "с": ("о", ("втор", "ст")), "о": ("б", ("а", "и", "о", "у", "э"))}
_ALONE = re.compile(r"(?<![\w.])([вВсСоО])[ \u00a0]\Z")


def with_preposition(found: Reading, text: str, floor: int) -> Reading:
    """The reading, with the preposition before it where that changes: "с 2 мая" -> "со второго мая"."""
    start = found.span.start
    before = _ALONE.search(text, max(floor, start - 3), start)
    if not before or before.start() < floor:
        return found
    grown, beginnings = _GROWN[before[1].lower()]
    if not found.said.startswith(beginnings):
        return found
    head = f"{before[1]}{grown} "
    return replace(
        found,
        span=Span(before.start(), found.span.end),
        said=head + found.said,
        otherwise=tuple(head + other for other in found.otherwise),
    )
