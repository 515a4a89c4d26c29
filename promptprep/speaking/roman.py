"""Roman figures."""

from __future__ import annotations

import re

_ROMAN = re.compile(r"M{0,3}(?:CM|CD|D?C{0,3})(?:XC|XL|L?X{0,3})(?:IX|IV|V?I{0,3})")
_VALUES = {"I": 1, "V": 5, "X": 10, "L": 50, "C": 100, "D": 500, "M": 1000}


def roman(text: str) -> int:
    """The value of Roman capitals in the classical spelling (1 to 3999); 0 for anything else."""
    if not _ROMAN.fullmatch(text):
        return 0
    values = [_VALUES[c] for c in text]
    return sum(-v if v < after else v for v, after in zip(values, [*values[1:], 0], strict=True))
