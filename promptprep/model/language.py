"""The data of one language, as its files in `data/languages/<tag>/` give them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from promptprep.errors import MissingLanguageData

FIRST_CLASS = ("en", "es", "fr", "de", "pt", "ru", "ar", "hi", "sw", "zh", "ja", "ko")
UNSPACED = ("ja", "th", "zh")  # written without spaces between words (UAX 14, section 3: SA and ID classes)


def base_of(tag: str) -> str:
    """The primary language subtag: "pt" of "pt-BR"."""
    return tag.split("-")[0]


@dataclass(frozen=True, eq=False)
class LanguageData:
    """`tables` maps a file's stem ("pace", "spoken", "phrases", "fonts", "faults") to its parsed TOML.

    A wanted parent stands in the data itself (`parent = "pt"` in a file) and is resolved by the store.
    """

    tag: str
    tables: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)

    def get(self, table: str, key: str) -> Any:
        """The value at a dotted `key` of a table. Raises `MissingLanguageData` where there is none."""
        node: Any = self.tables.get(table, {})
        for name in key.split("."):
            if not isinstance(node, Mapping) or name not in node:
                raise MissingLanguageData(self.tag, f"{table}.{key}")
            node = node[name]
        return node

    def maybe(self, table: str, key: str, default: Any = None) -> Any:
        """Like `get`, for keys whose absence means that the language has no such thing."""
        try:
            return self.get(table, key)
        except MissingLanguageData:
            return default

    def has(self, table: str) -> bool:
        return table in self.tables

    @cached_property
    def base(self) -> str:
        return base_of(self.tag)
