"""Excuses that do not hold. They are found by `excuses`, which sees all other findings; here are their pages."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.excuses import REASONLESS, STALE
from promptprep.checking.rule import EVERY, Hit, Rule


def find(context: Context) -> Iterator[Hit]:
    """Nothing by itself: see `excuses.excuse`."""
    return iter(())


RULES = (
    Rule(
        name=STALE,
        level="look",
        find=find,
        languages=EVERY,
        sees="An excuse in a remark for a finding that is not there any more, or whose name no rule has.",
        trips="It would hide the same fault when it comes back.",
        sources=("promptprep's script format",),
        fires="<!-- excuse: doubled-word because it is a quotation -->\n\nThe moon rises in the east.",
        silent="<!-- excuse: doubled-word because it is a quotation -->\n\nThe moon rises in the the east.",
    ),
    Rule(
        name=REASONLESS,
        level="look",
        find=find,
        languages=EVERY,
        sees="An excuse that does not say why.",
        trips="The next person cannot tell whether it still holds.",
        sources=("promptprep's script format",),
        fires="<!-- excuse: doubled-word -->\n\nThe moon rises in the the east.",
        silent="<!-- excuse: doubled-word because it is a quotation -->\n\nThe moon rises in the the east.",
    ),
)
