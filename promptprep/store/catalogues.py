"""The interface's texts in the twelve languages: gettext catalogues, read with Babel."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from pathlib import Path

from promptprep.model.language import base_of

FOLDER = Path(__file__).parent.parent / "data" / "locale"


def words(language: str) -> Callable[[str], str]:
    """Gives a text of the interface in `language`; in English where its catalogue has none."""
    texts = _texts(base_of(language))
    return lambda text: texts.get(text) or text


@lru_cache(maxsize=32)
def _texts(tag: str) -> dict[str, str]:
    file = FOLDER / tag / "LC_MESSAGES" / "promptprep.po"
    if not file.is_file():
        return {}
    from babel.messages.pofile import read_po

    with file.open("rb") as stream:
        catalogue = read_po(stream, locale=tag)
    return {str(m.id): str(m.string) for m in catalogue if m.id and m.string and not m.fuzzy}
