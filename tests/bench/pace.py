"""How far predicted times lie from recorded readings, beside words and characters a minute in the same run.

    python -m tests.bench.pace FOLDER

FOLDER holds the recorded readings (see `readings.py`). Fitting and judging are kept apart by speaker: the default
that a reader is judged with was fitted without him (English: on the other three; Spanish: on the other nine tenths
of the speakers; Japanese: a default that has not seen the recordings).

Rows of hindsight say what is to be had: every reader gets the one factor that suits all his rows best, ours and the
rules alike. The English paragraphs were cut at a sentence's end near 60 s, so their lengths hardly differ, and "always
the mean length" lies as near as the words-a-minute rule. A model with a constant in it would learn that cut (it brings
4.1 % here) and be wrong on every other text, so there is none.
"""

from __future__ import annotations

import csv
import math
import random
import statistics
import sys
import time
from bisect import bisect
from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import accumulate
from pathlib import Path
from typing import Any

from promptprep.engines.load import engines
from promptprep.model.language import LanguageData
from promptprep.model.timing import Z80, Pace
from promptprep.store.languages import language_data
from promptprep.timing.pace import default_pace, learn
from promptprep.timing.tally import seconds
from promptprep.timing.time import time_text, timing_of
from tests.bench.fit_pace import english_default, fit_english, fit_short_english, fit_spanish
from tests.bench.readings import Row, load, speaker, tallies

DRAWS = 20
MINUTES = 5


@dataclass(frozen=True, slots=True)
class Judged:
    """A reader's rows with their tallies, and the data of the language as fitted without the reader."""

    rows: list[Row]
    amounts: list[dict[str, float]]
    data: LanguageData


@dataclass(slots=True)
class Errors:
    """Errors as fractions of the real time, of promptprep and the two rules."""

    ours: list[float]
    words: list[float]
    characters: list[float]
    inside: list[bool]

    @staticmethod
    def none() -> Errors:
        return Errors([], [], [], [])

    def line(self, name: str) -> str:
        ours, words, characters = (
            100 * statistics.fmean(map(abs, e)) for e in (self.ours, self.words, self.characters)
        )
        bias = 100 * statistics.fmean(self.ours)
        inside = 100 * statistics.fmean(self.inside)
        return (
            f"{name:<44}{ours:7.2f}{words:9.2f}{characters:9.2f}{ours / words:8.3f}{ours / characters:8.3f}"
            f"{bias:+8.2f}{inside:8.1f}"
        )


HEADER = f"{'':<44}{'ours %':>7}{'wpm %':>9}{'cpm %':>9}{'/wpm':>8}{'/cpm':>8}{'bias %':>8}{'in 80 %':>8}"


def by_speaker(
    rows: Iterable[Row], amounts: Iterable[dict[str, float]]
) -> dict[str, list[tuple[Row, dict[str, float]]]]:
    found: dict[str, list[tuple[Row, dict[str, float]]]] = defaultdict(list)
    for row, amount in zip(rows, amounts, strict=True):
        found[row.speaker].append((row, amount))
    return found


def with_coefficients(tag: str, coefficients: dict[str, float], **spread: float) -> LanguageData:
    """The language's data with other sounds and pauses."""
    data = language_data(tag)
    table: dict[str, Any] = dict(data.tables["pace"])
    table["coefficients"] = table["coefficients"] | coefficients
    table["spread"] = table["spread"] | spread
    return LanguageData(tag, {**data.tables, "pace": table})


def is_inside(row: Row, mean_s: float, pace: Pace) -> bool:
    timing = timing_of(mean_s, pace)
    return timing.low_s <= row.seconds <= timing.high_s


def known(
    judged: Sequence[Judged], chance: random.Random, draws: int = DRAWS, *, run: bool = False, minutes: float = MINUTES
) -> Errors:
    """Learn from some minutes of a reader's rows, judge on his others. `run`: those minutes on end."""
    errors = Errors.none()
    for one in judged:
        for _ in range(draws):
            order = list(range(len(one.rows)))
            if run:
                first = chance.randrange(len(order))
                order = order[first:] + order[:first]
            else:
                chance.shuffle(order)
            taken, total_s = 0, 0.0
            while total_s < 60 * minutes - 15 and taken < len(order) - 3:
                total_s += one.rows[order[taken]].seconds
                taken += 1
            judge(one, order[:taken], order[taken:], errors)
    return errors


