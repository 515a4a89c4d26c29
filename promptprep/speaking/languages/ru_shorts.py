"""Russian nouns that are written short, in the case of their place: "на ул. Мира", "жители с. Липки", "в тыс. руб."."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.ru_context import REACH, RussianContext
from promptprep.speaking.languages.ru_numbers import CASES, RussianNumbers

_CASE_OF_ENDING = {
    "ого": "genitive", "его": "genitive", "ому": "dative", "ему": "dative", "ом": "prepositional",
    "ем": "prepositional", "ую": "accusative", "юю": "accusative", "ым": "instrumental", "им": "instrumental",
}  # fmt: skip
_BESIDE = re.compile(r"(?:^|[^\w.-])([А-Яа-яЁё-]{2,}?|\d{1,3}-)(ого|его|ому|ему|ом|ем|ую|юю|ым|им|ой|ей|го|му|й|м)\s\Z")
_FIGURE_ENDINGS = {"го": "genitive", "му": "dative", "м": "prepositional"}
_OBLIQUE_SAME = ("ой", "ей", "й")  # an adjective of a feminine noun in four cases
_AND = re.compile(r"(?<![\w.])([а-яё]{1,6}[.-][а-яё]{0,3}) ?[А-ЯЁ][\w-]*(?: [А-ЯЁ][\w-]*)? (?:и|или)\s\Z")
_OF_LIST = re.compile(r"(?<![\w.])([а-яё]{1,6}[.-][а-яё]{0,3}) ?[А-ЯЁ][\w-]*(?: [А-ЯЁ][\w-]*)?, \Z")
_PART_OF = re.compile(r"(?<!\w)(?:ч|п|пп|ст|гл|абз|разд)\.\s?\d+(?:\.\d+)?\s\Z")  # "п. 3 ст. 15"
_WITH_PERSON = re.compile(r"[а-яё]{2,6}[.-][а-яё]{0,3} (?:[А-ЯЁ]\. ?){0,2}[А-ЯЁ][а-яё]+(?:ым|им|ом|ем)(?!\w)")
_MOVED = re.compile(r"([А-Яа-яЁё]+)\s(?:[Вв]о?|[Нн]а)\s\Z")
_NO_NOUN = re.compile(
    r"(?:с[яь]|(?<!те)ли|л[ао]?|[еёиуюая]т|ть|[нт]о|[аиеьй]те|(?<!набережн)[ая]я|[ыи]й|[ое]е|ые|(?<![аеё]н)ие|\.|-)$"
)
_MONEY = re.compile(r"(?:(тыс\.|млн\.?|млрд\.?|трлн\.?)[ \u00a0]?)?(руб|коп|долл)\.(?:/(мес|сут)\.)?")
_STATED_IN = re.compile(r"(?<!\w)[Вв]\s(?:(?:тыс\.|мл[нр]д?\.?)\s)?(?:(?:руб|долл)\.(?:,| и| или)\s)?\Z")
_SCALE_BEFORE = re.compile(r"(?<!\w)(?:млн|млрд|трлн)[ \u00a0]\Z")
_LONGEST_SCALE = 5
_SHORTEST_NOUN = 4


class RussianShorts:
    """Answers what a noun written short is said as, from the words on its left."""

    def __init__(self, data: LanguageData, numbers: RussianNumbers, context: RussianContext) -> None:
        self._numbers = numbers
        self._context = context
        self._full: Mapping[str, str] = data.get("spoken", "money")
        self._scales: Mapping[str, str] = data.get("spoken", "scales")
        self._per: Mapping[str, str] = {**data.get("spoken", "units"), **data.get("spoken", "per")}
        self._moving = tuple(data.get("spoken", "moving.stems"))
        self._deputies = frozenset(data.get("spoken", "deputies.words"))
        self._named = frozenset(data.get("spoken", "named_beside.words"))
        self.contracted = self._contractions(data.get("spoken", "contracted"))

    def _contractions(self, table: Mapping[str, str]) -> dict[str, str]:
        """ "р-н", "р-не": what is left out in the middle, in each case of the singular."""
        said: dict[str, str] = {}
        for short, word in table.items():
            head, _, tail = short.partition("-")
            for case in reversed(CASES):
                form = self._numbers.noun(word).one(case)
                said[f"{head}-{form[len(word) - len(tail) :]}"] = form
        return said

    def gender(self, phrase: str) -> str:
        return self._numbers.noun(phrase.partition(" | ")[0].rpartition(" ")[2]).gender

    def noun(self, phrase: str, case: str) -> str:
        """ "художественн фильм" in `case`: a noun, or a stem of an adjective with its noun."""
        head, _, tail = phrase.partition(" | ")
        stem, _, word = head.rpartition(" ")
        noun = self._numbers.noun(word)
        said = noun.one(case) + f" {tail}" * bool(tail)
        if stem:
            pattern = "velar" if stem[-1] in "кгх" else "hard"
            return f"{self._numbers.adjective(f'{stem}|{pattern}', noun.gender, case)} {said}"
        return said

    def case(self, text: str, start: int, *, owned: bool = False, gender: str = "feminine") -> str:
        """What a preposition, an adjective, a short noun joined on, or (`owned`) a noun before `start` asks for."""
        if _PART_OF.search(text, max(0, start - REACH), start):
            return "genitive"
        for _ in range(3):
            left = max(0, start - REACH)
            first = _AND.search(text, left, start) or _OF_LIST.search(text, left, start)
            if not first or (text[start - 2] == "," and not text.startswith(first[1], start)):
                break
            start = first.start()
        if adjective := _BESIDE.search(text, max(0, start - REACH), start):
            return self._beside(text, adjective, gender)
        before = self._context.word_before(text, start)
        if before in self._deputies:
            return "genitive"
        asked = self._asked(text, start, before)
        if before == "с" and _WITH_PERSON.match(text, start):
            return "instrumental"
        if asked or not owned or before in self._named or len(before) < _SHORTEST_NOUN or _NO_NOUN.search(before):
            return asked or "nominative"
        return "genitive"

    def _asked(self, text: str, start: int, before: str) -> str:
        if before in ("в", "во", "на"):
            moved = _MOVED.search(text, max(0, start - REACH), start)
            return "accusative" if moved and moved[1].lower().startswith(self._moving) else "prepositional"
        return {"с": "genitive", "по": "dative"}.get(before) or self._context.governs.get(before, "")

    def money_alone(self, text: str, dot: int, floor: int) -> Reading | None:
        """ "в тыс. руб." -> "в тысячах рублей": money written short where no number stands before it."""
        start = next((dot - len(w) for w in ("руб", "коп", "долл", "тыс") if text.endswith(w, floor, dot)), -1)
        if start < floor:
            return None
        if scale := _SCALE_BEFORE.search(text, max(floor, start - _LONGEST_SCALE), start):
            start = scale.start()
        found = _MONEY.match(text, start)
        if not found or text[start - 1 : start].isalnum():
            return None
        place = "prepositional" if _STATED_IN.search(text, max(0, start - REACH), start) else "genitive"
        scaled, money, per = found.groups()
        said = self._numbers.noun(self._full[f"{money}."]).many("genitive" if scaled else place)
        if scaled:
            said = f"{self._numbers.noun(self._scales[scaled]).many(place)} {said}"
        if per:
            said += f" в {self._numbers.noun(self._per[f'{per}.']).one('accusative')}"
        end = found.end() - (found[0].endswith(".") and not text[found.end() :].strip())
        return Reading(Span(start, end), said, "money")

    def _beside(self, text: str, adjective: re.Match[str], gender: str) -> str:
        """ "в Московской обл.", "во 2-й пол.", "Пермского кр."."""
        ending = adjective[2]
        shown = _CASE_OF_ENDING.get(ending) or _FIGURE_ENDINGS.get(ending)
        if shown:
            return shown
        if gender == "masculine" and ending in _OBLIQUE_SAME:
            return "nominative"
        start = adjective.start(1)
        before = self._context.word_before(text, start)
        return self._asked(text, start, before) or ("genitive" if before or ending != "й" else "nominative")
