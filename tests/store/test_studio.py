"""The studio file: what it gives, and where each fault is said to be."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from promptprep.errors import BadGeometry, ManyFaults, PromptprepError, UnreadableInput
from promptprep.model.rig import Studio
from promptprep.model.timing import Pace
from promptprep.store.limits import default_limits, limits_of
from promptprep.store.paces import pace_toml
from promptprep.store.places import KeyPlaces
from promptprep.store.studio import find_studio, parse_studio, read_studio

DEMO = Path(__file__).parents[2] / "scripts_demo" / "studio.toml"

RIG = """
[rigs.hall]
diagonal = "24 in"
pixels = "1920x1080"
lies = "below"
top = "camera"
eye_to_glass = "2.5 m"
glass_to_screen = "28 cm"
"""


def fault_of(text: str) -> PromptprepError:
    with pytest.raises(PromptprepError) as caught:
        parse_studio(text, "studio.toml")
    return caught.value


def test_the_demo_studio() -> None:
    studio = read_studio(DEMO)
    assert list(studio.rigs) == ["hall", "field", "desk"]
    hall, field = studio.rigs["hall"], studio.rigs["field"]
    assert (hall.flip, hall.optical_path_mm, hall.glass_passes) == ("vertical", 2780, 0.7)
    assert (field.flip, field.font_px) == ("horizontal", 64)
    assert studio.rigs["desk"].lens_y == pytest.approx(-40 / 194)
    spoken = {tag for reader in studio.readers.values() for tag in reader.languages}
    assert spoken == {"en", "es", "fr", "de", "pt", "ru", "ar", "hi", "sw", "zh", "ja", "ko"}
    assert studio.language == "en"
    assert parse_studio('language = "ja"').language == "ja"
    assert studio.paper.punched
    assert studio.paper.font_pt == pytest.approx(16)


def test_an_empty_file_is_a_studio() -> None:
    assert parse_studio("") == Studio()


# The picture of a 24-inch 16:9 screen is 531.3 by 298.9 mm (16/sqrt(337) and 9/sqrt(337) of 609.6 mm).
@pytest.mark.parametrize(
    "sizes",
    ['diagonal = "24 in"', "width = 531.31", 'height = "29.886 cm"', 'width = "53.131 cm"\nheight = 298.86',
     'diagonal = "27 in"\nactive_width = "53.131 cm"', "diagonal = 609.6", 'diagonal = "2 ft"'],
)  # fmt: skip
def test_one_size_of_a_picture_written_in_many_ways(sizes: str) -> None:
    rig = parse_studio(RIG.replace('diagonal = "24 in"', sizes)).rigs["hall"]
    assert rig.picture_width_mm == pytest.approx(531.31, abs=0.02)
    assert rig.picture_height_mm == pytest.approx(298.86, abs=0.02)


@pytest.mark.parametrize(
    ("lie", "flip"),
    [
        ('lies = "below"\ntop = "camera"', "vertical"),
        ('lies = "below"\ntop = "reader"', "horizontal"),
        ('lies = "above"\ntop = "reader"', "vertical"),
        ('lies = "side"', "horizontal"),
        ('lies = "side"\ntop = "down"', "vertical"),
        ('flip = "vertical"', "vertical"),
        ('flip = "horizontal"', "horizontal"),
        ('lies = "above"\nflip = "horizontal"', "horizontal"),
    ],
)
def test_the_flip_follows_from_how_the_screen_lies(lie: str, flip: str) -> None:
    text = RIG.replace('lies = "below"\ntop = "camera"', lie)
    assert parse_studio(text).rigs["hall"].flip == flip


# Each case: what stands in the rig instead, the code, the line, a word of the message or hint.
BAD = [
    ('diagonal = "24 in"', 'diagonal = "400 in"', "bad-geometry", 3, "10160 mm"),
    ('diagonal = "24 in"', "diagonal = -5", "bad-geometry", 3, "-5 mm"),
    ('diagonal = "24 in"', "diagonal = inf", "not-a-length", 3, "finite"),
    ('diagonal = "24 in"', "diagonal = nan", "not-a-length", 3, "finite"),
    ('diagonal = "24 in"', "diagonal = true", "not-a-length", 3, "True"),
    ('diagonal = "24 in"', 'diagonal = "24"', "not-a-length", 3, "1.5 m"),
    ('diagonal = "24 in"', "diagonal = [1]", "not-a-length", 3, "[1]"),
    ('diagonal = "24 in"', "", "bad-geometry", 2, "no screen size"),
    ('diagonal = "24 in"', 'width = "50 cm"\nheight = "50 cm"', "bad-geometry", 5, "square pixels"),
    ('diagonal = "24 in"', 'diagonal = "24 in"\nwidth = "80 cm"\nheight = "45 cm"', "bad-geometry", 3, "610 mm"),
    ('pixels = "1920x1080"', 'pixels = "full HD"', "bad-geometry", 4, "1920x1080"),
    ('pixels = "1920x1080"', "", "bad-geometry", 2, "resolution"),
    ('pixels = "1920x1080"', 'pixles = "1920x1080"', "unknown-key", 4, "'pixels'"),
    ('lies = "below"', 'lies = "beneath"', "bad-geometry", 5, "below"),
    ('top = "camera"', 'top = "camra"', "bad-geometry", 6, "'camera'"),
    ('top = "camera"', 'top = "up"', "bad-geometry", 6, "reader"),
    ('top = "camera"', "", "bad-geometry", 5, "top"),
    ('top = "camera"', 'top = "camera"\nflip = "horizontal"', "bad-geometry", 7, "'vertical'"),
    ('lies = "below"\ntop = "camera"', "", "bad-geometry", 7, "lies"),
    ('lies = "below"\ntop = "camera"', 'lies = "direct"', "bad-geometry", 7, "no glass"),
    ('eye_to_glass = "2.5 m"', "eye_to_glass = 0", "bad-geometry", 7, "0 mm"),
    ('eye_to_glass = "2.5 m"', 'eye_to_glass = "-2.5 m"', "bad-geometry", 7, "-2500"),
    ('eye_to_glass = "2.5 m"', "", "bad-geometry", 2, "eye_to_glass"),
    ('eye_to_glass = "2.5 m"', 'eye_to_glass = "2.5 m"\neye_to_lens = "2.4 m"', "bad-geometry", 8, "behind the glass"),
    ('eye_to_glass = "2.5 m"', 'eye_to_glass = "2.5 m"\neye_to_screen = "4 m"', "bad-geometry", 8, "4000 mm"),
    ('eye_to_glass = "2.5 m"', 'eye_to_glass = "2.5 m"\nink = "reddish"', "not-a-colour", 8, "#ffffff"),
    ('eye_to_glass = "2.5 m"', 'eye_to_glass = "2.5 m"\nsplit = "70/60"', "bad-geometry", 8, "at most 100"),
    ('eye_to_glass = "2.5 m"', 'eye_to_glass = "2.5 m"\nlens_x = 9', "bad-geometry", 8, "from -3 to 4"),
    ('eye_to_glass = "2.5 m"', 'eye_to_glass = "2.5 m"\nfont_px = "big"', "not-a-number", 8, "big"),
    ('eye_to_glass = "2.5 m"', 'eye_to_glass = "2.5 m"\ncolumn_px = 1921', "bad-geometry", 8, "1920 pixels"),
    ('eye_to_glass = "2.5 m"', 'eye_to_glass = "2.5 m"\nstyle = "page"', "bad-geometry", 8, "'pages'"),
    ("[rigs.hall]", "[rigs]\nhall = 5\n[rigs.b]", "wrong-value", 3, "no table"),
]


@pytest.mark.parametrize(("old", "new", "code", "line", "word"), BAD)
def test_what_no_room_has(old: str, new: str, code: str, line: int, word: str) -> None:
    assert old in RIG
    fault = fault_of(RIG.replace(old, new))
    assert (fault.code, fault.file, fault.line) == (code, "studio.toml", line)
    assert word in f"{fault.message} {fault.hint}"
    assert fault.hint
    assert fault.column is not None
    assert isinstance(fault, BadGeometry | UnreadableInput)


OTHER = [
    ("titel = 'x'", "unknown-key", 1, "'title'"),
    ("title = 5", "wrong-value", 1, "quotes"),
    ("language = 'it'", "unknown-language", 1, "sheets"),
    ("language = 3", "wrong-value", 1, "quotes"),
    ("[readers.a]\nacuity = 'good'", "wrong-value", 2, "20/25"),
    ("[readers.a]\nacuity = '1/0'", "wrong-value", 2, "20/25"),
    ("[readers.a]\nlanguages = ['en', 'klingonish']", "unknown-language", 2, "klingonish"),
    ("[readers.a]\nlanguages = ['it', 'xx']", "unknown-language", 2, "'xx'"),
    ("[readers.a]\nlanguages = 'en'", "wrong-value", 2, "list"),
    ("[readers.a]\nrig = 'hal'\n" + RIG, "unknown-rig", 2, "'hall'"),
    ("[readers.a]\nnmae = 'A'", "unknown-key", 2, "'name'"),
    ("[readers.a.pace.en]\nseconds = {}", "wrong-value", 1, "seconds"),
    ("[readers.a.pace.en]\nsecs = 1", "unknown-key", 1, "secs"),
    ("[readers.a.pace.en]\nsamples = -1\nseconds = { phone_s = 0.07 }", "wrong-value", 1, "samples"),
    ("[readers.a.pace.zzzz]\nseconds = { phone_s = 0.07 }", "unknown-language", 1, "zzzz"),
    ("[paper]\nsize = 'A44'", "wrong-value", 2, "'A4'"),
    ("[paper]\norientation = 'sideways'", "wrong-value", 2, "portrait"),
    ("[paper]\nfont = '1 m'", "wrong-value", 2, "96 pt"),
    ("[paper]\nreading_distance = 'arm'", "not-a-length", 2, "1.5 m"),
    ("[paper]\npunched = 'yes'", "wrong-value", 2, "true or false"),
    ("sentence_starts_line = 'yes'", "wrong-value", 1, "true or false"),
    ("[limits]\ncap_lest = 18", "unknown-key", 2, "'cap_least'"),
    ("[limits]\ncap_least = 'large'", "wrong-value", 2, "large"),
    ("[limits]\ntravel_cone = 95", "wrong-value", 2, "to 60"),
    ("[levels]\nbreathless-sentence = 'loud'", "wrong-value", 2, "look"),
    ("[levels]\nbreathles-sentence = 'off'", "unknown-rule", 2, "'breathless-sentence'"),
    ("[lexicon]\nen = 3", "wrong-value", 2, "lexicon.en"),
    ("a = \n", "studio-broken", 1, "parse"),
    ("title = 'x'\ntitle = 'y'", "studio-broken", 2, "parse"),
    ("[rigs.hall", "studio-broken", 1, "parse"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "code", "line", "word"), OTHER)
def test_other_faults_have_their_place(text: str, code: str, line: int, word: str) -> None:
    fault = fault_of(text)
    assert (fault.code, fault.line) == (code, line)
    assert word in f"{fault.message} {fault.hint}"


def test_all_faults_are_told_at_once_in_the_order_of_the_file() -> None:
    fault = fault_of("titel = 1\n" + RIG.replace("2.5 m", "-1 m") + "\n[paper]\nsize = 'B9'")
    assert isinstance(fault, ManyFaults)
    assert [one.line for one in fault.faults] == [1, 8, 12]
    assert str(fault).count("hint:") == 3


def test_a_reader_may_speak_what_only_the_phoneme_engine_knows() -> None:
    assert parse_studio("[readers.a]\nlanguages = ['it', 'pt-BR', 'zh-Hant']").readers["a"].languages[0] == "it"


@pytest.mark.parametrize(("written", "acuity"), [("0.8", 0.8), ("'20/25'", 0.8), ("'6/7.5'", 0.8), ("1", 1.0)])
def test_acuity_as_people_know_it(written: str, acuity: float) -> None:
    assert parse_studio(f"[readers.a]\nacuity = {written}").readers["a"].acuity == pytest.approx(acuity)


def test_a_studios_own_limits_say_that_they_are_its_own() -> None:
    studio = parse_studio("[limits]\ncap_wanted = 24\ntravel_cone = 2")
    own = {limit.id: limit for limit in limits_of(studio)}
    assert (own["cap_wanted"].low, own["travel_cone"].high) == (24, 2)
    assert "this studio's own limit, in place of 20" in own["cap_wanted"].source
    assert own["cap_least"] == {limit.id: limit for limit in default_limits()}["cap_least"]


def test_every_limit_has_one_bound_a_unit_and_a_source() -> None:
    for limit in default_limits():
        assert (limit.low is None) != (limit.high is None)
        assert limit.unit
        assert limit.source
        assert limit.level in ("fix", "look")


def test_a_learned_pace_is_read_back_as_it_was_written() -> None:
    coefficients = {"phone_s": 0.0612345678, "word_s": 0.01, "pause.sentence_s": 0.52, "é": 1e-9}
    pace = Pace(
        "pt-BR",
        coefficients,
        0.03,
        0.41,
        'learned "live"\nby Inês',
        "inês v",
        14,
        640.5,
        "2026-11-20",
        1.02,
        {"r2": 0.98},
    )
    text = '[readers."inês v"]\nname = "I"\n\n' + pace_toml(pace, "inês v")
    found = parse_studio(text).readers["inês v"].paces["pt-BR"]
    assert found.coefficients == pytest.approx(coefficients, rel=1e-7)
    assert (found.source, found.samples, found.sampled_s, found.learned) == (pace.source, 14, 640.5, "2026-11-20")
    assert (found.common_sd, found.own_sd, found.scale, found.fit) == (0.03, 0.41, 1.02, {"r2": 0.98})


def test_the_nearest_studio_file_is_found(tmp_path: Path) -> None:
    inner = tmp_path / "a" / "b"
    inner.mkdir(parents=True)
    (tmp_path / "studio.toml").write_text(RIG, "utf-8")
    assert find_studio(inner) == tmp_path / "studio.toml"
    (inner / "studio.toml").write_text("", "utf-8")
    assert find_studio(inner) == inner / "studio.toml"


def test_windows_line_ends_and_a_byte_order_mark_do_no_harm() -> None:
    studio = parse_studio("\ufeff" + RIG.replace("\n", "\r\n"))
    assert studio.rigs["hall"].flip == "vertical"


def test_places_in_nested_and_quoted_tables() -> None:
    text = 'a = """\n[not.this]\nb = 1\n"""\n[x."y z"]\n  key = { deep = 1, other = 2 }\nq.r = 3\n'
    places = KeyPlaces(text)
    assert places.of("a") == (1, 1)
    assert places.of("x", "y z") == (5, 2)
    assert places.of("x", "y z", "key", "other") == (6, 21)
    assert places.of("x", "y z", "q", "r") == (7, 1)
    assert places.of("x", "y z", "absent") == (5, 2)
    assert places.of("not", "this") == (1, 1)


VALUES = st.one_of(st.integers(-(10**7), 10**7), st.floats(), st.booleans(), st.text(max_size=12), st.none())


def toml_text(value: object) -> str:
    import json

    return {None: "[]", True: "true", False: "false"}.get(value) or (  # type: ignore[call-overload]
        json.dumps(value).replace("\\ud", "x") if isinstance(value, str) else repr(value)
    )


KEYS = [
    "diagonal", "pixels", "lies", "top", "flip", "eye_to_glass", "glass_to_screen", "eye_to_lens", "lens_x", "lens_y",
    "ink", "split", "font_px", "column_px", "leading", "margin", "style", "glass_thickness", "width", "active_height",
]  # fmt: skip


def maybe_fault(text: str) -> PromptprepError | None:
    try:
        parse_studio(text)
    except PromptprepError as fault:
        return fault
    return None


@given(st.sampled_from(KEYS), VALUES)
@settings(max_examples=150, deadline=None)
def test_any_value_gives_a_rig_or_a_fault_with_its_place(key: str, value: object) -> None:
    lines = [line for line in RIG.splitlines() if not line.startswith(f"{key} =")]
    text = "\n".join([*lines, f"{key} = {toml_text(value)}"])
    fault = maybe_fault(text)
    assert fault is None or (fault.line is not None and fault.hint)


@given(st.text(max_size=200))
@example("[rigs]\n[rigs.a]\n[readers]\na = 1")
@example("rigs = 1\nreaders = []\npaper = 'x'\nlimits = 2\nlevels = 3\nlexicon = 4\nassets = 5\nextra = 6")
@settings(max_examples=100, deadline=None)
def test_any_text_gives_a_studio_or_a_fault(text: str) -> None:
    fault = maybe_fault(text)
    assert fault is None or fault.line is not None
