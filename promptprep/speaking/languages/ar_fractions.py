"""Arabic fractions, pairs that make a score, and other figures that a stroke parts."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.ar_context import GAP, ArabicContext, Setting, attach
from promptprep.speaking.languages.ar_numbers import AND, counted
from promptprep.speaking.languages.ar_quantities import ArabicQuantities
from promptprep.speaking.languages.ar_times import ArabicTimes
from promptprep.speaking.ruled import VULGAR, Handler, in_row_of_pairs, is_season, is_year_pair, one_of, reading

_BROKEN = re.compile("أ..ا.")  # "أكواب", "أمتار"
_COUNTED = ("ا", "ة", "اً", "ًا", "ات")  # "18-25 سنة"
FAR = 60  # characters before a pair that may speak of a match
HIGHEST_SCORE = 30  # above it two falling figures may be of another kind


class ArabicFractions:
    """Handlers for two whole numbers that make one thing."""

    def __init__(
        self, data: LanguageData, quantities: ArabicQuantities, times: ArabicTimes, context: ArabicContext
    ) -> None:
        self._numbers = quantities.numbers
        self._quantities = quantities
        self._times = times
        self._context = context
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._over: str = data.get("spoken", "symbols")["÷"]
        self._parts = frozenset(data.get("spoken", "numbered.parts"))
        named = data.get("spoken", "electronic")
        self._signs = {"-": named["-"], "–": named["-"], ".": named["."], "/": self._over}
        self._sport = frozenset(self._word["score_after"].split())
        self._unit_after = rf"(?:{GAP}{{0,2}}(?P<unit>{one_of(quantities.units)})(?![\w²³/\u064b-\u0652]))?"

    def early_rules(self) -> list[tuple[str, Handler]]:
        part = (r"\d{1,3}(?:[-–/.]\d{1,3}){1,3}(?![\d/])", self._part)
        return [part, (r"(24/7|(\d\d)/\2)(?![\d/])", self._idiom), (r"(\d{1,2})[-–:](\d{1,2})(?![\d:])", self._pair)]

    def rules(self) -> list[tuple[str, Handler]]:
        return [
            (rf"(?:(\d{{1,9}}){GAP})?(\d{{1,9}})/(\d{{1,9}})(?![\d/]){self._unit_after}", self._fraction),
            (rf"(?:(\d{{1,9}}){GAP}?)?([{''.join(VULGAR)}]){self._unit_after}", self._vulgar),
        ]

    def sign_rule(self) -> tuple[str, Handler]:
        """For a fraction of one character without a whole number."""
        return rf"()([{''.join(VULGAR)}]){self._unit_after}", self._vulgar

    def _idiom(self, found: re.Match[str]) -> Reading:
        """ "24/7", "50/50": said as they stand."""
        first, last = (self._numbers.cardinal(n) for n in found[1].split("/"))
        return reading(found, f"{first} {self._over} {last}", "symbol")

    def _part(self, found: re.Match[str]) -> Reading | None:
        """ "الفقرة 3-2", "المادة 5/2", "الشكل 3.2": the number of a part, sign by sign."""
        if self._context.setting(found.string, found.start(), found.end(), 0).before not in self._parts:
            return None
        return self.dotted(found)

    def dotted(self, found: re.Match[str]) -> Reading:
        """ "192.168.1.1": numbers with their signs between them."""
        case = "oblique" if "/" in found[0] else "nominative"
        said = (self._signs.get(p) or self._numbers.cardinal(p, case=case) for p in re.findall(r"\d+|\D", found[0]))
        return reading(found, " ".join(said), "serial")

    def _pair(self, found: re.Match[str]) -> Reading | None:
        """A score, where the copy speaks of winning or the figures fall: "فاز 3-1" -> "ثلاثة مقابل واحد"."""
        falls = HIGHEST_SCORE >= int(found[1]) >= int(found[2])
        falls = falls or self._of_a_match(found)
        falls = falls or in_row_of_pairs(found.string, found.start(), found.end())
        counts = self._context.setting(found.string, found.start(), found.end(), 0).written.endswith(_COUNTED)
        near = not counts and self._context.is_near(self._sport, found.string, found.start())
        if ":" not in found[0] and not falls and not near:
            return None
        setting = self._context.setting(found.string, found.start(), found.end(1), 0)
        first = self._quantities.number(found[1], case=setting.case)
        second = self._quantities.number(found[2], case="oblique")
        said = attach(setting.lead, f"{first} {self._word['score']} {second}")
        return Reading(Span(setting.start, found.end()), said, "score")

    def _of_a_match(self, found: re.Match[str]) -> bool:
        """Whether a word of winning stands further off and nothing is counted: "فاز في كرة السلة 98-95"."""
        setting = self._context.setting(found.string, found.start(), found.end(), 0)
        if setting.prefix or self._context.governs(setting.before) or setting.written.endswith(_COUNTED):
            return False
        words = found.string[max(0, found.start() - FAR) : found.start()].rpartition(".")[2].split()
        return not self._sport.isdisjoint(words)

    def _fraction(self, found: re.Match[str]) -> Reading | None:
        over, under = int(found[2]), int(found[3])
        if under == 0:
            return None
        season = is_season(found[2], found[3])
        if not found[1] and (season or is_year_pair(found[2], found[3])):
            last = found[2][:2] + found[3] if season else found[3]
            return reading(found, f" {AND}".join(map(self._times.years.said, (found[2], last))), "range")
        return self._said(found, over, under)

    def _vulgar(self, found: re.Match[str]) -> Reading:
        return self._said(found, *VULGAR[found[2]])

    def _said(self, found: re.Match[str], over: int, under: int) -> Reading:
        end = found.start("unit") if found["unit"] else found.end()
        end -= len(found.string[found.start() : end]) - len(found.string[found.start() : end].rstrip())
        setting = self._context.setting(found.string, found.start(), end, 0)
        noun = self._quantities.noun(found["unit"])
        if found[1] and not noun and (mixed := self._mixed(found, over, under, setting)):
            return mixed
        said = self._numbers.fraction(over, under, setting.case, bound=bool(noun or setting.noun))
        if found[1] and noun:
            said = f"{self._numbers.count(str(int(found[1])), noun, setting.case)} {AND}{said}"
        elif found[1]:
            said = f"{self._quantities.number(found[1])} {AND}{said}"
        elif noun:
            said += f" {self._numbers.named(noun)}"
        return Reading(Span(setting.start, found.end()), attach(setting.lead, said), "fraction")

    def _mixed(self, found: re.Match[str], over: int, under: int, setting: Setting) -> Reading | None:
        """ "3½ أكواب" -> "ثلاثة أكواب ونصف": what is counted stands before the fraction."""
        n, noun = int(found[1]), setting.noun
        many = noun.endswith("ات") or bool(_BROKEN.fullmatch(noun)) or self._context.is_feminine(noun, 5)
        if not noun or n > 10 or (n > 2) != many or (n <= 2 and not self._context.can_be_dual(setting)):
            return None
        end = found.end() + 1 + len(setting.written)
        again = ""
        if n > 2:
            feminine = self._context.is_feminine(noun, n)
            words = self._numbers.cardinal(n, feminine=feminine, case=setting.case, bound=True)
            counted_words = f"{words} {setting.written}"
        else:
            one = counted({"one": noun})
            single = one.accusative if setting.case == "accusative" else setting.written
            counted_words = single if n == 1 else self._numbers.dual(one, setting.case)
            again = f" {setting.written}" if self._context.counts_on(found.string, end) else ""
        said = f"{counted_words} {AND}{self._numbers.fraction(over, under, setting.case)}{again}"
        return Reading(Span(setting.start, end), attach(setting.lead, said), "fraction")
