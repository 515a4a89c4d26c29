"""Any text whatever: a result, nothing lost outside the readings, work that grows with the length."""

from __future__ import annotations

import time
from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from promptprep.engines.spelling import IcuSpeller
from promptprep.model.spoken import Spoken
from promptprep.spans import Span
from promptprep.speaking.speak import speak
from promptprep.store.languages import language_data

SPELLER = IcuSpeller()
TAGS = ("en", "fr", "de", "es", "pt")
WRITTEN = [
    "1", "12", "2026", "1.234", "1,234", "3.5", "007", "½", "9:40", "21h40", "5:00", "XIV", "V", "I", "%", "°",
    "º", "€", "$", "£", "US$", "CHF", "-5", "−5", "±2", "10–15", "3–1", "1/2", "12/05/2026", "2026-05-12", "+31",
    "42", "(0)", "Dr.", "St.", "No.", "e.g.", "z.", "B.", "NASA", "BBC", "U.S.", "M31", "5km", "m²", "km/h",
    "1st", "2e", "3.º", "1990s", "#x", "@y", "a@b.org", "https://q.org/x?y=1", "www.q.org", "🌟", "5️⃣", "\u200f",
    "\u200e", "\ufeff", "٣", "१", "Ⅷ", "²", "㊿", "𝟙", "\x00", "\n", "—", "…", "'", "’", '"', "(", ")", "&", "+",
    "=", "×", "→", "/", ".", ",", ":", ";", "!", "?",
]  # fmt: skip
PIECES = st.sampled_from(WRITTEN)
TEXTS = st.one_of(
    st.text(max_size=60),
    st.lists(st.one_of(PIECES, st.sampled_from([" ", "", "\u00a0", "word", "May", "mai", "im"])), max_size=24).map(
        "".join
    ),
    st.lists(PIECES, max_size=16).map(" ".join),
)


def said(text: str, tag: str) -> Spoken:
    return speak(text, language_data(tag), SPELLER)


@pytest.mark.parametrize("tag", TAGS)
@given(text=TEXTS)
@settings(max_examples=60, deadline=None)
def test_readings_are_in_order_and_disjoint(tag: str, text: str) -> None:
    spoken = said(text, tag)
    ends = [0, *(r.span.end for r in spoken.readings)]
    assert all(r.span.start >= end for r, end in zip(spoken.readings, ends, strict=False))
    assert all(0 <= r.span.start < r.span.end <= len(text) for r in spoken.readings)


@pytest.mark.parametrize("tag", TAGS)
@given(text=TEXTS)
@settings(max_examples=60, deadline=None)
def test_what_is_outside_readings_passes_through(tag: str, text: str) -> None:
    spoken = said(text, tag)
    rest, last = spoken.text, 0
    for reading in spoken.readings:
        for piece in (text[last : reading.span.start], reading.said):
            rest = after(rest, piece)
        last = reading.span.end
    assert after(rest, text[last:]) == ""


def after(rest: str, piece: str) -> str:
    """What follows `piece` in `rest`; one blank may have been put before it."""
    if piece and not rest.startswith(piece):
        assert rest.startswith(" " + piece)
        return rest[1 + len(piece) :]
    return rest[len(piece) :]


@pytest.mark.parametrize("tag", TAGS)
@given(text=TEXTS)
@settings(max_examples=40, deadline=None)
def test_words_lie_in_the_text_in_order(tag: str, text: str) -> None:
    last = 0
    for word in said(text, tag).words:
        assert last <= word.span.start < word.span.end <= len(text)
        assert word.said
        assert word.kind != "word" or word.said == word.span.of(text)
        last = word.span.end


@pytest.mark.parametrize("tag", TAGS)
@given(text=TEXTS)
@settings(max_examples=40, deadline=None)
def test_no_decimal_digit_is_left(tag: str, text: str) -> None:
    assert not any(c.isdecimal() for c in said(text, tag).text)


@pytest.mark.parametrize("tag", TAGS)
def test_the_authors_own_saying_wins(tag: str) -> None:
    text = "A 1999 B"
    spoken = speak(text, language_data(tag), SPELLER, [(Span(2, 6), "ninety-nine")])
    assert spoken.text == "A ninety-nine B"
    assert [r.kind for r in spoken.readings] == ["say"]


@pytest.mark.parametrize("tag", TAGS)
def test_ten_thousand_digits_are_read_one_by_one(tag: str) -> None:
    spoken = said("7" * 10_000, tag)
    assert len(spoken.text.split()) == 10_000
    assert len(spoken.readings) == 1


SHAPES: dict[str, Callable[[int], str]] = {
    "digits": lambda n: "7" * n,
    "letters": lambda n: "a" * n,
    "capitals": lambda n: "A" * n,
    "numerals": lambda n: "X" * n,
    "dots": lambda n: "." * n,
    "dotted": lambda n: "a." * (n // 2),
    "dotted capitals": lambda n: "A." * (n // 2),
    "groups": lambda n: "1,234" + ",234" * (n // 4),
    "ips": lambda n: "1." * (n // 2),
    "dashes": lambda n: "1-" * (n // 2),
    "slashes": lambda n: "1/" * (n // 2),
    "colons": lambda n: "1:" * (n // 2),
    "ats": lambda n: "@" * n,
    "addresses": lambda n: "a@b." * (n // 4),
    "tags": lambda n: "#a" * (n // 2),
    "hosts": lambda n: "a.com" * (n // 5),
    "schemes": lambda n: "http://" * (n // 7),
    "money": lambda n: "$" * n,
    "signs": lambda n: "-5" * (n // 2),
    "emoji": lambda n: "🌟" * n,
    "hundreds": lambda n: "12," * (n // 3),
    "versions": lambda n: "1.1" * (n // 3) + "a",
    "blanks": lambda n: " " * n,
    "spaced digits": lambda n: "12 " * (n // 3),
    "spaced groups": lambda n: "1 234 " * (n // 6),
    "phones": lambda n: "+31 " * (n // 4),
    "brackets": lambda n: "(0" * (n // 2),
    "ampersands": lambda n: "A&" * (n // 2),
}


@pytest.mark.parametrize("tag", ["en", "de"])
@pytest.mark.parametrize("shape", SHAPES)
def test_work_grows_in_a_straight_line(tag: str, shape: str) -> None:
    """Eight times the text takes far less than sixty-four times the time."""
    small, large = SHAPES[shape](1_000), SHAPES[shape](8_000)
    said(small, tag)
    quick = min(seconds(small, tag) for _ in range(3))
    assert min(seconds(large, tag) for _ in range(3)) < 24 * quick + 0.02


def seconds(text: str, tag: str) -> float:
    begun = time.process_time()
    said(text, tag)
    return time.process_time() - begun
