"""What finding values in one language asks for, and looking beside a place in a text."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.versions.number_words import Words, folded, words_of

SPACELESS = frozenset({"zh", "ja", "ko"})
BLANKS = " \u00a0\u202f"


@dataclass(frozen=True, eq=False)
class Reader:
    """What finding figures in one language asks for."""

    base: str
    words: Words
    table: Mapping[str, object]
    months: Mapping[str, int] = field(default_factory=dict)
    weekdays: Mapping[str, int] = field(default_factory=dict)
    units: Mapping[str, str] = field(default_factory=dict)
    parts: Mapping[str, int] = field(default_factory=dict)
    parts_before: Mapping[str, int] = field(default_factory=dict)
    month_words: re.Pattern[str] | None = None
    weekday_words: re.Pattern[str] | None = None

    def listed(self, key: str) -> Sequence[str]:
        """A list of words of the language's data, in small letters."""
        value = self.table.get(key, ())
        return [folded(str(w)) for w in value] if isinstance(value, list) else ()

    def after(self, low: str, at: int, key: str) -> str:
        """The word of a list that stands right after a place in a text of small letters, "" where none does."""
        rest = low[at : at + 24].lstrip(BLANKS)
        for word in self.listed(key):
            following = rest[len(word) : len(word) + 1]
            closed = following not in ("間", "间", "간") if self.base in SPACELESS else not following.isalpha()
            if rest.startswith(word) and closed:
                return word
        return ""

    def before(self, low: str, at: int, key: str) -> str:
        """The word of a list that stands right before a place."""
        head = low[max(0, at - 24) : at].rstrip(BLANKS)
        return next((w for w in self.listed(key) if head.endswith(w)), "")


@lru_cache(maxsize=64)
def figure_reader(data: LanguageData, speller: Speller) -> Reader:
    table = data.tables.get("versions", {})
    months, weekdays = table.get("months", {}), table.get("weekdays", {})
    return Reader(
        base=data.base,
        words=words_of(data, speller),
        table=table,
        months={folded(k): v for k, v in months.items()},
        weekdays={folded(k): v for k, v in weekdays.items()},
        units={folded(k): v for k, v in table.get("units", {}).items()},
        parts={folded(k): v for k, v in table.get("day_parts", {}).items()},
        parts_before={folded(k): v for k, v in table.get("day_parts_before", {}).items()},
        month_words=_alternatives(months, data.base),
        weekday_words=_alternatives(weekdays, data.base),
    )


def _alternatives(words: Mapping[str, int], base: str) -> re.Pattern[str] | None:
    if not words:
        return None
    body = "|".join(re.escape(folded(w)) for w in sorted(words, key=lambda w: (-len(w), w)))
    return re.compile(body if base in SPACELESS else rf"(?<!\w)(?:{body})(?![^\W\d_])")
