"""Russian nouns beside a number: what their endings show, and those that make the number other than a cardinal.

"5 этаж" is the fifth, "1 сутки" are "одни", "1,5 часа" are "полтора".
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.speaking.languages.ru_context import RussianContext
from promptprep.speaking.languages.ru_numbers import CASES, RussianNumbers, plural_class

_ANOTHER = re.compile(r"(?:,|\s(?:и|или))\s\d{1,3}(?=[ \u00a0,])")
_UP_TO = re.compile(r"\sпо\s\d{1,3}(?=[ \u00a0])")
_FROM = re.compile(r"\b[Сс]о?\s\d{1,3}\sпо\s\Z")
_ONE_BEFORE = re.compile(r"\d(?:,|\s(?:и|или))\s\Z")
_LETTERED = re.compile(r"(?:-?|[ \u00a0])(?:[А-ЯЁ]|[«\"„][А-ЯЁ][»\"“])(?=[ \u00a0]класс)")  # "9 «Б» класс"
_RANGED = ("век", "класс", "курс")  # of these a range in the genitive is of ranks: "для 1–4 классов"
_DIRECT = ("nominative", "accusative")
# Endings of an adjective -> gender and case.
_ADJECTIVES = (
    (("ый", "ий", "ой"), ("masculine", "nominative")),
    (("ая", "яя"), ("feminine", "nominative")),
    (("ое", "ее"), ("neuter", "nominative")),
    (("ого", "его"), ("masculine", "genitive")),
    (("ому", "ему"), ("masculine", "dative")),
    (("ую", "юю"), ("feminine", "accusative")),
    (("ом", "ем"), ("masculine", "prepositional")),
    (("ые", "ие"), ("plural", "nominative")),
    (("ых", "их"), ("plural", "genitive")),
)
_INSTRUMENTAL_NOUNS = ("анием", "ением", "тием", "вием")
_NOUNS = (
    (("ость", "есть", "адь", "знь", "щь", "чь", "шь", "жь", "вь", "бь", "пь"), ("feminine", "nominative")),
    (("ости", "ести"), ("feminine", "genitive")),
    (("ами", "ями"), ("plural", "instrumental")),
    (("ах", "ях"), ("plural", "prepositional")),
    (("ам", "ям"), ("plural", "dative")),
    (("ов", "ев"), ("plural", "genitive")),
    (("ия", "ада", "ка", "ота", "ина"), ("feminine", "nominative")),
    (("ии", "ады", "ки"), ("feminine", "genitive")),
    (("ию", "аду", "ку"), ("feminine", "accusative")),
    (("ом", "ем"), ("masculine", "instrumental")),
    (("а", "я"), ("masculine", "genitive")),
    (("у", "ю"), ("masculine", "dative")),
    (("е",), ("masculine", "prepositional")),
    (("ы", "чи", "ги", "хи", "ши"), ("plural", "nominative")),
    (tuple("бвгджзйклмнпрстфхцчшщ"), ("masculine", "nominative")),
)
_WOMEN = {
    "а": "nominative",
    "я": "nominative",
    "ь": "nominative",
    "ы": "genitive",
    "и": "genitive",
    "е": "dative",
    "у": "accusative",
    "ю": "accusative",
}
_MEN = {"а": "genitive", "я": "genitive", "у": "dative", "ю": "dative", "е": "prepositional"}
_SHORTEST_IN_OM = 5
_NEUTER = ("ие", "ье", "о", "ё")
_NOUNS_IN_IE = ("ание", "ение", "ствие", "тие", "уние")  # other words in "-ие" are adjectives


def beside(word: str) -> tuple[str, str] | None:
    """Gender and case that an adjective or noun shows by its ending ("IX конгресс"); None for short words."""
    if len(word) > 4 and not word.endswith(_INSTRUMENTAL_NOUNS):
        for endings, agreed in _ADJECTIVES:
            if word.endswith(endings) and not word.endswith(_NOUNS_IN_IE):
                return agreed
    if len(word) < 4:
        return None
    if word.endswith(_INSTRUMENTAL_NOUNS):
        return "neuter", "instrumental"
    if word.endswith(_NEUTER):
        return "neuter", "nominative"
    return next((agreed for endings, agreed in _NOUNS if word.endswith(endings)), None)


def of_name(name: str, *, woman: bool) -> tuple[str, str]:
    """Gender and case that a ruler's or saint's name shows: "Петра", "Екатерины"."""
    if woman:
        return "feminine", _WOMEN.get(name[-1], "instrumental")
    if name.endswith(("ом", "ем")) and len(name) > _SHORTEST_IN_OM:
        return "masculine", "instrumental"
    return "masculine", _MEN.get(name[-1], "nominative")


class RussianNouns:
    """What a noun after a number makes of it, from the lists in `spoken.toml`."""

    def __init__(self, data: LanguageData, numbers: RussianNumbers, context: RussianContext) -> None:
        self._numbers = numbers
        self._context = context
        self._ranked = tuple(data.get("spoken", "ranked.before"))
        self._half: Mapping[str, str] = data.get("spoken", "one_and_a_half")
        self._several: list[str] = data.get("spoken", "plural_only.several")
        self._pairs: Mapping[str, str] = data.get("spoken", "plural_only.nouns")
        self._pair_genitives = frozenset(self._pairs.values())
        self._forms: dict[str, tuple[str, str]] = {}
        self._plural_forms: dict[str, tuple[str, str]] = {}
        for word in data.get("spoken", "ranked.nouns"):
            noun = numbers.noun(word)
            for case in reversed(CASES):
                self._forms[noun.one(case)] = (noun.gender, case)
                self._plural_forms[noun.many(case)] = (noun.gender, case)
        self._counted_too = frozenset(data.get("spoken", "ranked.counted_as_well"))

    def rank(self, text: str, start: int, end: int, n: int) -> tuple[str, str] | None:
        """Gender and case of the ordinal that a singular noun after `n` asks for: "9 классе", "1 место"."""
        if lettered := _LETTERED.match(text, end):
            end = lettered.end()
        words = self._context.words_after(text, end)
        form = self._forms.get(words[0]) if words else None
        if not n:
            return None
        if end_of_run := self._rank_of_run(text, start, end):
            return end_of_run
        if form is None:
            return self._rank_of_several(text, start, end)
        gender, case = form
        before = self._context.word_before(text, start)
        kind = plural_class(n)
        if case == "nominative":
            if kind == "one" and (n > 1 or words[0] in self._counted_too) and not before.startswith(self._ranked):
                return None
            return gender, "accusative" if gender == "feminine" and before in ("на", "в", "за") else case
        if case == "genitive":
            asked = self._context.governed_case(text, start, end) == "genitive"
            counted = kind == "few" or (kind == "one" and words[0][:-1] in self._counted_too)
            return None if counted and not asked else form
        if case == "dative" and words[0][-1] in "ую" and before in ("в", "на"):
            return gender, "prepositional"
        if case == "dative" and words[0].endswith(("е", "и")) and before not in ("к", "по", "благодаря"):
            return gender, "prepositional"
        return form

    def _rank_of_several(self, text: str, start: int, end: int) -> tuple[str, str] | None:
        """ "ученики 5 и 6 классов": each of several numbers before the plural is an ordinal."""
        last = end
        while following := _ANOTHER.match(text, last):
            last = following.end()
        if last == end and not _ONE_BEFORE.search(text, max(0, start - 8), start):
            return None
        words = self._context.words_after(text, last)
        return self._plural_forms.get(words[0]) if words else None

    def _rank_of_run(self, text: str, start: int, end: int) -> tuple[str, str] | None:
        """ "с 5 по 11 класс", "с 1 по 4 классы": from the fifth up to the eleventh."""
        up_to = _UP_TO.match(text, end) if self._context.word_before(text, start) == "с" else None
        if not up_to and not _FROM.search(text, max(0, start - 12), start):
            return None
        words = self._context.words_after(text, up_to.end() if up_to else end)
        form = (self._forms.get(words[0]) or self._plural_forms.get(words[0])) if words else None
        if not form or form[1] not in _DIRECT:
            return None
        gender = form[0]
        return gender, "genitive" if up_to else "accusative" if gender == "feminine" else "nominative"

    def rank_of_range(self, text: str, end: int) -> tuple[str, str] | None:
        """ "в 18–19 веках", "на 5–8 этажах"; "5–8 этажей" may be a count."""
        words = self._context.words_after(text, end)
        form = self._plural_forms.get(words[0]) if words else None
        return form if form and (form[1] not in (*_DIRECT, "genitive") or words[0].startswith(_RANGED)) else None

    def several(self, text: str, end: int, n: int, case: str) -> str | None:
        """ "1 сутки" -> "одни", "2 суток" -> "двое": nouns that have no singular."""
        words = self._context.words_after(text, end)
        if not words or case not in _DIRECT:
            return None
        if plural_class(n) == "one" and words[0] in self._pairs:
            return self._numbers.cardinal(n, "plural")
        if 2 <= n <= 4 and words[0] in self._pair_genitives:
            return self._several[n - 2]
        return None

    def one_and_a_half(self, gender: str, case: str) -> str:
        """ "полтора", "полторы", "полутора"."""
        return self._half["oblique" if case not in _DIRECT else "feminine" if gender == "feminine" else "masculine"]

    def half_before(self, text: str, start: int, end: int) -> str | None:
        """ "1,5" before a noun of the text: "полтора часа", "около полутора часов"; None where the forms do not fit."""
        words = self._context.words_after(text, end)
        case = self._context.governed_case(text, start, end)
        noun = words[0] if words else ""
        if len(noun) < 3 or not noun.endswith(tuple("аяыи") if case in _DIRECT else ("ов", "ев", "ей", "ах", "ам")):
            return None
        feminine = noun[-1] in "ыи" and noun not in self._context.masculine_a
        return self.one_and_a_half("feminine" if feminine else "masculine", case)

    def share(self, over: int, under: int, case: str) -> str | None:
        """ "две трети", "три четверти" where a noun follows; None for other shares."""
        word = self._half.get(f"share_{under}")
        if not word:
            return None
        noun = self._numbers.noun(word)
        if (over, under) == (1, 2):
            return noun.one(case)
        kind = plural_class(over)
        if case in _DIRECT:
            form = noun.one(case) if kind == "one" else noun.one("genitive") if kind == "few" else noun.many("genitive")
        else:
            form = noun.one(case) if kind == "one" else noun.many(case)
        return f"{self._numbers.cardinal(over, 'feminine', case)} {form}"
