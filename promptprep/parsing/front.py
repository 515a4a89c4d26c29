"""Front matter: TOML between two `+++` lines at the very top of a script."""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping
from datetime import date, datetime
from typing import Any

from promptprep.errors import BadCall, UnreadableInput
from promptprep.parsing.toml_text import toml_values
from promptprep.spans import LineIndex
from promptprep.units import parse_duration

_TOP = re.compile(r"\ufeff?\+\+\+[ \t]*(?:\r\n|\n|\r)")
_END = re.compile(r"^\+\+\+[ \t]*(?:\r\n|\n|\r|\Z)", re.MULTILINE)
_BARE_DECIMAL = re.compile(r"\d{1,2}[.,]\d+")
_LAST_END = re.compile(r"(?:\r\n|\n|\r)\Z")

KEYS: Mapping[str, tuple[type, ...]] = {
    "title": (str,),
    "language": (str,),
    "reader": (str,),
    "rig": (str,),
    "slot": (str, int, float),
    "date": (str, date, datetime),
    "author": (str,),
    "style": (str,),
    "made_from": (dict,),
}


def split_front(source: str, file: str | None) -> tuple[dict[str, Any], int]:
    """(the front matter's values, offset where the copy begins). Raises `UnreadableInput` with line and column."""
    top = _TOP.match(source)
    if not top:
        return {}, 1 if source.startswith("\ufeff") else 0
    end = _END.search(source, top.end())
    if not end:
        raise UnreadableInput(
            "front-matter-open", "the front matter has no closing line", "close it with a line of +++", file, 1, 1
        )
    hint = 'write key = "value", one a line, such as slot = "4:00"'
    text = _LAST_END.sub("", source[top.end() : end.start()])
    values = toml_values(text, "front-matter-broken", "the front matter", hint, file, lines_before=1)
    _check(values, source[: end.start()], file)
    return values, end.end()


def _check(values: Mapping[str, Any], source: str, file: str | None) -> None:
    for key, value in values.items():
        line, column = key_place(source, key)
        if key not in KEYS:
            near = difflib.get_close_matches(key, KEYS, 1)
            hint = f"did you mean {near[0]!r}?" if near else "known keys: " + ", ".join(KEYS)
            raise UnreadableInput("unknown-key", f"front matter has an unknown key {key!r}", hint, file, line, column)
        if not isinstance(value, KEYS[key]):
            hint = f'write it as text: {key} = "..."'
            raise UnreadableInput("wrong-value", f"{key} = {value!r} is not text", hint, file, line, column)


def key_place(source: str, key: str) -> tuple[int, int]:
    """(line, column) of a key in TOML text; (1, 1) where it is not found."""
    found = re.search(
        rf"^\s*[\"']?({re.escape(key)})[\"']?\s*[=.]|^\s*\[\[?({re.escape(key)})[\].]", source, re.MULTILINE
    )
    if not found:
        return 1, 1
    return LineIndex(source).place(found.start(1) if found[1] else found.start(2))


def read_slot(value: str | float, file: str | None, line: int, column: int) -> float:
    """Seconds of a slot. Raises `UnreadableInput` at its place where it is no time above zero."""
    hint = 'write minutes and seconds, such as slot = "4:00"'
    if _BARE_DECIMAL.fullmatch(str(value).strip()):
        message = f"the slot {value!r} may mean minutes or seconds"
        raise UnreadableInput("slot-no-time", message, hint, file, line, column)
    try:
        seconds = parse_duration(str(value))
    except BadCall:
        raise UnreadableInput("slot-no-time", f"the slot {value!r} is no time", hint, file, line, column) from None
    if seconds <= 0:
        raise UnreadableInput("slot-no-time", f"the slot {value!r} leaves no time", hint, file, line, column)
    return seconds
