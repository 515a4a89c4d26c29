"""English: broadcast usage, American unless the tag says otherwise."""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.en_places import Roads, States, Streets
from promptprep.speaking.languages.en_records import Degrees, Records, ShortNumbers
from promptprep.speaking.languages.en_times import DaysInRow, HoursApart, Lapses, MilitaryTimes, WeekdayRanks
from promptprep.speaking.western.grammar import Grammar, Noun, word_after, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.reader import Western
from promptprep.speaking.western.verses import Verses

_ARTICLES = ("a", "an", "the", "this", "that", "its", "our", "their", "his", "her")
_AND_REGIONS = ("GB", "IE", "AU", "NZ", "ZA", "IN", "KE")
_DECADE = re.compile(r"(?:(\d{2}))?(\d)0(?:['’]?s)(?!\w)")
_METRIC = re.compile(r"(?<![a-z])((?:kilo|centi|milli|deci|nano|micro|hecto)?(?:me|li))ter")
_FEET = re.compile(r"(\d{1,2})(?:\s?ft\.?\s?|['′’])(\d{1,2})(?:\s?in\b(?:\.(?=[,;:)]|[ \u00a0][a-z]))?|[\"″”])")
_INCHES = re.compile(
    r"-in(?![\w-])\.?(?=[ \u00a0][a-z])|-in\.?(?=-[a-z])|in\b\.?(?! [A-Z])|[ \u00a0]?in\.(?=[ \u00a0][a-z])|"
    r"[ \u00a0]in\.?(?=[ \u00a0]of[ \u00a0](?:rain|snow|ice|sleet|hail|water))|"
    r"[ \u00a0]?in\.?(?=[ \u00a0]*(?:[=),;×]|x[ \u00a0]?\d|\n|\Z)|[ \u00a0](?:tall|wide|long|deep|high|thick)\b)"
)
_FOOT_MARK = re.compile("['’′]")
_STANDING = re.compile(r"[ \u00a0]of\b|[.,;)]|\s*\Z")
_LENGTH_NEAR = re.compile(r"[\d.,/⁄½¼¾⅛⅜⅝⅞–\- \u00a0tor]{1,16}?(?:in\b|[\"″”'’′])")
_DASH = re.compile(r"[-–]|[ \u00a0](?:to|or)[ \u00a0]")
_PARTS = re.compile(r"(?:(\d{1,3})[- ])?(\d{1,2})[/⁄](2|4|8|16|32|64)(?![\d/])")
_INCH_MARK = re.compile(r"[\"″](?=[ \u00a0][A-Za-z(]|[.,;)]|\s*\Z|\n|-)")
_DAY_IN_ROW = re.compile(r"\bthe \d{1,2}(?:st|nd|rd|th),? (?:and|or|to|through) \Z")
_LEFT_DAY = 20
_LARGEST_FRACTION = 1000
_PLURAL_BEFORE = re.compile(r"\b(?:two|three|four|five|six|seven|eight|nine|ten|several|many|some|few|all|more) \Z")
_ODD_QUOTES = 120
_QUOTE = re.compile(r"(?<!\d)\"")
_AGES = re.compile(r"(\d{1,2})s(?![\w'’])")
_TYPES = re.compile(r"(7\d7|3[1-8]0|\d{1,2})s(?![\w'’])")
_TYPE_LEFT = re.compile(r"(?<!\w)[A-Z]{1,3}-\Z")
_ROUNDED = re.compile(r"(10{1,5})s(?![\w'’])")
_OF_THEM = re.compile(r"[ \u00a0](?:of|upon)[ \u00a0]")
_ROUND_AFTER = ("the", "many", "several", "some")
_ROUND = ("", "", "tens", "hundreds", "thousands", "tens of thousands", "hundreds of thousands")
_AGED = re.compile(r"(?:\b(?:[Uu]nder|[Oo]ver)[- ]|\bU-?)\Z")
_STONES = re.compile(r"(\d{1,2})[ \u00a0]?st\.?[ \u00a0]?(\d{1,2})[ \u00a0]?lbs?(?!\w)")
_CLASS_YEAR = re.compile(r"\d{2}(?!\w|[.,:]\d|%)")
_TENS = {
    "0": "hundreds", "1": "tens", "2": "twenties", "3": "thirties", "4": "forties", "5": "fifties", "6": "sixties",
    "7": "seventies", "8": "eighties", "9": "nineties",
}  # fmt: skip


