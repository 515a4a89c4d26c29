"""Gender and case of an Arabic number, from the words beside it, and the letters that are written onto it.

Case without vowel marks shows only in "ون/ين" and "ان/ين", and the reader must say one of them: oblique after
what governs a genitive (the data's list) and after attached "ب", "ل", "ك", oblique where a verb acts on what is
counted (`ar_roles.py`); else nominative, the citation form.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from promptprep.model.language import LanguageData
from promptprep.speaking.languages.ar_roles import ArabicRoles
from promptprep.speaking.ruled import word_before

GAP = "[ \u00a0\u202f\u200e\u200f\u061c]"
_ATTACHED = re.compile(r"(?:(?<=[\s(«\"“:؛،])|\A)([وف]?)([بلك]?)(ال|(?<=ل)ل)?ـ*[ \u200e\u200f\u061c]?\Z")
_NEXT = re.compile(r"[ \u00a0\u202f]([\u0621-\u064a\u064b-\u0652\u0670]+)")
FIRST_END = re.compile(r"(?:من|بين)[ \u00a0][\d.,٫٬]+[ \u00a0][\u0621-\u0652]+[ \u00a0](?:[-–—] ?)?\Z")
_CHAINED = re.compile(r"[\d.,٫٬]+[%٪$€£°]?\s?(?:[\u0621-\u064a\u064b-\u0652]+\s){0,4}\Z")
_OWNED = ("هما", "هم", "هن", "ها", "كم", "نا")  # "مصرعهما": what somebody has is not counted
_PAIRED = re.compile(
    r"(?:[ \u00a0](?:إلى|أو|حتى)[ \u00a0]|[ \u00a0]?و[ \u00a0]?|[ \u00a0]?[-–][ \u00a0]?)[-−+]?[\d.,٫٬]*\d"
)
# Verbal nouns, whose singular has no "ة".
_VERBAL_NOUN = re.compile(
    "(?!است.ا.ات)(?:است..ا.|ا.[تطد].ا.|ان..ا.|إ..ا.|ت..ي.|ت[^ا]{3}|ت.ا..)ات"
)  # singular without "ة"
# Verbal nouns that own what follows: "تأخير 20 دقيقة", "بانفجار 20 قنبلة".
_VERBAL = re.compile("[وف]?[بل]?(?:ت[^ا]{2}ي.|إ(?!يرا)..ا.|ا.[تطد].ا.|ان..ا.|است..ا.)")
_JOINED_PLURAL = re.compile("[بلك]..و.")  # "بجروح": no singular
_FROM_FEMININE = re.compile("..ائ.")  # "رسائل", "حدائق": nearly always of a noun in "ة"
_LED = re.compile("[وف]?(?:[بك]ال|لل)")
_ACCUSATIVE = ("ا", "ًا", "اً", "ة", "ى", "ء", "ةً")
_GOVERNING = ("ب", "ل", "ك")
_ADVERB = ("اً", "ًا", "يا")  # "حبتان يوميا"
_CODE = re.compile(r"(?<!\w)ال[\u0621-\u0652]+ [A-Z]{1,4}[ -]?\Z")  # "المجرة NGC 224 قريبة": a name
_LED_BY_LETTER = re.compile("[وف]?[بلك](?!ال)[\u0621-\u064a]{2,}ة")  # "بقدرة 50 ميغاواط"
_DASHES = frozenset("-–—")
_COMPARED = frozenset("<>≤≥=")
_OWNER = re.compile("(?:هما|هم|هن|ها|كم|نا|ه)$")
SHORTEST_STEM = 3
_TRUE_T = frozenset(("بيت", "صوت", "وقت", "يت", "قت"))  # not of a noun in "ة"
# Broken plurals by their form: "أبنائه", "أهداف", "طوابق", "مراحل", "جوائز", and "لاعبيها", "موظفوها" before an owner.
_BROKEN_PLURAL = re.compile("أ..ا[^ةءى]")  # "أبواب"
_PLURAL_OWNED = re.compile("[وفبلك]?(?:أ..ا[^ةى]|أ..يائ|.[وا]ا..|م.ا.ي?[^ةى]|..ائ.|.{3,}[يو])")
LONGEST_PHRASE = 48  # characters before a figure that hold its noun and the word before that
_MONEY = "$€£¥₹₺₽"
_SIGN_AFTER = re.compile(rf"[ \u00a0\u202f]?[%٪°℃{_MONEY}A-Za-z]")
_MARKS = re.compile("[\u064b-\u0652\u0670\u0640]")


@dataclass(frozen=True)
class Setting:
    """What stands around a number: where its own writing begins, letters before it, the noun after it."""

    start: int
    prefix: str = ""
    definite: bool = False
    before: str = ""
    noun: str = ""
    written: str = ""
    case: str = "nominative"

    @property
    def lead(self) -> str:
        """The attached letters, to be written onto the first word of the number."""
        return self.prefix


class ArabicContext:
    """Answers from the words around a place in a text, a few words away at most."""

    def __init__(self, data: LanguageData) -> None:
        self._asked: tuple[str, int, int, int] | None = None
        self._answer = Setting(0)
        self._oblique = frozenset(data.get("spoken", "oblique_after.words"))
        self._feminine = frozenset(data.get("spoken", "feminine.words"))
        self._masculine = frozenset(data.get("spoken", "masculine_in_at.words"))
        self._scales = frozenset(data.get("spoken", "scales"))
        self._reaching = frozenset(data.get("spoken", "reaching.words"))
        self._names = frozenset(data.get("spoken", "before_a_name.words"))
        self._plurals = frozenset(data.get("spoken", "plurals.words"))
        self._not_counted = frozenset(data.get("spoken", "not_counted.words"))
        self._without_dual = frozenset(data.get("spoken", "words.without_dual").split())
        self._with_waw = frozenset(data.get("spoken", "with_waw.words"))
        self._hours = frozenset(data.get("spoken", "numbers.ordinals_feminine"))
        self._women = frozenset(data.get("spoken", "women.words"))
        self._roles = ArabicRoles(data)

    def setting(self, text: str, start: int, end: int, floor: int) -> Setting:
        """The surroundings of the number written from `start` to `end`; attached letters begin at `floor` or later.

        Several rules ask about the same place one after another: the last answer is kept.
        """
        place = (text, start, end, floor)
        if place != self._asked:
            self._asked, self._answer = place, self._look(text, start, end, floor)
        return self._answer

    def _look(self, text: str, start: int, end: int, floor: int) -> Setting:
        attached = _ATTACHED.search(text, max(floor, start - 8), start)
        own, prefix, definite = start, "", False
        if attached and (attached[1] or attached[2] or attached[3]):
            own, definite = attached.start(1), bool(attached[3])
            prefix = attached[1] + attached[2]
        own_end = self._chain_start(text, own) if prefix.startswith("و") else own
        before = bare(word_before(text, own_end))
        written = self._next(text, end)
        noun = bare(written)
        coded = bool(before) and before.isascii() and noun not in self._scales
        named = coded and _CODE.search(text, max(0, start - LONGEST_PHRASE), start) is not None
        joined = noun.startswith("و") and noun.removesuffix("ا") not in self._with_waw
        named = named or (before in self._names and not written.endswith("ا") and not written.endswith(_ADVERB))
        noun = "" if noun in self._not_counted or joined or named else noun
        case = "oblique"
        if self._reached(text, own_end):
            case = "accusative"
        elif prefix == "و" and before in self._hours:  # "في السابعة و20 دقيقة"
            hour = text.rindex(before[-3:], 0, own) - len(before) + 3
            case = self.case_of_noun_before(text, hour if text[:hour].endswith("الساعة ") else own)
        elif prefix[-1:] not in _GOVERNING and not self.governs(before) and not self._is_compared(text, own):
            kind = self._next(text, end + 1 + len(written)) if noun in self._scales else noun
            case = self._case_of_counted(text, own_end, before, kind) if self._counts(text, start, end, noun) else ""
        return Setting(own, prefix, definite, before, noun, written, case or "nominative")

    def _case_of_counted(self, text: str, start: int, before: str, kind: str) -> str:
        """ "تأخير 20 دقيقة", "بقيمة إجمالية 20 مليون": owned by a noun; else by the part in the clause."""
        if _VERBAL.fullmatch(before):
            return "oblique"
        if _LED_BY_LETTER.fullmatch(before):
            return "oblique"
        if before.endswith(("ية", "ي")) and not before.startswith("ال"):
            described = bare(word_before(text, text.rindex(before[-1], 0, start) - len(before) + 1))
            if self.governs(described) and not self._roles.leads(described):
                return "oblique"
        return "accusative" if self._roles.role(text, start, kind) == "object" else ""

    @staticmethod
    def _is_compared(text: str, start: int) -> bool:
        """Whether a sign of comparison stands before ("> 20"), or the dash of "من 10 أمتار - 20 مترا"."""
        if text[max(0, start - 2) : start].strip() in _DASHES:
            return bool(FIRST_END.search(text, max(0, start - 24), start))
        last = text[start - 1 : start]
        return (text[start - 2 : start - 1] if last in (" ", "\u00a0") else last) in _COMPARED

    @staticmethod
    def _next(text: str, end: int) -> str:
        found = _NEXT.match(text, end)
        return found[1] if found else ""

    def case_of_noun_before(self, text: str, start: int) -> str:
        """The case of the word before `start`, for what agrees with it: "انطلقت الدورة" -> "nominative"."""
        head, _, noun = text[max(0, start - LONGEST_PHRASE) : start].rstrip().rpartition(" ")
        governed = _LED.match(bare(noun)) or self.governs(head.rpartition(" ")[2])
        role = self._roles.role(text, text.rindex(noun, max(0, start - LONGEST_PHRASE), start))
        return "nominative" if not governed and role in ("subject", "topic") else "oblique"

    @staticmethod
    def _counts(text: str, start: int, end: int, noun: str) -> bool:
        """Whether a number has something that it counts: a noun, a unit, money, a hundred."""
        return bool(noun or _SIGN_AFTER.match(text, end) or text[start] in _MONEY or text[end - 1] in "%٪")

    @staticmethod
    def _chain_start(text: str, own: int) -> int:
        """Where "10" begins in "بين 10 و15": what governs the first number governs the second."""
        first = _CHAINED.search(text, max(0, own - 40), own)
        return first.start() if first else own

    def _reached(self, text: str, start: int) -> bool:
        """Whether a verb of reaching stands a few words before: "بلغت التكلفة 2 مليار"."""
        words = text[max(0, start - 32) : start].split()[-3:]
        return bool(self._reaching.intersection(words)) and not any(w[-1] in ".،:" for w in words)

    @staticmethod
    def word_before(text: str, start: int) -> str:
        """The word before `start`; a colon may stand between."""
        return bare(
            word_before(
                text, start - len(text[max(0, start - 3) : start]) + len(text[max(0, start - 3) : start].rstrip(" :"))
            )
        )

    def is_near(self, words: frozenset[str], text: str, start: int) -> bool:
        """Whether one of `words` is among the four words before `start`."""
        return bool(words.intersection(w.strip("،:.") for w in text[max(0, start - 40) : start].split()[-4:]))

    @staticmethod
    def begins(text: str, start: int) -> bool:
        """Whether nothing stands before `start` on its line."""
        return not text[max(0, start - 8) : start].rpartition("\n")[2].strip(" \u200e\u200f\u061c")

    def noun_of_pair(self, text: str, end: int) -> tuple[str, int] | None:
        """The noun that both numbers of "بين 3 و5 سنوات" count, and where the second number ends."""
        pair = _PAIRED.match(text, end)
        if not pair:
            return None
        found = _NEXT.match(text, pair.end())
        noun = bare(found[1]) if found else ""
        return ("" if noun in self._not_counted else noun), pair.end()

    def governs(self, word: str) -> bool:
        """Whether a word puts what follows it in the genitive."""
        plain = bare(word)
        return plain in self._oblique or (plain[:1] in ("و", "ف") and plain[1:] in self._oblique)

    def can_be_dual(self, setting: Setting) -> bool:
        """Whether the noun after 1 or 2 is an indefinite singular that the number counts, and not a new phrase."""
        noun = setting.noun
        return (
            len(noun) > 2
            and not noun.endswith(_OWNED)
            and not noun.startswith(("ال", "و"))
            and not _JOINED_PLURAL.fullmatch(noun)
            and (noun == "أستاذ" or not _BROKEN_PLURAL.fullmatch(noun))
            and (noun in self._scales or not noun.endswith(("ان", "ين", "ات", "ون")))
            and (noun in self._scales or not setting.before.startswith("ال"))
            and setting.before not in self._names
            and noun not in self._without_dual
            and (noun in self._scales or not self._roles.is_verb(noun))
        )

    def owned(self, word: str) -> str | None:
        """A singular noun with an owner, as it is written alone; None for plurals and others."""
        noun = without_owner(word)
        return None if noun is None or self.is_plural(noun) or _PLURAL_OWNED.fullmatch(noun) else noun

    def counts_on(self, text: str, end: int) -> bool:
        """Whether another noun follows at once ("مليونا دولار")."""
        found = _NEXT.match(text, end)
        return found is not None and bare(found[1]) not in self._not_counted and not found[1].endswith(_ADVERB)

    def is_noun(self, word: str) -> bool:
        """Whether a word is there and no verb."""
        return bool(word) and not self._roles.is_verb(word)

    def looks_counted(self, noun: str) -> bool:
        """Whether a noun can stand after 3 to 10."""
        return not noun.startswith("ال") and (self.is_plural(noun) or bool(_BROKEN_PLURAL.fullmatch(noun)))

    def is_plural(self, word: str) -> bool:
        """Whether a definite noun looks plural."""
        plain = bare(word).removeprefix("ال")
        return plain in self._plurals or plain.endswith(("ات", "ين", "ون")) or "ال" + plain in self._plurals

    def may_count(self, setting: Setting, n: int) -> bool:
        """Whether `n` can count the word after it: no verb, and after 11 to 99 a singular in the accusative."""
        noun = setting.noun
        if not noun or self._roles.is_verb(noun):
            return False
        return not 11 <= n % 100 <= 99 or setting.written.endswith(_ACCUSATIVE)

    def looks_feminine(self, word: str) -> bool:
        """Whether a singular noun or a name looks feminine."""
        plain = bare(word)
        if plain in self._women:
            return True
        return plain.endswith(("ة", "ى", "اء")) or plain.removeprefix("ال") in self._feminine

    def is_feminine(self, noun: str, n: int) -> bool:
        """Whether the noun counted by `n` is feminine in the singular."""
        if not noun or noun in self._masculine:
            return False
        if noun in self._feminine:
            return True
        if 3 <= n % 100 <= 10:
            if noun.endswith("ات"):
                return not _VERBAL_NOUN.fullmatch(noun)
            return bool(_FROM_FEMININE.fullmatch(noun))
        if noun.endswith("ا") and noun[:-1] in self._feminine:
            return True
        return noun.endswith(("ة", "ات")) and noun not in self._masculine


def bare(word: str) -> str:
    """Without vowel marks and tatweel."""
    if word.isalpha() and "ـ" not in word:
        return word
    return _MARKS.sub("", word)


def without_article(word: str) -> str | None:
    """A definite noun without its article and what is written onto it ("للمرة" -> "مرة"); None for others."""
    found = re.match("(?:[وف]?[بك]?ال|[وف]?لل)(?=..)", word)
    return word[found.end() :] if found else None


def without_owner(word: str) -> str | None:
    """A noun without whose it is, as it is written alone ("نسخته" -> "نسخة", "ذكراها" -> "ذكرى"); None for others."""
    found = _OWNER.search(word)
    stem = word[: found.start()] if found else ""
    if len(stem) < SHORTEST_STEM:
        return None
    if stem.endswith("ت") and not stem.endswith("ات"):
        return stem if stem.lstrip("ولب") in _TRUE_T else stem[:-1] + "ة"
    return stem[:-1] + "ى" if stem.endswith("ا") else stem


def attach(prefix: str, words: str) -> str:
    """Letters written onto a word: "ل" and the article melt into "لل"."""
    if prefix.endswith("ل") and words.startswith("ال"):
        return prefix + "ل" + words[2:]
    return prefix + words
