"""Number words of a language as values: "twenty-one", "trois cents", "elfu mbili", 三百五十, "साढ़े तीन"."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from promptprep.errors import UnknownLanguage
from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.spans import Span

_CARDINALS = ("", "%spellout-cardinal-feminine", "%spellout-cardinal-feminine-genitive",
              "%spellout-cardinal-masculine-genitive")  # fmt: skip
_ORDINALS = ("%spellout-ordinal", "%spellout-ordinal-masculine", "%spellout-ordinal-feminine",
             "%spellout-ordinal-neuter", "%spellout-ordinal-masculine-genitive", "%spellout-ordinal-neuter-genitive",
             "%spellout-ordinal-n", "%spellout-ordinal-r", "%spellout-ordinal-s")  # fmt: skip
_TOKEN = re.compile(r"[^\W\d_]+(?:[\u0300-\u036f\u0900-\u0903\u093a-\u094f\u064b-\u0655]+[^\W\d_]*)*")
_LONGEST = 6  # words in one number below a thousand
_HAN = re.compile(r"[〇零一二三四五六七八九十百千万萬亿億兆两兩]+(?:点[〇零一二三四五六七八九]+)?")
_HAN_DIGIT = {c: i for i, c in enumerate("〇一二三四五六七八九")} | {"零": 0, "两": 2, "兩": 2}
_HAN_SMALL = {"十": 10, "百": 100, "千": 1000}
_HAN_LARGE = {"万": 10**4, "萬": 10**4, "亿": 10**8, "億": 10**8, "兆": 10**12}
_MIXED = {"एक चौथाई": 0.25, "डेढ़": 1.5, "ढाई": 2.5, "अढ़ाई": 2.5, "anderthalb": 1.5, "полтора": 1.5, "полторы": 1.5}
_HINDI_PARTS = {"साढ़े": 0.5, "सवा": 0.25, "पौने": -0.25}


class Said(NamedTuple):
    """A number in words at its place. `ordinal` ones rank; those not `counted` are often no numbers at all."""

    span: Span
    value: float
    ordinal: bool = False
    counted: bool = True


@dataclass(frozen=True, slots=True)
class Words:
    """A language's number words, folded: phrases of words to values."""

    cardinals: Mapping[tuple[str, ...], float]
    ordinals: Mapping[tuple[str, ...], float]
    magnitudes: Mapping[str, int]
    joiners: frozenset[str]
    halves: tuple[tuple[str, ...], ...]
    points: frozenset[str]
    doubtful: frozenset[str]
    base: str
    magnitude_first: bool = False


def folded(text: str) -> str:
    """Composed and in small letters, for looking up."""
    return lowered(unicodedata.normalize("NFC", text))


def lowered(text: str) -> str:
    """In small letters, every place kept."""
    low = text.lower()
    return low if len(low) == len(text) else "".join(c.lower() if len(c.lower()) == 1 else c for c in text)


@lru_cache(maxsize=64)
def words_of(data: LanguageData, speller: Speller) -> Words:
    """The number words that ICU spells and that the language's `versions` file adds."""
    table = data.tables.get("versions", {})
    cardinals: dict[tuple[str, ...], float] = {}
    for rules in _CARDINALS:
        cardinals |= _spelled(range(100), data.base, speller, rules) | _spelled(
            range(100, 1000, 100), data.base, speller, rules
        )
    cardinals |= {_tokens(w): v for w, v in table.get("number_words", {}).items()}
    cardinals |= {_tokens(w): v for w, v in _MIXED.items()}
    ordinals: dict[tuple[str, ...], float] = {}
    for rules in _ORDINALS:
        ordinals |= _spelled(range(1, 32), data.base, speller, rules)
    ordinals |= {_tokens(w): 1.0 for w in table.get("first", ())}
    magnitudes = {folded(w): p for w, p in table.get("magnitudes", {}).items()}
    return Words(
        cardinals={k: v for k, v in cardinals.items() if k},
        ordinals={k: v for k, v in ordinals.items() if k and k not in cardinals},
        magnitudes=magnitudes,
        joiners=frozenset(table.get("joiners", ())),
        halves=tuple(_tokens(h) for h in table.get("half", ())),
        points=frozenset(folded(p) for p in table.get("point", ())),
        doubtful=frozenset(folded(w) for w in table.get("not_counted", ())),
        base=data.base,
        magnitude_first=data.base == "sw",
    )


