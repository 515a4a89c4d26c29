"""Russian ordinals after figures ("5-й"), compounds ("20-летний") and Roman figures ("XX век", "Пётр I")."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.ru_clock import GAP
from promptprep.speaking.languages.ru_context import RussianContext
from promptprep.speaking.languages.ru_nouns import beside, of_name
from promptprep.speaking.languages.ru_numbers import RussianNumbers
from promptprep.speaking.roman import roman
from promptprep.speaking.ruled import Handler, one_of, reading

_AND_NEXT = re.compile(r"[ \u00a0](?:и|или)[ \u00a0]\d")
_FIRST = re.compile(r"\d{1,4} ?[-–—] ?\Z")
_YEAR_LETTERS = 4
_ONE_ADJECTIVE = "(?:[ыио]й|[ая]я|[ое]е|[ое]го|[ое]му|ую|[ыи]м)"
_HALF_NEXT = re.compile(r"[ \u00a0](?:пол|четв)\.")
_AND_BEFORE = re.compile(r"\d[-‑]о?й(?:,| и| или)[ \u00a0]\Z")
_OF_YEARS = re.compile(r"гг?\.\s*\Z")
_CYRILLIC = str.maketrans("ХІ", "XI")  # look-alikes that people type for Roman figures

_CENTURIES = {"веках": "prepositional", "векам": "dative", "веками": "instrumental"}


class RussianOrdinals:
    """Handlers for figures and Roman figures that are said as ordinals."""

    def __init__(self, data: LanguageData, numbers: RussianNumbers, context: RussianContext) -> None:
        self._data = data
        self._numbers = numbers
        self._context = context
        self._endings: Mapping[str, list[str]] = data.get("spoken", "ordinal_endings")
        self._ending = re.compile(rf"(\d{{1,15}})[-‑]({one_of(self._endings)})(?![\w-])(?:{GAP}(гг?\.))?")
        self._nouns: Mapping[str, str] = data.get("spoken", "numbered_nouns")
        self._months: Mapping[str, int] = data.get("spoken", "months")
        self._queens = tuple(data.get("spoken", "feminine_rulers.stems"))
        self._kings = tuple(data.get("spoken", "masculine_rulers.stems"))
        self._prefixes: Mapping[str, str] = data.get("spoken", "compound_prefixes")

    def figure_rules(self) -> list[tuple[str, Handler]]:
        return [
            (rf"(\d{{1,9}})[-‑](?:х|ти|ми)(?:{GAP}|-)([а-яё]{{3,}}{_ONE_ADJECTIVE})(?!\w)", self._compound),
            (rf"(\d{{1,15}})[-‑]({one_of(self._endings)})(?![\w-])(?:{GAP}(гг?\.|км(?!\w)))?", self._with_ending),
            (rf"(\d{{1,4}})(?={GAP}?[-–—]{GAP}?\d{{1,4}}[-‑]{one_of(self._endings)}(?![\w-]))", self._first_of_two),
            (r"(\d{1,2})[-‑](к(?:а|и|е|у|ой|ам|ами|ах))(?!\w)", self._group),
            (r"1,5[-‑]([а-яё]{4,})", self._half_compound),
            (r"(\d{1,3}),5[-‑]([а-яё]{4,})", self._and_half_compound),
            (r"(\d{1,9})[-–—](\d{1,9})[-‑]([а-яё]{4,})", self._two_compounds),
            (r"(\d{1,9})[-‑]([а-яё]{4,})", self._compound),
            (rf"(\d{{1,9}}){GAP}?%[-‑]?(н[а-яё]{{2,}})", self._of_per_cent),
        ]

    def letter_rules(self) -> list[tuple[str, Handler]]:
        others = rf"(?:,{GAP}[IVXL]+){{0,4}}"
        last = rf"{GAP}?(?:и|по|до|[-–—]){GAP}(?:\w+{GAP})?[IVXL]+"
        return [
            (rf"([IVXLCХІ]+){GAP}?[-–—]{GAP}?([IVXLCХІ]+){GAP}(вв?\.|век(?:а|ов|ах|ам)?(?!\w))", self._centuries),
            (rf"([IVXLХІ]{{1,7}})(?={others}{last}{GAP}(век\w*|в\.|вв\.|столети))", self._earlier),
            (rf"([IVX](?![\w.]{{1}}\w)|[IVXLCDMХІ]{{2,}})(?!\w)(?:{GAP}(в\.|кв\.))?", self._roman),
        ]

    def _with_ending(self, found: re.Match[str]) -> Reading | None:
        digits, ending, text = found[1], found[2], found.string
        after = self._context.words_after(text, found.end())
        noun = after[0] if after else ""
        if ending in ("ти", "ми") or (ending == "х" and digits in ("2", "3", "4") and not noun.startswith("год")):
            return reading(found, self._numbers.cardinal(digits, "masculine", "genitive"), "cardinal")
        if ending == "ю" and noun.endswith(("ами", "ями")):
            return reading(found, self._numbers.cardinal(digits, "masculine", "instrumental"), "cardinal")
        gender, case = self._shown(found, noun)
        said = self._numbers.ordinal(digits, gender, case)
        if found[3] == "км":
            said += f" {self._numbers.noun('километр').one(case)}"
        elif found[3]:
            year = self._numbers.noun("год")
            several = "годов" if case == "genitive" else year.many(case)
            said += f" {several if gender == 'plural' else year.one(case)}"
        return reading(found, said, "ordinal")

    def _first_of_two(self, found: re.Match[str]) -> Reading | None:
        """ "60–70-е годы" -> "шестидесятые—семидесятые": the first number has the ending of the second."""
        second = self._ending.search(found.string, found.end())
        if not second:
            return None
        after = self._context.words_after(found.string, second.end())
        gender, case = self._shown(second, after[0] if after else "")
        return reading(found, self._numbers.ordinal(found[1], gender, case), "ordinal")

    def _shown(self, found: re.Match[str], noun: str) -> tuple[str, str]:
        """Gender and case that a written ending shows beside the noun that follows."""
        digits, ending, text = found[1], found[2], found.string
        gender, case = self._endings[ending]
        first = _FIRST.search(text, max(0, found.start() - 8), found.start())
        before = self._context.word_before(text, first.start() if first else found.start())
        if ending in ("й", "ой") and self._is_oblique(found, noun, before):
            gender, case = "feminine", "prepositional"
        if (
            ending in ("е", "ые")
            and noun not in self._months
            and (noun.endswith(("ы", "и", "а")) or noun == "же" or found[3] == "гг." or int(digits[-1]) == 0)
        ):
            gender = "plural"
        elif ending == "м":
            gender, case = self._m_form(noun, before)
        elif ending == "й" and before.endswith("ла") and not (noun and noun not in self._context.governs):
            gender, case = "feminine", "instrumental"
        elif ending == "х" and before in ("в", "о", "на", "при"):
            gender, case = "plural", "prepositional"
        return gender, case

    def _is_oblique(self, found: re.Match[str], noun: str, before: str) -> bool:
        """ "3-й школы" is "третьей"; "2-й и 3-й этапы" are each "второй" and "третий"."""
        text = found.string
        if _HALF_NEXT.match(text, found.end()):
            return True
        if _AND_NEXT.match(text, found.end()):
            return before in self._context.governs
        if _AND_BEFORE.search(text, max(0, found.start() - 10), found.start()) and noun.endswith(("ы", "и")):
            return False
        return noun.endswith(("е", "и", "ы", "ах", "ях", "ам", "ям")) and not noun.endswith("ие")

    def _m_form(self, noun: str, before: str) -> tuple[str, str]:
        """ "-м" is "в пятом", "с пятым" or "к девяностым годам"."""
        if noun.endswith(("ам", "ям")):
            return "plural", "dative"
        placed = not before or before in ("в", "во", "на", "о", "об", "при") or noun.endswith(("ах", "ях", "е"))
        return "masculine", "prepositional" if placed else "instrumental"

    def _compound(self, found: re.Match[str]) -> Reading | None:
        """ "20-летний" -> "двадцатилетний": the number in the genitive, written as one word with the rest."""
        return reading(found, self._prefix(found[1]) + found[2], "ordinal")

    def _two_compounds(self, found: re.Match[str]) -> Reading:
        """ "10–15-процентный" -> "десяти-пятнадцатипроцентный"."""
        return reading(found, f"{self._prefix(found[1])}-{self._prefix(found[2])}{found[3]}", "ordinal")

    def _half_compound(self, found: re.Match[str]) -> Reading:
        """ "1,5-метровый" -> "полутораметровый"."""
        return reading(found, self._data.get("spoken", "one_and_a_half.oblique") + found[1], "ordinal")

    def _and_half_compound(self, found: re.Match[str]) -> Reading:
        """ "2,5-часовой" -> "двух с половиной часовой"."""
        return reading(
            found, f"{self._prefix(found[1])} {self._data.get('spoken', 'and_a_half')} {found[2]}", "ordinal"
        )

    def _group(self, found: re.Match[str]) -> Reading | None:
        """ "в 20-ку" -> "двадцатку"."""
        stem = self._data.maybe("spoken", f"groups.{int(found[1])}")
        return reading(found, stem + found[2], "cardinal") if stem else None

    def _of_per_cent(self, found: re.Match[str]) -> Reading:
        """ "10%-ный" -> "десятипроцентный": the ending stays as written."""
        stem = self._numbers.noun("процент").one("nominative")
        return reading(found, f"{self._prefix(found[1])}{stem}{found[2]}", "percent")

    def _prefix(self, digits: str) -> str:
        words = self._numbers.cardinal(digits, "masculine", "genitive").split()
        return "".join(self._prefixes.get(word, word) for word in words)

    def _roman(self, found: re.Match[str]) -> Reading | None:
        n = roman(found[1].translate(_CYRILLIC))
        text = found.string
        if not n or text[found.start() - 1 : found.start()].isalnum():
            return None
        after = self._context.words_after(text, found.end(1))
        if found[2]:
            case = self._century_case(text, found.start())
            noun = self._numbers.noun("век" if found[2] == "в." else "квартал")
            return reading(found, f"{self._numbers.ordinal(n, 'masculine', case)} {noun.one(case)}", "roman")
        ruler = self._ruler(text, found.start())
        if ruler and ruler[2]:
            return reading(found, self._numbers.ordinal(n, *ruler[:2]).capitalize(), "roman", end=found.end(1))
        agreed = self._beside_noun(text, found, after)
        if agreed:
            return reading(found, self._numbers.ordinal(n, *agreed), "roman", end=found.end(1))
        if ruler:
            return reading(found, self._numbers.ordinal(n, *ruler[:2]).capitalize(), "roman", end=found.end(1))
        is_year = len(found[1]) >= _YEAR_LETTERS and 1000 < n <= 2100
        if len(found[1]) == 1 or (n > 50 and not is_year):
            return None
        return reading(found, self._numbers.cardinal(n), "roman", end=found.end(1))

    def _earlier(self, found: re.Match[str]) -> Reading | None:
        """ "конец XIX — начало XX века": the noun stands at the end, the case shows before."""
        n = roman(found[1].translate(_CYRILLIC))
        if not n or found.string[found.start() - 1 : found.start()].isalnum():
            return None
        case = _CENTURIES.get(found[2]) or self._century_case(found.string, found.start())
        return reading(found, self._numbers.ordinal(n, "masculine", case), "roman")

    def _century_case(self, text: str, start: int) -> str:
        before = self._context.word_before(text, start)
        if before in ("в", "во", "о"):
            return "prepositional"
        if before == "с" or _OF_YEARS.search(text, max(0, start - 6), start):
            return "genitive"
        return self._context.governs.get(before, "genitive" if before else "nominative")

    def _beside_noun(self, text: str, found: re.Match[str], after: list[str]) -> tuple[str, str] | None:
        before = self._context.word_before(text, found.start())
        entry = self._nouns.get(after[0]) if after else None
        named_before = entry is None and before in self._nouns and not before.startswith("век")
        if named_before:
            entry = self._nouns[before]
        if entry:
            gender, case = entry.split()
            if named_before and before.endswith("."):
                return gender, self._case_of_short(text, found.start(), before)
            return gender, "dative" if case == "prepositional" and before in ("к", "по") else case
        if after and text[found.end(1) + 1 : found.end(1) + 2].isalpha():
            return beside(after[0])
        return None

    def _case_of_short(self, text: str, start: int, before: str) -> str:
        """Of "в гл. II": the case that stands before the noun written short."""
        asked = self._context.word_before(text, text.rindex(before[:-1], 0, start) if before[:-1] in text else start)
        if asked in ("в", "во", "на", "о"):
            return "prepositional"
        return {"с": "genitive", "по": "dative"}.get(asked) or self._context.governs.get(asked, "nominative")

    def _ruler(self, text: str, start: int) -> tuple[str, str, bool] | None:
        """Gender and case of the name before ("Пётр I", "Петра I", "Екатерины II"), and whether it is a known one."""
        name = re.search(r"([А-ЯЁ][а-яё]+) ?$", text[max(0, start - 24) : start])
        if not name:
            return None
        word = name[1]
        woman = word.startswith(self._queens)
        return *of_name(word, woman=woman), woman or word.startswith(self._kings)

    def _centuries(self, found: re.Match[str]) -> Reading | None:
        first, last = (roman(found[i].translate(_CYRILLIC)) for i in (1, 2))
        if not first or not last:
            return None
        word = found[3]
        forms = {"века": "nominative", "веков": "genitive", "веках": "prepositional", "векам": "dative"}
        case = forms.get(word) or self._century_case(found.string, found.start())
        said = " — ".join(self._numbers.ordinal(n, "masculine", case) for n in (first, last))
        if word in forms:
            return reading(found, said, "roman", end=found.end(2))
        return reading(found, f"{said} {self._numbers.noun('век').many(case)}", "roman")
