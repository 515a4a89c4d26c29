"""Hindi numbers in words: lakh and crore, the hundreds of years, ordinals, the quarters of everyday counting."""

from __future__ import annotations

from promptprep.model.language import LanguageData
from promptprep.model.ports import Speller

MOST_DIGITS = 15  # beyond a hundred kharab the CLDR's rules pile up words that nobody says


class HindiNumbers:
    """Number words from one `LanguageData` and one `Speller`."""

    def __init__(self, data: LanguageData, speller: Speller) -> None:
        self._data = data
        self._speller = speller
        self._said: dict[tuple[str, str], str] = {}

    def _spelled(self, plain: str, rules: str = "") -> str:
        key = (plain, rules)
        words = self._said.get(key)
        if words is None:
            words = self._speller.spell(plain, "hi", rules)
            for theirs, ours in self._data.get("spoken", "respelled").items():
                words = words.replace(theirs, ours)
            self._said[key] = words
        return words

    def cardinal(self, digits: str | int) -> str:
        """A whole number; beyond fifteen digits its figures are said one by one."""
        plain = str(digits).lstrip("0") or "0"
        return self.digits(plain) if len(plain) > MOST_DIGITS else self._spelled(plain)

    def digits(self, digits: str) -> str:
        """Figures said one by one."""
        return " ".join(self._spelled(d) for d in digits)

    def year(self, digits: str) -> str:
        """1999 -> "उन्नीस सौ निन्यानबे", 2026 -> "दो हज़ार छब्बीस": hundreds from 1100 to 1999, else as a number."""
        n = int(digits)
        if not 1100 <= n <= 1999:
            return self.cardinal(digits)
        hundreds, rest = divmod(n, 100)
        head = f"{self.cardinal(hundreds)} {self._data.get('spoken', 'hundred')}"
        return f"{head} {self.cardinal(rest)}" if rest else head

    def decimal(self, whole: str, part: str) -> str:
        """ "2.5" -> "दो दशमलव पाँच": the figures after the point one by one, as the CLDR's rules say them."""
        return f"{self.cardinal(whole)} {self._data.get('spoken', 'point')} {self.digits(part)}"

    def quarters(self, whole: int, quarters: int, wrap: int = 0) -> str:
        """`whole` and one to three quarters: "सवा दो", "डेढ़", "ढाई", "साढ़े तीन", "पौने तीन".

        `wrap` is the number after which counting begins anew (12 on the clock); 0 where it never does.
        """
        word = self._data.get("spoken", "words")
        if quarters == 1:
            return f"{word['quarter_past']} {self.cardinal(whole)}"
        if quarters == 2:
            own = {1: word["half_past_one"], 2: word["half_past_two"]}.get(whole)
            return own or f"{word['half_past']} {self.cardinal(whole)}"
        return f"{word['quarter_to']} {self.cardinal(1 if whole == wrap else whole + 1)}"

    def quarter_more(self) -> str:
        """ "सवा" alone is one and a quarter of what follows."""
        return str(self._data.get("spoken", "words.quarter_past"))

    def ordinal(self, digits: str, ending: str) -> str:
        """The ordinal with the ending as written: ("21", "वीं") -> "इक्कीसवीं", ("2", "रा") -> "दूसरा"."""
        if ending.isascii():
            ending = "वाँ"
        vowel = ending.lstrip("वलरथठस").rstrip("\u0901\u0902") or "ा"
        stem = self._data.maybe("spoken", f"ordinal_stems.{int(digits[-MOST_DIGITS:])}")
        if stem:
            return f"{stem}{vowel}"
        return f"{self.cardinal(digits)}{ending if ending.startswith('व') else 'वाँ'}"
