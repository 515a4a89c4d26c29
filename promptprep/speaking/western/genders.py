"""The gender of a counted noun in French, Spanish and Portuguese: lists first, then the longest known ending."""

from __future__ import annotations

import re
from collections.abc import Callable

from promptprep.model.language import LanguageData
from promptprep.speaking.western.grammar import word_after

_SHARE = re.compile(r"[ \u00a0][^\W_]{1,9}")
_NUMBER = re.compile(r"[ \u00a0]\d[\d.,]*(?!\w)")
_PLURAL_ENDS = "sxz"
_SHORTEST = 3
_LOOKED_AT = 3

Singulars = Callable[[str], tuple[str, ...]]


class Genders:
    """`nouns.feminine` and `.masculine` list whole words, `.feminine_endings` and `.masculine_endings` endings.

    `nouns.between` are the words that stand between a figure and its noun without telling its gender ("grandes",
    "mil"); `nouns.agreeing` maps endings of adjectives behind a noun to a gender; `nouns.partitive` maps what
    stands for "of the" to one ("2 das 12 câmeras").
    """

    def __init__(self, data: LanguageData, singulars: Singulars, not_nouns: frozenset[str]) -> None:
        self._singulars = singulars
        self._not_nouns = not_nouns
        words, endings = ({}, {})  # type: tuple[dict[str, str], dict[str, str]]
        for gender, key in (("m", "masculine"), ("f", "feminine")):
            words.update(dict.fromkeys(data.get("spoken", f"nouns.{key}"), gender))
            endings.update(dict.fromkeys(data.get("spoken", f"nouns.{key}_endings"), gender))
        self._words = words
        self._endings = endings
        self._longest = max(map(len, endings))
        self._between = frozenset(data.get("spoken", "nouns.between"))
        self._agreeing = tuple(data.get("spoken", "nouns.agreeing").items())
        self._coordinating = frozenset(data.get("spoken", "nouns.coordinating"))
        self._partitive = data.get("spoken", "nouns.partitive")

    def of(self, word: str) -> str:
        """ "f" or "m" of one noun; "" for what is no noun by its look."""
        if word.casefold() in self._not_nouns:
            return ""
        return self._known(word) or ("m" if len(word) >= _SHORTEST else "")

    def counted(self, text: str, end: int, *, plural: bool = False, linked: bool = False) -> str:
        """The gender of what a figure that ends at `end` counts, or "" where no noun follows.

        A `plural` noun ends as plurals do: "21 siguen" counts nothing. A figure that is itself `linked` to an earlier
        one is followed no further.
        """
        for _ in range(_LOOKED_AT):
            word = word_after(text, end)
            end += 1 + len(word)
            if word in self._partitive:
                return str(self._partitive[word])
            if word not in self._between:
                shared = "" if linked else self._linked(text, word, end)
                return shared or self._of_noun(text, word, end, plural)
            if self._is_last(text, end):
                return self.of(word)
        return ""

    def _linked(self, text: str, word: str, end: int) -> str:
        """ "f" by the noun behind the next figure: "1 o 2 personas", "1 de cada 3 personas"."""
        other = _NUMBER.match(text, end) if word in self._coordinating else None
        following = word_after(text, end)
        if other is None and following == "cada":
            other = _SHARE.match(text, end + 1 + len(following))
        return "f" if other and self.counted(text, other.end(), linked=True) == "f" else ""

    def _of_noun(self, text: str, word: str, end: int, plural: bool) -> str:
        following = word_after(text, end)
        if following == "cada":
            return ""
        if word == "de":
            return str(self._partitive.get(following, ""))
        if word.isupper() and word in self._words:
            return self._words[word]
        if word[:1].isupper() and word[-1:] == "s" and word in self._words:
            return self._words[word]
        if not word.islower() or word in self._not_nouns or (plural and word[-1] not in _PLURAL_ENDS):
            return ""
        return self._known(word) or self._by_adjective(following) or self.of(word)

    def _is_last(self, text: str, end: int) -> bool:
        following = word_after(text, end)
        return not following.islower() or following in self._not_nouns

    def _by_adjective(self, word: str) -> str:
        """By the word behind a noun that is not known: "201 flores rojas"."""
        if not word.islower() or word in self._not_nouns or word in self._words:
            return ""
        return next((gender for ending, gender in self._agreeing if word.endswith(ending)), "")

    def _known(self, word: str) -> str:
        forms = self._singulars(word.casefold())
        listed = next((self._words[form] for form in forms if form in self._words), "")
        return listed or max((self._by_ending(form) for form in forms), default=(0, ""))[1]

    def _by_ending(self, word: str) -> tuple[int, str]:
        for length in range(min(self._longest, len(word)), 0, -1):
            if gender := self._endings.get(word[-length:]):
                return length, gender
        return 0, ""
