"""German: adjectives written short, signs between the endings of two genders, and capitals that stand for a word."""

from __future__ import annotations

import re
from collections.abc import Callable

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.de_cases import Cases, weak_ending
from promptprep.speaking.western.grammar import Grammar, word_after, word_before
from promptprep.speaking.western.romans import roman_value

_SHORT_LEFT = re.compile(r"(?<![\w.-])[^\W\d_]{1,10}\Z")
_NEXT = re.compile(r"[ \u00a0](?=[^\W\d_])")
_FIGURE_LEFT = re.compile(r"\d[ \u00a0]\Z")
_BOTH_GENDERS = re.compile(r"(?:\*|:|/-?|_)(in(?:nen)?)(?!\w)")
_LIFE = re.compile(r"[*†][ \u00a0]?(?=\d)")
_LIFE_LEFT = re.compile(r"(?:\A|[(,;\n]|[^\W\d_])[ \u00a0]?\Z")
_NOUN_LEFT = re.compile(r"(?<![\w/.-])[A-ZÄÖÜ][a-zäöüß]{2,}\Z")
_NOUN_RIGHT = re.compile(r"[A-ZÄÖÜ][a-zäöüß]{2,}(?![\w/-]|\.\w)")
_PARTIES_LEFT = re.compile(r"(?<![\w/])[A-ZÄÖÜ]{2,5}\Z")  # "CDU/CSU"
_ARTICLES = "(?i:d(?:er|ie|em|en|es)|ein(?:e[mnrs]?)?|(?:sein|ihr|unser)(?:e[mnr]?)?)"
_ARTICLE_LEFT = re.compile(rf"(?<!\w)({_ARTICLES})\s(?:[a-zäöüß]+\.?\s|\d\.\s)?\Z")
_PARAGRAPH_LEFT = re.compile(r"Abs\. ?\d+[a-z]? \Z")  # "Abs. 1 S. 2"
_RANK_LEFT = re.compile(r"(?:([A-Za-z]{2,6})\s)?\d{1,3}\.\s\Z")
_LONGEST_NOUN = 24
_WEEK_OF_YEAR = re.compile(r"[ \u00a0]?([1-5]?\d)/([12]\d{3})(?!\d)")
_CAPITALS = re.compile(r"[A-ZÄÖÜØ]{1,7}(?!\w)|Q(?=[1-4]\W)")
_QUARTER = re.compile(r"Q([1-4])[/ ]([12]\d{3})(?!\d)")
_LONGEST = 12


