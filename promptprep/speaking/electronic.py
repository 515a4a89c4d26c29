"""URLs, e-mail addresses, hashtags and @names, as a host says them: words as words, signs by name.

The scheme ("https://") is not said. What the language calls each sign stands in `spoken.toml`, table `electronic`:
keys are the signs themselves (".", "/", "@", "#", ...); a language without the table reads nothing here. `letters`
lists the parts that are said letter by letter though they look pronounceable, `short` the words of two letters,
`parts` names those with a name, `endings` the last parts of the language's own countries.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from typing import Any

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.spans import Span

Read = Callable[[str, int, int], Reading | None]

_ENDINGS = (
    "com|org|net|info|edu|gov|int|museum|example|test|eu|io|tv|uk|de|fr|es|pt|br|ru|cn|jp|kr|sa|eg|ke|tz|ch|at|be|ca|"
    "mx|ar|co|nl|it|us|au|nz|ie|pl|se|dk"
)
_WEB = re.compile(r"(?:https?|ftp)://[!-~À-ɏ]+|www\.[!-~À-ɏ]+", re.IGNORECASE)
_HOST_LEFT = re.compile(r"(?<![\w@.])(?:[\w-]{2,}|\w\.[\w-]{2,})(?:\.[\w-]+)*\Z")
_NAME_LEFT = re.compile(r"[\w.+-]+\Z")
_HOST_RIGHT = re.compile(r"@(?:[\w-]{1,63}\.){1,8}[^\W\d_]{2,24}")
_HANDLE = re.compile(r"@\w[\w.]{0,40}\b")
_VOWEL_SIGNS = "\u064b-\u0652\u0900-\u0963"  # written onto letters; `\w` has none of them
_HASHTAG = re.compile(rf"#[^\W_][\w{_VOWEL_SIGNS}]*")
_MARKED = re.compile(f"[{_VOWEL_SIGNS}]")
_NUMBERED = re.compile(r"#(?:\d+|[A-Z]{1,3}(?!(?:19|20)\d\d\Z)\d{3,})\Z")
_TAIL = ".,;:!?)]}>»”’\"'"
_PART = re.compile(r"\d+|[^\W\d_]+|.", re.DOTALL)
_CAMEL = re.compile(r"(?<=[^\W\d_A-ZÀ-Þ])(?=[A-ZÀ-Þ])|(?<=\D)(?=\d)|(?<=\d)(?=\D)|(_)")
_VOWELS = frozenset("aeiouyàáâãäåæèéêëìíîïòóôõöøœùúûüý")
_LOOK_BACK = 80


@lru_cache(maxsize=64)
def _last_part(more: str) -> re.Pattern[str]:
    """The end of an address: one of the common endings, or of a language's own."""
    return re.compile(
        rf"\.(?:(?:{_ENDINGS}{more})(?:/[!-~À-ɏ]*)?|[a-z]{{2,3}}/[\w-]{{2,}}(?:[/?][!-~À-ɏ]*)?)(?![\w@]|\.\w)"
    )


def electronic(text: str, data: LanguageData, read: Read) -> list[Reading]:
    """Addresses and tags in `text`, disjoint, in no certain order. `read` says figures and capitals inside them."""
    words = data.maybe("spoken", "electronic")
    if words is None or not any(sign in text for sign in ("@", "#", "://", ".")):
        return []
    speaker = _Wording(words, data.maybe("spoken", "letters", {}), read)
    found: list[Reading] = []
    more = "".join(f"|{re.escape(ending)}" for ending in words.get("endings", ()))
    for span, kind in _places(text, _last_part(more)):
        if not any(span.overlaps(other.span) for other in found[-4:]):
            found.append(Reading(span, speaker.said(span.of(text), kind), kind))
    return found


def _places(text: str, last_part: re.Pattern[str]) -> Iterator[tuple[Span, str]]:
    if "://" in text or "www." in text.lower():
        yield from ((_trimmed(text, m), "url") for m in _WEB.finditer(text))
    if "@" in text:
        yield from _at_signs(text)
    if "#" in text:
        yield from _hashtags(text)
    yield from _bare_hosts(text, last_part)


