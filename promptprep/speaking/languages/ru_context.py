"""Gender and case of a Russian number, from the word before it and the noun after it.

Nothing is parsed: a preposition's government comes from the data, the rest from endings, which in Russian
nouns after numbers are regular ("2 минуты" is feminine, "2 метра" is not; "к 5 часам" is dative).
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from promptprep.model.language import LanguageData
from promptprep.speaking.languages.ru_numbers import plural_class

REACH = 60  # characters looked at on either side of a number
_WORD = re.compile(r"[А-Яа-яЁё]+(?:-[А-Яа-яЁё]+)*")
_BEFORE = re.compile(r"(?<![/А-Яа-яЁё])([А-Яа-яЁё-]+\.?)[\s«„\"(]*$")
_FIRST_OF_TWO = re.compile(
    r"\d[\d.,: \u00a0]*(?:-[а-яё]{1,3})?(?:\s[а-яё]+){0,2}\s*$"
)  # "между 10 и ...": what governs the first governs the second
_AWAY = re.compile(r"\s(?:от\s|к\s(?:северу|югу|западу|востоку)|(?:северн|южн|западн|восточн)ее|над\s|под\s)")
_ONWARD = re.compile(r"\b(?:до|по)\s+(?:[A-Z]{3} ?|[−+-])?[\d«€$£¥₽]")
_CAPITALS = re.compile(r"[А-ЯЁ]{2,3}")
_SHORTEST_IN_OM = 4  # "дом", "том" are no instrumentals
_PLURAL_OR_BARE = ("ли", "шёл", "шел", "ить", "ять", "ать")  # verbs whose subject is no single woman or thing
_SHORT = re.compile(r"[бвгджзклмнпрстфхцчшщ]{1,4}")  # no word: "ст.", "стр."
_NEXT = re.compile(r"\s+на\s+\d")
_ADJECTIVE = re.compile(r"(?:ых|их|ые|ие|ый|ий|ая|яя|ое|ее|ого|его|ому|ему|ыми|ими|ую|юю)$")
_LINKS = frozenset(("а", "и", "или", "но", "не", "по", "же", "то", "что", "как", "из", "со", "во", "тоже", "уже"))
_PAST_ONE = re.compile(r"..(?:[аеиуыя]л|ёл)$")  # "вылетел"
_DONE_TO = re.compile(r"...(?:ова|жа|ле|ще|ше|че|де|се|не|бре|раже|ерже)ны$")  # "задержаны", "доставлены"
_PRESENT = re.compile(  # "идёт", "живут", "действует"; nouns in "-ет" and "-ют" have other letters before it
    r"(?:[аеуюя]ет|[аеуюя]ют|[^чмл]ёт|ивут|[дз]ут|[дт]анут|одит|одят|оит|оят|ится|ятся|утся|ются|ется)$"
)
_PERSON = re.compile(  # in the accusative: "21 человека", "41 подсудимого", "31 игрока"
    r"(?:человека|..ого|..его|[жиа]теля|[нч]ника|[еа]нта|иста|[тс]ора|[жн]ера|бойца|врача|игрока|ребёнка|подростка)$"
)
_PAST = re.compile(r"ли$")  # "погибли", "были", "вышли"
_ORDER = ("айте", "яйте", "ейте", "ите", "ьте", "ать", "ять", "ить", "еть", "ыть", "оть", "нуть", "сти", "чь")
_YEARS = re.compile(r"\s(?:лет|года)(?!\w)")
_RECEIVES = ("у", "ю", "е", "ам", "ям", "ом")
_AMONG_THEM = re.compile(r"\bтом числе\s\Z")
_IN_ORDER = re.compile(r"(?:\A|[.!?:]\s)[А-ЯЁ][а-яё]+(?:[яаеу]й|и|ь)те\s[^.!?:]*(?:,|\sи)\s\Z")
_AMOUNT = re.compile(
    r"(?<![\d,.:])\d{1,3}(?:[ \u00a0]\d{3})*[ \u00a0]?(?:руб\.?|рубл\w+|р\.|ч\.?|час\w*|мин\.?|минут\w*|км|м|кг|"
    r"градус\w*|тыс\.?|тысяч\w*|млн|миллион\w*|млрд|миллиард\w*|доллар\w*|евро|километр\w*|метр\w*|"
    r"килограмм\w*)[ \u00a0]\Z"
)
_PAST_ANY = re.compile(r"[аеёиоуыя]л(?:[аио]|[аио]сь|ся)?$")
_CONSONANT = "бвгджзйклмнпрстфхцчшщ"


@dataclass(frozen=True)
class Agreement:
    gender: str = "masculine"
    case: str = "nominative"


class RussianContext:
    """Answers from the words around a place in a text. Looks at most `REACH` characters away."""

    def __init__(self, data: LanguageData) -> None:
        self.governs: Mapping[str, str] = data.get("spoken", "governs")
        self._aged = tuple(data.get("spoken", "aged.stems"))
        self._taking = frozenset(data.get("spoken", "taking.words"))
        self._happening = tuple(data.get("spoken", "happening.stems"))
        self._amounts = tuple(data.get("spoken", "amounts.stems"))
        self._owners = tuple(data.get("spoken", "owners.endings"))
        self._skipped = frozenset(data.get("spoken", "between_preposition_and_number.words"))
        self._masculine_soft = frozenset(data.get("spoken", "masculine_soft.words"))
        self._zero_plural = frozenset(data.get("spoken", "plural_like_dative.words"))
        self._in_l = frozenset(data.get("spoken", "genitive_in_l.words"))
        self._feminine_li = frozenset(data.get("spoken", "feminine_in_li.words"))
        self.feminine_e = frozenset(data.get("spoken", "feminine_in_e.words"))
        self.masculine_a = frozenset(data.get("spoken", "masculine_in_a.words"))

    def word_before(self, text: str, start: int) -> str:
        """The word just before `start`, in lower case; words such as "примерно" are looked through."""
        for _ in range(4):
            found = _BEFORE.search(text, max(0, start - REACH), start)
            if not found:
                return ""
            word = found[1].lower()
            if word in ("и", "или"):
                first = _FIRST_OF_TWO.search(text, max(0, found.start() - REACH), found.start())
                if not first:
                    return word
                start = first.start()
            elif word in self._skipped:
                start = found.start()
            else:
                return "с" if word == "со" else word
        return ""

    def words_after(self, text: str, end: int) -> list[str]:
        """Up to three Cyrillic words that follow `end` with nothing but spaces between."""
        words: list[str] = []
        while len(words) < 3 and end < len(text):
            gap = 1 if text[end] in " \u00a0\u202f" else 0
            found = _WORD.match(text, end + gap, end + REACH)
            if not found or not gap or _CAPITALS.fullmatch(found[0]):
                break
            if text[found.end() : found.end() + 1] == "." and _SHORT.fullmatch(found[0]):
                break
            words.append(found[0].lower())
            end = found.end()
        return words

    def governed_case(self, text: str, start: int, end: int) -> str:
        """The case that the word before the number asks for; "nominative" where it asks for none."""
        if text[start - 1 : start] in ("<", ">", "≤", "≥") or text[max(0, start - 2) : start - 1] in (
            "<",
            ">",
            "≤",
            "≥",
        ):
            return "genitive"
        start = self._head_of_amount(text, start)
        before = self.word_before(text, start)
        if before == "с" and not self._meets_with(text, end):
            return "genitive"
        if before == "в" and _AWAY.match(text, end):
            return "prepositional"
        if before == "по" and text[start:end] in ("1", "1/4", "1/3", "1/2"):
            return "dative"
        if before == "числе" and _AMONG_THEM.search(text, max(0, start - REACH), start):
            return "nominative"
        if before in self.governs:
            return self.governs[before]
        if before.endswith(self._owners) or (before.startswith(self._aged) and self._is_age(text, end, before)):
            return "genitive"
        listed = before in ("", "и") and _IN_ORDER.search(text, max(0, start - REACH), start)
        return "accusative" if listed or self.takes_object(before) else "nominative"

    def takes_object(self, word: str) -> bool:
        """Whether `word` is a verb whose object stands in the accusative: an order, an infinitive, or one of a list."""
        return (word.endswith(_ORDER) and len(word) > 4) or word in self._taking

    def acts(self, text: str, start: int) -> bool:
        """Whether a verb of the past before an amount, or a word before that, does something with it."""
        for _ in range(2):
            word = self.word_before(text, start)
            if not word or word in self.governs:
                return False
            if self.is_past(word):
                return not word.startswith(self._happening)
            start = text.lower().rfind(word, max(0, start - REACH), start)
            if start < 0:
                return False
        return False

    @staticmethod
    def _is_age(text: str, end: int, before: str) -> bool:
        """ "дети 5–7 лет" are of that age; "ребёнку 5 лет" is that old."""
        return bool(_YEARS.match(text, end)) and not before.endswith(_RECEIVES)

    def _head_of_amount(self, text: str, start: int) -> int:
        """Where "52 руб. 50 коп." begins, for its second number."""
        head = _AMOUNT.search(text, max(0, start - REACH), start)
        return head.start() if head and self.word_before(text, head.start()) != "без" else start

    def is_share_of_cases(self, text: str, start: int, end: int) -> bool:
        """Whether "в" before a percentage means where: "в 80% случаев", not "ставка в 5% годовых"."""
        after = self.words_after(text, end)
        named = bool(after) and after[0].endswith(("ов", "ев", "ей", "ий")) and len(after[0]) > 4
        return named and self.word_before(text, start) == "в"

    @staticmethod
    def _meets_with(text: str, end: int) -> bool:
        """Whether "с" means "together with": it does unless an end ("до", "по", "на") follows in the same breath."""
        return not (_ONWARD.search(text[end : end + REACH]) or _NEXT.match(text, end))

    def agreement(self, text: str, start: int, end: int, n: int) -> Agreement:
        """Gender and case of the whole number `n` written at `start` to `end`."""
        case = self.governed_case(text, start, end)
        words = self.words_after(text, end)
        if text[start - 1 : start] in ("-", "‑") and text[max(0, start - 2) : start - 1].isalpha():
            return Agreement()
        if words[:1] == ["из"] and self.word_before(text, start) in ("в", "на"):
            return Agreement(case="prepositional")
        noun = self._noun(words)
        if not noun or self._is_time(noun, self.word_before(text, start)):
            return Agreement(case=case)
        kind = plural_class(n)
        if kind == "one":
            if words[0].endswith(("ую", "юю")):
                return Agreement("feminine", "accusative")
            verb = self.word_before(text, start)
            person = case == "nominative" and _PERSON.search(noun) and _PAST_ANY.search(verb)
            if person or (noun[-1] in "ая" and verb.endswith(_PLURAL_OR_BARE) and verb not in self.governs):
                case = "accusative"
            elif noun[-1] in "ая" and verb.endswith(("ла", "лась")):
                case = "nominative"
            if words[0] != noun and words[0].endswith(("ый", "ий")):
                return Agreement("masculine", case if case == "accusative" else "nominative")
            return self._with_singular(noun, case)
        if case == "nominative" and noun.startswith(self._amounts) and self.acts(text, start):
            case = "accusative"
        if n % 1000 == 0 and text[start:end] != "0" and case == "instrumental" and noun.endswith(("ов", "ев", "ей")):
            return Agreement(case=case)
        case = self._plural_case(words, noun, case, kind)
        feminine = kind == "few" and noun[-1] in "ыи" and noun not in self.masculine_a
        return Agreement("feminine" if feminine else "masculine", case)

    def _noun(self, words: list[str]) -> str:
        """The first word that does not look like an adjective, else the last; "" where it looks like a verb."""
        if not words or words[0] in self.governs or words[0] in _LINKS:
            return ""
        noun = next((word for word in words if not _ADJECTIVE.search(word)), words[-1])
        if (_PAST.search(noun) and noun not in self._feminine_li) or _DONE_TO.search(noun):
            return ""
        if _PRESENT.search(noun):
            return ""
        return "" if _PAST_ONE.search(noun) and noun not in self._in_l else noun

    def is_past(self, word: str) -> bool:
        """Whether a word is a verb of the past: "открыли", "вылетел"; not "сел", "недели"."""
        known = word in self._in_l or word in self._feminine_li
        return not known and bool(_PAST_ANY.search(word)) and len(word) > _SHORTEST_IN_OM

    @staticmethod
    def _is_time(noun: str, before: str) -> bool:
        """ "в 2 ночи" is an hour, "на 2 ночи" a stay."""
        return noun in ("ночи", "утра", "дня", "вечера") and before in ("в", "к", "до", "с", "около", "после")

    def _plural_case(self, words: list[str], noun: str, case: str, kind: str) -> str:
        if noun.endswith(("ами", "ями")) or words[0].endswith(("ыми", "ими", "имися")):
            return "instrumental"
        if noun.endswith(("ым", "им", "имся")) or words[0].endswith(("ым", "им", "имся")):
            return "dative"
        if noun.endswith(("ам", "ям")) and noun not in self._zero_plural:
            return "dative"
        if noun.endswith(("ах", "ях")):
            return "prepositional"
        if case in ("dative", "instrumental", "prepositional"):
            if len(noun) > 3 and noun.endswith(("а", "я", "ов", "ев", "ей")):
                return "genitive" if case == "instrumental" and noun.endswith(("ов", "ев", "ей")) else "nominative"
            return case if noun == words[0] and len(words) == 1 else "nominative"
        if kind == "few" and case == "nominative" and noun[-1] in _CONSONANT and noun[-2:] not in ("ых", "их"):
            return "genitive"
        return case

    def _with_singular(self, noun: str, case: str) -> Agreement:
        """ "21 минута", "21 минуту", "около 21 километра": the noun's ending tells, with the case asked for."""
        last = noun[-1]
        if noun.endswith(("ому", "ему", "емуся")) and len(noun) > 5:
            return Agreement("masculine", "dative")
        if last in "ыи" and case != "genitive" and len(noun) > 3:
            return Agreement("feminine", "genitive")
        if case == "genitive":
            return Agreement("feminine" if last in "ыи" else "masculine", case)
        if case == "accusative" and noun.endswith(("ого", "его")):
            return Agreement("animate", case)
        if last in "ая" and noun not in self.masculine_a:
            return Agreement("animate", case) if case == "accusative" else Agreement("feminine", "nominative")
        if last in "ую":
            return Agreement("masculine", "dative") if case == "dative" else Agreement("feminine", "accusative")
        if last in "оё" or noun.endswith(("ие", "ье", "це")):
            return Agreement("neuter", "nominative")
        if last == "е":
            feminine = case == "dative" or noun in self.feminine_e
            return Agreement("feminine" if feminine else "masculine", case if case == "dative" else "prepositional")
        if last == "ь" and noun not in self._masculine_soft and not noun.endswith("тель"):
            return Agreement("feminine", "accusative" if case == "accusative" else "nominative")
        if noun.endswith(("ой", "ей")):
            return Agreement("feminine", "instrumental")
        if noun.endswith(("ом", "ем", "ём")) and len(noun) > _SHORTEST_IN_OM:
            return Agreement("masculine", "instrumental")
        return Agreement("masculine", case if last in _CONSONANT + "ь" and case == "accusative" else "nominative")
