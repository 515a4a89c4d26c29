"""Language data: every folder loads, every text in it is NFC, and the first-class languages have the same files."""

from __future__ import annotations

import tomllib
import unicodedata
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

import promptprep
from promptprep.errors import MissingLanguageData, UnknownLanguage
from promptprep.model.language import FIRST_CLASS
from promptprep.store.languages import FOLDER, language_data

DATA = Path(promptprep.__file__).parent / "data"
FILES = sorted(DATA.rglob("*.toml"))


def texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for key, inner in value.items():
            yield key
            yield from texts(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from texts(inner)


@pytest.mark.parametrize("file", FILES, ids=lambda f: str(f.relative_to(DATA)))
def test_data_is_normal_form_c(file: Path) -> None:
    values = tomllib.loads(file.read_text("utf-8"))
    assert [t for t in texts(values) if unicodedata.normalize("NFC", t) != t] == []


def lists(value: Any, at: str = "") -> Iterator[tuple[str, list[str]]]:
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from lists(inner, f"{at}.{key}")
    elif isinstance(value, list) and value and all(isinstance(v, str) for v in value):
        yield at, value


@pytest.mark.parametrize("file", FILES, ids=lambda f: str(f.relative_to(DATA)))
def test_word_lists_hold_each_word_once(file: Path) -> None:
    values = tomllib.loads(file.read_text("utf-8"))
    assert {
        at: [w for w in set(words) if words.count(w) > 1] for at, words in lists(values) if len(set(words)) < len(words)
    } == {}


def test_first_class_languages_have_the_same_files() -> None:
    files = {tag: sorted(f.name for f in (FOLDER / tag).glob("*.toml")) for tag in FIRST_CLASS}
    assert len({tuple(names) for names in files.values()}) == 1, files


def test_a_missing_figure_names_language_and_key() -> None:
    with pytest.raises(MissingLanguageData, match=r"'pt'.*'pace\.no\.such'"):
        language_data("pt").get("pace", "no.such")


@pytest.mark.parametrize("tag", ["", "e", "english", "en_", "12", "../en"])
def test_what_is_no_language_tag(tag: str) -> None:
    with pytest.raises(UnknownLanguage):
        language_data(tag)
