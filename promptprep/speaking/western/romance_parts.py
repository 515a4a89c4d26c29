"""What only French, Spanish and Portuguese write: parts that their grammars bring along."""

from __future__ import annotations

import re

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.western.grammar import Grammar, leans_left, noun, word_after, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.romans import roman_value
from promptprep.speaking.western.units import BLANK

_DAYS = 31
_LINE_LEFT = 300
_ARC_LEFT = 48
_NUMBER_LEFT = re.compile(r"[\w.,:/]\Z|[-−–][ \u00a0]?\Z|[×x][ \u00a0]\Z")

_ENDS = re.compile(r"[.,;:!?)»”]*(?:[\s]*\Z|\s*\n|[.;!?]\s)")


class SpacedPhones:
    """Telephone numbers that look like grouped numbers ("612 345 678"): `serials.spaced` is their pattern.

    What counts something ("612 345 678 personas") is a number; where nothing follows, the other reading is kept.
    """

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._pattern = re.compile(str(grammar.data.get("spoken", "serials.spaced")).replace("_", r"[ \u00a0\u202f]"))

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or leans_left(text, at, ".,+-"):
            return None
        if text[found.end() : found.end() + 1] and not _ENDS.match(text, found.end()):
            return None
        said = ", ".join(self.g.words.one_by_one(group) for group in found[0].split())
        digits = "".join(c for c in found[0] if c.isdecimal())
        return Reading(Span(*found.span()), said, "telephone", (self.g.cardinal(digits),))


class Hundredths:
    """A runner's time: 9 s 58, 9"58."""

    _pattern = re.compile(
        rf"(?:(\d{{1,2}})(?:['’′]|{BLANK}?min{BLANK}?))?(\d{{1,2}})(?:{BLANK}?s{BLANK}?|[\"″”])(\d\d)(?![\w\"″”])"
    )

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._and = grammar.text("clock.hundredths")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or leans_left(text, at, ".,:'’′"):
            return None
        said = self.g.counted(Literal(found[2], "", 0), self.g.second)
        if found[1]:
            said = f"{self.g.counted(Literal(found[1], '', 0), self.g.minute)} {said}"
        nought = f"{self.g.words.digit('0')} " if found[3].startswith("0") else ""
        return Reading(Span(*found.span()), f"{said}{self._and} {nought}{self.g.cardinal(found[3])}", "measure")


class Metres:
    """A height or length with its centimetres behind the sign: 1 m 80, 1m80."""

    _pattern = re.compile(rf"(\d{{1,3}}){BLANK}?m{BLANK}?(\d\d)(?![\w/²³%]|[.,]\d|{BLANK}?(?:cm|m|km|%|min|s|h)(?!\w))")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._metre = noun(str(grammar.table("units.names")["m"]))
        self._and = grammar.text("clock.hundredths")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or leans_left(text, at, ".,:/"):
            return None
        if " " in found[0] and word_after(text, found.end()).islower():
            return None
        metres = self.g.counted(Literal(found[1], "", 0), self._metre)
        return Reading(Span(*found.span()), f"{metres}{self._and} {self.g.cardinal(found[2])}", "measure")


class LongMetres:
    """A length in metres and hundredths: "1,85 m" is a metre eighty-five; above `_most` metres it stays a decimal."""

    _pattern = re.compile(rf"(\d{{1,2}})[.,](\d\d){BLANK}?m(?![\w/²³%.]*\w|[²³/])")
    _most = 99

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._metre = noun(str(grammar.table("units.names")["m"]))
        self._and = grammar.text("clock.hundredths")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or not 0 < int(found[1]) <= self._most or _NUMBER_LEFT.search(text, max(floor, at - 3), at):
            return None
        said = self.g.counted(Literal(found[1], "", 0), self._metre)
        if found[2] != "00":
            nought = f"{self.g.words.digit('0')} " if found[2].startswith("0") else ""
            said = f"{said}{self._and} {nought}{self.g.cardinal(found[2])}"
        decimal = self.g.counted(Literal(found[1], found[2], 0, mark=self.g.literals.mark), self._metre)
        return Reading(Span(*found.span()), said, "measure", (decimal,))


