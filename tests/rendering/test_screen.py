"""The screen copy as values: travel, screenfuls, the page's text, its PDF, stills and movie."""

from __future__ import annotations

import csv
import io
import json
import re
import time
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from promptprep.errors import BadCall
from promptprep.model.lines import Line, LineRun
from promptprep.rendering.movie import RATES, movie
from promptprep.rendering.screen import screen_html, screen_pages, screen_pdf
from promptprep.rendering.screen_plan import frame_of, page_shift_px, screen_plan
from promptprep.rendering.screen_travel import travel
from promptprep.rendering.screen_words import ENGLISH
from promptprep.rendering.screenfuls import screenfuls
from promptprep.rendering.stills import page_images, stills
from promptprep.session.cue_points import numbered_cues
from promptprep.spans import Span
from tests.rendering.screen_factory import FIELD, HALL, ROOT, SMALL, demo, env, fonts, hour, prepared

LINE_PX = 100


def planned(times: list[tuple[float, float]], sentence_ends: set[int] = frozenset()) -> list[Line]:
    return [
        Line(i, 0, 0, Span(i * 10, i * 10 + 9), (LineRun("words here"),), 5.0, a, b, i in sentence_ends)
        for i, (a, b) in enumerate(times)
    ]


spaced = st.lists(st.tuples(st.floats(0.05, 8), st.floats(0, 30)), min_size=1, max_size=40)


@given(spaced)
@settings(max_examples=80)
def test_travel_meets_every_line_and_never_runs_back(gaps: list[tuple[float, float]]) -> None:
    now, times = 0.0, []
    for said, pause in gaps:
        times.append((now, now + said))
        now += said + pause
    lines = planned(times)
    centres = [LINE_PX * (i + 0.5) for i in range(len(lines))]
    way = travel(lines, centres, [[] for _ in lines])
    for line, centre in zip(lines, centres, strict=True):
        assert way.y_px(line.at_s) == pytest.approx(centre, abs=1e-6)
    heights = [way.y_px(now * i / 500) for i in range(501)]
    assert all(b >= a - 1e-9 for a, b in pairwise(heights))


def test_travel_is_smooth() -> None:
    """Its speed has no step: at a hundredth of a second it changes by less than a fifth of the usual speed."""
    one = demo("sky.en")
    way = screen_plan(one).travel
    at = np.arange(0, one.timing.timing.mean_s, 0.01)
    speed = np.diff([way.y_px(t) for t in at]) / 0.01
    usual = np.median(speed[speed > 1])
    assert np.abs(np.diff(speed)).max() < 0.2 * usual


def test_travel_stands_still_through_a_pause() -> None:
    lines = planned([(0, 2), (6, 8)])
    way = travel(lines, [50, 150], [[], []])
    assert way.y_px(2.0) == pytest.approx(150)
    assert way.y_px(5.9) == pytest.approx(150)


def test_a_short_last_line_does_not_dash() -> None:
    """Half a second said before a pause of two: the text uses the pause rather than run at four times its speed."""
    lines = planned([(0, 2), (2, 4), (4, 4.5), (6.5, 8.5), (8.5, 10.5)])
    way = travel(lines, [50, 150, 250, 400, 500], [[] for _ in lines])
    fastest = max(way.y_px(t / 100 + 0.01) - way.y_px(t / 100) for t in range(1000)) * 100
    assert fastest < 3 * 50


# -- screenfuls ---------------------------------------------------------------------------------------------------


def test_screenfuls_hold_every_line_once_and_fit() -> None:
    for rig in (HALL, FIELD, SMALL):
        plan = screen_plan(demo("sky.en", rig))
        pages = plan.screenfuls
        assert [n for page in pages for n in range(page.first, page.last + 1)] == list(range(len(plan.lines)))
        tops = [placed.top_px for placed in plan.lines]
        for page in pages:
            shift = page_shift_px(plan.frame, page, tops)
            assert tops[page.first] + shift >= 0
            assert tops[page.last] + plan.frame.line_px + shift <= plan.frame.height_px
        assert all(a.at_s < b.at_s for a, b in pairwise(pages))


