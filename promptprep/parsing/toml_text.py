"""TOML that people write: its values, or a fault with its place."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Sequence
from typing import Any

from promptprep.errors import UnreadableInput

_SLIPS = (
    (re.compile(r"=\s*[“”„‟«»‘’]|[“”„‟»’]\s*$"), 'write straight quotes (") for curly ones'),
    (re.compile(r"=\s*[\"']?\d[\d.,]*\s*(?:\"\s*\"|''|['″”\"])"), 'write inches as "24 in", feet as "6 ft 2 in"'),
    (re.compile(r"^\s*date\s*="), "write year, month and day: date = 2026-12-01"),
)
_AT = re.compile(r"\s*\(at (?:line (\d+), column (\d+)|end of document)\)")


def toml_values(
    text: str, code: str, what: str, hint: str, file: str | None = None, *, lines_before: int = 0
) -> dict[str, Any]:
    """The values of a TOML text, with whatever line ends.

    Raises `UnreadableInput` (`code`) with line and column; `what` names the text in its message ("the studio file"),
    and `lines_before` lines stand before it in its file.
    """
    plain = text.replace("\r\n", "\n").replace("\r", "\n")
    try:
        return tomllib.loads(plain)
    except RecursionError:
        message, place = f"{what} does not parse: it is nested too deeply", None
    except ValueError as fault:  # a number of more digits than Python reads is no TOMLDecodeError
        message, place = f"{what} does not parse: {_AT.sub('', str(fault))}", _AT.search(str(fault))
    line = int(place[1]) if place and place[1] else plain.count("\n") + 1
    column = int(place[2]) if place and place[2] else 1
    hint = _hint(plain.split("\n")[line - 1 : line]) or hint
    raise UnreadableInput(code, message, hint, file, line + lines_before, column)


def _hint(lines: Sequence[str]) -> str:
    """What to write instead where a line shows a slip that many make; nothing where it does not."""
    return next((hint for line in lines for slip, hint in _SLIPS if slip.search(line)), "")
