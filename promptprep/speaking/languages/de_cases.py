"""German cases: which ending an ordinal takes, and which case a ruler's number stands in, by the words around."""

from __future__ import annotations

import re
from collections.abc import Callable

from promptprep.model.language import LanguageData
from promptprep.speaking.western.grammar import word_after, word_before

_GENDERS = {"m": 0, "f": 1, "n": 2}
_STRONG = {"nominative": "res", "accusative": "nes", "dative": "mrm", "genitive": "nrn"}
_PLURAL_ARTICLES = ("die", "diese", "jene", "alle", "beide")
_PERSONS = ("tsche", "sche", "liche", "agte", "igte", "ellte", "sene", "ende", "annte", "anke")  # "jeder 3. Deutsche"
_STRONG_PLURAL = {"nominative": "e", "accusative": "e", "dative": "n", "genitive": "r"}
_ARTICLE = {
    "nominative": ("der", "die", "das"),
    "accusative": ("den", "die", "das"),
    "dative": ("dem", "der", "dem"),
    "genitive": ("des", "der", "des"),
}
_TO_PERSONS = {"an": "accusative"}
_BY_ARTICLE = {"des": "genitive", "dem": "dative", "den": "accusative"}
_ADJECTIVE = re.compile(r"[ \u00a0]([a-zäöüß]{2,20}?)(e[rsnm]?)(?=[ \u00a0])")
_LINK = r"(?:,[ \u00a0]|,?[ \u00a0](?:und|oder|sowie|bis)[ \u00a0]|[ \u00a0]?[–/-][ \u00a0]?)"
_EARLIER_ORDINAL = re.compile(rf"(?<![\w.,])\d{{1,4}}\.(?:\d{{1,2}}\.)?{_LINK}\Z")
_LONGEST_ROW = 6
_REACH = 24
_YEAR_DIGITS = 4
_COUNTED = r"\d{1,4}[ \u00a0][^\W\d_]+"
_COUNTED_BEFORE = re.compile(
    rf"(?<!\w)([^\W\d_]+)[ \u00a0]{_COUNTED}(?:, {_COUNTED})*(?:,|[ \u00a0](?:und|oder|sowie))[ \u00a0]\Z"
)
_ROW_REACH = 48
_BECAME = re.compile(r"(?<!\w)(?=([A-Za-zäöü]+)[ \u00a0]((?:[^\W\d_]+,?[ \u00a0]){0,3})\Z)")
_SUBJECTS = ("er", "sie", "es", "wir", "als")
_UP_TO = re.compile(r"(?<!\w)[Bb]is zu\s\Z")
_MORE = ("mehr", "weniger")
_TITLES_AND_NAMES = 3
_MOST_ADJECTIVES = 3


