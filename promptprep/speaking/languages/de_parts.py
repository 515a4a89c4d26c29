"""German: hours, telephone numbers, ranks, pressures and pages that figures name by the words around them."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.de_grammar import German
from promptprep.speaking.western.grammar import leans_left, word_after, word_before

_HOURS = re.compile(r"([01]?\d|2[0-4])(?:[.:]([0-5]\d))?[ \u00a0]?h(?!\w)")
_HOURS_AFTER = ("ab", "gegen", "um")
_ALONE = re.compile(r"(?<![^\n])(\d{1,3})\.(?=[ \u00a0]*(?:\Z|\n))")  # a rank that is all its line says
_STOPPAGE = re.compile(r"(\d{1,3})\.(?:[ \u00a0]?\+[ \u00a0]?(\d{1,2}))?")
_SCORER_END = re.compile(r"[,)]|[ \u00a0](?:Minute|Min\.)")
_PRESSURE = re.compile(r"(\d{2,3})/(\d{2,3})(?![\d/])(?:[ \u00a0]?(mmHg)(?!\w))?")
_PRESSURE_LEFT = re.compile(r"(?i:druck)\w*(?:[ \u00a0:]+\w+){0,3}[ \u00a0:]+\Z")
_PREDICATE = re.compile(
    r"(\d{1,2})\.(?=[ \u00a0]*(?:[,;:!?)]|\Z|\n)|[ \u00a0](?:und|oder|vor|hinter|in|im|ins|bei|beim|mit|[A-ZÄÖÜ]))"
)
_PRESSURE_REACH = 40
_SERVICE = re.compile(
    r"116[ \u00a0](\d{3})(?![\w.,-]?\d|[ \u00a0](?:[A-ZÄÖÜ]|Mio|Mrd|[€$%]))"
    r"|0 \d\d(?: ?[-–/] ?| )\d\d(?: \d\d){1,3}(?! ?\d)"
)
_FIRST_HOUR = re.compile(r"([01]?\d|2[0-4]) ?[-–] ?(?=(?:[01]?\d|2[0-4])[.:][0-5]\d[ \u00a0]?Uhr)")
_LAST_HOUR = re.compile(r"([01]?\d|2[0-4]) ?[-–] ?([01]?\d|2[0-4])[ \u00a0]?h(?!\w)")
_OPEN = ("werktags", "wochentags", "täglich", "geöffnet", "montags", "samstags", "sonntags", "von", "zwischen")
_DONE_IN = re.compile(
    r"(?:1\d|20)\d\d(?= (?:[a-zäöü]{2,6})?(?:ge|be|ver|er|ent|zer)[a-zäöüß]+(?:t|en)e[nrs]? [A-ZÄÖÜ])"
)
_PART_OF = re.compile(r"(\d{1,3})/(\d{1,3})(?![\w/]|[.,]\d)")
_PARTS = ("Seite", "Teil", "Folge", "Schritt", "Blatt", "Episode", "Runde")


class Pressures:
    """The blood's: 120/80 mmHg."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _PRESSURE.match(text, at)
        if not found or not (found[3] or _PRESSURE_LEFT.search(text, max(0, at - _PRESSURE_REACH), at)):
            return None
        said = self.g.text("scores.between").format(self.g.cardinal(found[1]), self.g.cardinal(found[2]))
        unit = f" {str(self.g.table('units.names')[found[3]]).split('|')[1]}" if found[3] else ""
        return Reading(Span(*found.span()), said + unit, "measure")


