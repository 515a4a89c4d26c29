"""A verbaliser made of ordered rules: the first rule that matches at a place and has a reading wins."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence

from promptprep.model.spoken import Reading
from promptprep.spans import Span

Handler = Callable[[re.Match[str]], Reading | None]
LONGEST_LOOK_BACK = 24  # characters to the left of a full stop in which an abbreviation begins
_WORD_BEFORE = re.compile(r"[^\W\d_]+(?:[-.][^\W\d_]+)*$")


class Rules:
    """Patterns with their handlers, by the kind of character that they begin with.

    `figures` are tried at a decimal digit, `letters` at a letter, `signs` at anything else. A pattern is matched
    at the place itself; it may look behind. A handler that returns None hands on to the next rule.
    """

    def __init__(
        self,
        figures: Sequence[tuple[str, Handler]],
        letters: Sequence[tuple[str, Handler]],
        signs: Sequence[tuple[str, Handler]],
    ) -> None:
        self._figures = _compiled(figures)
        self._letters = _compiled(letters)
        self._signs = _compiled(signs)

    def at(self, text: str, at: int) -> Reading | None:
        character = text[at]
        rules = self._figures if character.isdecimal() else self._letters if character.isalpha() else self._signs
        for pattern, handler in rules:
            match = pattern.match(text, at)
            if match:
                reading = handler(match)
                if reading:
                    return reading
        return None


def _compiled(rules: Sequence[tuple[str, Handler]]) -> list[tuple[re.Pattern[str], Handler]]:
    return [(re.compile(pattern), handler) for pattern, handler in rules]


def reading(match: re.Match[str], said: str, kind: str, *otherwise: str, end: int = -1) -> Reading:
    """What a match is read as; `end` cuts it short (what follows is left as written)."""
    span = Span(match.start(), match.end() if end < 0 else end)
    return Reading(span, said, kind, tuple(o for o in otherwise if o != said))


def one_of(words: Mapping[str, object] | Sequence[str]) -> str:
    """A group that matches any of `words`, the longest first; a full stop in them may be followed by a blank."""
    ordered = sorted(words, key=lambda w: (-len(w), w))
    return "(?:" + "|".join(re.escape(w).replace(r"\ ", "[ \u00a0\u202f]?") for w in ordered) + ")"


class Abbreviations:
    """Finds what is written short from its first full stop, so that plain words cost nothing."""

    def __init__(self, entries: Mapping[str, str]) -> None:
        self._by_last_word: dict[str, list[tuple[str, re.Pattern[str], str]]] = {}
        for written, said in sorted(entries.items(), key=lambda item: (-len(item[0]), item[0])):
            head = written.partition(".")[0]
            last = re.split(r"[\s]", head)[-1]
            pattern = re.compile(
                re.escape(written).replace(r"\ ", "[ \u00a0\u202f]?") + r"(?!\w)" * written[-1].isalpha()
            )
            self._by_last_word.setdefault(last.lower(), []).append((head, pattern, said))

    def around(self, text: str, dot: int, floor: int) -> tuple[int, int, str, str] | None:
        """(start, end, written, said) of the abbreviation whose first full stop (or hyphen) is at `dot`."""
        found = _WORD_BEFORE.search(text, max(floor, dot - LONGEST_LOOK_BACK), dot)
        if not found:
            return None
        for head, pattern, said in self._by_last_word.get(found[0].lower(), ()):
            start = dot - len(head)
            match = pattern.match(text, start) if start >= floor else None
            if match and (start == 0 or not text[start - 1].isalnum()):
                return start, match.end(), match[0], said
        return None
