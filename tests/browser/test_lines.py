"""Every planned line is one line box of the measured width, in all first-class languages on three rigs."""

from __future__ import annotations

from dataclasses import replace
from html import escape
from typing import Any

import pytest

from promptprep.breaking.script import break_script
from promptprep.engines.fonts import font_css
from promptprep.engines.load import engines
from promptprep.engines.shaping import SHOWN_AS
from promptprep.model.language import FIRST_CLASS
from promptprep.model.lines import Column
from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import Rig
from promptprep.rendering.screen import screen_html
from promptprep.store.languages import language_data
from tests.rendering.screen_factory import FIELD, HALL, SMALL, demo, env, fonts, prepared

pytestmark = pytest.mark.browser
BOXES = """() => [...document.querySelectorAll('[data-line]')].map((e) => {
  const range = document.createRange(); range.selectNodeContents(e);
  const rects = [...range.getClientRects()].filter((r) => r.width > 0);
  const own = e.getBoundingClientRect();
  return { text: e.textContent, boxes: new Set(rects.map((r) => Math.round(r.bottom))).size,
    left: Math.min(...rects.map((r) => r.left)), right: Math.max(...rects.map((r) => r.right)),
    own_left: own.left, own_right: own.right, scrolls: e.scrollWidth > Math.ceil(own.width) };
})"""
HARD = {
    "en": "“To *Avatars*, Ty!” — “AVA’s office: 3–5 °C, 50 % of 1/2…” WAVE To. Yo, Vé; naïve Čapek, Αθήνα (ffi).",
    "fr": "« L’été ? » — « Là\u202f! À 10\u00a0h\u00a030, l’*œuvre* d’Ève : 50\u00a0%… » Où ? Çà et là ; “T’as vu” ?",
    "ru": "«Да», — ответил он: “Ту-154” за 5 °C. *Россия* — ГАТТ; NASA, 3,5 млн ₽… “Ёж”?",
    "ar": "قال: «نعم»، (GPS 3.5%) في *١٢ مارس* ٢٠٢٦؛ لا إله! الكتاب؟ وصل NASA Voyager 2 إلى 10:30، لَمْ يُغَادِرْ.",
    "hi": "उसने कहा: “हाँ!” क्षत्रिय, *ज्ञान*, श्री, कृपया, र्क… GPS 3.5% और १२ मार्च २०२६; (ट्रैक्टर)।",
    "zh": "他说：“你好！”（『真的』？）——……《书》、「门」；2026年3月，*NASA*的GPS增长5.2%。「『（）』」、。，」「",
    "ja": "「『はい』」、（そうです）。……――「え？」・々ー、2026年3月、*NASA*のGPSは5.2％。）「』」、。」「ぁっょー！？",
    "ko": "그는 “안녕하세요?”라고 말했다. 『책』(GPS), *NASA*의 3.5%… 2026년 3월 12일 10:30, 「끝」!",
}


def broken_here(name_or_source: str, language: str, rig: Rig) -> PreparedScript:
    """A script with the lines of the breaking step itself."""
    is_demo = name_or_source == "sky"
    one = demo(f"sky.{language}", rig) if is_demo else prepared(name_or_source, language, rig)
    column = Column(one.broken.column.width_px, one.broken.column.font_px, one.broken.column.line_px)
    broken = break_script(one.script, one.timing, column, language_data(language), engines())
    return replace(one, broken=broken)


def boxes_of(context: Any, address: str, rig: Rig) -> list[dict[str, Any]]:
    page = context.new_page()
    page.set_viewport_size({"width": rig.width_px, "height": rig.height_px})
    page.goto(f"{address}#flip=none&at=0&hold=1")
    page.evaluate("document.fonts.ready")
    found: list[dict[str, Any]] = page.evaluate(BOXES)
    page.close()
    return found


def check(boxes: list[dict[str, Any]], one: PreparedScript) -> None:
    column = one.broken.column
    assert [box["text"] for box in boxes] == [line.text for line in one.broken.lines]
    assert boxes
    for box, line in zip(boxes, one.broken.lines, strict=True):
        assert box["boxes"] == 1, box
        assert not box["scrolls"], box
        assert line.width_em <= column.width_em + 1e-6, line
        assert box["left"] >= box["own_left"] - 0.1, box
        assert box["right"] <= box["own_right"] + 0.1, box
        width_px = line.width_em * column.font_px
        assert box["right"] - box["left"] == pytest.approx(width_px, rel=0.001, abs=0.05), line.text


@pytest.mark.parametrize("rig", [HALL, FIELD, SMALL], ids=lambda rig: rig.id)
@pytest.mark.parametrize("language", FIRST_CLASS)
def test_a_planned_line_is_one_line_box(context: Any, write_page: Any, language: str, rig: Rig) -> None:
    one = broken_here("sky", language, rig)
    check(boxes_of(context, write_page("a.html", screen_html(one, env(), fonts)), rig), one)


@pytest.mark.parametrize("language", HARD)
def test_marks_ligatures_and_mixed_scripts_are_measured_as_shown(context: Any, write_page: Any, language: str) -> None:
    one = broken_here("\n\n".join([HARD[language]] * 2), language, SMALL)
    check(boxes_of(context, write_page("a.html", plain_page(one)), SMALL), one)


def plain_page(one: PreparedScript) -> str:
    """Nothing but the lines, in the style that the measure asks for."""
    text = "".join(line.text for line in one.broken.lines)
    css = font_css(one.script.language, text, bold_text=text)
    order = ", ".join(f"copy-{i}" for i in range(css.count("font-weight: 400")))
    has_bold = language_data(one.script.language).get("fonts", "bold")
    rows = "".join(
        f"<div class='line' data-line='{line.number}'>"
        + "".join(f"<b>{escape(r.text)}</b>" if r.stress else escape(r.text) for r in line.runs)
        + "</div>"
        for line in one.broken.lines
    )
    column = one.broken.column
    return (
        f"<!doctype html><html lang='{one.script.language}' dir='{one.broken.direction}'><meta charset='utf-8'><style>"
        f"{css} .line {{ width: {column.width_px}px; font: {column.font_px}px/1.4 {order}; {SHOWN_AS}; }}"
        f"b {{ font-weight: {700 if has_bold else 400}; }}</style>{rows}"
    )
