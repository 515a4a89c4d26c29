"""Fits the default paces and writes `pace.toml` for each language.

    python -m tests.bench.fit_pace FOLDER [--write]

FOLDER holds the recorded readings (see `readings.py`). English, Spanish and Japanese are fitted on recordings;
the other languages take the proportions of the fitted ones, scaled so that ordinary text runs at the published rate
in TARGETS. Without `--write` it prints the tables.
"""

from __future__ import annotations

import math
import re
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from promptprep.engines.load import engines
from promptprep.model.language import LanguageData
from promptprep.spans import Span
from promptprep.store.languages import FOLDER, language_data
from promptprep.timing.pieces import Piece
from promptprep.timing.sounds import weighed
from promptprep.timing.tally import seconds
from tests.bench.readings import Row, load, tallies

UNITS = {"ar": "letter", "ja": "mora", "ko": "syllable", "zh": "character"}
FITTED = ["phone_s", "word_s", "rare_s", "list_s", "comma_s", "colon_s", "dash_s", "bracket_s", "sentence_s"]
START = np.array([0.062, 0.08, 0.05, 0.3, 0.28, 0.4, 0.43, 0.25, 0.75])
START_SD = np.array([0.05, 0.05, 0.05, 0.2, 0.2, 0.3, 0.3, 0.3, 0.5])

# Not in the recordings: seconds, each with what it rests on (see HEAD).
FIXED = {"name_s": 0.15, "stress_s": 0.08, "paragraph_s": 0.3, "segment_s": 0.6, "breath_s": 0.05, "end_s": 0.35}
STYLES = {"conversational": (0.95, 0.95), "news": (0.88, 0.8), "slow": (1.35, 1.5)}

# Written English prose in the recordings: marks a word.
MARKS = {"list_s": 0.028, "comma_s": 0.056, "colon_s": 0.006, "dash_s": 0.005, "bracket_s": 0.001, "sentence_s": 0.047}

READERS_WPM = 144.0  # of the four readers
EN_WPM = 147.0  # a quarter of the way to 155
EN_SYLLABLES_MIN = 205.0  # the recordings' 3.43 syllables a second


@dataclass(frozen=True, slots=True)
class Target:
    """A published rate: `units` a minute, pauses inside; `of` says of what."""

    rate: float
    of: str
    source: str
    spread: float = 0.18


def mean(*rates: float) -> float:
    return math.exp(sum(map(math.log, rates)) / len(rates))


# IReST: Trauzettel-Klosinski & Dietz 2012, IOVS 53:5452, words or syllables a minute aloud.
# Coupe: Coupe, Oh, Dediu & Pellegrino 2019, Science Advances 5:eaaw2594, syllables a second without long pauses,
# mean of ten speakers. Both are rates in an experiment, faster than a host: only their ratio to English is taken.
# Prompts: ordinary text at the rate of Debian's French and Russian voice beside the English one (prompts.py; 106 and
# 78 prompts of eight words or more), English at EN_WPM; time by the phone, word and pause.
IREST_EN_WPM, COUPE_EN = 228.0, 6.35
PROMPTS_WPM = {"fr": 168.0, "ru": 130.0}
TARGETS = {
    "fr": Target(
        mean(6.84 / COUPE_EN * EN_SYLLABLES_MIN / 1.54, PROMPTS_WPM["fr"]),
        "word",
        "ratio to English of Coupe 2019 (6.84 syllables/s, 1.54 a word) and of a recorded voice (Debian's "
        "asterisk-core-sounds; IReST's 195 words/min, a slower ratio than any other source's, left out)",
    ),
    "de": Target(
        mean(179 / IREST_EN_WPM * EN_WPM, 6.01 / COUPE_EN * EN_SYLLABLES_MIN / 1.72),
        "word", "ratio to English of IReST (179 words/min) and Coupe 2019 (6.01 syllables/s, 1.72 a word)",
    ),
    "pt": Target(181 / IREST_EN_WPM * EN_WPM, "word", "ratio to English of IReST (181 words/min, Brazilian)", 0.2),
    "ru": Target(
        mean(184 / IREST_EN_WPM * EN_WPM, PROMPTS_WPM["ru"]),
        "word",
        "ratio to English of IReST (184 words/min) and of a recorded voice (Debian's asterisk-core-sounds)", 0.2,
    ),
    "ar": Target(138 / IREST_EN_WPM * EN_WPM, "word", "ratio to English of IReST (138 words/min)", 0.22),
    "hi": Target(
        6.6 / COUPE_EN * EN_SYLLABLES_MIN,
        "syllable", "no published rate found: mean of the 17 languages of Coupe 2019 (6.6 syllables/s)", 0.22,
    ),
    "sw": Target(
        7.6 / COUPE_EN * EN_SYLLABLES_MIN,
        "syllable",
        "no published rate found: mean of the languages of simple syllables in Coupe 2019 "
        "(es eu fi ja, 7.6 syllables/s)", 0.22,
    ),
    "zh": Target(
        mean(mean(255 / 313, 5.81 / COUPE_EN) * EN_SYLLABLES_MIN, 260 / 170 * EN_WPM),
        "character",
        "ratio to English of IReST (255 characters/min), Coupe 2019 (5.81 syllables/s) and radio news "
        "(260 characters/min, 9jiaoyu.com, to Rodero's 170 words/min)", 0.2,
    ),
    "ko": Target(
        mean(7.07 / COUPE_EN * EN_SYLLABLES_MIN, 16.03 * 17.95),
        "syllable",
        "ratio to English of Coupe 2019 (7.07 syllables/s) and 18 readers aloud (16.03 breath groups/min of "
        "17.95 syllables, JAKO200804748556267)",
    ),
}  # fmt: skip