class Inches:
    """The size of a screen: 24". Not where the sign closes a quotation that the line has opened."""

    _pattern = re.compile(r"\d{1,3}(?:[.,]\d)?(?=[\"″”](?![\w\"]))")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._inch = noun(grammar.text("units.inch"))
        arcs = "|".join(grammar.data.maybe("spoken", "units.arcs_before", ())) or "(?!)"
        self._arcs = re.compile(rf"(?<!\w)(?:{arcs})(?!\w)[^.!?\n]*\Z", re.IGNORECASE)

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or leans_left(text, at, ".,:'’′\"“"):
            return None
        line = text[max(0, at - _LINE_LEFT) : at].rpartition("\n")[2]
        number = self.g.literals.at(text, at)
        if self._arcs.search(text, max(0, at - _ARC_LEFT), at):
            return None
        if number is None or line.count('"') % 2 or line.count("“") > line.count("”"):
            return None
        return Reading(Span(at, found.end() + 1), self.g.counted(number, self._inch), "measure")


class Laws:
    """The number of a law and its year: Ley 27/2013, Lei 4567/16. `laws.before` lists what stands in front."""

    _pattern = re.compile(r"(\d{1,3}(?:\.\d{3})+|\d{1,5})/((?:19|20)\d\d|\d\d)(?![\d/])")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._template = grammar.text("laws.of")
        self._before = grammar.wordset("laws.before")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or leans_left(text, at, "./,"):
            return None
        year = found[2]
        if word_before(text, at).casefold() not in self._before and not self._is_numbered(text, at):
            return None
        number = self.g.cardinal(found[1].replace(".", ""))
        said = self._template.format(number, self.g.year(year) if len(year) == 4 else self.g.cardinal(year))
        return Reading(Span(*found.span()), said, "serial")

    def _is_numbered(self, text: str, at: int) -> bool:
        return text[max(0, at - 5) : at].rstrip().endswith(("n.º", "nº", "n°", "N.º", "Nº", "N°"))


class HundredCodes:
    """Three figures, or round hundreds, behind a code's letters are one number: A320, AF 447, D906, ISO 3200.

    So is a figure with a decimal comma (PM2,5). `serials.hundreds` lists more words.
    """

    _number = re.compile(r"[1-9]\d(?:\d|00)(?:-([1-9]00|1000))?(?![\w%€$°]|[.,:/-]\d|[ \u00a0\u202f][%€$°\d])")
    _decimal = re.compile(r"(\d{1,2}),(\d)(?![\w%€$°]|[.,:/-]\d)")
    _type = re.compile(r"7\d7-[1-9]00(?!\d)")
    _letters_left = re.compile(r"(?<!\w)[A-Z]{1,3}\Z")
    _left = re.compile(r"(?<!\w)(?:([A-Z]{1,3})-?|([A-Z]{2,3})[ \u00a0\u202f])\Z")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._words = grammar.wordset("serials.hundreds")
        self._no_codes = frozenset(grammar.table("currencies")) | grammar.wordset("serials.not_before")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._number.match(text, at)
        if not found:
            return self._with_decimal(text, at)
        if self._type.match(text, at):
            return self._parts(found)
        code = self._left.search(text, max(0, at - 5), at)
        if code is None and word_before(text, at).casefold() not in self._words:
            return None
        if code and (code[1] or code[2]) in self._no_codes:
            return None
        return self._parts(found)

    def _parts(self, found: re.Match[str]) -> Reading:
        parts = re.findall(r"\d+", found[0])
        said, digits = (", ".join(map(say, parts)) for say in (self.g.year, self.g.words.one_by_one))
        return Reading(Span(*found.span()), said, "serial", (digits,))

    def _with_decimal(self, text: str, at: int) -> Reading | None:
        found = self._decimal.match(text, at)
        if not found or not self._letters_left.search(text, max(0, at - 4), at):
            return None
        number = Literal(found[1], found[2], 0, mark=",")
        return Reading(Span(*found.span()), self.g.number(number), "serial")


