"""Debian's recorded telephone prompts: how far predicted times lie from them, and the words the tests carry.

    python -m tests.bench.prompts [--write]

Needs asterisk-core-sounds-{en,es,fr,ru} (the texts) and the same with -wav (the recordings); `apt-get download` and
`dpkg -x` will do for the texts, see TEXTS. No default pace is fitted on one speaker; for French and Russian the
speakers' rate beside the English one's is one of the sources of the default (fit_pace.py). Seconds are from the first
to the last 10 ms that are louder than a fiftieth of the loudest. With `--write` it writes tests/outside/prompts.toml:
recorded words, and every n-th sentence.
"""

from __future__ import annotations

import gzip
import json
import os
import random
import re
import sys
import wave
from pathlib import Path

import numpy as np
from babel import Locale

from promptprep.engines.load import engines
from promptprep.store.languages import language_data
from tests.bench.pace import HEADER, Judged, known, new
from tests.bench.readings import Row, tallies

SOUNDS = Path("/usr/share/asterisk/sounds")
TEXTS = Path(os.environ.get("PROMPT_TEXTS", "/usr/share/doc"))
VOICES = {"en": "en_US_f_Allison", "es": "es_MX_f_Allison", "fr": "fr_CA_f_June", "ru": "ru_RU_f_IvrvoiceRU"}
CARRIED = Path("tests/outside/prompts.toml")
SENTENCES = 60
HEAD = """\
# Seconds of recorded words and sentences, silence trimmed: asterisk-core-sounds-{en,es,fr,ru}-wav 1.6.1-1 of Debian,
# texts of asterisk-core-sounds-{en,es,fr,ru} 1.6.1-1.
# Recordings and texts: Allison Smith (en, es), June Wallack (fr), CC BY-SA 3.0; Maxim Topal (ru), CC BY 3.0. This
# file is shared under the same licences.
# Written by tests/bench/prompts.py. Words: ICU's numerals, CLDR's days and months."""


def words(tag: str) -> dict[str, str]:
    """File name and word of each prompt that is one word."""
    locale = Locale(tag)
    found = {str(n): engines().speller.spell(n, tag) for n in (*range(21), *range(30, 100, 10))}
    found |= {f"day-{i}": locale.days["format"]["wide"][(i - 1) % 7] for i in range(7)}
    return found | {f"mon-{i}": locale.months["stand-alone"]["wide"][i + 1] for i in range(12)}


def sentences(tag: str, least_words: int = 3) -> list[Row]:
    """The prompts of at least so many words, sounds and notes in brackets left out."""
    found = []
    with gzip.open(TEXTS / f"asterisk-core-sounds-{tag}" / f"core-sounds-{tag}.txt.gz", "rt", encoding="utf-8") as file:
        for line in file:
            name, _, text = line.partition(":")
            sound = SOUNDS / VOICES[tag] / f"{name.strip()}.wav"
            text = " ".join(text.split())
            if sound.exists() and len(text.split()) >= least_words and not re.search(r"[\[<(]|[a-z]-[a-z]+:", text):
                found.append(Row(tag, VOICES[tag], name.strip(), sounding_s(sound), text))
    return found


def sounding_s(file: Path) -> float:
    with wave.open(str(file)) as sound:
        rate = sound.getframerate()
        samples = np.frombuffer(sound.readframes(sound.getnframes()), "<i2").astype(float)
    frame = rate // 100
    loud = np.sqrt((samples[: len(samples) // frame * frame].reshape(-1, frame) ** 2).mean(axis=1))
    on = np.nonzero(loud > max(60.0, loud.max() / 50))[0]
    return float(on[-1] - on[0] + 1) / 100


def table() -> list[str]:
    lines = [HEADER]
    for tag in VOICES:
        rows = sentences(tag)
        judged = [Judged(rows, tallies(rows), language_data(tag))]
        lines.append(known(judged, random.Random(3), 20).line(f"known: {tag} prompts, {len(rows)}, five minutes"))
        lines.append(new(judged).line(f"new: {tag} prompts (rules know the speaker)"))
    return lines


def carried() -> str:
    """The table that the tests carry."""
    lines = [HEAD]
    for tag, voice in VOICES.items():
        lines.append(f"\n[words.{tag}]")
        measured = {w: sounding_s(SOUNDS / voice / "digits" / f"{name}.wav") for name, w in words(tag).items()}
        lines += [f'"{word}" = {seconds:.2f}' for word, seconds in sorted(measured.items())]
        lines.append(f"\n[sentences.{tag}]")
        unique = {row.text: row.seconds for row in sentences(tag, 4) if row.seconds < 15}
        every = len(unique) / SENTENCES
        chosen = [list(unique.items())[int(i * every)] for i in range(SENTENCES)]
        lines += [f"{json.dumps(text, ensure_ascii=False)} = {seconds:.2f}" for text, seconds in sorted(chosen)]
    return "\n".join(lines) + "\n"


def main() -> None:
    if "--write" in sys.argv:
        CARRIED.write_text(carried(), "utf-8")
    print("\n".join(table()))


if __name__ == "__main__":
    main()