def with_unit(tag: str) -> LanguageData:
    """The language's data with its unit of sound, before there is a pace file."""
    pace = {"unit": UNITS.get(tag, "phone"), "coefficients": {"rare_s": 0.0}}
    return LanguageData(tag, {**language_data(tag).tables, "pace": pace})


def matrix(tallied: list[dict[str, float]], names: list[str], *, contiguous: bool) -> np.ndarray:
    """Amounts; in contiguous cuts the pause after the last sentence is inside."""
    rows = [dict(t) for t in tallied]
    if contiguous:
        for row in rows:
            row["sentence_s"] = row.get("sentence_s", 0.0) + row.get("end_s", 0.0)
    return np.array([[row.get(name, 0.0) for name in names] for row in rows])


def robust(a: np.ndarray, y: np.ndarray, start: np.ndarray, start_sd: np.ndarray, own_sd: float = 0.45) -> np.ndarray:
    """Coefficients under Student's t, 5 degrees of freedom, drawn weakly towards `start`; the whole time is kept."""
    precision = np.diag(1 / start_sd**2)
    noise, weight = own_sd**2 * y, np.ones(len(y))
    found = start
    for _ in range(12):
        w = (weight / noise)[:, None]
        found = np.linalg.solve(a.T @ (a * w) + precision, a.T @ (y * weight / noise) + precision @ start)
        weight = 6 / (5 + (y - a @ found) ** 2 / noise)
    found = np.maximum(found, 0.1 * start)
    return found * y.sum() / (a @ found).sum()


def fit_english(folder: Path, without: str = "") -> dict[str, float]:
    """Mean of the readers' own coefficients, on their sentences and paragraphs, without one reader if named."""
    paragraphs, sentences = load(folder, "en paragraphs"), load(folder, "en sentences")
    rows = paragraphs + sentences
    amounts = matrix(tallies(rows, with_unit("en")), FITTED, contiguous=True)
    length = np.array([r.seconds for r in rows])
    who = np.array([r.speaker for r in rows])
    fits = [robust(amounts[who == s], length[who == s], START, START_SD) for s in sorted(set(who)) if s != without]
    return dict(zip(FITTED, np.mean(fits, axis=0), strict=True))


def english_default(fitted: dict[str, float]) -> dict[str, float]:
    """Drawn to the rate of finished audiobooks (155 words/min) as by one or two readers beside the four."""
    return {name: value * READERS_WPM / EN_WPM for name, value in fitted.items()}


def fit_spanish(folder: Path, without: frozenset[str] = frozenset()) -> dict[str, float]:
    """The proportions of 38 readers of books; contiguous cuts."""
    return fit_many([r for r in load(folder, "es paragraphs") if r.speaker not in without], contiguous=True)


def fit_short_english(folder: Path, without: frozenset[str] = frozenset()) -> dict[str, float]:
    """The proportions of 108 speakers of single sentences, trimmed; for judging only, no default rests on it."""
    return fit_many([r for r in load(folder, "en short sentences") if r.speaker not in without], contiguous=False)


