"""Russian numbers in words: every part declined, and the noun that a number governs in its right form.

Cardinals come from the CLDR's rule sets. Built here from the words in `spoken.toml` is what those lack or get
wrong (seen in CLDR 48): the bare "тысяча", ordinals of round hundreds and thousands, decimals and fractions
in all cases, nouns after numbers.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller

CASES = ("nominative", "genitive", "dative", "accusative", "instrumental", "prepositional")
MOST_DIGITS = 18  # the CLDR's rules spell up to 10**18 - 1
_MOST_NAMED = 36
_DIRECT = ("nominative", "accusative")
# A thousand at the head of a number is said without "one": "тысяча девятьсот", not "одна тысяча девятьсот".
_ONE = {
    "nominative": "одна тысяча",
    "genitive": "одной тысячи",
    "dative": "одной тысяче",
    "accusative": "одну тысячу",
    "instrumental": "одной тысячей",
    "prepositional": "одной тысяче",
}


@dataclass(frozen=True)
class Noun:
    """A noun's gender ("masculine", "feminine", "neuter") and its twelve forms: six cases, singular then plural."""

    gender: str
    forms: tuple[str, ...]

    def one(self, case: str) -> str:
        return self.forms[CASES.index(case)]

    def many(self, case: str) -> str:
        return self.forms[6 + CASES.index(case)]


def plural_class(n: int) -> str:
    """The CLDR's plural category of a whole number: "one", "few" or "many"."""
    if n % 10 == 1 and n % 100 != 11:
        return "one"
    return "few" if 2 <= n % 10 <= 4 and not 12 <= n % 100 <= 14 else "many"


def governed(noun: Noun, n: int, case: str) -> str:
    """The form of `noun` after the whole number `n` said in `case`: 2 -> "рубля", 5 -> "рублей", к 5 -> "рублям"."""
    kind = plural_class(n)
    if kind == "one":
        return noun.one(case)
    if case not in _DIRECT:
        return noun.many(case)
    return noun.one("genitive") if kind == "few" else noun.many("genitive")


