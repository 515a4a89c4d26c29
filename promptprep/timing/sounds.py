"""What single words weigh, by the language's own unit of sound.

The unit is data (`unit` in `pace.toml`): "phone" by the phoneme engine, "mora" by the kana reading (Japanese),
"syllable" and "character" by the written syllable blocks (Korean, Chinese), "letter" where vowels are not written
(Arabic). Words in another script are weighed by the phoneme engine and brought to the same unit.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

from promptprep.model.language import LanguageData
from promptprep.model.morae import morae
from promptprep.model.ports import Engines
from promptprep.spans import Span
from promptprep.timing.pieces import Piece


class Load(NamedTuple):
    """What takes time in a word: units of sound, syllables, words (a reading may be several), Zipf points of rarity."""

    units: float
    syllables: float
    words: float
    rarity: float = 0.0


Weigh = Callable[[Sequence[str], LanguageData, Engines], list[Load]]

COMMON_ZIPF = 6.5  # words at least this common are as quick as any
RAREST_ZIPF = 2.0  # below this the lists are thin: a word not listed is taken for one of this kind
_LETTERS_A_SYLLABLE = 1.8  # Arabic: 4.43 characters and 2.46 syllables a word, IReST (Trauzettel-Klosinski 2012)
_MORAE_A_SYLLABLE = 1.3  # foreign words gain vowels in Japanese; common practice, no source
_MORAE_A_HAN = 2.0


def weighed(pieces: Sequence[Piece], written: str, data: LanguageData, engines: Engines) -> list[tuple[Piece, Load]]:
    """Each piece with its load, those that make no sound left out. Japanese pieces come back as morphemes."""
    unit = data.maybe("pace", "unit", "phone")
    if unit == "mora":
        both = list(_morphemes(pieces, written, data, engines))
    else:
        unique = list({p.said for p in pieces})
        known = dict(zip(unique, _WEIGHERS[unit](unique, data, engines), strict=True))
        both = [(p, known[p.said]) for p in pieces]
    return [(piece, load) for piece, load in both if load.units]


def _phones(words: Sequence[str], data: LanguageData, engines: Engines) -> list[Load]:
    tag = data.tag
    rare = data.maybe("pace", "coefficients.rare_s") is not None
    found: list[Load] = []
    for word, (phones, syllables) in zip(words, engines.phonemes.counts(words, tag), strict=True):
        tokens = word.split()
        if len(tokens) > 1:
            both = engines.phonemes.counts(tokens, tag)
            phones, syllables = sum(p for p, _ in both), sum(s for _, s in both)
        found.append(Load(phones, syllables, len(tokens), _rarity(tokens, tag, engines) if rare else 0.0))
    return found


def _rarity(tokens: Sequence[str], tag: str, engines: Engines) -> float:
    """Zipf points below the most common words, summed; the parts of a compound by themselves."""
    rarity = 0.0
    for token in tokens:
        for part in token.strip(".,;:!?\"'“”‘’«»()[]").split("-"):
            zipf = engines.frequency.zipf(part, tag) if part else None
            if zipf is not None:
                rarity += max(0.0, COMMON_ZIPF - max(zipf, RAREST_ZIPF))
    return rarity


def _blocks(script: str) -> Weigh:
    """Weighs words written in blocks of one syllable each (Hangul, Han); others by the phoneme engine."""

    def weigh(words: Sequence[str], data: LanguageData, engines: Engines) -> list[Load]:
        found: list[Load] = []
        for word in words:
            syllables = float(sum(_script(c) == script for c in word))
            if syllables < len(word):
                syllables += _other_syllables(word, script, data, engines)
            found.append(Load(syllables, syllables, len(word.split())))
        return found

    return weigh


def _letters(words: Sequence[str], data: LanguageData, engines: Engines) -> list[Load]:
    found: list[Load] = []
    for word in words:
        letters = sum(_script(c) == "ARABIC" and c.isalpha() for c in word)
        others = _other_syllables(word, "ARABIC", data, engines) if letters < len(word) else 0
        syllables = letters / _LETTERS_A_SYLLABLE + others
        found.append(Load(letters + others * _LETTERS_A_SYLLABLE, syllables, len(word.split())))
    return found


def _other_syllables(word: str, script: str, data: LanguageData, engines: Engines) -> int:
    """Syllables of what in `word` is not written in `script`."""
    rest = "".join(" " if _script(c) == script or not c.isalnum() else c for c in word).split()
    return sum(syllables for _, syllables in engines.phonemes.counts(rest, data.tag)) if rest else 0


@lru_cache(maxsize=65536)
def _script(character: str) -> str:
    """The first word of the character's Unicode name: CJK, HANGUL, ARABIC, LATIN ..."""
    return unicodedata.name(character, "").split(" ", 1)[0]


def _morphemes(
    pieces: Sequence[Piece], written: str, data: LanguageData, engines: Engines
) -> Iterator[tuple[Piece, Load]]:
    """Japanese: the whole text read at once, so that the dictionary sees contexts; a reading stays in one piece."""
    text, owners = _as_said(pieces, written)
    place = 0
    beats: dict[int, float] = {}
    for surface, kana, _ in engines.kana.kana(text):
        at, place = place, place + len(surface)
        owner = owners[at] if surface else None
        if owner is None:
            continue
        own = float(morae(kana)) or _unread(surface, data, engines)
        number, offset = owner
        piece = pieces[number]
        if piece.kind == "word":
            start = piece.span.start + offset
            span = Span(start, min(start + len(surface), piece.span.end))
            yield Piece(span, surface, "word"), Load(own, own, 1)
        elif place < len(owners) and owners[place] is not None and owners[place][0] == number:  # type: ignore[index]
            beats[number] = beats.get(number, 0.0) + own
        else:
            own += beats.pop(number, 0.0)
            yield piece, Load(own, own, 1)


def _as_said(pieces: Sequence[Piece], written: str) -> tuple[str, list[tuple[int, int] | None]]:
    """The text with its readings in place, and for each character the (piece, offset in it) that it belongs to."""
    parts: list[str] = []
    owners: list[tuple[int, int] | None] = []
    last = 0
    for number, piece in enumerate(pieces):
        gap = written[last : piece.span.start]
        parts += [gap, piece.said]
        owners += [None] * len(gap)
        owners += [(number, offset) for offset in range(len(piece.said))]
        last = piece.span.end
    return "".join(parts), owners


def _unread(surface: str, data: LanguageData, engines: Engines) -> float:
    """Morae of a piece for which the dictionary gives no kana: two a Han character, Latin words by sound."""
    han = _MORAE_A_HAN * sum(_script(c) == "CJK" for c in surface)
    return han + _MORAE_A_SYLLABLE * _other_syllables(surface, "CJK", data, engines)


_WEIGHERS: dict[str, Weigh] = {
    "phone": _phones,
    "syllable": _blocks("HANGUL"),
    "character": _blocks("CJK"),
    "letter": _letters,
}
