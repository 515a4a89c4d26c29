"""How far a quantity reaches from its first digit: to a sign and currency on its left, to a range's second end."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from promptprep.speaking.western.grammar import Grammar, word_before
from promptprep.speaking.western.literal import VULGAR, Literal
from promptprep.speaking.western.money import Currency
from promptprep.speaking.western.units import BLANK, alternatives

_LEFT_SPAN = 10
_SUM_AHEAD = 24
_LARGE = 100
_SPACED = re.compile(rf"{BLANK}-{BLANK}(?=\d)")
_PER_CENT = re.compile(rf"{BLANK}?%")
_DEGREES = re.compile(r"°([CF]?)[-–](?=\d{1,3}°\1(?![\w\d'′]))")
_COMPARED = re.compile(r"(?:[\d%]|(?<!\w)[A-Za-zα-ω]) [<>≤≥] \Z")
_VERB_LEFT = 24
_ASKED = re.compile(r"([^\W\d_]+) [\d.,%]+ [<>≤≥] \Z")
_CODE_GOES_ON = re.compile(r"[-–]\d|\w")
_PERCENT = re.compile(rf"[\d.,]+{BLANK}?[%‰]")
_BAR = re.compile("/")
_SEASON = re.compile(r"/(?:\d\d)?(\d{2})(?![\d/])")


@dataclass(slots=True)
class Figure:
    """One quantity while it is being read."""

    first: Literal
    start: int
    end: int
    sign: str = ""
    currency: Currency | None = None
    second: Literal | None = None
    before: str = ""
    governor: str = ""


class Reach:
    """Looks around a figure. `follows` says whether a unit or a currency begins at a place."""

    def __init__(
        self, grammar: Grammar, currencies: Mapping[str, Currency], follows: Callable[[str, int], bool]
    ) -> None:
        self.g = grammar
        self.currencies = currencies
        self._follows = follows
        self.signs = grammar.table("symbols.before_number")
        money = alternatives(k for k in self.currencies if len(k) > 1 or not k.isalpha())
        signs = "".join(re.escape(s) for s in self.signs if s not in "-−")
        sign = rf"(?:(?<![\w.)\]%°]){BLANK}?(?:[-−]|(?<=[\s(])(?<!\d[ \u00a0])–)|[{signs}]{BLANK}?)"
        self._left = re.compile(
            rf"(?:(?P<sign>{sign})?(?<!\w)(?P<money>{money}){BLANK}?(?P<sign2>[-−])?|(?P<sign3>{sign}))\Z"
        )
        self.dash = re.compile(
            rf"(?:[-‐‑–—−]|{BLANK}[–—]{BLANK})(?=(?:{money})?{BLANK}?[\d{VULGAR}])(?:{money})?{BLANK}?"
        )
        operators = grammar.data.maybe("spoken", "symbols.operators", {})
        self._compared = {**self.signs, **operators, **grammar.table("symbols.between_figures")}
        self.score_before = grammar.wordset("scores.before")
        self.minus_after = frozenset(grammar.data.maybe("spoken", "numbers.minus_after", ()))
        self.fall_before = frozenset(grammar.data.maybe("spoken", "numbers.fall_before", ()))

    def left(self, text: str, figure: Figure, floor: int) -> None:
        at = figure.start
        if at == floor or text[at - 1].isdecimal():
            return
        if text[at - 3 : at] == " - " and at - 2 >= floor and "=" in text[at : at + _SUM_AHEAD]:
            figure.start, figure.sign = at - 2, self.g.minus
            return
        if text[at - 2 : at] in ("- ", "– ") and at - 2 >= floor and self._is_fall(text, at):
            figure.start, figure.sign = at - 2, self.g.minus
            return
        if _COMPARED.search(text, max(0, at - 4), at) and at - 2 >= floor:
            figure.start, figure.sign = at - 2, self._comparison(text, at)
            return
        low = max(floor, at - _LEFT_SPAN)
        found = self._left.search(text, low, at)
        if found is None:
            return
        sign = (found["sign"] or found["sign2"] or found["sign3"] or "").strip()
        figure.sign = self.signs.get(sign, self.g.minus) if sign else ""
        figure.currency = self.currencies[found["money"]] if found["money"] else None
        blanks = len(found[0]) - len(found[0].lstrip())
        figure.start = found.start() + blanks

    def _comparison(self, text: str, at: int) -> str:
        """What compares two figures, without the verb that stands in front of both ("Is 3 < 5?")."""
        said = str(self._compared[text[at - 2]])
        verb, _, rest = said.partition(" ")
        asked = _ASKED.search(text, max(0, at - _VERB_LEFT), at)
        return rest if asked and asked[1].casefold() == verb else said

    def _is_fall(self, text: str, at: int) -> bool:
        """A minus with a blank behind it, as balance sheets print it: "en baisse de - 7,8 %", "(- 4,2 %)"."""
        if word_before(text, at - 2).casefold() in self.minus_after:
            return True
        before = text[max(0, at - _LEFT_SPAN) : at - 2]
        led = not before.strip() or before.endswith("(") or word_before(text, at - 2).casefold() in self.fall_before
        return led and _PERCENT.match(text, at) is not None

    def second(self, text: str, figure: Figure) -> None:
        dash = self.dash.match(text, figure.end) or self._season(text, figure) or _DEGREES.match(text, figure.end)
        spaced = None if dash else _SPACED.match(text, figure.end)
        dash = dash or spaced
        if dash is None or (figure.first.part and not figure.first.whole):
            return
        second = self.g.literals.at(text, dash.end())
        if second is None:
            return
        if spaced and not (self._follows(text, second.end) or _PER_CENT.match(text, second.end)):
            return
        if self._is_type_number(figure, second):
            return
        if not _CODE_GOES_ON.match(text, second.end) or self._follows(text, second.end):
            figure.second, figure.end = second, second.end

    def _is_type_number(self, figure: Figure, second: Literal) -> bool:
        """A name such as 747-400: it falls, is too large for a score, and no word of a score stands before."""
        named = (not year_like(figure.first) or len(second.whole) == 3) and figure.first.value - second.value >= _LARGE
        falls = figure.first.value > second.value and figure.first.value >= _LARGE and named
        return falls and figure.currency is None and figure.before.casefold() not in self.score_before

    def _season(self, text: str, figure: Figure) -> re.Match[str] | None:
        """The bar of a season that spans two years: 2026/27, 2026/2027."""
        found = _SEASON.match(text, figure.end)
        follows = found and year_like(figure.first) and str(figure.first.value + 1).endswith(found[0][1:])
        return _BAR.match(text, figure.end) if follows else None


def year_like(literal: Literal) -> bool:
    """Four figures without a separator, from 1000 to 2199."""
    return literal.is_whole and not literal.grouped and len(literal.whole) == 4 and 1000 <= literal.value <= 2199
