"""What only Portuguese writes: sets of a match with bars, days of the week by rank, telephones with one hyphen."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar, noun, word_after, word_before
from promptprep.speaking.western.literal import Literal

_BLANK = r"[ \u00a0]"
_VOLLEYED = r"(?:2[5-9]|3\d|15)/(?:1[3-9]|2\d|3\d)|(?:1[3-9]|2\d)/(?:2[5-9]|3\d)"
_PAIR = rf"(?:[67][/-][0-7]|[0-5][/-][67]|{_VOLLEYED})"
_SET = rf"{_PAIR}(?![\w/-]|[.,:]\d)"
_JOINED = rf"(?:,{_BLANK}|{_BLANK}e{_BLANK}|,{_BLANK}e{_BLANK})"
_YEAR = re.compile(r"1[5-9]\d\d|20\d\d")
_LEFT, _LINE_LEFT = 12, 300
_HUNDREDTHS = 2  # figures


class Sets:
    """The sets of a match, two at least: "6/4 e 7/5", "6-4, 3-6 e 7-6"."""

    _set = re.compile(rf"(\d\d?)[/-](\d\d?)(?=(?P<last>{_JOINED}{_SET})?)")
    _one = re.compile(_SET)
    _before = re.compile(rf"{_PAIR}{_JOINED}\Z")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._between = grammar.text("scores.between")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if not self._one.match(text, at) or text[at - 1 : at].isalnum() or text[at - 1 : at] in tuple(".,:/-"):
            return None
        found = self._set.match(text, at)
        if not found or not (found["last"] or self._before.search(text, max(0, at - _LEFT), at)):
            return None
        said = self._between.format(self.g.cardinal(found[1]), self.g.cardinal(found[2]))
        return Reading(Span(*found.span()), said, "score")


class WeekdayRanks:
    """Days of the week by their rank: 3ª-feira, 2ªs e 4ªs-feiras."""

    _pattern = re.compile(r"([2-6])\.?[ªa]s?(?:[- ]feira(s?)(?!\w)|(?=s?,? (?:e|a|ou) [2-6]\.?[ªa]s?[- ]feira))")

    def __init__(self, grammar: Grammar) -> None:
        self._names: list[str] = list(grammar.data.get("spoken", "weekdays.names"))

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or text[at - 1 : at].isalnum():
            return None
        name = self._names[int(found[1]) - 2]
        if found[2] is None:
            return Reading(Span(*found.span()), f"{name}s" if found[0].endswith("s") else name, "date")
        return Reading(Span(*found.span()), f"{name}s-feiras" if found[2] else f"{name}-feira", "date")


class Phones:
    """Brazil's telephone numbers with one hyphen: 11 91234-5678, 3456-7890; four and four figures may be years."""

    _spaced = re.compile(rf"\((\d{{2}})\){_BLANK}(9){_BLANK}?(\d{{4}})[- ](\d{{4}})(?![\w-])")
    _pattern = re.compile(rf"(?:(\d{{2}}){_BLANK})?(9\d{{4}}|[2-9]\d{{3}})-(\d{{4}})(?![\w-]|[.,:/]\d)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if text[at - 1 : at] == "(" and at > floor and (spaced := self._spaced.match(text, at - 1)):
            said = ", ".join(self.g.words.one_by_one(group) for group in spaced.groups())
            return Reading(Span(*spaced.span()), said, "telephone")
        found = self._pattern.match(text, at)
        if not found or text[at - 1 : at].isalnum() or text[at - 1 : at] in tuple("-/.,"):
            return None
        if not found[1] and _YEAR.fullmatch(found[2]) and _YEAR.fullmatch(found[3]):
            return None
        said = ", ".join(self.g.words.one_by_one(group) for group in found.groups() if group)
        return Reading(Span(*found.span()), said, "telephone")


class InchParts:
    """Sizes in parts of an inch: 3/4", 1 1/2"."""

    _pattern = re.compile(r"(?:(\d{1,2})[ -])?(\d{1,2})/(2|4|8|16|32)(?=[\"″”](?![\w\"]))")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._inch = noun(grammar.text("units.inch"))

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or text[at - 1 : at].isalnum() or text[at - 1 : at] in tuple('/.,"“'):
            return None
        line = text[max(0, at - _LINE_LEFT) : at].rpartition("\n")[2]
        if int(found[2]) >= int(found[3]) or len(re.findall(r"(?<!\d)\"", line)) % 2:
            return None
        literal = Literal(found[1] or "", "", 0, part=(int(found[2]), int(found[3])))
        return Reading(Span(at, found.end() + 1), self.g.counted(literal, self._inch), "measure")


class NamedMonths:
    """A date with its month's short name between bars or hyphens: 31/DEZ/2027, 05-ago-26."""

    _pattern = re.compile(r"(\d{1,2})([/-])([A-Za-z]{3})\2(\d{4}|\d{2})(?![\w/-])")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        names: list[str] = list(grammar.data.get("spoken", "months.names"))
        self._months = {name[:3]: name for name in names}

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        month = self._months.get(found[3].lower()) if found else None
        if not found or not month or text[at - 1 : at].isalnum():
            return None
        year = found[4] if len(found[4]) == 4 else ("20" if found[4] < "50" else "19") + found[4]
        said = self.g.date(found[1], month, self.g.year(year), word_before(text, at))
        return Reading(Span(*found.span()), said, "date")


class StreetLetters:
    """ "R." that is a street: behind an article ("na R. Augusta") or before a name with its house's number."""

    _pattern = re.compile(rf"R\.{_BLANK}(?=[A-ZÀ-Ý])")
    _numbered = re.compile(rf"(?:[^\W\d_]+{_BLANK}){{0,4}}[^\W\d_]+,{_BLANK}(?:n[º°.]{_BLANK}?)?\d")
    _articles = frozenset(("a", "à", "da", "na", "pela", "esta", "nesta", "desta"))

    def named(self, text: str, at: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found:
            return None
        led = word_before(text, at).casefold() in self._articles
        if not led and not self._numbered.match(text, found.end()):
            return None
        return Reading(Span(at, at + 2), "rua", "abbreviation")


class Winds:
    """Points of the compass in two letters: "ventos de SE", "a 19 km a SO da cidade"."""

    _point = re.compile(r"[NS][EOW](?!\w)")
    _left = re.compile(rf"(?:\b[Vv]entos?{_BLANK}(?:de{_BLANK}|do{_BLANK})?|\bkm{_BLANK}a{_BLANK}|\bdireção{_BLANK})\Z")

    def __init__(self, grammar: Grammar) -> None:
        self._names: dict[str, str] = dict(grammar.table("places.directions"))

    def named(self, text: str, at: int) -> Reading | None:
        found = self._point.match(text, at)
        if not found or not self._left.search(text, max(0, at - _LEFT), at):
            return None
        return Reading(Span(*found.span()), self._names[found[0]], "abbreviation")


class Laps:
    """A time with its tenths or thousandths: 1min15s096, 58s7; with hundredths only behind minutes."""

    _pattern = re.compile(r"(?:(\d{1,2})min)?(\d{1,2})s(\d{1,3})(?!\w)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._parts = {
            n: noun(str(e)) for n, e in enumerate(grammar.data.get("spoken", "clock.parts_of_second"), start=1)
        }

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or text[at - 1 : at].isalnum() or (not found[1] and len(found[3]) == _HUNDREDTHS):
            return None
        units = ((found[1] or "0", self.g.minute), (found[2], self.g.second), (found[3], self._parts[len(found[3])]))
        said = [self.g.counted(Literal(str(int(n)), "", 0), unit) for n, unit in units if int(n)]
        if not said:
            return None
        words = f"{', '.join(said[:-1])} e {said[-1]}" if len(said) > 1 else said[0]
        return Reading(Span(*found.span()), words, "measure")


class FirstDays:
    """The first of a month with a bar: 1º/2."""

    _pattern = re.compile(r"1[ºo°]/(0?[1-9]|1[0-2])(?![\w/]|[.,]\d)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._names: list[str] = list(grammar.data.get("spoken", "months.names"))

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or text[at - 1 : at].isalnum():
            return None
        said = self.g.date("1", self._names[int(found[1]) - 1], "", word_before(text, at))
        return Reading(Span(*found.span()), said, "date")


class TypedRanks:
    """A rank with a degree sign for its raised o: "5° lugar", "art. 5°"."""

    _pattern = re.compile(r"(\d{1,3})°(?![\w°])")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._nouns, self._before = grammar.wordset("ordinals.ranked"), grammar.wordset("ordinals.ranked_after")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or text[at - 1 : at].isalnum() or text[at - 1 : at] in tuple("-−.,/"):
            return None
        before = word_before(text, at).casefold().rstrip(".")
        if word_after(text, found.end()) not in self._nouns and before not in self._before:
            return None
        return Reading(Span(*found.span()), self.g.ordinal(found[1], "m"), "ordinal")
