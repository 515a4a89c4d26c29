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

Tokens = Sequence[tuple[str, tuple[int, int]]]
_CARDINALS = ("", "%spellout-cardinal-feminine", "%spellout-cardinal-feminine-genitive",
              "%spellout-cardinal-masculine-genitive")  # fmt: skip
_ORDINALS = ("%spellout-ordinal", "%spellout-ordinal-masculine", "%spellout-ordinal-feminine",
             "%spellout-ordinal-neuter", "%spellout-ordinal-masculine-genitive", "%spellout-ordinal-neuter-genitive",
             "%spellout-ordinal-n", "%spellout-ordinal-r", "%spellout-ordinal-s")  # fmt: skip
_TOKEN = re.compile(r"[^\W\d_]+(?:[\u0300-\u036f\u0900-\u0903\u093a-\u094f\u064b-\u0655]+[^\W\d_]*)*")
_LONGEST = 6  # words in one number below a thousand
_HAN = re.compile(
    r"(?!十分(?![间間钟鐘前後后]))[〇零一二三四五六七八九十百千万萬亿億兆两兩]+(?:[点・][〇零一二三四五六七八九]+)?(?!分之|下)"
)
_AR_PREFIXES = "وبلفك"  # and, for, to, so, like: written in one word with the number; لست alone says "I am not"
_MOST_HAN = 40  # figures: a longer string is no number
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


def _runs(text: str, tokens: Tokens, words: Words) -> Iterator[Said]:
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


def _number(text: str, tokens: Tokens, at: int, words: Words) -> tuple[float, int, bool]:
    """(value, index after it, whether it ranks) of the longest number from token `at`; index `at` where none is."""
    rank = _longest(tokens, at, words.ordinals)
    total, end = _sum(text, tokens, at, words)
    if rank is not None and rank[1] > end:
        return rank[0], rank[1], True
    if end == at:
        part = _HINDI_PARTS.get(tokens[at][0]) if words.base == "hi" and at + 1 < len(tokens) else None
        inner = (0.0, at) if part is None else _group(text, tokens, at + 1, words)
        if part is None or inner[1] <= at + 1:
            return 0.0, at, False
        value, end = inner
        size = _magnitude(tokens, end, words)
        return ((value + part) * (size or 1), end + (1 if size else 0), False)
    return _with_tail(text, tokens, total, end, words)


def _sum(text: str, tokens: Tokens, at: int, words: Words) -> tuple[float, int]:
    """Groups below a thousand with their magnitudes, the large before the small, added up."""
    total, end, below = 0.0, at, float("inf")
    while end < len(tokens) and below > 1:
        start = _after_joiner(text, tokens, end, words) if end > at else end
        if start is None:
            break
        value, stop, size = _scaled(text, tokens, start, words)
        if stop == start or value >= below or (size == 1 and value == 0 and end > at):
            break
        total, end, below = total + value, stop, size
    return total, end


def _scaled(text: str, tokens: Tokens, at: int, words: Words) -> tuple[float, int, float]:
    """A group times the magnitude beside it: (value, index after it, the magnitude or 1)."""
    if words.magnitude_first:
        size = _magnitude(tokens, at, words)
        start = at + 1 if size else at
        value, end = _group(text, tokens, start, words)
        return (value * (size or 1), end, size or 1.0) if end > start else (0.0, at, 1.0)
    value, end = _group(text, tokens, at, words)
    beside = end > at and _joined(text, tokens, end - 1)
    if beside and (size := _magnitude(tokens, end, words)) and value < size:
        return value * size, end + 1, size
    return value, end, 1000.0 if end > at and value >= 1000 and value % 1000 == 0 else 1.0


def _magnitude(tokens: Tokens, at: int, words: Words) -> float:
    power = words.magnitudes.get(tokens[at][0]) if at < len(tokens) else None
    return 0.0 if power is None else 10.0**power


def _group(text: str, tokens: Tokens, at: int, words: Words) -> tuple[float, int]:
    """A number below a thousand: a round hundred may be followed by what is below a hundred."""
    found = _atom(tokens, at, words)
    if found is None:
        return 0.0, at
    value, end = found
    if value < 1000 and value % 100 == 0 and value > 0 and end < len(tokens):
        start = _after_joiner(text, tokens, end, words)
        rest = None if start is None else _atom(tokens, start, words)
        if rest is not None and 0 < rest[0] < 100:
            return value + rest[0], rest[1]
    return value, end


def _after_joiner(text: str, tokens: Tokens, at: int, words: Words) -> int | None:
    """Where the next part of a number begins, over an "and" between; None where more than blanks lie between."""
    if at >= len(tokens) or not _joined(text, tokens, at - 1):
        return None
    if tokens[at][0] in words.joiners:
        return at + 1 if at + 1 < len(tokens) and _joined(text, tokens, at) else None
    return at


def _atom(tokens: Tokens, at: int, words: Words) -> tuple[float, int] | None:
    if at >= len(tokens):
        return None
    found = _longest(tokens, at, words.cardinals)
    if found is None and words.base == "ar" and tokens[at][0][0] in _AR_PREFIXES and tokens[at][0] != "لست":
        bare = [(tokens[at][0][1:], tokens[at][1]), *tokens[at + 1 : at + _LONGEST]]
        inner = _longest(bare, 0, words.cardinals)
        found = None if inner is None else (inner[0], at + inner[1])
    return found or _compound(tokens[at][0], at, words)


def _longest(tokens: Tokens, at: int, phrases: Mapping[tuple[str, ...], float]) -> tuple[float, int] | None:
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


def _with_tail(text: str, tokens: Tokens, value: float, end: int, words: Words) -> tuple[float, int, bool]:
    """The decimals or the half after a number in words."""
    for half in words.halves:
        if tuple(t for t, _ in tokens[end : end + len(half)]) == half:
            return value + 0.5, end + len(half), False
    if end + 1 < len(tokens) and tokens[end][0] in words.points and _joined(text, tokens, end - 1):
        digits, at = "", end + 1
        while at < len(tokens) and _joined(text, tokens, at - 1) and (one := _below(tokens, at, words)) is not None:
            digits += str(one)
            at += 1
        if digits:
            return float(f"{value:.0f}.{digits}"), at, False
    return value, end, False


def _below(tokens: Tokens, at: int, words: Words) -> int | None:
    """The figures that one word adds to a decimal: single figures, or tens ("trois virgule quatorze")."""
    value = words.cardinals.get((tokens[at][0],))
    return int(value) if value is not None and value < 100 else None


def _joined(text: str, tokens: Tokens, at: int) -> bool:
    """Whether nothing but blanks or a hyphen lies between a token and the next."""
    return 0 <= at < len(tokens) - 1 and not text[tokens[at][1][1] : tokens[at + 1][1][0]].strip(" -\u00a0\u2011")


def _han(text: str) -> Iterator[Said]:
    for found in _HAN.finditer(text):
        value = han_value(found[0])
        if value is not None:
            ranks = text[found.start() - 1 : found.start()] == "第" or text[found.end() + 1 : found.end() + 2] == "目"
            half = 0.5 if text[found.end() : found.end() + 2] == "个半" else 0.0
            yield Said(Span(*found.span()), value + half, ranks)


def han_value(text: str) -> float | None:
    """The value of a number in Han figures, None where they make none ("万一") or one that nobody says."""
    if len(text) > _MOST_HAN:
        return None
    whole, _, decimals = text.replace("・", "点").partition("点")
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
