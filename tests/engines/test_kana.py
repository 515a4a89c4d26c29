"""The kana reader: nothing lost, known words read, numbers with their counters, morae."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from promptprep.engines.kana import BLANK, UNKNOWN, UnidicKana
from promptprep.speaking.morae import morae

KANA = UnidicKana()
JAPANESE = st.text(
    st.sampled_from("今日は一二三四十百千万人本日月年時分つ回、。！\n 　ーっゃアンx1\0\ud800𠮷😀"), max_size=40
)


def reading(text: str) -> str:
    return "".join(pronounced for _, pronounced, _ in KANA.kana(text))


@given(st.one_of(JAPANESE, st.text(max_size=40)))
def test_the_surfaces_join_back_to_the_text(text: str) -> None:
    assert "".join(surface for surface, _, _ in KANA.kana(text)) == text


@given(JAPANESE)
def test_a_reading_is_a_number_of_morae(text: str) -> None:
    assert 0 <= KANA.morae(text) <= 30 * len(text)


# NHK's pronunciation dictionary, from memory.
@pytest.mark.parametrize(
    ("text", "kana"),
    [
        ("今日は", "キョーワ"),
        ("東京へ", "トーキョーエ"),
        ("私を", "ワタシオ"),
        ("四人", "ヨニン"),
        ("十一人", "ジューイチニン"),
        ("三本の木", "サンボンノキ"),
        ("三本", "サンボン"),
        ("六百匹", "ロッピャッピキ"),
        ("二千二十六年", "ニセンニジューロクネン"),
        ("十分に", "ジューブンニ"),
        ("八百屋", "ヤオヤ"),
        ("千葉", "チバ"),
        ("一番", "イチバン"),
        ("百十番", "ヒャクトーバン"),
        ("三点一四", "サンテンイチヨン"),
        ("二〇二六", "ニゼロニロク"),
    ],
)
def test_readings(text: str, kana: str) -> None:
    assert reading(text) == kana


def test_blanks_marks_and_unknown_words() -> None:
    assert KANA.kana("星 、Zeta") == [
        ("星", "ホシ", "名詞"),
        (" ", "", BLANK),
        ("、", "", "補助記号"),
        ("Zeta", "Zeta", UNKNOWN),
    ]


# Vance, "The Sounds of Japanese" (2008), ch. 3; from memory.
@pytest.mark.parametrize(
    ("kana", "beats"),
    [
        ("キョー", 2),
        ("ニッポン", 4),
        ("トーキョー", 4),
        ("シュッパツ", 4),
        ("ファン", 2),
        ("ヴァイオリン", 5),
        ("がっこう", 4),
        ("", 0),
    ],
)
def test_morae(kana: str, beats: int) -> None:
    assert morae(kana) == beats


def test_the_sample_sentence_has_its_morae() -> None:
    """きょう は じゅうに がつ ついたち: 2 + 1 + 3 + 2 + 4, counted by hand."""
    assert KANA.morae("今日は十二月一日") == 12
