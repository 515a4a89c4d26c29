"""How Japanese is pronounced: the morphological dictionary UniDic through MeCab, with figures and counters put right.

UniDic's small edition reads each morpheme by itself ("四" ヨン, "時" ジ); how a number and its counter sound together
("四時" ヨジ, "三本" サンボン) comes from `data/languages/ja/spoken.toml` through `speaking.languages.ja_readings`.
"""

from __future__ import annotations

import re
import threading
from functools import lru_cache
from typing import Any

from promptprep.speaking.morae import morae

BLANK = "空白"
UNKNOWN = "未知語"
# Cut where a sentence ends, and at the latest after a bounded run, so that long texts stay linear and cache well.
_PIECE = re.compile(r"[^。！？!?\n]{1,1000}[。！？!?\n]*|[。！？!?\n]{1,1000}")
# MeCab works on C strings of UTF-8: no NUL, no lone surrogates. One character stands for one, so offsets stay.
_UNFIT = re.compile("[\0\ud800-\udfff]")
_KANJI_MORAE = 2.0
_LATIN_MORAE = 0.65
_DIGIT_MORAE = 2.0
_LEFTOVER = re.compile(r"(?P<kanji>[㐀-䶿一-鿿𠀀-\U0003ffff々])|(?P<latin>[^\W\d_ぁ-ヿ㐀-鿿])|(?P<digit>\d)")

Morpheme = tuple[str, str, str]


class UnidicKana:
    """`ports.KanaReader`. The dictionary loads at the first text (0.05 s) and stays; sentences are cached."""

    def kana(self, text: str) -> list[Morpheme]:
        """(surface, pronunciation, part of speech) of each morpheme; the surfaces join back to `text`.

        The pronunciation is katakana with ー for length ("トーキョー"); "" for marks and blanks. An unknown word
        passes its surface. Parts of speech are UniDic's own ("名詞"), "空白" for blanks, "未知語" for unknown words.
        """
        return [morpheme for piece in _PIECE.findall(text) for morpheme in _read(piece)]

    def morae(self, text: str) -> float:
        """Morae of `text`: the kana's, and an estimate for what has no reading (2 a kanji, 0.65 a Latin letter).

        The estimates are common practice, no source: two morae a kanji is the mean Sino-Japanese reading.
        """
        return sum((_morae_of(pronounced) for _, pronounced, _ in self.kana(text)), 0.0)


@lru_cache(maxsize=65536)
def _morae_of(pronounced: str) -> float:
    beats = float(morae(pronounced))
    for left in _LEFTOVER.finditer(pronounced):
        beats += {"kanji": _KANJI_MORAE, "latin": _LATIN_MORAE, "digit": _DIGIT_MORAE}[str(left.lastgroup)]
    return beats


@lru_cache(maxsize=8192)
def _read(piece: str) -> tuple[Morpheme, ...]:
    fit = _UNFIT.sub("\ufffd", piece)
    with _LOCK:
        nodes = [(node.surface, node.feature) for node in _tagger()(fit)]
    found: list[Morpheme] = []
    at = 0
    for surface, feature in nodes:
        start = fit.index(surface, at)
        if start > at:
            found.append((piece[at:start], "", BLANK))
        at = start + len(surface)
        found.append(_morpheme(piece[start:at], feature))
    if at < len(piece):
        found.append((piece[at:], "", BLANK))
    return tuple(found)


def _morpheme(surface: str, feature: Any) -> Morpheme:
    if surface.isspace():
        return surface, "", BLANK
    pronounced = feature.pron
    if pronounced is None:
        return surface, surface if any(c.isalnum() for c in surface) else "", UNKNOWN
    return surface, "" if pronounced == "*" else pronounced, feature.pos1


_LOCK = threading.Lock()


@lru_cache(maxsize=1)
def _tagger() -> Any:
    import fugashi
    import unidic_lite

    return fugashi.Tagger(f'-d "{unidic_lite.DICDIR}" -r /dev/null')
