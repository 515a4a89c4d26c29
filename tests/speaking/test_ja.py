"""Japanese: what the vectors do not show — context, ambiguity, and the way from figures to kana."""

from __future__ import annotations

import pytest

from promptprep.engines.kana import UnidicKana
from tests.speaking.cjk import readings, said

KANA = UnidicKana()


def kana_of(text: str) -> str:
    return "".join(pronounced for _, pronounced, _ in KANA.kana(said(text, "ja")))


# Makino & Tsutsui, "A Dictionary of Basic Japanese Grammar" (1986), appendix on numerals and counters; from memory.
@pytest.mark.parametrize(
    ("written", "kana"),
    [
        ("1人", "ヒトリ"),
        ("2人", "フタリ"),
        ("4人", "ヨニン"),
        ("14人", "ジューヨニン"),
        ("3本", "サンボン"),
        ("6本", "ロッポン"),
        ("8本", "ハッポン"),
        ("10本", "ジュッポン"),
        ("100本", "ヒャッポン"),
        ("1000本", "センボン"),
        ("3匹", "サンビキ"),
        ("6匹", "ロッピキ"),
        ("3杯", "サンバイ"),
        ("1冊", "イッサツ"),
        ("8歳", "ハッサイ"),
        ("20歳", "ハタチ"),
        ("1個", "イッコ"),
        ("6個", "ロッコ"),
        ("10回", "ジュッカイ"),
        ("3階", "サンガイ"),
        ("3軒", "サンゲン"),
        ("4時", "ヨジ"),
        ("7時", "シチジ"),
        ("9時", "クジ"),
        ("19時", "ジュークジ"),
        ("1分", "イップン"),
        ("3分", "サンプン"),
        ("4分", "ヨンプン"),
        ("20分", "ニジュップン"),
        ("4月", "シガツ"),
        ("7月", "シチガツ"),
        ("9月", "クガツ"),
        ("4年", "ヨネン"),
        ("2日", "フツカ"),
        ("8日", "ヨーカ"),
        ("10日", "トーカ"),
        ("14日", "ジューヨッカ"),
        ("20日", "ハツカ"),
        ("24日", "ニジューヨッカ"),
        ("1つ", "ヒトツ"),
        ("9つ", "ココノツ"),
        ("300", "サンビャク"),
        ("600", "ロッピャク"),
        ("800", "ハッピャク"),
        ("3000", "サンゼン"),
        ("8000", "ハッセン"),
        ("1兆円", "イッチョーエン"),
        ("3か月", "サンカゲツ"),
        ("6か月", "ロッカゲツ"),
        ("第3回", "ダイサンカイ"),
        ("3分の2", "サンブンノニ"),
        ("1.5", "イッテンゴ"),
        ("0時", "レージ"),
    ],
)
def test_counters_sound_as_they_should(written: str, kana: str) -> None:
    assert kana_of(written) == kana


def test_the_first_is_tsuitachi_in_a_date_and_a_day_elsewhere() -> None:
    assert kana_of("12月1日") == "ジューニガツツイタチ"
    assert kana_of("1日3回") == "イチニチサンカイ"


@pytest.mark.parametrize(
    ("written", "spoken"),
    [
        ("三百人が四時に", "三百人が四時に"),
        ("気温-5度", "気温マイナス五度"),
        ("25℃〜30℃", "二十五度から三十度"),
        ("3-1で勝利", "三対一で勝利"),
        ("10-15", "十から十五"),
        ("詳しくはexample.comへ", "詳しくはexample ドット comへ"),
        ("GDPは3.2%増", "ジーディーピーは三点二パーセント増"),
        ("１２，３", "十二，三"),
        ("5/12(火)", "五月十二日火曜日"),
        ("ルイXIV世", "ルイ十四世"),
        ("①②", "一二"),
        ("19:30〜", "十九時三十分から"),
        ("いいね〜", "いいね〜"),
        ("9:00 a.m.〜", "午前九時から"),
        ("▲5.2%", "マイナス五点二パーセント"),
        ("▲3地点", "▲三地点"),
        ("H-IIAの打ち上げ", "エイチツーエーの打ち上げ"),
        ("北緯35°40'", "北緯三十五度四十分"),
        ("500mℓ", "五百ミリリットル"),
        ("会場はB2F", "会場は地下二階"),
        ("R8年度", "令和八年度"),
        ("S64.1.7生まれ", "昭和六十四年一月七日生まれ"),
        ("小学4年生〜中学3年生", "小学四年生から中学三年生"),
        ("先生〜", "先生〜"),
        ("午前9時-午後5時", "午前九時から午後五時"),
        ("PM3時", "午後三時"),
        ("今日は#冬の星空", "今日はハッシュタグ冬の星空"),
        ("€12,50", "十二ユーロ五十セント"),
    ],
)
def test_context_decides(written: str, spoken: str) -> None:
    assert said(written, "ja") == spoken


def test_a_fraction_that_may_be_a_day_says_so() -> None:
    assert readings("3/8", "ja")[0].otherwise == ("三月八日",)


@pytest.mark.parametrize(
    ("written", "other"),
    [
        ("4-2", ("四から二",)),
        ("3-1で勝利", ()),
        ("3/8", ("三月八日",)),
        ("8/3", ()),
        ("のぞみ-3号", ("マイナス三",)),
    ],
)
def test_what_may_be_said_otherwise_says_so(written: str, other: tuple[str, ...]) -> None:
    assert readings(written, "ja")[0].otherwise == other


@pytest.mark.parametrize(
    ("written", "spoken"),
    [
        ("気温差-3度", "気温差マイナス三度"),
        ("2B鉛筆", "二ビー鉛筆"),
        ("2GB", "二ギガバイト"),
        ("１，２，３", "一，二，三"),
        ("１，２３４", "千二百三十四"),
        ("です．3人", "です．三人"),
        ("6/1～6/9", "六月一日から六月九日"),
        ("秒速5km/s", "秒速五キロメートル"),
        ("3ランで2アウト、3ランク上", "スリーランでツーアウト、三ランク上"),
    ],
)
def test_near_misses_stay_apart(written: str, spoken: str) -> None:
    assert said(written, "ja") == spoken
