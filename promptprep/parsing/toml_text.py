"""TOML that people write: its values, or a fault with its place."""

from __future__ import annotations

import re
import tomllib
from typing import Any

from promptprep.errors import UnreadableInput

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
    raise UnreadableInput(code, message, hint, file, line + lines_before, column)
