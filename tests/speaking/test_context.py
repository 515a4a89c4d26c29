"""Context decides: the same figures are said otherwise elsewhere. Worked by hand in each language."""

from __future__ import annotations

import pytest

from promptprep.engines.spelling import IcuSpeller
from promptprep.model.language import LanguageData
from promptprep.model.spoken import Reading
from promptprep.speaking.speak import readings, speak
from promptprep.store.languages import language_data

SPELLER = IcuSpeller()
CASES = {
    "en": [
        ("It began in 1999.", "It began in nineteen ninety-nine."),
        ("1,999 people came.", "one thousand nine hundred ninety-nine people came."),
        ("1999 people came.", "one thousand nine hundred ninety-nine people came."),
        ("a 6.5-m mirror and 6.5 m of cable", "a six point five meter mirror and six point five meters of cable"),
        ("the $5 note costs $5", "the five dollar note costs five dollars"),
        ("He won in the U.S. They lost in the U.S. Senate.", "He won in the U S. They lost in the U S Senate."),
        ("I saw Part I.", "I saw Part one."),
        ("WE ARE OFF NOW, said the BBC", "WE ARE OFF NOW, said the B B C"),
        ("a 747-400, a 3-1 win", "a seven hundred forty-seven-four hundred, a three to one win"),
        ("+1 555 010 9999 or +5", "plus one, five five five, zero one zero, nine nine nine nine or plus five"),
        ("€12,50 and 3.500,00", "twelve euros and fifty cents and three thousand five hundred point zero zero"),
        ("10⁻³, 10⁶", "ten to the power of minus three, ten to the power of six"),
        ("31 May–2 June", "the thirty-first of May to the second of June"),
        ("9am-5pm on 5-10-2026", "nine A M to five P M on May tenth, twenty twenty-six"),
        ("USD 5 and the USD", "five U S dollars and the U S D"),
        ("1,2,3 go, then 1,2.5, 1,200", "one, two, three go, then one, two point five, one thousand two hundred"),
        ("1.5M views, 20K fans, 5bn miles", "one point five million views, twenty thousand fans, five billion miles"),
        ("5M active users in row 12B on a 4K camera", "five million active users in row twelve B on a four K camera"),
        ("2-3x faster, a 10x zoom, 3X bigger", "two to three times faster, a ten times zoom, three times bigger"),
        ("2x + 3 = 7, 0x1F, 4x4", "two x plus three equals seven, zero x one F, four by four"),
        ("2×10^8, 3.5x10⁸", "two times ten to the power of eight, three point five times ten to the power of eight"),
        ("3×4, 5x5x5, 10x15 cm", "three by four, five by five by five, ten by fifteen centimeters"),
        ("a 1920x1080 picture", "a nineteen twenty by ten eighty picture"),
        ("It fell by 3/4, on 3/4 of it", "It fell by three quarters, on three quarters of it"),
        ("by 3/4 inch, by 3/4 km", "by three quarters inch, by three quarters of a kilometer"),
        ("M.D.", "M D"),
        ("She is an M.D.", "She is an M D."),
        ("Credits\n(U.S.)\nWe left at 9 a.m.", "Credits\n(U S)\nWe left at nine A M."),
    ],
    "fr": [
        ("21 étoiles, 21 ans", "vingt-et-une étoiles, vingt-et-un ans"),
        ("Le XXe siècle, Ce, Les", "Le vingtième siècle, Ce, Les"),
        ("à 1 h, 1 km", "à une heure, un kilomètre"),
        ("3 millions d’euros, 3 M€, 3 €", "trois millions d’euros, trois millions d'euros, trois euros"),
        ("M. Roux parle à M. le maire.", "Monsieur Roux parle à Monsieur le maire."),
        ("Me voici. Me Blanc plaide.", "Me voici. Maître Blanc plaide."),
        ("1 000 000 d’étoiles, 1 000 000 étoiles", "un million d’étoiles, un million d'étoiles"),
        ("la 1 000ème fois, le 1000e, le 2 000 000e", "la millième fois, le millième, le deux millionième"),
        ("1,2,3 partez, 1,2 km", "un, deux, trois partez, un virgule deux kilomètre"),
        ("3x plus, 1x", "trois fois plus, une fois"),
        ("½ heure, 2½ heures", "une demi-heure, deux heures et demie"),
    ],
    "de": [
        ("am 3. Mai, der 3. Mai", "am dritten Mai, der dritte Mai"),
        ("Es sind 3. Dann kommt der 3. Versuch.", "Es sind drei. Dann kommt der dritte Versuch."),
        ("1 Stunde, 1 Tag, mit 1 Stunde, um 1 Grad", "eine Stunde, ein Tag, mit einer Stunde, um einen Grad"),
        ("1905 kamen 1905 Leute", "neunzehnhundertfünf kamen eintausendneunhundertfünf Leute"),
        ("3:1 um 9:40", "drei zu eins um neun Uhr vierzig"),
        ("bis 2030. Seit 1. Mai", "bis zweitausenddreißig. Seit ersten Mai"),
        ("3x schneller, 2×10^8", "drei mal schneller, zwei mal zehn hoch acht"),
        ("z. B. Sterne usw. Und so weiter", "zum Beispiel Sterne und so weiter. Und so weiter"),
    ],
    "es": [
        ("21 años, 21 horas, el 21", "veintiún años, veintiuna horas, el veintiuno"),
        ("siglo X, siglo XX, la II Guerra", "siglo décimo, siglo veinte, la segunda Guerra"),
        ("1.000.000 personas y 1.000.001 personas", "un millón de personas y un millón una personas"),
        ("EE. UU. y la ONU, n.º 5", "Estados Unidos y la ONU, número cinco"),
        ("1 de cada 10", "uno de cada diez"),
        ("2x más, 1.000.º", "dos veces más, milésimo"),
    ],
    "pt": [
        ("2 luas, 2 anos", "duas luas, dois anos"),
        ("século X, século XX, XXIII Festa", "século décimo, século vinte, vigésima terceira Festa"),
        ("58 milhões de km, 3½ horas", "cinquenta e oito milhões de quilômetros, três horas e meia"),
        ("por 2 a 0", "por dois a zero"),
        ("às 21h40, 2 h", "às vinte e uma horas e quarenta minutos, duas horas"),
    ],
}  # fmt: skip


