"""Capitals: initialisms said as letters, acronyms said as words, titles; and dotted abbreviations."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import Grammar, word_after, word_before
from promptprep.speaking.western.romans import Romans
from promptprep.speaking.western.units import SPACE
from promptprep.speaking.western.weekdays import Weekdays

CAPITALS = "A-ZÀ-ÖØ-ÞŒŠŽ"
_LONGEST = 24
_FIGURE = re.compile(r"[-−+~$€£]?\d")
_RANGE_NEXT = re.compile(r"[ \u00a0\u202f]?\d+[ \u00a0]?[-–][ \u00a0]?\d")
_PLACE_LEFT = re.compile(rf"(?<!\w)(?:[{CAPITALS}][\w’']*[^\W\d_]\.?,{SPACE}|[DR]-)\Z")
_NUMERAL_NEXT = re.compile(r"[ \u00a0][IVXLC]{1,7}(?!\w)")
_NAME_LEFT = re.compile(rf"(?:[{CAPITALS}][\w’']+|\d(?:st|nd|rd|th)){SPACE}\Z")
_PLAIN_FIGURE = re.compile(rf"{SPACE}\d+")
_INITIAL_LEFT = re.compile(rf"(?<!\w)[{CAPITALS}]\.{SPACE}?\Z")
_CAPITAL_NEXT = re.compile(rf"[ \u00a0]+[«„“\"]?[{CAPITALS}]")
# Five consonants in a row, four at the beginning, or a vowel and then three that end no word ("ISBN").
_UNSAYABLE = re.compile(
    "[BCDFGHJKLMNPQRSTVWXZ]{5}|^(?!CHL|CHR|PHL|PHR|SCH|SCL|SCR|SHR|SPH|SPL|SPR|STR|THR|TSC)[BCDFGHJKLMNPQRSTVWXZ]{3}|^[AEIOU][BCDFGHJKLMNPQRSTVWXZ]{3}[BCDFGHJKLMNPQRVWXZ]$|^[BCDFGHJKLMNPQRSTVWXZ]{4}|^[AEIOU][BCDFGHJKLMNPQRSTVWXZ]{2}[BCFGJKLMNPQRVWXZ]$"
)


class Capitals:
    """Words that begin with a capital: titles without a dot, initialisms, acronyms, Roman numerals."""

    def __init__(self, grammar: Grammar, currencies: frozenset[str]) -> None:
        self.g = grammar
        self.romans = Romans(grammar)
        self.weekdays = Weekdays(grammar)
        self.titles = grammar.table("abbreviations.plain")
        self.numbered = grammar.data.maybe("spoken", "abbreviations.plain_before_number", {})
        self.streets = grammar.data.maybe("spoken", "abbreviations.plain_after_name", {})
        self.words = grammar.wordset("acronyms.words")
        self.letters = grammar.wordset("acronyms.letters")
        self.articled = frozenset(grammar.data.maybe("spoken", "acronyms.after_article", ()))
        self.common = grammar.wordset("acronyms.plain_words")
        self.currencies = frozenset(c for c in currencies if c.isalpha())
        self.marks = frozenset(c[-1] for c in currencies if not c[-1].isalnum() and len(c) > 1 and c[-1] != ".")
        dotted = [*grammar.table("abbreviations.always"), *grammar.table("abbreviations.before_name")]
        self.dotted = frozenset((*dotted, *grammar.table("abbreviations.before_number")))
        self.heads = frozenset(k[: k.index(".") + 1] for k in dotted if "." in k)
        self.and_word = grammar.text("symbols.words.&")
        self._word = re.compile(rf"[{CAPITALS}]+(?:&[{CAPITALS}]+)?")
        self._title = re.compile(r"[^\W\d_]{1,8}")
        self._dotted = re.compile(rf"(?:[{CAPITALS}]\.{SPACE}?){{2,16}}")
        self._mixed = re.compile(rf"(?<!\w)[a-z]([{CAPITALS}]{{1,4}})(?![^\W\d])")
        self._vowel = re.compile("[AEIOUYÀ-ÆÈ-ÏÒ-ÖÙ-Ý]")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        left = text[at - 1 : at]
        if left.islower() and at > floor and (found := self._mixed.match(text, at - 1)):
            return self._mixed_letters(text, found)
        if left.isalpha() or (left in ("_", "\ufffc") and at > floor and text[at - 1].isalpha()):
            return None
        following = text[at + 1 : at + 2]
        if following.islower():
            return self._plain_title(text, at) or self.weekdays.at(text, at) or self._roman(text, at)
        if (following == "." or not following.isalpha() or following.isupper()) and (
            named := self.g.named_letters(text, at)
        ):
            return named
        if following == "." and (found := self._dotted.match(text, at)):
            return self._dotted_letters(text, found)
        if following.isupper() or following == "&":
            return self._roman(text, at) or self._initialism(text, at)
        return self._roman(text, at) or self._plain_title(text, at)

    def _mixed_letters(self, text: str, found: re.Match[str]) -> Reading:
        """A small letter before capitals: pH, mRNA, iOS."""
        rest = found[1] if found[1] in self.words else " ".join(found[1])
        return Reading(Span(*found.span()), f"{found[0][0]} {rest}", "initialism")

    def _roman(self, text: str, at: int) -> Reading | None:
        return self.romans.at(text, at) if text[at] in "IVXLCDM" else None

    def _plain_title(self, text: str, at: int) -> Reading | None:
        found = self._title.match(text, at)
        said = self.titles.get(found[0]) if found else None
        if found and (numbered := self.numbered.get(found[0])) and self._counts_nothing(text, found.end()):
            return Reading(Span(*found.span()), str(numbered), "abbreviation")
        if found and (street := self.streets.get(found[0])) and self._follows_name(text, at, found.end()):
            said = street
        if not found or not said or text[found.end() : found.end() + 1].isalnum():
            return None
        if found[0].upper() in self.common and not _CAPITAL_NEXT.match(text, found.end()):
            return None
        if text[found.end() : found.end() + 1] == "." and f"{found[0]}." in self.dotted:
            return None
        return Reading(Span(*found.span()), str(said), "abbreviation")

    def _counts_nothing(self, text: str, end: int) -> bool:
        """Whether a figure follows that no noun is counted by: "No 10", but "No 2 people"."""
        figure = _PLAIN_FIGURE.match(text, end)
        return bool(figure) and not self.g.counts(word_after(text, figure.end() if figure else end))

    def _follows_name(self, text: str, at: int, end: int) -> bool:
        """Whether a name or a rank stands in front and no name behind: "Main St", "5th Ave"."""
        named = _NAME_LEFT.search(text, max(0, at - _LONGEST), at)
        return bool(named) and not _CAPITAL_NEXT.match(text, end) and word_before(text, at) not in self.g.openers

    def _dotted_letters(self, text: str, found: re.Match[str]) -> Reading | None:
        written = found[0].rstrip()
        if " " in written or "\u00a0" in written:
            return None
        end = found.start() + len(written)
        letters = written.replace(".", "")
        said = letters if letters in self.words else " ".join(letters)
        return Reading(Span(found.start(), sentence_end(text, found.start(), end, self.g.openers)), said, "initialism")

    def _initialism(self, text: str, at: int) -> Reading | None:
        found = self._word.match(text, at)
        if not found or len(found[0]) < 2 or len(found[0]) > _LONGEST:
            return None
        word, end = found[0], found.end()
        rest = text[end : end + 3]
        plural = rest[:1] == "s" and not rest[1:2].isalnum()
        if (rest[:1].isalpha() and not plural) or (rest[:1] == "." and f"{word}." in self.heads):
            return None
        if rest[:1] in self.marks or (word in self.currencies and re.match(r"\s?[-−]?\d", rest)):
            return None
        if whole := self.titles.get(word):
            return Reading(Span(at, end), str(whole), "abbreviation")
        if self._is_word(text, word, at, end):
            return None
        said = " ".join(self.and_word if c == "&" else c for c in word)
        return Reading(Span(at, end + plural), said + (self.g.plural_letters if plural else ""), "initialism")

    def _is_word(self, text: str, word: str, at: int, end: int) -> bool:
        if word in self.letters or "&" in word:
            return False
        if word in self.articled and word_before(text, at) == "the":
            return False
        if word in self.words or (word in self.common and not text[end : end + 1].isdigit()):
            return True
        if not self._vowel.search(word):
            return False
        if len(word) >= 4:
            return not _UNSAYABLE.search(word)
        return self._shouted(text, at, end)

    def _shouted(self, text: str, at: int, end: int) -> bool:
        """Whether a neighbour is a plain word in capitals: a heading, not an initialism."""
        before = re.findall(r"[^\W\d_]{2,}", text[max(0, at - 20) : at])[-1:]
        after = re.findall(r"[^\W\d_]{2,}", text[end : end + 20])[:1]
        return any(w in self.common or self._looks_plain(w) for w in before + after)

    def _looks_plain(self, word: str) -> bool:
        known = word in self.letters or word in self.words
        return word.isupper() and len(word) > 4 and not known and bool(self._vowel.search(word))


class Abbreviations:
    """Abbreviations with a dot; `abbreviations` has the tables always, before_number ("one|several"), before_name."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self.always = grammar.table("abbreviations.always")
        self.numbered = grammar.table("abbreviations.before_number")
        self.named = grammar.table("abbreviations.before_name")
        self.currencies = frozenset(grammar.table("currencies"))
        self.closing = grammar.wordset("abbreviations.closing")
        both = re.escape(grammar.text("symbols.words.&"))
        self._couple = re.compile(rf"{SPACE}(?:{both}|&){SPACE}[{CAPITALS}]\w{{1,4}}\.")
        self.ladies = grammar.data.maybe("spoken", "abbreviations.feminine", {})
        self.feminine_names = frozenset(grammar.data.maybe("spoken", "abbreviations.feminine_names", ()))
        self.endings: dict[str, str] = dict(grammar.data.maybe("spoken", "abbreviations.endings", {}))
        self.placed: dict[str, str] = dict(grammar.data.maybe("spoken", "abbreviations.after_place", {}))
        keys = sorted({*self.always, *self.numbered, *self.named, *self.placed}, key=lambda k: (-len(k), k))
        spaced = (re.escape(self._key(k)).replace(r"\.", rf"\.{SPACE}?") for k in keys)
        whole = (s.removesuffix(rf"{SPACE}?") for s in spaced)
        self._pattern = re.compile("|".join(s if s[-1] in ".°º/" else rf"{s}(?!\w)" for s in whole), re.IGNORECASE)
        self.exact = {self._key(k): k for k in keys}

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        start = at
        while start > floor and at - start < _LONGEST and (text[start - 1].isalpha() or text[start - 1] in "-º°"):
            start -= 1
        if start == at or (start and text[start - 1].isalnum()):
            return None
        found = self._pattern.match(text, start)
        if (not found or found.end() <= at) and (hyphen := text.rfind("-", start, at)) >= 0:
            start = hyphen + 1
            found = self._pattern.match(text, start) if start < at else None
        if not found or found.end() <= at:
            return self._ending(text, start, at)
        key = self._known(found[0])
        said = self._said(text, key, found.end(), start) if key else ""
        if said and found[0][0].isupper() and key[0].islower():
            said = said[0].upper() + said[1:]
        if not said:
            return None
        end = found.end()
        if key in self.closing and _CAPITAL_NEXT.match(text, end):
            end -= 1
        elif key in self.always or key in self.placed:
            end = sentence_end(text, start, end, self.g.openers) if not self.g.precedes_capitals(said) else end
        return Reading(Span(start, end), said, "abbreviation")

    def _ending(self, text: str, start: int, at: int) -> Reading | None:
        """A name with its last part cut short: "Hauptstr."."""
        for short, whole in self.endings.items():
            if text[start : at + 1].endswith(short) and text[start].isupper() and at - start >= len(short) + 2:
                said = f"{text[start : at + 1 - len(short)]}{whole}"
                return Reading(Span(start, sentence_end(text, start, at + 1, self.g.openers)), said, "abbreviation")
        return None

    @staticmethod
    def _key(written: str) -> str:
        return written.replace(" ", "").replace("\u00a0", "").replace("\u202f", "")

    def _known(self, written: str) -> str:
        """The entry for what is written; a capital at a sentence's start is the same abbreviation."""
        key = self._key(written)
        lowered = key[0].lower() + key[1:] if len(key) > 2 else ""
        return self.exact.get(key) or self.exact.get(lowered) or ""

    def _said(self, text: str, key: str, end: int, start: int) -> str:
        rest = text[end : end + 3].lstrip(" \u00a0\u202f")
        said = ""
        if key in self.currencies and rest[:1].isdecimal():
            return ""
        if key in self.numbered and (_FIGURE.match(rest) or _NUMERAL_NEXT.match(text, end)):
            one, _, several = self.numbered[key].partition("|")
            said = several if several and _RANGE_NEXT.match(text, end) else one
        elif key in self.named and not _INITIAL_LEFT.search(text, max(0, start - 3), start):
            first, _, second = self.named[key].partition("|")
            titled = rest[:1].isupper() or self._couple.match(text, end)
            said = first if titled and not self._closes(text, start, rest, second) else second
        if not said and key in self.placed and _PLACE_LEFT.search(text, max(0, start - _LONGEST), start):
            said = self.placed[key]
        if not said and key in self.always:
            said = self.always[key]
            if key in self.ladies and self._is_lady(text, end):
                said = self.ladies[key]
        return str(said)

    def _is_lady(self, text: str, end: int) -> bool:
        name = word_after(text, end)
        return name.endswith("a") or name in self.feminine_names

    def _closes(self, text: str, start: int, rest: str, second: str) -> bool:
        """Whether the abbreviation follows its name ("Mary St. She"): only where it could be either."""
        before = word_before(text, start)
        return bool(second) and before[:1].isupper() and not before.endswith(".") and before not in self.g.openers
