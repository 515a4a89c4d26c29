"""Arabic abbreviations, initialisms, Roman figures and letters beside figures."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.spans import Span
from promptprep.speaking.languages.ar_context import GAP, ArabicContext, attach
from promptprep.speaking.languages.ar_numbers import ArabicNumbers
from promptprep.speaking.numbers import ascii_digits
from promptprep.speaking.roman import roman
from promptprep.speaking.ruled import Abbreviations, Handler, reading

SHORTEST_SERIAL = 5  # figures behind letters that are said one by one
_PAGE = re.compile(r"(?:(?<=[\s(])|\A)(ص)[ \u00a0]?\Z")
_WORD_AT_STROKE = re.compile(r"(?:(?<=[\s(:،])|\A)([وف]?)([\u0621-\u064a]+)[ \u00a0]?\Z")
_DEFINITE = re.compile(r"(?<=[^\s-][ \u00a0])[وفبلك]{0,2}(?:ال|لل)[\u0621-\u064a]{2,}\Z")
_NAME = re.compile("[\u0621-\u064a]{3,}")
LONGEST_WORD = 24
_DOTTED = re.compile(r"(?:(?<=[\s(«:،])|\A)[\u0623\u0627-\u064a]\.\Z")
_REST_DOTTED = re.compile(r"(?:\.[\u0623\u0627\u0628\u062a-\u063a\u0641-\u0648\u064a]){2,4}(?![\w\u064b-\u0652])")
_TITLE_AFTER_AND = re.compile(r"(?<![\w.])([وفلب])(\w\.)\Z")


class ArabicLetters:
    """Handlers for what is written short and for Latin letters."""

    def __init__(self, data: LanguageData, numbers: ArabicNumbers, context: ArabicContext) -> None:
        self.numbers = numbers
        self.context = context
        self._and_so_on_words: str = data.get("spoken", "words.and_so_on")
        self._acronyms: Mapping[str, str] = data.get("spoken", "acronyms")
        self._letter: Mapping[str, str] = data.get("spoken", "letters")
        self._ranked: Mapping[str, bool] = data.get("spoken", "ranked")
        self._titles = {written: said.split("|") for written, said in data.get("spoken", "titles").items()}
        self._sizes = frozenset(data.get("spoken", "sizes.words"))
        self._rulers = frozenset(data.get("spoken", "rulers.words"))
        self._queens = frozenset(w for w in self._rulers if w.endswith("ة"))
        self._or: str = data.get("spoken", "words.or")
        self._arabic_letter: Mapping[str, str] = data.get("spoken", "arabic_letters")
        self._page: str = data.get("spoken", "before_a_number")["ص."]
        self._numbered = Abbreviations(data.get("spoken", "before_a_number"))
        self._at_stroke = {w: said.split("|") for w, said in data.get("spoken", "titles_at_stroke").items()}
        titles = {written: forms[0] for written, forms in self._titles.items()}
        self._abbreviations = Abbreviations({**data.get("spoken", "abbreviations"), **titles})

    def rules(self) -> list[tuple[str, Handler]]:
        return [
            (r"إلخ\.?(?!\w)", self._and_so_on),
            (r"[IVXLC]{2,}(?!\w)", self._roman),
            (r"(?<=[\u0621-\u064a][ \u00a0])[IVX](?![\w.])", self._short_roman),
            (r"[A-Z]{1,6}\d[A-Z\d]{0,12}(?!\w)", self.mixed_serial),
            (r"[A-Z]+(?![a-z])", self._initialism),
        ]

    def at_stop(self, text: str, at: int, floor: int) -> Reading | None:
        """What is written short with its first full stop at `at`."""
        numbered = self._numbered.around(text, at, floor)
        if numbered and re.match(rf"{GAP}?\d", text[numbered[1] : numbered[1] + 2]):
            return Reading(Span(numbered[0], numbered[1]), numbered[3], "abbreviation")
        found = self._abbreviations.around(text, at, floor)
        close = found and found[2] in self._titles and text[found[1] : found[1] + 1].isalpha()
        counted = close and found and text[max(0, found[0] - 2) : found[0]].rstrip()[-1:].isdecimal()
        if found and (not close or (_NAME.match(text, found[1]) and not counted)):
            title = self._abbreviation(text, *found)
            return replace(title, said=f"{title.said} ") if close else title  # "د.أحمد"
        spelled = _DOTTED.search(text, max(floor, at - 2), at + 1) and _REST_DOTTED.match(text, at)
        if spelled:
            letters = (text[at - 1] + spelled[0]).replace(".", "")
            return Reading(Span(at - 1, spelled.end()), " ".join(self._arabic_letter[c] for c in letters), "initialism")
        joined = _TITLE_AFTER_AND.search(text, max(floor, at - 4), at + 1)
        if joined and joined[2] in self._titles:
            title = self._abbreviation(text, joined.start(2), at + 1, joined[2], "")
            return Reading(Span(joined.start(), at + 1), attach(joined[1], title.said), "abbreviation")
        return None

    def stroke_rules(self) -> list[tuple[str, Handler]]:
        """ "د/ منى", "السيد/ أحمد": a title before a stroke, which is not said; "العمل/الدراسة": one or the other."""
        return [
            (rf"/(?={GAP}?(?P<name>[\u0621-\u064a]{{2,}}))", self._title_at_stroke),
            (r"/(?=ال[\u0621-\u064a]{2})", self._either),
        ]

    def _either(self, found: re.Match[str]) -> Reading | None:
        """The stroke between two definite nouns, but not in "القاهرة/رويترز" at the head of a dispatch."""
        before = _DEFINITE.search(found.string, max(0, found.start() - LONGEST_WORD), found.start())
        return reading(found, f" {self._or} ", "symbol") if before else None

    def _title_at_stroke(self, found: re.Match[str]) -> Reading | None:
        title = _WORD_AT_STROKE.search(found.string, max(0, found.start() - 12), found.start())
        forms = self._at_stroke.get(title[2]) if title else None
        if title is None or forms is None:
            return None
        said = forms[1] if self.context.looks_feminine(found["name"]) else forms[0]
        return Reading(Span(title.start(1), found.end()), attach(title[1], said), "abbreviation")

    @staticmethod
    def page_mark(text: str, start: int) -> re.Match[str] | None:
        return _PAGE.search(text, max(0, start - 4), start)

    def page(self, text: str, start: int, digits: str) -> Reading | None:
        """ "ص 12" -> "صفحة اثنتا عشرة", written without a stop."""
        found = self.page_mark(text, start)
        if not found:
            return None
        said = f"{self._page} {self.numbers.cardinal(digits, feminine=True)}"
        return Reading(Span(found.start(1), start + len(digits)), said, "abbreviation")

    def _roman(self, found: re.Match[str]) -> Reading | None:
        n = roman(found[0])
        if not n or n > 99 or found.string[found.start() - 1 : found.start()].isalnum():
            return None
        before = self.context.setting(found.string, found.start(), found.end(), 0).before
        if found[0] in self._sizes and before not in self._ranked:
            return None
        queen = self.context.is_near(self._queens, found.string, found.start())
        feminine = self._ranked.get(before, queen or self.context.looks_feminine(before))
        return reading(found, self.numbers.ordinal(n, feminine=feminine), "roman")

    def _short_roman(self, found: re.Match[str]) -> Reading | None:
        """One letter after a name or a noun that has ranks: "الملك فاروق I", "المرحلة V", but not "حرف V"."""
        before = self.context.setting(found.string, found.start(), found.end(), 0).before
        ruler = self.context.is_near(self._rulers, found.string, found.start())
        if before in self._ranked or (before not in self._rulers and ruler):
            return self._roman(found)
        return None

    def mixed_serial(self, found: re.Match[str]) -> Reading:
        """Letters by name and figures as numbers: "M31" -> "إم واحد وثلاثون"."""
        parts = re.findall(r"\d+|[A-Z]", found[0])
        count = {True: self.numbers.digits, False: self.numbers.cardinal}
        said = (self._letter.get(p) or count[len(p) >= SHORTEST_SERIAL](ascii_digits(p)) for p in parts)
        return reading(found, " ".join(said), "serial")

    def _initialism(self, found: re.Match[str]) -> Reading | None:
        before = found.string[found.start() - 1 : found.start()]
        letters = found[0]
        if (before.isascii() and before.isalnum()) or len(letters) > 6:
            return None
        return reading(found, self._acronyms.get(letters) or " ".join(self._letter[c] for c in letters), "initialism")

    def _abbreviation(self, text: str, start: int, end: int, written: str, said: str) -> Reading:
        forms = self._titles.get(written)
        if forms:
            name = re.match(r"\s*([\u0621-\u0652]+)", text[end : end + 24])
            said = forms[1] if name and self.context.looks_feminine(name[1]) else forms[0]
        return Reading(Span(start, end), said, "abbreviation")

    def _and_so_on(self, found: re.Match[str]) -> Reading | None:
        if found.string[found.start() - 1 : found.start()].isalnum():
            return None
        return reading(found, self._and_so_on_words, "abbreviation", end=found.start() + 3)
