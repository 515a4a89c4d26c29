"""The kana reader: nothing lost, known words read, numbers with their counters, morae."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words

from promptprep.engines.kana import BLANK, UNKNOWN, UnidicKana
from promptprep.model.morae import morae
from promptprep.speaking.languages.cjk_numbers import japanese, numerals_of
from promptprep.speaking.languages.ja_readings import NumberReadings
from promptprep.store.languages import language_data

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


def katakana(hiragana: str) -> str:
    """num2words' readings as pronounced: katakana, with ー for the long vowels that occur in numbers."""
    written = "".join(chr(ord(c) + 0x60) for c in hiragana)
    for spelled, long in (("ュウ", "ュー"), ("チョウ", "チョー"), ("レイ", "レー"), ("ケイ", "ケー")):
        written = written.replace(spelled, long)
    return written


def test_numbers_sound_as_num2words_reads_them() -> None:
    """num2words 0.5.14; it says 千万 センマン where 一千万 イッセンマン is usual (NHK, from memory), so both count."""
    numbers = NumberReadings(language_data("ja"))
    words = numerals_of(language_data("ja").get("spoken", "number"), japanese)
    for n in [*range(1, 1000), *range(1000, 200_000, 97), 10**8, 123456789, 1234567890123, 8 * 10**12, 10**13]:
        own = "".join(numbers.number(words.whole(str(n)))).replace("イッセン", "セン")
        assert own == katakana(num2words(n, lang="ja", reading=True)).replace("イッセン", "セン"), n
