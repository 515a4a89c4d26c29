"""Arabic quantities: numbers as written, with their units, money and scales."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from promptprep.model.language import LanguageData
from promptprep.speaking.languages.ar_numbers import AND, ArabicNumbers, Counted, counted
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.ruled import as_written


class ArabicQuantities:
    """Puts written numbers and what they count in words."""

    def __init__(self, data: LanguageData, numbers: ArabicNumbers) -> None:
        self.numbers = numbers
        entries: Mapping[str, Mapping[str, Any]] = data.get("spoken", "money")
        self.units = {unit: counted(entry) for unit, entry in data.get("spoken", "units").items()}
        self.money = {sign: counted(entry) for sign, entry in entries.items()}
        self.per: Mapping[str, str] = data.get("spoken", "per")
        self.scales: Mapping[str, int] = data.get("spoken", "scales")
        self._parts = {
            sign: counted(data.get("spoken", f"money_parts.{e['part']}")) for sign, e in entries.items() if "part" in e
        }

    @staticmethod
    def parsed(written: str) -> tuple[str, str]:
        plain = re.sub(r"[٬،\s]", "", ascii_digits(written))
        if re.fullmatch(r"\d{1,3}(?:,\d{3})+(?:[.٫]\d+)?", plain):
            plain = plain.replace(",", "")
        if re.fullmatch(r"\d{1,3}(?:\.\d{3}){2,}", plain):
            plain = plain.replace(".", "")
        *groups, last = plain.replace("٫", ".").replace(",", ".").split(".")
        return ("".join(groups), last) if groups else (last, "")

    def number(self, written: str, noun: Counted | None = None, case: str = "nominative", bound: bool = False) -> str:
        whole, part = self.parsed(written)
        if part:
            return self.numbers.decimal(whole, part, case)
        return self.numbers.cardinal(whole, feminine=bool(noun and noun.feminine), case=case, bound=bound)

    def noun(self, unit: str | None) -> Counted | None:
        if not unit:
            return None
        table = {**self.money, **self.units}
        return table[as_written(unit, table)]

    def counted(self, written: str, noun: Counted | None, case: str) -> str:
        """The number with its noun in the form that it asks for; a decimal takes the singular."""
        whole, part = self.parsed(written)
        if noun is None or not part:
            return self.numbers.count(whole, noun, case) if noun else self.number(written, case=case)
        return f"{self.numbers.decimal(whole, part, case)} {self.numbers.named(noun)}"

    def scaled(self, written: str, scale: str, noun: Counted | None, case: str) -> str:
        """ "$3.5m" -> "ثلاثة فاصلة خمسة مليون دولار", "$5m" -> "خمسة ملايين دولار"."""
        whole, part = self.parsed(written)
        tail = f" {self.numbers.named(noun)}" if noun else ""
        power = self.numbers.scale(self.scales[scale])
        if part:
            return f"{self.numbers.decimal(whole, part, case)} {power.one}{tail}"
        words = self.numbers.cardinal(int(whole[:9]) * 10 ** self.scales[scale], case=case, bound=bool(noun))
        return f"{words}{tail}"

    def amount(self, written: str, money: str, case: str) -> str:
        whole, part = self.parsed(written)
        known = as_written(money, self.money)
        noun, small = self.money[known], self._parts.get(known)
        if len(part) != 2 or not small:
            return self.counted(written, noun, case)
        if not part.strip("0"):
            return self.numbers.count(whole, noun, case)
        cents = self.numbers.count(part, small, case)
        return f"{self.numbers.count(whole, noun, case)} {AND}{cents}" if whole.strip("0") else cents
