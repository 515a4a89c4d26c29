"""Amounts with what follows them: units, per cent, degrees, money, counters."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, Protocol

from promptprep.model.language import LanguageData
from promptprep.speaking.languages.cjk_numbers import Numerals
from promptprep.speaking.languages.cjk_text import Amount, Amounts

# As written in English after a currency sign: "$3.5m", "€2bn", "$3 trillion".
_MAGNITUDES = {"k": 3, "thousand": 3, "m": 6, "mn": 6, "mm": 6, "million": 6} | {
    "b": 9, "bn": 9, "billion": 9, "t": 12, "tn": 12, "trn": 12, "trillion": 12,
}  # fmt: skip
_MAGNITUDE = re.compile(rf"\s?({'|'.join(sorted(_MAGNITUDES, key=len, reverse=True))})(?![A-Za-z])", re.IGNORECASE)
_PLACE_OF_NAME = re.compile(r"\{n\} ?")
_DECIMAL_COMMA = re.compile(r",(\d\d)(?![\d,])")
_DEGREES = re.compile(r"\s?(?:(°\s?C|℃)|(°\s?F|℉)|(°))(?![A-Za-z])")
_SIGN_BEHIND = re.compile(r"\s?([$€£])(?!\s?\d)")
_ARC = re.compile(r"\s?(\d{1,2})\s?['′](?:\s?(\d{1,2})(?:\.(\d+))?\s?[\"″])?")


@dataclass(frozen=True, slots=True)
class Said:
    """What is said for the written text up to `end`.

    `unit` is true where a unit was said with the number, `prefix` what stands before the number by the unit's
    template ("百分之"), `below` how the same is said under zero ("" where it is no temperature).
    """

    said: str
    kind: str
    end: int
    otherwise: tuple[str, ...] = ()
    unit: bool = False
    prefix: str = ""
    below: str = ""


class Language(Protocol):
    """What quantities ask of the language they belong to."""

    def figure(self, amount: Amount, following: str, before: str) -> str: ...

    def counted(self, text: str, at: int, amount: Amount) -> Said | None: ...


class Quantities:
    """Reads an amount at a place with its unit."""

    def __init__(self, data: LanguageData, numerals: Numerals, language: Language) -> None:
        number: Mapping[str, Any] = data.get("spoken", "number")
        powers = {unit: i + 1 for i, unit in enumerate(number["units"])}
        powers |= {power: 4 * (i + 1) for i, power in enumerate(number["written_powers"])}
        self.amounts = Amounts({p: n for p, n in powers.items() if p != number["units"][0]}, number["no_power_before"])
        self.numerals = numerals
        self.forms: Mapping[str, str] = data.get("spoken", "forms")
        self._language = language
        self._units = _with_prefixes(data)
        self._unit = _one_of(self._units)
        self.currencies: Mapping[str, str] = data.get("spoken", "currencies")
        self._codes: Mapping[str, str] = data.get("spoken", "currency_codes")
        signs = _either([*self.currencies, *self._codes])
        self._currency = re.compile(rf"(?:{signs})\s?(?=\d)")
        self._code = _one_of(self._codes)
        coins: Mapping[str, str] = data.get("spoken", "coins")
        self._coins = coins
        self._coin = re.compile(rf"\s?({_either(coins)})") if coins else re.compile(r"(?!)")
        self._shares: Mapping[str, str] = data.get("spoken", "shares")
        plain = _either(u for u, said in self._units.items() if said.startswith("{n}") and "/" not in u)
        self._below = re.compile(
            rf"(\s?[^\W\d_a-zA-Z]{{1,8}})?\s?/\s?(?:(10{{0,3}})?({plain})(?![A-Za-z0-9²³])|({_either(self._shares)}))"
        )
        self._unit_alone = re.compile(rf"({plain})(?=당|あたり|当たり)")
        self._lettered_after = re.compile(rf"\s?(?:{'|'.join(data.get('spoken', 'context.lettered_after'))})")
        self._lettered_before = re.compile(rf"(?:{_either(data.get('spoken', 'context.lettered_before'))})\D{{0,3}}\Z")
        self._picture = re.compile(rf"\s?(?:{_either(data.get('spoken', 'context.pictures'))})")
        degrees = "|".join(data.get("spoken", "context.degrees"))
        self._degrees_after = re.compile(rf"\s?(?:(?:到|至|から|에서)\s?[+-]?\d{{1,3}}(?:\.\d)?\s?)?(?:{degrees}|℃)")

    def said(self, text: str, at: int) -> Said | None:
        """A number with its unit, or the bare number."""
        amount = self.amounts.at(text, at)
        if amount is None:
            return None
        found = (
            self._measure(text, at, amount)
            or self._percent(text, amount)
            or self._degrees(text, amount)
            or self._named_money(text, amount)
            or self._language.counted(text, at, amount)
            or self._bare(text, at, amount)
        )
        return self._per(text, found)

    def unit_alone(self, text: str, at: int) -> Said | None:
        """A unit without a number before "per": "kWh당", "kgあたり"."""
        found = self._unit_alone.match(text, at)
        return Said(self._units[found[1]].replace("{n}", "").strip(), "measure", found.end()) if found else None

    def in_words(self, number: str, unit: str) -> str:
        """A plain number with a unit of the list."""
        whole, _, fraction = number.partition(".")
        return self._filled(self._units[unit], Amount(whole.lstrip("0") or "0", fraction))

    def _per(self, text: str, found: Said) -> Said:
        """With what stands below a stroke: "5.5g/cm³", "350kcal/100g", "500円/人", "72次/分"."""
        below = self._below.match(text, found.end)
        same = below and below[3] and text.endswith(below[3], 0, found.end)
        if below is None or same or (below[1] and found.unit):
            return found
        if below[3] == "h" and not below[2]:
            said = self.forms["per_hour"].replace("{n}", found.said + (below[1] or ""))
            return Said(said, found.kind, below.end(), (), True)
        form = "per_measure" if below[3] and found.kind == "measure" and not below[2] else "per"
        if below[3]:
            number = self.numerals.whole(below[2]) if below[2] else self.forms["one"] * (form == "per")
            under = self._units[below[3]].replace("{n}", number).strip()
        else:
            under = self._shares[below[4]]
        said = self.forms[form].replace("{n}", found.said + (below[1] or "")).replace("{per}", under)
        return Said(said, "measure" if found.kind == "cardinal" else found.kind, below.end(), (), True)

    def money(self, text: str, at: int) -> Said | None:
        """A currency sign and the amount behind it, with an English magnitude or the language's powers."""
        sign = self._currency.match(text, at)
        amount = self.amounts.at(text, sign.end()) if sign else None
        if sign is None or amount is None:
            return None
        amount = _decimal_comma(text, amount)
        name = self.currencies.get(sign[0].strip()) or self._codes[sign[0].strip()]
        amount = _magnified(text, amount)
        second = self.amounts.at(text, amount.end + 1) if text[amount.end : amount.end + 1] in ("-", "~") else None
        if second is None or _named(text, second.end):
            return self._per(text, Said(self._money_said(amount, name), "money", amount.end, (), True))
        second = _magnified(text, second)
        left, right = self.numerals.number(amount.whole, amount.fraction) + amount.power, self._money_said(second, name)
        return Said(self.forms["range"].replace("{a}", left).replace("{b}", right), "range", second.end, (), True)

    def _bare(self, text: str, at: int, amount: Amount) -> Said:
        following = text[amount.end : amount.end + 6]
        said = self._language.figure(amount, following, text[max(0, at - 2) : at])
        below = self.forms["below_zero"] + said if self._degrees_after.match(text, amount.end) else ""
        return Said(said, "decimal" if amount.fraction else "cardinal", amount.end, (), False, "", below)

    def _filled(self, template: str, amount: Amount) -> str:
        unit = template.split("{n}", 1)[1].strip()
        return template.replace("{n}", self._language.figure(amount, unit, ""))

    def _percent(self, text: str, amount: Amount) -> Said | None:
        at = amount.end + (text[amount.end : amount.end + 1] == " ")
        name = {"%": "percent", "‰": "per_mille"}.get(text[at : at + 1])
        if name is None:
            return None
        template = self.forms[name]
        return Said(self._filled(template, amount), "percent", at + 1, (), True, template.split("{n}")[0])

    def _degrees(self, text: str, amount: Amount) -> Said | None:
        found = _DEGREES.match(text, amount.end)
        if found is None:
            return None
        name = "celsius" if found[1] else "fahrenheit" if found[2] else "degree"
        said = self._filled(self.forms[name], amount)
        if arc := _ARC.match(text, found.end()) if found[3] else None:
            return Said(self.forms["blank"].join([said, *self._arc(arc)]), "measure", arc.end(), (), True)
        below = self.forms["below_zero"] + said.removeprefix(self.forms[name].split("{n}")[0])
        scale = self.forms[name].split("{n}")[0]
        return Said(said, "measure", found.end(), (), True, scale, below if name == "celsius" else "")

    def _arc(self, found: re.Match[str]) -> Iterator[str]:
        """The minutes and seconds of an angle."""
        yield self.forms["minute"].replace("{n}", self.numerals.whole(found[1]))
        if found[2]:
            yield self.forms["second"].replace("{n}", self.numerals.number(found[2], found[3] or ""))

    def measured(self, text: str, at: int, number: str) -> Said | None:
        """A number already in words with the unit written at `at`."""
        found = self._unit.match(text, at)
        if found is None:
            return None
        return Said(self._units[found[1]].replace("{n}", number), "measure", found.end(), (), True)

    def _measure(self, text: str, at: int, amount: Amount) -> Said | None:
        found = self._unit.match(text, amount.end)
        if found is None or (found[1] == "K" and self._picture.match(text, found.end())):
            return None
        if len(found[1]) == 1 and found[1].isupper() and self._is_letter(text, at, found):
            return None
        template = self._units[found[1]]
        return Said(self._filled(template, amount), "measure", found.end(), (), True, template.split("{n}")[0])

    def _is_letter(self, text: str, at: int, found: re.Match[str]) -> bool:
        """Whether a capital behind a figure names a seat, a row or a rank and no unit: "12A席", "5A级"."""
        seat = self._lettered_before.search(text, max(0, at - 8), at)
        return bool(seat or self._lettered_after.match(text, found.start(1)))

    def _named_money(self, text: str, amount: Amount) -> Said | None:
        if code := self._code.match(text, amount.end):
            return Said(self._money_said(amount, self._codes[code[1]]), "money", code.end(), (), True)
        if sign := _SIGN_BEHIND.match(text, amount.end):
            return Said(self._money_said(amount, self.currencies[sign[1]]), "money", sign.end(), (), True)
        named = self._coin.match(text, amount.end) if len(amount.fraction) == 2 and not amount.power else None
        if named is None:
            return None
        return Said(self._coins_said(amount, named[1], self._coins[named[1]]), "money", named.end(), (), True)

    def _money_said(self, amount: Amount, name: str) -> str:
        if len(amount.fraction) == 2 and not amount.power and name in self._coins:
            return self._coins_said(amount, name, self._coins[name])
        kept = Amount(amount.whole, amount.fraction.rstrip("0"), amount.power, amount.end)
        return self._filled(self.forms["money"].replace("{unit}", name), kept)

    def _coins_said(self, amount: Amount, name: str, coin: str) -> str:
        """Dollars and cents; a coin's name is "" where the language says the decimal."""
        if not coin:
            return self._filled(self.forms["money"].replace("{unit}", name), _without_zeros(amount))
        parts = [(amount.whole, name), (amount.fraction, coin)]
        kept = [(n, unit) for n, unit in parts if int(n)] or parts[:1]
        return self.forms["blank"].join(
            self._filled(self.forms["money"].replace("{unit}", unit), Amount(n.lstrip("0") or "0")) for n, unit in kept
        )