def test_screenfuls_end_with_sentences_where_they_can() -> None:
    lines = planned([(i, i + 0.9) for i in range(12)], sentence_ends={2, 5, 8, 11})
    pages = screenfuls(lines, [i * LINE_PX for i in range(12)], LINE_PX, 4 * LINE_PX)
    assert [page.last for page in pages] == [2, 5, 8, 11]


def test_a_screenful_waits_for_the_end_of_a_guest_part() -> None:
    lines = planned([(0, 1), (60, 61)], sentence_ends={0, 1})
    pages = screenfuls(lines, [0, 1000], LINE_PX, 4 * LINE_PX, parts_end_s=[58.0])
    assert [page.at_s for page in pages] == [0.0, 58.0]


def test_planning_grows_in_a_straight_line() -> None:
    """Four times the script takes no more than eight times the work (a quadratic step would take sixteen)."""
    one, four = prepared(hour(2000)), prepared(hour(8000))
    screen_plan(one)

    def best(script: object) -> float:
        found = []
        for _ in range(3):
            start = time.process_time()
            screen_plan(script)  # type: ignore[arg-type]
            found.append(time.process_time() - start)
        return min(found)

    assert best(four) < 8 * best(one)


# -- the page -----------------------------------------------------------------------------------------------------


def test_every_planned_line_is_an_element_with_its_second() -> None:
    one = demo("sky.en")
    found = re.findall(r'data-line="(\d+)" data-at-s="([\d.]+)"', screen_html(one, env(), fonts))
    assert [(int(n), float(s)) for n, s in found] == [(x.number, round(x.at_s, 3)) for x in one.broken.lines]


def test_the_page_stands_alone() -> None:
    html = screen_html(demo("sky.en"), env(), fonts)
    assert "http://" not in html.replace("http://www.w3.org/2000/svg", "")
    assert "https://" not in html
    assert not re.search(r'<(link|img|iframe)\b|\bsrc="|@import', html)
    policy = re.search(r'http-equiv="Content-Security-Policy" content="([^"]*)"', html)
    assert policy
    assert "default-src &#39;none&#39;" in policy[1]
    assert "unsafe" not in policy[1]


def test_same_input_same_bytes() -> None:
    for name in ("trailer.en", "sky.ar"):
        assert screen_html(demo(name), env(), fonts) == screen_html(demo(name), env(), fonts)
        assert screen_pdf(demo(name), env(), fonts) == screen_pdf(demo(name), env(), fonts)


def test_data_cannot_leave_its_element() -> None:
    one = prepared('# </script><b>\n\nSay </script> & <!-- "this" -->.\n\n[graphic: </script>]')
    html = screen_html(one, env(), fonts)
    data = re.search(r'<script type="application/json" id="plan">(.*?)</script>', html, re.DOTALL)
    assert data
    plan = json.loads(data[1])
    assert plan["segments"][0]["title"] == "</script><b>"
    assert html.count("</script>") == 2


@pytest.mark.parametrize(
    "source", ["", " ", "# Only a heading", "[live 2:00 talk]", "a", "\u202e\u0000 x\u200b", "🜨" * 50]
)
def test_any_script_gives_a_page(source: str) -> None:
    one = prepared(source)
    assert "<!doctype html>" in screen_html(one, env(), fonts)
    assert screen_pdf(one, env(), fonts).startswith(b"%PDF")


def test_pronunciations_stand_once_a_segment() -> None:
    one = prepared(
        '# A\n\n[Enceladus]{say="en-SELL"} and [Enceladus]{say="en-SELL"}.\n\n# B\n\n[Enceladus]{say="en-SELL"}.'
    )
    assert screen_html(one, env(), fonts).count('data-say="en-SELL"') == 2


