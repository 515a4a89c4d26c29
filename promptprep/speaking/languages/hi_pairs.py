"""Hindi: two figures set against each other: scores, sides, feet and inches, hours of length."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.hi_numbers import HindiNumbers
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import Handler, in_row_of_pairs, one_of, reading

GAP = "[ \u00a0\u202f]"
MOST_WICKETS = 10
HIGHEST_SCORE = 30  # above it two falling figures may be of another kind
_END = r"(?![\w\u0900-\u0963])"


class HindiPairs:
    """Handlers for pairs of whole numbers."""

    def __init__(self, data: LanguageData, numbers: HindiNumbers) -> None:
        self._numbers = numbers
        self._word: Mapping[str, str] = data.get("spoken", "words")
        units: Mapping[str, str] = data.get("spoken", "units")
        self._degree = units["°"]
        self._unit = one_of(units)
        self._feet, self._inch = units["ft"].split("|")[-1], units["in"]
        self._times: str = data.get("spoken", "symbols")["×"]
        self._cricket = frozenset(self._word["cricket"].split())
        self._ratio_before = tuple(data.get("spoken", "ratios.before"))

    def rules(self) -> list[tuple[str, Handler]]:
        lengths = one_of(self._word["lengths_of_time"].split())
        return [
            (rf"(\d{{1,3}}):(\d{{2}})(?={GAP}{lengths}{_END})", self._hours),
            (r"(\d{1,3})°[ ]?(\d{1,2})[′'’](?:[ ]?(\d{1,2})[″\"”])?", self._angle),
            (r"(\d{1,2})['′’][ ]?(\d{1,2})(?:[\"″”]|''|′′)", self._feet_and_inches),
            (r"(\d{2,3})[/-](\d{1,2})(?![\d/-])", self._wickets),
            (r"(?<!\*)(\d{1,3})\*(?![\w*])", self._not_out),
            (r"(24)/(7)(?![\d/])|(\d\d)/(\3)(?![\d/])", self._idiom),
            (r"(\d{1,9})[ ](?:[-–](?=[ ]\d{1,9}[ ]?=)|−(?=[ ]\d))", self._minus),
            (r"(\d{1,4}(?:\.\d{1,3})?)(?:[xX×]| [xX×] )(?=(?P<equals>[\d.]{1,8}[ ]?=|10[\^⁻⁰¹²³⁴-⁹])|\d)", self._by),
        ]

    def late_rules(self) -> list[tuple[str, Handler]]:
        """After dates and times."""
        return [
            (r"(\d{1,3})(?::| : )(\d{1,3}(?:,?\d{3})*)(?![\d:])", self._ratio),
            (rf"(\d{{1,2}})[-–](\d{{1,2}})(?={GAP}से{_END})", self._score),
            (rf"(\d{{1,2}})[-–](\d{{1,2}})(?![-\d%])(?!{GAP}?{self._unit})", self._falling),
        ]

    def _say(self, digits: str) -> str:
        return self._numbers.cardinal(ascii_digits(digits).replace(",", ""))

    def _hours(self, found: re.Match[str]) -> Reading | None:
        """ "2:30 घंटे" -> "ढाई घंटे", "2:20 घंटे" -> "दो घंटे बीस मिनट"."""
        hours, minutes = int(found[1]), int(found[2])
        if minutes % 15 == 0 and minutes and hours:
            return reading(found, self._numbers.quarters(hours, minutes // 15), "measure")
        if minutes > 59:
            return None
        word = found.string[found.end() + 1 : found.end() + 10].split()[0]
        end = found.end() + 1 + len(word)
        parts = [f"{self._say(found[1])} {word}"]
        parts += [f"{self._say(found[2])} {self._word['minute']}"] if minutes else []
        return reading(found, " ".join(parts), "measure", end=end)

    def _angle(self, found: re.Match[str]) -> Reading:
        """ "55°45′" -> "पचपन डिग्री पैंतालीस मिनट"."""
        names = (self._degree, self._word["minute"], self._word["second"])
        said = (f"{self._say(n)} {name}" for n, name in zip(found.groups(), names, strict=True) if n)
        return reading(found, " ".join(said), "measure")

    def _feet_and_inches(self, found: re.Match[str]) -> Reading:
        return reading(found, f"{self._say(found[1])} {self._feet} {self._say(found[2])} {self._inch}", "measure")

    def _idiom(self, found: re.Match[str]) -> Reading:
        """ "24/7", "50/50": said as they stand."""
        first, last = (self._say(n) for n in found[0].split("/"))
        return reading(found, f"{first} {self._word['over']} {last}", "symbol")

    def _not_out(self, found: re.Match[str]) -> Reading:
        """ "100*" in cricket -> "नाबाद एक सौ"."""
        return reading(found, f"{self._word['not_out']} {self._say(found[1])}", "score")

    def _wickets(self, found: re.Match[str]) -> Reading | None:
        """ "245/6" in cricket: runs for wickets, "दो सौ पैंतालीस पर छह"."""
        runs, wickets = int(found[1]), int(found[2])
        text, start, end = found.string, found.start(), found.end()
        near = text[max(0, start - 32) : start].split()[-5:] + text[end : end + 24].split()[:3]
        told = any(w.strip(",।:") in self._cricket for w in near)
        sure = "/" in found[0] and runs > 99
        if wickets > MOST_WICKETS or runs <= wickets or not (sure or (told and runs > HIGHEST_SCORE)):
            return None
        return reading(found, f"{self._say(found[1])} {self._word['wickets']} {self._say(found[2])}", "score")

    def _minus(self, found: re.Match[str]) -> Reading:
        """ "6 - 2 = 4" takes away."""
        return reading(found, f"{self._say(found[1])} {self._word['minus']}", "symbol")

    def _by(self, found: re.Match[str]) -> Reading:
        """ "30 × 40 सेमी" has sides, "7 × 8 = 56" is a product."""
        whole, _, part = ascii_digits(found[1]).partition(".")
        number = self._numbers.decimal(whole, part) if part else self._say(whole)
        return reading(found, f"{number} {self._times if found['equals'] else self._word['by']}", "measure")

    def _ratio(self, found: re.Match[str]) -> Reading:
        """ "स्कोर 2:2" -> "दो-दो", "1:1000 के पैमाने" -> "एक अनुपात हज़ार"."""
        text, start, end = found.string, found.start(), found.end()
        near = text[max(0, start - 24) : start].split()[-2:] + text[end : end + 16].split()[:2]
        ratio = any(word.startswith(self._ratio_before) for word in near) or len(found[1] + found[2]) > 4
        link = f" {self._word['ratio']} " if ratio else "-"
        return reading(found, f"{self._say(found[1])}{link}{self._say(found[2])}", "score")

    def _score(self, found: re.Match[str]) -> Reading:
        """ "3-1 से" -> "तीन-एक से"."""
        return reading(found, f"{self._say(found[1])}-{self._say(found[2])}", "score")

    def _falling(self, found: re.Match[str]) -> Reading | None:
        """ "3-1": what does not rise is no range."""
        if in_row_of_pairs(found.string, found.start(), found.end()):
            return self._score(found)
        return (
            self._score(found)
            if int(found[1]) == int(found[2]) or HIGHEST_SCORE >= int(found[1]) > int(found[2])
            else None
        )
