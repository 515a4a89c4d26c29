"""Default paces, styles, and learning: synthetic readers whose true pace is known."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import replace

import pytest

from promptprep.engines.load import engines
from promptprep.errors import BadCall, PromptprepError
from promptprep.model.language import FIRST_CLASS
from promptprep.model.timing import Pace
from promptprep.store.languages import language_data
from promptprep.timing.pace import default_pace, learn, styled
from tests.timing.stand import EN, speaker, timed

PARAGRAPHS = """\
Good evening. Tonight the moon rises over the ridge, and the dome opens at nine. We shall look at three things: \
the craters near the edge, the dark plain, and a mountain that nobody expected.
In the second week Jupiter stands high in the south. Its four large moons change places from hour to hour; a small \
telescope is enough. Wait for a still night -- the picture will be much calmer.
Why does the red star look red? Because it is cool, for a star, and very large. If it stood where the sun stands, \
it would swallow the earth, and more.
Bring a coat. Bring a friend. The road to the dome is dark, so carry a lamp, walk slowly, and mind the steps.
The probe has sent its first picture of the valley. What you see is dust, lifted by a wind that blows every \
afternoon, and behind it (hardly visible) the wall of an old crater.
Look up. Look left. There. That is Mars. Small, red, and steady. Wait. Now look again. It has moved. Not far. Enough.
Later in the night a thin bright line will cross the northern half of the picture from the lower edge towards the old \
water tower that many of you will remember from the pictures which we took there in the long dry summer.\
""".splitlines()


def learned(samples: Sequence[tuple[str, float]], prior: Pace | None = None) -> Pace:
    return learn(samples, EN, engines(), speaker(EN), prior)


def reader(sounds: float, pauses: float) -> Pace:
    """A reader who differs from the default by these factors."""
    pace = default_pace(EN)
    changed = {
        n: v
        * (pauses if n in ("list_s", "comma_s", "colon_s", "dash_s", "bracket_s", "sentence_s", "end_s") else sounds)
        for n, v in pace.coefficients.items()
    }
    return replace(pace, coefficients=changed)


def readings(who: Pace, times: int = 1, scatter: float = 0.0) -> list[tuple[str, float]]:
    chance = random.Random(11)
    return [(t, timed(t, pace=who).mean_s * (1 + chance.gauss(0, scatter))) for t in PARAGRAPHS * times]


@pytest.mark.parametrize("tag", FIRST_CLASS)
def test_first_class_languages_have_a_pace_of_their_own(tag: str) -> None:
    pace = default_pace(language_data(tag))
    assert pace.language == tag
    assert "no figures" not in pace.source
    assert all(0 < v < 2 for v in pace.coefficients.values())
    assert pace.samples == 0


def test_another_language_is_timed_with_a_wide_range_and_says_so() -> None:
    found = timed("Kaixo, gabon guztioi.", "eu")
    assert "no figures" in default_pace(language_data("eu")).source
    assert found.high_s / found.low_s > 1.7
    with pytest.raises(PromptprepError, match="xx"):
        timed("la", "xx")


def test_a_regional_tag_uses_its_language() -> None:
    assert timed("A lua nasce.", "pt-BR").mean_s == pytest.approx(timed("A lua nasce.", "pt").mean_s, rel=0.15)


@pytest.mark.parametrize("tag", FIRST_CLASS)
def test_styles_are_ordered(tag: str) -> None:
    data = language_data(tag)
    paces = [styled(default_pace(data), style, data) for style in ("news", "conversational", "slow")]
    text = "月亮升起来了。" if tag == "zh" else "Luna."
    times = [timed(text, tag, pace).mean_s for pace in paces]
    assert times == sorted(times)
    assert times[0] < timed(text, tag).mean_s < times[2]


def test_an_unknown_style_names_those_there_are() -> None:
    with pytest.raises(BadCall) as fault:
        styled(default_pace(EN), "sung", EN)
    assert "news" in fault.value.hint


@pytest.mark.parametrize(("sounds", "pauses"), [(0.8, 0.8), (1.25, 1.25), (0.9, 1.4), (1.1, 0.6)])
def test_a_reader_is_learned_from_five_minutes(sounds: float, pauses: float) -> None:
    who = reader(sounds, pauses)
    pace = learned(readings(who, 5, 0.03))
    for text in (
        "The moon is up. It is late. We go home.",
        "a long sentence with hardly any pause in it follows here now",
    ):
        assert timed(text, pace=pace).mean_s == pytest.approx(timed(text, pace=who).mean_s, rel=0.08)


def test_pauses_are_learned_apart_from_sounds() -> None:
    default = default_pace(EN).coefficients
    slow_pauses = learned(readings(reader(1.0, 1.6), 5)).coefficients
    slow_sounds = learned(readings(reader(1.2, 1.0), 5)).coefficients
    assert slow_pauses["sentence_s"] / default["sentence_s"] > slow_pauses["phone_s"] / default["phone_s"] + 0.2
    assert slow_sounds["phone_s"] / default["phone_s"] > slow_sounds["sentence_s"] / default["sentence_s"]


def test_one_reading_moves_the_pace_part_of_the_way() -> None:
    text, usual_s = PARAGRAPHS[0], timed(PARAGRAPHS[0]).mean_s
    for factor in (0.8, 1.1, 1.3):
        moved = timed(text, pace=learned([(text, factor * usual_s)])).mean_s / usual_s
        assert min(1, factor) < moved < max(1, factor)


def test_more_readings_move_it_further_and_make_it_surer() -> None:
    text, usual_s = PARAGRAPHS[0], timed(PARAGRAPHS[0]).mean_s
    paces = [learned([(text, 1.3 * usual_s)] * n) for n in (1, 3, 10)]
    moved = [timed(text, pace=p).mean_s / usual_s for p in paces]
    assert moved == sorted(moved)
    assert moved[-1] == pytest.approx(1.3, abs=0.03)
    assert default_pace(EN).common_sd > paces[0].common_sd > paces[1].common_sd > paces[2].common_sd


def test_one_wrong_stopwatch_does_not_carry_the_pace_away() -> None:
    right = readings(reader(1.1, 1.1), 2)
    text = PARAGRAPHS[2]
    wrong = [(text, 2.5 * timed(text).mean_s)]
    with_wrong, without = (timed(text, pace=learned(s)).mean_s for s in (right + wrong, right))
    assert with_wrong == pytest.approx(without, rel=0.03)
    alone = timed(text, pace=learned(wrong)).mean_s / timed(text).mean_s
    assert 1 < alone < 1.6


def test_learning_goes_on_from_a_pace_learned_before() -> None:
    who = reader(1.2, 1.2)
    first = learned(readings(who)[:2])
    second = learned(readings(who)[2:], first)
    text = PARAGRAPHS[0]
    errors = [
        abs(timed(text, pace=p).mean_s / timed(text, pace=who).mean_s - 1) for p in (default_pace(EN), first, second)
    ]
    assert errors[2] <= errors[1] < errors[0]
    assert second.samples == len(PARAGRAPHS)
    assert second.common_sd <= first.common_sd
    assert second.sampled_s == pytest.approx(sum(s for _, s in readings(who)))


def test_readings_one_by_one_teach_nearly_what_they_teach_together() -> None:
    samples = readings(reader(1.15, 0.9), 2, 0.03)
    together = learned(samples)
    one_by_one: Pace | None = None
    for sample in samples:
        one_by_one = learned([sample], one_by_one)
    assert one_by_one is not None
    text = PARAGRAPHS[3]
    assert timed(text, pace=one_by_one).mean_s == pytest.approx(timed(text, pace=together).mean_s, rel=0.03)
    assert one_by_one.common_sd == pytest.approx(together.common_sd, rel=0.15)


def test_the_order_of_the_readings_does_not_matter() -> None:
    samples = readings(reader(1.1, 0.8), 2, 0.05)
    one, other = learned(samples), learned(samples[::-1])
    assert one.coefficients == pytest.approx(other.coefficients, rel=1e-6)


@pytest.mark.parametrize(
    "seconds", [0, -3, math.nan, math.inf, 0.1, 100_000, "soon", None], ids=str
)  # fmt: skip
def test_absurd_lengths_are_a_clear_error(seconds: float) -> None:
    with pytest.raises(BadCall) as fault:
        learned([("word " * 200, seconds)])
    assert fault.value.hint


def test_no_reading_at_all_is_an_error() -> None:
    for samples in ([], [("", 3.0)], [("...", 3.0)]):
        with pytest.raises(BadCall):
            learned(samples)


def test_a_reading_without_words_says_nothing() -> None:
    samples = readings(reader(1.1, 1.1))
    assert learned([*samples, ("...", 2.0)]).coefficients == learned(samples).coefficients


@pytest.mark.parametrize("tag", FIRST_CLASS)
def test_every_language_learns(tag: str) -> None:
    data = language_data(tag)
    text = {"zh": "今晚月亮升起。", "ja": "今夜、月が昇ります。", "ko": "오늘 밤 달이 뜹니다."}.get(tag, "Luna. ") * 8
    usual_s = timed(text, tag).mean_s
    pace = learn([(text, 1.3 * usual_s)] * 4, data, engines(), speaker(data), reader="ines", day="2031-04-02")
    assert timed(text, tag, pace).mean_s > 1.15 * usual_s
    assert (pace.reader, pace.learned, pace.samples) == ("ines", "2031-04-02", 4)
    assert pace.scale > 1.1
