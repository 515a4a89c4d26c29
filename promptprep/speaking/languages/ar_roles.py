"""What part an Arabic noun phrase plays in its clause, told from the words before it.

Without vowel marks the part shows only in "ون/ين" and "ان/ين". Arabic puts the verb first: what follows the verb at
once is its subject, what follows verb and subject is its object or measure; after a subject that stands before the
verb, the phrase after the verb is the object. A phrase in a clause without a verb is taken for topic or predicate.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import lru_cache
from typing import Literal

from promptprep.model.language import LanguageData

Role = Literal["subject", "object", "topic", "unknown"]
ROOT = 3  # letters of a verb in its simplest form, which may be its noun too
_THERE = "هناك"
_DONE = ("تم", "يتم", "وتم", "سيتم")  # "was done", with a verbal noun
REACH = 72  # characters before a phrase that are looked through for its verb
_WITHIN_CLAUSE = re.compile(r"[^.،؛:؟!\n()\[\]«»\"“”—\d]*")
_MARKS = re.compile("[\u064b-\u0652\u0670\u0640\u200e\u200f\u061c]")
_PAST = re.compile(r"است[^اة]{2,3}|ا[^لا]ت[^اة]{1,2}|ان[^اة]{2,3}|\w{2,}[^اة]ت|\w{2,}وا")
_FUTURE = re.compile(r"ي\w{2,}(?<!ة)")
_SUFFIXED = re.compile(r"\w{3,}(?:ه|ها|هم)")  # "حضره": its object is written onto it
_PASSIVE_FORM = re.compile(r"ان[^اة]{2,3}ت?")  # "انهار", "انضمت": never with an object
_OWNER = re.compile("(?<=..)(?:هما|هم|هن|ها|ه|نا)$")  # "حوله", "بعدها"
_MANY = re.compile(r"\w{2,}وا|(?![يت])\w{2,}نا|[يت]\w{2,}ون")  # "زرعوا", "زرعنا", "يزرعون": the subject is in the verb


def _begins_clause(word: str, before: str) -> bool:
    """ "سيكون الجو مشمسا والحرارة": after a finished predicate "and the ..." begins a clause of its own."""
    return word.startswith("وال") and len(before) > ROOT and before.endswith("ا") and not before.startswith("ال")


class ArabicRoles:
    """Answers about the clause before a place in a text, `REACH` characters back at most."""

    def __init__(self, data: LanguageData) -> None:
        def words(table: str) -> frozenset[str]:
            return frozenset(data.get("spoken", f"clause.{table}"))

        self._past, self._present = words("past"), words("present")
        self._no_verbs, self._takes = (
            words("no_verbs"),
            words("takes") | frozenset(data.get("spoken", "reaching.words")),
        )
        self._nouns_too = words("nouns_too")
        self._lasting, self._lengths = words("lasting_verbs"), words("lengths")
        self._watched, self._people = words("watched"), words("people")
        self._happens, self._others = words("happens"), words("others")
        self._aside, self._leading, self._particles = words("aside"), words("leading"), words("particles")
        self.is_verb = lru_cache(maxsize=4096)(self._is_verb)
        self._that, self._pronouns, self._pointing = words("that"), words("pronouns"), words("pointing")

    def role(self, text: str, start: int, after: str = "") -> Role:
        """The part of the phrase that begins at `start`; `after` is what it counts."""
        words, whole = self._clause(text, start)
        if words and words[-1] in self._that:
            return "object"
        if after in self._others:
            return "subject" if after.endswith("ون") else "object"
        cut = _last_place(words, self._that.__contains__) + 1
        words, whole = words[cut:], whole or cut > 0
        existing = cut > 0 and bool(words) and (self.leads(words[0]) or words[0] == _THERE)  # "إن هناك 20 سببا"
        words = [w for w in words if w not in self._aside]
        said = next((n for n in range(len(words) - 1, 0, -1) if _begins_clause(words[n], words[n - 1])), 0)
        words, whole = words[said:], whole or said > 0
        place = _last_place(words, self.is_verb)
        while place > 0 and self._is_verbal_noun(words, place):
            place = _last_place(words[:place], self.is_verb)
        if place < 0:
            if existing:
                return "object"
            plain = [w for w in words if w not in self._pointing and w not in self._pronouns]
            return "topic" if whole and not plain else "unknown"
        between = [w for w in words[place + 1 :] if w not in self._pointing]
        if between:
            return self._after_words(words[place], between, after)
        if words[place] in self._lasting and after in self._lengths:
            return "object"
        return self._after_verb(words[:place], words[place], whole)

    def _is_verbal_noun(self, words: Sequence[str], place: int) -> bool:
        """Whether what looks like a verb is the noun of "سعر صرف الدولار", "تم رفع الأسعار", "قبل عرض الفيلم"."""
        before = words[place - 1]
        if len(words[place]) != ROOT or self._is_subject_sign(before):
            return False
        return before in _DONE or self.leads(before) or (place < len(words) - 1 and not self.is_verb(before))

    def _is_subject_sign(self, word: str) -> bool:
        """Whether a verb may follow this word at once."""
        return word.startswith("ال") or word in self._particles or word in self._pronouns or word.endswith(("ه", "ها"))

    @staticmethod
    def _clause(text: str, start: int) -> tuple[list[str], bool]:
        """The words of the clause before `start`, and whether its beginning is among them."""
        left = max(0, start - REACH)
        inside = _WITHIN_CLAUSE.match(text[left:start][::-1])
        length = inside.end() if inside else 0
        words = _MARKS.sub("", text[start - length : start]).split()
        whole = left == 0 or length < start - left
        return (words if whole else words[1:]), whole

    def _is_verb(self, word: str) -> bool:
        """Whether a word is a verb by the data's lists or by its form."""
        if word in self._past or word in self._takes or word in self._lasting:
            return True
        if (
            not self._no_verbs.isdisjoint((word, word.removesuffix("ا")))
            or word in self._leading
            or len(word) < 3
            or word.startswith("ال")
        ):
            return False
        if _PAST.fullmatch(word) or _FUTURE.fullmatch(word):
            return True
        if word[0] in "تن" and "ي" + word[1:] in self._present:
            return True
        if word.endswith("نا") and (word[:-2] in self._past or word[:-3] + "ى" in self._past):
            return True
        if _SUFFIXED.fullmatch(word) and re.sub("(?:ه|ها|هم)$", "", word) in self._past:
            return True
        return word[0] in "وفس" and self.is_verb(word[1:])

    def _after_words(self, verb: str, between: Sequence[str], after: str) -> Role:
        """Verb, some words, then the phrase: an object after a subject, a subject after "in the accident"."""
        if self.leads(between[0]):
            return "object" if self._takes_at_once(verb) else "subject"
        seen = between[0].startswith("ال") and between[0].endswith("ة") and not verb.startswith(("ت", "ست"))
        owner = between[-2] if len(between) > 1 else verb if verb in self._nouns_too else "ال"
        its = _SUFFIXED.fullmatch(between[-1]) and between[-1] not in self._no_verbs and not self.leads(owner)
        if its and not owner.startswith("ال") and not between[-1].startswith("ال") and not self.leads(between[-1]):
            return "unknown"  # "سيارة سعرها 20 ألفا"
        watched = verb.lstrip("وفس") in self._watched and not verb.endswith("ت")
        return "subject" if watched and (seen or after in self._people) else "object"

    def _begins_anew(self, verb: str) -> bool:
        """Whether a verb with "و" written onto it takes no object: "قتل 12 شخصا ونجا 25 راكبا"."""
        plain = verb[1:]
        stems = {plain, plain.removesuffix("ت"), plain.removesuffix("ت") + "ى", plain.removesuffix("ت") + "ا"}
        return verb[0] == "و" and (not stems.isdisjoint(self._happens) or bool(_PASSIVE_FORM.fullmatch(plain)))

    def _after_verb(self, before: Sequence[str], verb: str, whole: bool) -> Role:
        """The phrase at once after its verb: the subject, unless the verb has one before it or within it."""
        if before and self._begins_anew(verb):
            return "subject"
        if _SUFFIXED.fullmatch(verb) and verb not in self._past:
            return "subject"
        if self._takes_at_once(verb) or _MANY.fullmatch(verb):
            return "object"
        if before and (before[-1] in self._pronouns or self._describes(before)):
            return "object"
        named = [w for w in before if w not in self._particles]
        begun = bool(named) and whole and not self.leads(named[0]) and not any(map(self.is_verb, named))
        return "object" if begun else "subject"

    def _describes(self, before: Sequence[str]) -> bool:
        """Whether a verb after these words describes an indefinite noun that has a verb: "وقع انفجار أصاب 20 شخصا"."""
        for n, word in enumerate(reversed(before)):
            if self.is_verb(word):
                return n > 0
            if self.leads(word) or word in self._particles or word.startswith("ال"):
                return False
        return False

    def _takes_at_once(self, verb: str) -> bool:
        if verb[0] == "ن" and "ي" + verb[1:] in self._present:
            return True
        return verb in self._takes or (verb[0] in "وفس" and verb[1:] in self._takes)

    def leads(self, word: str) -> bool:
        """Whether a word begins a phrase of place, time or manner."""
        plain = word.removeprefix("و")
        stem = _OWNER.sub("", plain)
        return plain in self._leading or stem in self._leading or plain.startswith(("بال", "لل", "كال"))


def _last_place(words: Sequence[str], wanted: Callable[[str], bool]) -> int:
    return next((n for n in range(len(words) - 1, -1, -1) if wanted(words[n])), -1)
