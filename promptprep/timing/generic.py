"""The pace of a language for which the project has no figures: wide, and saying so."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

GENERIC: Mapping[str, Any] = {
    "unit": "phone",
    "source": "no figures for this language: a generic pace, wide",
    "coefficients": {
        "phone_s": 0.07, "word_s": 0.045, "name_s": 0.15, "stress_s": 0.08, "list_s": 0.3, "comma_s": 0.3,
        "colon_s": 0.45, "dash_s": 0.45, "bracket_s": 0.3, "sentence_s": 0.75, "paragraph_s": 0.3, "segment_s": 0.6,
        "breath_s": 0.05, "end_s": 0.35,
    },
    "spread": {
        "reader": 0.2, "day": 0.045, "own_sd": 0.26, "sounds": 0.1, "pauses": 0.3, "one_sound": 0.1, "one_pause": 0.25,
        "end_s": 0.3,
    },
    "styles": {},
}  # fmt: skip
