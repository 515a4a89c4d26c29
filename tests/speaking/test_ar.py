"""Arabic: polarity, dual, case and attached letters that the vectors' sources do not cover. Worked by hand."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from promptprep.speaking.languages.ar_numbers import ArabicNumbers, counted
from promptprep.store.languages import language_data
from tests.speaking.support import assert_holds, found, kinds, said, texts

NUMBERS = ArabicNumbers(language_data("ar"))
WORDS = [
    "في",
    "من",
    "الـ",
    "ال",
    "و",
    "بـ",
    "لـ",
    "عام",
    "سنة",
    "الساعة",
    "كم",
    "كم/س",
    "مايو",
    "صباحًا",
    "هـ",
    "م",
    "دقيقة",
    "أيام",
    "د.",
    "إلخ",
    "مليون",
    "٣",
    "١٢",
    "۲۵",
    "٪",
    "٫",
    "٬",
]


@pytest.mark.parametrize(
    ("n", "masculine", "feminine"),
    [
        (3, "ثلاثة", "ثلاث"),
        (8, "ثمانية", "ثمان"),
        (11, "أحد عشر", "إحدى عشرة"),
        (12, "اثنا عشر", "اثنتا عشرة"),
        (21, "واحد وعشرون", "إحدى وعشرون"),
        (108, "مائة وثمانية", "مائة وثمان"),
        (2000, "ألفان", "ألفان"),
        (11000, "أحد عشر ألفًا", "أحد عشر ألفًا"),
        (103000, "مائة وثلاثة آلاف", "مائة وثلاثة آلاف"),
    ],
)
def test_polarity(n: int, masculine: str, feminine: str) -> None:
    assert NUMBERS.cardinal(n) == masculine
    assert NUMBERS.cardinal(n, feminine=True) == feminine


@pytest.mark.parametrize(
    ("n", "expected"),
    [
        (1, "متر مربع واحد"),
        (2, "متران مربعان"),
        (3, "ثلاثة أمتار مربعة"),
        (11, "أحد عشر مترًا مربعًا"),
        (100, "مائة متر مربع"),
        (200, "مائتا متر مربع"),
        (21000, "واحد وعشرون ألف متر مربع"),
    ],
)
def test_the_counted_noun_and_its_adjective(n: int, expected: str) -> None:
    noun = counted({"one": "متر", "many": "أمتار", "adjective": "مربع"})
    assert NUMBERS.count(str(n), noun) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("بـ20 ريالًا", "بعشرين ريالًا"),
        ("و5 نجوم", "وخمسة نجوم"),
        ("لـ3 أيام", "لثلاثة أيام"),
        ("الأيام الـ10 الماضية", "الأيام العشرة الماضية"),
        ("للـ20", "للعشرين"),
        ("بين 20 و30 درجة", "بين عشرين وثلاثين درجة"),
        ("في 2 دقيقة", "في دقيقتين"),
        ("2 مليون دولار", "مليونا دولار"),
        ("1 كتاب", "كتاب واحد"),
        ("في الساعة 9:40 مساءً", "في الساعة التاسعة وأربعين دقيقة مساءً"),
        ("بسرعة 35 كم/ث", "بسرعة خمسة وثلاثين كيلومترًا في الثانية"),
        ("بين عامي 1990 و1995", "بين عامي ألف وتسعمائة وتسعين وألف وتسعمائة وخمسة وتسعين"),
        ("من 5 إلى 10 يناير", "من الخامس إلى العاشر من يناير"),
        ("كانون الثاني 2026", "كانون الثاني عام ألفين وستة وعشرين"),
        ("سنة 1445هـ", "سنة ألف وأربعمائة وخمس وأربعين هجرية"),
        ("1445/09/15 هـ", "الخامس عشر من رمضان عام ألف وأربعمائة وخمسة وأربعين هجري"),
        ("الحرب العالمية 2", "الحرب العالمية الثانية"),
        ("−5 درجات", "ناقص خمس درجات"),
        ("د. أمينة", "الدكتورة أمينة"),
        ("M31", "إم واحد وثلاثون"),
        ("1,2,3", "واحد, اثنان, ثلاثة"),
        ("www.abc.org", "دبليو دبليو دبليو نقطة abc نقطة org"),
        ("الساعة 19:45", "الساعة التاسعة عشرة وخمس وأربعون دقيقة"),
        ("في الساعة 19:30", "في الساعة التاسعة عشرة وثلاثين دقيقة"),
        ("الساعة 12:45", "الساعة الواحدة إلا الربع"),
        ("5\u200f%", "خمسة في المائة"),
    ],
)
def test_numbers_in_their_sentence(text: str, expected: str) -> None:
    assert said(text, "ar") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("زرعت البلدية 20 شجرة", "زرعت البلدية عشرين شجرة"),
        ("في المدينة 20 مدرسة", "في المدينة عشرون مدرسة"),
        ("أصيب في الحادث 20 راكبا", "أصيب في الحادث عشرون راكبا"),
        ("أصيب صباح أمس 20 راكبا", "أصيب صباح أمس عشرون راكبا"),
        ("المؤتمر شارك فيه 20 عالما", "المؤتمر شارك فيه عشرون عالما"),
        ("الشركة وظفت 20 مهندسا", "الشركة وظفت عشرين مهندسا"),
        ("الفريق الذي سجل 20 هدفا", "الفريق الذي سجل عشرين هدفا"),
        ("أضف 20 غراما من السكر و30 غراما من الزبدة", "أضف عشرين غراما من السكر وثلاثين غراما من الزبدة"),
        ("قال المدير إن 20 عاملا وصلوا", "قال المدير إن عشرين عاملا وصلوا"),
        ("كان عدد الحضور 20 شخصا", "كان عدد الحضور عشرين شخصا"),
        ("شاهد المباراة 20 ألف متفرج", "شاهد المباراة عشرون ألف متفرج"),
        ("سعره 20 درهما", "سعره عشرون درهما"),
        ("انطلقت الدورة الـ25", "انطلقت الدورة الخامسة والعشرون"),
        ("افتتح الوزير الدورة الـ25", "افتتح الوزير الدورة الخامسة والعشرين"),
        ("في الدورة الـ25", "في الدورة الخامسة والعشرين"),
        ("قمة الـ20", "قمة العشرين"),
        ("باع المتجر 1021 كتابا", "باع المتجر ألفًا وواحدًا وعشرين كتابا"),
    ],
)
def test_the_case_follows_from_the_part_in_the_clause(text: str, expected: str) -> None:
    assert said(text, "ar") == expected


@pytest.mark.parametrize("text", ["مَرْحَبًا بِكُم", "كتـــاب جميل", "\u2067سماء\u2069 صافية", "", "كم الساعة؟"])
def test_vowel_marks_tatweel_and_isolates_pass_through(text: str) -> None:
    assert said(text, "ar") == text
    assert kinds(text, "ar") == []


@pytest.mark.parametrize("digits", ["25", "٢٥", "۲۵"])
def test_all_three_kinds_of_digits_read_alike(digits: str) -> None:
    assert said(f"{digits} كم", "ar") == "خمسة وعشرون كيلومترًا"


def test_what_cannot_be_decided_has_another_saying() -> None:
    (date,) = found("05/06/2026", "ar")
    assert date.otherwise == ("السادس من مايو عام ألفين وستة وعشرين",)


@settings(max_examples=150, deadline=None)
@given(texts(WORDS))
def test_any_text_has_a_spoken_form(text: str) -> None:
    assert_holds(text, "ar")


def test_ten_thousand_digits_are_said_one_by_one() -> None:
    assert said("٧" * 10_000, "ar").split() == ["سبعة"] * 10_000


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("اتصل بالرقم 920001234", "اتصل بالرقم تسعة اثنان صفر صفر صفر واحد اثنان ثلاثة أربعة"),
        ("ثمن 2 كيلو", "ثمن كيلوين"),
        ("2 ½", "اثنان ونصف"),
        ("للمرة 3", "للمرة الثالثة"),
        ("COVID-19", "كوفيد-تسعة عشر"),
        ("0.5", "صفر فاصلة خمسة"),
        ("1,500,5", "ألف وخمسمائة فاصلة خمسة"),
        ("300 ألف كم/ث", "ثلاثمائة ألف كيلومتر في الثانية"),
        ("على بعد 150 مليون كم", "على بعد مائة وخمسين مليون كيلومتر"),
        ("5 ملايين كم", "خمسة ملايين كيلومتر"),
        ("2 مليون كم", "مليونا كيلومتر"),
        ("20 يناير - 5 فبراير", "العشرون من يناير إلى الخامس من فبراير"),
    ],
)
def test_numbers_called_priced_and_ranked(text: str, expected: str) -> None:
    assert said(text, "ar") == expected
