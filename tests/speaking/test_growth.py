"""Work grows in a straight line: eight times the text takes about eight times as long, not sixty-four."""

from __future__ import annotations

import time

import pytest

from tests.speaking.support import said

PIECES = ("XIV", "1,", "12:3", "1/", "-", "т. ", "5 мая ", "الـ", "०")

ROMANCE = ("1 o ", "1 ou ", "1 de cada ", "21 mil ", "M. ", "XVI-", '24" ', "612 345 678 ", "1m80")


@pytest.mark.parametrize("tag", ["ar", "hi", "ru", "sw"])
@pytest.mark.parametrize("piece", PIECES)
def test_long_runs_cost_in_proportion(tag: str, piece: str) -> None:
    said(piece, tag)
    short, long = (min(seconds(piece * n, tag) for _ in range(2)) for n in (500, 4000))
    assert long < 30 * max(short, 0.001)


@pytest.mark.parametrize("tag", ["en", "de"])
@pytest.mark.parametrize("piece", ["100 000 ", "3., ", "1. und ", "Mo, ", "$1.50–", "Ludwigs XIV. ", "1 x ", "10s of "])
def test_rows_of_western_figures_cost_in_proportion(tag: str, piece: str) -> None:
    test_long_runs_cost_in_proportion(tag, piece)


@pytest.mark.parametrize("tag", ["es", "fr", "pt"])
@pytest.mark.parametrize(
    "piece", ["1 o ", "1 ou ", "1 de cada ", "21 mil ", "M. ", "XVI-", '24" ', "612 345 678 ", "1m80"]
)
def test_rows_of_romance_figures_cost_in_proportion(tag: str, piece: str) -> None:
    test_long_runs_cost_in_proportion(tag, piece)


def seconds(text: str, tag: str) -> float:
    begun = time.process_time()
    said(text, tag)
    return time.process_time() - begun