class English(Grammar):
    """Numbers without "and" (CLDR's plain rules), except in the regions that say it."""

    articled_ranks = True

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        super().__init__(data, speller)
        region = data.tag.split("-")[-1]
        self.verbose = region in _AND_REGIONS
        self.day_first = region in _AND_REGIONS or self.text("dates.order") == "dmy"
        self.first_parts = (Verses, Records, HoursApart, Lapses, DaysInRow)
        self.own_parts = (Decades, FeetAndInches, MilitaryTimes, Roads, Streets, ShortNumbers, Degrees, WeekdayRanks)
        self._streets, self._states, self._degrees = Streets(self), States(self), Degrees(self)
        self._counted = self.wordset("years.counted")
        self.after_amounts = self.wordset("units.not_attributive")
        self.sized = self.wordset("units.sized")
        self._amount_nouns = self.wordset("units.attributive_after_a")
        self._halved = self.wordset("fractions.halved")
        self._not_counted = self.wordset("years.not_counted")

    def named_letters(self, text: str, at: int) -> Reading | None:
        return self._streets.named(text, at) or self._states.named(text, at) or self._degrees.named(text, at)

    @property
    def month_first(self) -> bool:
        return not self.day_first

    def respelled(self, word: str) -> str:
        """British metres and litres, where the region writes them so."""
        return _METRIC.sub(r"\1tre", word) if self.verbose else word

    def cardinal(self, digits: str, gender: str = "") -> str:
        rules = "%spellout-cardinal-verbose" if self.verbose else ""
        return self.words.cardinal(digits, rules).replace(",", "")

    def decimal(self, literal: Literal) -> str:
        """ ".312" has no nought to say."""
        said = super().decimal(literal)
        return said.partition(" ")[2] if literal.bare else said

    def ordinal(self, digits: str, form: str = "") -> str:
        return self.words.ordinal(digits, "%spellout-ordinal-verbose" if self.verbose else "%spellout-ordinal")

    def year(self, digits: str) -> str:
        """ "nineteen oh-five", "two thousand five", "twenty twenty-six"."""
        if self.verbose and 2000 < int(digits) < 2010:
            return self.cardinal(digits)
        return self.words.cardinal(digits, "%spellout-numbering-year")

    def is_singular(self, literal: Literal) -> bool:
        return literal.is_one or (not literal.whole and literal.part is not None)

    def counted(self, literal: Literal, what: Noun, magnitude: Noun | None = None, before: str = "") -> str:
        if literal.part and not literal.whole and magnitude is None and literal.part != (1, 2):
            return f"{self.number(literal)} of {_article(what.one)} {what.one}"
        if literal.part == (1, 2) and not literal.whole and magnitude is None:
            return f"half {_article(what.one)} {what.one}"
        return super().counted(literal, what, magnitude, before)

    def date(self, day: str, month: str, year: str, before: str) -> str:
        """ "the fifth of May, twenty twenty-six" after a day in front of its month."""
        the = "" if before.casefold() in ("the", "this", "last", "next") else "the "
        return f"{the}{self.ordinal(day)} of {month}" + (f", {year}" if year else "")

    def date_in_figures(self, day: str, month: str, year: str, before: str) -> str:
        if self.day_first:
            return self.date(day, month, year, before)
        return f"{month} {self.ordinal(day)}" + (f", {year}" if year else "")

    def fraction_noun(self, above: int, below: int) -> Noun | None:
        """ "one hundred-twenty-fifth"."""
        known = super().fraction_noun(above, below)
        if known or above != 1 or below > _LARGEST_FRACTION:
            return known
        return Noun(self.ordinal(str(below)), f"{self.ordinal(str(below))}s")

    def before_noun(self, literal: Literal, text: str, at: int, word: str) -> str:
        if literal.part == (1, 2) and not literal.whole and word in self._halved:
            return "half"
        return super().before_noun(literal, text, at, word)

    def rank_before(self, value: int, noun: str) -> str:
        """ "the XXXIII Olympiad"; only a capital is ranked so."""
        return self.ordinal(str(value)) if noun[:1].isupper() else ""

    def before_day(self, text: str, at: int) -> str:
        """In a row the first day has the article: "the 3rd and 4th of May"."""
        earlier = _DAY_IN_ROW.search(text, max(0, at - _LEFT_DAY), at)
        return "the" if earlier else word_before(text, at)

    def days(self, first: str, last: str, month: str, year: str, before: str) -> str:
        both = self.text("numbers.range").format(self.ordinal(first), self.ordinal(last))
        the = "" if before.casefold() == "the" else "the "
        return f"{the}{both} of {month}" + (f", {year}" if year else "")

    def clock(self, hour: int, minute: int | None, *, marked: bool, half: str) -> str:
        spoken_half = f" {half[0].upper()} M" if half else ""
        said = self.cardinal(str(hour))
        if minute is None:
            return said + spoken_half
        if minute == 0:
            if half:
                return said + spoken_half
            if hour == 0:
                return "midnight"
            return f"{said} o'clock" if hour <= 12 else f"{said} hundred"
        minutes = f"oh {self.cardinal(str(minute))}" if minute < 10 else self.cardinal(str(minute))
        return f"{said} {minutes}{spoken_half}"

    def amount(self, literal: Literal, unit: Noun, cent: Noun | None) -> str:
        cents = Literal(literal.fraction.lstrip("0"), "", 0)
        whole = Literal(literal.whole, "", 0)
        if cent and unit.one == unit.more:  # in front of a noun
            name = cent.one if cent.more.endswith("s") else cent.more
            return f"{self.counted(whole, unit)} {self.number(cents)} {name}"
        return f"{self.counted(whole, unit)} and {self.counted(cents, cent or unit)}"

    def regnal(self, value: int) -> str:
        return f"the {self.ordinal(str(value))}"

    def attributive(self, before: str, after: str) -> bool:
        article = before.casefold()
        named = after[:1].isupper() and (article in ("a", "an") or not after.isalpha() or after.isupper())
        if article not in _ARTICLES or not (after.islower() or named):
            return False
        return after not in self.after_amounts or (article in ("a", "an") and after in self._amount_nouns)

    def counts(self, word: str) -> bool:
        if word in self._counted:
            return True
        return word.islower() and word.endswith("s") and len(word) > 2 and word not in self._not_counted


