"""Reads `data/languages/<tag>/*.toml`. One folder a language, the same file names in each."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from promptprep.errors import UnknownLanguage
from promptprep.model.language import LanguageData, base_of

FOLDER = Path(__file__).parent.parent / "data" / "languages"


@lru_cache(maxsize=64)
def language_data(tag: str) -> LanguageData:
    """The data of `tag` ("pt-BR" finds "pt-BR", else "pt").

    A language without a folder has one table: the pace of "und" (BCP 47's undetermined), wide and saying so in its
    `source`. Raises `UnknownLanguage` where `tag` is no BCP 47 tag. A file's own `parent = "xx"` names the language
    whose file of the same name it extends; nothing else is inherited.
    """
    wanted = _tag(tag)
    for name in (wanted, base_of(wanted)):
        if (FOLDER / name).is_dir():
            return LanguageData(wanted, {f.stem: _table(f) for f in sorted((FOLDER / name).glob("*.toml"))})
    return LanguageData(wanted, {"pace": _table(FOLDER / "und" / "pace.toml")})


def _tag(tag: str) -> str:
    parts = tag.strip().replace("_", "-").split("-")
    if not (
        2 <= len(parts[0]) <= 3
        and parts[0].isalpha()
        and all(p.isascii() and p.isalnum() and len(p) <= 8 for p in parts)
    ):
        raise UnknownLanguage(
            "unknown-language", f"{tag!r} is no language tag", 'write a BCP 47 tag such as "en" or "pt-BR"'
        )
    return "-".join(
        [parts[0].lower(), *(p.upper() if len(p) == 2 else p.title() if len(p) == 4 else p for p in parts[1:])]
    )


@lru_cache(maxsize=256)
def _table(file: Path) -> Mapping[str, Any]:
    own = tomllib.loads(file.read_text("utf-8"))
    parent = own.pop("parent", None)
    if parent is None:
        return own
    return _merged(_table(FOLDER / parent / file.name), own)


def _merged(base: Mapping[str, Any], own: Mapping[str, Any]) -> dict[str, Any]:
    both = dict(base)
    for key, value in own.items():
        inherited = both.get(key)
        both[key] = (
            _merged(inherited, value) if isinstance(value, Mapping) and isinstance(inherited, Mapping) else value
        )
    return both
