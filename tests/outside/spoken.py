"""Vectors of spoken forms: the files in `spoken_vectors/`, and how a saying is compared.

A file is one set of a language: `<tag>.toml`, and `<tag>_<name>.toml` for sets written later, blind to the rules:

    [[vector]]
    text = "12/05/2026"                     # as written; a whole phrase where context decides
    said = ["twelfth of May ..."]           # every saying that the source would accept, the first is the likeliest
    class = "date"                          # the classes of `model.spoken.Reading.kind`
    source = "whose rule or example it is"  # or "from memory"

`language = "en-GB"` in a vector overrides the file's tag. Braces in a saying hold choices, any of which is right:
"{one|a} hundred {and |}five".
"""

from __future__ import annotations

import re
import tomllib
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from pathlib import Path

FOLDER = Path(__file__).parent / "spoken_vectors"
_LEFT_OUT = re.compile(r"[,.;:!?।،؛؟\u200b\u00ad«»“”„\"]|(?<=\s)[—–](?=\s)")
_BLANKS = re.compile(r"[\s\-‐‑\u00a0\u202f]+")
_ONE_WORD = {"ё": "е", "مائ": "مئ"}  # two spellings of one word
_NOT_HEARD = re.compile(r"[\s、・·，。（）()]")
UNSPACED = ("ja", "ko", "zh")
_CHOICE = re.compile(r"\{([^{}]*)\}")


@dataclass(frozen=True)
class Vector:
    """One written text and the sayings that count as right."""

    text: str
    said: tuple[str, ...]
    kind: str
    source: str
    language: str

    def met_by(self, spoken: str) -> bool:
        heard = unspaced if self.language.split("-")[0] in UNSPACED else normal
        return heard(spoken) in {heard(s) for s in self.said}


def normal(text: str) -> str:
    """NFC, case folded, straight apostrophes, hyphens as blanks, no marks, one spelling of a word, single blanks."""
    folded = unicodedata.normalize("NFC", text).casefold().replace("’", "'")
    for written, plain in _ONE_WORD.items():
        folded = folded.replace(written, plain)
    return _BLANKS.sub(" ", _LEFT_OUT.sub("", folded)).strip()


def unspaced(text: str) -> str:
    """Without blanks and marks, which are not heard; Korean spelling leaves many blanks open (한글 맞춤법, 43항)."""
    return _NOT_HEARD.sub("", normal(text))


def vectors(name: str) -> list[Vector]:
    """The vectors of one file, named by its stem."""
    tag = name.partition("_")[0]
    with (FOLDER / f"{name}.toml").open("rb") as file:
        entries = tomllib.load(file)["vector"]
    return [
        Vector(e["text"], tuple(_choices(e["said"])), e["class"], e["source"], e.get("language", tag)) for e in entries
    ]


def _choices(said: list[str]) -> Iterator[str]:
    """Every saying, with each combination of its choices spelled out."""
    for saying in said:
        parts = _CHOICE.split(saying)
        yield from map("".join, product(*(p.split("|") if n % 2 else [p] for n, p in enumerate(parts))))


def sets() -> list[str]:
    """The stems of all files: a tag, or a tag and the name of a further set."""
    return sorted(f.stem for f in FOLDER.glob("*.toml"))


def languages() -> list[str]:
    return [name for name in sets() if "_" not in name]
