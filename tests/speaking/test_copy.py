"""Sentences of news, sport, prices and the sky in Russian, Arabic, Hindi and Swahili. Worked by hand."""

from __future__ import annotations

import pytest

from tests.speaking.support import found, said

RUSSIAN = [
    ("В 80% случаев", "В восьмидесяти процентах случаев"),
    ("ставка в 5% годовых", "ставка в пять процентов годовых"),
    ("2 из 3 детей", "два из трех детей"),
    ("Самолёт Ту-134 вылетел рейсом 1023", "Самолёт Ту-сто тридцать четыре вылетел рейсом тысяча двадцать три"),
    ("Чемпион 2018 г. проиграл", "Чемпион две тысячи восемнадцатого года проиграл"),
    ("на 1 ребёнка", "на одного ребёнка"),
    ("ученики 5 и 6 классов", "ученики пятого и шестого классов"),
    ("в 18-19 веках", "в восемнадцатом-девятнадцатом веках"),
    ("дом в 5–8 этажей", "дом в пять-восемь этажей"),
    ("км/с (28 440 км/ч)", "км/с (двадцать восемь тысяч четыреста сорок километров в час)"),
    ("цена за м²", "цена за квадратный метр"),
    ("7 × 8 = 56", "семь умножить на восемь равно пятьдесят шесть"),
    ("+45° 30′", "плюс сорок пять градусов тридцать минут"),
    ("1½ мили", "полторы мили"),
    ("1,5 млрд лет", "полтора миллиарда лет"),
    ("Д. Петров, д. Ивановка", "Д. Петров, деревня Ивановка"),
    ("Адрес: 119234", "Адрес: один один девять два три четыре"),
]
ARABIC = [
    ("دون سن 15 عامًا", "دون سن خمسة عشر عامًا"),
    ("وأصيب 2 بجروح", "وأصيب اثنان بجروح"),
    ("في غضون 72 ساعة", "في غضون اثنتين وسبعين ساعة"),
    ("بين 3 و5 سنوات", "بين ثلاث وخمس سنوات"),
    ("4 انتخابات و5 اتفاقيات", "أربعة انتخابات وخمس اتفاقيات"),
    ("3 رسائل و3 تلسكوبات", "ثلاث رسائل وثلاثة تلسكوبات"),
    ("2½ كغ", "كيلوغرامان ونصف"),
    ("6-4، 3-6", "ستة مقابل أربعة، ثلاثة مقابل ستة"),
    ("الدكتورة هدى ود. سامي", "الدكتورة هدى والدكتور سامي"),
    ("بين 9 و11 صباحًا", "بين التاسعة والحادية عشرة صباحًا"),
]
HINDI = [
    ("₹1 लाख 25 हज़ार", "एक लाख पच्चीस हज़ार रुपये"),
    ("₹50,000/माह", "पचास हज़ार रुपये प्रति माह"),
    ("सुबह 5:00-7:30 बजे", "सुबह पाँच बजे से साढ़े सात बजे"),
    ("6-4, 3-6", "छह-चार, तीन-छह"),
    ("2:30 घंटे", "ढाई घंटे"),
    ("1:10,000 पैमाना", "एक अनुपात दस हज़ार पैमाना"),
    ("1857 और 1947 में", "अठारह सौ सत्तावन और उन्नीस सौ सैंतालीस में"),
    (">10 किमी", "दस किलोमीटर से अधिक"),
    ("10²⁴ किग्रा", "दस की घात चौबीस किलोग्राम"),
]
SWAHILI = [
    ("bei kwa m²", "bei kwa mita ya mraba"),
    ("watu 60/km²", "watu sitini kwa kilomita ya mraba"),
    ("sh. 500/=", "shilingi mia tano"),
    ("uwiano wa 1:3", "uwiano wa moja kwa tatu"),
    ("na Mshtarii 95", "na Mshtarii tisini na tano"),
    ("Madaktari 4 na viongozi 5", "Madaktari wanne na viongozi watano"),
    ("cm 30 x 40", "sentimita thelathini kwa arobaini"),
    ("6 - 2 = 4", "sita kutoa mbili ni sawa na nne"),
    ("walifungwa 4-0", "walifungwa nne kwa sifuri"),
]
CASES = [
    (tag, *case) for tag, cases in (("ru", RUSSIAN), ("ar", ARABIC), ("hi", HINDI), ("sw", SWAHILI)) for case in cases
]


@pytest.mark.parametrize(("tag", "text", "expected"), CASES)
def test_copy_is_said_as_a_newsreader_would(tag: str, text: str, expected: str) -> None:
    assert said(text, tag) == expected


@pytest.mark.parametrize(("tag", "text"), [("ar", "1-3"), ("hi", "1-3"), ("sw", "1-3")])
def test_two_bare_figures_may_be_a_score(tag: str, text: str) -> None:
    (reading,) = found(text, tag)
    assert reading.kind == "range"
    assert reading.otherwise


@pytest.mark.parametrize("tag", ["ar", "hi", "ru", "sw"])
def test_no_raised_or_lowered_figure_is_left(tag: str) -> None:
    spoken = said("10²³ 10⁻⁶ mc² H₂O 2^10 ½ 3¾", tag)
    assert not any(c.isdigit() or c in "^⁻½¾" for c in spoken)