class Scales:
    """A map's scale: 1/25 000, 1:50 000. `ratios.scale` has {cardinal} or {ordinal} for the second figure."""

    _pattern = re.compile(r"1[:/](\d{1,3}(?:[ .\u00a0\u202f]000){1,3})(?!\d)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._template = grammar.text("ratios.scale")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or leans_left(text, at, ":.,/-"):
            return None
        below = re.sub(r"\D", "", found[1])
        said = self._template.format(cardinal=self.g.cardinal(below), ordinal=self.g.ordinal(below))
        return Reading(Span(*found.span()), said, "fraction")


class OneThousand:
    """ "1 mil" is said without its one."""

    _pattern = re.compile(rf"1{BLANK}(mil)(?!\w)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or leans_left(text, at, "$€£.,") or text[at - 2 : at] == "$ ":
            return None
        return Reading(Span(*found.span()), found[1], "cardinal")


class PoweredUnits:
    """A unit with its power in plain figures and no number: "habitantes por km2"."""

    def __init__(self, grammar: Grammar) -> None:
        self.square = grammar.text("units.square").split("|")[-1]
        self.cubic = grammar.text("units.cubic").split("|")[-1]
        names = grammar.table("units.names")
        self._names = {k: str(v).split("|") for k, v in names.items() if k.endswith("m") and len(k) <= 2}

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if text[at] not in "23" or text[at + 1 : at + 2].isalnum() or not text[at - 1 : at].isalpha():
            return None
        start = at - 2 if text[at - 2 : at] in self._names else at - 1
        names = self._names.get(text[start:at])
        if names is None or start < floor or (start and (text[start - 1].isalnum() or text[start - 1] in "./-")):
            return None
        alone = word_before(text, start) in ("por", "par", "del", "cada")
        form = self.square if text[at] == "2" else self.cubic
        form = form.removesuffix("s") if alone else form
        return Reading(Span(start, at + 1), form.format(names[0] if alone else names[1]), "measure")


class RomanMonths:
    """A date with its month in Roman figures: 15-V-2026."""

    _pattern = re.compile(r"(\d{1,2})([-/.])(I{1,3}|IV|VI{0,3}|IX|XI{0,2})\2(\d{4}|\d{2})(?!\d)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._names: list[str] = list(grammar.data.get("spoken", "months.names"))

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        found = self._pattern.match(text, at)
        if not found or not 1 <= int(found[1]) <= _DAYS or (at and text[at - 1].isalnum()):
            return None
        year = found[4] if len(found[4]) == 4 else ("20" if found[4] < "50" else "19") + found[4]
        month = self._names[roman_value(found[3]) - 1]
        said = self.g.date_in_figures(found[1], month, self.g.year(year), word_before(text, at))
        return Reading(Span(*found.span()), said, "date")


class MonthsOfYears:
    """A month and its year with a bar: 05/2026, maio/2026."""

    _figures = re.compile(r"(0?[1-9]|1[0-2])/((?:19|20)\d\d)(?![\d/]|[.,]\d)")
    _year = re.compile(r"(?:19|20)\d\d(?![\d/]|[.,]\d)")

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self._names: list[str] = list(grammar.data.get("spoken", "months.names"))
        short = {k.rstrip("."): self._names[int(v) - 1] for k, v in grammar.table("months.short").items()}
        self._months = {**{n: n for n in self._names}, **short}
        self._left = re.compile(rf"(?<!\w)({'|'.join(sorted(self._months, key=len, reverse=True))})/\Z")
        self._link = grammar.text("dates.of_year")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if at and text[at - 1] == "/":
            name, year = self._left.search(text, max(floor, at - 12), at), self._year.match(text, at)
            if not name or not year:
                return None
            return self._reading(Span(name.start(), year.end()), self._months[name[1]], year[0])
        found = self._figures.match(text, at)
        if not found or leans_left(text, at, ".,-"):
            return None
        return self._reading(Span(*found.span()), self._names[int(found[1]) - 1], found[2])

    def _reading(self, span: Span, month: str, year: str) -> Reading:
        return Reading(span, f"{month}{self._link} {self.g.year(year)}", "date")


SHARED = (Hundredths, Inches, Metres, MonthsOfYears, PoweredUnits, RomanMonths, SpacedPhones)
IBERIAN = (Laws, OneThousand, *SHARED)