def test_a_lens_outside_the_picture_brings_the_line_to_its_edge() -> None:
    above = frame_of(demo("sky.en", replace(HALL, lens_y=-0.2)))
    assert above.lens_y_px - above.line_px / 2 == pytest.approx(above.margin_px, abs=1)
    aside = frame_of(demo("sky.en", replace(HALL, lens_x=0.0)))
    assert aside.left_px == aside.margin_px


def test_the_words_of_the_page_are_all_there() -> None:
    """Every word that the page's code asks for is in the one table, and the table has none that nobody asks for."""
    code = "".join(file.read_text("utf-8") for file in sorted((ROOT / "templates" / "screen").iterdir()))
    asked = set(re.findall(r"\bwords\.(\w+)|\{\{ w\.(\w+)", code))
    names = {a or b for a, b in asked}
    assert names <= set(ENGLISH)
    families = ("do_", "flip_", "short_", "caution_", "kind_", "key_")
    assert {name for name in ENGLISH if not name.startswith(families)} <= names


def test_cues_at_one_point_are_one_number() -> None:
    source = (
        "[vision: wide]\n[lights: dim]\n\nOne [sound: bell] two.\n\n[clip 0:05 A]\n[sound: up]\n\n"
        "Three.\n\n> note\n\n[record: stop]"
    )
    one = prepared(source)
    numbered = numbered_cues(one.script, one.timing)
    assert [[cue.kind for cue in n.actions] for n in numbered] == [
        ["vision", "lights"], ["sound"], ["clip", "sound"], ["record"],
    ]  # fmt: skip
    assert [n.number for n in numbered] == [1, 2, 3, 4]
    assert [n.at_s for n in numbered] == sorted(n.at_s for n in numbered)


# -- PDF and stills -----------------------------------------------------------------------------------------------


def picture(pdf: bytes, page: int) -> np.ndarray:
    return np.asarray(list(page_images(pdf))[page]).astype(int)


def test_pdf_pages_are_the_screenfuls_in_the_rigs_dots() -> None:
    import pypdfium2

    one = demo("sky.en", replace(HALL, flip="none"))
    plan = screen_plan(one)
    pages = screen_pages(plan)
    document = pypdfium2.PdfDocument(screen_pdf(one, env(), fonts))
    assert len(document) == len(pages) + 1
    for page, sheet in zip(pages, document, strict=False):
        assert sheet.get_size() == pytest.approx((1440, 810))
        if page["kind"] == "copy":
            text = "".join(sheet.get_textpage().get_text_range().split())
            for placed, _ in page["lines"]:
                assert "".join(placed.line.text.split()) in text


@pytest.mark.parametrize("name", ["trailer.en", "sky.ar", "sky.hi", "sky.ja"])
def test_pdf_is_flipped_as_a_mirror(name: str) -> None:
    upright = picture(screen_pdf(demo(name, replace(SMALL, flip="none")), env(), fonts), 1)
    assert (upright > 128).mean() > 0.005
    for flip, mirrored in (
        ("horizontal", upright[:, ::-1]),
        ("vertical", upright[::-1]),
        ("both", upright[::-1, ::-1]),
    ):
        flipped = picture(screen_pdf(demo(name, replace(SMALL, flip=flip)), env(), fonts), 1)
        off = abs(flipped - mirrored).mean()
        assert off < 0.2 * abs(flipped - upright).mean(), "the same but for the rounding of edges"


@pytest.mark.parametrize("name", ["sky.en", "sky.ru", "sky.ar", "sky.hi", "sky.ja", "sky.zh", "sky.ko"])
def test_pdf_uses_the_fonts_that_were_measured(name: str, caplog: pytest.LogCaptureFixture) -> None:
    screen_pdf(demo(name), env(), fonts)
    assert not [record for record in caplog.records if "notdef" in record.getMessage()]
    assert not [record for record in caplog.records if "Failed to load" in record.getMessage()]


