"""Latin letters inside Japanese, Chinese and Korean copy: letter names, acronyms, codes, Roman numerals, addresses."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from typing import Protocol

from promptprep.model.language import LanguageData
from promptprep.speaking.languages.cjk_numbers import Numerals
from promptprep.speaking.languages.cjk_quantities import Quantities, Said
from promptprep.speaking.languages.cjk_text import roman

_RUN = re.compile(r"[A-Za-z]+")
_LETTERS_NOT_TITLES = frozenset(("CH", "EP", "NR", "P", "PP", "SEC", "TAB"))  # unless a full stop or blank follows
_LONGEST_TITLE = 6
_LONGEST_CODE = 10  # characters in which a code's last hyphen stands
_HALF_DAYS = ("AM", "PM")
_BESIDE_A_FIGURE = re.compile(r"\d\s?[AP]M|[AP]M\s?\d|[時时點点시]\s?[AP]M")
_STROKED = re.compile(r"[A-Z](?:/[A-Z])+(?![A-Za-z\d/])")
_CAPITALS = re.compile(
    r"[a-z]?[A-Z]{2,6}(?![A-Za-z])|[A-Za-z](?![A-Za-z'.])|[A-Z][a-z][A-Z](?![A-Za-z])|[a-z]{2,3}(?=[²³⁻⁰¹⁴-⁹])"
)
_CODE = re.compile(r"([A-Za-z]{1,5})-?(\d+)(?:\.(\d+))?(?![\d:/]|-\d|,\d{3}|\.\d)(-[A-Z]{1,3}(?![A-Za-z\d-]))?")
_PARTED_CODE = re.compile(r"([A-Z]{1,4})-?(\d{2,4})-(\d{1,4})(?![\d.,:A-Za-z-])")
_JOINED = re.compile(r"([A-Z]{1,5})-([A-Z]{1,3})(?![A-Za-z\d-])")
_STAGE = re.compile(r"([A-Z]{1,5})-(I{2,3}|IV|VI{0,2})([A-Z]?)(?![A-Za-z\d])")
_ORDINARY_ROMAN = re.compile(r"(?:X{0,2}(?:I[VX]|VI{1,3}|I{2,3})|X[VI]|(?=[LCM]*[IVX])[IVXLCM]{4,})(?![A-Za-z])")
_DOTTED = re.compile(r"(?:[A-Z]\.){2,6}(?:[A-Z](?![A-Za-z.]))?(?![A-Za-z])")
_COMET = re.compile(r"([CPXDAI])/(\d{4}) ([A-Z]{1,2})(\d{1,3})(?![A-Za-z\d])")
_F_NUMBER = re.compile(r"[fF]/(\d{1,2})(?:\.(\d))?(?![\d/A-Za-z])")
_KIND_AFTER = re.compile(r"\s?[型形형级級]")
_SCHEME = re.compile(r"(?:https?|ftp)://")
_ADDRESS = re.compile(
    r"(?:(?:https?|ftp)://)?(?:[A-Za-z0-9._+-]{1,64}@)?[A-Za-z0-9-]{1,63}(?:\.[A-Za-z0-9-]{1,63}){0,6}\.[a-z]{2,12}"
    r"(?![A-Za-z0-9])(?::\d{1,5})?(?:[/?#][!-~]*)?"
)
_NAME = re.compile(r"@[A-Za-z0-9_]{2,40}(?:\.[A-Za-z0-9_]+)*")
_TAIL = ".,;:!?)]}>\"'"
_PART = re.compile(r"[A-Za-z]+|\d+|[^A-Za-z\d]")
_VOWELS = frozenset("aeiouyAEIOUY")


class Language(Protocol):
    """What Latin letters ask of the language they stand in."""

    numerals: Numerals
    quantities: Quantities
    forms: Mapping[str, str]
    symbols: Mapping[str, str]

    def serial_digits(self, digits: str) -> str: ...

    def year(self, digits: str) -> str: ...


class Latin:
    """Reads the Latin letters at a place; None lets them pass."""

    def __init__(self, data: LanguageData, language: Language) -> None:
        self._language = language
        self._names: Mapping[str, str] = data.get("spoken", "letters")
        self._words: Mapping[str, str] = data.get("spoken", "acronyms")
        self._capitals: Mapping[str, str] = data.get("spoken", "capitals")
        self._abbreviations: Mapping[str, str] = data.get("spoken", "abbreviations")
        names = sorted(self._abbreviations, key=lambda n: (-len(n), n))
        self._abbreviation = re.compile(f"(?:{'|'.join(re.escape(n) + _end_of(n) for n in names)})")
        self._catalogue = re.compile(rf"({'|'.join(data.get('spoken', 'context.catalogues'))}) ?(\d+)(?![\d.,:%])")
        self._numbered: Mapping[str, str] = data.get("spoken", "numbered")
        titles = "|".join(re.escape(n) for n in sorted(self._numbered, key=lambda n: (-len(n), n)))
        self._number_title = re.compile(rf"({titles})\.? ?(\d+(?:\.\d+)*)(?:-(\d+))?(?![\d-])", re.IGNORECASE)
        self._roman_title = re.compile(rf"({titles})\.? ([IVX]{{1,5}})(?![A-Za-z])", re.IGNORECASE)
        self._roman_after = re.compile(rf"\s?(?:{'|'.join(data.get('spoken', 'context.roman_after'))})")
        self._roman_before = tuple(data.get("spoken", "context.roman_before"))
        self._code_names: Mapping[str, str] = data.get("spoken", "code_names")
        self.signs: Mapping[str, str] = data.get("spoken", "addresses")
        self._english: Sequence[str] = data.get("spoken", "number.english")
        self._short = int(data.get("spoken", "number.code_as_number_up_to"))

    def said(self, text: str, at: int) -> Said | None:
        quantities = self._language.quantities
        rules: tuple[Callable[[str, int], Said | None], ...] = (
            quantities.money, quantities.unit_alone, self.number_sign, self.abbreviated, self._address, self._parted_by,
            self._stage, self._roman, self._acronym, self._in_catalogue, self._code, self._spelled,
        )  # fmt: skip
        return next((found for rule in rules if (found := rule(text, at))), None)

    def number_sign(self, text: str, at: int) -> Said | None:
        """ "No. 7", "p. 15", "Vol.2": what is counted stands before its number."""
        found = self._number_title.match(text, at)
        if at and _is_latin(text[at - 1]):
            return None
        if found is None:
            return self._titled_roman(text, at) if " " in text[at + 1 : at + _LONGEST_TITLE] else None
        if found[1] in _LETTERS_NOT_TITLES and text[found.end(1)].isdigit():
            return None
        template = self._numbered[found[1].lower()]
        if found[1].lower() in ("no", "№") and found[2] == "1" and self._english and not found[3]:
            return Said(self._language.forms["best"], "ordinal", found.end())
        number = self._parted(found[2])
        if found[3]:
            number = self._language.forms["range"].replace("{a}", number).replace("{b}", self._number(found[3]))
        return Said(template.replace("{n}", number), "ordinal", found.end())

    def _titled_roman(self, text: str, at: int) -> Said | None:
        """ "Part III", "Vol. IV"."""
        found = self._roman_title.match(text, at)
        value = roman(found[2]) if found else 0
        if found is None or not value:
            return None
        number = self._language.numerals.whole(str(value))
        return Said(self._numbered[found[1].lower()].replace("{n}", number), "roman", found.end())

    def _parted(self, number: str) -> str:
        """A number, or one of parts ("3.2")."""
        first, *others = number.split(".")
        numerals = self._language.numerals
        if len(first) > 2 and first.startswith("0") and not others:
            return self._language.serial_digits(first)
        return numerals.point.join([numerals.whole(first), *map(self._number, others)])

    def abbreviated(self, text: str, at: int) -> Said | None:
        """A short form of the list ("3D", "Dr.")."""
        found = self._abbreviation.match(text, at)
        if found is None or (at and _is_latin(text[at - 1])):
            return None
        if found[0] in _HALF_DAYS and not _BESIDE_A_FIGURE.search(text, max(0, at - 2), found.end() + 2):
            return None
        return Said(self._abbreviations[found[0]], "abbreviation", found.end())

    def _acronym(self, text: str, at: int) -> Said | None:
        run = _RUN.match(text, at)
        word = (self._words.get(run[0]) or self._capitals.get(run[0])) if run else None
        if run is None or word is None:
            return None
        code = _CODE.match(text, at)
        if code and code[1] == run[0] and not code[3]:
            return Said(word + self._number(code[2]), "initialism", code.end())
        return Said(word, "initialism", run.end())

    def _roman(self, text: str, at: int) -> Said | None:
        run = _RUN.match(text, at)
        value = roman(run[0]) if run and len(run[0]) <= 15 else 0
        if run is None or not value or run[0] in self._words:
            return None
        if run[0] in "CDLM" or (run[0] in "VX" and _KIND_AFTER.match(text, run.end())):
            return None
        told = self._roman_after.match(text, run.end()) or text.endswith(self._roman_before, 0, at)
        if not told and not _ORDINARY_ROMAN.match(text, at):
            return None
        return Said(self._language.numerals.whole(str(value)), "roman", run.end())

    def _parted_by(self, text: str, at: int) -> Said | None:
        """One letter with a stroke or a full stop behind it."""
        sign = text[at + 1 : at + 2]
        if sign == "/":
            return self._comet(text, at) or self._f_number(text, at)
        return self._dotted(text, at) if sign == "." else None

    def _comet(self, text: str, at: int) -> Said | None:
        """A comet's designation: "C/2023 A3"."""
        found = _COMET.match(text, at)
        if found is None or (at and _is_latin(text[at - 1])):
            return None
        year = self._language.year(found[2])
        joint = self._language.forms["after_letters"]
        parts = [self.letters(found[1]) + joint + year, self.letters(found[3]) + joint + self._number(found[4])]
        return Said(" ".join(parts), "serial", found.end())

    def _f_number(self, text: str, at: int) -> Said | None:
        """The opening of a lens: "f/2.8"."""
        found = _F_NUMBER.match(text, at)
        if found is None or (at and _is_latin(text[at - 1])):
            return None
        number = self._language.numerals.number(found[1], found[2] or "")
        return Said(self.letters("F") + self._language.forms["after_letters"] + number, "serial", found.end())

    def _dotted(self, text: str, at: int) -> Said | None:
        """Initials with full stops: "U.S.A.", "J.K."."""
        found = _DOTTED.match(text, at)
        if found is None or (at and _is_latin(text[at - 1])):
            return None
        return Said(self.letters(found[0].replace(".", "")), "initialism", found.end())

    def _stage(self, text: str, at: int) -> Said | None:
        """A type's Roman number said in English where the language borrows its words: "KSLV-II", "H-IIA"."""
        found = _STAGE.match(text, at) if self._english else None
        if found is None or (at and _is_latin(text[at - 1])):
            return None
        joint = self._language.forms["after_letters"]
        number = self._english[roman(found[2]) - 1]
        said = joint.join(filter(None, [self.letters(found[1]), number, self.letters(found[3])]))
        return Said(said, "serial", found.end())

    def _in_catalogue(self, text: str, at: int) -> Said | None:
        found = self._catalogue.match(text, at)
        if found is None:
            return None
        letters = self.letters(found[1]) if found[1].isupper() else found[1]
        said = letters + self._language.forms["after_letters"] + self._number(found[2])
        return Said(said, "serial", found.end())

    def _code(self, text: str, at: int) -> Said | None:
        """Letters with a number directly behind them: "A4", "M31", "B-52", "PM2.5"."""
        if "-" in text[at + 1 : at + _LONGEST_CODE] and (parted := _PARTED_CODE.match(text, at)):
            return self._parted_code(parted)
        found = _CODE.match(text, at)
        if found is None or not (found[1].isupper() or len(found[1]) == 1):
            return None
        quantity = found[3] and len(found[2]) == 1
        letters = self._code_names.get(found[1], "") if quantity else ""
        letters = letters or self.letters(found[1])
        numerals = self._language.numerals
        number = numerals.number(found[2], found[3]) if found[3] else self._number(found[2])
        other = () if found[3] else self._other_number(found[2])
        said = letters + self._language.forms["after_letters"]
        if found[4]:
            number, other = number + self._language.forms["after_letters"] + self.letters(found[4][1:]), ()
        return Said(said + number, "serial", found.end(), tuple(said + o for o in other))

    def _parted_code(self, found: re.Match[str]) -> Said:
        """A type's number of two parts: "B737-800"."""
        joint = self._language.forms["between_house_numbers"]
        said = self.letters(found[1]) + self._language.forms["after_letters"]
        return Said(said + joint.join(map(self._number, found.groups()[1:])), "serial", found.end())

    def _number(self, digits: str) -> str:
        if len(digits) <= self._short and not digits.startswith("0"):
            return self._language.numerals.whole(digits)
        return self._language.serial_digits(digits)

    def _other_number(self, digits: str) -> tuple[str, ...]:
        if len(digits) != 3 or digits.startswith("0"):
            return ()
        numerals = self._language.numerals
        return tuple({numerals.whole(digits), self._language.serial_digits(digits)} - {self._number(digits)})

    def _spelled(self, text: str, at: int) -> Said | None:
        joined = _JOINED.match(text, at) if "-" in text[at + 1 : at + _LONGEST_CODE] else None
        if joined and self._words.keys().isdisjoint(joined.groups()) and not (at and _is_latin(text[at - 1])):
            return Said(self.letters(joined[1] + joined[2]), "initialism", joined.end())
        found = _STROKED.match(text, at) or _CAPITALS.match(text, at)
        if found is None or (at and _is_latin(text[at - 1])) or not self._names:
            return None
        if len(found[0]) == 1 and self._names["A"] == "A":
            return None
        return Said(self.letters(found[0].replace("/", "")), "initialism", found.end())

    def letters(self, letters: str) -> str:
        """Letters by their names."""
        return self._language.forms["between_letters"].join(self._names.get(c, c) for c in letters.upper())

    def _address(self, text: str, at: int) -> Said | None:
        """A host name or an e-mail address that touches the script around it."""
        found = _ADDRESS.match(text, at)
        if found is None or (at and _is_latin(text[at - 1])):
            return None
        written = found[0].rstrip(_TAIL)
        said = self._parts(_SCHEME.sub("", written).rstrip("/"))
        return Said(said, "email" if "@" in written else "url", at + len(written))

    def name(self, text: str, at: int) -> Said | None:
        """A name behind an at sign."""
        found = _NAME.match(text, at)
        return Said(self._parts(found[0]), "hashtag", found.end()) if found else None

    def _parts(self, written: str) -> str:
        return " ".join(said for part in _PART.findall(written) if (said := self._part(part)))

    def _part(self, part: str) -> str:
        if part.isdecimal():
            return self._number(part) if len(part) <= 4 else self._language.serial_digits(part)
        if not part.isalpha():
            return str(self.signs.get(part, ""))
        if len(part) < 3 or _VOWELS.isdisjoint(part):
            return self.letters(part)
        return self._words.get(part.upper(), part)


def _end_of(name: str) -> str:
    """What may not follow a short form: no letter of a longer word, and no figure unless one belongs there ("pH7")."""
    if not name[-1].isascii():
        return ""
    return "(?![A-Za-z])" if name in ("pH", "Wi-Fi") else "(?![A-Za-z\\d])"


def _is_latin(character: str) -> bool:
    return character.isascii() and character.isalpha()
