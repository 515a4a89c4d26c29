"""A letter of another script that looks like one of the word's own."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from functools import lru_cache

from promptprep.checking.context import Context
from promptprep.checking.rule import EVERY, Hit, Rule
from promptprep.spans import Span

_PAIRS = (
    ("CYRILLIC", "аеорсухіјѕАВЕКМНОРСТХІЈЅԁһӏ", "LATIN", "aeopcyxijsABEKMHOPCTXIJSdhl"),
    ("GREEK", "ΑΒΕΖΗΙΚΜΝΟΡΤΥΧονυρ", "LATIN", "ABEZHIKMNOPTYXovup"),
)  # Unicode Technical Standard 39, confusables.txt: the single letters that are the same to the eye
_TO_LATIN = {other: latin for _, others, _, latins in _PAIRS for other, latin in zip(others, latins, strict=True)}
_TO_CYRILLIC = dict(zip(_PAIRS[0][3], _PAIRS[0][1], strict=True))
_RUN = re.compile(r"[^\W\d_]{2,}")


def find(context: Context) -> Iterator[Hit]:
    for passage in context.passages:
        if passage.text.isascii():
            continue
        for found in _RUN.finditer(passage.text):
            mended = _mended(found[0])
            if mended is not None:
                span = Span(*found.span())
                message = f"{found[0]!r} mixes letters of two scripts that look alike"
                instead = mended if passage.plain(span) else None
                yield Hit(passage.source(span), message, "write the word in one script", instead)


def _mended(word: str) -> str | None:
    """The word in the script that most of its letters have, where all the others have a twin there; else None."""
    if word.isascii():
        return None
    scripts = [_script(c) for c in word]
    latin, cyrillic = scripts.count("LATIN"), scripts.count("CYRILLIC")
    others = len(word) - latin
    if not latin or not others or not set(scripts) <= {"LATIN", "CYRILLIC", "GREEK"}:
        return None
    only_twins = all(c in _TO_LATIN for c, s in zip(word, scripts, strict=True) if s != "LATIN")
    if only_twins and latin >= others:
        return "".join(_TO_LATIN.get(c, c) for c in word)
    back = all(c in _TO_CYRILLIC for c, s in zip(word, scripts, strict=True) if s == "LATIN")
    return "".join(_TO_CYRILLIC.get(c, c) for c in word) if back and cyrillic == others else None


@lru_cache(maxsize=4096)
def _script(letter: str) -> str:
    return unicodedata.name(letter, "").split(" ")[0]


RULE = Rule(
    name="look-alike-letter",
    level="fix",
    find=find,
    languages=EVERY,
    sees="A word with letters of two scripts that look the same, such as a Cyrillic \u0430 in a Latin word.",
    trips="Nobody sees it, but fonts change in the middle of the word, and search, timing and pronunciation miss it.",
    sources=("Unicode Technical Standard 39, Unicode Security Mechanisms, confusables.txt (from memory)",),
    fires="The c\u043emet is back.",
    silent="The comet is back.",
)
