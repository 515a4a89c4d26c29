"""What a cue's text means: whether it takes a graphic off, opens a return, gives the reader the copy back."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import base_of
from promptprep.model.script import Cue

Words = Mapping[str, Mapping[str, tuple[str, ...]]]

_WORD = re.compile(r"[^\W_]+")
_SPACED = re.compile(r"[\u0000-\u2fff]+")


class CueWords:
    """Asks about cues of a script in one language. English is understood everywhere: a crew often keeps to one tongue.

    Words of scripts with spaces must stand as whole words; those of Chinese, Japanese and Korean anywhere.
    """

    def __init__(self, words: Words, language: str | None) -> None:
        tags = ("en", base_of(language or "en"))
        self._known = {
            meaning: {w.casefold() for tag in tags for w in own.get(tag, ())} for meaning, own in words.items()
        }

    def names_guest(self, cue: Cue) -> bool:
        """Whether a cue says that a guest speaks or is seen."""
        return cue.kind in ("prompter", "vision", "sound", "live") and self.says(cue.text, "guest")

    def says(self, text: str, meaning: str) -> bool:
        """Whether a cue's text says that: "off", "return", "shut", "copy", "guest" or "strap"."""
        folded = text.casefold()
        said = set(_WORD.findall(folded))
        known = self._known.get(meaning, set())
        return not known.isdisjoint(said) or any(w in folded for w in known if not _SPACED.fullmatch(w))
