"""Vectors of spoken forms: the files in `spoken_vectors/`, and how a saying is compared.

A file is one language, `<tag>.toml`:

    [[vector]]
    text = "12/05/2026"                     # as written; a whole phrase where context decides
    said = ["twelfth of May ..."]           # every saying that the source would accept, the first is the likeliest
    class = "date"                          # the classes of `model.spoken.Reading.kind`
    source = "whose rule or example it is"  # or "from memory"

`language = "en-GB"` in a vector overrides the file's tag.
"""

from __future__ import annotations

import re
import tomllib
import unicodedata
from dataclasses import dataclass
from pathlib import Path

FOLDER = Path(__file__).parent / "spoken_vectors"
_LEFT_OUT = re.compile(r"[,.;:!?\u200b\u00ad«»“”„\"]")
_BLANKS = re.compile(r"[\s\-‐‑\u00a0\u202f]+")


@dataclass(frozen=True)
class Vector:
    """One written text and the sayings that count as right."""

    text: str
    said: tuple[str, ...]
    kind: str
    source: str
    language: str

    def met_by(self, spoken: str) -> bool:
        return normal(spoken) in {normal(s) for s in self.said}


def normal(text: str) -> str:
    """NFC, case folded, hyphens as blanks, commas and stops left out, blanks single."""
    folded = unicodedata.normalize("NFC", text).casefold()
    return _BLANKS.sub(" ", _LEFT_OUT.sub("", folded)).strip()


def vectors(tag: str) -> list[Vector]:
    """The vectors of a language."""
    with (FOLDER / f"{tag}.toml").open("rb") as file:
        entries = tomllib.load(file)["vector"]
    return [Vector(e["text"], tuple(e["said"]), e["class"], e["source"], e.get("language", tag)) for e in entries]


def languages() -> list[str]:
    return sorted(f.stem for f in FOLDER.glob("*.toml"))
