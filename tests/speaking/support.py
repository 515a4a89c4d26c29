"""What the tests of single languages share: sayings, and what must hold of any text."""

from __future__ import annotations

from hypothesis import strategies as st

from promptprep.engines.spelling import IcuSpeller
from promptprep.model.spoken import Reading, Spoken
from promptprep.speaking.speak import readings, speak
from promptprep.store.languages import language_data

SPELLER = IcuSpeller()
FIGURES = [
    "0",
    "1",
    "2",
    "5",
    "11",
    "21",
    "100",
    "1999",
    "2026",
    "1,234",
    "1",
    "234",
    "3.5",
    "0,5",
    "007",
    "9:40",
    "21:40",
    "12/05/2026",
    "1/2",
    "½",
    "2½",
    "10–15",
    "−5",
    "+7",
    "%",
    "°",
    "€",
    "$",
    "№",
    "XIV",
    "I",
]
ODD = [
    "\u200f",
    "\u200e",
    "\u2067",
    "\u2069",
    "\u0000",
    "\u0640",
    "\u00a0",
    "\u202f",
    "\n",
    ".",
    ",",
    "-",
    "(",
    ")",
    "🌟",
    "9" * 40,
]


def said(text: str, tag: str) -> str:
    return speak(text, language_data(tag), SPELLER).text


def kinds(text: str, tag: str) -> list[str]:
    return [r.kind for r in found(text, tag)]


def found(text: str, tag: str) -> list[Reading]:
    return readings(text, language_data(tag), SPELLER)


def texts(words: list[str]) -> st.SearchStrategy[str]:
    """Text thrown together from a language's own words, figures, odd characters and anything at all."""
    piece = st.one_of(st.sampled_from(words), st.sampled_from(FIGURES), st.sampled_from(ODD), st.text(max_size=3))
    return st.lists(st.tuples(piece, st.sampled_from(["", " ", " "])), max_size=14).map(
        lambda pairs: "".join(word + gap for word, gap in pairs)
    )


def assert_holds(text: str, tag: str) -> Spoken:
    """Readings lie in order and apart inside the text, and what is outside them is said as written, blanks apart."""
    spoken = speak(text, language_data(tag), SPELLER)
    last, parts = 0, []
    for reading in spoken.readings:
        assert last <= reading.span.start < reading.span.end <= len(text)
        parts += [text[last : reading.span.start], reading.said]
        last = reading.span.end
    assert spoken.text.replace(" ", "") == "".join([*parts, text[last:]]).replace(" ", "")
    return spoken
