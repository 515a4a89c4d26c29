"""Arabic signs: a plus or a minus, "50+", which is said "more than", angles and a sign of money by itself."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.languages.ar_context import ArabicContext
from promptprep.speaking.languages.ar_numbers import AND, Counted
from promptprep.speaking.languages.ar_quantities import ArabicQuantities
from promptprep.speaking.ruled import reading

_WORD_BEFORE = re.compile(r"[\w)»\"%٪\u064b-\u0652][ \u00a0]\Z")


class ArabicSigns:
    """Handlers for signed numbers; their patterns name `sign`, `b`, `percent` and `unit`."""

    def __init__(self, data: LanguageData, quantities: ArabicQuantities, context: ArabicContext) -> None:
        self._word: Mapping[str, str] = data.get("spoken", "words")
        self._quantities = quantities
        self._context = context
        self._on_a_scale = frozenset(self._word["on_a_scale"].split())

    def minus(self, found: re.Match[str]) -> Reading:
        """ "6 - 2 = 4" takes away."""
        return reading(found, f"{self._quantities.number(found[1])} {self._word['minus']}", "symbol")

    def money_alone(self, found: re.Match[str]) -> Reading | None:
        if found.string[found.start() - 1 : found.start()].isalnum():
            return None
        return reading(found, self._quantities.money[found[0]].one, "symbol")

    def angle(self, found: re.Match[str]) -> Reading:
        """ "55°45′" -> "خمس وخمسون درجة وخمس وأربعون دقيقة"."""
        units = (self._quantities.units[u] for u in ("°", "دقيقة", "ثانية"))
        said = (self._quantities.counted(n, u, "nominative") for n, u in zip(found.groups(), units, strict=True) if n)
        return reading(found, f" {AND}".join(said), "measure")

    def beside_letter(self, found: re.Match[str]) -> Reading:
        """ "A+", "C++"."""
        return reading(found, " ".join([self._word["plus_beside_letter"]] * len(found[0])), "symbol")

    def signed(self, found: re.Match[str]) -> Reading | None:
        if self._only_parts(found):
            return None
        sign = self._word[{"+": "plus", "±": "plus_minus"}.get(found["sign"], "minus")]
        number = self._quantities.number
        if found["percent"]:
            return reading(found, f"{sign} {number(found['b'])} {self._word['percent']}", "percent")
        noun = self._quantities.noun(found["unit"])
        if noun:
            return reading(found, f"{sign} {self._quantities.counted(found['b'], noun, 'nominative')}", "measure")
        after = self._context.setting(found.string, found.start(), found.end(), found.start()).noun
        if found.group("sign", "b") == ("+", found[0][1:]) and after and after not in self._on_a_scale:
            return self.more(found)
        pair = "" if after else (self._context.noun_of_pair(found.string, found.end("b")) or ("",))[0]
        said = number(found["b"], self._gendered(found["b"], after or pair), bound=bool(after))
        return reading(found, f"{sign} {said}", "cardinal")

    def _only_parts(self, found: re.Match[str]) -> bool:
        """Whether a hyphen between blanks parts what stands beside it: "الدوحة - 15 مايو", but not "الحرارة - 5°"."""
        start, text = found.start(), found.string
        if not found[0].startswith(("- ", "-\u00a0")) or not _WORD_BEFORE.search(text, max(0, start - 3), start):
            return False
        degrees = found["unit"] or self._context.setting(text, start, found.end("b"), start).noun
        return not degrees.startswith(("°", "درج"))

    def more(self, found: re.Match[str]) -> Reading:
        """ "50+ دولة" -> "أكثر من خمسين دولة"."""
        setting = self._context.setting(found.string, found.start(), found.end(), found.start())
        after = setting.noun
        said = self._quantities.number(found["b"], self._gendered(found["b"], after), "oblique", bool(after))
        head, than = self._word["more_than"].split()
        return reading(found, said if setting.before == than else f"{head} {than} {said}", "cardinal")

    def _gendered(self, written: str, noun: str) -> Counted:
        n = int(self._quantities.parsed(written)[0][-18:])
        return Counted(self._context.is_feminine(noun, n), "", "", "", "")
