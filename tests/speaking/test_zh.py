"""Chinese: 两 and 二, years and lengths of time, telephone numbers, ambiguity."""

from __future__ import annotations

import pytest

from tests.speaking.cjk import readings, said


# Lü Shuxiang, "Xiandai hanyu babai ci" (1980), entries 二 and 两; from memory.
@pytest.mark.parametrize(
    ("written", "spoken"),
    [
        ("2个", "两个"),
        ("2位", "两位"),
        ("12个", "十二个"),
        ("第2个", "第二个"),
        ("2年级", "二年级"),
        ("2年", "两年"),
        ("2月", "二月"),
        ("2%", "百分之二"),
        ("2.5倍", "二点五倍"),
        ("2亿", "两亿"),
        ("22000", "两万二千"),
        ("200", "二百"),
        ("2-3个", "两到三个"),
        ("2点", "两点"),
        ("2:00", "两点"),
    ],
)
def test_two(written: str, spoken: str) -> None:
    assert said(written, "zh") == spoken


@pytest.mark.parametrize(
    ("written", "spoken"),
    [
        ("1998年", "一九九八年"),
        ("2020年底", "二〇二〇年底"),
        ("2026年前", "二〇二六年前"),
        ("1500年前", "一千五百年前"),
        ("约2000年", "约两千年"),
        ("300年", "三百年"),
        ("90后", "九零后"),
        ("08年", "〇八年"),
    ],
)
def test_years_and_lengths_of_time(written: str, spoken: str) -> None:
    assert said(written, "zh") == spoken


@pytest.mark.parametrize(
    ("written", "spoken"),
    [
        ("-5~3℃", "零下五摄氏度到三摄氏度"),
        ("5-10%", "百分之五到百分之十"),
        ("比分2:0", "比分二比零"),
        ("3千克", "三千克"),
        ("1000百帕", "一千百帕"),
        ("21:05", "二十一点零五分"),
        ("共100，200人", "共一百，二百人"),
        ("#观测#和#冬#", "话题 观测和话题 冬"),
        ("3万5千", "三万五千"),
        ("上午9点-下午5点", "上午九点到下午五点"),
        ("周一~周五", "周一到周五"),
        ("身高1米75", "身高一米七五"),
        ("每隔2米10人", "每隔两米十人"),
        ("请打120急救", "请打幺二零急救"),
        ("转动180°", "转动一百八十度"),
        ("-20~-5℃", "零下二十到零下五摄氏度"),
        ("39°54′26″", "三十九度五十四分二十六秒"),
        ("#观测2026", "话题 观测二零二六"),
    ],
)
def test_context_decides(written: str, spoken: str) -> None:
    assert said(written, "zh") == spoken


def test_one_in_a_telephone_number_may_be_said_either_way() -> None:
    (reading,) = readings("拨打110", "zh")
    assert (reading.kind, reading.said, reading.otherwise) == ("telephone", "幺幺零", ("一一零",))


# GB/T 15835-2011 lets both be written; who reads aloud must choose.
@pytest.mark.parametrize(
    ("written", "other"),
    [("2000年", ("两千",)), ("2001年", ()), ("3-1", ("三到一",)), ("比分3-1", ()), ("301室", ())],
)
def test_what_may_be_said_otherwise_says_so(written: str, other: tuple[str, ...]) -> None:
    assert readings(written, "zh")[0].otherwise == other


@pytest.mark.parametrize(
    ("written", "tag", "spoken"),
    [
        ("2個颱風", "zh", "兩個颱風"),
        ("2个台风", "zh", "两个台风"),
        ("約2萬人", "zh", "約兩萬人"),
        ("下午2點", "zh-TW", "下午兩點"),
        ("2kg", "zh-TW", "兩公斤"),
        ("2kg", "zh", "两千克"),
        ("2億", "zh-Hans", "两亿"),
    ],
)
def test_traditional_copy_is_answered_in_its_own_characters(written: str, tag: str, spoken: str) -> None:
    assert said(written, tag) == spoken