def fit_many(rows: list[Row], *, contiguous: bool) -> dict[str, float]:
    """One set of proportions for all speakers, each with a factor of his own; the mean factor is 1.

    Those who gave one recording weigh a third, those who gave many one: hosts are practised readers.
    """
    amounts = matrix(tallies(rows, with_unit(rows[0].language)), FITTED, contiguous=contiguous)
    length = np.array([r.seconds for r in rows])
    names = sorted({r.speaker for r in rows})
    who = np.array([names.index(r.speaker) for r in rows])
    factor = np.ones(len(names))
    rows_each = np.bincount(who)
    practice = rows_each / (rows_each + 2)
    found = START
    for _ in range(10):
        found = robust(amounts * factor[who][:, None], length, START, START_SD)
        logs = np.log(length / (amounts @ found))
        for s in range(len(names)):
            own = logs[who == s]
            factor[s] = math.exp(float(np.median(own)) * len(own) / (len(own) + 0.2))
        middle = math.exp(float(np.average(np.log(factor), weights=practice)))
        found, factor = found * middle, factor / middle
    return dict(zip(FITTED, found, strict=True))


def fit_japanese(folder: Path) -> dict[str, float]:
    """Mora and comma of one trained reader, in trimmed sentences."""
    rows = load(folder, "ja sentences")
    tallied = tallies(rows, with_unit("ja"))
    for t in tallied:
        t["comma_s"] = t.get("comma_s", 0.0) + t.pop("list_s", 0.0)
    names = ["mora_s", "comma_s", "end_s"]
    found = robust(
        matrix(tallied, names, contiguous=False), np.array([r.seconds for r in rows]),
        np.array([0.11, 0.2, 0.1]), np.array([0.05, 0.2, 0.2]), 0.15,
    )  # fmt: skip
    return dict(zip(names[:2], found[:2], strict=True))


def ordinary(tag: str) -> dict[str, float]:
    """What a hundred words of ordinary text hold: by the frequency list, else by the text of the demo."""
    data = with_unit(tag)
    unit = {"phone": "phone_s", "letter": "letter_s"}[UNITS.get(tag, "phone")]
    words, weights = common_words(tag)
    total = dict.fromkeys((unit, "word_s", "rare_s", "syllables"), 0.0)
    share = dict(zip(words, weights, strict=True))
    for piece, weighs in weighed([Piece(Span(0, len(w)), w, "word") for w in words], "", data, engines()):
        for name, amount in zip((unit, "syllables", "word_s", "rare_s"), weighs, strict=True):
            total[name] += share[piece.said] * amount
    scale = 100 / total["word_s"]
    marks = {name: 100 * amount for name, amount in MARKS.items()}
    return {name: value * scale for name, value in total.items()} | marks


def common_words(tag: str) -> tuple[list[str], list[float]]:
    """The words of a language's frequency list with their shares; of its demo text where it has no list."""
    from wordfreq import available_languages, top_n_list, word_frequency

    if tag in available_languages():
        words = [w for w in top_n_list(tag, 100_000) if not any(c.isdigit() for c in w)]
        return words, [word_frequency(w, tag) for w in words]
    text = (Path("scripts_demo") / f"sky.{tag}.md").read_text("utf-8").split("+++")[-1]
    words = re.findall(r"[^\W\d_]+(?:['’][^\W\d_]+)*", re.sub(r"\[.*?\]|\{.*?\}", "", text))
    return words, [1.0] * len(words)


def scaled_to(target: Target, tag: str, shape: dict[str, float], pauses: dict[str, float]) -> dict[str, float]:
    """`shape` (proportions of sounds) times the factor that makes ordinary text run at the target's rate.

    Pauses keep their seconds; their number a minute stays that of English prose.
    """
    if UNITS.get(tag) in ("character", "syllable"):
        unit = f"{UNITS[tag]}_s"
        pause_share = sum(MARKS[n] * pauses[n] for n in MARKS) / (60 / EN_WPM)
        return {unit: 60 / target.rate * (1 - pause_share)} | pauses
    text = ordinary(tag)
    amount = 100.0 if target.of == "word" else text["syllables"]
    whole = 60 / target.rate * amount
    share = sum(MARKS[n] * pauses[n] for n in MARKS) / (60 / EN_WPM)
    sounds = seconds(text, shape)
    factor = whole * (1 - share) / sounds
    return {name: value * factor for name, value in shape.items()} | pauses