def _spelled(numbers: range, language: str, speller: Speller, rules: str) -> dict[tuple[str, ...], float]:
    try:
        return {_tokens(speller.spell(n, language, rules)): float(n) for n in numbers}
    except UnknownLanguage:
        return {}


def _tokens(text: str) -> tuple[str, ...]:
    return tuple(m[0] for m in _TOKEN.finditer(folded(text)))


def said_numbers(text: str, words: Words) -> list[Said]:
    """Number words in a text, in order. Work grows in a straight line with its length."""
    if words.base in ("zh", "ja"):
        return list(_han(text))
    low = lowered(text)
    tokens = [(unicodedata.normalize("NFC", m[0]), m.span()) for m in _TOKEN.finditer(low)]
    return list(_runs(low, tokens, words))


def _runs(text: str, tokens: Sequence[tuple[str, tuple[int, int]]], words: Words) -> Iterator[Said]:
    at = 0
    while at < len(tokens):
        value, end, ordinal = _number(text, tokens, at, words)
        if end == at:
            at += 1
            continue
        phrase = " ".join(t for t, _ in tokens[at:end])
        span = Span(tokens[at][1][0], tokens[end - 1][1][1])
        yield Said(span, value, ordinal, phrase not in words.doubtful)
        at = end


def _number(text: str, tokens: Sequence[tuple[str, tuple[int, int]]], at: int, words: Words) -> tuple[float, int, bool]:
    """(value, index after it, whether it ranks) of the longest number from token `at`; index `at` where none is."""
    part = _part(tokens, at, words)
    if part is None and words.base == "hi" and tokens[at][0] in _HINDI_PARTS:
        inner = _part(tokens, at + 1, words) if at + 1 < len(tokens) else None
        if inner is not None:
            return inner[0] + _HINDI_PARTS[tokens[at][0]], inner[1], False
    if part is None:
        rank = _longest(tokens, at, words.ordinals)
        return (rank[0], rank[1], True) if rank else (0.0, at, False)
    total, end = part
    while end < len(tokens) and (following := _next_part(text, tokens, end, words)):
        value, stop, magnitude = following
        if magnitude == 0 or not value < magnitude:
            break
        total, end = total + value, stop
        if value < 100:
            break
    return _with_tail(text, tokens, total, end, words)


def _next_part(
    text: str, tokens: Sequence[tuple[str, tuple[int, int]]], at: int, words: Words
) -> tuple[float, int, float] | None:
    """A smaller part that follows: (value, index after it, what it must stay below)."""
    start = at + 1 if tokens[at][0] in words.joiners and at + 1 < len(tokens) else at
    if not _joined(text, tokens, at - 1) or (start > at and not _joined(text, tokens, at)):
        return None
    part = _part(tokens, start, words)
    before = _tail_magnitude(tokens, at, words)
    return None if part is None else (part[0], part[1], before)


def _tail_magnitude(tokens: Sequence[tuple[str, tuple[int, int]]], end: int, words: Words) -> float:
    """What the part that ends at `end` counts: 100 after a round hundred, 1000 after a thousand; else 0."""
    for back in (1, 2):
        if end - back >= 0 and tokens[end - back][0] in words.magnitudes:
            return 10.0 ** words.magnitudes[tokens[end - back][0]]
    for length in range(min(_LONGEST, end), 0, -1):
        value = words.cardinals.get(tuple(t for t, _ in tokens[end - length : end]))
        if value is not None:
            return 100.0 if value >= 100 and value % 100 == 0 else 0.0
    return 0.0


