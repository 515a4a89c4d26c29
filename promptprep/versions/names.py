"""Finds proper names that must come through a translation unchanged: people, and words that no word list has.

Names that languages translate (Saturn, London, the Moon) are left alone: better silent than wrong.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from difflib import SequenceMatcher

from promptprep.model.language import LanguageData
from promptprep.model.ports import Frequency
from promptprep.model.script import Segment
from promptprep.model.versions import Name
from promptprep.spans import Span
from promptprep.versions.listening import Listener
from promptprep.versions.sounds import plain_latin

LATIN = frozenset({"en", "es", "fr", "de", "pt", "sw"})
RARE_ZIPF = 3.3  # rarer words than this are no dictionary words (wordfreq's Zipf scale; tried on the demo's names)
_CAPITAL = re.compile(r"[^\W\d_a-zß-öø-ÿ][^\W\d_]*(?:[’'-][^\W\d_]+)*")
_WORD = re.compile(r"[^\W\d_]+(?:[\u0900-\u0903\u093a-\u094f\u064b-\u0655]+[^\W\d_]*)*")
_SENTENCE_START = re.compile(r"(?:^|[.!?…:¿¡\"“«„]\s*)$")
_POSSESSIVE = re.compile(r"[’']s$")


def capitalised_runs(text: str) -> Iterator[list[Span]]:
    """Stretches of words with capitals side by side, one span a word."""
    run: list[Span] = []
    for m in _CAPITAL.finditer(text):
        if not m[0][0].isupper():
            continue
        if run and text[run[-1].end : m.start()] not in (" ", "\u00a0", "-"):
            yield run
            run = []
        run.append(Span(*m.span()))
    if run:
        yield run


def names_of(text: str, data: LanguageData, frequency: Frequency, people: frozenset[str] = frozenset()) -> list[Name]:
    """Names in a text of a language with capitals. `people` are folded words known to be people's names."""
    if data.base not in LATIN:
        return []
    titles = {str(t).rstrip(".").casefold() for t in data.maybe("phrases", "titles", ())}
    dated = {w.casefold() for key in ("months", "weekdays", "units") for w in data.maybe("versions", key, {})}
    found: list[Name] = []
    for run in capitalised_runs(text):
        words = [_POSSESSIVE.sub("", span.of(text)) for span in run]
        titled = words[0].casefold() in titles or _title_before(text, run[0].start, titles)
        opens = bool(_SENTENCE_START.search(text[: run[0].start][-4:]))
        own: list[Name] = []
        for n, (span, word) in enumerate(zip(run, words, strict=True)):
            low = word.casefold()
            if low in titles or low in dated or len(word) < 3 or (word.isupper() and len(word) < 5):
                continue
            person = titled or plain_latin(word) in people
            rare = _is_rare(low, data, frequency) and (n or not opens or len(run) > 1)
            if person or rare:
                own.append(Name(word, Span(span.start, span.start + len(word)), person or len(run) > 1))
        whole = " ".join(name.text for name in own)
        found += [replace(name, whole=whole) for name in own]
    return found


def _title_before(text: str, start: int, titles: set[str]) -> bool:
    words = text[max(0, start - 20) : start].split()
    return bool(words) and words[-1].rstrip(".").casefold() in titles


def _is_rare(low: str, data: LanguageData, frequency: Frequency) -> bool:
    zipf = frequency.zipf(low, data.base)
    return zipf is not None and zipf < RARE_ZIPF


def people_of(segment: Segment) -> frozenset[str]:
    """Folded words that stand with capitals side by side both in a cue and in the copy: a name strap's person."""
    copy = {plain_latin(w) for p in segment.paragraphs for w in _WORD.findall(p.text) if w[0].isupper()}
    found: set[str] = set()
    for cue in segment.cues:
        for run in capitalised_runs(cue.text):
            words = [plain_latin(span.of(cue.text)) for span in run]
            if len(words) > 1:
                found |= {w for w in words if w in copy and len(w) > 2}
    return frozenset(found)


def is_there(name: Name, near: str, whole: str, listener: Listener) -> bool:
    """Whether a name stands in the target, as its language would write it.

    `near` is the passage where it belongs, `whole` the segment: further off it must sound closer.
    """
    words = listener.words(whole)
    own = plain_latin(name.text)
    if any(plain_latin(w) == own for w in words):
        return True
    if listener.data.base in LATIN:
        return any(_adapted(own, plain_latin(w), name.certain) for w in words if w[0].isupper())
    return listener.hears(name, near) or (near != whole and listener.hears(name, whole, far=True))


def _adapted(own: str, other: str, strict: bool) -> bool:
    """Whether a word is the name with an ending of its language; loosely, a name of the same beginning."""
    if other.startswith(own) and len(other) - len(own) <= 2:
        return True
    if strict:
        return False
    shared = sum(1 for _ in _common(own, other))
    return shared >= 4 or SequenceMatcher(None, own, other, autojunk=False).ratio() >= 0.6


def _common(one: str, other: str) -> Iterator[str]:
    for a, b in zip(one, other, strict=False):
        if a != b:
            return
        yield a
