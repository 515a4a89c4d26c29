"""English figures that name: a team's record, an emergency's number, a code with a star."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar, leans_left, noun, word_after, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.units import alternatives

_THREE = re.compile(r"([1-9]\d?|0)-([1-9]\d?|0)-([1-9]\d?|0)(?![\w-]|[.,:/]\d)")
_TWO = re.compile(r"(\d{1,3})-(\d{1,3})(?![\w-]|[.,:/]\d)")
_STARS = re.compile(r"([1-7])\*(?![\w*]|[ \u00a0]?\d)")
_LONG_NUMBER = re.compile(r"\d{7,15}(?![\w%]|[.,:/-]\d)")
_SHORT_CODE = re.compile(r"\d{4,6}(?![\w%]|[.,:/-]\d)")
_RUNS = 100
_HYPHEN_WITHIN = 4
_TEAM_LEFT = re.compile(r"(?:[A-Z][a-z]{2,}|&)[ \u00a0]\Z")
_PLANE = re.compile(r"(7)([0-8]7)-(\d00|[89])(?![\d-]|[.,:/]\d)")
_ROUNDS = re.compile(r"[67]\d(?:-[67]\d){2,3}(?![\w-]|[.,:/]\d)")
_KEYED = re.compile(r"(\d{1,4})([*#])?(?![\w*#]|[.,:]\d)")
_LEFT = 48
_DATED = 12


class Records:
    """Games won, lost and drawn: "12-3-1 this season", "improved to 7-2"; and other rows of three small figures."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        after = alternatives(grammar.wordset("scores.record_after"))
        self._after = re.compile(rf"[ \u00a0](?:{after})(?!\w)")
        self._before = re.compile(
            rf"\b(?:{alternatives(grammar.wordset('scores.record_before'))})[ \u00a0]\Z", re.IGNORECASE
        )
        self._wickets = re.compile(rf"[ \u00a0](?:{alternatives(grammar.wordset('scores.wickets'))})(?!\w)")
        self._played = grammar.wordset("scores.before") - {"was"}
        self._makers = grammar.wordset("serials.paired")
        self._named = grammar.wordset("serials.before")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if "-" not in text[at : at + _HYPHEN_WITHIN] or leans_left(text, at, "-–/.:,$£€+"):
            return None
        if plane := _PLANE.match(text, at):
            number = f"{self.g.cardinal(plane[1])} {self.g.cardinal(plane[2])} {self.g.cardinal(plane[3])}"
            return Reading(Span(*plane.span()), number, "serial")
        if rounds := _ROUNDS.match(text, at):
            said = ", ".join(self.g.cardinal(n) for n in rounds[0].split("-"))
            return Reading(Span(*rounds.span()), said, "score")
        if found := _THREE.match(text, at):
            return self._three(text, found)
        found = _TWO.match(text, at)
        if found and len(found[2]) == 1 and found[2] != "0" and self._are_wickets(text, found):
            said = f"{self.g.cardinal(found[1])} for {self.g.cardinal(found[2])}"
            return Reading(Span(*found.span()), said, "score")
        if not found or not self._is_record(text, found):
            return None
        said = f"{self.g.cardinal(found[1])} and {self._drawn(found[2])}"
        return Reading(Span(*found.span()), said, "score")

    def _three(self, text: str, found: re.Match[str]) -> Reading | None:
        first, second, third = (self.g.cardinal(n) for n in found.groups())
        if self._is_record(text, found):
            said = f"{first}, {self._drawn(found[2])} and {self._drawn(found[3])}"
            return Reading(Span(*found.span()), said, "score")
        dated = int(found[1]) <= _DATED and len(found[3]) == 2
        if dated or word_before(text, found.start()).casefold() in self._named:
            return None
        return Reading(Span(*found.span()), f"{first}, {second}, {third}", "serial")

    def _drawn(self, games: str) -> str:
        """None lost is "oh"."""
        return "oh" if games == "0" else self.g.cardinal(games)

    def _are_wickets(self, text: str, found: re.Match[str]) -> bool:
        """Runs and wickets: by what follows, or behind a team's name."""
        if self._wickets.match(text, found.end()):
            return True
        team = (
            int(found[1]) >= _RUNS
            and found[1][::2] != "77"
            and _TEAM_LEFT.search(text, max(0, found.start() - 16), found.start())
        )
        return bool(team) and word_before(text, found.start()).casefold() not in self._makers

    def _is_record(self, text: str, found: re.Match[str]) -> bool:
        start = found.start()
        if word_before(text, start).casefold() in self._played:
            return False
        led = self._before.search(text, max(0, start - _LEFT), start)
        return bool(led or self._after.match(text, found.end()))


