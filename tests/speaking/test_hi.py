"""Hindi: years, quarters, ordinals and letters that the vectors' sources do not cover. Worked by hand."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given, settings

from promptprep.speaking.languages.hi_numbers import HindiNumbers
from promptprep.store.languages import language_data
from tests.speaking.support import SPELLER, assert_holds, found, kinds, said, texts

NUMBERS = HindiNumbers(language_data("hi"), SPELLER)
WORDS = [
    "में",
    "सन",
    "साल",
    "बजे",
    "लाख",
    "करोड़",
    "किमी",
    "km",
    "वीं",
    "वां",
    "ला",
    "मई",
    "डॉ.",
    "रु.",
    "Rs.",
    "₹",
    "नंबर",
    "१२",
    "३.५",
    "१/२",
    "से",
    "ESA",
    "XII",
]


def nfc(text: str) -> str:
    return unicodedata.normalize("NFC", text)


@pytest.mark.parametrize(
    ("year", "expected"),
    [
        ("1066", "एक हज़ार छियासठ"),
        ("1100", "ग्यारह सौ"),
        ("1905", "उन्नीस सौ पाँच"),
        ("2000", "दो हज़ार"),
        ("2026", "दो हज़ार छब्बीस"),
    ],
)
def test_years_count_in_hundreds_up_to_1999(year: str, expected: str) -> None:
    assert NUMBERS.year(year) == nfc(expected)


@pytest.mark.parametrize(
    ("whole", "quarters", "expected"),
    [
        (1, 1, "सवा एक"),
        (1, 2, "डेढ़"),
        (2, 2, "ढाई"),
        (3, 2, "साढ़े तीन"),
        (2, 3, "पौने तीन"),
        (12, 3, "पौने तेरह"),
    ],
)
def test_quarters(whole: int, quarters: int, expected: str) -> None:
    assert NUMBERS.quarters(whole, quarters) == nfc(expected)


def test_after_twelve_the_clock_begins_anew() -> None:
    assert said("12:45", "hi") == nfc("पौने एक बजे")
    assert said("21:45", "hi") == nfc("इक्कीस बजकर पैंतालीस मिनट")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("26 जनवरी, 1950", "छब्बीस जनवरी, उन्नीस सौ पचास"),
        ("1999 में", "उन्नीस सौ निन्यानबे में"),
        ("1999 लोग", "एक हज़ार नौ सौ निन्यानबे लोग"),
        ("2 करोड़ किमी", "दो करोड़ किलोमीटर"),
        ("₹2.5 लाख करोड़", "दो दशमलव पाँच लाख करोड़ रुपये"),
        ("रु. 500", "पाँच सौ रुपये"),
        ("5 कि.मी.", "पाँच किलोमीटर"),
        ("डॉ. और प्रो.", "डॉक्टर और प्रोफ़ेसर"),
        ("H2O", "एच दो ओ"),
        ("5G", "पाँच जी"),
        ("2020–21", "दो हज़ार बीस से इक्कीस"),
        ("छठी 6ठी", "छठी छठी"),
        ("हम2026में", "हम दो हज़ार छब्बीस में"),
        ("कि5", "कि पाँच"),
        ("❤️5", "पाँच"),
        ("2.5–3.5 किमी", "ढाई से साढ़े तीन किलोमीटर"),
        ("3.5 साल, 3.5 लोग", "साढ़े तीन साल, तीन दशमलव पाँच लोग"),
        ("150.5 किमी", "एक सौ पचास दशमलव पाँच किलोमीटर"),
        ("−2.5 °C", "माइनस दो दशमलव पाँच डिग्री सेल्सियस"),
        ("www.abc.org", "डब्ल्यू डब्ल्यू डब्ल्यू डॉट abc डॉट org"),
    ],
)
def test_numbers_in_their_sentence(text: str, expected: str) -> None:
    assert said(nfc(text), "hi") == nfc(expected)


@pytest.mark.parametrize("text", ["नमस्कार।", "मई में", "", "आप कैसे हैं?", "साल"])
def test_plain_words_pass_through(text: str) -> None:
    assert said(text, "hi") == text
    assert kinds(text, "hi") == []


def test_what_cannot_be_decided_has_another_saying() -> None:
    assert found("05/06/2026", "hi")[0].otherwise == (nfc("छह मई दो हज़ार छब्बीस"),)
    assert found("1500 में", "hi")[0].otherwise == (nfc("एक हज़ार पाँच सौ"),)


@pytest.mark.parametrize(
    ("text", "expected", "other"),
    [
        ("12.5 लाख", "साढ़े बारह लाख", "बारह दशमलव पाँच लाख"),
        ("2.5 किमी", "ढाई किलोमीटर", "दो दशमलव पाँच किलोमीटर"),
        ("1.5 करोड़", "डेढ़ करोड़", "एक दशमलव पाँच करोड़"),
        ("2.75 किमी", "दो दशमलव सात पाँच किलोमीटर", "पौने तीन किलोमीटर"),
        ("2.5%", "दो दशमलव पाँच प्रतिशत", "ढाई प्रतिशत"),
        ("₹12.5 लाख", "बारह दशमलव पाँच लाख रुपये", "साढ़े बारह लाख रुपये"),
    ],
)
def test_a_half_that_counts_is_said_as_one_or_else_as_a_decimal(text: str, expected: str, other: str) -> None:
    (reading,) = found(nfc(text), "hi")
    assert (reading.said, reading.otherwise) == (nfc(expected), (nfc(other),))


@settings(max_examples=150, deadline=None)
@given(texts(WORDS))
def test_any_text_has_a_spoken_form(text: str) -> None:
    assert_holds(text, "hi")


def test_ten_thousand_digits_are_said_one_by_one() -> None:
    assert said("७" * 10_000, "hi").split() == ["सात"] * 10_000


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("XXI सदी", "इक्कीसवीं सदी"),
        ("सन् 1526 ई. में", "सन् पंद्रह सौ छब्बीस ईस्वी में"),
        ("300 ई.पू.", "तीन सौ ईसा पूर्व"),
        ("50° पू. 30° उ.", "पचास डिग्री पूर्व तीस डिग्री उत्तर"),
        ("ई. कुमार", "ई. कुमार"),
        ("PIN 110001", "पिन एक एक शून्य शून्य शून्य एक"),
        ("120 वर्ग मी", "एक सौ बीस वर्ग मीटर"),
    ],
)
def test_what_is_written_short_beside_figures(text: str, expected: str) -> None:
    assert said(text, "hi") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("10:30 AM", "सुबह साढ़े दस बजे"),
        ("6 PM", "शाम छह बजे"),
        ("9:20 p.m.", "रात नौ बजकर बीस मिनट"),
        ("12:00 PM", "दोपहर बारह बजे"),
        ("सुबह 10 AM", "सुबह दस बजे"),
    ],
)
def test_halves_of_the_day_are_said_by_their_part(text: str, expected: str) -> None:
    assert said(text, "hi") == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("25 वीं सालगिरह", "पच्चीसवीं सालगिरह"),
        ("7/4/26 तक", "सात अप्रैल दो हज़ार छब्बीस तक"),
        ("12-05-26 को", "बारह मई दो हज़ार छब्बीस को"),
        ("25/12 को", "पच्चीस दिसंबर को"),
        ("22/7", "बाईस बटा सात"),
        ("डॉ॰ शर्मा", "डॉक्टर शर्मा"),
        ("5 कि॰मी॰", "पाँच किलोमीटर"),
        ("कि.मी. 5", "किलोमीटर पाँच"),
        ("प्रति किमी", "प्रति किलोमीटर"),
        ("सेमी-फ़ाइनल", "सेमी-फ़ाइनल"),
        ("₹500/-", "पाँच सौ रुपये"),
        ("245/6", "दो सौ पैंतालीस पर छह"),
        ("20 ओवर में 87/5", "बीस ओवर में सत्तासी पर पाँच"),
        ("1965-71", "उन्नीस सौ पैंसठ से इकहत्तर"),
        ("2:09:45 में", "दो घंटे नौ मिनट पैंतालीस सेकंड में"),
        ("सुबह 7:15:20", "सुबह सात बजकर पंद्रह मिनट बीस सेकंड"),
        ("PM2.5", "पी एम दो दशमलव पाँच"),
        ("1 ½ कप", "डेढ़ कप"),
        ("5 लाखकरोड़", "पाँच लाख करोड़"),
        ("1234 5678 9012", "एक दो तीन चार पाँच छह सात आठ नौ शून्य एक दो"),
    ],
)
def test_what_daily_copy_writes_in_short(text: str, expected: str) -> None:
    assert said(text, "hi") == nfc(expected)
