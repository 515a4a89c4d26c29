"""Rules that look at the format, the studio, the lines and the rig."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from pathlib import Path
from typing import Any, cast

import pytest

from promptprep.checking.check import check_script
from promptprep.checking.readability import FORMULAS
from promptprep.model.finding import Finding
from promptprep.model.lines import BrokenScript, Column, Line, LineRun
from promptprep.model.rig import Reader, Rig, Studio
from promptprep.model.sightline import Verdict, VerdictLevel
from promptprep.spans import Span
from tests.checking.build import context_for, found
from tests.rendering.screen_factory import demo

CASES = Path(__file__).parent / "cases"
RIG = Rig("hall", "Hall", 509.0, 286.0, 1920, 1080, "horizontal", 1500.0)
STUDIO = Studio(rigs={"hall": RIG}, readers={"ines": Reader("ines", "Ines")})


def only(findings: list[Finding], name: str) -> list[Finding]:
    return [f for f in findings if f.name == name]


def test_a_reader_that_the_studio_lacks_is_marked_at_its_line() -> None:
    source = '+++\nreader = "inez"\nrig = "hall"\n+++\n\nGood evening.'
    (one,) = only(found(source, "en", STUDIO), "unknown-name")
    assert source[one.start : one.end] == 'reader = "inez"'
    assert one.level == "fix"
    assert not only(found(source.replace("inez", "ines"), "en", STUDIO), "unknown-name")
    assert not only(found(source, "en"), "unknown-name"), "a studio without readers knows none better"


def test_a_slot_shorter_than_its_copy() -> None:
    copy = "The dome is open to all of you tonight. " * 20
    (one,) = only(found(f"# Opening {{slot=0:10}}\n\n{copy}", "en"), "overfull-slot")
    assert "its slot is 0:10" in one.message
    assert not only(found(f"# Opening {{slot=5:00}}\n\n{copy}", "en"), "overfull-slot")


def test_a_pronunciation_that_two_places_give_differently() -> None:
    source = 'Look at [Vega]{say="VEE-ga"}. Then look at [Vega]{say="VAY-ga"} again.'
    (one,) = only(found(source, "en"), "idle-pronunciation")
    assert source[one.start : one.end] == "Vega"
    assert one.start > source.index("Then")


def test_a_pronunciation_in_a_note() -> None:
    source = 'Good evening.\n\n> Say [Vega]{say="VEE-ga"} slowly.'
    (one,) = only(found(source, "en"), "idle-pronunciation")
    assert source[one.start : one.end] == '{say="VEE-ga"}'


def broken(*lines: tuple[str, float], missing: tuple[str, ...] = ()) -> BrokenScript:
    text = "".join(text for text, _ in lines)
    made, at = [], 0
    for number, (shown, width) in enumerate(lines):
        last = number + 1 == len(lines)
        span = Span(at, at + len(shown))
        made.append(Line(number, 0, 0, span, (LineRun(shown),), width, 0.0, 1.0, last, last))
        at = span.end
    assert text
    return BrokenScript("en", "ltr", Column(1000.0, 100.0, 150.0), tuple(made), missing)


def lined(source: str, lines: BrokenScript) -> list[Finding]:
    return check_script(replace(context_for(source, "en"), broken=lines))


def test_a_character_without_a_shape_is_marked_where_it_stands() -> None:
    source = "The sign \ua9c1 is up."
    marked = only(lined(source, broken((source, 5.0), missing=("\ua9c1",))), "unshown-character")
    assert [(f.start, f.end) for f in marked] == [(9, 10)]
    assert not only(lined(source, broken((source, 5.0))), "unshown-character")


@pytest.mark.parametrize(("width", "count"), [(9.9, 0), (10.0, 0), (10.5, 1)])
def test_a_line_wider_than_the_column(width: float, count: int) -> None:
    assert len(only(lined("Good evening.", broken(("Good evening.", width))), "overwide-line")) == count


@pytest.mark.parametrize(("width", "count"), [(1.0, 1), (4.0, 0)])
def test_a_word_alone_on_the_last_line(width: float, count: int) -> None:
    lines = broken(("The dome is ", 9.0), ("open.", width))
    assert len(only(lined("The dome is open.", lines), "stranded-word")) == count


@pytest.mark.parametrize("language", sorted(FORMULAS))
def test_a_hard_passage_only_where_it_is_long_enough(language: str) -> None:
    lines: dict[str, Any] = tomllib.loads((CASES / "overlong-sentence.toml").read_text("utf-8"))[language]
    (hard,), (easy,) = lines["fires"], lines["silent"]
    assert only(found(" ".join([hard] * 5), language), "hard-passage")
    assert not only(found(" ".join([easy] * 12), language), "hard-passage")
    assert not only(found(hard, language), "hard-passage"), "one sentence is too short a passage"


def test_levels_are_the_studio_s() -> None:
    source = "The moon rises in the the east."
    assert [f.level for f in only(found(source, "en"), "doubled-word")] == ["look"]
    assert [f.level for f in only(found(source, "en", Studio(levels={"doubled-word": "fix"})), "doubled-word")] == [
        "fix"
    ]
    assert not only(found(source, "en", Studio(levels={"doubled-word": "off"})), "doubled-word")


def test_limits_are_the_studio_s() -> None:
    source = "You can see Mars, Venus, Saturn and Jupiter tonight."
    assert only(found(source, "en", Studio(limits={"long-list.items": 4})), "long-list")
    assert not only(found(source, "en"), "long-list")


def test_a_language_that_a_rule_does_not_claim_is_left_alone() -> None:
    assert only(found("Le lac est est là.", "fr"), "doubled-word")
    assert not only(found("A lua nasce no no leste.", "is"), "doubled-word")


def test_a_date_and_a_time_count_as_one_figure_each() -> None:
    assert not only(found("2026年12月14日の夜、100個の流星が35秒で見えます。", "ja"), "crowded-figures")
    assert not only(found("It opens on 18 December 2026 at 7:30 for 40 people.", "en"), "crowded-figures")
    assert only(found("It has 36 rooms, 14 doors, 9 lamps and 13 desks.", "en"), "crowded-figures")


def test_a_figure_is_rounded_with_its_sign() -> None:
    source = "The repair costs $183,462.75 in all."
    (one,) = only(found(source, "en"), "overexact-figure")
    assert (source[one.start : one.end], one.instead) == ("$183,462.75", "about $180,000")


def test_a_row_of_emoji_is_one_finding() -> None:
    source = "The moon \U0001f319\U0001f319 is up."
    findings = lined(source, broken((source, 5.0), missing=("\U0001f319",)))
    assert [(f.name, f.level, f.start, f.end) for f in findings] == [("bare-symbol", "look", 9, 11)]
    assert findings[0].message.endswith("will not be shown or said")
    (shown,) = lined(source, broken((source, 5.0)))
    assert shown.message.endswith("will not be said")


def test_a_long_string_of_digits_is_no_figure_to_round() -> None:
    assert not only(found("1," * 20000, "en"), "overexact-figure")
    assert not only(found("The number is " + "7" * 5000, "en"), "overexact-figure")
    assert only(found("It holds 1,234,567,890 stars.", "en"), "overexact-figure")


@pytest.mark.parametrize(
    ("copy", "hint"),
    [
        ("Look up. [gaphic: y]", "did you mean 'graphic'?"),
        ("Look up. [grafik: y]", "did you mean 'graphic'?"),
        ("Look up. [zoom in]", "use one of the cue kinds (pause clip live vision"),
        ("Look up. [slide 3]", "use one of the cue kinds (pause clip live vision"),
    ],
)
def test_an_unknown_cue_is_told_its_nearest_kind(copy: str, hint: str) -> None:
    (one,) = only(found(copy, "en"), "unknown-cue")
    assert one.hint.startswith(hint)


@pytest.mark.parametrize(("copy", "such"), [("[pause]", "[pause 2]"), ("[clip Moon 0:10]", "[clip 0:10 Moonrise]")])
def test_a_cue_without_time_is_shown_where_its_time_goes(copy: str, such: str) -> None:
    (one,) = only(found(f"Look up. {copy}", "en"), "cue-without-time")
    assert such in one.hint


def test_a_copied_file_that_still_says_its_old_language_is_marked_at_the_line() -> None:
    source = '+++\ntitle = "Nuit"\nlanguage = "en"\n+++\n\nBonsoir.'
    (one,) = only(found(source, "fr"), "two-languages")
    assert (one.level, source[one.start : one.end]) == ("fix", 'language = "en"')
    assert not only(found(source, "en-GB"), "two-languages")


@pytest.mark.parametrize("source", ["Good <!-- ask Ines\n\nGood night.", "<!-- one <!-- two", "*Good* <!--"])
def test_an_unclosed_remark_is_one_finding_at_its_opening(source: str) -> None:
    (one,) = found(source, "en")
    assert (one.name, one.level, source[one.start : one.end]) == ("unclosed-remark", "fix", "<!--")
    assert one.start == source.index("<!--")


def test_a_remark_over_several_lines_is_closed() -> None:
    assert not found("<!-- ask Ines\n\nabout the dust -->\n\nGood night.", "en")
    assert not found("Good <!-- ask\nInes --> night.", "en")


@pytest.mark.parametrize(
    ("source", "said"),
    [
        ('<script>var a = 1; if (a < b) { alert("hi there"); }</script>', "code"),
        ("<script>\nvar a = 1;\n\nalert(a);\n</script>", "code"),
        ("def open_dome(angle):\n    return angle * 2;\n\nprint(open_dome(3));", "code"),
        ('{"name": "Mars", "rise": 810}', "code"),
        ("for (int i = 0; i < 3; i++) { x[i] = 1; }", "code"),
        ("<p>Good evening & <b>welcome</b></p>", "code"),
        ("| Planet | Rise | Set |\n|---|---|---|\n| Mars & Moon | 8:10 | 9:10 |", "table"),
        ("Planet | Rise\n--- | ---\nMars | 8:10", "table"),
        ("Planet\tRise\tSet\nMars\t8:10\t9\nVenus\t9\t10", "table"),
    ],
)
def test_pasted_code_or_table_is_one_finding(source: str, said: str) -> None:
    (one,) = found(source, "en")
    assert (one.name, one.level, one.start, one.end) == ("pasted-markup", "look", 0, len(source))
    assert f"looks like a {said}" in one.message or f"looks like {said}" in one.message


@pytest.mark.parametrize(
    "source",
    [
        "Good night;\nthe moon (up);\nthe sea is still.",
        "Three is < four.",
        "The dome | the garden.",
        "Look up (or down); then look away.",
        "It opens (at last): come in.",
    ],
)
def test_copy_with_a_stray_mark_is_no_code(source: str) -> None:
    assert not only(found(source, "en"), "pasted-markup")


def test_copy_around_tags_is_still_checked() -> None:
    source = "Dust & ice <b>make</b> the the comet."
    assert [f.name for f in found(source, "en")] == ["bare-symbol", "pasted-markup", "doubled-word"]


def test_pasted_markup_switched_off_hides_nothing() -> None:
    source = "| Mars | 8 |\n|---|---|\n| Venus | 9 |"
    names = {f.name for f in found(source, "en", Studio(levels={"pasted-markup": "off"}))}
    assert "bare-symbol" in names


@pytest.mark.parametrize(
    ("source", "labels"),
    [
        ("HOST: Good evening.\n\nGUEST 2: And to you.\n\nHOST: Welcome.", ["HOST:", "GUEST 2:"]),
        ("DR. SMITH: Good evening.\nNARRATOR: And so it began.", ["DR. SMITH:", "NARRATOR:"]),
        ("**HOST:** Good evening.", ["HOST:"]),
        ("Host: Good evening.\n\n[pause 1] Maria: And to you.\n\nHost: Hm.\n\nMaria: Yes.", ["Host:", "Maria:"]),
        ("Guest 2: Good evening.", ["Guest 2:"]),
        ("Ines: Good evening.\nTom: Hello.\nInes: Look up.\nTom: Where?", ["Ines:", "Tom:"]),
        ("Remember: look up.\n\nRemember: wrap up warm.", []),
        ("Three things: a coat, a chair and time.\n\nThe result: nothing.\n\nThe time is 21:40.", []),
        ("The host: nobody knows who that was.", []),
        ("Remember: look up.", []),
        ("We asked NASA: is it up?", []),
    ],
)
def test_a_speaker_s_label_is_found_once(source: str, labels: list[str]) -> None:
    findings = found(source, "en")
    assert [source[f.start : f.end] for f in only(findings, "speaker-label")] == labels
    assert not only(findings, "shouted-word")


@pytest.mark.parametrize(
    ("language", "source", "label"),
    [
        ("ar", "المذيع: مساء الخير.", "المذيع:"),
        ("de", "Sprecherin: Guten Abend.", "Sprecherin:"),
        ("es", "Voz en off: Buenas noches.", "Voz en off:"),
        ("fr", "Présentatrice : Bonsoir.", "Présentatrice :"),
        ("hi", "एंकर: नमस्कार।", "एंकर:"),
        ("ja", "司会：こんばんは。", "司会："),
        ("ko", "진행자: 안녕하세요.", "진행자:"),
        ("pt", "Locutor: Boa noite.", "Locutor:"),
        ("ru", "Ведущий: Добрый вечер.", "Ведущий:"),
        ("sw", "Mtangazaji: Habari za jioni.", "Mtangazaji:"),
        ("zh", "主持人：晚上好。", "主持人："),
    ],
)
def test_roles_are_labels_in_each_language(language: str, source: str, label: str) -> None:
    assert [source[f.start : f.end] for f in only(found(source, language), "speaker-label")] == [label]


def test_a_reader_s_own_name_is_a_label() -> None:
    studio = Studio(readers={"ines": Reader("ines", "Ines Varga")})
    source = "Ines: Good evening.\n\nJupiter: it is bright."
    assert [source[f.start : f.end] for f in only(found(source, "en", studio), "speaker-label")] == ["Ines:"]


def test_places_in_a_paragraph_of_many_runs_are_those_of_the_paragraph() -> None:
    source = 'A *b* &amp; [Vega]{say="VEE-ga"} c\\* **d** [note: x] e\nf <!-- g --> h.'
    (passage,) = context_for(source, "en").passages
    spans = [Span(a, b) for b in range(len(passage.text) + 2) for a in range(b + 1)]
    assert [passage.source(s) for s in spans] == [passage.paragraph.source_span(s) for s in spans]


def sightline_finding(*levels: str) -> Finding:
    """The finding for the demo's rig, with one verdict of each level in place of its own."""
    wrong = [Verdict("travel_deg", 3.0, "deg", None, 2.6, cast(VerdictLevel, level), "a study") for level in levels]
    sight = replace(demo("sky.en").sightline, verdicts=tuple(wrong), advice={"sentence": "Stand further back."})
    (finding,) = only(check_script(context_for("Good evening.", "en", sightline=sight)), "poor-sightline")
    return finding


def test_a_limit_that_must_be_kept_gives_the_rigs_advice() -> None:
    finding = sightline_finding("look", "fix")
    assert finding.level == "fix"
    assert finding.message.endswith("the eyes travel to each side by 3 degrees, at most 2.6")
    assert finding.hint.startswith("Stand further back.")


def test_a_limit_that_is_advised_is_a_note_and_asks_for_nothing() -> None:
    finding = sightline_finding("good", "look")
    assert finding.level == "note"
    assert finding.hint.startswith("Every limit that must be kept is kept.")
