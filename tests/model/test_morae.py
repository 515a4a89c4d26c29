"""Morae against a handbook's rule."""

from __future__ import annotations

import pytest

from promptprep.model.morae import morae


@pytest.mark.parametrize(
    ("kana", "beats"),
    [
        ("キョー", 2),
        ("ニッポン", 4),
        ("トーキョー", 4),
        ("シャシン", 3),
        ("がっこう", 4),
        ("ヴァイオリン", 5),
        ("", 0),
        ("。a", 0),
    ],
)
def test_morae(kana: str, beats: int) -> None:
    """Vance, "The Sounds of Japanese" (2008): small vowels join, long marks, doubling and n count. From memory."""
    assert morae(kana) == beats
