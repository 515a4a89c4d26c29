"""Arabic figures that say a rank: "الحلقة 5", "القرن الـ21"; and definite figures that count: "الأيام الـ10"."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.speaking.languages.ar_context import ArabicContext, Setting, without_article, without_owner
from promptprep.speaking.languages.ar_numbers import AND, MOST_DIGITS, ArabicNumbers, Counted

MOST_RANKED = 99
_ADVERB = ("اليا", "الميا", "ربيا", "حليا", "وليا", "اريا")
_DUAL = re.compile("(?<=...)(?:ان|ين)$")
_TANWEEN = ("ًا", "اً")


class ArabicRanks:
    """Ordinals and definite cardinals after the noun that they belong to."""

    def __init__(self, data: LanguageData, numbers: ArabicNumbers, context: ArabicContext) -> None:
        self._numbers = numbers
        self._context = context
        self._ranked: Mapping[str, bool] = data.get("spoken", "ranked")
        self._years_of_age = frozenset(data.get("spoken", "words.years_of_age").split())
        self._moment: str = data.get("spoken", "words.moment")

    def ranked(self, text: str, end: int, n: int, setting: Setting) -> str | None:
        """The ordinal of a figure after a noun that has a rank ("الطابق 3"), unless it counts what follows."""
        noun = self._ranked_noun(setting.before)
        paired = setting.prefix == AND and setting.before.endswith(("ان", "ين"))
        if noun is None or (setting.prefix and not paired) or not 0 < n <= MOST_RANKED:
            return None
        pair = self._context.noun_of_pair(text, end)
        if self._counts_on(n, setting) or (pair and pair[0] in self._years_of_age):
            return None
        case = self._context.case_of_noun_before(text, setting.start)
        return self._numbers.ordinal(n, feminine=self._ranked[noun], case=case)

    def _ranked_noun(self, before: str) -> str | None:
        """The noun of the data's list that a word is: "الدورة", "دورتها"."""
        if before in self._ranked:
            return before
        owned = without_owner(before)
        if _DUAL.search(before):
            stem = before[:-2]
            return next((w for w in (stem, stem.removesuffix("ت") + "ة") if w in self._ranked), None)
        definite = "ال" + owned if owned else ""
        return definite if definite in self._ranked else None

    def _counts_on(self, n: int, setting: Setting) -> bool:
        """Whether the figure counts the next noun: "في الفصل 11 طالبة", but not "في الدقيقة 45 هدفا"."""
        if setting.written.endswith(_TANWEEN):
            return n > 10 and not setting.noun.endswith(_ADVERB)
        if not setting.noun or setting.before == self._moment:
            return False
        if 3 <= n <= 10 and self._context.looks_counted(setting.noun):
            return True
        if not setting.before.startswith("ال"):
            return True
        return n > 10 and setting.noun.endswith(("ا", "ة")) and not setting.noun.startswith(("و", "ال", "لل", "بال"))

    def definite(self, text: str, n: int, whole: str, setting: Setting) -> str:
        """ "القرن الـ21" is an ordinal, "الأيام الـ10" is not: a plural before it is counted; "قمة الـ20" owns."""
        before = without_article(setting.before) or self._context.owned(setting.before)
        rank = self._ranked.get("ال" + before if before else setting.before)
        if not setting.before and not setting.noun:
            rank = False
        if before and rank is None and not self._context.is_plural(before):
            rank = self._context.looks_feminine(before)
        agrees = before and setting.prefix[-1:] not in ("ب", "ل", "ك")
        agrees = agrees and self._ranked_noun(setting.before[1:]) is None  # "بعيده"
        case = self._context.case_of_noun_before(text, setting.start) if agrees else "oblique"
        if rank is not None and 0 < n <= MOST_RANKED:
            return self._numbers.ordinal(n, feminine=rank, case=case)
        if n == 1:
            return self._numbers.ordinal(1, feminine=self._context.looks_feminine(before or ""))
        noun = before or setting.noun
        feminine = self._context.is_feminine(noun, n)
        return self._numbers.definite(self._numbers.cardinal(whole, feminine=feminine, case=case))

    def definite_quantity(self, digits: str, noun: Counted) -> str:
        """ "الـ24 ساعة" -> "الأربع والعشرين ساعة"."""
        words = self._numbers.cardinal(digits, feminine=noun.feminine, case="oblique")
        return f"{self._numbers.definite(words)} {self._numbers.form(noun, int(digits[-MOST_DIGITS:]))}"