class GermanShorts:
    """`abbreviations.adjectives` maps what is written to stems; `winds`, `before_figure` what capitals stand for."""

    def __init__(self, grammar: Grammar, cases: Cases, is_thing: Callable[[str], bool]) -> None:
        self.g = grammar
        self._is_thing = is_thing
        self.cases = cases
        self._stems = grammar.table("abbreviations.adjectives")
        self._winds = grammar.table("winds.names")
        self._wind_before = grammar.wordset("winds.before")
        self._before_figure = grammar.table("abbreviations.before_figure")
        self._names = grammar.wordset("roman.names")
        self._following = grammar.text("abbreviations.following_page")
        self._lone_hash = grammar.text("symbols.alone")
        self._quarter = grammar.text("abbreviations.quarter")
        self._after_article = grammar.table("abbreviations.after_article")
        self._holders = grammar.table("abbreviations.adjectival_nouns")
        self._sentence = grammar.text("abbreviations.sentence_of_law")
        self._ranked_nouns = grammar.table("abbreviations.ranked")
        self._life = grammar.table("abbreviations.life")

    def mark(self, text: str, at: int, floor: int) -> Reading | None:
        """What begins or ends at a sign or full stop; None where German says nothing of its own there."""
        if text[at] == ".":
            return self._adjective(text, at, floor)
        if text[at] in "*†" and (found := _LIFE.match(text, at)) and _LIFE_LEFT.search(text, max(0, at - 3), at):
            return Reading(Span(*found.span()), f"{self._life[text[at]]} ", "abbreviation")
        if text[at] == "#" and not text[at + 1 : at + 2].isalnum() and not text[at - 1 : at].isalnum():
            return Reading(Span(at, at + 1), self._lone_hash, "symbol")
        if text[at] == "/" and _PARTIES_LEFT.search(text, max(0, at - _LONGEST), at) and _CAPITALS.match(text, at + 1):
            return Reading(Span(at, at + 1), " ", "symbol")
        if text[at] == "/" and (pair := self._pair(text, at, floor)):
            return pair
        if at > floor and text[at - 1].islower() and (found := _BOTH_GENDERS.match(text, at)):
            return Reading(Span(*found.span()), f" {found[1]}", "symbol")
        return None

    def capitals(self, text: str, at: int) -> Reading | None:
        """ "Wind aus NW", "KW 12", "Karl der V."."""
        found = _CAPITALS.match(text, at)
        if not found:
            return None
        before = word_before(text, at)
        if found[0] == "Q" and (quarter := _QUARTER.match(text, at)):
            rank = self.g.ordinal(quarter[1], self.cases.determined(before, "") or "s")
            said = f"{rank} {self._quarter} {self.g.year(quarter[2])}"
            return Reading(Span(*quarter.span()), said, "date")
        if found[0] in self._before_figure and (week := _WEEK_OF_YEAR.match(text, found.end())):
            said = f"{self._before_figure[found[0]]} {self.g.cardinal(week[1])} {self.g.year(week[2])}"
            return Reading(Span(at, week.end()), said, "date")
        if found[0] in self._before_figure and re.match(r"[ \u00a0]?\d", text[found.end() : found.end() + 2]):
            return Reading(Span(*found.span()), str(self._before_figure[found[0]]), "abbreviation")
        if found[0] in self._after_article and before.lower() in self.cases.after:
            return Reading(Span(*found.span()), str(self._after_article[found[0]]), "initialism")
        if found[0] in self._winds and before.lower() in self._wind_before:
            return Reading(Span(*found.span()), str(self._winds[found[0]]), "abbreviation")
        return self._ranked(text, found, before)

    def _ranked(self, text: str, found: re.Match[str], article: str) -> Reading | None:
        """A ruler's number behind name and article: "Karl der V."."""
        value = roman_value(found[0])
        case = {"der": "nominative", "dem": "dative", "den": "accusative", "des": "genitive"}.get(article)
        if not value or not case:
            return None
        name = word_before(text, found.start() - len(article) - 1)
        if not {name, name.removesuffix("s")} & self._names:
            return None
        dot = text[found.end() : found.end() + 1] == "." and text[found.end() + 1 : found.end() + 3].strip() != ""
        said = self.g.ordinal(str(value), weak_ending(case, "m")).capitalize()
        return Reading(Span(found.start(), found.end() + dot), said, "roman")

    def _beside_rank(self, text: str, start: int, written: str) -> str:
        """ "des 20. Jh." -> "Jahrhunderts", "in der 12. Min." -> "Minute"."""
        forms = self._ranked_nouns.get(f"{written}.")
        rank = _RANK_LEFT.search(text, max(0, start - _LONGEST_NOUN), start) if forms else None
        one, of_one = str(forms).split("|") if rank else ("", "")
        return of_one if rank and (rank[1] or "").lower() in ("des", "eines", "dieses") else one

    def _holder(self, text: str, span: Span, stem: str) -> Reading:
        """ "der stellv. Vors." -> "Vorsitzende", without an article "Vorsitzender"."""
        article = _ARTICLE_LEFT.search(text, max(0, span.start - _LONGEST_NOUN), span.start)
        ending = self.cases.determined(article[1], "") if article else "r"
        end = span.end - (not text[span.end :].strip())
        return Reading(Span(span.start, end), f"{stem}e{ending if ending != 'e' else ''}", "abbreviation")

    def _pair(self, text: str, at: int, floor: int) -> Reading | None:
        """Two nouns with a bar between them: "Mann/Frau"."""
        left, right = _NOUN_LEFT.search(text, max(floor, at - _LONGEST_NOUN), at), _NOUN_RIGHT.match(text, at + 1)
        if not left or not right or not (self._is_thing(left[0]) and self._is_thing(right[0])):
            return None
        return Reading(Span(at, at + 1), f" {self.g.text('symbols.words.&')} ", "symbol")

    def _adjective(self, text: str, dot: int, floor: int) -> Reading | None:
        found = _SHORT_LEFT.search(text, max(floor, dot - _LONGEST), dot)
        if not found:
            return None
        start, written = found.start(), found[0]
        if written == "f" and _FIGURE_LEFT.search(text, max(0, start - 2), start):
            return Reading(
                Span(start, dot + (word_after(text, dot + 1)[:1].islower())), self._following, "abbreviation"
            )
        if singular := self._beside_rank(text, start, written):
            return Reading(Span(start, dot + bool(text[dot + 1 :].strip())), singular, "abbreviation")
        if written == "S" and _PARAGRAPH_LEFT.search(text, max(0, start - _LONGEST), start):
            return Reading(Span(start, dot + 1), self._sentence, "abbreviation")
        if holder := self._holders.get(f"{written}."):
            return self._holder(text, Span(start, dot + 1), str(holder))
        stem = self._stems.get(f"{written}.") or self._stems.get(f"{written[0].lower()}{written[1:]}.")
        if not stem or not _NEXT.match(text, dot + 1) or word_after(text, dot + 1) in self.g.openers:
            return None
        ending = self.cases.adjective_ending(text, start, dot + 1)
        said = f"{stem}e{ending if ending != 'e' else ''}" if ending else str(stem)
        said = said[0].upper() + said[1:] if written[0].isupper() else said
        return Reading(Span(start, dot + 1), said, "abbreviation")
