"""A figure with more digits than can be heard."""

from __future__ import annotations

from collections.abc import Iterator

from promptprep.checking.context import Context, Passage
from promptprep.checking.figures import Figure, figures, rounded
from promptprep.checking.rule import Hit, Parameter, Rule
from promptprep.model.finding import Level

_DIGITS = Parameter(5, "significant digits", "round figures for the ear: common practice, no source")


def find(context: Context) -> Iterator[Hit]:
    most = int(context.limit("overexact-figure.digits", _DIGITS.value))
    about = context.language.maybe("faults", "about", "")
    for passage in context.passages:
        for figure in figures(passage):
            level = _level(figure, most)
            if level is not None:
                yield _hit(passage, figure, about, level)


def _level(figure: Figure, most: int) -> Level | None:
    if figure.kind not in ("count", "decimal"):
        return None
    if len(figure.digits) >= most:
        return "look"
    return "note" if len(figure.digits) == most - 1 else None


def _hit(passage: Passage, figure: Figure, about: str, level: Level) -> Hit:
    shorter = rounded(figure.text)
    gap = "" if about in ("约", "約") else " "
    instead = f"{about}{gap}{shorter}" if about and passage.plain(figure.span) and figure.text.isascii() else None
    message = f"{figure.text} has more digits than a listener keeps"
    return Hit(passage.source(figure.span), message, "round it, and say that it is rounded", instead, level)


RULE = Rule(
    name="overexact-figure",
    level="look",
    find=find,
    sees="A number with four (`note`) or more (`look`) significant digits that is no year, date, time or code.",
    trips="It takes seconds to say, invites a slip, and nobody who hears it keeps more than its size.",
    sources=("Rounding for the ear: common practice, no source",),
    parameters={"digits": _DIGITS},
    fires="The Moon is 384,403 kilometres away.",
    silent="The Moon is about 380,000 kilometres away.",
)
