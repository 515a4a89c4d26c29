"""Reads what stands inside a bracket: `[clip 0:25 Moonrise]`, `[vision: two-shot]`, `[pause 2]`."""

from __future__ import annotations

import re

from promptprep.errors import BadCall
from promptprep.model.script import CUE_KINDS, TIMED_KINDS, Cue
from promptprep.spans import Span
from promptprep.units import parse_duration

BRACKET = re.compile(r"\[\s*([^\W_][\w-]*)(?:\s*:\s*|\s+|(?=\]))([^\[\]\n]*)\](?![({\[])")

_TIME = re.compile(r"(\d+(?::\d{1,2}){0,2}(?:[.,]\d+)?\s*(?:s|sec|min)?)(?=\s|$)[\s,:]*")


def read_cue(kind: str, rest: str, span: Span) -> Cue:
    """A cue from its first word and the rest of its bracket. An unknown kind takes no time.

    A length of time counts only for `pause`, `clip` and `live`, and only as the first thing after the kind.
    """
    kind = kind.lower()
    text, duration = rest.strip(), None
    if kind in TIMED_KINDS:
        text, duration = _split_time(text)
    return Cue(kind=kind, text=text, span=span, duration_s=duration, known=kind in CUE_KINDS)


def _split_time(text: str) -> tuple[str, float | None]:
    if found := _TIME.match(text):
        try:
            return text[found.end() :], parse_duration(found[1])
        except BadCall:
            pass
    return text, None
