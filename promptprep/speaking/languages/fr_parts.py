"""What only French writes: telephone numbers in pairs, numbers of laws and articles, days before a start."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar, word_before
from promptprep.speaking.western.units import SPACE

_GAP = r"[ \u00a0\u202f.\-‐‑]?"
_CALL_LEFT = 40
_GOES_ON = re.compile(r"(?:[\w+/-]|\d[.,])\Z")
_ARTICLE_LEFT = re.compile(r"(?<!\w)(?:[Ll]e|[Aa]u)[ \u00a0]\Z")
_CALL_RIGHT = re.compile(
    r"[ \u00a0](?:est|reste|répond|pour|en cas|dès|qui|ou le|et le|afin|jour|gratuit)(?!\w)|[ \u00a0]?[,;:!?(»]"
)


class Phones:
    """Telephone numbers as they are said in France, Belgium and Switzerland: each group as one number.

    `serials.calls` lists the words in front of a short number ("composez le 3919").
    """

    _national = re.compile(rf"(?:0[1-9](?:{_GAP}\d\d){{4}}|0\d{{1,2}}{SPACE}\d{{3}}(?:{SPACE}\d\d){{2}})(?!\d|[.,]\d)")
    _charged = re.compile(
        r"0[ \u00a0\u202f]?8\d\d(?:(?:[ \u00a0\u202f]\d{3}){2}|(?:[ \u00a0\u202f]\d\d){3})(?!\d|[.,]\d)"
    )
    _abroad = re.compile(rf"(?:(\+)|00)(33|32|41|352){_GAP}(\(0\))?((?:{_GAP}\d{{1,3}}){{4,5}})(?!\d|[.,]\d)")
    _short = re.compile(r"(118)[ \u00a0\u202f](\d{3})(?!\w|[.,]\d)|(3\d)[ \u00a0\u202f]?(\d\d)(?!\w|[.,]\d)")
    _groups = re.compile(r"\d+")
    _pairs = re.compile(r"\d\d")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._plus = grammar.text("serials.plus")
        calls = "|".join(sorted(grammar.wordset("serials.calls"), key=len, reverse=True))
        self._calls = re.compile(rf"(?<!\w)(?:{calls})\b[^.!?\n]*\Z", re.IGNORECASE)

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        start = at - 1 if at > floor and text[at - 1] == "+" else at
        if _GOES_ON.search(text, max(0, start - 2), start):
            return None
        if found := self._abroad.match(text, start):
            return self._from_abroad(found)
        if text[at] == "0":
            return self._national_at(text, at)
        found = self._short.match(text, at)
        if not found or not (self._calls.search(text, max(0, at - _CALL_LEFT), at) or self._named(text, found)):
            return None
        return self._said(found, [group for group in found.groups() if group])

    def _named(self, text: str, found: re.Match[str]) -> bool:
        """A service's short number with its article: "le 3919 est joignable"."""
        if found[4] == "00" or not _ARTICLE_LEFT.search(text, max(0, found.start() - 4), found.start()):
            return False
        return bool(found[1]) or _CALL_RIGHT.match(text, found.end()) is not None

    def _national_at(self, text: str, at: int) -> Reading | None:
        if found := self._charged.match(text, at):
            groups = self._groups.findall(found[0])
            return self._said(found, [groups[0] + groups[1], *groups[2:]] if groups[0] == "0" else groups)
        if found := self._national.match(text, at):
            groups = self._groups.findall(found[0])
            return self._said(found, self._pairs.findall(found[0]) if len(groups) == 1 else groups)
        return None

    def _from_abroad(self, found: re.Match[str]) -> Reading | None:
        groups = self._groups.findall(found[4])
        if not 8 <= sum(map(len, groups)) <= 9:
            return None
        if len(groups) == 1:
            groups = [groups[0][0], *self._pairs.findall(groups[0], 1)]
        return self._said(found, [found[2], *(["0"] if found[3] else []), *groups], self._plus if found[1] else "00")

    def _said(self, found: re.Match[str], groups: list[str], before: str = "") -> Reading:
        prefix = self._group(before) if before.isdecimal() else before
        said = ", ".join(map(self._group, groups))
        digits = ", ".join(map(self.g.words.one_by_one, groups))
        return Reading(Span(*found.span()), f"{prefix} {said}".lstrip(), "telephone", (f"{before} {digits}".lstrip(),))

    def _group(self, digits: str) -> str:
        """A group with its leading noughts: "zéro six", "zéro huit cents"."""
        plain = digits.lstrip("0")
        noughts = [self.g.words.digit("0")] * (len(digits) - len(plain))
        return " ".join([*noughts, self.g.cardinal(plain)] if plain else noughts)


