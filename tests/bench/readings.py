"""Recorded readings: rows of text and seconds from a folder of tab-separated files, weighed as promptprep does."""

from __future__ import annotations

import csv
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from promptprep.engines.load import engines
from promptprep.model.language import LanguageData
from promptprep.model.spoken import Speak, Spoken
from promptprep.spans import Span
from promptprep.speaking.speak import speak
from promptprep.store.languages import language_data
from promptprep.timing.measure import measure
from promptprep.timing.tally import tally, unit_key

FILES = {
    "en paragraphs": "en_paragraphs_60s.tsv",
    "en sentences": "en_sentences.tsv",
    "en short sentences": "en_short_sentences_108_speakers.tsv",
    "es paragraphs": "es_paragraphs.tsv",
    "ja sentences": "ja_sentences_kana.tsv",
}


@dataclass(frozen=True, slots=True)
class Row:
    """One timed reading. `words` and `characters` are what the simple rules count."""

    language: str
    speaker: str
    item: str
    seconds: float
    text: str

    @property
    def words(self) -> int:
        return len(self.text.split())

    @property
    def characters(self) -> int:
        return sum(not c.isspace() for c in self.text)


def load(folder: Path, name: str) -> list[Row]:
    csv.field_size_limit(1 << 24)
    with (folder / FILES[name]).open(encoding="utf-8", newline="") as file:
        rows = csv.DictReader(file, delimiter="\t")
        return [
            Row(r["language"], r["speaker"], r["item_id"], float(r["duration_s"]), r["text"])
            for r in rows
            if any(map(str.isalnum, r["text"]))
        ]


def speaker(language: str) -> Speak:
    """The spoken form's function for one language."""
    data, speller = language_data(language), engines().speller

    def said(text: str, pronunciations: Sequence[tuple[Span, str]] = ()) -> Spoken:
        return speak(text, data, speller, pronunciations)

    return said


def tallies(rows: Iterable[Row], data: LanguageData | None = None) -> list[dict[str, float]]:
    """Each row's tally, by the data given or those of its language."""
    found = []
    for row in rows:
        its = data or language_data(row.language)
        found.append(tally(measure(speaker(row.language)(row.text, ()), its, engines()), unit_key(its)))
    return found