class Cases:
    """`ordinals.after` gives endings by the word in front, `one.after` the cases that prepositions ask for."""

    def __init__(
        self, data: LanguageData, gender_of: Callable[[str], str], is_plural: Callable[[str, str], bool]
    ) -> None:
        self.gender_of = gender_of
        self.is_plural = is_plural
        self.after = {str(k): str(v) for k, v in data.get("spoken", "ordinals.after").items()}
        self.governed = {str(k): str(v) for k, v in data.get("spoken", "one.after").items()}
        self._datives = frozenset(data.get("spoken", "ordinals.dative.before"))
        self._ranked = tuple(str(n).lower() for n in data.get("spoken", "ordinals.nouns"))
        self.adverbs = frozenset(data.get("spoken", "one.adverbs"))
        self._titles = frozenset(data.get("spoken", "roman.titles"))
        self._names = frozenset(data.get("spoken", "roman.names"))
        short = data.get("spoken", "weekdays.short")
        self._weekdays = frozenset((*data.get("spoken", "weekdays.names"), *short, *(f"{day}." for day in short)))

    def determined(self, before: str, earlier: str) -> str:
        """The ending after a determiner and the word in front of that; "" where nothing asks for one."""
        word = before.lower()
        if word == "der" and earlier.lower() in self._datives:
            return "n"
        return self.after.get(word, "")

    def day_ending(self, before: str) -> str:
        """Of a day in front of its month; without an article prepositions ask for the same as with one."""
        return self.determined(before, "") or ("n" if before.lower() in self.governed else "r")

    def governor(self, text: str, at: int) -> str:
        """The word that decides a number's case; a row goes on in the first one's ("nach 1 Tag und 1 Nacht")."""
        before = word_before(text, at)
        if before.lower() in self.adverbs:
            return word_before(text, at - len(before) - 1)
        if before == "zu" and _UP_TO.search(text, max(0, at - _REACH), at):
            return "bis zu"
        if before not in ("und", "oder", "sowie") and text[at - 2 : at - 1] != ",":
            return before
        first = _COUNTED_BEFORE.search(text, max(0, at - _ROW_REACH), at)
        return first[1] if first else before

    def case_after(self, word: str) -> str:
        """The case that a preposition or verb asks for, "nominative" where it is not known."""
        return self.governed.get(word.lower(), "nominative")

    def before_day(self, text: str, at: int) -> str:
        """The word that decides a day's case: "am Freitag, 3. Mai" goes on in the weekday's."""
        at = self._row_start(text, at)
        before = word_before(text, at)
        if before not in self._weekdays:
            return before
        at = _start_of(before, text, at)
        before = word_before(text, at)
        return word_before(text, _start_of(before, text, at)) if before.lower() in self.adverbs else before

    @staticmethod
    def _row_start(text: str, at: int) -> int:
        """Where the first of ordinals in a row begins: "am 3., 4. und 5. Juni"."""
        for _ in range(_LONGEST_ROW):
            earlier = _EARLIER_ORDINAL.search(text, max(0, at - _REACH), at)
            if not earlier:
                break
            at = earlier.start()
        return at

    def ordinal_ending(self, text: str, at: int, end: int) -> str:
        """Of an ordinal in figures with its dot at [at, end), or "" where the dot likelier ends a sentence."""
        adjective, noun = _noun_behind(text, end)
        start = self._row_start(text, at)
        before = word_before(text, start)
        earlier = word_before(text, start - len(before) - 1) if before else ""
        word = before.lower()
        if word == "als" and (earlier.lower() in _MORE or earlier.endswith("er")):
            return ""
        governed = "dative" if word in self._datives else self.governed.get(word, "")
        ranked = noun.lower().startswith(self._ranked)
        if ranked and governed:
            return self._strong(noun, adjective, governed)
        ending = self.determined(before, earlier)
        if end - at - 1 == _YEAR_DIGITS and not (ending and ranked):
            return ""
        if ending:
            return self._agreeing(ending, before, noun, adjective)
        if noun and not text[max(0, at - 2) : at].strip(" .!?\n"):
            return self._strong(noun, adjective, "nominative")
        return self._strong(noun, "", "nominative") if ranked else ""

    def adjective_ending(self, text: str, at: int, end: int) -> str:
        """Of an adjective written short at [at, end), by what stands before it and its noun; "" without a noun."""
        adjective, noun = _noun_behind(text, end)
        before = word_before(text, at)
        earlier = word_before(text, at - len(before) - 1) if before else ""
        following = word_after(text, end)
        if not noun or following in self._datives or following in self.governed:
            return ""
        if case := "dative" if before.lower() in self._datives else self.governed.get(before.lower(), ""):
            return self._strong(noun, adjective, case)
        ending = self.determined(before, earlier)
        return (
            self._agreeing(ending, before, noun, adjective) if ending else self._strong(noun, adjective, "nominative")
        )

    def _agreeing(self, ending: str, before: str, noun: str, adjective: str) -> str:
        """After "der" a feminine is no nominative; after "ein" noun or adjective tell the gender."""
        plural = before.lower() in _PLURAL_ARTICLES and self.is_plural(noun, before)
        if ending == "e" and (adjective == "en" or plural):
            return "n"
        if ending == "e" and before.lower() == "jeder" and noun.endswith(_PERSONS):
            return "e"
        if ending == "e" and before.lower() in ("der", "dieser", "jeder", "jener"):
            return "n" if self.gender_of(noun) == "f" else "e"
        if ending == "r" and (adjective == "es" or (not adjective and self.gender_of(noun) == "n")):
            return "s"
        return "e" if ending == "r" and not adjective and self.gender_of(noun) == "f" else ending

    def _strong(self, noun: str, adjective: str, case: str) -> str:
        """Without a determiner the ordinal takes the article's ending, as an adjective behind it does."""
        if adjective:
            return adjective[-1]
        if self.is_plural(noun, ""):
            return _STRONG_PLURAL[case]
        return _STRONG[case][_GENDERS[self.gender_of(noun) or "m"]]

    def predicate_of(self, text: str, at: int, verbs: frozenset[str]) -> re.Match[str] | None:
        """The verb of becoming before `at`, an adverb and a pronoun between: "wurde", "wurde sie sogar", "kam als"."""
        for found in _BECAME.finditer(text, max(0, at - _ROW_REACH), at):
            between = (w.lower() for w in found[2].split())
            if found[1].lower() in verbs and all(w in self.adverbs or w in _SUBJECTS for w in between):
                return found
        return None

    def subject_of(self, text: str, verb: re.Match[str]) -> str:
        """Who does what the verb says: a pronoun behind it, or the word in front of it."""
        behind = [w for w in verb[2].split() if w.lower() in _SUBJECTS and w != "als"]
        return behind[0] if behind else word_before(text, verb.start(1))

    def ruler_case(self, text: str, at: int, name: str, gender: str) -> str:
        """The case of a ruler's name that ends just before `at`, by article, preposition and title in front of it."""
        start = _start_of(name, text, at)
        if name not in text[start:at].split() or text[at - 2 : at - 1] in ("'", "’"):
            return "genitive"
        word = word_before(text, start)
        for _ in range(_TITLES_AND_NAMES):
            if word not in self._titles and word not in self._names:
                break
            start = _start_of(word, text, start)
            word = word_before(text, start)
        found = _BY_ARTICLE.get(word.lower()) or _TO_PERSONS.get(word.lower()) or self.governed.get(word.lower())
        return found or ("genitive" if word == "der" and gender == "f" else "nominative")

    def article(self, case: str, gender: str) -> str:
        return _ARTICLE[case][_GENDERS[gender]]


def weak_ending(case: str, gender: str) -> str:
    """Of an adjective behind the definite article, singular."""
    return "e" if case == "nominative" or (case == "accusative" and gender != "m") else "n"


def _start_of(word: str, text: str, at: int) -> int:
    """Where the word begins that ends before the blank (and comma) in front of `at`."""
    return text.rfind(word, max(0, at - len(word) - 3), at) if word else at


def _noun_behind(text: str, at: int) -> tuple[str, str]:
    """The first adjective's ending and the noun behind the blank at `at`; "" for what is not there."""
    ending = ""
    for _ in range(_MOST_ADJECTIVES):
        found = _ADJECTIVE.match(text, at)
        if not found:
            break
        ending, at = ending or found[2], found.end()
    noun = word_after(text, at)
    return (ending, noun) if noun[:1].isupper() else ("", "")
