"""Words that send the listener back: the former, the latter, respectively, the above."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context
from promptprep.checking.rule import Hit, Rule
from promptprep.checking.rules.patterned import matches, phrases
from promptprep.model.language import UNSPACED


def find(context: Context) -> Iterator[Hit]:
    pattern = phrases(context.listed("order_words"), context.base not in (*UNSPACED, "ko"))
    for passage, span, words in matches(context, pattern):
        yield Hit(passage.source(span), f"{words!r} sends the listener back", "say again what is meant")


RULE = Rule(
    name="backward-pointer",
    level="look",
    find=find,
    sees="A word that can be followed only by looking back on a page: former, latter, respectively, above.",
    trips="A listener cannot look back, and a reader stops to see what was meant.",
    sources=("common practice, no source",),
    fires="Mars and Venus are up, and the latter is brighter.",
    silent="Mars and Venus are up, and Venus is brighter.",
)