def _part(tokens: Sequence[tuple[str, tuple[int, int]]], at: int, words: Words) -> tuple[float, int] | None:
    """A number below a thousand, times the magnitude beside it."""
    if words.magnitude_first and tokens[at][0] in words.magnitudes:
        inner = _longest(tokens, at + 1, words.cardinals)
        power = 10.0 ** words.magnitudes[tokens[at][0]]
        return (inner[0] * power, inner[1]) if inner else None
    found = _longest(tokens, at, words.cardinals) or _compound(tokens[at][0], at, words)
    if found is not None and tokens[at][0] in words.magnitudes:
        return found
    if found is None:
        return None
    value, end = found
    if end < len(tokens) and not words.magnitude_first and tokens[end][0] in words.magnitudes:
        return value * 10.0 ** words.magnitudes[tokens[end][0]], end + 1
    return value, end


def _longest(
    tokens: Sequence[tuple[str, tuple[int, int]]], at: int, phrases: Mapping[tuple[str, ...], float]
) -> tuple[float, int] | None:
    for length in range(min(_LONGEST, len(tokens) - at), 0, -1):
        value = phrases.get(tuple(t for t, _ in tokens[at : at + length]))
        if value is not None:
            return value, at + length
    return None


def _compound(word: str, at: int, words: Words) -> tuple[float, int] | None:
    """German writes a number below a million as one word; `half` ones end in "einhalb"."""
    if words.base != "de" or len(word) > 60:
        return None
    if word.endswith("einhalb") and (whole := words.cardinals.get((word.removesuffix("einhalb"),))) is not None:
        return whole + 0.5, at + 1
    value = _german(word, words)
    return None if value is None else (value, at + 1)


def _german(word: str, words: Words) -> float | None:
    for unit, size in (("tausend", 1000.0), ("hundert", 100.0)):
        head, found, tail = word.partition(unit)
        if found:
            many = 1.0 if not head else _german(head, words)
            rest = 0.0 if not tail else _german(tail.removeprefix("und"), words)
            return None if many is None or rest is None else many * size + rest
    return words.cardinals.get((word,))


def _with_tail(
    text: str, tokens: Sequence[tuple[str, tuple[int, int]]], value: float, end: int, words: Words
) -> tuple[float, int, bool]:
    """The decimals or the half after a number in words."""
    for half in words.halves:
        if tuple(t for t, _ in tokens[end : end + len(half)]) == half:
            return value + 0.5, end + len(half), False
    if end + 1 < len(tokens) and tokens[end][0] in words.points and _joined(text, tokens, end - 1):
        digits, at = "", end + 1
        while at < len(tokens) and (one := words.cardinals.get((tokens[at][0],))) is not None and one < 100:
            digits += str(int(one))
            at += 1
        if digits:
            return float(f"{value:.0f}.{digits}"), at, False
    return value, end, False


def _joined(text: str, tokens: Sequence[tuple[str, tuple[int, int]]], at: int) -> bool:
    """Whether nothing but blanks or a hyphen lies between a token and the next."""
    return 0 <= at < len(tokens) - 1 and not text[tokens[at][1][1] : tokens[at + 1][1][0]].strip(" -\u00a0\u2011")


def _han(text: str) -> Iterator[Said]:
    for found in _HAN.finditer(text):
        value = han_value(found[0])
        if value is not None:
            ranks = text[found.start() - 1 : found.start()] == "第" or text[found.end() + 1 : found.end() + 2] == "目"
            yield Said(Span(*found.span()), value, ranks)


def han_value(text: str) -> float | None:
    """The value of a number in Han figures, None where they make none ("万一")."""
    whole, _, decimals = text.partition("点")
    total = section = digit = 0
    plain = all(c in _HAN_DIGIT for c in whole)
    if plain:
        total = int("".join(str(_HAN_DIGIT[c]) for c in whole) or 0)
    else:
        if whole[0] in _HAN_LARGE:
            return None
        for c in whole:
            if c in _HAN_DIGIT:
                digit = _HAN_DIGIT[c]
            elif c in _HAN_SMALL:
                section += (digit or 1) * _HAN_SMALL[c]
                digit = 0
            else:
                total += (section + digit) * _HAN_LARGE[c]
                section = digit = 0
        total += section + digit
    return float(f"{total}.{''.join(str(_HAN_DIGIT[c]) for c in decimals)}") if decimals else float(total)
