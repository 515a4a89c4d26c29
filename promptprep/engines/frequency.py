"""How common words are, from the word lists of the `wordfreq` package, read without its tokenisers."""

from __future__ import annotations

import gzip
import unicodedata
from functools import lru_cache
from importlib.util import find_spec
from pathlib import Path
from typing import Any

from promptprep.model.language import base_of

_TOP_ZIPF = 9.0  # the lists count centibels below certainty: Zipf value = 9 + log10(share)
_ARABIC_MARKS = dict.fromkeys((*range(0x064B, 0x0660), 0x0640, 0x0670))


class WordFrequency:
    """Answers `Frequency` for the languages that the package has a list of."""

    def zipf(self, word: str, language: str) -> float | None:
        """Zipf value: 7 for the most common words, about 1 at the end of a large list, 0 for one not in it.

        None where there is no list for `language` (Swahili). One token at a time: phrases are not split.
        """
        ranks = _ranks(base_of(language).lower())
        if ranks is None:
            return None
        centibels = ranks.get(_plain(word))
        return 0.0 if centibels is None else _TOP_ZIPF - centibels / 100


def _plain(word: str) -> str:
    """The form in the lists: folded, no vowel signs or stretching in Arabic, a plain apostrophe."""
    folded = unicodedata.normalize("NFKC", word).casefold().replace("’", "'")
    return folded.translate(_ARABIC_MARKS) if "\u0600" <= folded[:1] <= "\u06ff" else folded


@lru_cache(maxsize=16)
def _ranks(language: str) -> dict[str, int] | None:
    file = _list_file(language)
    if file is None:
        return None
    import msgpack  # type: ignore[import-untyped]

    with gzip.open(file, "rb") as packed:
        header, *bins = msgpack.load(packed, raw=False)
    _check(header, file)
    rarest_first = reversed(list(enumerate(bins)))  # where two spellings fold into one, the common one counts
    return {word.casefold(): rank for rank, words in rarest_first for word in words}


def _list_file(language: str) -> Path | None:
    found = find_spec("wordfreq")
    if found is None or found.origin is None or not language.isalpha():
        return None
    data = Path(found.origin).parent / "data"
    return next((f for size in ("large", "small") if (f := data / f"{size}_{language}.msgpack.gz").is_file()), None)


def _check(header: Any, file: Path) -> None:
    if header.get("format") != "cB" or header.get("version") != 1:
        raise ValueError(f"{file.name}: unknown format of word list {header!r}")
