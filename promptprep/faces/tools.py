"""The engines and data of this process, and what all faces check."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from pathlib import Path
from typing import TypeVar

from promptprep.engines.fonts import BundledFonts
from promptprep.engines.load import engines
from promptprep.errors import BadCall
from promptprep.model.language import FIRST_CLASS, LanguageData
from promptprep.model.ports import Tools
from promptprep.model.rig import Studio
from promptprep.model.sightline import Limit
from promptprep.store.catalogues import words
from promptprep.store.languages import language_data

Named = TypeVar("Named")


@lru_cache(maxsize=1)
def tools() -> Tools:
    """The engines and data of this process. Cheap: what is native loads at first use."""
    return Tools(engines(), BundledFonts(), known_language, _limits, words)


@lru_cache(maxsize=64)
def known_language(tag: str) -> LanguageData:
    """The data of a language. Raises `UnknownLanguage` where there are neither data nor a voice to time it by."""
    data = language_data(tag)
    if data.base not in FIRST_CLASS:
        engines().phonemes.counts(["a"], tag)
    return data


def _limits(studio: Studio) -> tuple[Limit, ...]:
    from promptprep.store.limits import limits_of

    return limits_of(studio)


def named(known: Mapping[str, Named], name: str, kind: str) -> Named:
    if name not in known:
        raise BadCall(f"unknown-{kind}", f"the studio has no {kind} {name!r}", "it has: " + ", ".join(known))
    return known[name]


def check_texts(*values: object) -> None:
    """Raises `BadCall` for an argument that is no text."""
    for value in values:
        if not isinstance(value, str):
            raise BadCall("not-a-text", f"{value!r} is no text", "give text and language as strings")


def as_path(value: object) -> Path:
    """A path that was given as one or as text. Raises `BadCall` for anything else."""
    if isinstance(value, str | Path):
        return Path(value)
    raise BadCall("not-a-path", f"{value!r} names no file", "give a path, or a file's name as a string")


def as_paths(values: object) -> list[Path]:
    """Some paths, or a single one. Raises `BadCall` for anything else."""
    if isinstance(values, Iterable) and not isinstance(values, str | bytes):
        return [as_path(value) for value in values]
    return [as_path(values)]
