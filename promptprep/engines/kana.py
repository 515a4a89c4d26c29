"""How Japanese is pronounced: the morphological dictionary UniDic through MeCab, with figures and counters put right.

UniDic's small edition reads each morpheme by itself ("四" ヨン, "時" ジ); how a number and its counter sound together
("四時" ヨジ, "三本" サンボン) comes from `data/languages/ja/spoken.toml` through `speaking.languages.ja_readings`.
"""

from __future__ import annotations

import re
import threading
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from promptprep.model.morae import morae
from promptprep.speaking.languages.ja_readings import FIGURES, NumberReadings
from promptprep.store.languages import language_data

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

_FIGURES = frozenset(FIGURES)
_HEAD = re.compile(f"[{FIGURES}]+")
_COUNTER_TOKENS = 3

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


@dataclass(frozen=True, slots=True)
class _Token:
    surface: str
    pronounced: str
    pos: str
    kind: str

    @property
    def is_figure(self) -> bool:
        return self.kind == "数詞" and not set(self.surface) - _FIGURES


@lru_cache(maxsize=8192)
def _read(piece: str) -> tuple[Morpheme, ...]:
    tokens = _tokens(piece)
    if any(token.surface[0] in _FIGURES for token in tokens):
        tokens = _with_numbers(tokens)
    return tuple((token.surface, token.pronounced, token.pos) for token in tokens)


def _tokens(piece: str) -> list[_Token]:
    fit = _UNFIT.sub("\ufffd", piece)
    with _LOCK:
        nodes = [(node.surface, node.feature) for node in _tagger()(fit)]
    found: list[_Token] = []
    at = 0
    for surface, feature in nodes:
        start = fit.index(surface, at)
        if start > at:
            found.append(_Token(piece[at:start], "", BLANK, ""))
        at = start + len(surface)
        found.append(_token(piece[start:at], feature))
    if at < len(piece):
        found.append(_Token(piece[at:], "", BLANK, ""))
    return found


def _token(surface: str, feature: Any) -> _Token:
    if surface.isspace():
        return _Token(surface, "", BLANK, "")
    pronounced = _numbers().words.get(surface, feature.pron)
    if pronounced is None:
        return _Token(surface, surface if any(c.isalnum() for c in surface) else "", UNKNOWN, "")
    return _Token(surface, "" if pronounced == "*" else pronounced, feature.pos1, feature.pos2)


def _with_numbers(tokens: list[_Token]) -> list[_Token]:
    """Figures and the counter behind them as one morpheme, in the sound they have together."""
    said: list[_Token] = []
    i = 0
    while i < len(tokens):
        j = i
        while j < len(tokens) and tokens[j].is_figure:
            j += 1
        figures = "".join(t.surface for t in tokens[i:j])
        counted = _counted(tokens, figures, j, bool(said) and said[-1].surface.endswith("月"))
        if counted:
            number, i = counted
            said.append(number)
        elif figures:
            said.append(_Token(figures, "".join(_numbers().number(figures)), "名詞", "数詞"))
            i = j
        else:
            said.append(tokens[i])
            i += 1
    return said


def _counted(tokens: list[_Token], figures: str, at: int, after_a_month: bool) -> tuple[_Token, int] | None:
    """The number `figures` with the longest counter that ends where a token ends, and the index behind it."""
    rest, ends = "", []
    for token in tokens[at : at + _COUNTER_TOKENS]:
        rest += token.surface
        ends.append(len(rest))
    if at < len(tokens) and tokens[at].surface[0] in _FIGURES and (figures or tokens[at].kind == "固有名詞"):
        # "十一人" comes as 十, 一人 and "三本" as a family name.
        more = _HEAD.match(tokens[at].surface)
        if more and more.end() < ends[0]:
            figures, rest, ends = figures + more[0], rest[more.end() :], [e - more.end() for e in ends]
    if not figures or (rest.startswith("分") and tokens[at].pronounced == "ブン"):
        return None
    for count in range(len(ends), 0, -1):
        counter = rest[: ends[count - 1]]
        if _numbers().counter.fullmatch(counter):
            sound = _numbers().counted(figures, counter, after_a_month=after_a_month)
            return _Token(figures + counter, sound, "名詞", "数詞"), at + count
    return None


@lru_cache(maxsize=1)
def _numbers() -> NumberReadings:
    return NumberReadings(language_data("ja"))


_LOCK = threading.Lock()


@lru_cache(maxsize=1)
def _tagger() -> Any:
    import fugashi
    import unidic_lite

    return fugashi.Tagger(f'-d "{unidic_lite.DICDIR}" -r /dev/null')
