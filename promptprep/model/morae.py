"""Morae: the beats in which Japanese is timed."""

from __future__ import annotations

import re

# Small vowels and small ya, yu, yo, wa join the kana before them; the doubling ッ, the long mark ー and ン are beats.
_BEAT = re.compile(r"[ァ-ヺーぁ-ゖヴ](?<![ァィゥェォャュョヮぁぃぅぇぉゃゅょゎ])")


def morae(kana: str) -> int:
    """Morae in katakana or hiragana: "キョー" is 2, "ニッポン" 4. Other characters count nothing.

    After Vance, "The Sounds of Japanese" (2008), ch. 3: a mora is a kana with its small vowel or glide, the moraic
    nasal, the first half of a long consonant or the second half of a long vowel. From memory.
    """
    return sum(1 for _ in _BEAT.finditer(kana))
