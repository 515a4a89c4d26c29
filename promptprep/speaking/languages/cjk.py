"""The verbaliser that Japanese, Chinese and Korean share: signs, symbols and letters over the rules for digits.

Wording is data; what differs in grammar is a method that the language's own module overrides.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages import cjk_text as patterns
from promptprep.speaking.languages.cjk_latin import Latin
from promptprep.speaking.languages.cjk_numbers import Numerals
from promptprep.speaking.languages.cjk_quantities import Said
from promptprep.speaking.languages.cjk_signs import Signs
from promptprep.speaking.languages.cjk_text import folded

_DIGITS = re.compile(r"\d+")
_HALF_DAY_BEFORE = re.compile(r"([ap])\.?m\.?\s?(?=\d{1,2}(?::\d\d|([時时点點시])))", re.IGNORECASE)
_COUNTED_AT_END = re.compile(
    r"(?:[ap]\.m\.|[時分半\d]頃|[時分半]ごろ|時半|시 ?반|쯤|\d[年期]生|[\d万千百][円名人個泊度階台枚本元块位명개인])\Z"
)
_SHORT_YEAR = re.compile(r"\d\d\s?[年년]")
_WORD_AND_FIGURE = re.compile(r"(?:[가-힣]{1,4}|[一-龥]{1,3})\s?\d")
_GOES_ON_AS_A_TAG = re.compile(r"[一-龥ァ-ヺ가-힣A-Za-z](?<![은는이가을를에의로])")
_CODE_NUMBER = re.compile(r"-(\d{1,4})(?=[号號호型式機기]|[^\w.,%°℃]|\Z)(?![.,]\d)")
_ERA = re.compile(r"(BCE?|AD|CE|B\.C\.|A\.D\.)\s?(?=\d)")
_RATE = re.compile(r"(?:0\.)?(\d{3})(?![\d.])")
_OPENS_A_DECIMAL = re.compile(r"[\s(+\-±~=/一-龥ァ-ヺ]")
_TAG_LENGTH = 40
_DATED = re.compile(r"\d{1,4}\s?[年月日時时点년월일시](?![間间간])")
_PARTS_OF_A_SPAN = frozenset("旬初末底春夏秋冬朝夜晚순말초年月日号時时点年년월일시")
_BEFORE_AN_END = " (（、,：:／/\n"
_COUNTED_TO = "円名人個泊度階台枚本元%명개원인"
_LETTER_TO_LETTER = re.compile(r"[^A-Za-z0-9]?[A-Z]~[A-Z][^A-Za-z0-9]?")
_BESIDE_LETTERS = " 、,"
_CIRCLED = re.compile(r"[①-⑳㉑-㉟㊱-㊿Ⅰ-ⅿ]")
_CALLED = re.compile(r"\d{4,6}(?![\d.,]|年|년)")
_CHANGE = re.compile(r"\+\d[\d,.]*\s?(?:[%‰℃°]|度)")
_NAMED_END = (
    r"[APap]\.?[Mm]\.?\s?[0-9０-９]|(?:[上下]午|早上|晚上|凌晨|中午|午[前後]|오[전후])\s?[0-9０-９]|"
    r"(?:周|週|星期|礼拜)[一二三四五六日天]|[월화수목금토일]요일"
)
_ENDS_IN_A_NAME = re.compile(rf"\s?(?:{_NAMED_END})")
_WEEKDAY_AT_END = re.compile(r"(?:周|週|星期|礼拜)[一二三四五六日天]\Z|요일\Z")
_STARTS = (
    r"[(（](?=[0-9０-９+月火水木金土日祝周星礼월화수목금토일株有財社学医独股주유재사])|[0-9０-９$€£¥₩₹＄￡￥￦+＋±°℃℉%％‰&＆=＝×÷→√∞≈≠≤≥≦≧№★☆⭐℡〒㈱㈲㈜≒①-⑳㉑-㉟㊱-㊿Ⅰ-ⅿ½⅓⅔¼-⅞Α-Ωα-ω#＃@＠⁰¹²³⁴-⁹⁻]|\d|"
    r"[▲△](?=[0-9０-９])|[~〜～∼]|[<>＜＞](?=\s?[0-9０-９])|(?<=[원엔러로안ル円元])/(?=[달유원엔위ドユ円人美欧日])|"
    r"[-−－–](?=\s?(?:[A-Z]{1,2})?[0-9０-９$€£¥₩＄￡￥￦])|[A-Za-zＡ-Ｚａ-ｚ]+|"
    rf"[-−－–](?={_NAMED_END})"
)


class Cjk(Signs):
    """`Verbaliser` for one of the three languages."""

    starts = re.compile(_STARTS)
    spaced = False

    def __init__(self, data: LanguageData, numerals: Numerals) -> None:
        super().__init__(data, numerals)
        self.latin = Latin(data, self)
        self._tags_close = bool(data.get("spoken", "context.tags_close"))
        self._said_once: Mapping[str, str] = data.get("spoken", "said_once")
        self._told_before = re.compile(rf"({'|'.join(sorted(self._said_once, key=len, reverse=True))})\s?\Z")
        rates = data.get("spoken", "context.in_tenths")
        self._rate_words = re.compile(rf"(?:{'|'.join(rates)})(?:[はがも]|[은는이])?\s?(?:0?\.\d{{3}}\D{{1,3}})?\Z")
        self._bodies: Mapping[str, str] = data.get("spoken", "bracketed")
        days = data.get("spoken", "context.weekdays")
        measured = data.get("spoken", "context.may_be_negative")
        self._measured_word = re.compile(rf"(?:{'|'.join(measured)})\Z")
        self._holiday: str = data.get("spoken", "context.holiday")
        self._holiday_name: str = data.get("spoken", "context.holiday_name")
        day = f"(?:[{days}]|{self._holiday})"
        self._weekday = re.compile(rf"\(({day}(?:[·・,、/~-]?{day}){{0,6}})\)")
        self._named_weekday = re.compile(rf"\((?:周|星期|礼拜)[{days}天]\)|\([{days}](?:曜日?|요일)\)")
        self._route = re.compile(
            rf"~[一-龥ァ-ヺー가-힣]{{2,6}}?(?:駅|空港)?\s?(?:{'|'.join(data.get('spoken', 'context.route'))})"
        )
        self._day_names = frozenset(days)
        self._to_a_weekday = re.compile(rf"~[{days}](?:요일|曜|(?![가-힣一-龥ァ-ヺ]))")
        self._a_day = re.compile(f"{self._holiday}|.")

    def folded(self, text: str) -> str:
        """The text in the one form that the rules are written for, character for character."""
        return folded(text)

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        plain = self.folded(text)
        character = plain[at]
        if character.isdecimal():
            if at > floor and text[at - 1] != "．" and (led := self._led(plain, at)):
                return Reading(Span(at - 1, led.end), self.placed(plain, at - 1, led.said), led.kind, led.otherwise)
            found = self._tenths(plain, at, at) or self.latin.abbreviated(plain, at) or self._figure(plain, at)
        elif character.isascii() and character.isalpha():
            found = self._letters(plain, at)
        else:
            found = self._sign(plain, at)
            if found and text[at] in "—―" and _is_a_pause(text, at, found):
                return None
        if found is None:
            return None
        said = self.placed(plain, at, self._once(plain, at, found.said))
        return Reading(Span(at, found.end), said, found.kind, found.otherwise)

    def _once(self, text: str, at: int, said: str) -> str:
        """Without the word that the copy has already put before the figure: "秒速30km/s"."""
        before = self._told_before.search(text, max(0, at - 6), at)
        return said.replace(self._said_once[before[1]], "", 1) if before else said

    def _led(self, text: str, at: int) -> Said | None:
        """A figure behind the sign of something left out: ".325", "'98年"."""
        if text[at - 1] == "'" and (
            found := patterns.DOTTED_SHORT_DATE.match(text, at) or patterns.SHORT_DATE.match(text, at)
        ):
            is_day = patterns.is_day(found[2], found[3])
            return Said(self.day_said(*found.groups()), "date", found.end()) if is_day else None
        if text[at - 1] == "'":
            return self.short_year(text, at) if _SHORT_YEAR.match(text, at) else None
        if text[at - 1] == "." and (rate := self._tenths(text, at, at - 1)):
            return rate
        if text[at - 1] == "." and (at < 2 or _OPENS_A_DECIMAL.match(text, at - 2)):
            found = _DIGITS.match(text, at)
            return Said(self.numerals.number("0", found[0]), "decimal", found.end()) if found else None
        return None

    def _tenths(self, text: str, at: int, before: int) -> Said | None:
        """A batting average and its like, in parts of ten, hundred and thousand; `at` the figure, ".325" or "0.325"."""
        found = _RATE.match(text, at) if self.forms["tenths"] else None
        if found is None or not self._rate_words.search(text, max(0, before - 16), before):
            return None
        parts = zip(found[1], self.forms["tenths"], strict=False)
        said = self.forms["blank"].join(self.numerals.whole(n) + unit for n, unit in parts if n != "0")
        return Said(said, "decimal", found.end()) if said else None

    def short_year(self, text: str, at: int) -> Said | None:
        """A year without its century, at the figure."""
        return self._figure(text, at)

    def _letters(self, text: str, at: int) -> Said | None:
        if era := _ERA.match(text, at):
            return Said(self.eras[era[1]] + self.forms["blank"], "year", era.end())
        if half := _HALF_DAY_BEFORE.match(text, at):
            found = self._clock(text, half.end())
            if found:
                return Said(self._half_day(half[1]) + found.said, "clock", found.end)
            if half[2]:
                return Said(self._half_day(half[1]), "clock", half.end())
        if text[at] in "xX" and text[at - 1 : at].isdecimal() and text[at + 1 : at + 2].isdecimal():
            return Said(self.symbols["×"], "symbol", at + 1)
        return self.latin.said(text, at)

    def _sign(self, text: str, at: int) -> Said | None:
        character = text[at]
        before = text[at - 1 : at]
        if character in "-~":
            return self._dash(text, at, before)
        if character in "+±":
            return self._signed(text, at, "plus" if character == "+" else "plus_minus")
        if character in self.quantities.currencies:
            money = self.quantities.money(text, at)
            return money and (self._range_from(text, at, money) or money)
        if character == "(":
            return self._bracketed(text, at)
        if not character.isascii() and unicodedata.category(character) in ("No", "Nl"):
            return self._numeric(text, at)
        if character == "#":
            return self._hash(text, at)
        if character in "★☆⭐":
            return self._stars(text, at)
        if character == "№":
            return self.latin.number_sign(text, at) or self.bare_sign(text, at)
        if character == "⁻" and (found := patterns.EXPONENT.match(text, at)):
            return Said(self.raised("", patterns.exponent(found[0])), "symbol", found.end())
        if character == "@" and (name := self.latin.name(text, at)):
            return name
        if character in "<>/→":
            return self._between(text, at, character)
        return self.bare_sign(text, at)

    def _bracketed(self, text: str, at: int) -> Said | None:
        """An area code, the weekday behind a date ("12月18日(金)"), or what kind of body a name is ("(株)")."""
        if (said := self._bodies.get(text[at : at + 3])) and not text[at - 1 : at].isdecimal():
            return Said(said if text[at + 3 : at + 4].isalnum() else said.strip(), "abbreviation", at + 3)
        if found := patterns.BRACKETED.match(text, at):
            return self._telephone(_DIGITS.findall(found[0]), found.end())
        before = text[at - 2 : at].rstrip(".")[-1:]
        if not (before in self.after_unit or before.isdecimal()):
            return None
        if found := self._named_weekday.match(text, at):
            said = found[0][1:-1]
        elif found := self._weekday.match(text, at):
            said = self._weekdays(found[1])
        else:
            return None
        blank = self.forms["blank"]
        return Said(blank + said + blank * text[found.end() : found.end() + 1].isalnum(), "date", found.end())

    def _weekdays(self, written: str) -> str:
        """ "月" as Monday, "土日" and "土・日" as two days, "月~金" from one to the other."""
        first, _, last = re.sub("[~-]", "~", written).partition("~")
        if last:
            return (
                self.forms["range_of_time"].replace("{a}", self._weekdays(first)).replace("{b}", self._weekdays(last))
            )
        days = [d for d in self._a_day.findall(written) if d not in "·・,、/"]
        named = [self._holiday_name if d == self._holiday else self.forms["weekday"].replace("{n}", d) for d in days]
        return self.forms["between_days"].join(named)

    def _hash(self, text: str, at: int) -> Said | None:
        """ "#1" is a number's sign; before a letter it opens a tag, and one that closes a tag is silent."""
        number = _DIGITS.match(text, at + 1)
        closed = number and self._tags_close and text[number.end() : number.end() + 1] == "#"
        called = _CALLED.match(text, at + 1)
        if called and not closed and called[0][:2] not in ("19", "20"):
            return Said(self.symbols["#"] + self.telephone_digits(called[0]), "telephone", called.end())
        if number and (closed or (len(number[0]) > 2 and _GOES_ON_AS_A_TAG.match(text, number.end()))):
            return Said(self.latin.signs["#"] + self.forms["after_tag"], "hashtag", at + 1)
        if number:
            return Said(self.forms["numbered"].replace("{n}", self.numerals.whole(number[0])), "ordinal", number.end())
        if self._tags_close and text[max(0, at - _TAG_LENGTH) : at].rpartition(" ")[2].count("#") % 2:
            return Said("", "hashtag", at + 1)
        if text[at + 1 : at + 2].isalpha() and not (text[at - 1 : at].isascii() and text[at - 1 : at].isalnum()):
            return Said(self.latin.signs["#"] + self.forms["after_tag"], "hashtag", at + 1)
        return self.bare_sign(text, at) if text[at - 1 : at].isascii() and text[at - 1 : at].isalpha() else None

    def _dash(self, text: str, at: int, before: str) -> Said | None:
        named = _ENDS_IN_A_NAME.match(text, at + 1)
        if named and text[max(0, at - 2) : at].strip()[-1:].isdecimal():
            return Said(self.forms["range_word_of_time"], "range", at + 1 + text[at + 1 : at + 2].isspace())
        if text[at] == "-" and before.isascii() and (before.isalnum() or before == ")"):
            return None
        measured = self._measured_word.search(text, max(0, at - 4), at)
        if text[at] == "-" and before.isalpha() and not measured and _DATED.match(text, at + 1):
            return Said(self.range_word(before), "range", at + 1) if before in _PARTS_OF_A_SPAN else None
        counted = before in self.after_unit or bool(_COUNTED_AT_END.search(text, max(0, at - 4), at))
        if named and (counted or _WEEKDAY_AT_END.search(text, max(0, at - 3), at)):
            return Said(self.range_word(before), "range", at + 1)
        if text[at] == "~":
            return self._wave(text, at, counted or before.isdecimal(), before)
        if counted:
            return Said(self.forms["range_word"], "range", at + 1)
        return self._signed(text, at, "minus")

    def _wave(self, text: str, at: int, counted: bool, before: str) -> Said | None:
        """ "〜" between two ends of a range, or open behind a time ("19:30〜"); elsewhere it only draws a vowel out."""
        if (text[at + 1 : at + 2].isdecimal() and before.isalnum()) or (
            counted and text[at + 1 : at + 3].strip().isdecimal()
        ):
            return Said(self.forms["range_word"], "range", at + 1)
        circled = _CIRCLED.match(before) and _CIRCLED.match(text, at + 1)
        if circled or _LETTER_TO_LETTER.fullmatch(text[max(0, at - 2) : at + 3].strip(_BESIDE_LETTERS)):
            return Said(self.forms["range_word"], "range", at + 1)
        if counted and _WORD_AND_FIGURE.match(text, at + 1):
            return Said(self.range_word(before), "range", at + 1)
        if before.isalpha() and self._route.match(text, at):
            return Said(self.forms["range_word"], "range", at + 1)
        if before in self._day_names and not text[at - 2 : at - 1].isalpha() and self._to_a_weekday.match(text, at):
            return Said(self.forms["range_word_of_time"], "range", at + 1)
        if self.forms["until"] and not before.strip(_BEFORE_AN_END):
            return self._until(text, at)
        return Said(self.forms["from_then"], "range", at + 1) if counted and self.forms["from_then"] else None

    def _until(self, text: str, at: int) -> Said | None:
        """ "〜18:00", "〜500円": only the end of a range."""
        found = self._time_or_quantity(text, at + 1)
        if found is None:
            return None
        counter = (
            text[found.end : found.end + 1] if text[found.end - 1].isdecimal() and found.kind == "cardinal" else ""
        )
        if counter and counter not in self.after_unit and counter not in _COUNTED_TO:
            return None
        said = found.said + counter
        until = "" if text.startswith(self.forms["until"], found.end + len(counter)) else self.forms["until"]
        return Said(said + until, "range", found.end + len(counter), (), True)

    def range_word(self, before: str) -> str:
        """What is said between two ends that are read apart; `before` the last sign of the first."""
        return self.forms["range_word"]

    def _signed(self, text: str, at: int, name: str) -> Said | None:
        spaced = text[at + 1 : at + 2] == " "
        start = at + 1 + spaced
        if text[at] == "+" and (number := patterns.INTERNATIONAL.match(text, at)) and len(number[0]) > 8:
            said = self._telephone(_DIGITS.findall(number[0]), number.end())
            return Said(self.forms["plus_called"] + said.said, "telephone", said.end)
        joined = text[at - 1 : at].isalnum() and (text[at - 1 : at].isascii() or not _CHANGE.match(text, at))
        if name == "plus" and (joined or (spaced and at)):
            return self.bare_sign(text, at)
        if fraction := self.slashed(text, start, always=True) or self._vulgar(text, start):
            return self.with_sign(name, fraction)
        if not text[start : start + 1].isdecimal():
            money = self.quantities.money(text, start)
            return self.with_sign(name, money) if money else self.bare_sign(text, at)
        if name == "minus" and (code := self._hyphened_code(text, at)):
            return code
        found = self._range(text, start) or self.quantities.said(text, start)
        return found and self.with_sign(name, found)

    def _hyphened_code(self, text: str, at: int) -> Said | None:
        """A type's number behind its name in the script's own letters: "歼-20", "のぞみ-3号"."""
        found = _CODE_NUMBER.match(text, at)
        before = text[at - 1 : at]
        if found is None or not before.isalpha() or self._measured_word.search(text, max(0, at - 4), at):
            return None
        said = self.numerals.whole(found[1])
        return Said(said, "serial", found.end(), (self.forms["minus"] + said,))


def _is_a_pause(text: str, at: int, found: Said) -> bool:
    """Whether a long dash parts thoughts: between blanks, doubled, or before a number that no unit makes negative."""
    beside = text[at - 1 : at], text[at + 1 : at + 2]
    return " " in beside or not {"—", "―"}.isdisjoint(beside) or found.kind == "cardinal"
