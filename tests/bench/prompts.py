"""Measures the recorded number words, days and months of Debian's asterisk-core-sounds-{en,es,fr,ru}-wav.

    python -m tests.bench.prompts > tests/outside/prompts.toml

The packages give no texts; these prompts' file names say them ("12", "day-3", "mon-0"). Only durations are kept:
from the first to the last 10 ms that are louder than a fiftieth of the loudest.
"""

from __future__ import annotations

import wave
from pathlib import Path

import numpy as np
from babel import Locale

from promptprep.engines.load import engines

SOUNDS = Path("/usr/share/asterisk/sounds")
VOICES = {"en": "en_US_f_Allison", "es": "es_MX_f_Allison", "fr": "fr_CA_f_June", "ru": "ru_RU_f_IvrvoiceRU"}
HEAD = """\
# Seconds of single recorded words, silence trimmed: asterisk-core-sounds-{en,es,fr,ru}-wav 1.6.1-1 of Debian.
# Recordings: Allison Smith (en, es), June Wallack (fr), CC BY-SA 3.0; Maxim Topal (ru), CC BY 3.0.
# Written by tests/bench/prompts.py. Words: ICU's numerals, CLDR's days and months."""


def words(tag: str) -> dict[str, str]:
    """File name and word of each prompt."""
    locale = Locale(tag)
    found = {str(n): engines().speller.spell(n, tag) for n in (*range(21), *range(30, 100, 10))}
    found |= {f"day-{i}": locale.days["format"]["wide"][(i - 1) % 7] for i in range(7)}
    return found | {f"mon-{i}": locale.months["stand-alone"]["wide"][i + 1] for i in range(12)}


def sounding_s(file: Path) -> float:
    with wave.open(str(file)) as sound:
        rate = sound.getframerate()
        samples = np.frombuffer(sound.readframes(sound.getnframes()), "<i2").astype(float)
    frame = rate // 100
    loud = np.sqrt((samples[: len(samples) // frame * frame].reshape(-1, frame) ** 2).mean(axis=1))
    on = np.nonzero(loud > max(60.0, loud.max() / 50))[0]
    return float(on[-1] - on[0] + 1) / 100


def main() -> None:
    print(HEAD)
    for tag, voice in VOICES.items():
        print(f"\n[{tag}]")
        measured = {w: sounding_s(SOUNDS / voice / "digits" / f"{name}.wav") for name, w in words(tag).items()}
        for word, seconds in sorted(measured.items()):
            print(f'"{word}" = {seconds:.2f}')


if __name__ == "__main__":
    main()