def test_stills_are_mirrored_dot_for_dot() -> None:
    from PIL import Image

    made = {
        flip: dict(stills(demo("trailer.en", replace(SMALL, flip=flip)), env(), fonts))
        for flip in ("none", "horizontal", "vertical")
    }
    for name, content in made["none"].items():
        if name.endswith(".png"):
            upright = np.asarray(Image.open(io.BytesIO(content)))
            assert np.array_equal(np.asarray(Image.open(io.BytesIO(made["horizontal"][name]))), upright[:, ::-1])
            assert np.array_equal(np.asarray(Image.open(io.BytesIO(made["vertical"][name]))), upright[::-1])


def test_stills_come_with_a_list() -> None:
    from PIL import Image

    made = dict(stills(demo("trailer.en", FIELD), env(), fonts))
    rows = list(csv.DictReader(io.StringIO(made["trailer.en.stills.csv"].decode("utf-8-sig"))))
    assert {row["file"] for row in rows} == set(made) - {"trailer.en.stills.csv"}
    assert rows[0]["at"] == "0:00"
    assert rows[-1]["kind"] == "chart"
    assert rows[0]["text"].startswith("This month")
    for row in rows:
        assert Image.open(io.BytesIO(made[row["file"]])).size == (1080, 1920)


def test_a_spreadsheet_runs_no_cell_of_the_stills_list() -> None:
    made = dict(stills(prepared('=HYPERLINK("x") is the copy.'), env(), fonts))
    (listed,) = (content for name, content in made.items() if name.endswith(".csv"))
    assert next(csv.DictReader(io.StringIO(listed.decode("utf-8-sig"))))["text"].startswith("'=")


# -- movie --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("rate", "suffix"), [("25", ".mp4"), ("59.94", ".webm")])
def test_movie_moves_at_the_planned_pace_and_is_flipped(tmp_path: Path, rate: str, suffix: str) -> None:
    av = pytest.importorskip("av", reason="the movie is an extra: pip install promptprep[movie]")
    rig = replace(SMALL, width_px=320, height_px=200, font_px=20, column_px=150)
    one = prepared("One two three four five six. Seven eight.\n\n[live 0:02 Noor]\n\nGo on.", rig=rig)
    told: list[tuple[int, int]] = []
    for flip in ("none", "both"):
        flipped = replace(one, rig=replace(rig, flip=flip))
        movie(
            flipped, tmp_path / f"{flip}{suffix}", env(), fonts, rate=rate, progress=lambda n, of: told.append((n, of))
        )
    frames = {f: frames_of(av, tmp_path / f"{f}{suffix}") for f in ("none", "both")}
    plan = screen_plan(one)
    assert told[-1][0] == told[-1][1] == len(frames["none"]) == int((plan.end_s + 6) * RATES[rate])
    for number in range(0, len(frames["none"]), 20):
        upright, turned = frames["none"][number], frames["both"][number]
        assert abs(turned[::-1, ::-1] - upright).mean() < 4
    last = one.broken.lines[-2]
    number = round((last.at_s + 3) * RATES[rate])
    band = slice(plan.frame.lens_y_px - plan.frame.line_px // 2, plan.frame.lens_y_px + plan.frame.line_px // 2)
    assert frames["none"][number][band].mean() > 3, "the line is at the lens at its second"


def frames_of(av: object, path: Path) -> list[np.ndarray]:
    with av.open(str(path)) as container:  # type: ignore[attr-defined]
        return [frame.to_ndarray(format="rgb24").astype(int) for frame in container.decode(video=0)]


def test_rates_are_the_trades_own() -> None:
    """29.97 and 59.94 are 30000/1001 and 60000/1001 (drop-frame arithmetic: 17982 frames make 599.9994 s)."""
    assert RATES["29.97"] == Fraction(30000, 1001)
    assert float(17982 / RATES["29.97"]) == pytest.approx(599.9994, abs=1e-4)
    with pytest.raises(BadCall, match="not offered"):
        movie(demo("trailer.en"), Path("unused.mp4"), env(), fonts, rate="24.5")
