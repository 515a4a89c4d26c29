"""Where a key stands in a TOML text: the parser gives values without places, and faults need a place."""

from __future__ import annotations

import re
from collections.abc import Iterator

KeyPath = tuple[str, ...]

_HEADER = re.compile(r"\s*\[{1,2}\s*(?P<keys>[^\[\]]+?)\s*\]{1,2}\s*(?:#.*)?$")
_BARE = r"[A-Za-z0-9_-]+|\"[^\"\n]*\"|'[^'\n]*'"
_KEY = re.compile(rf"\s*(?P<keys>(?:{_BARE})(?:\s*\.\s*(?:{_BARE}))*)\s*=")
_PART = re.compile(_BARE)
_TRIPLE = re.compile(r'"""|\'\'\'')


class KeyPlaces:
    """Finds (line, column), both from 1, of a key by its path of names."""

    def __init__(self, text: str) -> None:
        self._places: dict[KeyPath, tuple[int, int]] = {}
        self._lines = text.splitlines()
        for path, place in _keys(self._lines):
            self._places.setdefault(path, place)

    def of(self, *path: str) -> tuple[int, int]:
        """The key's place; inside an inline table its place in that line; else its nearest table's, else (1, 1)."""
        if path in self._places:
            return self._places[path]
        for length in range(len(path) - 1, 0, -1):
            if path[:length] in self._places:
                line, column = self._places[path[:length]]
                inside = re.search(rf"(?<![\w-]){re.escape(path[length])}\s*=", self._lines[line - 1][column - 1 :])
                return (line, column + inside.start()) if inside else (line, column)
        return 1, 1


def _keys(lines: list[str]) -> Iterator[tuple[KeyPath, tuple[int, int]]]:
    table: KeyPath = ()
    fence: str | None = None
    for number, line in enumerate(lines, 1):
        if fence is None:
            if header := _HEADER.match(line):
                table = _names(header["keys"])
                yield from _with_parents((), table, (number, header.start("keys") + 1))
            elif key := _KEY.match(line):
                yield from _with_parents(table, _names(key["keys"]), (number, key.start("keys") + 1))
        fence = _fence_after(line, fence)


def _with_parents(table: KeyPath, names: KeyPath, place: tuple[int, int]) -> Iterator[tuple[KeyPath, tuple[int, int]]]:
    for length in range(1, len(names) + 1):
        yield table + names[:length], place


def _names(keys: str) -> KeyPath:
    return tuple(part.strip("\"'") for part in _PART.findall(keys))


def _fence_after(line: str, fence: str | None) -> str | None:
    """The three quotes that are still open after a line, if any."""
    for mark in _TRIPLE.findall(line):
        if fence is None:
            fence = mark
        elif fence == mark:
            fence = None
    return fence
