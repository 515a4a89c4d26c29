"""The pace of a language for which the project has no figures: wide, and saying so.

Sounds: 6.6 syllables a second without pauses is the mean of 17 languages (Coupé et al. 2019, Science Advances
5:eaaw2594; 170 readers), brought to an unhurried reader as the English default stands to its rate there (0.68), with
2.4 phonemes a syllable and 2 syllables a word (common practice, no source). Pauses: as in English and Spanish
recordings. Spread: readers differ by 0.12, languages around their mean by 0.14 (same data), and the proportions of
syllables to phonemes are a guess: 0.25.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

GENERIC: Mapping[str, Any] = {
    "unit": "phone",
    "source": "no figures for this language: a generic pace from the syllable rates of 17 languages (Coupé 2019), wide",
    "coefficients": {
        "bracket_s": 0.3, "breath_s": 0.05, "colon_s": 0.42, "comma_s": 0.28, "dash_s": 0.43, "end_s": 0.35,
        "list_s": 0.33, "name_s": 0.15, "paragraph_s": 0.3, "phone_s": 0.071, "segment_s": 0.6, "sentence_s": 0.7,
        "stress_s": 0.08, "word_s": 0.105,
    },
    "spread": {
        "day": 0.045, "end_s": 0.2, "one_pause": 0.25, "one_sound": 0.1, "own_sd": 0.26, "pauses": 0.3, "reader": 0.25,
        "sounds": 0.05,
    },
    "styles": {
        "conversational": {"pauses": 0.95, "sounds": 0.95},
        "news": {"pauses": 0.8, "sounds": 0.88},
        "slow": {"pauses": 1.5, "sounds": 1.35},
    },
}  # fmt: skip