class Ranks:
    """An ordinal without its noun: "Er wurde 3.", "als 2. ins Ziel"; and a minute of play: "(90.+3)"."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar
        self._became = grammar.wordset("ordinals.became")
        self._women = grammar.wordset("ordinals.women")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if leans_left(text, at, ".,:/-–"):
            return None
        if (alone := _ALONE.match(text, at)) and not text[max(0, at - 1) : at].strip(" \t"):
            return Reading(Span(*alone.span()), self.g.ordinal(alone[1], "e"), "ordinal")
        return self._played(text, at) or self._predicate(text, at)

    def _played(self, text: str, at: int) -> Reading | None:
        found = _STOPPAGE.match(text, at)
        if not found or not (text[at - 1 : at] == "(" or found[2]) or not _SCORER_END.match(text, found.end()):
            return None
        ending = "n" if word_before(text, at) in ("der", "zur") else "e"
        more = f" {self.g.text('serials.plus')} {self.g.cardinal(found[2])}" if found[2] else ""
        return Reading(Span(*found.span()), self.g.ordinal(found[1], ending) + more, "ordinal")

    def _predicate(self, text: str, at: int) -> Reading | None:
        """The ending by who came to be it: "Sie wurde Zweite"."""
        found = _PREDICATE.match(text, at)
        following = word_after(text, found.end()) if found else ""
        if not found or following in self.g.month_names or following[:1].isupper() > (following in self.g.openers):
            return None
        verb = self.g.cases.predicate_of(text, at, self._became)
        if not verb:
            return None
        who = self.g.cases.subject_of(text, verb)
        several = text.startswith(("wurden", "werden"), verb.start(1)) and who != "Sie"
        woman = who.lower() in self._women or who.endswith("a") or self.g.gender_of(who) == "f"
        said = self.g.ordinal(found[1], "e" if woman or several else "r").capitalize()
        ends = not text[found.end() : found.end() + 2].strip() or following in self.g.openers
        return Reading(Span(at, found.end() - ends), said, "ordinal")


class ServiceNumbers:
    """Telephone numbers that look like something else: 116 117 (of the European Union), 0 30 - 12 34 56."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = None if leans_left(text, at, ".,-+") else _SERVICE.match(text, at)
        if not found:
            return None
        groups = (self.g.words.one_by_one(part) for part in re.findall(r"\d+", found[0]))
        return Reading(Span(*found.span()), ", ".join(groups), "telephone")


class Hours:
    """Times with an h behind them ("um 20 h"), and the first hour of two ("10–12.30 Uhr")."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if leans_left(text, at, ".,:"):
            return None
        if first := _FIRST_HOUR.match(text, at):
            said = f"{self.g.cardinal(first[1])} {self.g.text('numbers.to')} "
            return Reading(Span(*first.span()), said, "clock")
        if (last := _LAST_HOUR.match(text, at)) and self._is_open(text, at):
            both = self.g.text("numbers.range").format(self.g.cardinal(last[1]), self.g.cardinal(last[2]))
            return Reading(Span(*last.span()), f"{both} {self.g.text('clock.mark')}", "clock")
        found = _HOURS.match(text, at)
        if not found or word_before(text, at).lower() not in _HOURS_AFTER:
            return None
        minute = int(found[2]) if found[2] else None
        return Reading(Span(*found.span()), self.g.clock(int(found[1]), minute, marked=True, half=""), "clock")

    def _is_open(self, text: str, at: int) -> bool:
        before = word_before(text, at)
        return before in self.g.weekdays or before.lower() in _OPEN


class YearsOfDeeds:
    """A year before the participle of what was done in it: "die 1999 gegründete Firma"."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = None if leans_left(text, at, ".,-–/") else _DONE_IN.match(text, at)
        if not found or word_before(text, at).lower() not in self.g.cases.after:
            return None
        return Reading(Span(*found.span()), self.g.year(found[0]), "year")


class PartsOf:
    """ "Seite 3/12", "Teil 1/2": one of so many."""

    def __init__(self, grammar: German) -> None:
        self.g = grammar
        self._of = grammar.text("ratings.of")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = _PART_OF.match(text, at)
        if not found or int(found[1]) > int(found[2]) or word_before(text, at) not in _PARTS:
            return None
        said = self._of.format(self.g.cardinal(found[1]), self.g.cardinal(found[2]))
        return Reading(Span(*found.span()), said, "range")