def _decimal_comma(text: str, amount: Amount) -> Amount:
    """Money as it is written on the European continent: "€12,50"."""
    found = _DECIMAL_COMMA.match(text, amount.end) if amount.plain else None
    return Amount(amount.whole, found[1], "", found.end()) if found else amount


def _magnified(text: str, amount: Amount) -> Amount:
    """With the English magnitude behind it multiplied in."""
    found = None if amount.power else _MAGNITUDE.match(text, amount.end)
    return replace(amount.times(_MAGNITUDES[found[1].lower()]), end=found.end()) if found else amount


def _named(text: str, end: int) -> bool:
    """Whether more of a date, a telephone number or another sum follows: no range of money ends here."""
    return text[end : end + 1] in ("-", "/", ":")


def _without_zeros(amount: Amount) -> Amount:
    return Amount(amount.whole, amount.fraction.rstrip("0"), amount.power, amount.end)


def _with_prefixes(data: LanguageData) -> Mapping[str, str]:
    """All units: those with a name of their own, and those formed with a decimal prefix."""
    own: Mapping[str, str] = data.get("spoken", "units")
    prefixes: Mapping[str, str] = data.get("spoken", "prefixes")
    prefixed: Mapping[str, str] = data.get("spoken", "prefixed")
    bases = {**own, **data.get("spoken", "prefixed_only")}
    formed = {
        sign + base: _PLACE_OF_NAME.sub(rf"\g<0>{prefixes[sign]}", bases[base], count=1)
        for base, signs in prefixed.items()
        for sign in signs.split()
    }
    named = {**formed, **own}
    signs = map(chr, range(0x3380, 0x33E0))
    squared = {sign: unicodedata.normalize("NFKC", sign).replace("\u2215", "/") for sign in signs}
    below = {s + n.removeprefix(name): n for s, name in squared.items() for n in named if n.startswith(f"{name}/")}
    return {**{sign: named[name] for sign, name in (squared | below).items() if name in named}, **named}


def _either(names: Iterable[str]) -> str:
    return "|".join(re.escape(n) for n in sorted(names, key=lambda n: (-len(n), n)))


def _one_of(names: Iterable[str]) -> re.Pattern[str]:
    """One of `names` after an optional blank, not cut out of a longer Latin word; a figure may follow with a unit."""
    either = _either(names)
    more = rf"\d{{1,3}}(?:\.\d)?\s?(?:{either})(?![A-Za-z])"
    price = r"\d[\d,.]*[万千億亿만천억]?\s?[円元원]"
    return re.compile(
        rf"\s?({either})(?![A-Za-z²³])(?:(?!\d)|(?={price})|(?<!\d)(?={more}|(?<=m)\d\d(?![\dA-Za-z.%])))"
    )
