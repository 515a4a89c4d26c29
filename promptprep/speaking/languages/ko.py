"""Korean: native numbers before native counters, Sino-Korean ones elsewhere, spaced by the spelling rules."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.speaking.languages import cjk_text as patterns
from promptprep.speaking.languages.cjk import Cjk
from promptprep.speaking.languages.cjk_numbers import korean, numerals_of
from promptprep.speaking.languages.cjk_quantities import Said
from promptprep.speaking.languages.cjk_text import Amount
from promptprep.speaking.languages.ko_hotlines import Hotlines
from promptprep.speaking.languages.ko_particles import agreed

_FRACTION = re.compile(r"(\d{1,12})\s?분의\s?(\d{1,12})")
_SCORE = re.compile(r"(\d{1,3})\s?대\s?(\d{1,3})(?!\d|[,.]\d|\s?[%％개명층살시번년월일분초만천백원])")
_FIGURE_WITH_WORD = re.compile(r"(\d+)\s?([가-힣]*)\Z")
_PART_BEFORE = re.compile(r"[\dⅠ-ⅿ]\s?[부막편권]\s?\Z")
_VERSE_AFTER = re.compile(r"\s?\d{1,3}(?:[~-]\d{1,3})?\s?절")
_IN_A_LIST = re.compile(r"(?:제|\d\s?[,·.])\s?\Z")
_CLASS_OF = re.compile(r"0\d(?=\s?(?:년생|학번|년대생))")
_EVENT_OF = re.compile(r"\d\d(?=\s[가-힣]{2})|0\d(?=\s?년)")
_QUARTER = re.compile(r"([1-4])/4(?=\s?분기)")
_MACHINES_AFTER = re.compile(
    r"(?:[가를의]|가량|정도)?\s?(?:투입|동원|출동|추가|설치|배치|확보|도입|구입|판매|생산|주차|운행|보유|보급)"
)
_SCHOOL_YEAR = re.compile(r"(?<![가-힣])[고중초]\Z")
_DAYS_BEFORE = re.compile(r"D-(\d{1,3})(?![\d.A-Za-z-])")
_SENTENCED = re.compile(r"(?:징역|금고|구류)\s?(?:\d+\s?년\s?)?\Z")
_AGED = re.compile(r"\d0대\s")
_VERSION = re.compile(r"(?:버전|판|[A-Za-z.])\s?\Z")
_PARTICLES = ("은 ", "는 ")
_ONE_OR_TWO = re.compile(r"([1-8](?:,\s?[2-9])*),\s?([2-9])(?!\d)")
_MAY_NAME = frozenset(("번", "번째", "대", "장", "권", "편"))
_RANK = re.compile(r"(\d{1,2})째(?!\s?(?:주|로))")
_ORDINAL = re.compile(r"(\d{1,6})(?:st|nd|rd|th)(?![A-Za-z])")
_POWERS = {"백": 2, "천": 3, "만": 4, "억": 8, "조": 12}
_POWER_AT_END = re.compile(r"[~-]\s?[\d.]+\s?([백천만억조])(?![백천만억조])(?!\s?\d)")
_MONTH_RANGE = re.compile(r"([1-9]|1[0-2])\s?[~-]\s?\d{1,2}월")
_ORDINAL_BEFORE = re.compile(r"(?<![가-힣])제\s?\Z")
_TIMES = frozenset("년월일시분초)")
# Signs whose name ends in a consonant: letters and exponents.
_ENDS_IN_CONSONANT = frozenset("LMNR²³⁴⁵⁶")
_FIGURE_AT_END = re.compile(r"(?:[$€£¥₩]\s?)?\d[\d,.]*\s?[A-Za-z°℃%가-힣²³]*\s?\Z")


class Korean(Cjk):
    """What Korean says its own way."""

    exchange = frozenset({"00", "22", "33", "44", "55", "66", "77", "88", "99"})

    def __init__(self, data: LanguageData) -> None:
        super().__init__(data, numerals_of(data.get("spoken", "number"), korean))
        get = data.get
        self._ones: list[str] = get("spoken", "number.native_ones")
        self._tens: list[str] = get("spoken", "number.native_tens")
        self._ranks: list[str] = get("spoken", "number.native_ranks")
        self._joints = {self.forms[f] for f in ("range_word", "range_word_after_a_time", "from_then")}
        self._twenty: str = get("spoken", "number.native_twenty")
        self._serial_zero: str = get("spoken", "number.serial_zero")
        self._months: dict[str, str] = get("spoken", "months")
        self._native = frozenset(get("spoken", "counters.native"))
        self._native_up_to: dict[str, int] = get("spoken", "counters.native_up_to")
        names = sorted(self._native.union(get("spoken", "counters.sino")), key=lambda n: (-len(n), n))
        self._counter = re.compile(rf"\s?({'|'.join(names)})")
        self._numbered_after = re.compile(rf"\s?(?:{'|'.join(get('spoken', 'context.numbered_after'))})")
        self._numbered_before = re.compile(rf"(?:{'|'.join(get('spoken', 'context.numbered_before'))})\s?\Z")
        self._great_after = re.compile(rf"\s?(?:{'|'.join(get('spoken', 'context.great_after'))})")
        self._native_after = {
            counter: re.compile(rf"(?:{'|'.join(words)})\s?\Z")
            for counter, words in get("spoken", "counters.native_after").items()
        }
        self._great_before = tuple(get("spoken", "context.of_the_great"))
        self._hotlines = Hotlines(data)

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        found = super().read(text, at, floor)
        return found and agreed(text, found)

    def placed(self, text: str, at: int, said: str) -> str:
        """A blank after a word that the number was written against ("약3개"), not after 제."""
        before = text[at - 1 : at]
        if said in (*self._joints, *_PARTICLES):
            return said
        if before.isdecimal() and text[at].isascii() and text[at].isalpha():
            return f" {said}"
        return f" {said}" if "가" <= before <= "힣" and before != "제" and said[:1].isalpha() else said

    def slashed(self, text: str, at: int, *, always: bool = False) -> Said | None:
        """A blank before the counter of a fraction: "1/2개"."""
        found = None if _QUARTER.match(text, at) else super().slashed(text, at, always=always)
        counted = self._counter.match(text, found.end) if found and found.kind == "fraction" else None
        if found is None or counted is None or counted[0] == "도" or counted[0].startswith(" "):
            return found
        return replace(found, said=found.said + " ")

    def native(self, value: int) -> str:
        """1 to 99 as they stand before a counter: 한, 스무, 스물한."""
        if value == 20:
            return self._twenty
        tens, ones = divmod(value, 10)
        return (self._tens[tens - 1] if tens else "") + (self._ones[ones - 1] if ones else "")

    def counted(self, text: str, at: int, amount: Amount) -> Said | None:
        found = self._counter.match(text, amount.end)
        if found is None or _SCHOOL_YEAR.search(text, max(0, at - 2), at):
            return None
        said, other = self._with_counter(text, at, amount, found)
        below = self.forms["below_zero"] + said if found[1] == "도" else ""
        return Said(said, "decimal" if amount.fraction else "cardinal", found.end(), other, False, "", below)

    def _with_counter(self, text: str, at: int, amount: Amount, found: re.Match[str]) -> tuple[str, tuple[str, ...]]:
        counter = found[1]
        sino = self.figure(amount, counter, "")
        if counter == "월" and _SENTENCED.search(text, max(0, at - 10), at):
            return f"{sino} {counter}", ()
        if counter == "월" and amount.plain and 1 <= amount.value <= 12:
            return self.month(amount.whole), ()
        if amount.plain and self._is_date(text, at, amount, counter):
            return f"{sino}{counter}", ()
        native = counter in self._native or self._is_native_here(text, at, counter)
        if not amount.plain or not native or _ORDINAL_BEFORE.search(text, max(0, at - 3), at):
            return f"{sino} {counter}", ()
        if self._names_a_thing(text, at, amount, found):
            return f"{sino}대" if counter == "대" else f"{sino} {counter}", ()
        return self._native_or_sino(amount.value, counter, sino)

    def _is_date(self, text: str, at: int, amount: Amount, counter: str) -> bool:
        """A year or the day behind its month, which may be written as one word (한글 맞춤법, 43항); spans may not."""
        if counter == "일":
            return text[max(0, at - 2) : at].rstrip().endswith("월") and 1 <= amount.value <= 31
        return counter in ("년", "년대") and 1000 <= amount.value <= 2999

    def _native_or_sino(self, value: int, counter: str, sino: str) -> tuple[str, tuple[str, ...]]:
        if not value:
            return f"{sino} {counter}", ()
        if counter == "번째" and value == 1:
            return f"{self.forms['first']} {counter}", ()
        if counter == "번" and value > 200:
            return f"{sino} {counter}", ()
        limit = self._native_up_to.get(counter, 99)
        native = f"{self.native(value)} {counter}" if value <= 99 else ""
        if value > limit:
            hundreds, rest = divmod(value, 100)
            if limit == 99 and hundreds and 0 < rest < 10:
                return f"{self.numerals.whole(str(hundreds * 100))}{self.native(rest)} {counter}", ()
            return f"{sino} {counter}", (native,) if native and counter == "시간" else ()
        return native, (f"{sino} {counter}",) if counter == "번" else ()

    def _is_native_here(self, text: str, at: int, counter: str) -> bool:
        """Whether a counter that is otherwise Sino-Korean counts people or things here: "손님 3분", "마늘 3쪽"."""
        words = self._native_after.get(counter)
        return bool(words and words.search(text, max(0, at - 8), at))

    def _names_a_thing(self, text: str, at: int, amount: Amount, found: re.Match[str]) -> bool:
        """Whether the number is a name: "3번 출구", "세계 3대 폭포", "20대 여성"."""
        if found[1] == "번":
            before = self._numbered_before.search(text, max(0, at - 8), at)
            return bool(before or self._numbered_after.match(text, found.end()))
        if found[1] == "장":
            return bool(_PART_BEFORE.search(text, max(0, at - 6), at) or _VERSE_AFTER.match(text, found.end()))
        if found[1] != "대":
            return False
        if self._is_native_here(text, at, "대") or _MACHINES_AFTER.match(text, found.end()):
            return False
        decade = amount.value % 10 == 0 and 10 <= amount.value <= 90
        great = text[max(0, at - 5) : at].rstrip().endswith(self._great_before)
        return decade or great or bool(self._great_after.match(text, found.end()))

    def month(self, digits: str) -> str:
        return self._months.get(digits.lstrip("0")) or super().month(digits)

    def _letters(self, text: str, at: int) -> Said | None:
        """So many days before the day: "D-7"."""
        found = _DAYS_BEFORE.match(text, at) if text[at] == "D" else None
        if found is None or (text[at - 1 : at].isascii() and text[at - 1 : at].isalnum()):
            return super()._letters(text, at)
        days = self.numerals.whole(found[1])
        return Said(self.latin.letters("D") + f" {self.forms['minus']}{days}", "serial", found.end())

    def stars_counted(self, count: int) -> str:
        return self.native(count)

    def hours_long(self, digits: str) -> str:
        return self._native_or_sino(int(digits), "시간", self.numerals.whole(digits))[0]

    def hour(self, digits: str) -> str:
        value = int(digits)
        word = self.native(value) if 1 <= value <= self._native_up_to["시"] else self.numerals.whole(digits)
        return self.forms["hour"].replace("{n}", word)

    def serial_digits(self, digits: str) -> str:
        return self.numerals.one_by_one(digits).replace(self.numerals.digits[0], self._serial_zero)

    def ranged(self, text: str, at: int, first: Said, second: Said) -> str:
        """A native counter is said with both numbers: "2~3명" 두 명에서 세 명."""
        if _ORDINAL_BEFORE.search(text, max(0, at - 3), at) and second.kind == "cardinal" and not second.unit:
            last = self._counted_plainly(text, second)
            return self.forms["range"].replace("{a}", first.said).replace("{b}", last)
        amount = self.quantities.amounts.at(text, at)
        power = _POWER_AT_END.search(text, first.end, second.end)
        if amount and power and text[at : first.end].isdecimal():
            first = replace(first, said=self.numerals.whole(amount.whole + "0" * _POWERS[power[1]]))
        elif amount and not first.unit and amount.end == first.end and second.kind == "cardinal":
            counter = self._counter.fullmatch(text, max(0, second.end - 4), second.end)
            counter = counter or self._counter.search(text, max(0, second.end - 4), second.end)
            if counter and counter.end() == second.end and counter[1] in self._native:
                left, _ = self._with_counter(text, at, amount, counter)
                return self.forms["range"].replace("{a}", left).replace("{b}", second.said)
        month = _MONTH_RANGE.fullmatch(text, at, second.end)
        if month and not first.unit:
            first = replace(first, said=self.month(month[1]), kind="date")
        if first.said.endswith("일") and not first.said.endswith(" 일") and second.said.endswith(" 일"):
            second = replace(second, said=second.said.removesuffix(" 일") + "일")
        return super().ranged(text, at, first, second)

    def _date(self, text: str, at: int) -> Said | None:
        """Also a year of two figures with its day: "26.6.10."."""
        found = super()._date(text, at)
        short = None if found else patterns.DOTTED_SHORT_DATE.match(text, at)
        if short is None or _VERSION.search(text, max(0, at - 5), at) or not patterns.is_day(short[2], short[3]):
            return found
        return Said(self.day_said(*short.groups()), "date", short.end())

    def _counted_plainly(self, text: str, second: Said) -> str:
        """The end of a range of ranks in Sino-Korean: "제3~5장"."""
        figure = _FIGURE_WITH_WORD.search(text, max(0, second.end - 12), second.end)
        return f"{self.numerals.whole(figure[1])} {figure[2]}".rstrip() if figure else second.said

    def special(self, text: str, at: int) -> Said | None:
        if number := self._hotlines.at(text, at):
            return Said(self.telephone_digits(number), "telephone", at + len(number))
        if found := _CLASS_OF.match(text, at):
            return Said(self.serial_digits(found[0]), "year", found.end())
        if found := _QUARTER.match(text, at):
            return Said(self.numerals.one_by_one(found[1] + "4"), "ordinal", found.end())
        if found := _FRACTION.match(text, at):
            return Said(self.fraction("", found[2], found[1]), "fraction", found.end())
        if (found := _SCORE.match(text, at)) and not self._is_decade(text, at, found):
            a, b = self.numerals.whole(found[1]), self.numerals.whole(found[2])
            return Said(self.forms["score"].replace("{a}", a).replace("{b}", b), "score", found.end())
        if (found := _ONE_OR_TWO.match(text, at)) and self._is_about(text, at, found):
            return Said("".join(f"{self.native(int(n))}, " for n in _each(found[1])), "cardinal", found.start(2))
        if (found := _RANK.match(text, at)) and 1 <= int(found[1]) <= len(self._ranks):
            return Said(self._ranks[int(found[1]) - 1], "ordinal", found.end())
        if found := _ORDINAL.match(text, at):
            return Said(
                self._native_or_sino(int(found[1]), "번째", self.numerals.whole(found[1]))[0], "ordinal", found.end()
            )
        return None

    def _led(self, text: str, at: int) -> Said | None:
        """Also a year of two figures before its event, said one by one: "'88 서울 올림픽"."""
        found = _EVENT_OF.match(text, at) if text[at - 1] == "'" else None
        if found is None or (found[0][0] != "0" and self._counter.match(text, found.end())):
            return super()._led(text, at)
        return Said(self.serial_digits(found[0]), "year", found.end())

    def _is_decade(self, text: str, at: int, found: re.Match[str]) -> bool:
        """People of an age before another figure ("30대 25%"), unless a word tells of a match."""
        aged = int(found[1]) in range(10, 100, 10) and _AGED.match(text, at)
        return bool(aged) and not self.near_a_score(text, at, found.end())

    def _is_about(self, text: str, at: int, found: re.Match[str]) -> bool:
        """Whether two numbers in a row share a counter ("1, 2명"), and are no ranks nor the end of a longer list."""
        counter = self._counter.match(text, found.end())
        if counter is None or counter[1] not in self._native - _MAY_NAME or not _in_order(*_each(found[1]), found[2]):
            return False
        return not _IN_A_LIST.search(text, max(0, at - 4), at)

    def is_time(self, text: str, found: Said) -> bool:
        return super().is_time(text, found) or text[found.end - 1] in _TIMES

    def range_word(self, before: str) -> str:
        return self.forms["range_word_after_a_time" if before in _TIMES else "range_word"]

    def _dash(self, text: str, at: int, before: str) -> Said | None:
        found = super()._dash(text, at, before)
        if found and found.end == at + 1 and before in _TIMES:
            return Said(self.forms["range_word_after_a_time"], "range", found.end)
        return found

    def bare_sign(self, text: str, at: int) -> Said | None:
        if text[at] == "=" and self._ends_in_consonant(text, at):
            return Said(_PARTICLES[0], "symbol", at + 1)
        found = super().bare_sign(text, at)
        if found is None:
            return None
        left = found.said.lstrip() if text[at - 1 : at].isspace() else found.said
        return replace(found, said=left.rstrip() if text[at + 1 : at + 2].isspace() else left)

    def _ends_in_consonant(self, text: str, at: int) -> bool:
        """Whether what is said before `at` closes with a consonant, as 은 and 는 ask."""
        start = max(0, at - 20)
        figure = _FIGURE_AT_END.search(text, start, at)
        found = figure and (self.quantities.money(text, figure.start()) or self.quantities.said(text, figure.start()))
        last = found.said[-1:] if found and not text[found.end : at].strip() else text[at - 1 : at]
        if "가" <= last <= "힣":
            return (ord(last) - ord("가")) % 28 > 0
        return last in _ENDS_IN_CONSONANT and not (last.isupper() and text[at - 2 : at - 1].isalnum())


def _each(listed: str) -> list[str]:
    return [n.strip() for n in listed.split(",")]


def _in_order(*numbers: str) -> bool:
    return all(int(last) == int(first) + 1 for first, last in pairwise(numbers))


def verbaliser(data: LanguageData, speller: Speller) -> Korean:
    """Korean forms its numbers by itself; ICU's serve as a check (see `cjk_numbers`)."""
    return Korean(data)