def _trimmed(text: str, found: re.Match[str]) -> Span:
    return Span(found.start(), found.start() + len(found[0].rstrip(_TAIL)))


def _at_signs(text: str) -> Iterator[tuple[Span, str]]:
    at = text.find("@")
    while at >= 0:
        left = _NAME_LEFT.search(text, max(0, at - _LOOK_BACK), at)
        right = _HOST_RIGHT.match(text, at)
        handle = _HANDLE.match(text, at)
        if left and right:
            yield Span(left.start(), right.end()), "email"
        elif handle and not left and text[at - 1 : at] != "/":
            yield Span(at, handle.end()), "hashtag"
        at = text.find("@", at + 1)


def _hashtags(text: str) -> Iterator[tuple[Span, str]]:
    for found in _HASHTAG.finditer(text):
        before = text[found.start() - 1 : found.start()]
        if not (before.isalnum() or before in ("&", "/")) and not _NUMBERED.match(found[0]):
            yield Span(found.start(), found.end()), "hashtag"


def _bare_hosts(text: str, last_part: re.Pattern[str]) -> Iterator[tuple[Span, str]]:
    for found in last_part.finditer(text):
        left = _HOST_LEFT.search(text, max(0, found.start() - _LOOK_BACK), found.start())
        if left and any(c.isalpha() for c in left[0]):
            yield Span(left.start(), _trimmed(text, found).end), "url"


class _Wording:
    def __init__(self, words: Mapping[str, Any], names: Mapping[str, str], read: Read) -> None:
        self.words = words
        self.names = names
        self.read = read
        self.parts: Mapping[str, str] = words.get("parts", {})
        self.letters = frozenset(words.get("letters", ()))
        self.short = frozenset(words.get("short", ()))

    def said(self, written: str, kind: str) -> str:
        if kind == "hashtag":
            silent = "_" if written[0] == "#" else ""
            parts = [p for p in _CAMEL.split(written[1:]) if p and p != silent]
            return " ".join([self.words[written[0]], *filter(None, map(self.tagged, parts))])
        plain = written.split("://", 1)[-1].rstrip("/")
        parts = _PART.findall(plain)
        tops = {n for n, part in enumerate(parts) if parts[n - 1 : n] == ["."] and _is_top(parts, n)}
        words = (self.letter_by_letter(part) if n in tops else self.part(part) for n, part in enumerate(parts))
        return " ".join(filter(None, words))

    def letter_by_letter(self, part: str) -> str:
        """A country's two letters at the end of a host, though they may be a word ("it")."""
        return self.part(part) if part not in self.short else " ".join(self.names.get(c, c) for c in part.upper())

    def tagged(self, part: str) -> str:
        """A part of a tag: what is not all capitals is a word however short ("De" in #CielDeMars)."""
        if not part.isascii() and _MARKED.search(part):
            return part
        plain = part.isalpha() and not part.isupper() and not _VOWELS.isdisjoint(part.lower())
        return part if plain else self.part(part)

    def part(self, part: str) -> str:
        if part.isdecimal():
            return self.figure(part)
        if not part.isalpha():
            return str(self.words.get(part, ""))
        if part.lower() in self.parts:
            return self.parts[part.lower()]
        if part.isupper() and (whole := self.whole(part)):
            return whole
        return part if self.is_word(part.lower()) else " ".join(self.names.get(c, c) for c in part.upper())

    def is_word(self, part: str) -> bool:
        """Whether people say it as a word: a vowel in it and three letters or more, or no Latin letters at all."""
        if part in self.letters:
            return False
        if part in self.short:
            return True
        return not part.isascii() or (len(part) > 2 and not _VOWELS.isdisjoint(part))

    def figure(self, part: str) -> str:
        short = len(part) <= 4 and not part.startswith("0")
        whole = self.whole(part) if short else ""
        return whole or " ".join(self.whole(d) or d for d in part)

    def whole(self, part: str) -> str:
        reading = self.read(part, 0, 0)
        return reading.said if reading and reading.span == (0, len(part)) else ""


def _is_top(parts: list[str], at: int) -> bool:
    """Whether a part ends its host: nothing or a bar behind it, and no bar in front."""
    return parts[at + 1 : at + 2] in ([], ["/"], ["?"]) and "/" not in parts[:at]
