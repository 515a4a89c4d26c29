"""Reads values of a TOML text one by one and keeps every fault with its place, so that all can be told at once."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from promptprep.errors import ManyFaults, PromptprepError, UnreadableInput
from promptprep.sightline.values import BadRig, near_hint
from promptprep.store.places import KeyPlaces

T = TypeVar("T")


class Checked:
    """The values of a TOML text. A path names tables from the outside in; a bad value gives a fault and a default."""

    def __init__(self, values: Mapping[str, Any], places: KeyPlaces, file: str | None) -> None:
        self.values, self.places, self.file = values, places, file
        self.faults: list[PromptprepError] = []

    def fault(self, path: tuple[str, ...], message: str, hint: str, code: str = "wrong-value") -> None:
        line, column = self.places.of(*path)
        self.faults.append(UnreadableInput(code, message, hint, self.file, line, column))

    def attempt(self, path: tuple[str, ...], read: Callable[[], T]) -> T | None:
        """What `read` gives; a fault that it raises is kept with the place of `path`."""
        try:
            return read()
        except PromptprepError as fault:
            fault.file = self.file
            fault.line, fault.column = self.places.of(*path, *([fault.key] if isinstance(fault, BadRig) else []))
            self.faults.append(fault)
            return None

    def known(self, path: tuple[str, ...], table: Mapping[str, Any], keys: tuple[str, ...], what: str) -> None:
        for key in table:
            if key not in keys:
                self.fault((*path, key), f"the {what} has an unknown key {key!r}", near_hint(key, keys), "unknown-key")

    def table(self, *path: str) -> Mapping[str, Any]:
        node: Any = self.values
        for name in path:
            node = node.get(name, {}) if isinstance(node, Mapping) else {}
        if isinstance(node, Mapping):
            return node
        self.fault(path, f"{'.'.join(path)} is no table", f"write [{'.'.join(path)}] and its keys below")
        return {}

    def tables(self, name: str, read: Callable[[str, Mapping[str, Any]], T]) -> dict[str, T]:
        found = {}
        for key in self.table(name):
            if isinstance(self.table(name).get(key), Mapping):
                found[key] = read(key, self.table(name, key))
            else:
                self.table(name, key)
        return found

    def text(self, *path: str, default: str | None = None) -> Any:
        value = self.table(*path[:-1]).get(path[-1], default)
        if value is None or isinstance(value, str):
            return value
        self.fault(path, f"{path[-1]} must be text, not {value!r}", f'write it in quotes: {path[-1]} = "..."')
        return default

    def texts(self, *path: str) -> tuple[str, ...]:
        value = self.table(*path[:-1]).get(path[-1], [])
        if isinstance(value, list) and all(isinstance(item, str) for item in value):
            return tuple(value)
        self.fault(path, f"{path[-1]} must be a list of texts", f'write it as {path[-1]} = ["one", "two"]')
        return ()

    def flag(self, *path: str) -> bool:
        value = self.table(*path[:-1]).get(path[-1], False)
        if not isinstance(value, bool):
            self.fault(path, f"{path[-1]} is yes or no, not {value!r}", f"write {path[-1]} = true or false")
        return bool(value)

    def number(self, low: float, high: float, *path: str) -> float | None:
        value = self.table(*path[:-1]).get(path[-1])
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, int | float) or not low <= value <= high:
            self.fault(path, f"{path[-1]} cannot be {value!r}", f"write a number from {low:g} to {high:g}")
            return None
        return float(value)

    def raise_faults(self) -> None:
        """Raises what was found, in the order of the text."""
        self.faults.sort(key=lambda fault: (fault.line or 0, fault.column or 0))
        if self.faults:
            raise self.faults[0] if len(self.faults) == 1 else ManyFaults(self.faults)
