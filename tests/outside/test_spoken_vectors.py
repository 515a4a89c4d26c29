"""Spoken forms against sources outside the project: 95 % of the vectors in each file are met."""

from __future__ import annotations

import pytest

from promptprep.engines.spelling import IcuSpeller
from promptprep.speaking.speak import speak
from promptprep.store.languages import language_data
from tests.outside.spoken import sets, vectors

WANTED = 0.95
SPELLER = IcuSpeller()


@pytest.mark.parametrize("name", sets())
def test_spoken_forms_agree_with_their_sources(name: str) -> None:
    missed = []
    cases = vectors(name)
    for vector in cases:
        said = speak(vector.text, language_data(vector.language), SPELLER).text
        if not vector.met_by(said):
            missed.append(f"{vector.text!r}: {said!r}, not {vector.said[0]!r} ({vector.source})")
    assert len(cases) - len(missed) >= WANTED * len(cases), "\n".join(missed)


@pytest.mark.parametrize("name", sets())
def test_every_set_has_sixty_vectors_with_their_sources(name: str) -> None:
    cases = vectors(name)
    assert len(cases) >= 60
    assert all(v.source.strip() and v.said and v.text for v in cases)
    assert len({v.text + v.language for v in cases}) == len(cases)
