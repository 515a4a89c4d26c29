"""What puts the figures, signs and abbreviations of one language into words: the contract and the loader.

`speak.py` drives it. Before a verbaliser is asked, the shared part has already dealt with the author's own
pronunciations, with URLs, e-mail addresses, hashtags and @names (`electronic.py`; words from the table
`electronic` of `spoken.toml`), and with emoji (silent). Those places are masked by U+FFFC in the text that the
verbaliser sees, so offsets stay those of the written text and no pattern runs across them.

A language is one module `languages/<tag>.py` (base tag) with a function

    def verbaliser(data: LanguageData, speller: Speller) -> Verbaliser

It is loaded at first use and kept. A language without a module gets `languages/generic.py`, which reads plain
numbers, decimals and per cent by ICU and passes everything else through.

The scan:

- `starts` is a compiled pattern, best a single character class ("[0-9$%]"), which `re` searches fast: every
  place where a reading can begin, or from which its beginning can be reached to the left (a digit after a month).
- At each such place not yet inside a reading, `read(text, at, floor)` is called. It gives a `Reading` with
  `floor <= span.start <= at < span.end`, or None to pass the character through. Figures are never passed through
  in ordinary copy: the last rule reads a number as a cardinal or digit by digit.
- Work must be bounded by what `read` consumes: match at `at` (`pattern.match(text, at)`), look back a bounded number
  of characters, return at once when the place is in the middle of a word. `numbers.py` bounds long digit runs.

Blanks between a reading and a neighbouring letter are put in by `speak.py` where `spaced` is true.
Number words come from `numbers.Words`, which caches. Word lists and words are data (`spoken.toml`), never code.
"""

from __future__ import annotations

import re
from functools import lru_cache
from importlib import import_module
from importlib.util import find_spec
from typing import Protocol, cast

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading


class Verbaliser(Protocol):
    """The readings of one language. See the module's text for the contract."""

    starts: re.Pattern[str]
    spaced: bool

    def read(self, text: str, at: int, floor: int) -> Reading | None: ...


class _Module(Protocol):
    def verbaliser(self, data: LanguageData, speller: Speller) -> Verbaliser: ...


@lru_cache(maxsize=64)
def load(data: LanguageData, speller: Speller) -> Verbaliser:
    """The verbaliser of a language, made once for its data and speller."""
    name = f"promptprep.speaking.languages.{data.base}"
    if not data.has("spoken") or find_spec(name) is None:
        name = "promptprep.speaking.languages.generic"
    module = cast(_Module, import_module(name))
    return module.verbaliser(data, speller)