class ShortNumbers:
    """What is dialled: "call 911 or 112", "a 999 call", "dial *67", "text HELP to 50505"."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._numbers = grammar.wordset("telephone.short")
        self._numbered = grammar.wordset("telephone.numbered")
        self._dialled = re.compile(
            rf"\b(?:{alternatives(grammar.wordset('telephone.verbs'))})(?!\w)[^.;!?\n]*\Z", re.IGNORECASE
        )
        self._after = re.compile(rf"[- \u00a0](?:{alternatives(grammar.wordset('telephone.nouns'))})(?!\w)")
        sent = alternatives(grammar.wordset("telephone.sent"))
        self._sent = re.compile(rf"\b(?:{sent})(?!\w)[^.;!?\n]*[ \u00a0]to[ \u00a0]\Z", re.IGNORECASE)
        self._keys: dict[str, str] = dict(grammar.table("telephone.keys"))

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        left = text[at - 1 : at]
        if (code := _SHORT_CODE.match(text, at)) and self._sent.search(text, max(0, at - _LEFT), at):
            return Reading(Span(*code.span()), self.g.words.one_by_one(code[0]), "telephone")
        if (starred := _STARS.match(text, at)) and not text[at - 1 : at].isalnum():
            return Reading(Span(*starred.span()), f"{self.g.cardinal(starred[1])} {self._keys['*']}", "symbol")
        run = _LONG_NUMBER.match(text, at)
        if run and word_before(text, at).casefold() in self._numbered:
            return Reading(Span(*run.span()), self.g.words.one_by_one(run[0]), "serial")
        found = _KEYED.match(text, at)
        if not found or left.isalnum() or left in tuple(".,:-–$£€"):
            return None
        keyed = left in self._keys and at > floor and (left == "*" or found[2])
        if not keyed and (found[1] not in self._numbers or found[2]):
            return None
        dialled = self._dialled.search(text, max(0, at - _LEFT), at)
        if not dialled and not (not keyed and self._after.match(text, found.end())):
            return None
        parts = [self.g.words.one_by_one(found[1])]
        if keyed:
            parts.insert(0, self._keys[left])
        if found[2]:
            parts.append(self._keys[found[2]])
        return Reading(Span(at - bool(keyed), found.end()), " ".join(parts), "telephone")


class Degrees:
    """A bare C or F that is a degree: "60 degrees F", and "highs of 75F" near a word of the weather."""

    _bare = re.compile(r"(\d{1,3})(?:\.(\d))?[ \u00a0]?([CF])(?![\w+#&'’-])")
    _degrees_left = re.compile(r"\bdegrees?[ \u00a0]\Z")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._scales = {k: noun(str(v)) for k, v in grammar.table("temperatures.scales").items()}
        self._behind = grammar.wordset("temperatures.behind")
        near = alternatives(grammar.wordset("temperatures.near"))
        self._near = re.compile(rf"\b(?:{near})\b[^.!?\n]*\Z", re.IGNORECASE)

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._bare.match(text, at)
        if not found or text[at - 1 : at].isalnum() or text[at - 1 : at] in tuple(".,:$£€"):
            return None
        near = found[2] or self._near.search(text, max(0, at - _LEFT), at)
        if not near and word_after(text, found.end()) not in self._behind:
            return None
        sign = text[at - 1 : at] in tuple("-−") and at > floor and not text[at - 2 : at - 1].strip()
        number = Literal(found[1], found[2] or "", 0, mark=self.g.literals.mark)
        said = self.g.counted(number, self._scales[found[3]])
        minus = f"{self.g.minus} " if sign else ""
        return Reading(Span(at - sign, found.end()), minus + said, "measure")

    def named(self, text: str, at: int) -> Reading | None:
        scale = self._scales.get(text[at : at + 1])
        if scale is None or text[at + 1 : at + 2].isalnum() or not self._degrees_left.search(text, max(0, at - 9), at):
            return None
        return Reading(Span(at, at + 1), scale.one.split()[-1], "measure")
