"""The fonts inside a page: rules that show its texts, and the families by which they are asked."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from markupsafe import Markup

LATIN_END = 0x24F  # letters beyond it a machine may have no font for (U+024F ends Latin Extended-B)

Faces = Callable[[str, str, str], str]
"""(language, text, family) -> `@font-face` rules that show the text, in families called family-0, family-1 ..."""


def family_list(rules: str, family: str) -> Markup:
    """The families of `@font-face` rules, in the order in which they are asked."""
    return Markup(",".join(dict.fromkeys(re.findall(rf"'({family}-\d+)'", rules))))


def fonts_beyond_latin(texts: Mapping[str, str], faces: Faces, family: str) -> tuple[str, dict[str, Markup]]:
    """Rules for the texts, by language, that have letters outside the Latin script, and those languages' families."""
    rules, families = [], {}
    for number, (language, text) in enumerate(sorted(texts.items())):
        letters = {char for char in text if char.isprintable()}
        if any(char.isalpha() and ord(char) > LATIN_END for char in letters):
            rules.append(faces(language, "".join(sorted(letters)), f"{family}{number}"))
            families[language] = family_list(rules[-1], f"{family}{number}")
    return "\n".join(rules), families
