"""Takes: recorded as they happen, found again after a reload, saved as files; the operator's window stays in step."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import expect

from promptprep.faces.tools import tools
from promptprep.rendering.screen import Place, screen_html
from promptprep.rendering.screen_object import rests_s
from promptprep.rendering.screen_words import ENGLISH, ScreenWords, screen_words
from promptprep.session.cue_points import numbered_cues
from promptprep.store.takes import read_take
from tests.browser.waits import at_rest, drawn, kept, ready, reloaded, until
from tests.rendering.screen_factory import demo, env, fonts, hour, prepared

pytestmark = pytest.mark.browser
ONE_FULL_STORE = """(() => {
  const full = () => { throw new DOMException('full', 'QuotaExceededError'); };
  IDBObjectStore.prototype.add = full; Storage.prototype.setItem = full;
})()"""
PAD = """(() => {
  const pad = { index: 0, axes: [0, 0], buttons: [...Array(16)].map(() => ({ pressed: false })) };
  navigator.getGamepads = () => [pad, null];
  window.press = (n, down) => { pad.buttons[n].pressed = down; };
})()"""
NO_STORE = """(() => {
  Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('no', 'SecurityError'); } });
  Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } });
})()"""


@pytest.fixture
def address(write_page: Any) -> str:
    return write_page("sky.en.screen.html", screen_html(demo("sky.en"), env(), fonts))


def opened(context: Any, address: str, script: str | None = None) -> Any:
    page = context.new_page()
    if script:
        page.add_init_script(script)
    page.goto(address)
    ready(page)
    return page


def start_take(page: Any) -> None:
    page.keyboard.press("t")
    page.wait_for_timeout(150)
    page.keyboard.press(" ")  # the clap is done: go on at once


def saved(page: Any, where: Path, key: str = "s") -> dict[str, Any]:
    with page.expect_download() as download:
        page.keyboard.press(key)
    download.value.save_as(where / download.value.suggested_filename)
    take: dict[str, Any] = json.loads((where / download.value.suggested_filename).read_text("utf-8"))
    return {**take, "file": download.value.suggested_filename}


def test_a_take_is_saved_with_what_really_passed(context: Any, address: str, tmp_path: Path) -> None:
    page = opened(context, address)
    start_take(page)
    page.wait_for_timeout(2500)
    page.keyboard.press(" ")
    page.wait_for_timeout(700)
    page.keyboard.press(" ")
    page.keyboard.press("ArrowUp")
    page.wait_for_timeout(1500)
    page.keyboard.press("ArrowRight")
    page.wait_for_timeout(800)
    page.keyboard.press("t")
    take = saved(page, tmp_path)
    one = demo("sky.en")
    assert take["file"] == "sky.en.take-01.json"
    assert (take["promptprep"], take["take"], take["script"], take["language"]) == (1, 1, "sky", "en")
    assert take["digest"] == one.digest
    assert take["finished"] is True
    assert [s["id"] for s in take["segments"]] == ["opening", "look"]
    assert take["segments"][0]["whole"] is False, "it was jumped out of"
    assert take["segments"][0]["text"] == "\n\n".join(p.text for p in one.script.segments[0].paragraphs)
    hold = next(h for h in take["holds"] if h["cause"] == "hand")
    assert hold["length_s"] == pytest.approx(0.7, abs=0.25)
    assert take["jumps"][0]["to_s"] == pytest.approx(one.timing.segments[1].start_s, abs=0.01)
    assert take["pace"] == [{"at_s": pytest.approx(3.5, abs=0.6), "factor": 1.02}]
    lines = take["lines"]
    clap = take["clap_s"]
    for line in lines:
        if line["planned_s"] < 2.2:
            assert line["at_s"] - clap == pytest.approx(line["planned_s"], abs=0.12)
    assert [line["at_s"] for line in lines] == sorted(line["at_s"] for line in lines)


@pytest.mark.parametrize("after_ms", [600, 1730, 3111])
def test_a_reload_loses_less_than_half_a_second(context: Any, address: str, tmp_path: Path, after_ms: int) -> None:
    page = opened(context, address)
    start_take(page)
    page.wait_for_timeout(after_ms)
    before = page.evaluate("performance.now()")
    shift = "Number(/, (-?[\\d.]+)px/.exec(document.getElementById('strip').style.transform)[1])"
    page.evaluate(f"sessionStorage.setItem('test-shift', {shift})")
    reloaded(page)
    expect(page.locator("#notice")).to_contain_text("Take 1 was interrupted")
    assert before > 0
    lost_px = page.evaluate(f"{shift} - Number(sessionStorage.getItem('test-shift'))")
    one = demo("sky.en")
    speed = one.broken.column.line_px / 1.2
    assert abs(lost_px) < 0.5 * speed + 2, "the text stands where it was"
    page.keyboard.press(" ")
    page.wait_for_timeout(500)
    page.keyboard.press("t")
    take = saved(page, tmp_path)
    assert take["take"] == 1
    assert take["finished"] is True
    gap = take["breaks"][0]
    assert gap["at_s"] >= after_ms / 1000 + 0.15 - 0.5
    assert take["lines"][0]["planned_s"] == 0
    open_s = take["segments"][0]["ended_s"] - take["segments"][0]["started_s"] - take["segments"][0]["held_s"]
    assert open_s == pytest.approx(take["segments"][0]["to_s"], abs=0.5), "what is left is what was read"


def test_a_take_is_read_by_who_learns_from_it(context: Any, write_page: Any, tmp_path: Path) -> None:
    """A whole short segment, with a hold in it: the reading is as long as its plan, however busy the machine is."""
    one = prepared("# A\n\nOne two three four five six seven.\n\n# B\n\nEight nine ten eleven.")
    address = write_page("a.html", screen_html(one, env(), fonts))
    timed = read_take(_take_with_a_hold(context, address, tmp_path, one.timing.timing.mean_s))
    assert [reading.text for reading in timed] == ["One two three four five six seven.", "Eight nine ten eleven."]
    rests = rests_s(one.timing)
    planned = [segment.timing.mean_s - rest for segment, rest in zip(one.timing.segments, rests, strict=True)]
    assert [reading.seconds for reading in timed] == pytest.approx(planned, abs=0.02)


def _take_with_a_hold(context: Any, address: str, folder: Path, planned_s: float) -> Path:
    page = opened(context, address)
    start_take(page)
    page.wait_for_timeout(900)
    page.keyboard.press(" ")
    page.wait_for_timeout(800)
    page.keyboard.press(" ")
    page.wait_for_timeout(round(1000 * planned_s))
    page.keyboard.press("t")
    file = folder / str(saved(page, folder)["file"])
    page.close()
    return file


def test_a_crash_of_the_page_keeps_the_take(context: Any, address: str) -> None:
    page = opened(context, address)
    start_take(page)
    kept(page, 0.9)
    session = context.new_cdp_session(page)
    session.send("Page.navigate", {"url": "about:blank"})
    page.wait_for_url("about:blank")
    again = opened(context, address)
    expect(again.locator("#notice")).to_contain_text("Take 1 was interrupted")


def test_a_second_take_loses_nothing_of_the_first(context: Any, address: str, tmp_path: Path) -> None:
    page = opened(context, address)
    for _ in range(2):
        start_take(page)
        page.wait_for_timeout(500)
        page.keyboard.press("t")
        page.keyboard.press("Home")
    reloaded(page)
    downloads: list[Any] = []
    page.on("download", lambda download: downloads.append(download))
    page.keyboard.press("s")
    until(page, lambda: len(downloads) == 2)
    assert sorted(d.suggested_filename for d in downloads) == ["sky.en.take-01.json", "sky.en.take-02.json"]
    page.keyboard.press("s")
    expect(page.locator("#notice")).to_have_text(ENGLISH["nothing_to_save"])
    assert len(downloads) == 2, "saved ones are not saved again"


@pytest.mark.parametrize(("script", "said"), [(ONE_FULL_STORE, "store is full"), (NO_STORE, "keeps no store")])
def test_a_full_or_forbidden_store_is_announced(
    context: Any, address: str, tmp_path: Path, script: str, said: str
) -> None:
    page = opened(context, address, script)
    start_take(page)
    if said == "keeps no store":
        page.keyboard.press("ArrowDown")
    expect(page.locator("#notice")).to_contain_text(said)
    page.keyboard.press("t")
    assert saved(page, tmp_path)["segments"], "the take can still be saved"


def operator_of(page: Any) -> Any:
    with page.expect_popup() as popup:
        page.keyboard.press("o")
    operator = popup.value
    expect(operator.locator("#o-state")).not_to_be_empty()
    return operator


def test_the_operator_sees_and_steers(context: Any, address: str) -> None:
    page = opened(context, f"{address}#flip=horizontal&at=0&hold=1")
    operator = operator_of(page)
    expect(operator.locator("#o-state")).to_have_text("Rehearsal · Held")
    assert operator.locator("#o-segments li").count() == len(demo("sky.en").script.segments)
    operator.keyboard.press(" ")
    expect(operator.locator("#o-state")).to_have_text("Rehearsal · Moving")
    operator.keyboard.press(" ")
    operator.locator("#o-segments button").nth(2).click()
    expect(operator.locator("#o-segments li.here .name")).to_have_text("What the probe saw")
    start = demo("sky.en").timing.segments[2].start_s
    assert page.evaluate("document.getElementById('mark') !== null")
    assert operator.evaluate("document.getElementById('mark') === null"), "the reader's mark is the reader's alone"
    here = operator.evaluate("document.getElementById('strip').style.transform")
    assert here.startswith("translate3d")
    assert "none" in operator.evaluate("document.getElementById('glass').style.transform"), "upright for the operator"
    operator.keyboard.press("f")
    expect(operator.locator("#o-look")).to_contain_text("Flip: vertical")
    cue = next(cue for cue in numbered_cues(demo("sky.en").script, demo("sky.en").timing) if cue.at_s >= start - 1)
    expect(operator.locator("#o-cue .number")).to_have_text(str(cue.number))


def test_closing_either_window_loses_nothing(context: Any, address: str, tmp_path: Path) -> None:
    page = opened(context, address)
    operator = operator_of(page)
    operator.keyboard.press("t")
    page.wait_for_timeout(300)
    operator.keyboard.press(" ")
    page.wait_for_timeout(1500)
    operator.close()
    expect(page.locator("#notice")).to_contain_text("operator's window is closed")
    operator = operator_of(page)
    expect(operator.locator("#o-state")).to_contain_text("Take 1 is on")
    reloaded(page, kept_s=1.2)
    expect(operator.locator("#o-state"), "the operator's window found the reloaded page").to_contain_text("Held")
    operator.keyboard.press(" ")
    operator.wait_for_timeout(1600)
    page.close()
    expect(operator.locator("#o-notice")).to_contain_text("No word from the reader's window")
    take = saved(operator, tmp_path)
    assert take["take"] == 1
    assert take["lines"]
    with operator.expect_popup() as popup:
        operator.locator("#o-notice button").nth(1).click()
    again = popup.value
    expect(again.locator("#notice")).to_contain_text("Take 1 was interrupted")
    expect(operator.locator("#o-state")).to_contain_text("Held")


@pytest.mark.parametrize("size", [(320, 240), (240, 400), (1024, 600), (3840, 2160)])
def test_any_window_shows_all_of_the_picture(context: Any, address: str, size: tuple[int, int]) -> None:
    page = context.new_page()
    page.set_viewport_size({"width": size[0], "height": size[1]})
    page.goto(f"{address}#at=0&hold=1&help=1")
    ready(page)
    box = page.locator("#canvas").bounding_box()
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= size[0] + 0.5
    assert box["y"] >= 0
    assert box["y"] + box["height"] <= size[1] + 0.5
    assert max(box["width"] / size[0], box["height"] / size[1]) > 0.98
    panel = page.locator("#help").bounding_box()
    assert panel["width"] <= size[0]
    assert panel["height"] <= size[1]
    page.mouse.move(size[0] / 2, size[1] / 2)
    page.keyboard.press("h")
    page.mouse.move(size[0] / 2 + 3, size[1] / 2)
    at_rest(page, "JSON.stringify(document.querySelector('#bar button').getBoundingClientRect())")
    button = page.locator("#bar button").first.bounding_box()
    assert button["height"] >= 44
    assert 0 <= button["y"] < size[1]


def test_text_that_looks_like_code_is_text(context: Any, write_page: Any) -> None:
    source = (
        "# <img src=x onerror=alert(1)>\n\n</script><script>window.hit=1</script> and <b>bold</b> & {{ 7*7 }}\n\n"
        '[graphic: </script><script>window.hit=2</script>]\n[live 0:10 <svg onload=alert(3)>]\n\n> </script>"<i>\n\n'
        '[word]{say="<u>x</u>"} end'
    )
    one = prepared(source)
    page = context.new_page()
    dialogs: list[Any] = []
    page.on("dialog", lambda dialog: dialogs.append(dialog) or dialog.dismiss())  # type: ignore[func-returns-value]
    page.goto(write_page("a.html", screen_html(one, env(), fonts)))
    ready(page)
    assert page.evaluate("window.hit") is None
    assert not dialogs
    shown = page.evaluate("[...document.querySelectorAll('[data-line]')].map((e) => e.textContent)")
    assert [s.strip() for s in shown] == [line.text.strip() for line in one.broken.lines]
    assert page.locator("#strip script, #strip img, #strip svg").count() == 0


def test_nothing_is_fetched(context: Any, address: str) -> None:
    page = context.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(address)
    ready(page)
    page.wait_for_load_state("networkidle")
    assert [url for url in asked if not url.startswith("data:")] == [address]
    refused = page.evaluate("fetch('data:text/plain,x').then(() => 'let through', () => 'refused')")
    assert refused == "refused"


def test_tap_drag_and_wheel(context: Any, address: str) -> None:
    page = opened(context, f"{address}#at=5&hold=1&flip=none")
    shift = "Number(/, (-?[\\d.]+)px/.exec(document.getElementById('strip').style.transform)[1])"
    before = page.evaluate(shift)
    page.mouse.move(900, 600)
    page.mouse.down()
    page.mouse.move(900, 500, steps=5)
    page.mouse.up()
    drawn(page)
    assert page.evaluate(shift) == pytest.approx(before - 100, abs=12)
    page.mouse.wheel(0, 60)
    until(page, lambda: page.evaluate(shift) == pytest.approx(before - 160, abs=12))
    page.mouse.click(900, 500)
    until(page, lambda: page.evaluate(shift) < before - 180)
    page.mouse.click(900, 500)
    at_rest(page, shift)  # after the soft stop


def test_touch_holds_and_releases(browser: Any, address: str) -> None:
    context = browser.new_context(has_touch=True, viewport={"width": 800, "height": 600})
    page = opened(context, f"{address}#at=5&hold=1&flip=none")
    shift = "Number(/, (-?[\\d.]+)px/.exec(document.getElementById('strip').style.transform)[1])"
    before = page.evaluate(shift)
    page.touchscreen.tap(400, 300)
    until(page, lambda: page.evaluate(shift) < before)
    context.close()


def test_gamepad_and_pedal_buttons_count_once(context: Any, address: str) -> None:
    page = opened(context, f"{address}#at=5&hold=1&flip=none", PAD)
    page.evaluate("dispatchEvent(new Event('gamepadconnected'))")
    notice = page.locator("#notice")
    for told in ("Pace 102 %", "Pace 104 %"):
        page.evaluate("press(7, true)")
        expect(notice).to_have_text(told)
        drawn(page, frames=5)
        page.evaluate("press(7, false)")
        drawn(page)
    expect(notice).to_have_text("Pace 104 %")
    page.evaluate("press(0, true)")
    shift = "document.getElementById('strip').style.transform"
    before = page.evaluate(shift)
    until(page, lambda: page.evaluate(shift) != before)
    drawn(page, frames=30)
    later = page.evaluate(shift)
    until(page, lambda: page.evaluate(shift) != later)  # held down it does not toggle again


def test_every_key_is_on_the_help_panel_and_works(context: Any, address: str) -> None:
    page = opened(context, f"{address}#at=5&hold=1")
    page.keyboard.press("h")
    panel = page.locator("#help")
    expect(panel).to_be_visible()
    shown = panel.locator("kbd").all_inner_texts()
    assert len(shown) == len(set(shown)) >= 28
    text = panel.inner_text()
    for word in ("WCAG 2.3.1", "clinician", "Local codes", "clicker", "pedal"):
        assert word in text
    page.keyboard.press("Escape")
    expect(panel).to_be_hidden()


def test_dimmer_and_warmer(context: Any, address: str) -> None:
    page = opened(context, f"{address}#at=5&hold=1&light=0.5&warm=3")
    ink = page.evaluate("getComputedStyle(document.querySelector('.line')).color")
    red, green, blue = (int(n) for n in ink.removeprefix("rgb(").rstrip(")").split(", "))
    assert red == 128
    assert red > green > blue


def test_the_session_is_on_the_operators_board(context: Any, write_page: Any) -> None:
    place = Place("Evening", 2, 5, start_s=300.0, slot_s=900.0)
    one = demo("sky.en")
    page = opened(context, write_page("a.html", screen_html(one, env(), fonts, place=place)) + "#at=0&hold=1")
    operator = operator_of(page)
    over = 300 + one.timing.timing.mean_s - 900
    minutes, seconds = divmod(round(abs(over)), 60)
    assert operator.locator("#o-session .value").inner_text() == f"{minutes}:{seconds:02d} under"
    assert operator.locator("#o-session").is_visible()


@pytest.mark.parametrize(("words", "told"), [(300, 0), (3000, 1)])
def test_a_long_script_asks_for_rests_of_the_voice(context: Any, write_page: Any, words: int, told: int) -> None:
    operator = operator_of(opened(context, write_page("a.html", screen_html(prepared(hour(words)), env(), fonts))))
    assert operator.locator("#o-caution").count() == told


def test_words_can_be_translated(context: Any, write_page: Any) -> None:
    words = ScreenWords({name: text.upper() for name, text in ENGLISH.items()}, "en")
    page = opened(context, write_page("a.html", screen_html(demo("sky.fr"), env(), fonts, words=words)))
    page.keyboard.press("p")
    expect(page.locator("#notice")).to_have_text("PAGE BY PAGE")


@pytest.mark.parametrize(("reader", "operator", "way"), [("en", "ar", "rtl"), ("ja", "en", "ltr"), ("hi", "hi", "ltr")])
def test_reader_and_operator_each_read_their_language(
    context: Any, write_page: Any, reader: str, operator: str, way: str
) -> None:
    """The board runs as its language does, nothing on it is wider than the window, and its fonts are in the file."""
    words = screen_words(tools().words, reader, operator)
    html = screen_html(demo(f"sky.{reader}"), env(), fonts, words=words)
    page = opened(context, f"{write_page('a.html', html)}#at=5&hold=1")
    board = operator_of(page)
    assert board.locator("#operator").get_attribute("dir") == way
    assert board.locator("#o-list h2").inner_text() == words.texts["segments"] != ""
    assert page.locator("#strip").get_attribute("lang") == reader
    for width in (1280, 420):
        board.set_viewport_size({"width": width, "height": 720})
        until(board, lambda width=width: board.evaluate("innerWidth") == width)  # type: ignore[misc]
        drawn(board)
        assert board.evaluate("document.documentElement.scrollWidth") <= width
    board.set_viewport_size({"width": 1000, "height": 640})
    last = board.locator("#o-bar button").last.bounding_box()
    assert last["y"] + last["height"] <= 640, "every key is at hand without scrolling"
    shown = board.locator("#operator").inner_text()
    families = [f"panel-{i}" for i in range(4)]
    loaded = board.evaluate("[...document.fonts].map((font) => [font.family.replaceAll('\"', ''), font.status])")
    assert {status for family, status in loaded if family in families} == {"loaded"}
    assert not tools().engines.shaper.missing(shown, operator)


def test_without_its_code_the_page_still_shows_the_copy(browser: Any, address: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(address)
    assert page.locator("[data-line='0']").is_visible()
    assert page.locator("[data-line='0']").bounding_box()["height"] > 20
    context.close()


def test_an_hour_opens_in_bounds(context: Any, write_page: Any) -> None:
    html = screen_html(prepared(hour()), env(), fonts)
    assert len(html.encode()) < 3_000_000
    page = context.new_page()
    page.goto(write_page("a.html", html))
    assert page.locator("[data-line]").count() == len(prepared(hour()).broken.lines)


def test_an_hour_of_japanese_is_under_eight_megabytes() -> None:
    html = screen_html(prepared(hour(2500, "ja"), "ja"), env(), fonts)
    assert len(html.encode()) < 8_000_000
