"""Number words by the CLDR's rule-based number formats (RBNF), through icu4py."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal, InvalidOperation
from functools import lru_cache

from promptprep.errors import UnknownLanguage
from promptprep.model.language import base_of

INVISIBLE = str.maketrans("", "", "\u00ad\u200b")
LIMIT = 10**18  # from here on ICU gives figures
# Languages with spell-out rules of their own in ICU 78. For any other ICU answers in the machine's own language.
_LANGUAGES = frozenset({
    "af", "ak", "am", "ar", "az", "be", "bg", "bs", "ca", "ccp", "chr", "cs", "cy", "da", "de", "ee", "el", "en",
    "eo", "es", "et", "fa", "ff", "fi", "fil", "fo", "fr", "ga", "gu", "he", "hi", "hr", "ht", "hu", "hy", "id",
    "in", "is", "it", "iw", "ja", "ka", "kk", "kl", "km", "ko", "ky", "lb", "lo", "lrc", "lt", "lv", "mk", "ms",
    "mt", "my", "nb", "ne", "nl", "nn", "no", "pl", "pt", "qu", "ro", "ru", "se", "sh", "sk", "sl", "sq", "sr",
    "su", "sv", "sw", "ta", "th", "tr", "uk", "vec", "vi", "yue", "zh",
})  # fmt: skip
_PROBES = (1, 2, 3, 21, 101)


class IcuSpeller:
    """`ports.Speller` by ICU. Loads ICU at the first number; every spelled number is kept."""

    def spell(self, number: str | int, language: str, rules: str = "") -> str:
        """`number` (an int, or a plain decimal such as "3.14" or "-5") in words.

        Raises `UnknownLanguage` where ICU has no words for the language or no ordinal rule set of that name,
        and `ValueError` for a number of 19 digits or more or a string that is no number.
        """
        return _spelled(str(number), language, rules)


@lru_cache(maxsize=65536)
def _spelled(number: str, language: str, rules: str) -> str:
    try:
        value = Decimal(number)
    except InvalidOperation:
        raise ValueError(f"{number!r} is no number") from None
    if not value.is_finite() or abs(value) >= LIMIT:
        raise ValueError(f"{number!r} is out of the range that can be spelled")
    said = _formatter(language, rules)(value)
    return said.translate(INVISIBLE)


@lru_cache(maxsize=256)
def _formatter(language: str, rules: str) -> Callable[[Decimal], str]:
    """Words by one rule set. ICU answers an unknown rule set with cardinals in silence: this does not."""
    if base_of(language) not in _LANGUAGES:
        raise UnknownLanguage("unknown-language", f"no number words for language {language!r}")
    plain = _message(language, "")
    if not rules:
        return plain
    chosen = _message(language, rules)
    if "ordinal" in rules and all(chosen(Decimal(n)) == plain(Decimal(n)) for n in _PROBES):
        raise UnknownLanguage("unknown-language", f"language {language!r} has no rule set {rules!r}")
    return chosen


def _message(language: str, rules: str) -> Callable[[Decimal], str]:
    from icu4py.messageformat import MessageFormat

    form = MessageFormat(f"{{n,spellout,{rules}}}" if rules else "{n,spellout}", language)
    return lambda n: form.format({"n": int(n) if n == n.to_integral_value() else n})