def judge(one: Judged, train: Sequence[int], rest: Sequence[int], errors: Errors) -> None:
    samples = [(one.rows[i].text, one.rows[i].seconds) for i in train]
    pace = learn(samples, one.data, engines(), speaker(one.data.tag))
    total_s = math.fsum(s for _, s in samples)
    word_s = total_s / sum(one.rows[i].words for i in train)
    character_s = total_s / sum(one.rows[i].characters for i in train)
    for i in rest:
        row = one.rows[i]
        mean_s = seconds(one.amounts[i], pace.coefficients)
        errors.ours.append(mean_s / row.seconds - 1)
        errors.words.append(row.words * word_s / row.seconds - 1)
        errors.characters.append(row.characters * character_s / row.seconds - 1)
        errors.inside.append(is_inside(row, mean_s, pace))


def hindsight(judged: Sequence[Judged]) -> Errors:
    """Each reader with the one factor that is best for him on the rows that are judged."""
    errors = Errors.none()
    for one in judged:
        lengths = [r.seconds for r in one.rows]
        coefficients = default_pace(one.data).coefficients
        errors.ours += best_factor([seconds(a, coefficients) for a in one.amounts], lengths)
        errors.words += best_factor([float(r.words) for r in one.rows], lengths)
        errors.characters += best_factor([float(r.characters) for r in one.rows], lengths)
        errors.inside += [True] * len(lengths)
    return errors


def best_factor(guesses: Sequence[float], lengths: Sequence[float]) -> list[float]:
    """Errors of the guesses times the factor with the least mean error: one of the ratios, weighed by the guesses."""
    ratios = sorted((length / guess, guess / length) for guess, length in zip(guesses, lengths, strict=True))
    passed = list(accumulate(weight for _, weight in ratios))
    factor = ratios[bisect(passed, passed[-1] / 2)][0]
    return [factor * guess / length - 1 for guess, length in zip(guesses, lengths, strict=True)]


def always_the_mean(judged: Sequence[Judged]) -> str:
    """The error of a rule that knows nothing but a reader's mean length of a row."""
    errors = [e for j in judged for e in best_factor([1.0] * len(j.rows), [r.seconds for r in j.rows])]
    return f"  always the mean length of these: {100 * statistics.fmean(map(abs, errors)):.2f} %"


def new(judged: Sequence[Judged]) -> Errors:
    """Judge each reader with a default that has not seen him; the rules take the mean rate of the other readers."""
    errors = Errors.none()
    word_s = [math.fsum(r.seconds for r in j.rows) / sum(r.words for r in j.rows) for j in judged]
    character_s = [math.fsum(r.seconds for r in j.rows) / sum(r.characters for r in j.rows) for j in judged]
    for at, one in enumerate(judged):
        pace = default_pace(one.data)
        others = [i for i in range(len(judged)) if i != at] or [at]
        words, characters = (statistics.fmean(rates[i] for i in others) for rates in (word_s, character_s))
        for row, amounts in zip(one.rows, one.amounts, strict=True):
            mean_s = seconds(amounts, pace.coefficients)
            errors.ours.append(mean_s / row.seconds - 1)
            errors.words.append(row.words * words / row.seconds - 1)
            errors.characters.append(row.characters * characters / row.seconds - 1)
            errors.inside.append(is_inside(row, mean_s, pace))
    return errors


def english(folder: Path, name: str) -> list[Judged]:
    rows = load(folder, name)
    found = []
    for who, its in by_speaker(rows, tallies(rows)).items():
        data = with_coefficients("en", english_default(fit_english(folder, without=who)))
        found.append(Judged([r for r, _ in its], [a for _, a in its], data))
    return found


def shipped(folder: Path, name: str, tag: str) -> list[Judged]:
    rows = load(folder, name)
    data = language_data(tag)
    return [Judged([r for r, _ in its], [a for _, a in its], data) for its in by_speaker(rows, tallies(rows)).values()]


def by_tenths(
    folder: Path, name: str, fit: Callable[[Path, frozenset[str]], dict[str, float]], tag: str
) -> list[Judged]:
    """Each tenth of the speakers, with the default fitted on the others."""
    rows = load(folder, name)
    groups = by_speaker(rows, tallies(rows))
    names = sorted(groups)
    found = []
    for tenth in range(10):
        out = names[tenth::10]
        data = with_coefficients(tag, fit(folder, frozenset(out)))
        found += [Judged([r for r, _ in groups[n]], [a for _, a in groups[n]], data) for n in out]
    return found


def japanese(folder: Path) -> list[Judged]:
    """One reader, and a default made of published rates alone."""
    rows = load(folder, "ja sentences")
    data = with_coefficients("ja", {"mora_s": 0.14, "comma_s": 0.28, "list_s": 0.32})
    return [Judged(rows, tallies(rows), data)]


