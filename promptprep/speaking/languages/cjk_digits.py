"""The rules that read a digit and what follows it: which class of figure stands here, in a fixed order."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import replace
from fractions import Fraction

from promptprep.model.language import LanguageData
from promptprep.speaking.languages import cjk_text as patterns
from promptprep.speaking.languages.cjk_dates import Dates
from promptprep.speaking.languages.cjk_numbers import LONGEST, Numerals
from promptprep.speaking.languages.cjk_quantities import Said
from promptprep.speaking.languages.cjk_serials import any_of
from promptprep.speaking.languages.cjk_text import Amount

_COUNTED_BY = frozenset("세명월일년시개원층권장%℃°歳人名年月日時円個階回岁时个米元件号层页")
_DIGITS = re.compile(r"\d+")
_PAIR_SIGN = re.compile(r"[-:]| - ")
_LEADING_ZERO = re.compile(r"0\d+(?![.\d]*\.\d)")


def _in_row_of_scores(text: str, at: int) -> bool:
    """Whether "22-25" stands among pairs of which one goes down, as only sets of a match do."""
    row = text[slice(*patterns.row_of_pairs(text, at, at))]
    pairs = patterns.PAIR.findall(row)
    return len(pairs) > 1 and any(int(first) > int(last) for first, last in pairs)


class Digits(Dates):
    """Rules `(text, at) -> Said | None`; the text is folded and `at` the first digit of a figure."""

    def __init__(self, data: LanguageData, numerals: Numerals) -> None:
        super().__init__(data, numerals)
        self.after_unit = frozenset(data.get("spoken", "context.ends_a_quantity"))
        self._slash_means_a_day = bool(data.get("spoken", "context.slash_means_a_day"))
        self._english: list[str] = data.get("spoken", "number.english")
        words = any_of(data.get("spoken", "context.english_before")) or "(?!)"
        self._english_before = re.compile(rf"([1-9])(?=(?:{words})(?![ァ-ヺー]|닝|넷))")
        self._share_words = re.compile(rf"(?:{any_of(data.get('spoken', 'context.share'))})\s?\Z")
        self._shared_after = re.compile(rf"\s?(?:{any_of(data.get('spoken', 'context.share_after'))})")
        # Each with the characters that may follow its first figures, or None for any.
        self._digit_rules = (
            (self._long, None),
            (self._borrowed, None),
            (self._season, frozenset("/s")),
            (self._record, frozenset(":′'")),
            (self._time, None),
            (self._difference, frozenset("- ,.")),
            (self._serial, None),
            (self._named_day, None),
            (self._duration, frozenset("h ")),
            (self._era, frozenset(" ")),
            (self.slashed, frozenset("/ \t\n")),
            (self._vulgar, None),
            (self._dotted, frozenset(".")),
            (self._scientific, frozenset("., ×xX")),
            (self._power, None),
            (self._ratio, None),
            (self._amount, None),
        )

    def _figure(self, text: str, at: int) -> Said | None:
        figures = _DIGITS.match(text, at)
        following = text[figures.end() : figures.end() + 1] if figures else ""
        for rule, followers in self._digit_rules:
            if (followers is None or following in followers) and (said := rule(text, at)):
                return said
        return None

    def _difference(self, text: str, at: int) -> Said | None:
        """ "100-37=63": what stands before an equals sign is taken away."""
        found = patterns.DIFFERENCE.match(text, at)
        if found is None or len(found[0]) > LONGEST:
            return None
        said = [self.numerals.number(*n.replace(",", "").partition(".")[::2]) for n in re.split(r"\s?-\s?", found[0])]
        return Said(self.forms["subtract"].join(said), "cardinal", found.end())

    def _borrowed(self, text: str, at: int) -> Said | None:
        """English numbers before English words of sport and the like: "3ラン", "2아웃"."""
        if found := patterns.STARRED.match(text, at):
            said = self.forms["starred"].replace("{n}", self.numerals.whole(found[1]))
            return Said(said, "symbol", found.end())
        found = self._english_before.match(text, at)
        if found is None or int(found[1]) > len(self._english):
            return None
        return Said(self._english[int(found[1]) - 1], "cardinal", found.end())

    def slashed(self, text: str, at: int, *, always: bool = False) -> Said | None:
        """A fraction, or a day where that is likelier; `always` a fraction."""
        found = patterns.SLASHED.match(text, at)
        whole, over, under = (found[1] or "", found[2], found[3].replace(",", "")) if found else ("", "0", "0")
        if found is None or len(found[0]) > LONGEST or not int(under):
            return None
        if not always and not whole and int(over) > int(under) > 31:
            pair = self.forms["pair"].replace("{a}", self.numerals.whole(over))
            said = pair.replace("{b}", self.numerals.whole(under))
            return self.quantities.measured(text, found.end(), said) or Said(said, "range", found.end())
        as_date = self.day_said("", over, under)
        as_fraction = self.fraction(whole, over, under)
        always = always or self._is_share(text, at, found.end())
        if not always and patterns.slash_is_date(text, found, self._slash_means_a_day):
            proper = int(over) < int(under) <= 10 and "0" not in (over[0], under[0])
            day = Said(as_date, "date", found.end(), (as_fraction,) if proper else ())
            return self._to_a_day(text, day) or day
        if measured := self.quantities.measured(text, found.end(), as_fraction):
            return measured
        other = (as_date,) if not whole and patterns.is_day(over, under) and int(under) > 4 else ()
        return Said(as_fraction, "fraction", found.end(), other)

    def _is_share(self, text: str, at: int, end: int) -> bool:
        """Whether a word beside the figure tells of a part of something: "占8/15", "4/4拍子"."""
        return bool(self._share_words.search(text, max(0, at - 4), at) or self._shared_after.match(text, end))

    def _vulgar(self, text: str, at: int) -> Said | None:
        found = patterns.VULGAR.match(text, at)
        if found is None:
            return None
        value = Fraction(unicodedata.numeric(found[2])).limit_denominator(10)
        said = self.fraction(found[1], str(value.numerator), str(value.denominator))
        return self.quantities.measured(text, found.end(), said) or Said(said, "fraction", found.end())

    def _scientific(self, text: str, at: int) -> Said | None:
        """A number times a power of ten, with the unit of the whole: "3×10⁸m/s"."""
        found = patterns.SCIENTIFIC.match(text, at)
        if found is None or len(found[0]) > LONGEST:
            return None
        number = self.numerals.number(found[1].replace(",", ""), found[2] or "")
        said = number + self.symbols["×"] + self.raised(self.numerals.whole("10"), patterns.exponent(found[3]))
        return self.quantities.measured(text, found.end(), said) or Said(said, "cardinal", found.end())

    def _power(self, text: str, at: int) -> Said | None:
        """ "10⁻⁶", "2^10", with a unit behind it or without."""
        found = patterns.POWER.match(text, at)
        if found is None or len(found[0]) > LONGEST:
            return None
        base = self.numerals.number(found[1].replace(",", ""), found[2] or "")
        said = self.raised(base, patterns.exponent(found[3]))
        return self.quantities.measured(text, found.end(), said) or Said(said, "cardinal", found.end())

    def _ratio(self, text: str, at: int) -> Said | None:
        left = self.quantities.amounts.at(text, at)
        sign = _PAIR_SIGN.match(text, left.end) if left else None
        right = self.quantities.amounts.at(text, sign.end()) if sign else None
        if left is None or sign is None or right is None or not self._is_score(text, at, left, right):
            return None
        said = [self.numerals.number(a.whole, a.fraction) for a in (left, right)]
        score, between = (self.forms[f].replace("{a}", said[0]).replace("{b}", said[1]) for f in ("score", "range"))
        sure = ":" in sign[0] or self.near_a_score(text, at, right.end)
        return Said(score, "score", right.end, () if sure else (between,))

    def _is_score(self, text: str, at: int, left: Amount, right: Amount) -> bool:
        if not (left.power == right.power == ""):
            return False
        if text[left.end] == ":":
            return True
        if not (left.plain and right.plain and max(left.value, right.value) < 200):
            return False
        if left.value < right.value and text[right.end : right.end + 1] in _COUNTED_BY:
            return False
        return left.value >= right.value or self.near_a_score(text, at, right.end) or _in_row_of_scores(text, at)

    def _time(self, text: str, at: int) -> Said | None:
        """A clock time or a date, or a range that begins with one."""
        first = self._clock(text, at) or self._date(text, at)
        if first and first.kind == "date" and (time := patterns.ISO_TIME.match(text, first.end)):
            clock = self._time_said(time)
            return Said(first.said + (self.forms["blank"] or " ") + clock, "date", time.end(), first.otherwise)
        to_day = self._to_a_day(text, first) if first and first.kind == "date" else None
        return to_day or self._range_from(text, at, first) or first

    def _amount(self, text: str, at: int) -> Said | None:
        """What only this language writes, or a quantity; or a range that begins with either."""
        special = self.special(text, at)
        first = special or self.quantities.said(text, at)
        return self._range_from(text, at, first) or special or self._leading_zero(text, at) or first

    def _range(self, text: str, at: int) -> Said | None:
        return self._range_from(text, at, self.special(text, at) or self.quantities.said(text, at))

    def _range_from(self, text: str, at: int, first: Said | None) -> Said | None:
        sign = patterns.RANGE_SIGN.match(text, first.end) if first else None
        if first is None or sign is None:
            return None
        second = self._second(text, sign.end())
        if second is None:
            return None
        said = self.ranged(text, at, first, second)
        below = self.forms["below_zero"] + said.removeprefix(second.prefix) if second.below else ""
        if second.below and second.below != second.said and not first.unit:
            colder = self.forms["below_zero"] + first.said + self.forms["blank"] + self._without_number(second)
            warmer = replace(second, said=second.said.removeprefix(second.prefix), prefix="")
            below = self.ranged(text, at, replace(first, said=colder, unit=True), warmer)
        if second.below and first.below:
            below = self.ranged(text, at, replace(first, said=first.below), second)
        return Said(said, "range", second.end, (), second.unit, "", below)

    def _without_number(self, found: Said) -> str:
        """The unit alone of a quantity in words."""
        numerals = self.numerals
        words = "".join((*numerals.digits, *numerals.units, *numerals.powers, numerals.point, numerals.zero, " "))
        return found.said.removeprefix(found.prefix).lstrip(words)

    def is_time(self, text: str, found: Said) -> bool:
        return found.kind in ("clock", "date")

    def _second(self, text: str, at: int) -> Said | None:
        """The end of a range: a time, a sum of money or a quantity, with its sign."""
        name = {"+": "plus", "-": "minus"}.get(text[at])
        if name is None:
            return self._time_or_quantity(text, at) or self.quantities.money(text, at)
        found = self.quantities.said(text, at + 1)
        if found is None:
            return None
        signed = self.with_sign(name, found)
        return replace(signed, below=signed.said) if name == "minus" and found.below else signed

    def ranged(self, text: str, at: int, first: Said, second: Said) -> str:
        """Two quantities from and to; the unit or per cent written once stands where the language says it."""
        left, right = first.said, second.said
        if not first.unit and second.prefix:
            left = second.prefix + left
            right = right if second.kind == "percent" else right.removeprefix(second.prefix)
        form = "range_of_time" if self.is_time(text, first) else "range"
        return self.forms[form].replace("{a}", left).replace("{b}", right)

    def _time_or_quantity(self, text: str, at: int) -> Said | None:
        return self._clock(text, at) or self._date(text, at) or self.special(text, at) or self.quantities.said(text, at)

    def _leading_zero(self, text: str, at: int) -> Said | None:
        """Digit by digit, but not where a counter of time follows: "08月"."""
        found = _LEADING_ZERO.match(text, at)
        if found and text[found.end() : found.end() + 1] in self.after_unit:
            return None
        return Said(self.serial_digits(found[0]), "serial", found.end()) if found else None
