"""Korean: native and Sino-Korean numbers, blanks, and what the context decides."""

from __future__ import annotations

import pytest

from tests.speaking.cjk import readings, said

# Yeon & Brown, "Korean: A Comprehensive Grammar" (2011), ch. 3; from memory.
NATIVE = ["한", "두", "세", "네", "다섯", "여섯", "일곱", "여덟", "아홉", "열"]
TENS = {20: "스무", 30: "서른", 40: "마흔", 50: "쉰", 60: "예순", 70: "일흔", 80: "여든", 90: "아흔"}


@pytest.mark.parametrize(("value", "word"), [*enumerate(NATIVE, 1), *TENS.items(), (21, "스물한"), (99, "아흔아홉")])
def test_native_numbers_before_a_counter(value: int, word: str) -> None:
    assert said(f"{value}명", "ko") == f"{word} 명"


@pytest.mark.parametrize(
    ("written", "spoken"),
    [
        ("3개", "세 개"),
        ("3개월", "삼 개월"),
        ("2대", "두 대"),
        ("세계 3대 폭포", "세계 삼대 폭포"),
        ("20대 여성", "이십대 여성"),
        ("3달", "세 달"),
        ("3달러", "삼 달러"),
        ("100명", "백 명"),
        ("101명", "백한 명"),
        ("123명", "백이십삼 명"),
        ("24시간", "이십사 시간"),
        ("12시", "열두 시"),
        ("21시", "이십일 시"),
        ("1.5배", "일점오 배"),
        ("제3차", "제삼 차"),
        ("6월", "유월"),
        ("10월", "시월"),
        ("10개월", "십 개월"),
    ],
)
def test_the_counter_decides(written: str, spoken: str) -> None:
    assert said(written, "ko") == spoken


@pytest.mark.parametrize(
    ("written", "spoken"),
    [
        ("약3개", "약 세 개"),
        ("오후9시", "오후 아홉 시"),
        ("3명이", "세 명이"),
        ("ESA는", "이에스에이는"),
        ("5%가", "오 퍼센트가"),
        ("9:40~10:30", "아홉 시 사십 분부터 열 시 삼십 분"),
        ("100원~200원", "백 원에서 이백 원"),
        ("기온 -5도", "기온 영하 오 도"),
        ("6·25 전쟁", "육이오 전쟁"),
        ("2+2=4", "이 더하기 이는 사"),
        ("물 2ℓ", "물 이 리터"),
        ("1, 2명", "한, 두 명"),
        ("오전 9시-오후 5시", "오전 아홉 시부터 오후 다섯 시"),
        ("월요일~금요일", "월요일부터 금요일"),
        ("2, 3일", "이, 삼 일"),
        ("2,3개월", "이,삼 개월"),
        ("-20~-5℃", "영하 이십에서 영하 오 도"),
    ],
)
def test_blanks_and_particles(written: str, spoken: str) -> None:
    assert said(written, "ko") == spoken


def test_a_number_that_may_be_a_count_or_a_name_says_so() -> None:
    assert said("3번 출구", "ko") == "삼 번 출구"
    (reading,) = readings("3번", "ko")
    assert (reading.said, reading.otherwise) == ("세 번", ("삼 번",))


@pytest.mark.parametrize(
    ("written", "spoken"),
    [
        ("문제 10개", "문제 열 개"),
        ("제10회", "제십 회"),
        ("6월 6일~10월 10일", "유월 육일부터 시월 십일"),
        ("1~3월", "일월부터 삼월"),
        ("1~2년", "일에서 이 년"),
        ("30대 25%", "삼십대 이십오 퍼센트"),
        ("30대 25로 이겼다", "삼십 대 이십오로 이겼다"),
        ("1kg=1000g", "일 킬로그램은 천 그램"),
        ("1m=100cm", "일 미터는 백 센티미터"),
        ("제1·2차", "제일·이 차"),
        ("5·18", "오일팔"),
        ("영하 5℃", "영하 오 도"),
        ("영하 9도~영상 4도", "영하 구 도에서 영상 사 도"),
        ("타율은 0.234에서 0.272로", "타율은 이할 삼푼 사리에서 이할 칠푼 이리로"),
        ("2아웃 6볼넷", "투아웃 육볼넷"),
        ("1/2개", "이분의 일 개"),
    ],
)
def test_near_misses_stay_apart(written: str, spoken: str) -> None:
    assert said(written, "ko") == spoken


@pytest.mark.parametrize(
    ("written", "spoken"),
    [
        ("$1.5억을 투자했다", "일점오억 달러를 투자했다"),
        ("URL으로, GPS으로", "유알엘로, 지피에스로"),
        ("5%이 넘는다", "오 퍼센트가 넘는다"),
        ("종로3가, 제2과", "종로 삼가, 제이과"),
        ("CEO이다", "시이오이다"),
    ],
)
def test_a_particle_follows_what_is_said_and_a_street_or_lesson_stays(written: str, spoken: str) -> None:
    assert said(written, "ko") == spoken


@pytest.mark.parametrize(
    ("written", "spoken"),
    [
        ("신고는 119", "신고는 일일구"),
        ("119구급대와 120 다산콜센터", "일일구구급대와 일이공 다산콜센터"),
        ("신고 119건, 상담 120명", "신고 백십구 건, 상담 백이십 명"),
        ("'88 서울 올림픽, '02년", "'팔팔 서울 올림픽, '공이년"),
        ("'10명 참가'", "'열 명 참가'"),
    ],
)
def test_numbers_of_public_help_and_years_of_an_event_go_digit_by_digit(written: str, spoken: str) -> None:
    assert said(written, "ko").replace("'", "") == spoken.replace("'", "")
