"""Listens for a name in a text of another script."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import NamedTuple

from promptprep.model.language import LanguageData
from promptprep.model.ports import Engines
from promptprep.model.versions import Name
from promptprep.versions.sounds import Sounds, apart, latin_sounds, sounds_of

# Shares of a name that may sound otherwise; chosen looking at the CLDR's cities, the same ones that the tests count on.
WHOLE_ALIKE = 0.33  # of a name of several words
PART_ALIKE = 0.36  # of each of its words
ALIKE = 0.3  # of a name of one word
LONELY_ALIKE = 0.2  # of a word of several, said without the others
COMMON_ALIKE = 0.12  # where it is an everyday word
EVERYDAY_ZIPF = 4.6  # wordfreq's Zipf scale: more common words are rather no names, though some first names are
FEWEST = 3  # sounds of a name that must be read just as it is spelled
MOST_TEXTS = 16  # whose words are kept
LONGEST = 40  # letters of a word, or characters of a stretch, that may be names
RARE_ZIPF = 4.5  # of a character alone
_GLIDES = str.maketrans("wy", "ui")
_WORD = re.compile(r"[^\W\d_]+(?:[\u0900-\u0903\u093a-\u094f\u064b-\u0655]+[^\W\d_]*)*")
_KATAKANA = re.compile(r"[\u30a1-\u30fa\u30fc]{2,}")
_KANJI = re.compile(r"[\u3400-\u9fff]")


@dataclass(frozen=True, eq=False)
class Listener:
    """Hears names in texts of one language. What was heard in the last texts is kept."""

    data: LanguageData
    engines: Engines
    sounds: Sounds
    _heard: dict[str, list[_Candidate]] = field(default_factory=dict)

    def words(self, text: str) -> list[str]:
        return _WORD.findall(text)

    def hears(self, name: Name, text: str, far: bool = False) -> bool:
        """Whether some word of the text sounds like the name; true where its script says no sounds.

        A name of several words is first listened for as one; a word of it then counts as heard too. `far` from where
        the name belongs, a word must sound closer.
        """
        if not self.sounds.letters and self.data.base not in ("ja", "ko"):
            return True
        candidates = self._candidates(text)
        parts = [sounds for word in name.whole.split() if (sounds := latin_sounds(word))]
        if self._is_read_so(parts, text) or (len(parts) > 1 and self._as_one(parts, candidates)):
            return True
        own, most = latin_sounds(name.text), LONELY_ALIKE if far or len(parts) > 1 else ALIKE
        return any(
            self._alike(own, heard, COMMON_ALIKE if one.common else most) for one in candidates for heard in one.tries
        )

    def _as_one(self, parts: Sequence[str], candidates: Sequence[_Candidate]) -> bool:
        """Whether neighbours sound like the words of a name said in one, and each like its word, or one holds all."""
        own, count = "".join(parts), len(parts)
        for one in candidates:
            if any(self._alike(own, heard, WHOLE_ALIKE) for heard in one.tries) and all(
                any(apart(part, heard, inside=True) <= LONELY_ALIKE for heard in one.tries) for part in parts
            ):
                return True
        windows = (candidates[at : at + count] for at in range(len(candidates) - count + 1))
        return any(self._side_by_side(order, near) for near in windows for order in (parts, parts[::-1]))

    def _is_read_so(self, parts: Sequence[str], text: str) -> bool:
        """Whether Chinese characters are read just as the name is spelled: a Chinese name in its own letters."""
        if self.data.base != "zh":
            return False
        read, spelled = (t.translate(_GLIDES) for t in (self.sounds.of(text), "".join(parts)))
        return len(spelled) > FEWEST and spelled in read

    def _side_by_side(self, parts: Sequence[str], near: Sequence[_Candidate]) -> bool:
        """Whether each word sounds like its neighbour, and all of them together like the whole."""
        closest = [
            min(one.tries, key=lambda heard: apart(part, heard, self._inside))
            for part, one in zip(parts, near, strict=True)
        ]
        return all(
            self._alike(part, heard, PART_ALIKE) for part, heard in zip(parts, closest, strict=True)
        ) and self._alike("".join(parts), "".join(closest), WHOLE_ALIKE)

    @property
    def _inside(self) -> bool:
        """Whether words are not set apart, so that a name may stand inside what is heard."""
        return self.data.base == "zh"

    def _alike(self, own: str, heard: str, most: float) -> bool:
        return apart(own, heard, self._inside) <= most

    def _candidates(self, text: str) -> list[_Candidate]:
        """What in the text may be a name, in order."""
        if text not in self._heard:
            if len(self._heard) > MOST_TEXTS:
                self._heard.clear()
            found = []
            for tries, common in self._tries(text):
                if sounds := tuple(dict.fromkeys(filter(None, map(self.sounds.of, tries)))):
                    found.append(_Candidate(sounds, common))
            self._heard[text] = found
        return self._heard[text]

    def _tries(self, text: str) -> Iterator[tuple[list[str], bool]]:
        """Words that may be names, whole and without ending or prefix, and whether each is an everyday word."""
        if self.data.base == "zh":
            yield from (([run], False) for run in _runs(text, self._writes_names))
        elif self.data.base == "ja":
            yield from (([word], False) for word in _KATAKANA.findall(text) if len(word) <= LONGEST)
            readings = self.engines.kana.kana(text) if _KANJI.search(text) else []
            yield from (([kana], True) for word, kana, kind in readings if kind == "名詞" and _KANJI.search(word))
        else:
            yield from map(self._word, filter(self._may_be_name, self.words(text)))

    def _word(self, word: str) -> tuple[list[str], bool]:
        endings = self.data.maybe("versions", "name_endings", ())
        prefixes = self.data.maybe("versions", "name_prefixes", ())
        cut = [word[: -len(e)] for e in endings if word.endswith(e) and len(word) > len(e) + 1]
        cut += [word.removeprefix(p) for p in prefixes if word.startswith(p) and len(word) > len(p) + 1]
        zipf = self.engines.frequency.zipf(word, self.data.base)
        return [word, *cut], zipf is not None and zipf > EVERYDAY_ZIPF

    def _writes_names(self, char: str) -> bool:
        """Whether Chinese may write a foreign name with a character: one known for it, or a rare one."""
        if char in self.sounds.characters:
            return True
        zipf = self.engines.frequency.zipf(char, "zh") if "㐀" <= char <= "鿿" else None
        return zipf is not None and zipf < RARE_ZIPF

    def _may_be_name(self, word: str) -> bool:
        return len(word) <= LONGEST and (self.data.base != "ru" or word[0].isupper())


class _Candidate(NamedTuple):
    """The sounds of a word, whole and cut; `common` where it is an everyday word."""

    tries: tuple[str, ...]
    common: bool


@lru_cache(maxsize=64)
def listener_of(data: LanguageData, engines: Engines) -> Listener:
    return Listener(data, engines, sounds_of(data, engines.phonemes))


def _runs(text: str, writes_names: Callable[[str], bool]) -> Iterator[str]:
    """Stretches of characters that foreign names are written with, two at least."""
    run = ""
    for char in text + " ":
        if len(run) < LONGEST and writes_names(char):
            run += char
        else:
            if len(run) > 1:
                yield run
            run = ""