class FeetAndInches:
    """Heights and weights: 5'10", 6 ft 2 in, 11 st 4 lb."""

    def __init__(self, grammar: English) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if stones := _STONES.match(text, at):
            weight = self.g.counted(Literal(stones[2], "", 0), Noun("pound", "pounds"))
            return Reading(Span(*stones.span()), f"{self.g.cardinal(stones[1])} stone {weight}", "measure")
        found = _FEET.match(text, at)
        if not found or "°" in text[max(0, at - 2) : at]:
            return self._inches(text, at)
        feet, inches = (Literal(found[n], "", 0) for n in (1, 2))
        said = f"{self.g.counted(feet, Noun('foot', 'feet'))} {self.g.counted(inches, Noun('inch', 'inches'))}"
        return Reading(Span(*found.span()), said, "measure")

    def _inches(self, text: str, at: int) -> Reading | None:
        """ "5.5-in screen", "2 in = 5 cm", "3-5 in. of snow": never the preposition."""
        if text[at - 1 : at].isalnum() or not _LENGTH_NEAR.match(text, at):
            return None
        ends = self._size(text, at)
        if not ends:
            return None
        end, one = ends[-1].end, self.g.is_singular(ends[-1])
        if _FOOT_MARK.match(text, end) and word_after(text, end + 1) in self.g.sized:
            return self._sized(at, end + 1, ends, "foot" if one else "feet")
        if found := _INCHES.match(text, end):
            described = "/" in text[at:end] and word_after(text, found.end()) not in {"", *self.g.after_amounts}
            unit = "inch" if one or described or found[0].startswith("-") else "inches"
        elif (found := _INCH_MARK.match(text, end)) and (found[0] == "″" or not self._in_quotes(text, at)):
            stands = _STANDING.match(text, found.end()) or word_after(text, found.end()) in self.g.after_amounts
            unit = "inch" if one or not stands else "inches"
        else:
            return None
        return self._sized(at, found.end(), ends, unit)

    def _sized(self, at: int, end: int, ends: list[Literal], unit: str) -> Reading:
        said = f" {self.g.text('numbers.to')} ".join(self.g.number(number) for number in ends)
        return Reading(Span(at, end), f"{said} {unit}", "measure")

    def _in_quotes(self, text: str, at: int) -> bool:
        line = text[max(0, at - _ODD_QUOTES) : at].rpartition("\n")[2]
        return len(_QUOTE.findall(line)) % 2 == 1

    def _size(self, text: str, at: int) -> list[Literal]:
        """A length, or both ends of a range: 2, 1/2, 2-1/2, 3-5, 1/4-1/2."""
        first = self._length(text, at)
        dash = _DASH.match(text, first.end) if first else None
        second = self._length(text, dash.end()) if dash else None
        return [number for number in (first, second) if number]

    def _length(self, text: str, at: int) -> Literal | None:
        if (found := _PARTS.match(text, at)) and 0 < int(found[2]) < int(found[3]):
            return Literal(found[1] or "", "", found.end(), part=(int(found[2]), int(found[3])))
        return self.g.literals.at(text, at) if text[at : at + 1].isdecimal() else None


