"""What the pure steps ask of native libraries. `engines` answers; tests may answer too."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Protocol

from promptprep.model.language import LanguageData
from promptprep.model.rig import Studio
from promptprep.model.sightline import Limit


class Speller(Protocol):
    """Number words by the CLDR's rule sets (RBNF)."""

    def spell(self, number: str | int, language: str, rules: str = "") -> str:
        """`number` in words, without U+00AD and U+200B. `rules` names a rule set ("%spellout-ordinal").

        Raises `UnknownLanguage` where ICU has no such language or rule set.
        """
        ...

    def __hash__(self) -> int:
        """Steps keep what they build with a speller."""
        ...


class PhonemeEngine(Protocol):
    """Phonemes of single words, in a closed vocabulary of its own."""

    def phones(self, words: Sequence[str], language: str) -> list[tuple[str, ...]]:
        """For each word its phonemes (stress and length marks kept as separate entries are not phonemes)."""
        ...

    def counts(self, words: Sequence[str], language: str) -> list[tuple[int, int]]:
        """For each word (phonemes, syllables). Cached; the hot path."""
        ...


class KanaReader(Protocol):
    """How Japanese is pronounced, from a morphological dictionary."""

    def kana(self, text: str) -> list[tuple[str, str, str]]:
        """(surface, pronunciation in katakana, part of speech) for each morpheme; joins back to `text`."""
        ...

    def morae(self, text: str) -> float:
        """Morae of `text` as pronounced, with an estimate for words that have no reading."""
        ...


class Breaks(Protocol):
    """Boundaries by Unicode's rules (UAX 14, 29), as offsets after which a break may fall."""

    def words(self, text: str, language: str) -> list[int]: ...

    def sentences(self, text: str, language: str) -> list[int]: ...

    def lines(self, text: str, language: str) -> list[int]: ...

    def graphemes(self, text: str) -> list[int]: ...

    def syllables(self, text: str, language: str) -> list[int]:
        """Places between the syllables of its words; none where the language has no patterns."""
        ...

    def phrases(self, text: str, language: str) -> list[int]:
        """Phrase boundaries of Japanese and Chinese (BudouX); other languages give word boundaries."""
        ...


class Shaper(Protocol):
    """Measures text with the very fonts that are embedded."""

    def widths_em(self, texts: Sequence[str], language: str, *, bold: bool = False) -> list[float]: ...

    def missing(self, text: str, language: str) -> list[str]:
        """Characters that no bundled font can show."""
        ...


@dataclass(frozen=True, slots=True)
class Word:
    """A token of a parsed sentence: offsets in the text, universal part of speech, head's index, relation."""

    start: int
    end: int
    pos: str
    head: int
    relation: str
    sentence: int


class Structure(Protocol):
    """Sentence structure where a trained pipeline is installed."""

    def parse(self, texts: Sequence[str], language: str) -> list[tuple[Word, ...]] | None:
        """None where no pipeline for the language is installed."""
        ...


class Frequency(Protocol):
    """How common a word is."""

    def zipf(self, word: str, language: str) -> float | None:
        """Zipf scale (7 = the most common, 0 = never seen); None where the language has no list."""
        ...


@dataclass(frozen=True, slots=True)
class Engines:
    """All of them, each loaded at first use."""

    speller: Speller
    phonemes: PhonemeEngine
    kana: KanaReader
    breaks: Breaks
    shaper: Shaper
    structure: Structure
    frequency: Frequency


class Fonts(Protocol):
    """The bundled fonts, for measuring and for embedding."""

    def heights_em(self, language: str) -> tuple[float, float]:
        """(capital height, x-height) of a language's first font, in em."""
        ...

    def css(self, language: str, text: str, family: str = "copy", bold_text: str = "") -> str:
        """`@font-face` rules that show `text`; the families are `family`-0, `family`-1 ... in their order."""
        ...

    def subsets(self, language: str, text: str, bold: bool) -> Sequence[bytes]:
        """WOFF2 files that together show `text`, in the order in which they are asked."""
        ...


@dataclass(frozen=True, slots=True)
class Tools:
    """What the pipeline works with: native engines, fonts, and the data of languages and studios.

    `words(language)` gives the interface's texts in that language.
    """

    engines: Engines
    fonts: Fonts
    language: Callable[[str], LanguageData]
    limits: Callable[[Studio], tuple[Limit, ...]]
    words: Callable[[str], Callable[[str], str]]
