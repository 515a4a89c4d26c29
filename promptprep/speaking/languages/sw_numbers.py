"""Swahili numbers in words, and their agreement with the class of the noun before them."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller

REACH = 40  # characters before a number in which its noun stands
_WORDS_BEFORE = re.compile(r"(?:(?<![\w'’])[^\W\d_]+(?:['’][^\W\d_]+)*[ \u00a0]+){1,5}\Z")
MOST_DIGITS = 15  # beyond a quadrillion the CLDR's rules have loans that nobody says


class SwahiliNumbers:
    """Number words from one `LanguageData` and one `Speller`."""

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        self._data = data
        self._speller = speller
        self._said: dict[str, str] = {}
        self._agreeing: Mapping[str, Mapping[str, str]] = data.get("spoken", "agreement")
        self._people = frozenset(data.get("spoken", "people_and_animals.words"))
        self._single = frozenset(data.get("spoken", "without_class.but_single"))
        self._transparent = frozenset(data.get("spoken", "transparent.words"))
        words: Mapping[str, str] = data.get("spoken", "words")
        self._joining = frozenset(words["joining"].split())
        self._links, self._more = frozenset(words["links"].split()), frozenset(words["more"].split())
        self._not_classed = frozenset(data.get("spoken", "without_class.words"))

    def cardinal(self, digits: str | int, prefix: str = "") -> str:
        """A whole number; its last word agrees with a noun class ("vi" -> "vitabu viwili"). Commas are not said.

        Beyond fifteen digits the figures are said one by one.
        """
        plain = str(digits).lstrip("0") or "0"
        if len(plain) > MOST_DIGITS:
            return self.digits(plain)
        words = self._said.get(plain)
        if words is None:
            words = self._said[plain] = _joined(self._speller.spell(plain, "sw", "%spellout-cardinal"))
        return self._agreed(words, prefix, int(plain)) if prefix else words

    def _agreed(self, words: str, prefix: str, n: int) -> str:
        """Only the units agree, and only where they stand by themselves: 12 "kumi na wawili", but 2000 "elfu mbili"."""
        if n % 10 == 0 or (n > 10 and n % 1000 == 0):
            return words
        head, _, last = words.rpartition(" ")
        agreed = self._agreeing[prefix].get(last, last)
        return f"{head} {agreed}" if head else agreed

    def digits(self, digits: str) -> str:
        """Figures said one by one."""
        return " ".join(self.cardinal(d) for d in digits)

    def ordinal(self, n: int) -> str:
        """ "wa kwanza", "wa pili", "wa tatu": as it follows a person's name."""
        said = self._speller.spell(n, "sw", "%spellout-ordinal").replace(",", "")
        return said if said.startswith("wa ") else f"wa {said}"

    def decimal(self, whole: str, part: str) -> str:
        """ "2.5" -> "mbili nukta tano": the figures after the point one by one, as the CLDR's rules say them."""
        return f"{self.cardinal(whole)} {self._data.get('spoken', 'point')} {self.digits(part)}"

    def counted(self, text: str, start: int) -> str:
        """The noun before `start` that a number there counts, past what stands between them; "" where none stands.

        "watu hao 5", "watu zaidi ya 5", and "wanafunzi wa kike 5": "ki-" after a link describes the noun before it.
        """
        found = _WORDS_BEFORE.search(text, max(0, start - REACH), start)
        words = found[0].lower().replace("’", "'").split() if found else []
        while len(words) > 1:
            last = words[-1]
            described = words[-2] in self._links and self._describes(last)
            if last in self._transparent and words[-2] not in self._joining:
                words.pop()
            elif len(words) > 2 and (described or (last == "ya" and words[-2] in self._more)):
                words = words[:-2]
            else:
                break
        return words[-1] if words else ""

    def _describes(self, word: str) -> bool:
        return word.startswith("ki") and word not in self._not_classed and word not in self._people

    def class_of(self, word: str, digits: str = "") -> str:
        """The prefix that a number takes after the noun `word`; "" for classes whose numbers take none.

        After "mwaka", "mlango" and the like only a single one counts ("mwaka mmoja"): other figures name them.
        """
        lower = word.lower()
        if len(lower) < 3:
            return ""
        if lower in self._not_classed and not (digits == "1" and lower in self._single):
            return ""
        if lower in self._people:
            return "wa"
        for prefix, forms in self._agreeing.items():
            if any(lower.startswith(start) for start in forms["nouns"].split()):
                return prefix
        return ""


def _joined(words: str) -> str:
    """Without commas; a last part of one word is joined by "na": "elfu mbili na moja", "elfu moja na kumi"."""
    head, comma, last = words.rpartition(", ")
    link = " na " if comma and " " not in last else " "
    return (head.replace(",", "") + link + last) if comma else words
