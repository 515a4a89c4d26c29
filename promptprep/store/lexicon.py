"""Reads pronunciations: `lexicon.toml` (a table a language) and W3C PLS 1.0 files."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from xml.etree import ElementTree

from promptprep.errors import UnreadableInput
from promptprep.model.language import base_of
from promptprep.parsing.toml_text import toml_values
from promptprep.store.files import read_text

PLS = "{http://www.w3.org/2005/01/pronunciation-lexicon}"
XML_LANG = "{http://www.w3.org/XML/1998/namespace}lang"

Lexicon = dict[str, dict[str, str]]  # language -> word -> how it is said


def read_lexicons(folder: Path) -> Lexicon:
    """All pronunciations in a folder: `lexicon.toml`, then every `*.pls` by name; later files win."""
    both: Lexicon = {}
    files = [folder / "lexicon.toml", *sorted(folder.glob("*.pls"))]
    for file in files:
        if file.is_file():
            for language, words in (read_pls(file) if file.suffix == ".pls" else read_toml(file)).items():
                both.setdefault(language, {}).update(words)
    return both


def read_toml(path: Path) -> Lexicon:
    """`[en]` tables of `Word = "WURD"`. Raises `UnreadableInput`."""
    hint = 'write a table a language, words in quotes: [en] and below it "Betelgeuse" = "BEE-tel-jooz"'
    tables = toml_values(read_text(path), "lexicon-broken", "the lexicon", hint, str(path))
    for language, words in tables.items():
        if not isinstance(words, Mapping) or not all(isinstance(said, str) for said in words.values()):
            hint = 'write [en] and below it Word = "how it is said"'
            raise UnreadableInput("lexicon-broken", f"{language!r} holds no words", hint, str(path))
    return {language: dict(words) for language, words in tables.items()}


def read_pls(path: Path) -> Lexicon:
    """Lexemes of a W3C Pronunciation Lexicon 1.0 document: the first alias of each, else its first phoneme string.

    Source of the format: https://www.w3.org/TR/pronunciation-lexicon/ . Raises `UnreadableInput` with the line.
    """
    try:
        root = ElementTree.fromstring(read_text(path))
    except ElementTree.ParseError as fault:
        line, column = fault.position
        raise UnreadableInput("lexicon-broken", "this is no XML", "check it", str(path), line, column + 1) from None
    if root.tag != PLS + "lexicon" or not root.get(XML_LANG):
        hint = "its root is <lexicon> in the PLS name space with xml:lang"
        raise UnreadableInput("lexicon-broken", "this is no pronunciation lexicon", hint, str(path))
    words: dict[str, str] = {}
    for lexeme in root.iter(PLS + "lexeme"):
        said = lexeme.findtext(PLS + "alias") or lexeme.findtext(PLS + "phoneme")
        for grapheme in lexeme.iter(PLS + "grapheme"):
            if said and grapheme.text:
                words[grapheme.text.strip()] = said.strip()
    return {base_of(str(root.get(XML_LANG))).lower(): words}