def all_paces(folder: Path) -> dict[str, dict[str, Any]]:
    english, spanish, japanese = english_default(fit_english(folder)), fit_spanish(folder), fit_japanese(folder)
    pauses = {n: english[n] for n in MARKS}
    ratio = {
        n: math.sqrt(english[n] / english["phone_s"] * spanish[n] / spanish["phone_s"]) for n in ("word_s", "rare_s")
    }
    paces = {
        "en": pace(english, 0.12, 0.28, EN_SOURCE, day=0.05),
        "es": pace(spanish, 0.23, 0.26, ES_SOURCE),
        "ja": pace(
            {"mora_s": japanese["mora_s"] * 1.06, **pauses, "comma_s": 0.25, "list_s": 0.25}, 0.2, 0.2, JA_SOURCE
        ),
    }
    for tag, target in TARGETS.items():
        unit = "letter_s" if tag == "ar" else "phone_s"
        shape = {unit: 1.0, "word_s": ratio["word_s"], "rare_s": ratio["rare_s"]}
        if tag in ("sw", "ar"):
            del shape["rare_s"]
        own = scaled_to(target, tag, shape, pauses)
        paces[tag] = pace(
            own,
            target.spread,
            0.33,
            f"{target.source}; proportions of sounds and pauses as in English and Spanish recordings",
        )
    return paces


EN_SOURCE = (
    "fitted on 4 readers of public-domain books (synclibrivox, CC BY 4.0), drawn to the 155 words/min of finished "
    "audiobooks (naturallyvoice.com) as by one or two readers more"
)
ES_SOURCE = "fitted on 38 readers of public-domain books (LibriVox Spanish re-creation, open-speech-org)"
JA_SOURCE = (
    "mora fitted on one trained reader (JSUT, CC BY-SA 4.0), slowed by 6 % towards radio news (300 characters/min, "
    "talkrescue.jp); pauses as in English recordings"
)


def pace(
    coefficients: dict[str, float], reader: float, own_sd: float, source: str, day: float = 0.045
) -> dict[str, Any]:
    return {"coefficients": coefficients | FIXED, "reader": reader, "own_sd": own_sd, "source": source, "day": day}


HEAD = """\
# How fast {language} is read aloud to a microphone. Written by tests/bench/fit_pace.py; figures in seconds.
#
# name_s: a name for which a pronunciation is given; common practice, no source.
# stress_s: a stressed word is about a fifth longer (Turk & White 1999, J. Phonetics 27:171; from memory).
# paragraph_s, segment_s: on top of the sentence's pause. Kazlauskiene 2020 measured 200-980 ms after sentences and
#   400-1340 ms after paragraphs (fast readers); segment: common practice, no source.
# breath_s: for each 16 syllables beyond the first 16 without a mark; the recordings show no more than this.
# end_s: breath after the last word, half a sentence's pause: recordings are cut after the pause or before it.
# spread: fractions of the coefficients between readers (reader, sounds, pauses, one_sound, one_pause), from day to
#   day (day), of the last breath in seconds (end_s); own_sd in seconds per root second.
"""


def toml(tag: str, found: dict[str, Any]) -> str:
    lines = [HEAD.format(language=tag), f'unit = "{UNITS.get(tag, "phone")}"', f'source = "{found["source"]}"', ""]
    lines += ["[coefficients]", *(f"{n} = {round(float(v), 4)}" for n, v in sorted(found["coefficients"].items())), ""]
    spread = {
        "day": found["day"], "end_s": 0.2, "one_pause": 0.25, "one_sound": 0.1, "own_sd": found["own_sd"],
        "pauses": 0.3, "reader": found["reader"], "sounds": 0.05,
    }  # fmt: skip
    lines += ["[spread]", *(f"{n} = {v}" for n, v in spread.items()), ""]
    for name, (sounds, pauses) in STYLES.items():
        lines += [f"# {STYLE_SOURCES[name]}", f"[styles.{name}]", f"pauses = {pauses}", f"sounds = {sounds}", ""]
    return "\n".join(lines).rstrip() + "\n"


STYLE_SOURCES = {
    "conversational": "a little brisker than a book read aloud; common practice, no source",
    "news": "towards the 160-180 words/min advised for radio (Rodero 2012, Text & Talk 32:391)",
    "slow": "for second-language listeners, about two thirds of the rate; common practice, no source",
}


def main() -> None:
    folder = Path(sys.argv[1])
    for tag, found in all_paces(folder).items():
        text = toml(tag, found)
        if "--write" in sys.argv:
            (FOLDER / tag).mkdir(exist_ok=True)
            (FOLDER / tag / "pace.toml").write_text(text, "utf-8")
        print(tag, {n: round(float(v), 4) for n, v in found["coefficients"].items() if n not in FIXED})


if __name__ == "__main__":
    main()