class LawNumbers:
    """The parts of a law's or an article's number: loi n° 2005-102, article L. 121-1, règlement 2016/679.

    `laws.before` lists what stands in front; `laws.letters` the codes' letters; `laws.known` what
    has a name of its own.
    """

    _article_left = re.compile(r"(?<!\w)(?:le|du|au|[Aa]rticles?|art\.)[ \u00a0]\Z")

    _numbered = re.compile(r"(\d{1,4})([-/])(\d{1,4})(?:-(\d{1,3}))?(?![\w/-]|[.,]\d)")
    _number_sign = re.compile(r"n[°ºᵒ]s?[ \u00a0\u202f]?\Z|\([A-Z]{2,3}\)[ \u00a0\u202f](?:n[°º][ \u00a0\u202f])?\Z")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._before = grammar.wordset("laws.before")
        letters = "".join(sorted(grammar.wordset("laws.letters")))
        self._letter = re.compile(rf"(?<!\w)([{letters}])[.*]{{0,2}}[ \u00a0\u202f]?\Z")
        self._known: dict[str, str] = dict(grammar.table("laws.known"))
        known = "|".join(map(re.escape, self._known))
        self._named = re.compile(rf"(?:{known})(?![\w%-]|[.,]\d|[ \u00a0\u202f]?(?:%|€|[a-z]{{1,2}}(?!\w)))")
        self._texts = {"-": grammar.text("laws.of"), "/": grammar.text("laws.barred")}

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        named = self._named.match(text, at)
        if named and self._article_left.search(text, max(0, at - 9), at):
            return Reading(Span(*named.span()), self._known[named[0]], "serial")
        letter = self._letter.search(text, max(floor, at - 4), at)
        found = self._numbered.match(text, at)
        start = letter.start() if letter else at
        if not found or (letter is None and start and (text[start - 1].isalnum() or text[start - 1] in ".,/-")):
            return None
        if letter is None and not self._is_law(text, at):
            return None
        said = self._texts[found[2]].format(self.g.cardinal(found[1]), self.g.cardinal(found[3]))
        if found[4]:
            said = self._texts["-"].format(said, self.g.cardinal(found[4]))
        return Reading(Span(start, found.end()), f"{letter[1]} {said}" if letter else said, "serial")

    def _is_law(self, text: str, at: int) -> bool:
        sign = self._number_sign.search(text, max(0, at - 12), at)
        before = word_before(text, sign.start() if sign else at)
        return re.split("['’]", before.casefold())[-1] in self._before


class MatchMinutes:
    """The minute of a match, with time added: "à la 90e+3", "à la 45'"."""

    _pattern = re.compile(r"(\d{1,3})(?:e\+(\d{1,2})|['’′](?:[ \u00a0]?\+[ \u00a0]?(\d{1,2}))?)(?![\w'’′\"])")
    _article_left = re.compile(r"(?<!\w)[Ll]a[ \u00a0]\Z")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._plus = grammar.text("serials.plus")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or _GOES_ON.search(text, max(0, at - 2), at):
            return None
        added = found[2] or found[3]
        if not (added or self._article_left.search(text, max(0, at - 4), at)):
            return None
        said = self.g.ordinal(found[1], "f")
        more = f" {self._plus} {self.g.cardinal(added)}" if added else ""
        return Reading(Span(*found.span()), said + more, "ordinal")


class NumeroSigns:
    """ "No 5", "no 12": number, where the o is not raised."""

    _left = re.compile(r"(?<!\w)[Nn]o[ \u00a0\u202f]\Z")
    _number = re.compile(r"\d{1,4}(?![\w%]|[.,:/-]\d|[ \u00a0\u202f]\d)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._word = grammar.text("symbols.words.#")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        number = self._number.match(text, at)
        left = self._left.search(text, max(floor, at - 4), at) if number else None
        if not number or not left:
            return None
        return Reading(Span(left.start(), number.end()), f"{self._word} {self.g.year(number[0])}", "serial")


class LetteredNumbers:
    """A planet's letter behind its star's number, which is no ordinal: TRAPPIST-1e, Kepler-186f."""

    _pattern = re.compile(r"(\d{1,4})([b-h])(?!\w)")
    _left = re.compile(r"[A-Za-z]-\Z")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at) if self._left.search(text, max(0, at - 2), at) else None
        if found is None or not text[max(0, at - 12) : at].rpartition(" ")[2][:1].isupper():
            return None
        return Reading(Span(*found.span()), f"{self.g.cardinal(found[1])} {found[2]}", "serial")


class WarYears:
    """The two world wars by their years, which are said without a word between: "la guerre de 14-18"."""

    _pattern = re.compile(r"(14)[-–/](18)(?![\w%-])|(39)[-–/](45)(?![\w%-])")
    _left = re.compile(r"(?<!\w)(?:guerre(?: de)?|poilus de|soldats de|en|de|depuis|après|avant|pendant)[ \u00a0]\Z")
    _counted = re.compile(r"[ \u00a0](?:ans|°|%|[a-z]{1,3}(?!\w))")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or not self._left.search(text, max(0, at - 14), at) or self._counted.match(text, found.end()):
            return None
        first, last = (year for year in found.groups() if year)
        return Reading(Span(*found.span()), f"{self.g.cardinal(first)}, {self.g.cardinal(last)}", "year")


class DaysBefore:
    """The days or hours before a start: J-3."""

    _left = re.compile(r"(?<![\w-])[JH][-−]\Z")
    _number = re.compile(r"\d{1,3}(?![\w-])")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._number.match(text, at) if self._left.search(text, max(floor, at - 3), at) else None
        if found is None:
            return None
        return Reading(Span(at - 1, found.end()), f" {self.g.minus} {self.g.cardinal(found[0])}", "measure")