def short_english(folder: Path, without: frozenset[str]) -> dict[str, float]:
    """Trimmed single sentences: no breath after the last word."""
    return fit_short_english(folder, without) | {"end_s": 0.0}


def between_readers(folder: Path) -> list[str]:
    """Speakers of 17 languages: how many lie inside the 80 % that our spread gives around the other speakers."""
    rates: dict[str, dict[str, list[tuple[float, float]]]] = defaultdict(lambda: defaultdict(list))
    with (folder / "seventeen_languages_syllables.tsv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file, delimiter="\t"):
            rates[row["language"]][row["speaker"]].append((float(row["syllables"]), float(row["phonation_s"])))
    lines, inside = [], []
    for tag, speakers in sorted(rates.items()):
        logs = [math.log(sum(s for s, _ in v) / sum(t for _, t in v)) for v in speakers.values()]
        sd = default_pace(language_data({"cmn": "zh"}.get(tag, tag))).common_sd
        own = [abs(x - statistics.fmean(y for y in logs if y is not x)) < Z80 * sd for x in logs]
        inside += own
        lines.append(f"{tag} {sum(own)}/{len(own)} (sd {statistics.stdev(logs):.3f}, ours {sd:.2f})")
    return [f"17 languages, speakers inside: {100 * statistics.fmean(inside):.0f} %", "  " + "; ".join(lines)]


def speed() -> list[str]:
    """Words a second of `time_text`, warm, spoken form included, and milliseconds for one changed paragraph."""
    lines = []
    for tag, text in _texts().items():
        data, pace, spoken = language_data(tag), default_pace(language_data(tag)), speaker(tag)

        def run(text: str = text, data: LanguageData = data, pace: Pace = pace, spoken: Any = spoken) -> None:
            time_text(text, data, pace, engines(), spoken)

        run()
        whole_s = min(_taken_s(run) for _ in range(3))
        one = text[:600]
        paragraph_s = min(_taken_s(partial(run, one + " new")) for _ in range(3))
        lines.append(f"{tag}: {len(text.split()) / whole_s:10,.0f} words/s   {1000 * paragraph_s:.2f} ms a paragraph")
    return lines


def _taken_s(run: Callable[[], None]) -> float:
    start = time.perf_counter()
    run()
    return time.perf_counter() - start


def _texts() -> dict[str, str]:
    return {
        file.name.split(".")[1]: file.read_text("utf-8") * 20 for file in sorted(Path("scripts_demo").glob("sky.*.md"))
    }


def main() -> None:
    folder = Path(sys.argv[1])
    chance = random.Random(7)
    paragraphs, sentences = english(folder, "en paragraphs"), english(folder, "en sentences")
    short = [j for j in shipped(folder, "en short sentences", "en") if len(j.rows) >= 30]
    spanish_all = by_tenths(folder, "es paragraphs", fit_spanish, "es")
    spanish_many = [j for j in spanish_all if len(j.rows) >= 9]
    ja = japanese(folder)
    print(HEADER)
    print(known(paragraphs, chance).line("known: en paragraphs, 4 readers"))
    print(known(paragraphs, chance, run=True).line("known: en paragraphs, five minutes on end"))
    print(known(paragraphs, chance, minutes=1).line("known: en paragraphs, from one minute"))
    print(known(paragraphs, chance, 3, minutes=90).line("known: en paragraphs, from ninety minutes"))
    print(hindsight(paragraphs).line("hindsight: en paragraphs"))
    print(always_the_mean(paragraphs))
    print(known(sentences, chance, 6).line("known: en sentences, 4 readers"))
    print(known(short, chance, 1).line(f"known: en short sentences, {len(short)} speakers"))
    print(known(spanish_many, chance, 10).line(f"known: es paragraphs, {len(spanish_many)} readers"))
    print(hindsight(spanish_many).line("hindsight: es paragraphs"))
    print(known(ja, chance, 3).line("known: ja sentences, 1 reader"))
    print(new(paragraphs).line("new: en paragraphs, 4 readers"))
    print(new(sentences).line("new: en sentences, 4 readers"))
    print(new(shipped(folder, "en short sentences", "en")).line("new: en short sentences, 108 speakers"))
    print(
        new(by_tenths(folder, "en short sentences", short_english, "en")).line(
            "  the same, default fitted on the others"
        )
    )
    print(new(spanish_all).line(f"new: es paragraphs, {len(spanish_all)} readers"))
    print(new(ja).line("new: ja sentences, 1 reader (rules know him)"))
    print("\n".join(between_readers(folder)))
    print("\n".join(speed()))


if __name__ == "__main__":
    main()
