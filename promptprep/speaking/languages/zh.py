"""Chinese (Mandarin): 两 and 二, years digit by digit, 百分之 before its number."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.cjk import Cjk
from promptprep.speaking.languages.cjk_numbers import LONGEST, chinese, numerals_of
from promptprep.speaking.languages.cjk_quantities import Said
from promptprep.speaking.languages.cjk_text import Amount, folded

_YEAR = re.compile(r"([12]\d{3})(?=\s?(?:年|款|届|赛季))")
_YEARS = re.compile(
    r"([12]\d{3})\s?[-~至到/]\s?([12]\d{3}|\d\d)(?=\s?(?:年|赛季|学年|财年))|"
    r"(1\d{3}|20\d\d)-(1\d{3}|20\d\d)(?![\d.,-]|\s?[A-Za-z元米个人名次公千万])"
)
_NUMERALS = "零一二三四五六七八九十百千万亿点两"
_CHRISTIAN_YEAR = re.compile(r"(?<=公元|元前)(\d{3,4})(?=\s?年)")
_SHORT_YEAR = re.compile(r"(0\d(?=\s?[年届级])|[4-9]\d(?=年\d{1,2}月))")
_KNOWN_BY_YEAR = (
    r"出生|毕业|生人|生的|入学|参军|入伍|入党|世界杯|奥运|亚运|春晚|抗洪|洪水|香港|"
    r"的?[春夏秋冬]天|[到至-](?:0\d|\d{4})年"
)
_YEAR_OF_A_LIFE = re.compile(
    rf"(?<![第\d.,])(?:[5-9]\d(?=年(?:{_KNOWN_BY_YEAR}))|[7-9]\d(?=[级届]的?(?:毕业|学生|校友|同学|本科|新生|研究生)))"
)
_EARLY_YEAR = re.compile(r"([1-9]\d\d)(?=年(?![代级]))")
_EARLY_YEARS = re.compile(r"(?<=\()([1-9](?!00)\d\d)-([1-9]\d{2,3})(?=年?[),，;])")
_OPENS_A_YEAR = re.compile(r"(?:\A|[(。;!?\n])\Z")
_DATES_A_YEAR = re.compile(r"(?:[于自从在]|年[到至~-])\Z")
_AFTER_A_YEAR = re.compile(r"年(?:[,，)、~-]|[春夏秋冬](?!天)|\d{1,2}月)")
_LIFETIME = 20  # years that two early years in brackets lie apart at least: "101-105" is a score
_TYPE = re.compile(r"(\d{3})(?:-(\d{3}))?(?![\d.,%])")
_LETTERED_TYPE = re.compile(r"\d{1,2}(?=[A-Z]{1,2}(?![A-Za-z]))")
_HYPHENED_TYPE = re.compile(r"-(\d{1,3})(?![\d.,%°℃度米]|\s?℃)")
_BLANK_GROUPS = re.compile(r"\d{1,3}(?: \d{3})+(?:\.(\d+))?(?![\d.])")
_CLOSES_A_TOPIC = re.compile(r"#[^#\s]{1,30}#\s?话题")
_LONG_NUMBER = re.compile(r"(\d{5,12})(?=[\"'」』]?号)")
_DECADE = re.compile(r"([05-9][05]|10)(?=(?:[、,，和与及/至到][05-9][05])?后(?![天来续面期半台果院秒分]|\w?[天月日]))")
_PADDED_MINUTE = re.compile(r"0[1-9](?=[分秒])")
_PLATE = re.compile(r"(?<=[A-Z][·・])\d{4,6}(?!\d)")
_LINES = re.compile(r"(?:360|480|720|1080|1440|2160)(?=[pPi](?![A-Za-z]))")
_ROOM_BEHIND = re.compile(r"(?<=[栋幢座元楼])\d{3,4}(?=[室号房的，。、；,.;\s)）]|\Z)")
_EXTENSION = re.compile(r"(?<=\d转)\d{2,5}(?![\d.])")
_SERVICE = re.compile(r"955\d\d(?=[，。、；,;\s)）]|\Z)|(?:955\d\d|100\d\d|12[13]\d\d)(?=热线|客服|平台)")
_MOBILE = re.compile(r"1[3-9]\d{9}(?!\d)")
_TITLED = re.compile(r"(Mrs?\.|Ms\.|Dr\.|Prof\.)\s?([一-龥]{1,3}?)(?=[的和与及在说是将、，。！？,!?\s)）]|\Z)")
_TAG_BEFORE = re.compile(r"(?:\A|\s)#[^\s#\d]+\Z")
_YEAR_AT_END = re.compile(r"((?:19|20)\d\d)(?=[\s,.!?，、；。！？)）》”]|\Z)")
_YEAR_OF_TAG = re.compile(r"((?:19|20)\d\d)(?=[一-龥])(?![人名个個米元次年])")
_TAG_LENGTH = 40
_CENTIMETRES = re.compile(r"(?<=\d米)[1-9]\d(?![\d.,:%~-]|\s?[A-Za-z个個人名米厘分年月日秒度层件条])")
_LONGEST_AMOUNT = 6  # digits of a figure that may still be an amount beside a word for calling
_HOTLINE = re.compile(r"11\d|12[0-2]|12[13]\d\d|955\d\d|100\d\d")
_STAFF = re.compile(r"[人位](?!次)")
_ORDINAL = re.compile(r"(\d{1,6})(?:st|nd|rd|th)(?![A-Za-z])")


class _Script:
    """Tells traditional from simplified copy: by the tag, else by the characters of a text."""

    def __init__(self, tag: str, traditional: Mapping[int, str]) -> None:
        subtags = frozenset(tag.split("-"))
        self._told = False if subtags & {"Hans", "CN", "SG"} else True if subtags & {"Hant", "TW", "HK", "MO"} else None
        self._marks = re.compile(f"[{''.join(traditional.values())}]")
        self._others = re.compile(f"[{''.join(map(chr, traditional))}]")

    def is_traditional(self, text: str) -> bool:
        if self._told is not None:
            return self._told
        found = len(self._marks.findall(text))
        return found > 0 and found > len(self._others.findall(text))


class Chinese(Cjk):
    """What Chinese says its own way."""

    exchange = frozenset()

    def __init__(self, data: LanguageData) -> None:
        super().__init__(data, numerals_of(data.get("spoken", "number"), chinese))
        get = data.get
        self._liang_before = tuple(get("spoken", "number.two_is_liang_before"))
        self._er_before = tuple(get("spoken", "number.two_is_er_before"))
        self._titles: Mapping[str, str] = get("spoken", "abbreviations")
        self._year_zero: str = get("spoken", "number.year_zero")
        self._telephone_one: str = get("spoken", "number.telephone_one")
        self._span_after = re.compile(rf"\s?年(?:{'|'.join(get('spoken', 'context.span_after'))})")
        self._span_before = tuple(get("spoken", "context.span_before"))
        rooms = "|".join(get("spoken", "context.room_after"))
        self._room = re.compile(rf"(?:(\d{{1,2}})-)?(\d{{3,4}})(?=(?:{rooms})(?!内))")
        events = "|".join(get("spoken", "context.year_before"))
        self._event = re.compile(rf"(?:{events})\Z")
        self._year_without_word = re.compile(
            rf"((?:19|20)\d\d)(?=#|\s?(?:{events})|[QH][1-4](?!\d)|\s[A-Z]{{2}}\d{{0,3}}(?![A-Za-z]))"
        )
        names = "|".join(get("spoken", "context.type_names"))
        self._type_name = re.compile(rf"(?:{names}|(?<!\d)(?:{'|'.join(get('spoken', 'context.type_marks'))}))-?\Z")
        self._maker = re.compile(rf"(?:{'|'.join(get('spoken', 'context.makers'))})\s?\Z")
        self._amount_after = re.compile(rf"\s?(?:{'|'.join(get('spoken', 'context.amount_after'))})")
        pairs: list[str] = get("spoken", "traditional.both_ways")
        self._simplified = {ord(p[1]): p[0] for p in [*pairs, *get("spoken", "traditional.for_reading")]}
        self._traditional = {ord(p[0]): p[1] for p in pairs}
        self._words: dict[str, str] = get("spoken", "traditional.words")
        self._words_pattern = re.compile("|".join(sorted(self._words, key=len, reverse=True)))
        self._folded = lru_cache(maxsize=8)(lambda text: folded(text).translate(self._simplified))
        self._is_traditional = lru_cache(maxsize=8)(_Script(data.tag, self._traditional).is_traditional)

    def folded(self, text: str) -> str:
        """Traditional characters read as their simplified ones."""
        return self._folded(text)

    def read(self, text: str, at: int, floor: int) -> Reading | None:
        found = super().read(text, at, floor)
        if found is None or not self._is_traditional(text):
            return found
        return replace(found, said=self._written(found.said), otherwise=tuple(map(self._written, found.otherwise)))

    def _written(self, said: str) -> str:
        """In traditional characters."""
        written = said.translate(self._traditional)
        return self._words_pattern.sub(lambda found: self._words[found[0]], written)

    def figure(self, amount: Amount, following: str, before: str) -> str:
        """两 where the number is 2 and a measure word follows; after 第 always 二; "52.00亿" loses its zeros."""
        if len(amount.fraction) > 1 and amount.power:
            amount = replace(amount, fraction=amount.fraction.rstrip("0"))
        if amount.whole == "2" and not amount.fraction:
            if amount.power:
                return self.numerals.two + amount.power
            if self._counts(following):
                return self.numerals.digits[2] if before.endswith(("第", "初")) else self.numerals.two
        return self.numerals.number(amount.whole, amount.fraction) + amount.power

    def year(self, digits: str) -> str:
        return self.numerals.one_by_one(digits).replace(self.numerals.digits[0], self._year_zero)

    def hour(self, digits: str) -> str:
        return self.forms["hour"].replace("{n}", self.figure(Amount(digits.lstrip("0") or "0"), "点", ""))

    def minute(self, digits: str) -> str:
        lone = digits.startswith("0") and digits != "00"
        return (self.numerals.digits[0] if lone else "") + super().minute(digits)

    def second(self, digits: str) -> str:
        return (self.numerals.digits[0] if digits.startswith("0") else "") + super().second(digits)

    def counted(self, text: str, at: int, amount: Amount) -> Said | None:
        """A minute with its zero behind the hour: "4点07分"."""
        if not (_PADDED_MINUTE.match(text, at) and text[at - 1 : at] in ("点", "时", "分")):
            return None
        return Said(self.numerals.digits[0] + self.numerals.whole(amount.whole), "clock", amount.end)

    def day_figures(self, month: str, day: str) -> str:
        return self.numerals.one_by_one(month + day)

    def short_year(self, text: str, at: int) -> Said | None:
        return Said(self.numerals.one_by_one(text[at : at + 2]), "year", at + 2)

    def telephone_digits(self, digits: str) -> str:
        """One is 幺 where numbers are called out."""
        return self.numerals.one_by_one(digits).replace(self.numerals.digits[1], self._telephone_one)

    def telephone_otherwise(self, said: str) -> tuple[str, ...]:
        other = said.replace(self._telephone_one, self.numerals.digits[1])
        return (other,) if other != said else ()

    def ranged(self, text: str, at: int, first: Said, second: Said) -> str:
        """两 in "2-3个" as in "2个"."""
        noun = second.said.lstrip(_NUMERALS) if second.unit else text[second.end : second.end + 6]
        if first.said == self.numerals.digits[2] and not first.unit and not second.prefix and self._counts(noun):
            first = replace(first, said=self.numerals.two)
        return super().ranged(text, at, first, second)

    def _counts(self, noun: str) -> bool:
        noun = noun.lstrip()
        return noun.startswith(self._liang_before) and not noun.startswith(self._er_before)

    def is_counted(self, text: str, run: re.Match[str], longest: int = _LONGEST_AMOUNT) -> bool:
        if len(run[0]) > longest or (_HOTLINE.fullmatch(run[0]) and _STAFF.match(text, run.end())):
            return False
        following = text[run.end() : run.end() + 6]
        return bool(
            self._amount_after.match(following)
            or self._counts(following)
            or self.quantities.measured(text, run.end(), run[0])
        )

    def _letters(self, text: str, at: int) -> Said | None:
        """A Western title behind the name it is written before: "Dr.王"."""
        found = _TITLED.match(text, at) if text[at] in "DMP" else None
        if found is None or (text[at - 1 : at].isascii() and text[at - 1 : at].isalpha()):
            return super()._letters(text, at)
        return Said(found[2] + self._titles[found[1]], "abbreviation", found.end())

    def special(self, text: str, at: int) -> Said | None:
        if said := self._early_year(text, at) or self._type(text, at) or self._in_groups(text, at):
            return said
        if found := _YEARS.match(text, at):
            first, last = found[1] or found[3], found[2] or found[4]
            form = "{a}至{b}" if "至" in found[0] else self.forms["range"]
            years = form.replace("{a}", self.year(first)).replace("{b}", self.year(last))
            return Said(years, "range", found.end(), (), True)
        if (found := _YEAR.match(text, at)) and not self._is_span(text, at, found.end()):
            other = (self.numerals.whole(found[1]),) if found[1].endswith("00") else ()
            return Said(self.year(found[1]), "year", found.end(), other, True)
        if found := _CHRISTIAN_YEAR.match(text, at):
            cardinal = self.numerals.whole(found[1])
            return Said(self.year(found[1]), "year", found.end(), (cardinal,), True)
        if found := _SHORT_YEAR.match(text, at) or _YEAR_OF_A_LIFE.match(text, at):
            return Said(self.year(found[0]), "year", found.end(), (), True)
        if found := _DECADE.match(text, at):
            return Said(self.numerals.one_by_one(found[1]), "year", found.end())
        if (found := _LONG_NUMBER.match(text, at)) and text[at - 1 : at] != "第":
            return self._serial_number([found[0]], found.end())
        if found := _CENTIMETRES.match(text, at):
            figures = self.numerals.one_by_one(found[0].rstrip("0"))
            return Said(figures, "cardinal", found.end(), (self.numerals.whole(found[0]),))
        if found := self._room.match(text, at):
            return self._room_said(found)
        found = self._year_without_word.match(text, at) or _year_of_a_tag(text, at) or self._year_of_an_event(text, at)
        if found:
            return Said(self.numerals.one_by_one(found[1]), "year", found.end(), (self.numerals.whole(found[1]),))
        if text[at - 1 : at] == "#" and (found := _YEAR_OF_TAG.match(text, at)):
            return Said(self.numerals.one_by_one(found[1]), "year", found.end(1))
        if found := _PLATE.match(text, at) or _LINES.match(text, at):
            return self._serial_number([found[0]], found.end())
        if found := _ROOM_BEHIND.match(text, at):
            return self._serial_number([found[0]], found.end())
        if found := _MOBILE.match(text, at) or _EXTENSION.match(text, at) or _SERVICE.match(text, at):
            return self._telephone([found[0]], found.end())
        if found := _ORDINAL.match(text, at):
            return Said(self.forms["ordinal"].replace("{n}", self.numerals.whole(found[1])), "ordinal", found.end())
        return None

    def _early_year(self, text: str, at: int) -> Said | None:
        """A year of three figures where no length of time can stand: "(701年-762年)", "于581年", "755年，"."""
        if (lives := _EARLY_YEARS.match(text, at)) and int(lives[2]) - int(lives[1]) > _LIFETIME:
            said = self.forms["range"].replace("{a}", self.year(lives[1])).replace("{b}", self.year(lives[2]))
            return Said(said, "range", lives.end(), (), True)
        found = _EARLY_YEAR.match(text, at)
        if found is None or found[1].endswith("00") or self._span_after.match(text, found.end()):
            return None
        before = max(0, at - 2)
        length = text.startswith(("的", "里", "时", "中"), found.end() + 1)
        dated = _DATES_A_YEAR.search(text, before, at) and not length
        opened = _OPENS_A_YEAR.search(text, before, at) and _AFTER_A_YEAR.match(text, found.end())
        if not (dated or opened):
            return None
        return Said(self.year(found[1]), "year", found.end(), (self.numerals.whole(found[1]),), True)

    def _type(self, text: str, at: int) -> Said | None:
        """A type's number behind its maker or name: "波音737", "长征2F"."""
        before = max(0, at - 5)
        if (found := _LETTERED_TYPE.match(text, at)) and self._type_name.search(text, before, at):
            return Said(self.numerals.whole(found[0]), "serial", found.end())
        found = _TYPE.match(text, at)
        if found is None or not self._maker.search(text, before, at) or self.is_counted(text, found):
            return None
        return self._serial_number([n for n in found.groups() if n], found.end())

    def _hyphened_code(self, text: str, at: int) -> Said | None:
        found = _HYPHENED_TYPE.match(text, at)
        if found is None or not self._type_name.search(text, max(0, at - 5), at):
            return super()._hyphened_code(text, at)
        by_figure = len(found[1]) > 2 or found[1].startswith("0")
        said = self.numerals.one_by_one(found[1]) if by_figure else self.numerals.whole(found[1])
        return Said(said, "serial", found.end())

    def _in_groups(self, text: str, at: int) -> Said | None:
        """Figures in groups of three with blanks before a unit or measure word: "384 400公里"."""
        found = _BLANK_GROUPS.match(text, at)
        if found is None or text[at - 1 : at] in (" ", "-", ".") or not self.is_counted(text, found, LONGEST):
            return None
        said = self.numerals.number(found[0].partition(".")[0].replace(" ", ""), found[1] or "")
        return self.quantities.measured(text, found.end(), said) or Said(said, "cardinal", found.end())

    def _hash(self, text: str, at: int) -> Said | None:
        """Silent where the copy itself calls the tag a topic: "参加#科普周#话题"."""
        found = super()._hash(text, at)
        return replace(found, said="") if found and _CLOSES_A_TOPIC.match(text, at) else found

    def _year_of_an_event(self, text: str, at: int) -> re.Match[str] | None:
        """The year behind a name: "世界杯2026"."""
        found = _YEAR_AT_END.match(text, at)
        return found if found and self._event.search(text, max(0, at - 6), at) else None

    def house_number(self, digits: str) -> str:
        """A room behind its house figure by figure."""
        return self.numerals.one_by_one(digits) if len(digits) > 2 else super().house_number(digits)

    def _room_said(self, found: re.Match[str]) -> Said:
        """ "301室", "2-301室": the room figure by figure, behind the block's number."""
        block = self.numerals.whole(found[1]) + self.forms["between_house_numbers"] if found[1] else ""
        return Said(block + self.numerals.one_by_one(found[2]), "serial", found.end())

    def _is_span(self, text: str, at: int, end: int) -> bool:
        """Whether a round number of years is a length of time: "1500年前", "约2000年"."""
        if text[end - 1] != "0":
            return False
        return bool(self._span_after.match(text, end)) or text[max(0, at - 3) : at].rstrip().endswith(self._span_before)


def _year_of_a_tag(text: str, at: int) -> re.Match[str] | None:
    """The year that ends a tag: "#中秋2026"."""
    found = _YEAR_AT_END.match(text, at)
    return found if found and _TAG_BEFORE.search(text[max(0, at - _TAG_LENGTH) : at]) else None


def verbaliser(data: LanguageData, speller: Speller) -> Chinese:
    """Chinese forms its numbers by itself; ICU's serve as a check (see `cjk_numbers`)."""
    return Chinese(data)
