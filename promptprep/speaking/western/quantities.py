"""Numbers with what belongs to them: sign, currency, magnitude, unit, per cent, the second end of a range, a year."""

from __future__ import annotations

import re
from dataclasses import replace

from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.ruled import in_row_of_pairs
from promptprep.speaking.western.dates import sentence_end
from promptprep.speaking.western.grammar import Grammar, Noun, noun, word_after, word_before
from promptprep.speaking.western.literal import Literal
from promptprep.speaking.western.money import Currency, currency, price, price_range
from promptprep.speaking.western.reach import Figure, Reach, year_like
from promptprep.speaking.western.shorthand import Shorthand
from promptprep.speaking.western.units import BLANK, Unit, Units, alternatives

_LINK = re.compile(r"[ \u00a0](?:de(?=[ \u00a0])|d[’'])")
_SHORT = 2
_SETS = (6, 7)
_RATE = re.compile(r"-(?:an?|per)-[a-z]")
_RESULT = re.compile(r"[ \u00a0]?=")
_SIDE = re.compile(r"[ \u00a0][x](?=[ \u00a0]\d)")
_CODE = re.compile("[A-Z]{3}")
_NO_CENTS = re.compile(r"[.,](?:-{1,2}|[–—])(?![\d\w])")


class Quantities:
    """Reads a quantity at its first digit, reaching left for sign and currency."""

    def __init__(self, grammar: Grammar) -> None:
        self.g = grammar
        self.units = Units(grammar)
        self.currencies = {key: currency(entry) for key, entry in grammar.table("currencies").items()}
        money = alternatives(self.currencies)
        self._right = re.compile(rf"{BLANK}?(?P<money>{money})(?!\w|/\d)")
        self.money_magnitudes = {k: noun(v) for k, v in grammar.table("magnitudes.money").items()}
        self.magnitudes = {k: noun(v) for k, v in grammar.table("magnitudes.written").items()}
        self._magnitude = re.compile(rf"{BLANK}?({alternatives(self.magnitudes)})(?!\w)")
        self._money_magnitude = re.compile(
            rf"{BLANK}?({alternatives([*self.money_magnitudes, *self.magnitudes])})(?![^\W_€$£])"
        )
        words = [k for k in (*self.money_magnitudes, *self.magnitudes) if len(k) > _SHORT]
        self._hyphened_magnitude = re.compile(rf"-({alternatives(words)})(?!\w)")
        self._magnitude_word = re.compile(rf"{BLANK}?({alternatives(words)})(?!\w)")
        self._percent = re.compile(rf"{BLANK}?([%‰])")
        self.shorthand = Shorthand(grammar)
        self._row = str(grammar.data.maybe("spoken", "scores.in_row", ""))
        self.score_before = grammar.wordset("scores.before")
        self.reach = Reach(grammar, self.currencies, self._unit_follows)
        self.year_before = grammar.wordset("years.before")
        self.count_before = grammar.wordset("years.count_before")

    def at(self, text: str, at: int, floor: int) -> Reading | None:
        first = self.g.literals.at(text, at)
        if first is None:
            return None
        figure = Figure(first, at, first.end)
        self.reach.left(text, figure, floor)
        figure.before = word_before(text, figure.start)
        figure.governor = self.g.governor(text, figure.start, figure.before)
        self.reach.second(text, figure)
        said, kind, end, otherwise = self._said(text, figure)
        if side := _SIDE.match(text, end):
            said, end = f"{said} {self.shorthand.word_by(text, end)}", side.end()
        otherwise = otherwise or self._grouped_otherwise(text, figure, said)
        if figure.sign:
            said = f"{figure.sign} {said}"
        end = sentence_end(text, figure.start, end, self.g.openers)
        return Reading(Span(figure.start, end), said, kind, otherwise)

    def _grouped_otherwise(self, text: str, figure: Figure, said: str) -> tuple[str, ...]:
        """Three decimals that end in a nought may be another country's thousands: "1.500 km"."""
        first = figure.first
        if len(first.fraction) != 3 or not first.fraction.endswith("0") or not 0 < first.value < 1000 or figure.second:
            return ()
        other = replace(figure, first=Literal(first.whole + first.fraction, "", first.end, grouped=True))
        return (self._said(text, other)[0],)

    def _unit_follows(self, text: str, at: int) -> bool:
        if self.units.at(text, at) or self._right.match(text, at) or self._money_magnitude.match(text, at):
            return True
        return self.shorthand.times(text, at) is not None

    def _said(self, text: str, figure: Figure) -> tuple[str, str, int, tuple[str, ...]]:
        """Words, kind, end, other sayings."""
        end = figure.end
        if figure.first.mark:
            figure.first = self._local(text, figure)
        if money := self._money(text, figure):
            return *money, ()
        if percent := self._percent.match(text, end):
            return self._percentage(text, figure, percent)
        if crowd := self.shorthand.crowd(text, end, figure.before):
            return self._counted(figure, crowd.noun), "cardinal", crowd.end, ()
        if unit := self.units.at(text, end):
            said, kind, last, _ = self._measured(text, figure, unit, None)
            million = self.shorthand.perhaps_million(text, end)
            return said, kind, last, (self._counted(figure, million),) if million else ()
        if size := self._magnitude_word.match(text, end):
            link = _LINK.match(text, size.end()) if self.g.million_link else None
            unit = self.units.at(text, link.end() if link else size.end())
            if unit:
                return self._measured(text, figure, unit, self._size(size[1]))
        if unit := self._linked_unit(text, end, figure):
            return self._measured(text, figure, unit, None)
        if times := self.shorthand.times(text, end):
            per, last = self.units.per_at(text, times.end)
            return self._counted(figure, times.noun) + per, "cardinal", last, ()
        if figure.second is None and (by := self.shorthand.by(text, end, figure.first)):
            return f"{self._side(figure.first)} {by.noun.one}", "measure", by.end, ()
        if short := self.shorthand.magnitude(text, end, figure.second or figure.first):
            return self._counted(figure, short.noun), "cardinal", short.end, ()
        if magnitude := self._magnitude.match(text, end):
            link = _LINK.match(text, magnitude.end()) if self.g.million_link else None
            if unit := self.units.at(text, link.end()) if link else None:
                return self._measured(text, figure, unit, self.magnitudes[magnitude[1]])
            return self._counted(figure, self.magnitudes[magnitude[1]]), "cardinal", magnitude.end(), ()
        if figure.second and _RESULT.match(text, end):
            return f"{self.g.number(figure.first)} {self.g.minus} {self.g.number(figure.second)}", "cardinal", end, ()
        if figure.second:
            said, kind, otherwise = self._plain_range(text, figure, self.g.counted_gender(text, end))
            return said, kind, end, otherwise
        return self._plain(text, figure)

    def _linked_unit(self, text: str, at: int, figure: Figure) -> Unit | None:
        """The unit of so many millions of it: "3 000 000 de km"."""
        link = _LINK.match(text, at) if figure.first.whole.endswith("000000") and self.g.million_link else None
        return self.units.at(text, link.end()) if link else None

    def _side(self, literal: Literal) -> str:
        """A picture's width of four figures is said as a year is: "nineteen twenty by ten eighty"."""
        return self.g.year(literal.whole) if len(literal.whole) == 4 else self.g.number(literal)

    def _size(self, written: str) -> Noun:
        return self.money_magnitudes.get(written) or self.magnitudes[written]

    def _measured(
        self, text: str, figure: Figure, unit: Unit, size: Noun | None
    ) -> tuple[str, str, int, tuple[str, ...]]:
        what = unit.noun
        if self.g.attributive(figure.before, word_after(text, unit.end)):
            what = Noun(what.one, what.one, what.gender)
        if text[unit.end : unit.end + 1] != "-":
            what = self.g.after_preposition(what, figure.governor)
        per, end = self.units.per_at(text, unit.end)
        said = self._counted(figure, what, size) + per
        if by := self.shorthand.by(text, end, figure.first, bare=False):
            return f"{said} {by.noun.one}", "measure", by.end, ()
        return said, "measure", end, ()

    def _percentage(self, text: str, figure: Figure, percent: re.Match[str]) -> tuple[str, str, int, tuple[str, ...]]:
        """Per cent; both ends of "5%-7%" may carry the sign."""
        end = percent.end()
        if figure.second is None and (dash := self.reach.dash.match(text, end)):
            second = self.g.literals.at(text, dash.end())
            closing = self._percent.match(text, second.end) if second else None
            if closing and closing[1] == percent[1]:
                figure.second, end = second, closing.end()
        word = self.g.text("percent.word" if percent[1] == "%" else "percent.mille")
        per, end = self.units.per_at(text, end)
        return f"{self._ends(figure, self.g.text('percent.gender'))} {word}{per}", "percent", end, ()

    def _local(self, text: str, figure: Figure) -> Literal:
        """With the language's own decimal mark where the number measures something; a bare "3.5" may be a name."""
        measures = figure.currency or self._unit_follows(text, figure.end) or self._percent.match(text, figure.end)
        return replace(figure.first, mark=self.g.literals.mark) if measures else figure.first

    def _counted(self, figure: Figure, what: Noun, magnitude: Noun | None = None) -> str:
        if figure.second is None:
            return self.g.counted(figure.first, what, magnitude, figure.governor)
        said = self.g.counted(figure.second, what, magnitude)
        return self.g.text("numbers.range").format(self.g.range_start(figure.first, (magnitude or what).gender), said)

    def _ends(self, figure: Figure, gender: str) -> str:
        first = self.g.number(figure.first, gender)
        if figure.second is None:
            return first
        return self.g.text("numbers.range").format(first, self.g.number(figure.second, gender))

    def _money(self, text: str, figure: Figure) -> tuple[str, str, int] | None:
        end, of, size = figure.end, figure.currency, None
        magnitude = self._money_magnitude.match(text, end)
        hyphened = self._hyphened_magnitude.match(text, end) if of else None
        if magnitude := magnitude or hyphened:
            size, end = self._size(magnitude[1]), magnitude.end()
        elif (flat := _NO_CENTS.match(text, end)) and (of or self._right.match(text, flat.end())):
            end = flat.end()
        if of is None:
            right = self._right.match(text, end)
            if right is None:
                return None
            of, end = self.currencies[right["money"]], right.end()
        if (code := self._right.match(text, end)) and _CODE.fullmatch(code["money"]):
            of, end = self.currencies[code["money"]], code.end()
        if hyphened or _RATE.match(text, end) or self.g.attributive(figure.before, word_after(text, end)):
            of = of.attributive()
        per, end = self.units.per_at(text, end)
        return self._amount(figure, of, size) + per, "money", end

    def _amount(self, figure: Figure, currency: Currency, size: Noun | None) -> str:
        if size is not None:
            return self._counted(figure, currency.unit, size)
        if figure.second is None:
            said = price(self.g, figure.first, currency)
        else:
            said = price_range(self.g, figure.first, figure.second, currency)
        return said or self._counted(figure, currency.unit)

    def _plain_range(self, text: str, figure: Figure, gender: str) -> tuple[str, str, tuple[str, ...]]:
        first, second = figure.first, figure.second
        assert second is not None
        template, score = self.g.text("numbers.range"), self.g.text("scores.between")
        if year_like(first) and (year_like(second) or len(second.whole) == 2):
            last = self.g.year(second.whole) if year_like(second) else self.g.cardinal(second.whole)
            return template.format(self.g.year(first.whole), last), "range", ()
        ends = self.g.range_start(first, gender), self.g.number(second, gender)
        small = first.is_whole and second.is_whole and max(len(first.whole), len(second.whole)) <= 3
        sets = max(first.value, second.value) in _SETS and min(first.value, second.value) in range(_SETS[-1])
        if small and sets and self._row and in_row_of_pairs(text, figure.start, figure.end):
            return self._row.format(*ends), "score", ()
        if small and (first.value > second.value or figure.before.casefold() in self.score_before):
            return score.format(*ends), "score", ()
        return template.format(*ends), "range", ()

    def _plain(self, text: str, figure: Figure) -> tuple[str, str, int, tuple[str, ...]]:
        literal, end = figure.first, figure.end
        after = word_after(text, end)
        if year_like(literal) and not figure.sign:
            chosen = self._is_year(text, end, figure.before, after)
            year, count = self.g.year(literal.whole), self.g.before_noun(literal, text, figure.start, after)
            said, other = (year, count) if chosen else (count, year)
            doubtful = chosen and after and self.g.counts(after) and year != count
            return said, "year" if chosen else "cardinal", end, (other,) if doubtful else ()
        if literal.part and literal.whole and after and (around := self.g.around_noun(literal, after)):
            return around, "fraction", end + 1 + len(after), ()
        kind = "fraction" if literal.part else "decimal" if literal.fraction else "cardinal"
        said = self.g.before_noun(literal, text, figure.start, after)
        return said, kind, end + said.endswith(("'", "-")), ()

    def _is_year(self, text: str, end: int, before: str, after: str) -> bool:
        """Four figures without a separator: a year, unless the words around count something."""
        earlier = before.casefold()
        if earlier in self.count_before:
            return False
        if earlier in self.year_before:
            return True
        return not after or not self.g.counts(after)