def said(text: str, tag: str) -> str:
    return speak(text, language_data(tag), SPELLER).text


@pytest.mark.parametrize(("tag", "text", "wanted"), [(t, *case) for t, cases in CASES.items() for case in cases])
def test_context_decides(tag: str, text: str, wanted: str) -> None:
    assert said(text, tag) == wanted


def only(text: str, tag: str) -> Reading:
    (reading,) = readings(text, language_data(tag), SPELLER)
    return reading


@pytest.mark.parametrize(
    ("tag", "other"),
    [("en", "May twelfth, twenty twenty-six"), ("de", "fünfter Dezember zweitausendsechsundzwanzig")],
)
def test_a_date_that_could_be_another_says_so(tag: str, other: str) -> None:
    assert only("12/05/2026", tag).otherwise == (other,)
    assert only("25/12/2026", tag).otherwise == ()


@pytest.mark.parametrize(
    ("tag", "text", "wanted"),
    [
        ("en", "On 3/4 we met", "March fourth"),
        ("en-GB", "On 3/4 we met", "the third of April"),
        ("en", "closed since 12/4, again", "December fourth"),
    ],
)
def test_two_figures_with_a_bar_after_on_are_a_day_or_else_a_fraction(tag: str, text: str, wanted: str) -> None:
    reading = only(text, tag)
    assert (reading.said, reading.kind) == (wanted, "date")
    assert reading.otherwise in (("three quarters",), ("twelve over four",))


def test_british_dates_in_figures_begin_with_the_day() -> None:
    reading = only("12/05/2026", "en-GB")
    assert reading.said == "the twelfth of May, twenty twenty-six"
    assert reading.otherwise == ("the fifth of December, twenty twenty-six",)


def test_a_year_before_a_counted_noun_says_so() -> None:
    assert only("in 1999 people fled", "en").otherwise == ("one thousand nine hundred ninety-nine",)


@pytest.mark.parametrize("tag", CASES)
def test_prose_without_figures_is_itself(tag: str) -> None:
    text = "Bonsoir — „gut“, “fine”; (and) l’air, ¿no? É isso!\nEnd"
    assert said(text, tag) == text


@pytest.mark.parametrize(
    ("tag", "wanted"), [("en-GB", "one hundred and one kilometres"), ("en", "one hundred one kilometers")]
)
def test_british_english_says_and(tag: str, wanted: str) -> None:
    assert said("101 km", tag) == wanted


def test_a_language_without_data_gets_plain_numbers() -> None:
    spoken = speak("Er zijn 1.234 sterren, 3,5 graden en 12:30.", LanguageData("nl"), SPELLER)
    assert spoken.text == "Er zijn duizendtweehonderdvierendertig sterren, drie komma vijf graden en twaalf:dertig."


def test_a_language_without_number_words_is_left_alone() -> None:
    assert speak("1234", LanguageData("tlh"), SPELLER).text == "1234"
