"""A verbaliser made of ordered rules: the first rule that matches at a place and has a reading wins."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence

from promptprep.model.spoken import Reading
from promptprep.spans import Span

Handler = Callable[[re.Match[str]], Reading | None]
VULGAR = {
    "½": (1, 2),
    "⅓": (1, 3),
    "⅔": (2, 3),
    "¼": (1, 4),
    "¾": (3, 4),
    "⅕": (1, 5),
    "⅖": (2, 5),
    "⅗": (3, 5),
    "⅘": (4, 5),
    "⅙": (1, 6),
    "⅚": (5, 6),
    "⅛": (1, 8),
    "⅜": (3, 8),
    "⅝": (5, 8),
    "⅞": (7, 8),
}
# A comma between figures that is not one of several ("1,2,3" counts up and has no decimals).
DECIMAL_COMMA = r"(?<!\d,\d)(?<!\d,\d\d),(?!\d+,\d)"
LONGEST_LOOK_BACK = 24  # characters to the left of a full stop in which an abbreviation begins
_LAST_WORD = re.compile(r"((?:[^\W\d_]|[\u0900-\u097f\u064b-\u0652])+)[\s\"«„“(]*\Z")
_LETTER = re.compile(r"[\w\u0900-\u0963]")
_WORD_BEFORE = re.compile(r"(?:[^\W\d_]|[\u0900-\u0963])+(?:[-.](?:[^\W\d_]|[\u0900-\u0963])+)*\Z")


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
        if character.isalpha() and at and _same_word(text[at - 1], character):
            return None
        rules = self._figures if character.isdecimal() else self._letters if character.isalpha() else self._signs
        for pattern, handler in rules:
            match = pattern.match(text, at)
            if match:
                reading = handler(match)
                if reading:
                    return reading
        return None


def _same_word(before: str, character: str) -> bool:
    """Whether two letters stand in one word of one script: nothing written short begins inside a word."""
    return before.isalpha() and before.isascii() == character.isascii()


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


def as_written(found: str, table: Mapping[str, object]) -> str:
    """The data's spelling of what was found with other blanks, or with none."""
    if found in table:
        return found
    plain = re.sub(r"\s", "", found)
    return next(key for key in table if key.replace(" ", "") == plain)


def joined(first: str, last: str) -> str:
    """Two numbers said as a range: a hyphen between single words, else a dash for the breath."""
    return f"{first}{' — ' if ' ' in first else '-'}{last}"


def is_day(day: int, month: int) -> bool:
    """Whether a month has such a day (29 February passes)."""
    return 1 <= month <= 12 and 1 <= day <= (29 if month == 2 else 30 if month in (4, 6, 9, 11) else 31)


def is_year_pair(first: str, second: str) -> bool:
    """Whether "2020/2021" names two years and is no fraction."""
    return len(first) == len(second) == 4 and 1900 <= int(first) < int(second) <= 2100


_TIEBREAK = r"(?:[ \u00a0]?\(\d{1,2}(?:[-–]\d{1,2})?\))?"
_PAIR_BEFORE = re.compile(rf"\d[-–:]\d{{1,2}}{_TIEBREAK}[,،]?[ \u00a0]\Z")
_PAIR_AFTER = re.compile(rf"{_TIEBREAK}[,،]?[ \u00a0]\d{{1,2}}[-–:]\d{{1,2}}(?![-–:\d])")


def in_row_of_pairs(text: str, start: int, end: int) -> bool:
    """Whether "3-6" stands in a row of its like ("6-4, 3-6, 7-5"), as sets of a match do."""
    return bool(_PAIR_BEFORE.search(text, max(0, start - 18), start) or _PAIR_AFTER.match(text, end))


def is_season(first: str, second: str) -> bool:
    """Whether "2025/26" names a year and the next."""
    return len(first) == 4 and len(second) == 2 and 1900 <= int(first) <= 2100 and (int(first) + 1) % 100 == int(second)


def word_before(text: str, start: int, reach: int = 40) -> str:
    """The word just before `start`, in lower case; "" where a stop or nothing stands there."""
    found = _LAST_WORD.search(text, max(0, start - reach), start)
    return found[1].lower() if found else ""


class Abbreviations:
    """Finds what is written short from its first full stop, so that plain words cost nothing."""

    def __init__(self, entries: Mapping[str, str]) -> None:
        self._by_last_word: dict[str, list[tuple[str, re.Pattern[str], str]]] = {}
        for written, said in sorted(entries.items(), key=lambda item: (-len(item[0]), item[0])):
            head = re.split(r"[./-]", written)[0]
            last = re.split(r"[\s]", head)[-1]
            may_begin = (len(head) > 1 or "/" in written or "." in written[2:]) and written[0].islower()
            begun = f"[{written[0]}{written[0].upper()}]" if may_begin else re.escape(written[0])
            rest = re.escape(written[1:]).replace(r"\ ", "[ \u00a0\u202f]?")
            pattern = re.compile(begun + rest + r"(?!\w)" * written[-1].isalpha())
            self._by_last_word.setdefault(last.lower(), []).append((head, pattern, said))

    def around(self, text: str, dot: int, floor: int) -> tuple[int, int, str, str] | None:
        """(start, end, written, said) of the abbreviation whose first full stop (hyphen, stroke) is at `dot`."""
        found = _WORD_BEFORE.search(text, max(floor, dot - LONGEST_LOOK_BACK), dot)
        if not found:
            return None
        for head, pattern, said in self._by_last_word.get(found[0].lower(), ()):
            start = dot - len(head)
            match = pattern.match(text, start) if start >= floor else None
            if match and (start == 0 or not _LETTER.match(text, start - 1)):
                return start, match.end(), match[0], said
        return None

    def reading(self, text: str, dot: int, floor: int) -> Reading | None:
        """The same as a reading, for languages whose abbreviations are said alike wherever they stand."""
        found = self.around(text, dot, floor)
        return Reading(Span(found[0], found[1]), found[3], "abbreviation") if found else None
