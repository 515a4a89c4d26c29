"""All engines in one record. Each loads its native library at first use, not before."""

from __future__ import annotations

from functools import lru_cache

from promptprep.engines.breaks import IcuBreaks
from promptprep.engines.frequency import WordFrequency
from promptprep.engines.kana import UnidicKana
from promptprep.engines.phonemes import EspeakPhonemes
from promptprep.engines.shaping import HarfBuzzShaper
from promptprep.engines.spelling import IcuSpeller
from promptprep.engines.structure import SpacyStructure
from promptprep.errors import UnknownLanguage
from promptprep.model.ports import Engines


@lru_cache(maxsize=1)
def engines() -> Engines:
    """The engines of this process. Cheap: nothing native is loaded until it is asked."""
    return Engines(
        speller=IcuSpeller(),
        phonemes=EspeakPhonemes(),
        kana=UnidicKana(),
        breaks=IcuBreaks(),
        shaper=HarfBuzzShaper(),
        structure=SpacyStructure(),
        frequency=WordFrequency(),
    )


def has_voice(language: str) -> bool:
    """Whether the phoneme engine has a voice for a language: it can then be timed."""
    try:
        engines().phonemes.counts(["a"], language)
    except UnknownLanguage:
        return False
    return True
