"""Particles that follow what is said before them, where the sign that was written has another end than its name."""

from __future__ import annotations

import re
from dataclasses import replace

from promptprep.model.spoken import Reading
from promptprep.spans import Span

_PARTICLE = re.compile(r"(으로|로|[은는이가을를과와])(?![가-힣])")
# After a consonant and after a vowel (한글 맞춤법 and 표준국어대사전, entries of the particles; from memory).
_PAIRS = (("은", "는"), ("이", "가"), ("을", "를"), ("과", "와"), ("으로", "로"))
_PAIR_OF = {particle: pair for pair in _PAIRS for particle in pair}
_SIGNS_BEFORE = frozenset("$€£¥₩₹")
_ENDS_IN_L = 8


def agreed(text: str, found: Reading) -> Reading:
    """`found` with the particle behind it put right: "$1.5억을" is said 달러를.

    After a bare figure or a word the copy keeps its own: 종로3가 is a street and 제2과 a lesson.
    """
    last = text[found.span.end - 1]
    moved = text[found.span.start] in _SIGNS_BEFORE
    if not moved and (last.isdecimal() or "가" <= last <= "힣"):
        return found
    particle = _PARTICLE.match(text, found.span.end)
    syllable = found.said[-1:]
    if particle is None or not "가" <= syllable <= "힣":
        return found
    right = _after(syllable, _PAIR_OF[particle[1]])
    if right == particle[1]:
        return found
    return replace(found, span=Span(found.span.start, particle.end()), said=found.said + right)


def _after(syllable: str, pair: tuple[str, str]) -> str:
    end = (ord(syllable) - ord("가")) % 28
    is_open = not end or (end == _ENDS_IN_L and pair[1] == "로")
    return pair[1] if is_open else pair[0]
