"""Values are found by what they mean, in every language's own way of writing them."""

from __future__ import annotations

import pytest

from promptprep.faces import known_language, tools
from promptprep.versions.figures import figure_reader, figures

# language, text, the value's key, its unit. Worked by hand.
CASES = [
    ("en", "three and a half", "n:3.5", ""),
    ("en", "two hundred and fifty thousand", "n:250000", ""),
    ("en", "It costs $3.5m.", "n:3500000", "USD"),
    ("en", "at 12 a.m.", "t:0", ""),
    ("en", "about 1,250 km away", "n:1250", "km"),
    ("fr", "quatre-vingt-douze", "n:92", ""),
    ("fr", "deux cent cinquante mille", "n:250000", ""),
    ("fr", "à dix-huit heures trente", "t:1110", ""),
    ("fr", "3,5 millions", "n:3500000", ""),
    ("de", "dreieinhalb", "n:3.5", ""),
    ("de", "zweihundertfünfzigtausend", "n:250000", ""),
    ("de", "am 14. Dezember", "d:12-14", ""),
    ("es", "a las nueve y media de la noche", "t:1290", ""),
    ("es", "cinco por ciento", "n:5", "%"),
    ("pt", "duzentos e cinquenta mil", "n:250000", ""),
    ("pt", "na sexta-feira", "w:4", ""),
    ("ru", "три с половиной", "n:3.5", ""),
    ("ru", "в 9 часов вечера", "t:1260", ""),
    ("ar", "مئتان وخمسون ألف", "n:250000", ""),
    ("ar", "٣٫٥ مليون", "n:3500000", ""),
    ("ar", "الدخول بأربعة جنيهات", "n:4", ""),
    ("ar", "وصلوا لخمسين", "n:50", ""),
    ("hi", "साढ़े तीन", "n:3.5", ""),
    ("hi", "३.५", "n:3.5", ""),
    ("hi", "ढाई लाख", "n:250000", ""),
    ("sw", "saa 3:40 usiku", "t:1300", ""),
    ("sw", "saa kumi na mbili asubuhi", "t:360", ""),
    ("sw", "asilimia 5", "n:5", "%"),
    ("zh", "百分之五", "n:5", "%"),
    ("zh", "1亿2000万", "n:120000000", ""),
    ("zh", "晚上九点半", "t:1290", ""),
    ("ja", "午後9時半", "t:1290", ""),
    ("ja", "五月五日", "d:5-5", ""),
    ("ko", "밤 9시 반", "t:1290", ""),
    ("ko", "별 스물한 개", "n:21", ""),
]


@pytest.mark.parametrize(("language", "text", "key", "unit"), CASES)
def test_a_value_is_read_as_its_language_writes_it(language: str, text: str, key: str, unit: str) -> None:
    found = figures(text, figure_reader(known_language(language), tools().engines.speller))
    assert [(key in f.keys, f.unit) for f in found] == [(True, unit)]


def test_words_that_only_look_like_numbers_are_none() -> None:
    found = figures("万一下雨", figure_reader(known_language("zh"), tools().engines.speller))
    assert [f.keys for f in found if f.counted] == []


@pytest.mark.parametrize(
    ("language", "text"),
    [("en", "No one may be late."), ("ar", "لست متأخرا."), ("ja", "水は十分にあります。"), ("zh", "这十分重要。")],
)
def test_a_number_word_in_another_word_is_none(language: str, text: str) -> None:
    reader = figure_reader(known_language(language), tools().engines.speller)
    assert [f for f in figures(text, reader) if f.kind == "date" or "n:10" in f.keys] == []
    assert {k for f in figures("十分钟", figure_reader(known_language("zh"), tools().engines.speller)) for k in f.keys}


@pytest.mark.parametrize("language", ["en", "hi", "zh", "sw", "xx"])
def test_any_text_gives_disjoint_figures_in_order(language: str) -> None:
    reader = figure_reader(
        known_language(language) if language != "xx" else known_language("it"), tools().engines.speller
    )
    text = "1:2:3 ½½ 5.5.5.5 €-5 千千 साढ़े 10:99 31 May May 5 " * 3 + "9" * 50 + "\U0001d7d8"
    spans = [f.span for f in figures(text, reader)]
    assert all(0 <= s.start < s.end <= len(text) for s in spans)
