"""Russian abbreviations, initialisms and signs."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.ru_context import REACH, RussianContext
from promptprep.speaking.languages.ru_nouns import beside, of_name
from promptprep.speaking.languages.ru_numbers import RussianNumbers
from promptprep.speaking.languages.ru_shorts import RussianShorts
from promptprep.speaking.ruled import Abbreviations, Handler, reading

_VOWELS = frozenset("АЕЁИОУЫЭЮЯAEIOUY")
_CONSONANTS = re.compile(r"[^АЕЁИОУЫЭЮЯAEIOUY]+")
_NAME = re.compile(r"[ \u00a0]?[А-ЯЁ][а-яё]")
_AMOUNT = re.compile(r"\d[ \u00a0]?\Z")
_HOUSE_LEFT = re.compile(r"(?:(?:д\.|дом|корп\.|к\.) ?\d+[а-я]?,?|\b(?:ул|пл|пер|пр|пр-т|наб|ш)\. ?[А-ЯЁ][а-яё]+,) \Z")
_SEVERAL = ("дел", "лиц", "мест", "прав", "сил", "войск", "организаций", "учреждений", "услуг")
_ENDS_IN_EY = ("музей", "лицей", "юбилей", "хоккей", "клей", "змей", "трофей")
_ONES_OF_MEN = ("тора", "ера", "ёра", "сора", "врача", "ника", "ста", "теля", "нта", "ога", "зала", "дома", "сада")
_SAINT = re.compile(r"[Сс]в\. ?([А-ЯЁ][а-яё]+)")
_RANGE = re.compile(r"[ \u00a0]?\d+[ \u00a0]?[-–—][ \u00a0]?\d")
_OPENER = re.compile(r"\s+([А-ЯЁ][а-яё]*)(?![\w.])")
_GOES_ON = re.compile(r"[ \u00a0]?[а-яё\d]")
_SECTION_BEFORE = re.compile(r"§ ?\d+(?:\.\d+)?(?:,| и| или) \Z")
_IN_WORD = re.compile(r"[^\W₀-₉²³]")
_LONGEST_SPELLED = 6  # a longer run of capitals is a word in capitals


class RussianLetters:
    """Handlers for what is written short."""

    def __init__(self, data: LanguageData, numbers: RussianNumbers, context: RussianContext) -> None:
        self._numbers = numbers
        self._context = context
        self._shorts = RussianShorts(data, numbers, context)
        self._declined: Mapping[str, str] = data.get("spoken", "declined_abbreviations")
        self._acronyms: Mapping[str, str] = data.get("spoken", "acronyms")
        self._words = frozenset(data.get("spoken", "spoken_as_words.words"))
        self._spelled = frozenset(data.get("spoken", "spoken_by_letters.words"))
        self._before_number: Mapping[str, str] = data.get("spoken", "before_a_number")
        self._before_name: Mapping[str, str] = data.get("spoken", "before_a_name")
        shown = self._shorts.contracted
        entries = data.get("spoken", "short_adjectives").items()
        self._ranks = {short: tuple(stem.split(": ")) for short, stem in entries}
        self._section = numbers.noun(data.get("spoken", "symbols")["§"])
        self._holy: str = data.get("spoken", "holy")
        self._women = (*data.get("spoken", "feminine_saints.stems"), *data.get("spoken", "feminine_rulers.stems"))
        self._ranked = Abbreviations(dict.fromkeys(self._ranks, ""))
        begun = {short.capitalize(): said.capitalize() for short, said in shown.items()}
        self._abbreviations = Abbreviations({**data.get("spoken", "abbreviations"), **begun, **shown, **self._declined})
        capital = {short[0].upper() + short[1:]: noun for short, noun in self._before_number.items()}
        self._numbered = Abbreviations({**self._before_number, **capital})
        self._fixed: Mapping[str, str] = data.get("spoken", "before_a_number_fixed")
        self._numbered_fixed = Abbreviations(self._fixed)
        self._named = Abbreviations(self._before_name)
        self._everyday = frozenset(data.get("spoken", "also_words.abbreviations"))
        self._before_opener = frozenset(data.get("spoken", "also_words.before_openers"))
        self._openers = frozenset(data.get("spoken", "also_words.openers"))

    def letter_rules(self) -> list[tuple[str, Handler]]:
        return [(r"[А-ЯЁA-Z]{2,}(?:-\d+)?(?![а-яёa-z])", self._initialism)]

    def abbreviation(self, text: str, dot: int, floor: int) -> Reading | None:
        """What is written short with its first full stop or hyphen at `dot`."""
        found = self._numbered.around(text, dot, floor)
        if found and re.match(r"[ \u00a0\u202f]?[\dIVX]", text[found[1] : found[1] + 2]):
            word = self._before_number.get(found[2], found[3])
            if found[2] == "стр." and _HOUSE_LEFT.search(text, max(0, found[0] - REACH), found[0]):
                word = "строение"
            if _RANGE.match(text, found[1]) or found[2] == "пп.":
                said = self._numbers.noun(word).many(self._shorts.case(text, found[0]))
                return Reading(Span(found[0], found[1]), self._capital(text, found[0], said), "abbreviation")
            return self._case_of(text, found, word)
        found = self._numbered_fixed.around(text, dot, floor)
        if found and re.match(r"[ \u00a0\u202f]?\d", text[found[1] : found[1] + 2]):
            return Reading(Span(found[0], found[1]), self._capital(text, found[0], found[3]), "abbreviation")
        if money := self._shorts.money_alone(text, dot, floor):
            return money
        if rank := self._rank(text, dot, floor) or self._saint(text, dot, floor):
            return rank
        if text[dot] == "." and (city := self._city(text, dot, floor)):
            return city
        found = self._named.around(text, dot, floor)
        if found and _NAME.match(text, found[1]) and not _AMOUNT.search(text, max(0, found[0] - 3), found[0]):
            return self._case_of(text, found, found[3], owned=True)
        found = self._abbreviations.around(text, dot, floor)
        if not found:
            return None
        start, end, written, said = found
        if lowered := next((w for w in (written, written[0].lower() + written[1:]) if w in self._declined), ""):
            return self._case_of(text, found, self._declined[lowered], owned=True)
        if self._ends_sentence(text, end, written):
            return None
        if "|" in said:
            adverb, _, stem = said.rpartition(" ")
            said = " ".join(filter(None, (adverb, self._agreeing(stem, text, start, end))))
        return Reading(Span(start, self._end(text, end)), self._capital(text, start, said), "abbreviation")

    def _case_of(self, text: str, found: tuple[int, int, str, str], word: str, *, owned: bool = False) -> Reading:
        start, end, _, _ = found
        case = self._shorts.case(text, start, owned=owned, gender=self._shorts.gender(word))
        said = self._shorts.noun(word, case)
        return Reading(Span(start, self._end(text, end)), self._capital(text, start, said), "abbreviation")

    def _saint(self, text: str, dot: int, floor: int) -> Reading | None:
        """ "в храме св. Николая" -> "святого Николая"."""
        start = dot - 2
        name = _SAINT.match(text, start) if start >= floor else None
        if not name or text[start - 1 : start].isalnum():
            return None
        said = self._numbers.adjective(self._holy, *of_name(name[1], woman=name[1].startswith(self._women)))
        return Reading(Span(start, dot + 1), self._capital(text, start, said), "abbreviation")

    def _rank(self, text: str, dot: int, floor: int) -> Reading | None:
        """ "ст. лейтенант" -> "старший лейтенант": an adjective that is short only before certain nouns."""
        found = self._ranked.around(text, dot, floor)
        if not found:
            return None
        stem, nouns = self._ranks[found[2].lower()]
        after = self._context.words_after(text, found[1])
        if not after or not after[0].startswith(tuple(nouns.split(", "))):
            return None
        said = self._agreeing(stem, text, *found[:2])
        return Reading(Span(found[0], found[1]), self._capital(text, found[0], said), "abbreviation")

    def _agreeing(self, stem: str, text: str, start: int, end: int) -> str:
        """The adjective of `stem` beside the noun that follows: "т. н. суперлуние" -> "так называемое"."""
        after = self._context.words_after(text, end)
        free = ("masculine", self._shorts.case(text, start, owned=True))
        gender, case = self._beside(after[0], free) if after else free
        return self._numbers.adjective(stem, gender, case)

    def _beside(self, noun: str, free: tuple[str, str]) -> tuple[str, str]:
        """Gender and case of the noun, whose ending alone may be of two; `free` has the case of the place."""
        shown, asked = beside(noun) or free, free[1]
        if noun in _SEVERAL or (noun.endswith("ей") and noun not in _ENDS_IN_EY):
            return "plural", "genitive"
        if noun in self._context.feminine_e:
            return "feminine", "prepositional"
        if shown == ("plural", "nominative") and asked == "genitive":
            return "feminine", "genitive"
        if shown == ("masculine", "genitive") and asked == "nominative" and not noun.endswith(_ONES_OF_MEN):
            return "feminine", "nominative"
        if shown == ("masculine", "dative") and asked != "dative":
            return ("masculine", "prepositional") if asked == "prepositional" else ("feminine", "accusative")
        return shown

    def _city(self, text: str, dot: int, floor: int) -> Reading | None:
        """ "г. Москва" -> "город Москва", "в г. Москве" -> "в городе Москве"."""
        if text[dot - 1 : dot] not in ("г", "Г") or dot - 1 < floor or (dot > 1 and text[dot - 2].isalnum()):
            return None
        name = re.match(r"\.[ \u00a0]?([А-ЯЁ][а-яё-]+)", text[dot : dot + 40])
        if not name or text[max(0, dot - 3) : dot - 1].strip().isdecimal():
            return None
        found = (dot - 1, dot + 1, "г.", "")
        bare = self._context.word_before(text, dot - 1) == ""
        if bare and name[1].endswith(("ы", "и")) and not name[1].endswith(("ьи", "чи")):
            return Reading(Span(dot - 1, dot + 1), self._numbers.noun("город").one("genitive"), "abbreviation")
        return self._case_of(text, found, "город", owned=True)

    def _ends_sentence(self, text: str, end: int, written: str) -> bool:
        """Whether what looks short is a word and its stop: "хлеб рос.", "помогли им. Они ушли"."""
        if written in self._everyday:
            return not _GOES_ON.match(text, end)
        follows = _OPENER.match(text, end) if written in self._before_opener else None
        return follows is not None and follows[1] in self._openers

    def section(self, found: re.Match[str]) -> Reading:
        """ "по § 4" -> "по параграфу", "нарушение §§ 4 и 5" -> "нарушение параграфов"."""
        start = found.start()
        while earlier := _SECTION_BEFORE.search(found.string, max(0, start - REACH), start):
            start = earlier.start()
        case = self._shorts.case(found.string, start, owned=True, gender=self._section.gender)
        said = self._section.one(case) if len(found[1]) == 1 else self._section.many(case)
        return reading(found, self._capital(found.string, found.start(), said), "symbol")

    @staticmethod
    def _capital(text: str, start: int, said: str) -> str:
        return said[0].upper() + said[1:] if text[start].isupper() else said

    @staticmethod
    def _end(text: str, end: int) -> int:
        """The full stop of an abbreviation that also ends the sentence stays for the pause."""
        if (
            text[end - 1] == "."
            and re.match(r"\s*$|\s+[А-ЯЁ]", text[end : end + 3])
            and text[end : end + 1] in ("", "\n")
        ):
            return end - 1
        return end

    def _initialism(self, found: re.Match[str]) -> Reading | None:
        text, start = found.string, found.start()
        if text[start - 1 : start].isalnum() or _IN_WORD.match(text, found.end()):
            return None
        letters, _, digits = found[0].partition("-")
        said = self._letters(letters)
        if said is None and not digits:
            return None
        number = f" {self._numbers.cardinal(digits)}" if digits else ""
        return reading(found, (said or letters) + number, "initialism")

    def _letters(self, letters: str) -> str | None:
        """How a run of capitals is said; None where it is a word."""
        if letters in self._acronyms:
            return self._acronyms[letters]
        if letters in self._words or len(letters) > _LONGEST_SPELLED:
            return None
        if _says_as_word(letters) and letters not in self._spelled:
            return None
        return " ".join(letters)


def _says_as_word(letters: str) -> bool:
    """Whether capitals read as a word ("МИД", "ГОСТ", "ЮНЕСКО") and not as letters ("США", "СССР")."""
    if len(letters) == 3:
        return [c in _VOWELS for c in letters] == [False, True, False]
    clusters = _CONSONANTS.findall(letters)
    return len(letters) > 3 and any(c in _VOWELS for c in letters) and all(len(c) <= 2 for c in clusters)
