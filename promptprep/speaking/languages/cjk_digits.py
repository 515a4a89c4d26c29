"""The rules that read a digit and what follows it: which class of figure stands here, in a fixed order."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping, Sequence
from fractions import Fraction

from promptprep.model.language import LanguageData
from promptprep.speaking.languages import cjk_text as patterns
from promptprep.speaking.languages.cjk_numbers import LONGEST, Numerals
from promptprep.speaking.languages.cjk_quantities import Said
from promptprep.speaking.languages.cjk_text import Amount
from promptprep.speaking.languages.cjk_wording import Wording

_LONG = re.compile(rf"\d{{{LONGEST + 1},}}|\d{{1,3}}(?:,\d{{3}}){{{LONGEST // 3},}}(?!\d)")
_LEADING_ZERO = re.compile(r"0\d+(?![.\d]*\.\d)")
_HALF_DAY = re.compile(r"\s?([ap])\.?m\.?(?![A-Za-z\d])", re.IGNORECASE)
_GOES_ON = re.compile(r"[.,]\d|\d|[番号번]")
_DIGITS = re.compile(r"\d+")
_LOOK_AROUND = 12
_PARTICLES = "のにはでへとが에의으"


def _any_of(words: Sequence[str]) -> str:
    return "|".join(map(re.escape, words))


class Digits(Wording):
    """Rules `(text, at) -> Said | None`; the text is folded and `at` the first digit of a figure."""

    exchange: frozenset[str] = frozenset()

    def __init__(self, data: LanguageData, numerals: Numerals) -> None:
        super().__init__(data, numerals)
        self.after_unit = frozenset(data.get("spoken", "context.ends_a_quantity"))
        self.eras: Mapping[str, str] = data.get("spoken", "eras")
        self._slash_means_a_day = bool(data.get("spoken", "context.slash_means_a_day"))
        self._named_days = re.compile(rf"[\"')」』》]?\s?(?:{_any_of(data.get('spoken', 'context.named_day'))})")
        context = {name: _any_of(data.get("spoken", f"context.{name}")) for name in ("score", "serial", "telephone")}
        self._score_words = re.compile(context["score"])
        self._serial_words = re.compile(rf"(?:{context['serial']})\D{{0,3}}\Z")
        self._address_words = re.compile(rf"(?:{_any_of(data.get('spoken', 'context.address'))})\s?\Z")
        self._telephone_after = re.compile(_any_of(data.get("spoken", "context.telephone_after")))
        self._telephone_words = re.compile(rf"(?:{context['telephone']})\D{{0,3}}\Z")
        self._digit_rules = (
            self._long,
            self._time,
            self._difference,
            self._serial,
            self._named_day,
            self._duration,
            self._era,
            self.slashed,
            self._vulgar,
            self._dotted,
            self._power,
            self._ratio,
            self._amount,
        )

    def _figure(self, text: str, at: int) -> Said | None:
        return next((said for rule in self._digit_rules if (said := rule(text, at))), None)

    def _long(self, text: str, at: int) -> Said | None:
        found = _LONG.match(text, at)
        return Said(self.serial_digits(found[0].replace(",", "")), "serial", found.end()) if found else None

    def _date(self, text: str, at: int) -> Said | None:
        if found := patterns.DATE.match(text, at):
            month, day = found[3] or found[5], found[4] or found[6]
            if patterns.is_day(month, day):
                end = found.end() - (1 if found[0].endswith(".") and not text[found.end() : found.end() + 1] else 0)
                return Said(self.day_said(found[1], month, day), "date", end)
        if found := patterns.DATE_LAST_YEAR.match(text, at):
            month, day = (found[1], found[3]) if int(found[1]) <= 12 else (found[3], found[1])
            if patterns.is_day(month, day):
                both = int(found[1]) <= 12 and int(found[3]) <= 12 and found[1] != found[3]
                other = (self.day_said(found[4], day, month),) if both else ()
                return Said(self.day_said(found[4], month, day), "date", found.end(), other)
        if (found := patterns.YEAR_MONTH.match(text, at)) and patterns.is_day(found[2] or found[3], "1"):
            return Said(self._month_said(found[1], found[2] or found[3]), "date", found.end())
        if (found := patterns.SHORT_DATE.match(text, at)) and patterns.is_day(found[2], found[3]):
            return Said(self.day_said(*found.groups()), "date", found.end())
        if (found := patterns.PADDED_DAY.match(text, at)) and "0" in (found[1][0], found[2][0]):
            return Said(self.day_said("", found[1], found[2]), "date", found.end())
        if (found := patterns.MONTH_YEAR.match(text, at)) and patterns.is_day(found[1], "1"):
            return Said(self._month_said(found[2], found[1]), "date", found.end())
        return None

    def _duration(self, text: str, at: int) -> Said | None:
        """ "2h30m", "5h 14m 32s"."""
        found = patterns.DURATION.match(text, at)
        if found is None:
            return None
        said = [
            self.quantities.in_words(n, unit) for n, unit in zip(found.groups(), ("h", "min", "s"), strict=True) if n
        ]
        return Said(self.forms["blank"].join(said), "measure", found.end())

    def _era(self, text: str, at: int) -> Said | None:
        """ "300 BC": the era stands before its year."""
        found = patterns.ERA.match(text, at)
        if found is None:
            return None
        year = self.forms["year"].replace("{n}", self.numerals.whole(found[1]))
        return Said(self.eras[found[2]] + self.forms["blank"] + year, "year", found.end())

    def _difference(self, text: str, at: int) -> Said | None:
        """ "100-37=63": what stands before an equals sign is taken away."""
        found = patterns.DIFFERENCE.match(text, at)
        if found is None or len(found[0]) > LONGEST:
            return None
        said = [self.numerals.number(*n.replace(",", "").partition(".")[::2]) for n in re.split(r"\s?-\s?", found[0])]
        return Said(self.forms["subtract"].join(said), "cardinal", found.end())

    def _named_day(self, text: str, at: int) -> Said | None:
        """What is called by its day, figure by figure: "2・26事件", "9·11", "6·25"."""
        found = patterns.NAMED_DAY.match(text, at)
        if found is None or text[at - 1 : at] in ("·", "・", "第", "제"):
            return None
        lone = len(found[2]) > 1 and not text[found.end() : found.end() + 1].isalnum()
        if not lone and not self._named_days.match(text, found.end()):
            return None
        return Said(self.day_figures(found[1], found[2]), "date", found.end())

    def _month_said(self, year: str, month: str) -> str:
        return self.forms["year"].replace("{n}", self.year(year)) + self.forms["blank"] + self.month(month)

    def _serial(self, text: str, at: int) -> Said | None:
        """Telephone numbers and the like: a hyphen more than a range has, a leading zero, or a word that says so."""
        before = max(0, at - _LOOK_AROUND)
        if found := patterns.HYPHENED.match(text, at):
            groups = found[0].split("-")
            named = bool(self._serial_words.search(text, before, at))
            if len(groups) < 5 and self._is_address(text, at, found.end()):
                joint = self.forms["between_house_numbers"]
                return Said(joint.join(self.numerals.whole(g) for g in groups), "serial", found.end())
            if len(groups) > 2 or named or self._is_telephone(groups):
                serial = named or groups[0][0] not in "0148"
                return (self._serial_number if serial else self._telephone)(groups, found.end())
        if found := patterns.BRACKETS_INSIDE.match(text, at):
            return self._telephone(_DIGITS.findall(found[0]), found.end())
        if found := patterns.AREA_CODE.match(text, at):
            return self._telephone(found[0].split(" "), found.end())
        run = _DIGITS.match(text, at)
        if run is None or len(run[0]) < 3 or not self.stands_alone(text, run.end()):
            return None
        if self._telephone_words.search(text, before, at) or self._telephone_after.match(text, run.end()):
            return self._telephone([run[0]], run.end())
        named = bool(self._serial_words.search(text, before, at))
        return self._serial_number([run[0]], run.end()) if named else None

    def stands_alone(self, text: str, end: int) -> bool:
        """Whether a digit string ends at `end` with no decimals, group or counter behind it."""
        return not _GOES_ON.match(text, end)

    def _is_address(self, text: str, at: int, end: int) -> bool:
        """Whether house numbers end here: a street's name before them, no counter or unit behind."""
        if not self._address_words.search(text, max(0, at - _LOOK_AROUND), at):
            return False
        return not text[end : end + 2].strip()[:1].isalpha() or text[end] in _PARTICLES

    def _is_telephone(self, groups: list[str]) -> bool:
        first, last = groups[0], groups[-1]
        return (first.startswith("0") and len(first) > 1 and len(last) >= 3) or (
            len(first) == 4 and len(last) == 4 and first[:2] in ("15", "16", "18") and first[2:] in self.exchange
        )

    def _clock(self, text: str, at: int) -> Said | None:
        found = patterns.CLOCK.match(text, at)
        if found is None or self.near_a_score(text, at, found.end()):
            return None
        said = self._time_said(found)
        end = found.end()
        if text[end : end + 1] == said[-1:] and int(found[2]):
            end += 1
        if half := _HALF_DAY.match(text, end):
            said, end = self._half_day(half[1]) + said, half.end()
        return Said(said, "clock", end)

    def near_a_score(self, text: str, at: int, end: int) -> bool:
        return bool(self._score_words.search(text, max(0, at - _LOOK_AROUND), min(len(text), end + _LOOK_AROUND)))

    def slashed(self, text: str, at: int, *, always: bool = False) -> Said | None:
        """A fraction, or a day where that is likelier; `always` a fraction."""
        found = patterns.SLASHED.match(text, at)
        if found is None or len(found[0]) > LONGEST or not int(found[3]):
            return None
        if not always and not found[1] and int(found[2]) > int(found[3]) > 31:
            pair = self.forms["pair"].replace("{a}", self.numerals.whole(found[2]))
            return Said(pair.replace("{b}", self.numerals.whole(found[3])), "range", found.end())
        as_date = self.day_said("", found[2], found[3])
        as_fraction = self.fraction(found[1] or "", found[2], found[3])
        if not always and patterns.slash_is_date(text, found, self._slash_means_a_day):
            proper = int(found[2]) < int(found[3]) and "0" not in (found[2][0], found[3][0])
            return Said(as_date, "date", found.end(), (as_fraction,) if proper and int(found[3]) <= 10 else ())
        if measured := self.quantities.measured(text, found.end(), as_fraction):
            return measured
        other = (as_date,) if not found[1] and patterns.is_day(found[2], found[3]) and int(found[3]) > 4 else ()
        return Said(as_fraction, "fraction", found.end(), other)

    def _vulgar(self, text: str, at: int) -> Said | None:
        found = patterns.VULGAR.match(text, at)
        if found is None:
            return None
        value = Fraction(unicodedata.numeric(found[2])).limit_denominator(10)
        said = self.fraction(found[1], str(value.numerator), str(value.denominator))
        return self.quantities.measured(text, found.end(), said) or Said(said, "fraction", found.end())

    def _dotted(self, text: str, at: int) -> Said | None:
        """Version numbers ("1.2.3") part by part, addresses of four parts and telephone numbers digit by digit."""
        found = patterns.DOTTED.match(text, at)
        if found is None:
            return None
        groups = found[0].split(".")
        if len(groups[0]) > 1 and groups[0].startswith("0"):
            return self._telephone(groups, found.end())
        by_digit = len(groups) == 4
        parts = [self.serial_digits(g) if by_digit else self.numerals.whole(g) for g in groups]
        return Said(self.numerals.point.join(parts), "serial", found.end())

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
        if left is None or text[left.end : left.end + 1] not in ("-", ":"):
            return None
        right = self.quantities.amounts.at(text, left.end + 1)
        if right is None or not self._is_score(text, at, left, right):
            return None
        said = [self.numerals.number(a.whole, a.fraction) for a in (left, right)]
        score, between = (self.forms[f].replace("{a}", said[0]).replace("{b}", said[1]) for f in ("score", "range"))
        sure = text[left.end] == ":" or self.near_a_score(text, at, right.end)
        return Said(score, "score", right.end, () if sure else (between,))

    def _is_score(self, text: str, at: int, left: Amount, right: Amount) -> bool:
        if not (left.power == right.power == ""):
            return False
        if text[left.end] == ":":
            return True
        plain = left.plain and right.plain and max(left.value, right.value) < 200
        return plain and (left.value >= right.value or self.near_a_score(text, at, right.end))

    def _time(self, text: str, at: int) -> Said | None:
        """A clock time or a date, or a range that begins with one."""
        first = self._clock(text, at) or self._date(text, at)
        if first and first.kind == "date" and (time := patterns.ISO_TIME.match(text, first.end)):
            clock = self._time_said(time)
            return Said(first.said + (self.forms["blank"] or " ") + clock, "date", time.end(), first.otherwise)
        return self._range_from(text, at, first) or first

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
        below = self.forms["below_zero"] + said if second.below else ""
        return Said(said, "range", second.end, (), second.unit, "", below)

    def is_time(self, text: str, found: Said) -> bool:
        return found.kind in ("clock", "date")

    def _second(self, text: str, at: int) -> Said | None:
        """The end of a range: a time, a sum of money or a quantity, with its sign."""
        name = {"+": "plus", "-": "minus"}.get(text[at])
        if name is None:
            return self._time_or_quantity(text, at) or self.quantities.money(text, at)
        found = self.quantities.said(text, at + 1)
        return found and self.with_sign(name, found)

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
