"""How Japanese numbers sound, alone and with the counter behind them: 四時 ヨジ, 三本 サンボン, 八百 ハッピャク."""

from __future__ import annotations

import re
from collections.abc import Mapping

from promptprep.model.language import LanguageData

FIGURES = "〇零一二三四五六七八九十百千万億兆京垓"
_BARE = re.compile(r"[〇零一二三四五六七八九]{2,}")
_MORPHEME = re.compile(r"[一二三四五六七八九]?[十百千]|[〇零一二三四五六七八九]|[万億兆京垓]")
# は-row at the head of a counter after っ and after ん.
_AFTER_STOP = str.maketrans("ハヒフヘホ", "パピプペポ")
_AFTER_NASAL = str.maketrans("ハヒフヘホ", "バビブベボ")


class NumberReadings:
    """Reads kanji figures by the `readings` tables of `spoken.toml`."""

    def __init__(self, data: LanguageData) -> None:
        def table(name: str) -> Mapping[str, str]:
            found: Mapping[str, str] = data.get("spoken", f"readings.{name}")
            return found

        self._digits = table("digits")
        self._powers = table("powers")
        self._joined = table("joined")
        self._last = table("last")
        self._whole = table("whole")
        self._after_a_month = table("after_a_month")
        self._counters = {name: tuple(entry.split("|")) for name, entry in table("counters").items()}
        self._doubled_before: Mapping[str, list[str]] = data.get("spoken", "readings.doubled_before")
        self.words = table("words")
        names = "|".join(sorted(self._counters, key=len, reverse=True))
        self.counter = re.compile(names)

    def number(self, figures: str) -> list[str]:
        """Katakana for each part of a number: 二千二十六 -> ニセン, ニジュー, ロク. Bare digits one by one."""
        if _BARE.fullmatch(figures):
            return [self._digits[f] for f in figures]
        parts: list[str] = []
        last = ""
        for part in _MORPHEME.findall(figures):
            if part in self._powers and last + part in self._joined and parts:
                parts[-1] = self._joined_to(parts[-1], last, part)
            else:
                parts.append(self._part(part))
            last = part[-1]
        return parts

    def _part(self, part: str) -> str:
        if part in self._joined:
            return self._joined[part]
        return "".join(self._plain(c) for c in part)

    def _joined_to(self, before: str, last: str, power: str) -> str:
        return before.removesuffix(self._plain(last)) + self._joined[last + power]

    def counted(self, figures: str, counter: str, *, after_a_month: bool = False) -> str:
        """A number with its counter, as one word in katakana."""
        own = self._after_a_month.get(figures + counter) if after_a_month else None
        own = own or self._whole.get(figures + counter)
        if own:
            return own
        *head, end = self.number(figures)
        return "".join(head) + self._joined_with(end, figures[-1], counter)

    def _joined_with(self, end: str, last: str, counter: str) -> str:
        """The last part of a number, `end` (written with `last` at its end), and its counter."""
        if special := self._last.get(last + counter):
            return end.removesuffix(self._plain(last)) + special
        reading, kind = self._counters[counter]
        if last in self._doubled_before.get(kind, ()):
            return end[:-1] + "ッ" + (_changed(reading, _AFTER_STOP) if kind == "h" else reading)
        return end + (_changed(reading, _AFTER_NASAL) if kind == "h" and last in "三千万" else reading)

    def _plain(self, figure: str) -> str:
        return self._digits.get(figure) or self._powers[figure]


def _changed(reading: str, sounds: dict[int, int]) -> str:
    return reading[:1].translate(sounds) + reading[1:]
