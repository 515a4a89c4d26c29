"""Short numbers of public help in Korean copy, which are called digit by digit: 119, 112, 1330."""

from __future__ import annotations

import re

from promptprep.model.language import LanguageData
from promptprep.speaking.languages.cjk_serials import LOOK_AROUND, any_of


class Hotlines:
    """Where such a number stands beside a word of its service: "신고는 119", "119구급대"."""

    def __init__(self, data: LanguageData) -> None:
        def words(name: str) -> str:
            return any_of(data.get("spoken", f"hotlines.{name}"))

        self._number = re.compile(rf"(?:{words('numbers')})(?!\d|[.,:~/-]\d|\s?[개건명])")
        self._before = re.compile(rf"(?:{words('before')})(?:번호|전화)?(?:[는은:])?\s?\Z")
        self._after = re.compile(rf"\s?(?:{words('after')})")

    def at(self, text: str, at: int) -> str | None:
        """The number that is called here, if one is."""
        found = self._number.match(text, at)
        if found is None:
            return None
        named = self._before.search(text, max(0, at - LOOK_AROUND), at) or self._after.match(text, found.end())
        return found[0] if named else None