class RussianNumbers:
    """Number words from one `LanguageData` and one `Speller`. Genders and cases go by their English names."""

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        self._data = data
        self._speller = speller
        self._nouns: dict[str, Noun] = {}
        self._said: dict[tuple[str, str, str], str] = {}

    def noun(self, word: str) -> Noun:
        """The noun whose dictionary form is `word`. Raises `MissingLanguageData` where the data has none."""
        found = self._nouns.get(word)
        if found is None:
            found = self._nouns[word] = self._declined(word)
        return found

    def _declined(self, word: str) -> Noun:
        entry = self._data.get("spoken", f"nouns.{word}")
        gender, *forms = self._data.get("spoken", f"declensions.{entry}").split()
        endings = [form.strip("-") for form in forms]
        stem = word[: len(word) - len(endings[0])]
        return Noun(gender, tuple(stem + ending for ending in endings))

    def cardinal(self, digits: str | int, gender: str = "masculine", case: str = "nominative") -> str:
        """A whole number of any length; beyond eighteen digits its figures are said one by one."""
        plain = str(digits).lstrip("0") or "0"
        if len(plain) > MOST_DIGITS:
            return self._large(plain, gender, case) if len(plain) <= _MOST_NAMED else self.digits(plain)
        key = (plain, gender, case)
        words = self._said.get(key)
        if words is None:
            words = self._said[key] = self._spelled(plain, gender, case)
        return words

    def _spelled(self, plain: str, gender: str, case: str) -> str:
        if plain == "0" and case != "nominative":
            return str(self._data.get("spoken", f"zero.{case}"))
        if gender == "animate":
            return self._animate(plain)
        suffix = "" if case == "nominative" else f"-{case}"
        if case == "prepositional" and gender == "masculine":
            gender = "neuter"  # the same forms; the masculine rules of CLDR 48 leave tens in the nominative
        words = self._speller.spell(plain, "ru", f"%spellout-cardinal-{gender}{suffix}")
        return words[words.index(" ") + 1 :] if words.startswith(_ONE[case]) else words

    def _animate(self, plain: str) -> str:
        """The accusative of one, or many and one, that live: "эвакуировали сто двадцать одного жителя"."""
        head = f"{self.cardinal(int(plain) - 1, 'masculine', 'accusative')} " if int(plain) > 1 else ""
        return head + self.cardinal(1, "masculine", "genitive")

    def _large(self, plain: str, gender: str, case: str) -> str:
        """Beyond the CLDR's rules: each power of a thousand with its noun."""
        said = []
        names: list[str] = self._data.get("spoken", "large_scales")
        for n, name in enumerate(names):
            cut = MOST_DIGITS + 3 * (len(names) - 1 - n)
            count = int(plain[:-cut][-3:] or "0") if len(plain) > cut else 0
            if count:
                said.append(f"{self._spelled(str(count), 'masculine', case)} {governed(self.noun(name), count, case)}")
        rest = plain[-MOST_DIGITS:].lstrip("0")
        return " ".join([*said, *([self._spelled(rest, gender, case)] if rest else [])])

    def digits(self, digits: str) -> str:
        """Figures said one by one."""
        return " ".join(self._ten[int(d)] for d in digits)

    @cached_property
    def _ten(self) -> list[str]:
        return [self._speller.spell(d, "ru", "%spellout-cardinal-masculine") for d in range(10)]

    def ordinal(self, digits: str | int, gender: str = "masculine", case: str = "nominative") -> str:
        """The ordinal in `gender` (or "plural") and `case`; only its last word is declined."""
        n = int(str(digits)[-MOST_DIGITS:])
        if n == 0:
            return self.adjective(str(self._data.get("spoken", "ordinals.0")), gender, case)
        last = _last_part(n)
        stem = str(self._data.maybe("spoken", f"ordinals.{last}") or self._round_stem(last))
        head = f"{self.cardinal(n - last)} " if n > last else ""
        return head + self.adjective(stem, gender, case)

    def _round_stem(self, n: int) -> str:
        """ "двадцатитысячн-ый": the coefficient in the genitive, written as one word with the scale."""
        scale = next(s for s in (10**15, 10**12, 10**9, 10**6, 10**3) if n % s == 0)
        own: dict[str, str] = self._data.get("spoken", "ordinal_coefficients")
        words = [own.get(w, w) for w in self.cardinal(n // scale, "masculine", "genitive").split()]
        return ("" if n == scale else "".join(words)) + str(self._data.get("spoken", f"ordinal_scales.{scale}"))

    def adjective(self, word: str, gender: str, case: str) -> str:
        """`word` is a stem with its pattern behind a bar: "треть|soft"; no bar is the hard pattern."""
        stem, _, pattern = word.partition("|")
        endings: str = self._data.get("spoken", f"adjective.{pattern or 'hard'}.{gender}")
        return stem + endings.split()[CASES.index(case)].strip("-")

    def decimal(self, whole: str, part: str, case: str = "nominative") -> str:
        """ "2,5" -> "две целых пять десятых", in `case`. A part longer than the named places is said by figures."""
        places: list[str] = self._data.get("spoken", "decimal_places")
        head = self.whole_part(whole, case)
        if len(part) > len(places):
            return f"{head} {self.digits(part)}"
        return f"{head} {self.cardinal(part, 'feminine', case)} {self._share(places[len(part) - 1], part, case)}"

    def whole_part(self, whole: str, case: str = "nominative") -> str:
        """ "две целых", "одна целая", "ноль целых"."""
        return f"{self.cardinal(whole, 'feminine', case)} {self._share('цел', whole, case)}"

    def _share(self, stem: str, digits: str, case: str) -> str:
        """ "десятая" after one, "десятых" after the rest (and in the genitive's own way in the oblique cases)."""
        if plural_class(int(digits[-2:] or "0")) == "one":
            return self.adjective(stem, "feminine", case)
        return self.adjective(stem, "plural", "genitive" if case in _DIRECT else case)

    def fraction(self, over: int, under: int, case: str = "nominative") -> str:
        """ "3/4" -> "три четвертых", "1/3" -> "одна третья", in `case`."""
        one = plural_class(over) == "one"
        gender, lower = ("feminine", case) if one else ("plural", "genitive" if case in _DIRECT else case)
        return f"{self.cardinal(over, 'feminine', case)} {self.ordinal(under, gender, lower)}"


def _last_part(n: int) -> int:
    """The part of a number that its ordinal declines: 1999 -> 9, 1912 -> 12, 1900 -> 900, 21000 -> 21000."""
    if n % 100:
        return n % 100 if n % 100 <= 20 else n % 10 or n % 100
    if n % 1000:
        return n % 1000
    scale = next(s for s in (10**15, 10**12, 10**9, 10**6, 10**3) if n % s == 0)
    return n % (scale * 1000)