class Decades:
    """The 1990s, the '80s."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        if text[at - 1 : at] in ("$", "£", "€") and at > floor and (notes := _AGES.match(text, at)):
            return Reading(Span(at - 1, notes.end()), _plural(self.g.cardinal(notes[1])), "money")
        found = _DECADE.match(text, at) if not self._is_round(text, at) else None
        if not found:
            return self._ages(text, at) or self._short_year(text, at, floor)
        if at and text[at - 1].isalnum():
            return None
        century, tens = found.groups()
        start = at - 1 if at > floor and text[at - 1] in "'’‘" else at
        said = _TENS[tens]
        if century and century.endswith("0") and tens == "0":
            said = f"{self.g.cardinal(century.rstrip('0'))} thousands"
        elif century:
            said = f"{self.g.cardinal(century)} {said}"
        return Reading(Span(start, found.end()), said, "year")

    def _is_round(self, text: str, at: int) -> bool:
        """ "1000s of fans", which are no decade."""
        found = _ROUNDED.match(text, at)
        return bool(found and _OF_THEM.match(text, found.end()))

    def _ages(self, text: str, at: int) -> Reading | None:
        """Several of a kind: the under-16s, two 5s."""
        found = _AGES.match(text, at)
        low = max(0, at - _LEFT_DAY)
        if (types := _TYPES.match(text, at)) and (len(types[1]) == 3 or _TYPE_LEFT.search(text, low, at)):
            number = types[1] if len(types[1]) < 3 else types[1][1:]
            hundreds = "" if len(types[1]) < 3 else f"{self.g.cardinal(types[1][0])} "
            return Reading(Span(*types.span()), hundreds + _plural(self.g.cardinal(number)), "serial")
        rounded = _ROUNDED.match(text, at)
        if rounded and (_OF_THEM.match(text, rounded.end()) or word_before(text, at) in _ROUND_AFTER):
            return Reading(Span(*rounded.span()), _ROUND[len(rounded[1])], "cardinal")
        if not found or not (_AGED.search(text, low, at) or _PLURAL_BEFORE.search(text, low, at)):
            return None
        return Reading(Span(*found.span()), _plural(self.g.cardinal(found[1])), "cardinal")

    def _short_year(self, text: str, at: int, floor: int) -> Reading | None:
        """The class of '99."""
        found = _CLASS_YEAR.match(text, at)
        if not found or at - 1 < floor or text[at - 1] not in "'’" or text[at - 2 : at - 1].strip():
            return None
        oh = "oh " if found[0][0] == "0" else ""
        return Reading(Span(at - 1, found.end()), oh + self.g.cardinal(found[0]), "year")


def _plural(number: str) -> str:
    if number.endswith("y"):
        return f"{number[:-1]}ies"
    return f"{number}es" if number.endswith("x") else f"{number}s"


def _article(noun: str) -> str:
    return "an" if noun[0] in "aeio" or noun.startswith("hour") else "a"


def verbaliser(data: LanguageData, speller: Speller) -> Western:
    return Western(English(data, speller))
