"""Reads `studio.toml`: rigs, readers, paper, limits. Every fault has its file, line and column, and a hint."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import partial
from pathlib import Path
from typing import Any

from promptprep.model.finding import LEVELS
from promptprep.model.language import FIRST_CLASS
from promptprep.model.rig import PAPER_VARIANTS, Paper, Reader, Rig, Studio
from promptprep.parsing.toml_text import toml_values
from promptprep.rendering.sheets import CARDS, SHEETS_MM
from promptprep.sightline.build import rig_from
from promptprep.sightline.values import near_hint
from promptprep.store.checked import Checked
from promptprep.store.files import read_text
from promptprep.store.limits import default_limits
from promptprep.store.paces import is_language, language_hint, pace_from
from promptprep.store.places import KeyPlaces
from promptprep.units import MM_PER_PT, as_float, parse_length

FILE = "studio.toml"
KEYS = (
    "title", "language", "rigs", "readers", "paper", "limits", "levels", "lexicon", "assets", "logo", "templates",
    "sentence_starts_line", "extra",
)  # fmt: skip
READER_KEYS = ("name", "acuity", "glasses", "rig", "languages", "style", "pace")
PAPER_KEYS = (
    "size", "orientation", "font", "punched", "low_ink", "reading_distance", "cards", "beside", "variants",
)  # fmt: skip
MOST_BY_UNIT = {"deg": 60, "arcmin": 600, "em": 4}


def read_studio(path: Path) -> Studio:
    """The studio in a file. Raises `UnreadableInput`, `BadGeometry`, or `ManyFaults` where there are several."""
    return parse_studio(read_text(path), str(path))


def find_studio(folder: Path) -> Path | None:
    """The `studio.toml` in a folder, or in the nearest folder above it."""
    for place in (folder, *folder.resolve().parents):
        if (place / FILE).is_file():
            return place / FILE
    return None


def parse_studio(text: str, file: str | None = None) -> Studio:
    """The studio that a TOML text describes; `file` is only named in faults. Raises as `read_studio`."""
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    hint = 'write key = value, one a line; text in quotes, such as eye_to_glass = "1.5 m"'
    values = toml_values(text, "studio-broken", "the studio file", hint, file)
    return _Reading(values, KeyPlaces(text), file).studio()


class _Reading(Checked):
    """One reading of a studio file."""

    def studio(self) -> Studio:
        self.known((), self.values, KEYS, "studio file")
        rigs = {name: rig for name, rig in self.tables("rigs", self._rig).items() if rig}
        readers = {name: reader for name, reader in self.tables("readers", self._reader).items() if reader}
        self._check_rigs(readers, self.table("rigs"))
        language = self._language()
        studio = Studio(
            title=self.text("title", default=""),
            language=language,
            crew_language=language if "language" in self.values else None,
            file=self.file,
            rigs=rigs,
            readers=readers,
            paper=self._paper(),
            levels=self._levels(),
            limits=self._limits(),
            lexicon=self._lexicon(),
            assets=self.texts("assets"),
            logo=self.text("logo"),
            template_folder=self.text("templates"),
            sentence_starts_line=self.flag("sentence_starts_line"),
            extra=self.table("extra"),
        )
        self.raise_faults()
        return studio

    def _language(self) -> str:
        tag = self.text("language", default="en")
        if tag in FIRST_CLASS:
            return str(tag)
        hint = "use one of: " + ", ".join(FIRST_CLASS)
        self.fault(("language",), f"sheets are not printed in {tag!r}", hint, "unknown-language")
        return "en"

    def _rig(self, name: str, table: Mapping[str, Any]) -> Rig | None:
        return self.attempt(("rigs", name), lambda: rig_from(name, table))

    def _reader(self, name: str, table: Mapping[str, Any]) -> Reader | None:
        path = ("readers", name)
        self.known(path, table, READER_KEYS, "reader")
        paces = {}
        for language, values in self.table(*path, "pace").items():
            pace = self.attempt((*path, "pace", language), partial(pace_from, language, values, name))
            if pace is not None:
                paces[language] = pace
        return Reader(
            id=name,
            name=self.text(*path, "name", default=name) or name,
            paces=paces,
            acuity=self._acuity(path, table.get("acuity")),
            glasses=self.text(*path, "glasses"),
            rig=self.text(*path, "rig"),
            languages=self._languages(path),
            style=self.text(*path, "style"),
        )

    def _acuity(self, path: tuple[str, ...], value: Any) -> float | None:
        """Decimal acuity of 0.8, "20/25" or "6/7.5"; None where it is not told."""
        if value is None:
            return None
        fraction = (
            re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*/\s*(\d+(?:\.\d+)?)\s*", value) if isinstance(value, str) else None
        )
        if fraction and float(fraction[2]) > 0:
            value = float(fraction[1]) / float(fraction[2])
        if isinstance(value, bool) or not isinstance(value, int | float) or not 0.05 <= value <= 3:
            hint = 'write it with the glasses worn for the take: acuity = 0.8, or "20/25"'
            self.fault((*path, "acuity"), f"an acuity cannot be {value!r}", hint)
            return None
        return float(value)

    def _languages(self, path: tuple[str, ...]) -> tuple[str, ...]:
        tags = self.texts(*path, "languages")
        for tag in tags:
            if not is_language(tag):
                self.fault((*path, "languages"), f"nobody here speaks {tag!r}", language_hint(tag), "unknown-language")
        return tags

    def _check_rigs(self, readers: Mapping[str, Reader], rigs: Mapping[str, Any]) -> None:
        for name, reader in readers.items():
            if reader.rig is not None and reader.rig not in rigs:
                hint = near_hint(reader.rig, tuple(rigs))
                self.fault(("readers", name, "rig"), f"the studio has no rig {reader.rig!r}", hint, "unknown-rig")

    def _paper(self) -> Paper:
        table, plain = self.table("paper"), Paper()
        self.known(("paper",), table, PAPER_KEYS, "paper")
        return Paper(
            size=self._choice("size", tuple(SHEETS_MM), plain.size),
            orientation=self._choice("orientation", ("portrait", "landscape"), plain.orientation),
            font_pt=self._font_pt(),
            punched=self.flag("paper", "punched"),
            low_ink=self.flag("paper", "low_ink"),
            reading_distance_mm=self._paper_length("reading_distance", 100, 3000, plain.reading_distance_mm),
            cards=self._choice("cards", CARDS, plain.cards),
            beside=self._helper(),
            variants=self._variants(),
        )

    def _helper(self) -> str | None:
        tag: str | None = self.text("paper", "beside")
        if tag is not None and not is_language(tag):
            self.fault(("paper", "beside"), f"nobody here speaks {tag!r}", language_hint(tag), "unknown-language")
        return tag

    def _variants(self) -> Any:
        wanted = self.texts("paper", "variants")
        for name in wanted:
            if name not in PAPER_VARIANTS:
                self.fault(("paper", "variants"), f"there is no printed copy {name!r}", near_hint(name, PAPER_VARIANTS))
        return wanted

    def _font_pt(self) -> float | None:
        if "font" not in self.table("paper"):
            return None
        length = self._paper_length("font", 6 * MM_PER_PT, 96 * MM_PER_PT, 16 * MM_PER_PT)
        return round(length / MM_PER_PT, 6)

    def _choice(self, key: str, words: tuple[Any, ...], default: Any) -> Any:
        value = self.table("paper").get(key, default)
        if value in words:
            return value
        by_fold = {str(word).casefold(): word for word in words}
        if isinstance(value, str) and value.casefold() in by_fold:
            return by_fold[value.casefold()]
        self.fault(("paper", key), f"{key} cannot be {value!r}", near_hint(str(value), tuple(map(str, words))))
        return default

    def _paper_length(self, key: str, low_mm: float, high_mm: float, default_mm: float) -> float:
        """Millimetres; type may also be written in points."""
        value = self.table("paper").get(key)
        if value is None:
            return default_mm
        points = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*pt\s*", value) if isinstance(value, str) else None
        if key == "font" and isinstance(value, int | float) and not isinstance(value, bool):
            length: float | None = as_float(value) * MM_PER_PT
        elif points:
            length = float(points[1]) * MM_PER_PT
        else:
            length = self.attempt(("paper", key), lambda: parse_length(value))
        if length is None:
            return default_mm
        if not low_mm <= length <= high_mm:
            scale, unit = (MM_PER_PT, "pt") if key == "font" else (1.0, "mm")
            hint = f"it must be from {low_mm / scale:g} to {high_mm / scale:g} {unit}"
            self.fault(("paper", key), f"{key} = {value!r} cannot be read from", hint)
            return default_mm
        return length

    def _limits(self) -> dict[str, float]:
        units = {limit.id: limit.unit for limit in default_limits()}
        self.known(("limits",), self.table("limits"), tuple(units), "limits")
        known = [key for key in self.table("limits") if key in units]
        found = {key: self.number(0.01, MOST_BY_UNIT.get(units[key], 1000), "limits", key) for key in known}
        return {key: value for key, value in found.items() if value is not None}

    def _levels(self) -> dict[str, str]:
        table = self.table("levels")
        if not table:
            return {}
        rules, words = _rule_names(), (*LEVELS, "off")
        found = {}
        for rule, level in table.items():
            if rule not in rules:
                self.fault(("levels", rule), f"there is no rule {rule!r}", near_hint(rule, rules), "unknown-rule")
            elif level not in words:
                self.fault(("levels", rule), f"a level cannot be {level!r}", near_hint(str(level), words))
            else:
                found[rule] = level
        return found

    def _lexicon(self) -> dict[str, dict[str, str]]:
        found = {}
        for language, words in self.table("lexicon").items():
            if isinstance(words, Mapping) and all(isinstance(said, str) for said in words.values()):
                found[language] = dict(words)
            else:
                hint = 'write [lexicon.en] and below it "Betelgeuse" = "BEE-tel-jooz"'
                self.fault(("lexicon", language), f"lexicon.{language} holds no words", hint)
        return found


def _rule_names() -> tuple[str, ...]:
    """The names that findings can have."""
    from promptprep.checking.catalogue import BY_NAME
    from promptprep.checking.excuses import REASONLESS, STALE

    return (*BY_NAME, STALE, REASONLESS)
